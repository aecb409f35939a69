/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "celebrant.h"

#include <string.h>

/* From the back of the mensa to the back of a standing man, and half his breadth (design judgement). */
#define ROOM_TO_STAND 400.0
#define HALF_BREADTH  200.0

static gboolean
is_altar (const FpPlaced *placed)
{
  return !placed->ghost && fp_item_kind (placed->item)->role == FP_ROLE_ALTAR;
}

gboolean
fp_altar_is_free (const FpPlaced *altar)
{
  const FpKind *kind = fp_item_kind (altar->item);
  const int i = fp_kind_param_index (kind, "setting");

  if (i < 0 || kind->params[i].type != FP_PARAM_CHOICE)
    return TRUE;
  return strcmp (kind->params[i].choices[(guint) fp_item_params (altar->item)[i]].id, "against-the-wall") != 0;
}

int
fp_celebrated_altar (const FpPlaced *placed, guint n, int highest, FpFacing facing)
{
  int best = highest;

  if (facing != FP_FACING_PEOPLE || highest < 0)
    return highest;
  for (guint i = 0; i < n; i++)
    if (is_altar (&placed[i]) && fp_altar_is_free (&placed[i])
        && (!fp_altar_is_free (&placed[best]) || placed[i].plan.y0 < placed[best].plan.y0))
      best = (int) i;
  return best;
}

/* --- room behind ---------------------------------------------------------- */

static gboolean
stops_him (const FpPlaced *placed, const FpSolid *solid, FpVec3 from, FpVec3 to)
{
  return !placed[solid->owner].ghost
         && (solid->part == FP_PART_WALL || solid->part == FP_PART_PIER || solid->part == FP_PART_PANEL)
         && fp_solid_ray (solid, from, to, NULL);
}

gboolean
fp_celebrant_fits_behind (const FpPlaced *placed, guint altar, const FpSolid *solid, guint n_solids)
{
  static const double aside[] = { -HALF_BREADTH, 0, HALF_BREADTH }, above[] = { 300, 900, 1500 };
  const double back = placed[altar].extent.plan.y1;

  if (!fp_altar_is_free (&placed[altar]))
    return FALSE;
  for (guint a = 0; a < G_N_ELEMENTS (aside); a++)
    for (guint h = 0; h < G_N_ELEMENTS (above); h++)
      {
        const FpVec3 from = fp_placed_point (&placed[altar], (FpVec3) { aside[a], back, above[h] });
        const FpVec3 to = fp_placed_point (&placed[altar], (FpVec3) { aside[a], back + ROOM_TO_STAND, above[h] });
        for (guint i = 0; i < n_solids; i++)
          if (stops_him (placed, &solid[i], from, to))
            return FALSE;
      }
  return TRUE;
}
