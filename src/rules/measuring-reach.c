/* SPDX-License-Identifier: GPL-3.0-or-later */
/* How far one gets on the level from a thing, and where the floor falls. */
#include "measuring.h"

#include <math.h>

/* Less than this is unevenness of a floor, not a step (design judgement). */
#define STEP_LEAST 50.0
/* One floor may be surveyed in several pieces; this bridges the joint between them (design judgement). */
#define JOINT 20.0
#define PIECES_MAX 64

gboolean
fp_reach_building (const FpMeasuring *of, const FpSolid *solid, gconstpointer data)
{
  (void) of;
  (void) data;
  return solid->part == FP_PART_WALL || solid->part == FP_PART_PIER;
}

double
fp_measuring_reach (const FpMeasuring *of, FpVec3 from, double dx, double dy, double far, FpReachFilter filter,
                    gconstpointer data)
{
  const FpVec3 to = { from.x + dx * far, from.y + dy * far, from.z };
  guint n = 0;
  const FpSolid *solid = fp_scene_solids (of->scene, &n);
  double nearest = -1;

  for (guint i = 0; i < n; i++)
    {
      const FpPlaced *owner = fp_measuring_placed (of, (int) solid[i].owner);
      double t;

      if (!owner || owner->ghost || !filter (of, &solid[i], data) || !fp_solid_ray (&solid[i], from, to, &t))
        continue;
      if (nearest < 0 || t * far < nearest)
        nearest = t * far;
    }
  return nearest;
}

/* Distance along the direction to where the outline is left; -1 when it does not cross it. */
static double
outline_exit (const FpPoint *pt, guint n, FpPoint from, double dx, double dy)
{
  double nearest = -1;

  for (guint i = 0; i < n; i++)
    {
      FpPoint a = pt[i], b = pt[(i + 1) % n];
      double ex = b.x - a.x, ey = b.y - a.y;
      double across = dx * ey - dy * ex;
      double along, share;

      if (fabs (across) < 1e-9)
        continue;
      along = ((a.x - from.x) * ey - (a.y - from.y) * ex) / across;
      share = ((a.x - from.x) * dy - (a.y - from.y) * dx) / across;
      if (along > 1e-6 && share >= 0 && share <= 1 && (nearest < 0 || along < nearest))
        nearest = along;
    }
  return nearest;
}

/* The surveyed floor whose surface is the one walked on at @at; NULL. */
static const FpFloor *
floor_under (const FpMeasuring *of, FpPoint at)
{
  gboolean found = FALSE;
  double level = fp_scene_floor_at (of->scene, at, &found);
  guint n = 0;
  const FpFloor *floor = fp_scene_floors (of->scene, &n);

  if (!found)
    return NULL;
  for (guint i = 0; i < n; i++)
    {
      const FpPlaced *owner = fp_measuring_placed (of, (int) floor[i].owner);

      if (owner && owner->in_survey && fp_outline_contains (floor[i].outline, floor[i].n_outline, at)
          && fabs (floor[i].z + floor[i].gx * at.x + floor[i].gy * at.y - level) < 1e-3)
        return &floor[i];
    }
  return NULL;
}

double
fp_measuring_walk (const FpMeasuring *of, FpPoint from, double dx, double dy, double far, double *drop)
{
  FpPoint at = from;
  double walked = 0;

  for (int piece = 0; piece < PIECES_MAX; piece++)
    {
      const FpFloor *floor = floor_under (of, at);
      double exit = floor ? outline_exit (floor->outline, floor->n_outline, at, dx, dy) : -1;
      double here, beyond;
      gboolean found = FALSE;
      FpPoint edge;

      if (exit < 0 || walked + exit > far)
        return -1;
      edge = (FpPoint) { at.x + dx * exit, at.y + dy * exit };
      here = floor->z + floor->gx * edge.x + floor->gy * edge.y;
      at = (FpPoint) { edge.x + dx * JOINT, edge.y + dy * JOINT };
      beyond = fp_scene_floor_at (of->scene, at, &found);
      if (!found || beyond - here >= STEP_LEAST)
        return -1;
      if (here - beyond >= STEP_LEAST)
        {
          if (drop)
            *drop = here - beyond;
          return walked + exit;
        }
      walked += exit + JOINT;
    }
  return -1;
}
