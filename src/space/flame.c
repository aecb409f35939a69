/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "flame.h"

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

  return !owner->ghost && (kind->flags & FP_KIND_SURVEY) == 0 && kind->role != FP_ROLE_CANDLES
         && kind->role != FP_ROLE_CRUCIFIX;
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
      const FpBox3 box = fp_solid_box (&solid[i]);
      double distance;

      if (!may_burn (&placed[solid[i].owner]) || box.hi.z <= flame.z || box.lo.z > flame.z + FP_FLAME_ABOVE)
        continue;
      distance = distance_to (&solid[i], (FpPoint) { flame.x, flame.y });
      if (nearest >= 0 && distance >= *by)
        continue;
      nearest = (int) solid[i].owner;
      *by = distance;
    }
  return nearest;
}
