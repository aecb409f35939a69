/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The communion rail and its gate. */
#include "measure-evidence.h"

#include <math.h>

/* Farther back from the edge than this, the people kneel on the rail's own floor and the edge does not concern them (design
 * judgement). */
#define LEDGE_MAX 1000.0

/* Face of the rail's own run towards the people, local y (returns lie on the other side). */
static double
people_face (const FpMeasuring *of, const FpPlaced *rail)
{
  guint n = 0;
  const FpSolid *solid = fp_scene_solids (of->scene, &n);
  double face = G_MAXDOUBLE;

  for (guint i = rail->first_solid; i < rail->first_solid + rail->n_solids && i < n; i++)
    if (solid[i].part == FP_PART_RAIL_TOP)
      for (guint c = 0; c < solid[i].n_outline; c++)
        face = MIN (face, fp_placed_local (rail, solid[i].outline[c]).y);
  return face < G_MAXDOUBLE ? face : rail->extent.plan.y0;
}

static double
altar_face (const FpMeasuring *of, const FpPlaced *rail)
{
  return people_face (of, rail) + fp_placed_param (rail, "top", 0);
}

/* The altar's middle as the rail sees it: x along it, y beyond it. */
static FpPoint
altar_from (const FpMeasuring *of, const FpPlaced *rail, gboolean *found)
{
  const FpPlaced *altar = fp_measuring_celebrated (of, NULL);
  FpPoint middle = { 0, 0 };

  *found = altar != NULL;
  if (altar)
    {
      FpVec3 m = fp_placed_middle (altar, 0);

      middle = (FpPoint) { m.x, m.y };
    }
  return fp_placed_local (rail, middle);
}

static gboolean
before_altar (const FpMeasuring *of, const FpPlaced *rail)
{
  gboolean found;
  FpPoint altar = altar_from (of, rail, &found);

  return !found || altar.y > people_face (of, rail);
}

static gboolean
across_axis (const FpMeasuring *of, const FpPlaced *rail)
{
  gboolean found;
  FpPoint altar = altar_from (of, rail, &found);

  return altar.x >= rail->extent.plan.x0 && altar.x <= rail->extent.plan.x1;
}

static FpVec3
rail_at (const FpMeasuring *of, const FpPlaced *rail, double x)
{
  return fp_placed_point (rail, (FpVec3) { x, people_face (of, rail), fp_placed_param (rail, "height", 0) });
}

static int
next_rail (const FpMeasuring *of, int after)
{
  int i = after;

  do
    i = fp_measuring_next (of, FP_ROLE_RAIL, i);
  while (i >= 0 && !before_altar (of, fp_measuring_placed (of, i)));
  return i;
}

static void
take_param (const FpMeasuring *of, GArray *out, const char *id)
{
  for (int i = next_rail (of, -1); i >= 0; i = next_rail (of, i))
    {
      const FpPlaced *rail = fp_measuring_placed (of, i);

      fp_measured_add_at (out, fp_placed_param (rail, id, NAN), i, rail_at (of, rail, 0));
    }
}

void
fp_take_rail_height (const FpMeasuring *of, GArray *out)
{
  take_param (of, out, "height");
}

void
fp_take_rail_top (const FpMeasuring *of, GArray *out)
{
  take_param (of, out, "top");
}

void
fp_take_kneeling_width (const FpMeasuring *of, GArray *out)
{
  take_param (of, out, "kneeling");
}

void
fp_take_kneeling_places (const FpMeasuring *of, GArray *out)
{
  guint n = 0, at_rail = 0;
  const FpPersonPlace *place = fp_people_places (of->people, &n);
  int rail = next_rail (of, -1);

  for (guint i = 0; i < n; i++)
    at_rail += place[i].at_rail ? 1 : 0;
  if (rail >= 0)
    fp_measured_add_at (out, at_rail, rail, rail_at (of, fp_measuring_placed (of, rail), 0));
}

static gboolean
kneels_at_rail (const FpMeasuring *of, guint i, gpointer data)
{
  (void) data;
  return fp_measuring_place (of, i)->at_rail;
}

void
fp_show_kneeling_places (const FpMeasuring *of, const FpMeasured *one, FpEvidence *out)
{
  (void) one;
  fp_evidence_add_places (out, of, kneels_at_rail, NULL);
}

/* --- the gate ------------------------------------------------------------ */

typedef struct { double clear, off_axis; int owner; FpVec3 at, jamb[2], axis; } Gate;

/* The gate in a rail that crosses the axis. */
static gboolean
gate_in_rail (const FpMeasuring *of, Gate *gate)
{
  for (int i = next_rail (of, -1); i >= 0; i = next_rail (of, i))
    {
      const FpPlaced *rail = fp_measuring_placed (of, i);
      gboolean found;

      if (!across_axis (of, rail))
        continue;
      gate->clear = fp_placed_param (rail, "gate", 0);
      gate->off_axis = fabs (altar_from (of, rail, &found).x);
      gate->owner = i;
      gate->at = rail_at (of, rail, 0);
      gate->jamb[0] = rail_at (of, rail, -gate->clear / 2);
      gate->jamb[1] = rail_at (of, rail, gate->clear / 2);
      gate->axis = rail_at (of, rail, altar_from (of, rail, &found).x);
      return TRUE;
    }
  return FALSE;
}

