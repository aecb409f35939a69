/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The steps of the altar, the footpace, and the steps between floors. */
#include "measuring.h"

#include <math.h>
#include <string.h>

/* Beyond the last tread of a flight, to stand on the floor above (design judgement). */
#define LANDING 50.0

/* The footpace under the altar of celebration; NULL. */
static const FpPlaced *
footpace (const FpMeasuring *of, int *index, FpVec3 *at)
{
  const FpPlaced *altar = fp_measuring_celebrated (of, NULL);
  const FpPlaced *placed;

  *index = fp_measuring_footpace (of, altar);
  placed = fp_measuring_placed (of, *index);
  if (placed)
    {
      const FpBox *plan = &placed->extent.plan;

      /* The middle of the steps in front. */
      *at = fp_placed_point (placed, (FpVec3) { (plan->x0 + plan->x1) / 2, plan->y0, 0 });
    }
  return placed;
}

static void
take_param (const FpMeasuring *of, GArray *out, const char *id, double least_count)
{
  FpVec3 at;
  int index;
  const FpPlaced *placed = footpace (of, &index, &at);
  double value = placed ? fp_placed_param (placed, id, NAN) : NAN;

  if (!isnan (value) && fp_placed_param (placed, "count", 1) >= least_count)
    fp_measured_add_at (out, value, index, at);
}

void
fp_take_altar_steps (const FpMeasuring *of, GArray *out)
{
  int index = -1;
  const FpPlaced *altar = fp_measuring_celebrated (of, &index);

  if (altar && fp_measuring_footpace (of, altar) < 0)
    fp_measured_add_at (out, 0, index, fp_placed_middle (altar, 0));
  else
    take_param (of, out, "count", 0);
}

void
fp_take_riser (const FpMeasuring *of, GArray *out)
{
  take_param (of, out, "riser", 1);
}

/* On how many sides of the altar one may go up. */
void
fp_take_step_sides (const FpMeasuring *of, GArray *out)
{
  static const double sides[] = { 1, 3, 4 }; /* in the order of the choices */
  FpVec3 at;
  int index;
  const FpPlaced *placed = footpace (of, &index, &at);
  const double choice = placed ? fp_placed_param (placed, "sides", NAN) : NAN;

  if (choice >= 0 && choice < G_N_ELEMENTS (sides))
    fp_measured_add_at (out, sides[(guint) choice], index, at);
}

/* A single step has no tread but the footpace itself. */
void
fp_take_tread (const FpMeasuring *of, GArray *out)
{
  take_param (of, out, "tread", 2);
}

void
fp_take_two_risers_and_tread (const FpMeasuring *of, GArray *out)
{
  FpVec3 at;
  int index;
  const FpPlaced *placed = footpace (of, &index, &at);

  if (placed && fp_placed_param (placed, "count", 0) >= 2)
    fp_measured_add_at (out, 2 * fp_placed_param (placed, "riser", NAN) + fp_placed_param (placed, "tread", NAN),
                        index, at);
}

void
fp_take_footpace_ends (const FpMeasuring *of, GArray *out)
{
  take_param (of, out, "ends", 1);
}

void
fp_take_footpace_celebrant (const FpMeasuring *of, GArray *out)
{
  const FpPlaced *altar = fp_measuring_celebrated (of, NULL);

  take_param (of, out, altar && altar->form.facing == FP_FACING_PEOPLE ? "behind" : "front", 1);
}

void
fp_take_footpace_behind_share (const FpMeasuring *of, GArray *out)
{
  FpVec3 at;
  int index;
  const FpPlaced *placed = footpace (of, &index, &at);
  double front = placed ? fp_placed_param (placed, "front", 0) : 0;

  if (front > 0)
    fp_measured_add_at (out, fp_placed_param (placed, "behind", 0) / front, index, at);
}

/* --- risers from floor to floor ------------------------------------------ */

typedef struct { double least, most; int least_owner, most_owner; guint flights; } Risers;

static void
note_riser (Risers *risers, double riser, int owner)
{
  if (risers->flights == 0 || riser < risers->least)
    {
      risers->least = riser;
      risers->least_owner = owner;
    }
  if (risers->flights == 0 || riser > risers->most)
    {
      risers->most = riser;
      risers->most_owner = owner;
    }
  risers->flights++;
}

