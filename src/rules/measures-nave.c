/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Nave and sanctuary against each other, what of the nave is seats, and which way people look. */
#include "measure-evidence.h"

#include <math.h>

/* --- floors ---------------------------------------------------------------------------- */

typedef struct { FpBox box; double area; guint n; } Ground;

static Ground
ground_of (const FpMeasuring *of, FpFloorUse use)
{
  Ground ground = { { INFINITY, INFINITY, -INFINITY, -INFINITY }, 0, 0 };
  guint n;
  const FpFloor *floor = fp_scene_floors (of->scene, &n);

  for (guint i = 0; i < n; i++)
    {
      if (floor[i].use != use || fp_placed_role (fp_measuring_placed (of, (int) floor[i].owner)) != FP_ROLE_FLOOR)
        continue;
      for (guint c = 0; c < floor[i].n_outline; c++)
        {
          ground.box.x0 = MIN (ground.box.x0, floor[i].outline[c].x);
          ground.box.x1 = MAX (ground.box.x1, floor[i].outline[c].x);
          ground.box.y0 = MIN (ground.box.y0, floor[i].outline[c].y);
          ground.box.y1 = MAX (ground.box.y1, floor[i].outline[c].y);
        }
      ground.area += fabs (fp_outline_area (floor[i].outline, floor[i].n_outline));
      ground.n++;
    }
  return ground;
}

void
fp_take_sanctuary_of_nave (const FpMeasuring *of, GArray *out)
{
  const Ground nave = ground_of (of, FP_FLOOR_PEOPLE), sanctuary = ground_of (of, FP_FLOOR_MINISTERS);

  if (nave.n > 0 && sanctuary.n > 0 && nave.box.y1 > nave.box.y0)
    fp_measured_add (out, (sanctuary.box.y1 - sanctuary.box.y0) / (nave.box.y1 - nave.box.y0));
}

/* At the Gospel side of each. */
void
fp_show_sanctuary_of_nave (const FpMeasuring *of, const FpMeasured *one, FpEvidence *out)
{
  static const FpFloorUse uses[] = { FP_FLOOR_PEOPLE, FP_FLOOR_MINISTERS };

  (void) one;
  for (guint i = 0; i < G_N_ELEMENTS (uses); i++)
    {
      const Ground ground = ground_of (of, uses[i]);

      fp_evidence_add_length (out, (FpVec3) { ground.box.x0, ground.box.y0, 0 }, (FpVec3) { ground.box.x0, ground.box.y1, 0 }, 0);
    }
}

/* --- pews ------------------------------------------------------------------------------ */

/* The ground that a block of straight rows takes: each row its spacing. */
static double
pews_area (const FpPlaced *pews)
{
  return fp_placed_param (pews, "rows", 1) * fp_placed_param (pews, "spacing", NAN) * fp_placed_param (pews, "length", NAN);
}

static guint
seats_of (const FpMeasuring *of, int owner)
{
  guint n, seats = 0;
  const FpPersonPlace *place = fp_people_places (of->people, &n);

  for (guint i = 0; i < n; i++)
    seats += place[i].owner == (guint) owner;
  return seats;
}

void
fp_take_pew_area (const FpMeasuring *of, GArray *out)
{
  for (int i = fp_measuring_next (of, FP_ROLE_PEWS, -1); i >= 0; i = fp_measuring_next (of, FP_ROLE_PEWS, i))
    {
      const FpPlaced *pews = fp_measuring_placed (of, i);
      const guint seats = seats_of (of, i);

      if (seats > 0)
        fp_measured_add_at (out, pews_area (pews) / seats, i, fp_placed_middle (pews, 0));
    }
}

/* The ground of one seat, in the middle of the first row: as deep as the rows are apart. */
void
fp_show_pew_area (const FpMeasuring *of, const FpMeasured *one, FpEvidence *out)
{
  const FpPlaced *pews = fp_measuring_placed (of, one->owner);
  const double deep = fp_placed_param (pews, "spacing", 0), half = deep > 0 ? one->value / deep / 2 : 0;

  fp_evidence_add_box (out, pews, &(FpBox) { -half, -deep, half, 0 }, fp_placed_param (pews, "seat-height", 0));
}

