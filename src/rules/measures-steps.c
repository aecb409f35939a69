/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The steps of the altar, the footpace, and the steps between floors. */
#include "measure-evidence.h"

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
fp_show_two_risers_and_tread (const FpMeasuring *of, const FpMeasured *one, FpEvidence *out)
{
  fp_evidence_add_param (out, fp_measuring_placed (of, one->owner), "riser", 2);
  fp_evidence_add_param (out, fp_measuring_placed (of, one->owner), "tread", 1);
}

/* Each step by the edge of its top. */
void
fp_show_steps (const FpMeasuring *of, const FpMeasured *one, FpEvidence *out)
{
  const FpPlaced *thing = fp_measuring_placed (of, one->owner);
  const int footpace = thing && fp_placed_role (thing) == FP_ROLE_ALTAR ? fp_measuring_footpace (of, thing) : one->owner;
  const FpPlaced *steps = fp_measuring_placed (of, footpace);
  guint n;
  const FpSolid *solid = fp_scene_solids (of->scene, &n);

  for (guint i = steps ? steps->first_solid : n; i < n && i < steps->first_solid + steps->n_solids; i++)
    fp_evidence_add_solid (out, &solid[i]);
}

void
fp_take_footpace_ends (const FpMeasuring *of, GArray *out)
{
  take_param (of, out, "ends", 1);
}

/* Of the footpace, where the celebrant stands. */
static const char *
side_of_celebrant (const FpMeasuring *of)
{
  const FpPlaced *altar = fp_measuring_celebrated (of, NULL);

  return altar && altar->form.facing == FP_FACING_PEOPLE ? "behind" : "front";
}

void
fp_take_footpace_celebrant (const FpMeasuring *of, GArray *out)
{
  take_param (of, out, side_of_celebrant (of), 1);
}

void
fp_show_footpace_celebrant (const FpMeasuring *of, const FpMeasured *one, FpEvidence *out)
{
  fp_evidence_add_param (out, fp_measuring_placed (of, one->owner), side_of_celebrant (of), 1);
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

void
fp_show_footpace_behind_share (const FpMeasuring *of, const FpMeasured *one, FpEvidence *out)
{
  fp_evidence_add_param (out, fp_measuring_placed (of, one->owner), "front", 0);
  fp_evidence_add_param (out, fp_measuring_placed (of, one->owner), "behind", 0);
}

/* --- risers from floor to floor ------------------------------------------ */

typedef struct { double rise; int owner; FpVec3 foot; } Riser;
typedef struct { Riser least, most; guint flights; } Risers;

static void
note_riser (Risers *risers, double rise, int owner, FpVec3 foot)
{
  const Riser riser = { rise, owner, foot };

  if (risers->flights == 0 || rise < risers->least.rise)
    risers->least = riser;
  if (risers->flights == 0 || rise > risers->most.rise)
    risers->most = riser;
  risers->flights++;
}

/* A flight between floors: its own risers, and the last one up to the floor as surveyed. */
static void
note_flight (const FpMeasuring *of, int index, Risers *risers)
{
  const FpPlaced *steps = fp_measuring_placed (of, index);
  double count = fp_placed_param (steps, "count", 1), riser = fp_placed_param (steps, "riser", 0);
  double tread = fp_placed_param (steps, "tread", 0), last, half = fp_placed_param (steps, "width", 0) / 2;
  FpVec3 foot = fp_placed_point (steps, (FpVec3) { half, (count - 1) * tread, (count - 1) * riser });
  FpPoint beyond = fp_place_point (&steps->place, (FpPoint) { 0, count * tread + LANDING });
  gboolean found = FALSE;
  double above = fp_scene_floor_at (of->scene, beyond, &found);

  if (count > 1)
    note_riser (risers, riser, index, fp_placed_point (steps, (FpVec3) { half, 0, 0 }));
  last = above - (steps->level + (count - 1) * riser);
  note_riser (risers, found && above > steps->level && last > 0 ? last : riser, index, foot);
}

static Risers
risers_to_altar (const FpMeasuring *of)
{
  Risers risers = { 0 };
  FpVec3 at;
  int index;
  const FpPlaced *placed = footpace (of, &index, &at);

  for (int i = fp_measuring_next (of, FP_ROLE_STEPS, -1); i >= 0; i = fp_measuring_next (of, FP_ROLE_STEPS, i))
    note_flight (of, i, &risers);
  if (placed)
    note_riser (&risers, fp_placed_param (placed, "riser", 0), index, at);
  return risers;
}

void
fp_take_riser_spread (const FpMeasuring *of, GArray *out)
{
  const Risers risers = risers_to_altar (of);

  if (risers.flights >= 2)
    {
      g_autofree char *least = fp_measuring_name (of, risers.least.owner);
      g_autofree char *most = fp_measuring_name (of, risers.most.owner);
      FpMeasured *measured
        = fp_measured_add_at (out, risers.most.rise - risers.least.rise, risers.most.owner,
                              fp_placed_middle (fp_measuring_placed (of, risers.most.owner), 0));
      FpUnits units = fp_project_brief (fp_scene_project (of->scene))->units;
      g_autofree char *low = fp_length_format_unit (risers.least.rise, units);
      g_autofree char *high = fp_length_format_unit (risers.most.rise, units);

      measured->detail = g_strdup_printf ("from %s (%s) to %s (%s)", low, least, high, most);
    }
}

static void
add_riser (FpEvidence *out, const Riser *riser, double times)
{
  fp_evidence_add_length (out, riser->foot, (FpVec3) { riser->foot.x, riser->foot.y, riser->foot.z + riser->rise }, times);
}

/* The highest, less the lowest. */
void
fp_show_riser_spread (const FpMeasuring *of, const FpMeasured *one, FpEvidence *out)
{
  const Risers risers = risers_to_altar (of);

  (void) one;
  add_riser (out, &risers.most, 1);
  add_riser (out, &risers.least, -1);
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
sanctuary_edge (const FpMeasuring *of, int *owner, FpVec3 *from, FpVec3 *edge, double *drop)
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

    *edge = (FpVec3) { start.x + sin (turn) * walked, start.y - cos (turn) * walked, 0 };
    /* The floor up to there, a hair before its end. */
    edge->z = fp_scene_floor_at (of->scene, (FpPoint) { edge->x - sin (turn) * before, edge->y + cos (turn) * before }, NULL);
    *from = (FpVec3) { start.x - sin (turn) * before, start.y + cos (turn) * before, edge->z };
    return walked < 0 ? -1 : walked + before;
  }
}

void
fp_take_step_to_sanctuary_edge (const FpMeasuring *of, GArray *out)
{
  int owner = -1;
  FpVec3 from, edge;
  double walked = sanctuary_edge (of, &owner, &from, &edge, NULL);

  if (walked >= 0)
    fp_measured_span (fp_measured_add_at (out, walked, owner, from), from, edge);
}

void
fp_take_sanctuary_above_nave (const FpMeasuring *of, GArray *out)
{
  int owner = -1;
  FpVec3 from, edge;
  double drop = 0;

  if (sanctuary_edge (of, &owner, &from, &edge, &drop) >= 0)
    fp_measured_span (fp_measured_add_at (out, drop, owner, from), (FpVec3) { edge.x, edge.y, edge.z - drop }, edge);
  else if (of->levels.has_altar && of->levels.has_people)
    {
      const FpVec3 foot = of->levels.highest_at;

      fp_measured_span (fp_measured_add (out, of->levels.sanctuary - of->levels.highest), foot,
                        (FpVec3) { foot.x, foot.y, of->levels.sanctuary });
    }
}
