/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "footpace/order.h"

#include <math.h>

/* Level distance from a point to a solid's plan; 0 inside. */
static double
distance_to (const FpSolid *solid, FpPoint from)
{
  double nearest = G_MAXDOUBLE;

  if (solid->shape != FP_SOLID_PRISM)
    {
      const double radius = solid->shape == FP_SOLID_ROUND ? MAX (solid->r0, solid->r1) : MAX (solid->rx, solid->ry);

      return MAX (0, hypot (from.x - solid->cx, from.y - solid->cy) - radius);
    }
  if (fp_outline_contains (solid->outline, solid->n_outline, from))
    return 0;
  for (guint i = 0; i < solid->n_outline; i++)
    nearest = MIN (nearest, fp_segment_distance (solid->outline[i], solid->outline[(i + 1) % solid->n_outline], from));
  return nearest;
}

/* Furnishings may be of wood or hung with cloth: the model does not know.  Candles and the cross are meant to be there. */
static gboolean
may_burn (const FpPlaced *owner)
{
  const FpKind *kind = fp_item_kind (owner->item);

  return !owner->ghost && (kind->flags & FP_KIND_SURVEY) == 0 && fp_kind_sort (kind) != FP_SORT_LIGHTS
         && kind->role != FP_ROLE_CRUCIFIX;
}

/* Hangs so high over the flame, all of it, that its heat is far off: a canopy, whatever its columns do. */
static gboolean
hangs_clear (const FpSolid *solid, guint piece, const FpPlaced *owner, FpVec3 flame)
{
  if ((fp_item_kind (owner->item)->flags & FP_KIND_CUT) != 0)
    return fp_solid_box (&solid[piece]).lo.z > flame.z + FP_FLAME_ABOVE;
  for (guint i = owner->first_solid; i < owner->first_solid + owner->n_solids; i++)
    if (fp_solid_box (&solid[i]).lo.z <= flame.z + FP_FLAME_ABOVE)
      return FALSE;
  return TRUE;
}

int
fp_flame_nearest (const FpScene *scene, FpVec3 flame, double *by)
{
  const FpPlaced *placed = fp_scene_placed (scene, NULL);
  guint n;
  const FpSolid *solid = fp_scene_solids (scene, &n);
  int nearest = -1;

  for (guint i = 0; i < n; i++)
    {
      const FpPlaced *owner = &placed[solid[i].owner];
      double distance;

      if (!may_burn (owner) || fp_solid_box (&solid[i]).hi.z <= flame.z || hangs_clear (solid, i, owner, flame))
        continue;
      distance = distance_to (&solid[i], (FpPoint) { flame.x, flame.y });
      if (nearest >= 0 && distance >= *by)
        continue;
      nearest = (int) solid[i].owner;
      *by = distance;
    }
  return nearest;
}
