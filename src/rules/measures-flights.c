/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Flights of steps as one walks them: how many risers, how deep their treads, and sides from which one may fall. */
#include "measuring.h"

#include <math.h>

static FpMeasured *
add_of_steps (const FpMeasuring *of, GArray *out, int i, double value)
{
  return fp_measured_add_at (out, value, i, fp_placed_middle (fp_measuring_placed (of, i), 0));
}

void
fp_take_floor_flight (const FpMeasuring *of, GArray *out)
{
  for (int i = fp_measuring_next (of, FP_ROLE_STEPS, -1); i >= 0; i = fp_measuring_next (of, FP_ROLE_STEPS, i))
    add_of_steps (of, out, i, fp_placed_param (fp_measuring_placed (of, i), "count", 1));
}

/* International Building Code 2009, 1003.5, exception: one riser, or two and a tread. */
#define SHORT_FLIGHT 2

void
fp_take_short_flight_tread (const FpMeasuring *of, GArray *out)
{
  for (int i = fp_measuring_next (of, FP_ROLE_STEPS, -1); i >= 0; i = fp_measuring_next (of, FP_ROLE_STEPS, i))
    {
      const FpPlaced *steps = fp_measuring_placed (of, i);

      if (fp_placed_param (steps, "count", 1) == SHORT_FLIGHT)
        add_of_steps (of, out, i, fp_placed_param (steps, "tread", NAN));
    }
}

/* On a side without steps one falls from the footpace to the floor. */
void
fp_take_footpace_fall (const FpMeasuring *of, GArray *out)
{
  enum { FRONT, THREE, ALL_ROUND };
  const FpPlaced *altar = fp_measuring_celebrated (of, NULL);
  const int index = fp_measuring_footpace (of, altar);
  const FpPlaced *footpace = fp_measuring_placed (of, index);
  double rise;

  if (!footpace || (guint) fp_placed_param (footpace, "sides", THREE) == ALL_ROUND)
    return;
  if ((guint) fp_placed_param (footpace, "sides", THREE) == THREE && !fp_altar_is_free (altar))
    return; /* its only open side is at the wall */
  rise = fp_placed_param (footpace, "count", 1) * fp_placed_param (footpace, "riser", 0);
  {
    const gboolean ends = (guint) fp_placed_param (footpace, "sides", THREE) == FRONT;
    const FpBox *plan = &footpace->extent.plan;
    const double x = ends ? plan->x1 : (plan->x0 + plan->x1) / 2, y = ends ? (plan->y0 + plan->y1) / 2 : plan->y1;

    fp_measured_span (fp_measured_add_at (out, rise, index, fp_placed_middle (footpace, rise)),
                      fp_placed_point (footpace, (FpVec3) { x, y, 0 }), fp_placed_point (footpace, (FpVec3) { x, y, rise }));
  }
}
