/* SPDX-License-Identifier: GPL-3.0-or-later */
/* way-beside.c - what stands at the narrowest place of a way */
#include "free-floor-private.h"
#include "ways-private.h"

#include <math.h>

#define AT_IT 2.0 /* mm: an edge that lies nearer belongs to what stands there */

static double
distance_to_outline (const FpSolid *solid, FpPoint at)
{
  guint n;
  g_autofree FpPoint *pt = fp_solid_plan (solid, &n);
  double least = G_MAXDOUBLE;

  for (guint i = 0; i < n; i++)
    least = MIN (least, fp_segment_distance (pt[i], pt[(i + 1) % n], at));
  return least;
}

static double
floor_about (const FpScene *scene, FpPoint at, FpPoint inward)
{
  const FpFreeFloor *floor = fp_scene_free_floor (scene);
  const double d = hypot (inward.x - at.x, inward.y - at.y);
  const FpPoint in = d > 0 ? (FpPoint) { at.x + (inward.x - at.x) * MIN (1, AT_IT / d), at.y + (inward.y - at.y) * MIN (1, AT_IT / d) } : at;
  guint n;
  const FpFreeLevel *level = fp_free_floor_levels (floor, &n);
  const int i = fp_free_floor_level_at (floor, in);

  return i >= 0 ? fp_free_level_height (&level[i], in) : 0;
}

/* Furniture is named before the wall against which it stands. */
int
fp_room_thing_at (const FpScene *scene, FpPoint at, double floor)
{
  guint n;
  const FpSolid *solid = fp_scene_solids (scene, &n);
  const FpPlaced *placed = fp_scene_placed (scene, NULL);
  int wall = -1;

  for (guint i = 0; i < n; i++)
    {
      const FpBox3 box = fp_solid_box (&solid[i]);

      if (at.x < box.lo.x - AT_IT || at.x > box.hi.x + AT_IT || at.y < box.lo.y - AT_IT || at.y > box.hi.y + AT_IT
          || box.lo.z > floor + FP_FREE_HEAD || box.hi.z < floor + FP_FREE_UNEVEN || !fp_solid_is_in_the_way (scene, &solid[i])
          || distance_to_outline (&solid[i], at) > AT_IT)
        continue;
      if (fp_item_kind (placed[solid[i].owner].item)->role != FP_ROLE_WALL)
        return (int) solid[i].owner;
      wall = (int) solid[i].owner;
    }
  return wall;
}

static gboolean
is_step (const FpScene *scene, FpPoint at)
{
  guint n;
  const FpLevelJoint *joint = fp_free_floor_joints (fp_scene_free_floor (scene), &n);

  for (guint i = 0; i < n; i++)
    if (fp_segment_distance (joint[i].a, joint[i].b, at) <= AT_IT)
      return TRUE;
  return FALSE;
}

void
fp_way_tell_gap (const FpScene *scene, const FpWays *ways, const FpGap *gap, FpWay *way)
{
  way->width = fp_ways_gap (ways, gap->a, gap->b, way->narrow);
  fp_way_tell_beside (scene, way);
}

void
fp_way_tell_beside (const FpScene *scene, FpWay *way)
{
  way->narrows = TRUE;
  for (guint i = 0; i < 2; i++)
    {
      const double floor = floor_about (scene, way->narrow[i], way->narrow[1 - i]);
      way->owner[i] = fp_room_thing_at (scene, way->narrow[i], floor);
      way->beside[i] = way->owner[i] >= 0 ? FP_WAY_BY_THING : is_step (scene, way->narrow[i]) ? FP_WAY_BY_STEP : FP_WAY_BY_END;
    }
}