/* A point of the altar's coordinates, on the floor of the rail. */
static FpVec3
across_gate (const FpMeasuring *of, const FpPlaced *altar, const Gate *gate, double x, double y)
{
  FpVec3 at = { x, y, 0 };

  if (altar)
    at = fp_placed_point (altar, at);
  at.z = fp_measuring_placed (of, gate->owner)->level;
  return at;
}

/* Or the gap between one rail and another, on either side of the altar's axis. */
static gboolean
gate_between (const FpMeasuring *of, Gate *gate)
{
  const FpPlaced *altar = fp_measuring_celebrated (of, NULL);
  double left = -G_MAXDOUBLE, right = G_MAXDOUBLE, y = 0;

  for (int i = next_rail (of, -1); i >= 0; i = next_rail (of, i))
    {
      const FpPlaced *rail = fp_measuring_placed (of, i);
      FpBox box = altar ? fp_placed_box_in (rail, altar) : rail->plan;

      if (box.x1 < 0 && box.x1 > left)
        {
          left = box.x1;
          y = (box.y0 + box.y1) / 2;
          gate->owner = i;
        }
      if (box.x0 > 0)
        right = MIN (right, box.x0);
    }
  if (!(left > -G_MAXDOUBLE && right < G_MAXDOUBLE))
    return FALSE;

  gate->clear = right - left;
  gate->off_axis = fabs ((right + left) / 2);
  gate->at = across_gate (of, altar, gate, (left + right) / 2, y);
  gate->jamb[0] = across_gate (of, altar, gate, left, y);
  gate->jamb[1] = across_gate (of, altar, gate, right, y);
  gate->axis = across_gate (of, altar, gate, 0, y);
  return TRUE;
}

static gboolean
find_gate (const FpMeasuring *of, Gate *gate)
{
  return gate_in_rail (of, gate) || gate_between (of, gate);
}

void
fp_take_gates (const FpMeasuring *of, GArray *out)
{
  Gate gate;

  if (find_gate (of, &gate))
    fp_measured_span (fp_measured_add_at (out, gate.clear > 0 ? 1 : 0, gate.owner, gate.at), gate.jamb[0], gate.jamb[1]);
}

void
fp_take_gate_clear (const FpMeasuring *of, GArray *out)
{
  Gate gate;

  if (find_gate (of, &gate) && gate.clear > 0)
    fp_measured_span (fp_measured_add_at (out, gate.clear, gate.owner, gate.at), gate.jamb[0], gate.jamb[1]);
}

void
fp_take_gate_off_axis (const FpMeasuring *of, GArray *out)
{
  Gate gate;

  if (find_gate (of, &gate) && gate.clear > 0)
    fp_measured_span (fp_measured_add_at (out, gate.off_axis, gate.owner, gate.at), gate.at, gate.axis);
}

/* --- its distances ------------------------------------------------------- */

void
fp_take_step_to_rail (const FpMeasuring *of, GArray *out)
{
  const FpPlaced *altar = fp_measuring_celebrated (of, NULL);
  int foot = fp_measuring_footpace (of, altar);
  const FpPlaced *lowest = foot >= 0 ? fp_measuring_placed (of, foot) : altar;

  for (int i = next_rail (of, -1); lowest && i >= 0; i = next_rail (of, i))
    {
      const FpPlaced *rail = fp_measuring_placed (of, i);
      FpBox steps = fp_placed_box_in (lowest, rail);

      const double face = altar_face (of, rail);

      fp_measured_span (fp_measured_add_at (out, MAX (0, steps.y0 - face), i,
                                            fp_placed_point (rail, (FpVec3) { 0, (steps.y0 + face) / 2, 0 })),
                        fp_placed_point (rail, (FpVec3) { 0, face, 0 }),
                        fp_placed_point (rail, (FpVec3) { 0, MAX (steps.y0, face), 0 }));
    }
}

void
fp_take_rail_setback (const FpMeasuring *of, GArray *out)
{
  for (int i = next_rail (of, -1); i >= 0; i = next_rail (of, i))
    {
      const FpPlaced *rail = fp_measuring_placed (of, i);
      double turn = rail->place.turn * G_PI / 180;
      /* Beside the gate, where people kneel. */
      double x = fp_placed_param (rail, "gate", 0) / 2 + 1;
      /* From the middle of the rail, which stands on the step even where its face is over the edge. */
      FpVec3 middle = fp_placed_point (rail, (FpVec3) { x, 0, 0 });
      double edge = fp_measuring_walk (of, (FpPoint) { middle.x, middle.y }, sin (turn), -cos (turn),
                                       LEDGE_MAX - people_face (of, rail), NULL);

      if (edge >= 0)
        {
          const double face = people_face (of, rail);

          fp_measured_span (fp_measured_add_at (out, MAX (0, edge + face), i, rail_at (of, rail, x)),
                            fp_placed_point (rail, (FpVec3) { x, face, 0 }),
                            fp_placed_point (rail, (FpVec3) { x, MIN (-edge, face), 0 }));
        }
    }
}