void
fp_show_nave_to_pews (const FpMeasuring *of, const FpMeasured *one, FpEvidence *out)
{
  (void) one;
  fp_evidence_add_floors (out, of, FP_FLOOR_PEOPLE);
  fp_evidence_add_role (out, of, FP_ROLE_PEWS);
}

void
fp_take_nave_to_pews (const FpMeasuring *of, GArray *out)
{
  const Ground nave = ground_of (of, FP_FLOOR_PEOPLE);
  double pews = 0;

  for (int i = fp_measuring_next (of, FP_ROLE_PEWS, -1); i >= 0; i = fp_measuring_next (of, FP_ROLE_PEWS, i))
    pews += pews_area (fp_measuring_placed (of, i));
  if (nave.n > 0 && pews > 0)
    fp_measured_add (out, nave.area / pews);
}

/* As many more inches as a long row asks for: 12 in, and @each for a seat over @few, never more than 22 in. */
static double
clear_wanted (double seats, double few, double each)
{
  return FP_MM_PER_INCH * MIN (12 + each * MAX (seats - few, 0), 22);
}

static double
most_in_a_row (const FpMeasuring *of, int owner)
{
  guint n, most = 0;
  const FpPersonPlace *place = fp_people_places (of->people, &n);

  for (guint i = 0; i < n; i++)
    if (place[i].owner == (guint) owner)
      most = MAX (most, place[i].number);
  return most;
}

void
fp_take_row_clear_lacking (const FpMeasuring *of, GArray *out)
{
  for (int i = fp_measuring_next (of, FP_ROLE_PEWS, -1); i >= 0; i = fp_measuring_next (of, FP_ROLE_PEWS, i))
    {
      const FpPlaced *pews = fp_measuring_placed (of, i);
      const double clear = fp_placed_param (pews, "spacing", NAN) - fp_placed_param (pews, "depth", NAN);
      const double seats = most_in_a_row (of, i);

      if (fp_placed_param (pews, "rows", 1) >= 2 && seats > 0)
        fp_measured_add_at (out, MAX (clear_wanted (seats, 14, 0.3) - clear, 0), i, fp_placed_middle (pews, 0));
    }
}

/* The way there is, and beside it the way that is wanted. */
void
fp_show_row_clear_lacking (const FpMeasuring *of, const FpMeasured *one, FpEvidence *out)
{
  const FpPlaced *pews = fp_measuring_placed (of, one->owner);
  const double back = -fp_placed_param (pews, "depth", 0), next = -fp_placed_param (pews, "spacing", 0);
  const double wanted = clear_wanted (most_in_a_row (of, one->owner), 14, 0.3), z = fp_placed_param (pews, "seat-height", 0);
  const double beside = fp_placed_param (pews, "seat-width", 0);

  fp_evidence_add_length_in (out, pews, (FpVec3) { 0, back, z }, (FpVec3) { 0, next, z }, one->value > 0 ? -1 : 0);
  if (one->value > 0)
    fp_evidence_add_length_in (out, pews, (FpVec3) { beside, back, z }, (FpVec3) { beside, back - wanted, z }, 1);
}

/* --- which way they look ---------------------------------------------------------------- */

static double
degrees_between (double a, double b)
{
  return fabs (remainder (a - b, 360));
}

/* Up to here a head is turned in comfort: from memory, Metric Handbook and others. */
#define TURNED 30.0

/* Counter-clockwise from liturgical east, in which the altar lies from a place; and how far its people are turned from that. */
static double
turned_by (const FpPersonPlace *place, FpVec3 middle)
{
  return degrees_between (atan2 (-(middle.x - place->at.x), middle.y - place->at.y) * 180 / G_PI, place->facing);
}

