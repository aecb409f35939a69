/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "wall-spot.h"

#include <math.h>

void
wall_spot (const FpPlaced *wall, FpPoint church, double width, double *side, double *along)
{
  const FpPoint p = fp_place_unpoint (&wall->place, church), *corner = wall->form.corner;
  const guint n = wall->form.n_corners, n_sides = fp_item_param (wall->item, "closed") != 0 ? n : n - 1;
  double nearest = G_MAXDOUBLE;

  for (guint i = 0; i < n_sides; i++)
    {
      const FpPoint a = corner[i], b = corner[(i + 1) % n];
      const double length = hypot (b.x - a.x, b.y - a.y), distance = fp_segment_distance (a, b, p);
      const double at = length > 0 ? ((p.x - a.x) * (b.x - a.x) + (p.y - a.y) * (b.y - a.y)) / length : 0;

      if (distance >= nearest)
        continue;
      nearest = distance;
      *side = i + 1;
      *along = CLAMP (at, MIN (width / 2, length / 2), MAX (length - width / 2, length / 2));
    }
}
