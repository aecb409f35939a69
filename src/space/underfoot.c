/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "underfoot.h"

static gboolean
is_walked_on (const FpPlaced *placed)
{
  const FpRole role = fp_item_kind (placed->item)->role;

  return !placed->ghost && (role == FP_ROLE_FOOTPACE || role == FP_ROLE_STEPS || role == FP_ROLE_FLOOR);
}

/* Ramps, the steps of a font, the stair and the floor of a pulpit; -G_MAXDOUBLE where there is none. */
static double
way_under (const FpScene *scene, FpPoint at, double from)
{
  double highest = -G_MAXDOUBLE;
  guint n;
  const FpFloor *floor = fp_scene_floors (scene, &n);

  for (guint i = 0; i < n; i++)
    {
      const double level = floor[i].z + floor[i].gx * at.x + floor[i].gy * at.y;

      if (floor[i].use == FP_FLOOR_WAY && level > highest && level <= from
          && fp_outline_contains (floor[i].outline, floor[i].n_outline, at))
        highest = level;
    }
  return highest;
}

double
fp_level_underfoot (const FpScene *scene, FpPoint at, double from)
{
  const FpPlaced *placed = fp_scene_placed (scene, NULL);
  const FpVec3 start = { at.x, at.y, from + 1 }, end = { at.x, at.y, from - 5000 };
  const double way = way_under (scene, at, start.z);
  double nearest = 1, t;
  guint n;
  const FpSolid *solid = fp_scene_solids (scene, &n);

  for (guint i = 0; i < n; i++)
    if (is_walked_on (&placed[solid[i].owner]) && fp_solid_ray (&solid[i], start, end, &t) && t < nearest)
      nearest = t;
  return MAX (nearest < 1 ? start.z + nearest * (end.z - start.z) : way > end.z ? way : from, way);
}