void
fp_take_places_turned (const FpMeasuring *of, GArray *out)
{
  const FpPlaced *altar = fp_measuring_celebrated (of, NULL);
  guint n, turned = 0, seated = 0;
  const FpPersonPlace *place = fp_people_places (of->people, &n);
  double most = 0;
  guint worst = 0;
  FpVec3 middle;

  if (!altar)
    return;
  middle = fp_placed_middle (altar, 0);
  for (guint i = 0; i < n; i++)
    {
      const double off = turned_by (&place[i], middle);

      if (!fp_measuring_in_church (of, i))
        continue;
      seated++;
      turned += off > TURNED;
      if (off > most)
        {
          most = off;
          worst = i;
        }
    }
  if (seated > 0)
    fp_measured_add_at (out, (double) turned / seated, (int) place[worst].owner, place[worst].at)->text
      = fp_places_of (turned, seated, "turns by more than 30°", "turn by more than 30°");
}

static gboolean
is_turned (const FpMeasuring *of, guint i, gpointer data)
{
  return fp_measuring_in_church (of, i) && turned_by (fp_measuring_place (of, i), *(const FpVec3 *) data) > TURNED;
}

/* From the place that is turned most straight on, and to the altar; and each that is turned too far. */
void
fp_show_places_turned (const FpMeasuring *of, const FpMeasured *one, FpEvidence *out)
{
  FpVec3 middle = fp_placed_middle (fp_measuring_celebrated (of, NULL), 0);
  guint n;
  const FpPersonPlace *place = fp_people_places (of->people, &n);

  for (guint i = 0; i < n; i++)
    if (place[i].at.x == one->at.x && place[i].at.y == one->at.y)
      {
        const double turn = place[i].facing * G_PI / 180, far = hypot (middle.x - one->at.x, middle.y - one->at.y) / 2;

        fp_evidence_add_line (out, one->at, (FpVec3) { middle.x, middle.y, one->at.z });
        fp_evidence_add_line (out, one->at, (FpVec3) { one->at.x - far * sin (turn), one->at.y + far * cos (turn), one->at.z });
        break;
      }
  fp_evidence_add_places (out, of, is_turned, &middle);
}

/* From the first row up to the top of what stands highest of the altar's cross. */
void
fp_take_look_up (const FpMeasuring *of, GArray *out)
{
  int index;
  const FpPlaced *cross = fp_measuring_role (of, FP_ROLE_CRUCIFIX, &index);
  guint n, worst = 0;
  const FpPersonPlace *place = fp_people_places (of->people, &n);
  double most = -INFINITY;
  FpVec3 top;

  if (!cross)
    return;
  top = fp_placed_middle (cross, cross->extent.height);
  for (guint i = 0; i < n; i++)
    {
      const FpVec3 eye = fp_people_plain_eye (of->people, i, FP_POSTURE_SITTING);
      const double up = atan2 (top.z - eye.z, hypot (top.x - eye.x, top.y - eye.y)) * 180 / G_PI;

      if (fp_measuring_in_church (of, i) && place[i].postures & (1u << FP_POSTURE_SITTING) && up > most)
        {
          most = up;
          worst = i;
        }
    }
  if (most > -INFINITY)
    fp_measured_add_at (out, most, (int) place[worst].owner, place[worst].at)->detail = fp_people_name (of->people, worst);
}

/* From the eye up, and level under it. */
void
fp_show_look_up (const FpMeasuring *of, const FpMeasured *one, FpEvidence *out)
{
  const FpPlaced *cross = fp_measuring_role (of, FP_ROLE_CRUCIFIX, NULL);
  const FpVec3 top = fp_placed_middle (cross, cross->extent.height);
  guint n;
  const FpPersonPlace *place = fp_people_places (of->people, &n);

  for (guint i = 0; i < n; i++)
    if (place[i].at.x == one->at.x && place[i].at.y == one->at.y)
      {
        const FpVec3 eye = fp_people_plain_eye (of->people, i, FP_POSTURE_SITTING);

        fp_evidence_add_line (out, eye, top);
        fp_evidence_add_line (out, eye, (FpVec3) { top.x, top.y, eye.z });
        return;
      }
}
