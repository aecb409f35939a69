/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Ramps: as they are walked, by the surfaces of their runs and landings. */
#include "measure-evidence.h"

#include <math.h>

/* 6 in: ADA Standards (2010), 405.8, from memory. */
#define WITHOUT_HANDRAIL 152.4

typedef struct
{
  double         slope, landing, run, rise;
  const FpFloor *steepest, *longest, *shortest; /* run, run, landing */
} Walked;

/* The extent of an outline along a direction. */
static double
length_along (const FpFloor *floor, double dx, double dy)
{
  double lo = G_MAXDOUBLE, hi = -G_MAXDOUBLE;

  for (guint i = 0; i < floor->n_outline; i++)
    {
      const double at = floor->outline[i].x * dx + floor->outline[i].y * dy;

      lo = MIN (lo, at);
      hi = MAX (hi, at);
    }
  return hi - lo;
}

/* The steepest and longest run, the shortest landing, all that it rises. */
static Walked
walk (const FpMeasuring *of, int ramp)
{
  const FpPlaced *placed = fp_measuring_placed (of, ramp);
  const double turn = placed->place.turn * G_PI / 180, dx = -sin (turn), dy = cos (turn);
  Walked found = { .landing = G_MAXDOUBLE };
  guint n;
  const FpFloor *floor = fp_scene_floors (of->scene, &n);

  for (guint i = 0; i < n; i++)
    {
      const double slope = hypot (floor[i].gx, floor[i].gy), length = length_along (&floor[i], dx, dy);

      if ((int) floor[i].owner != ramp)
        continue;
      if (slope > 0)
        {
          found.steepest = slope > found.slope ? &floor[i] : found.steepest;
          found.slope = MAX (found.slope, slope);
          found.longest = slope * length > found.run ? &floor[i] : found.longest;
          found.run = MAX (found.run, slope * length);
          found.rise += slope * length;
        }
      else
        {
          found.shortest = length < found.landing ? &floor[i] : found.shortest;
          found.landing = MIN (found.landing, length);
        }
    }
  return found;
}

/* Of a run or landing, along its middle: its lower end, its upper end on the level of that, and its upper end. */
static void
ends_of (const FpPlaced *ramp, const FpFloor *floor, FpVec3 end[3])
{
  const double turn = ramp->place.turn * G_PI / 180, dx = -sin (turn), dy = cos (turn), length = length_along (floor, dx, dy);
  const FpPoint middle = fp_outline_centroid (floor->outline, floor->n_outline);
  const FpPoint foot = { middle.x - dx * length / 2, middle.y - dy * length / 2 }, head = { foot.x + dx * length, foot.y + dy * length };
  const double low = floor->z + floor->gx * foot.x + floor->gy * foot.y;

  end[0] = (FpVec3) { foot.x, foot.y, low };
  end[1] = (FpVec3) { head.x, head.y, low };
  end[2] = (FpVec3) { head.x, head.y, floor->z + floor->gx * head.x + floor->gy * head.y };
}

typedef double (*Taken) (const FpPlaced *ramp, const Walked *walked); /* NAN: nothing */

static double
slope_of (const FpPlaced *ramp, const Walked *walked)
{
  (void) ramp;
  return walked->slope;
}

static double
width_of (const FpPlaced *ramp, const Walked *walked)
{
  (void) walked;
  return fp_placed_param (ramp, "width", NAN);
}

static double
landing_of (const FpPlaced *ramp, const Walked *walked)
{
  (void) ramp;
  return walked->landing;
}

static double
run_of (const FpPlaced *ramp, const Walked *walked)
{
  (void) ramp;
  return walked->run;
}

static double
handrail_of (const FpPlaced *ramp, const Walked *walked)
{
  return walked->rise > WITHOUT_HANDRAIL ? fp_placed_param (ramp, "handrail", NAN) : NAN;
}

static void
take (const FpMeasuring *of, GArray *out, Taken taken)
{
  for (int i = fp_measuring_next (of, FP_ROLE_RAMP, -1); i >= 0; i = fp_measuring_next (of, FP_ROLE_RAMP, i))
    {
      const FpPlaced *ramp = fp_measuring_placed (of, i);
      const Walked walked = walk (of, i);
      const double value = taken (ramp, &walked);

      if (!isnan (value))
        fp_measured_add_at (out, value, i, fp_placed_middle (ramp, walked.rise / 2));
    }
}

void
fp_take_ramp_slope (const FpMeasuring *of, GArray *out)
{
  take (of, out, slope_of);
}

void
fp_take_ramp_width (const FpMeasuring *of, GArray *out)
{
  take (of, out, width_of);
}

void
fp_take_ramp_landing (const FpMeasuring *of, GArray *out)
{
  take (of, out, landing_of);
}

void
fp_take_ramp_run (const FpMeasuring *of, GArray *out)
{
  take (of, out, run_of);
}

void
fp_take_ramp_handrail (const FpMeasuring *of, GArray *out)
{
  take (of, out, handrail_of);
}

/* --- drawn ------------------------------------------------------------------ */

static void
show (const FpMeasuring *of, const FpMeasured *one, gboolean level, gboolean upright, double times, FpEvidence *out)
{
  const FpPlaced *ramp = fp_measuring_placed (of, one->owner);
  const Walked walked = walk (of, one->owner);
  const FpFloor *floor = level && upright ? walked.steepest : level ? walked.shortest : walked.longest;
  FpVec3 end[3];

  if (floor == NULL)
    return;
  ends_of (ramp, floor, end);
  if (level)
    fp_evidence_add_length (out, end[0], end[1], times);
  if (upright)
    fp_evidence_add_length (out, end[1], end[2], times);
}

void
fp_show_ramp_slope (const FpMeasuring *of, const FpMeasured *one, FpEvidence *out)
{
  show (of, one, TRUE, TRUE, 0, out);
}

void
fp_show_ramp_landing (const FpMeasuring *of, const FpMeasured *one, FpEvidence *out)
{
  show (of, one, TRUE, FALSE, 1, out);
}

void
fp_show_ramp_run (const FpMeasuring *of, const FpMeasured *one, FpEvidence *out)
{
  show (of, one, FALSE, TRUE, 1, out);
}
