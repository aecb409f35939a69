/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "footpace/order.h"

#include <math.h>

static FpPoint
nearest_on (FpPoint a, FpPoint b, FpPoint p)
{
  const double ex = b.x - a.x, ey = b.y - a.y, ee = ex * ex + ey * ey;
  const double t = ee > 0 ? CLAMP (((p.x - a.x) * ex + (p.y - a.y) * ey) / ee, 0, 1) : 0;

  return (FpPoint) { a.x + t * ex, a.y + t * ey };
}

/* Level distance from a point to a solid's plan; 0 inside. @where: (out): the nearest point of it */
static double
distance_to (const FpSolid *solid, FpPoint from, FpPoint *where)
{
  double nearest = G_MAXDOUBLE;

  *where = from;

  if (solid->shape != FP_SOLID_PRISM)
    {
      const double radius = solid->shape == FP_SOLID_ROUND ? MAX (solid->r0, solid->r1) : MAX (solid->rx, solid->ry);

      const double far = hypot (from.x - solid->cx, from.y - solid->cy);

      if (far > radius)
        *where = (FpPoint) { solid->cx + (from.x - solid->cx) * radius / far, solid->cy + (from.y - solid->cy) * radius / far };
      return MAX (0, far - radius);
    }
  if (fp_outline_contains (solid->outline, solid->n_outline, from))
    return 0;
  for (guint i = 0; i < solid->n_outline; i++)
    {
      const FpPoint at = nearest_on (solid->outline[i], solid->outline[(i + 1) % solid->n_outline], from);
      const double far = hypot (from.x - at.x, from.y - at.y);

      if (far >= nearest)
        continue;
      nearest = far;
      *where = at;
    }
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
fp_flame_nearest (const FpScene *scene, FpVec3 flame, double *by, FpPoint *where)
{
  const FpPlaced *placed = fp_scene_placed (scene, NULL);
  guint n;
  const FpSolid *solid = fp_scene_solids (scene, &n);
  int nearest = -1;

  for (guint i = 0; i < n; i++)
    {
      const FpPlaced *owner = &placed[solid[i].owner];
      double distance;
      FpPoint at;

      if (!may_burn (owner) || fp_solid_box (&solid[i]).hi.z <= flame.z || hangs_clear (solid, i, owner, flame))
        continue;
      distance = distance_to (&solid[i], (FpPoint) { flame.x, flame.y }, &at);
      if (nearest >= 0 && distance >= *by)
        continue;
      nearest = (int) solid[i].owner;
      *by = distance;
      if (where != NULL)
        *where = at;
    }
  return nearest;
}
