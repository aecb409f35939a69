/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "footpace/linen.h"

#include <math.h>

#define CE_CLOTHS "Catholic Encyclopedia I (1907), Altar-Cloths"
#define CE_RAIL   "Catholic Encyclopedia I (1907), Altar Rail"
#define FORTESCUE "A. Fortescue, The Ceremonies of the Roman Rite Described (1918), p. 6"
#define DEARMER   "P. Dearmer, The Parson's Handbook (2nd ed. 1899)"

/* Dearmer p. 61: 3/4 in for the under cloths; 1 in at the sides and 2 in at the ends for the top cloth. */
#define UNDER_HEM     19.05
#define TOP_HEM_SIDES 25.4
#define TOP_HEM_ENDS  50.8
/* The raw edge within a hem: design judgement. */
#define TURNED_IN     8.0
/* Dearmer p. 61: a dust cover is 12 in longer than the mensa where the top cloth stays on. */
#define DUST_LONGER   304.8
/* A cloth about 2 ft wide, as long as the rail. */
#define RAIL_WIDTH    609.6

static const FpHems under = { UNDER_HEM, UNDER_HEM, TURNED_IN };
static const FpHems top = { TOP_HEM_ENDS, TOP_HEM_SIDES, TURNED_IN };

/* --- which cloths --------------------------------------------------------------- */

static void
add (GArray *out, const FpPlaced *placed, const char *id, const char *label, guint number, double length, double width,
     const FpHems *hems, const char *source)
{
  const FpCloth cloth = { placed, id, label, number, length, width, *hems, source };

  if (length > 0.0 && width > 0.0)
    g_array_append_val (out, cloth);
}

/* Along the altar from end to end, and from its front to its back. */
static void
measure (const FpPlaced *placed, double *length, double *width)
{
  const FpBox *plan = &placed->extent.plan;

  *length = plan->x1 - plan->x0;
  *width = plan->y1 - plan->y0;
}

static void
add_for_altar (GArray *out, const FpPlaced *altar, FpBooks books)
{
  const double height = altar->extent.top;
  double length, width;

  measure (altar, &length, &width);
  if (books != FP_BOOKS_NEWER)
    {
      add (out, altar, "cere-cloth", "Cere cloth, waxed", 1, length, width, &under, FORTESCUE ": exactly the mensa");
      add (out, altar, "under-cloth", "Under cloth", 2, length, width, &under, CE_CLOTHS ": two that cover the whole mensa");
    }
  add (out, altar, "top-cloth", "Top cloth", 1, length + 2.0 * height, width, &top,
       books != FP_BOOKS_NEWER ? CE_CLOTHS ": to the footpace at both ends; " DEARMER ", p. 60: none over the front"
                               : "General Instruction of the Roman Missal, 117 and 304: at least one white cloth; to the footpace "
                                 "at both ends: design judgement");
  add (out, altar, "dust-cover", "Dust cover", 1, length + DUST_LONGER, width, &under, DEARMER ", p. 61");
}

/* Printed is only that it reaches to the floor; on which sides is design judgement. */
static void
add_for_credence (GArray *out, const FpPlaced *credence)
{
  const double height = credence->extent.height;
  double length, width;

  measure (credence, &length, &width);
  add (out, credence, "credence-cloth", "Credence cloth", 1, length + 2.0 * height, width + height, &under,
       "New Catholic Dictionary (1929), Credence: to the floor on solemn feasts; at the ends and in front: design judgement");
}

static void
add_for_rail (GArray *out, const FpPlaced *rail)
{
  double length, width;

  measure (rail, &length, &width);
  add (out, rail, "rail-cloth", "Communion cloth", 1, MAX (length, width), RAIL_WIDTH, &under,
       CE_RAIL ": the full length of the rail, about 2 ft wide");
}

/* A stand of the tabernacle is no credence, though it is made like one. */
static gboolean
bears_tabernacle (const FpPlaced *placed, guint n, guint which)
{
  for (guint i = 0; i < n; i++)
    if (!placed[i].ghost && placed[i].support == (int) which && fp_item_kind (placed[i].item)->role == FP_ROLE_TABERNACLE)
      return TRUE;
  return FALSE;
}

GArray *
fp_linen_cloths (const FpScene *scene, FpBooks books)
{
  GArray *out = g_array_new (FALSE, FALSE, sizeof (FpCloth));
  guint n;
  const FpPlaced *placed = fp_scene_placed (scene, &n);

  for (guint i = 0; i < n; i++)
    {
      if (placed[i].ghost || placed[i].standing == FP_STANDING_REMOVED)
        continue;
      switch (fp_item_kind (placed[i].item)->role)
        {
        case FP_ROLE_ALTAR: add_for_altar (out, &placed[i], books); break;
        case FP_ROLE_CREDENCE:
          if (!bears_tabernacle (placed, n, i))
            add_for_credence (out, &placed[i]);
          break;
        case FP_ROLE_RAIL: add_for_rail (out, &placed[i]); break;
        default: break;
        }
    }
  return out;
}

/* --- as they are cut -------------------------------------------------------------- */

double
fp_linen_cut (double finished, double hem, double turned_in, double shrinkage)
{
  if (!(shrinkage >= 0.0) || shrinkage > FP_SHRINKAGE_MAX)
    return NAN;
  return (finished + 2.0 * (hem + turned_in)) / (1.0 - shrinkage);
}

GArray *
fp_linen_pieces (const GArray *cloths, const FpShrinkage *shrinkage)
{
  GArray *out = g_array_new (FALSE, FALSE, sizeof (FpBoltPiece));

  for (guint i = 0; i < cloths->len; i++)
    {
      const FpCloth *c = &g_array_index (cloths, FpCloth, i);
      const FpBoltPiece piece = {
        .across = fp_linen_cut (c->width, c->hems.sides, c->hems.turned_in, shrinkage->weft),
        .along = fp_linen_cut (c->length, c->hems.ends, c->hems.turned_in, shrinkage->warp),
        .turned_across = fp_linen_cut (c->length, c->hems.ends, c->hems.turned_in, shrinkage->weft),
        .turned_along = fp_linen_cut (c->width, c->hems.sides, c->hems.turned_in, shrinkage->warp),
      };

      for (guint k = 0; k < c->number; k++)
        g_array_append_val (out, piece);
    }
  return out;
}
