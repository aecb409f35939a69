/* SPDX-License-Identifier: GPL-3.0-or-later */
/* free-level.c - what is asked of one level of the free floor */
#include "footpace/free-floor.h"

#include <math.h>

double
fp_free_level_area (const FpFreeLevel *level)
{
  double area = 0;

  for (guint k = 0; k < level->rings->len; k++)
    {
      const FpRing *ring = &g_array_index (level->rings, FpRing, k);
      area += (ring->hole ? -1 : 1) * fabs (fp_outline_area (ring->pt, ring->n));
    }
  return area;
}

double
fp_free_level_height (const FpFreeLevel *level, FpPoint at)
{
  return level->z + level->gx * at.x + level->gy * at.y;
}

double
fp_side_ahead (FpPoint a, FpPoint b, FpPoint from, double dx, double dy, double far)
{
  const double ex = b.x - a.x, ey = b.y - a.y, across = dx * ey - dy * ex;
  const double along = ((a.x - from.x) * ey - (a.y - from.y) * ex) / across;
  const double share = ((a.x - from.x) * dy - (a.y - from.y) * dx) / across;

  return fabs (across) > 1e-9 && along > 1e-6 && along < far && share >= 0 && share <= 1 ? along : far;
}

double
fp_free_level_ahead (const FpFreeLevel *level, FpPoint from, double dx, double dy, double far)
{
  for (guint i = 0; i < level->rings->len; i++)
    {
      const FpRing *ring = &g_array_index (level->rings, FpRing, i);
      for (guint k = 0; k < ring->n; k++)
        far = fp_side_ahead (ring->pt[k], ring->pt[(k + 1) % ring->n], from, dx, dy, far);
    }
  return far;
}