/* A flight between floors: its own risers, and the last one up to the floor as surveyed. */
static void
note_flight (const FpMeasuring *of, int index, Risers *risers)
{
  const FpPlaced *steps = fp_measuring_placed (of, index);
  double count = fp_placed_param (steps, "count", 1), riser = fp_placed_param (steps, "riser", 0);
  double tread = fp_placed_param (steps, "tread", 0), last;
  FpPoint beyond = fp_place_point (&steps->place, (FpPoint) { 0, count * tread + LANDING });
  gboolean found = FALSE;
  double above = fp_scene_floor_at (of->scene, beyond, &found);

  if (count > 1)
    note_riser (risers, riser, index);
  last = above - (steps->level + (count - 1) * riser);
  note_riser (risers, found && above > steps->level && last > 0 ? last : riser, index);
}

void
fp_take_riser_spread (const FpMeasuring *of, GArray *out)
{
  Risers risers = { 0 };
  FpVec3 at;
  int index;
  const FpPlaced *placed = footpace (of, &index, &at);

  for (int i = fp_measuring_next (of, FP_ROLE_STEPS, -1); i >= 0; i = fp_measuring_next (of, FP_ROLE_STEPS, i))
    note_flight (of, i, &risers);
  if (placed)
    note_riser (&risers, fp_placed_param (placed, "riser", 0), index);

  if (risers.flights >= 2)
    {
      g_autofree char *least = fp_measuring_name (of, risers.least_owner);
      g_autofree char *most = fp_measuring_name (of, risers.most_owner);
      FpMeasured *measured
        = fp_measured_add_at (out, risers.most - risers.least, risers.most_owner,
                              fp_placed_middle (fp_measuring_placed (of, risers.most_owner), 0));
      FpUnits units = fp_project_brief (fp_scene_project (of->scene))->units;
      g_autofree char *low = fp_length_format_unit (risers.least, units);
      g_autofree char *high = fp_length_format_unit (risers.most, units);

      measured->detail = g_strdup_printf ("from %s (%s) to %s (%s)", low, least, high, most);
    }
}

void
fp_take_floor_risers (const FpMeasuring *of, GArray *out)
{
  for (int i = fp_measuring_next (of, FP_ROLE_STEPS, -1); i >= 0; i = fp_measuring_next (of, FP_ROLE_STEPS, i))
    {
      const FpPlaced *steps = fp_measuring_placed (of, i);

      fp_measured_add_at (out, fp_placed_param (steps, "riser", NAN), i, fp_placed_middle (steps, 0));
    }
}

void
fp_take_floor_treads (const FpMeasuring *of, GArray *out)
{
  for (int i = fp_measuring_next (of, FP_ROLE_STEPS, -1); i >= 0; i = fp_measuring_next (of, FP_ROLE_STEPS, i))
    {
      const FpPlaced *steps = fp_measuring_placed (of, i);

      if (fp_placed_param (steps, "count", 1) >= 2)
        fp_measured_add_at (out, fp_placed_param (steps, "tread", NAN), i, fp_placed_middle (steps, 0));
    }
}

/* --- where the sanctuary ends -------------------------------------------- */

#define SANCTUARY_FAR 60000.0

/* From the lowest step, straight towards the people, to where the floor falls. */
static double
sanctuary_edge (const FpMeasuring *of, int *owner, FpVec3 *from, double *drop)
{
  const FpPlaced *altar = fp_measuring_celebrated (of, owner);
  int foot = fp_measuring_footpace (of, altar);
  const FpPlaced *lowest = foot >= 0 ? fp_measuring_placed (of, foot) : altar;
  double turn, before = 1;
  FpPoint start;

  if (!lowest)
    return -1;
  turn = lowest->place.turn * G_PI / 180;
  *from = fp_placed_point (lowest, (FpVec3) { 0, lowest->extent.plan.y0, 0 });
  /* A hair in front, so that the edge of the steps is not taken for the edge of the floor. */
  start = (FpPoint) { from->x + sin (turn) * before, from->y - cos (turn) * before };
  *from = (FpVec3) { start.x, start.y, from->z };
  {
    double walked = fp_measuring_walk (of, start, sin (turn), -cos (turn), SANCTUARY_FAR, drop);

    return walked < 0 ? -1 : walked + before;
  }
}

void
fp_take_step_to_sanctuary_edge (const FpMeasuring *of, GArray *out)
{
  int owner = -1;
  FpVec3 from;
  double walked = sanctuary_edge (of, &owner, &from, NULL);

  if (walked >= 0)
    fp_measured_add_at (out, walked, owner, from);
}

void
fp_take_sanctuary_above_nave (const FpMeasuring *of, GArray *out)
{
  int owner = -1;
  FpVec3 from;
  double drop = 0;

  if (sanctuary_edge (of, &owner, &from, &drop) >= 0)
    fp_measured_add_at (out, drop, owner, from);
  else if (of->levels.has_altar && of->levels.has_people)
    fp_measured_add (out, of->levels.sanctuary - of->levels.highest);
}
