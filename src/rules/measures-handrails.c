/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Handrails of flights between floors: how many accompany a flight, and what of its width lies beyond their reach.
 *
 * The altar's own steps are left out: they are walked by ministers alone.
 */
#include "measure-evidence.h"

#include <math.h>

/* Design judgement, mm, but for the reach. */
#define BESIDE      200.0 /* beyond its side a handrail still accompanies a flight                             */
#define SHORT_OF    60.0  /* by so much it may end before the first or the last riser                          */
#define ASLANT      10.0  /* degrees                                                                          */
#define IN_REACH    762.0 /* International Building Code, 1014.9, from memory: 30 in                           */
#define AT_SIDE     0.25  /* of the width: a handrail so near to a side is that side's                         */
#define SHORT_RISERS 2

typedef struct
{
  double x;    /* from the middle of the flight, across; less than 0 on its left */
  int    rail;
} Along;

static double
across_at (const GArray *rails, guint k)
{
  return g_array_index (rails, Along, k).x;
}

/* (element-type Along): the handrails of one flight, from left to right. */
static GArray *
rails_of (const FpMeasuring *of, const FpPlaced *steps)
{
  const double run = (fp_placed_param (steps, "count", 1) - 1) * fp_placed_param (steps, "tread", 0);
  const double half = fp_placed_param (steps, "width", 0) / 2;
  GArray *out = g_array_new (FALSE, FALSE, sizeof (Along));

  for (int i = fp_measuring_next (of, FP_ROLE_HANDRAIL, -1); i >= 0; i = fp_measuring_next (of, FP_ROLE_HANDRAIL, i))
    {
      const FpPlaced *rail = fp_measuring_placed (of, i);
      const double beyond = fp_placed_param (rail, "extend", 0), length = fp_placed_param (rail, "length", 0);
      const FpPoint foot = fp_placed_local (steps, fp_place_point (&rail->place, (FpPoint) { 0, -beyond }));
      const FpPoint head = fp_placed_local (steps, fp_place_point (&rail->place, (FpPoint) { 0, length + beyond }));
      const Along one = { (foot.x + head.x) / 2, i };
      guint k = 0;

      if (fabs (head.x - foot.x) > fabs (head.y - foot.y) * tan (ASLANT * G_PI / 180) || fabs (one.x) > half + BESIDE
          || MIN (foot.y, head.y) > SHORT_OF || MAX (foot.y, head.y) < run - SHORT_OF)
        continue;
      while (k < out->len && across_at (out, k) < one.x)
        k++;
      g_array_insert_val (out, k, one);
    }
  return out;
}

/* On the edge of the first step, above the foot of the flight. */
static FpVec3
across (const FpPlaced *steps, double x)
{
  return fp_placed_point (steps, (FpVec3) { x, 0, fp_placed_param (steps, "riser", 0) });
}

static gboolean
is_short (const FpPlaced *steps)
{
  return fp_placed_param (steps, "count", 1) <= SHORT_RISERS;
}

static void
add_count (const FpMeasuring *of, GArray *out, int i, guint count)
{
  fp_measured_add_at (out, count, i, across (fp_measuring_placed (of, i), 0));
}

/* On how many sides of a flight of three risers or more. */
void
fp_take_flight_handrails (const FpMeasuring *of, GArray *out)
{
  for (int i = fp_measuring_next (of, FP_ROLE_STEPS, -1); i >= 0; i = fp_measuring_next (of, FP_ROLE_STEPS, i))
    {
      const FpPlaced *steps = fp_measuring_placed (of, i);
      const double side = fp_placed_param (steps, "width", 0) * (0.5 - AT_SIDE);
      g_autoptr (GArray) rail = rails_of (of, steps);
      guint sides = 0;

      if (is_short (steps))
        continue;
      if (rail->len > 0 && across_at (rail, 0) <= -side)
        sides++;
      if (rail->len > 0 && across_at (rail, rail->len - 1) >= side)
        sides++;
      add_count (of, out, i, sides);
    }
}

/* Of one or two risers, wherever on it: people walk where it is. */
void
fp_take_short_flight_handrails (const FpMeasuring *of, GArray *out)
{
  for (int i = fp_measuring_next (of, FP_ROLE_STEPS, -1); i >= 0; i = fp_measuring_next (of, FP_ROLE_STEPS, i))
    {
      g_autoptr (GArray) rail = rails_of (of, fp_measuring_placed (of, i));

      if (is_short (fp_measuring_placed (of, i)))
        add_count (of, out, i, rail->len);
    }
}

/* --- reach ------------------------------------------------------------------------------- */

typedef struct { double from, to; } Part;

static void
keep_wider (Part *self, double from, double to)
{
  if (to - from > self->to - self->from)
    *self = (Part) { from, to };
}

/* The widest part that no handrail reaches. */
static Part
beyond_reach (const GArray *rail, double half)
{
  Part self = { 0, 0 };
  double reached = -half; /* all on the left of there is in reach, or kept */

  for (guint k = 0; k < rail->len; k++)
    {
      const double x = across_at (rail, k);
      keep_wider (&self, reached, MIN (x - IN_REACH, half));
      reached = MAX (reached, x + IN_REACH);
    }
  keep_wider (&self, reached, half);
  return self;
}

static void
add_part (const FpMeasuring *of, GArray *out, int i, Part part)
{
  const FpPlaced *steps = fp_measuring_placed (of, i);
  const FpVec3 a = across (steps, part.from), b = across (steps, part.to);
  FpMeasured *measured = fp_measured_add_at (out, part.to - part.from, i, fp_vec3_scale (fp_vec3_add (a, b), 0.5));

  if (part.to > part.from)
    fp_measured_span (measured, a, b);
}

void
fp_take_flight_beyond_reach (const FpMeasuring *of, GArray *out)
{
  for (int i = fp_measuring_next (of, FP_ROLE_STEPS, -1); i >= 0; i = fp_measuring_next (of, FP_ROLE_STEPS, i))
    {
      const FpPlaced *steps = fp_measuring_placed (of, i);
      g_autoptr (GArray) rail = rails_of (of, steps);

      if (!is_short (steps))
        add_part (of, out, i, beyond_reach (rail, fp_placed_param (steps, "width", 0) / 2));
    }
}

/* From one handrail to the next. */
void
fp_take_flight_channel (const FpMeasuring *of, GArray *out)
{
  for (int i = fp_measuring_next (of, FP_ROLE_STEPS, -1); i >= 0; i = fp_measuring_next (of, FP_ROLE_STEPS, i))
    {
      g_autoptr (GArray) rail = rails_of (of, fp_measuring_placed (of, i));
      Part widest = { 0, 0 };

      for (guint k = 1; k < rail->len; k++)
        keep_wider (&widest, across_at (rail, k - 1), across_at (rail, k));
      if (widest.to > widest.from)
        add_part (of, out, i, widest);
    }
}

void
fp_show_handrails (const FpMeasuring *of, const FpMeasured *one, FpEvidence *out)
{
  g_autoptr (GArray) rail = rails_of (of, fp_measuring_placed (of, one->owner));

  for (guint k = 0; k < rail->len; k++)
    fp_evidence_add_thing (out, of, g_array_index (rail, Along, k).rail);
}
