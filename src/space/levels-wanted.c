/* SPDX-License-Identifier: GPL-3.0-or-later */
/* levels-wanted.c - how high the altar must stand, and by how many steps */
#include "footpace/levels.h"

#include <math.h>

/* What arithmetic in doubles may leave over: 3 × 150 is climbed in three steps of at most 150. */
#define DUST 1e-6

double
fp_levels_footpace_wanted (const FpLevels *levels, double margin)
{
  return levels->highest + margin;
}

FpFlight
fp_flight_for (double rise, FpRisers allowed)
{
  double steps;

  if (!(rise > 0) || !(allowed.high > 0) || allowed.low > allowed.high)
    return (FpFlight) { 0, 0 };
  steps = MAX (1, ceil (rise / allowed.high - DUST));
  return (FpFlight) { (guint) steps, MAX (allowed.low, rise / steps) };
}
