/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Places to stand, to kneel and to genuflect about the altar and at the rail, on the floor that is free there. */
#include "measure-evidence.h"
#include "measuring-ways.h"

#include <math.h>

/* Design judgement, mm. */
#define HALF_BODY   300.0  /* of who genuflects or stands: so far to either side floor has to be free            */
#define HAIR        1.0
#define FAR         5000.0
#define STANDING    280.0  /* of a step, so that a foot stands on it wholly                                      */
#define PLACES_MOST 3
#define BODY_DEPTH  450.0  /* of who stands in vestments, front to back                                          */
#define RAIL_FAR    6000.0
#define BESIDE_FACE 30.0   /* from where on it is looked for what is behind who kneels there                      */
#define OVER_EDGE   15.0   /* beyond an edge: where floor lies there, it was the edge of a step                    */
#define KNEES       150.0  /* before the face of the rail, as its kind has it                                      */

static const FpFreeLevel *
level_at (const FpMeasuring *of, FpPoint at)
{
  guint n;
  const FpFreeFloor *floor = fp_scene_free_floor (of->scene);
  const FpFreeLevel *level = fp_free_floor_levels (floor, &n);
  const int i = fp_free_floor_level_at (floor, at);

  return i >= 0 ? &level[i] : NULL;
}

/* Straight on from (x, y) of the altar's own coordinates, on one level, as far as a body so wide has it free; 0 where its
 * beginning is not free. */
static double
one_level_ahead (const FpMeasuring *of, const FpPlaced *altar, double x, double y, double side, double far)
{
  const FpPlace turn = { 0, 0, altar->place.turn };
  const FpPoint way = fp_place_point (&turn, (FpPoint) { 0, side });

  for (int k = -1; k <= 1; k++)
    {
      const FpPoint from = fp_place_point (&altar->place, (FpPoint) { x + k * HALF_BODY, y });
      const FpFreeLevel *level = level_at (of, from);

      if (!level)
        return 0;
      far = fp_free_level_ahead (level, from, way.x, way.y, far);
    }
  return far;
}

static FpVec3
at_altar (const FpPlaced *altar, double y)
{
  return fp_placed_point (altar, (FpVec3) { (altar->extent.plan.x0 + altar->extent.plan.x1) / 2, y, 0 });
}

static FpPoint
flat (FpVec3 p)
{
  return (FpPoint) { p.x, p.y };
}

static void
add_stretch (const FpMeasuring *of, const FpPlaced *altar, int owner, double from, double to, GArray *out)
{
  FpVec3 at = at_altar (altar, (from + to) / 2);
  FpMeasured *measured;

  at.z = fp_measuring_floor (of, flat (at));
  measured = fp_measured_add_at (out, fabs (to - from), owner, at);
  measured->way = fp_way_of_stretch (flat (at_altar (altar, from)), flat (at_altar (altar, to)));
}

/* --- genuflecting --------------------------------------------------------------------- */

/* Only where something stands on the footpace: how deep it is by itself is a measure of its own. */
void
fp_take_genuflect_footpace (const FpMeasuring *of, GArray *out)
{
  int index;
  const FpPlaced *altar = fp_measuring_celebrated (of, &index);
  const int foot = fp_measuring_footpace (of, altar);
  const gboolean behind = altar && altar->form.facing == FP_FACING_PEOPLE;
  double begin, depth, whole;

  if (!altar || foot < 0)
    return;
  begin = behind ? altar->extent.plan.y1 : altar->extent.plan.y0;
  whole = fp_placed_param (fp_measuring_placed (of, foot), behind ? "behind" : "front", 0);
  depth = one_level_ahead (of, altar, (altar->extent.plan.x0 + altar->extent.plan.x1) / 2,
                           begin + (behind ? HAIR : -HAIR), behind ? 1 : -1, FAR - HAIR) + HAIR;
  if (depth > whole - 5)
    fp_measured_add_nothing (out, "nothing stands on the footpace where the celebrant genuflects");
  else
    add_stretch (of, altar, index, begin, begin + (behind ? depth : -depth), out);
}

/* Before the lowest step, on the floor. */
void
fp_take_genuflect_floor (const FpMeasuring *of, GArray *out)
{
  const FpPlaced *altar = fp_measuring_celebrated (of, NULL);
  const int foot = fp_measuring_footpace (of, altar);
  double begin, depth;

  if (!altar || foot < 0)
    return;
  begin = MIN (fp_placed_box_in (fp_measuring_placed (of, foot), altar).y0, altar->extent.plan.y0);
  depth = one_level_ahead (of, altar, (altar->extent.plan.x0 + altar->extent.plan.x1) / 2, begin - HAIR, -1, FAR - HAIR) + HAIR;
  add_stretch (of, altar, foot, begin, begin - depth, out);
}

/* --- three in line ----------------------------------------------------------------------- */

/* The floor on which one of them stands. */
static void
add_standing (FpEvidence *out, const FpMeasuring *of, const FpPlaced *altar, double y, double depth)
{
  const double middle = (altar->extent.plan.x0 + altar->extent.plan.x1) / 2;

  fp_evidence_add_box (out, altar, &(FpBox) { middle - HALF_BODY, y - depth, middle + HALF_BODY, y },
                       fp_measuring_floor (of, flat (at_altar (altar, y))) - altar->level);
}

/* From the footpace down: celebrant, deacon and subdeacon one behind the other, one to a level.  @last: (out): where the level
 * of the last begins, in the altar's coordinates. */
static guint
places_in_line (const FpMeasuring *of, const FpPlaced *altar, double *last, FpEvidence *drawn)
{
  double y = altar->extent.plan.y0 - HAIR;
  guint places = 0;

  while (places < PLACES_MOST)
    {
      const double length = one_level_ahead (of, altar, (altar->extent.plan.x0 + altar->extent.plan.x1) / 2, y, -1, FAR);

      if (length < STANDING - 2 * HAIR)
        break;
      *last = y;
      places++;
      if (drawn)
        add_standing (drawn, of, altar, y, MIN (length, BODY_DEPTH));
      if (length >= FAR) /* that floor goes on and on */
        break;
      y -= length + HAIR;
    }
  return places;
}

void
fp_take_ministers_in_line (const FpMeasuring *of, GArray *out)
{
  const FpPlaced *altar = fp_measuring_celebrated (of, NULL);
  const int foot = fp_measuring_footpace (of, altar);
  double last = 0;

  if (!altar || foot < 0)
    return;
  {
    const guint places = places_in_line (of, altar, &last, NULL);
    FpVec3 at = at_altar (altar, last);

    at.z = fp_measuring_floor (of, flat (at));
    fp_measured_add_at (out, places, foot, at);
  }
}

void
fp_show_ministers_in_line (const FpMeasuring *of, const FpMeasured *one, FpEvidence *out)
{
  double last;

  (void) one;
  places_in_line (of, fp_measuring_celebrated (of, NULL), &last, out);
}

/* Past the back of the last of them, over steps and floor, to the next thing. */
void
fp_take_behind_ministers (const FpMeasuring *of, GArray *out)
{
  const FpPlaced *altar = fp_measuring_celebrated (of, NULL);
  const int foot = fp_measuring_footpace (of, altar);
  const FpPlace turn = { 0, 0, altar ? altar->place.turn : 0 };
  const FpPoint back = fp_place_point (&turn, (FpPoint) { 0, -1 });
  double last = 0, far = FAR;

  if (!altar || foot < 0 || places_in_line (of, altar, &last, NULL) < PLACES_MOST)
    return;
  last -= BODY_DEPTH;
  for (int k = -1; k <= 1; k++)
    {
      const FpPoint from = flat (fp_placed_point (altar, (FpVec3) { (altar->extent.plan.x0 + altar->extent.plan.x1) / 2 + k * HALF_BODY,
                                                                    last, 0 }));
      far = level_at (of, from) ? fp_room_ahead (of->scene, FP_GAIT_ON_FOOT, from, back.x, back.y, far) : 0;
    }
  add_stretch (of, altar, foot, last, last - far, out);
}

/* --- at the rail ------------------------------------------------------------------------- */

/* To the next thing or the end of all floor; the edge of a step is none of both, for legs reach over it. */
static double
thing_ahead (const FpMeasuring *of, FpPoint from, FpPoint way, double far)
{
  double gone = 0;

  while (gone < far)
    {
      const FpPoint at = { from.x + way.x * gone, from.y + way.y * gone };
      const double next = gone + fp_room_ahead (of->scene, FP_GAIT_ON_FOOT, at, way.x, way.y, far - gone);
      const FpPoint beyond = { from.x + way.x * (next + OVER_EDGE), from.y + way.y * (next + OVER_EDGE) };

      if (next >= far || !level_at (of, beyond))
        return next;
      gone = next + OVER_EDGE;
    }
  return far;
}

/* From the face of the rail where somebody kneels, backwards. */
static double
behind_place (const FpMeasuring *of, const FpPersonPlace *place, FpPoint *face, FpPoint *end)
{
  const double turn = place->facing * G_PI / 180;
  const FpPoint back = { sin (turn), -cos (turn) };
  FpPoint from;
  double far;

  *face = (FpPoint) { place->at.x - back.x * KNEES, place->at.y - back.y * KNEES };
  from = (FpPoint) { face->x + back.x * BESIDE_FACE, face->y + back.y * BESIDE_FACE };
  far = thing_ahead (of, from, back, RAIL_FAR) + BESIDE_FACE;
  *end = (FpPoint) { face->x + back.x * far, face->y + back.y * far };
  return far;
}

void
fp_take_behind_communicants (const FpMeasuring *of, GArray *out)
{
  guint n;
  const FpPersonPlace *place = fp_people_places (of->people, &n);

  for (guint i = 0; i < n; i++)
    {
      FpMeasured *measured;
      FpPoint face, end;
      double free;

      if (!place[i].at_rail)
        continue;
      free = behind_place (of, &place[i], &face, &end);
      measured = fp_measured_add_at (out, free, (int) place[i].owner, place[i].at);
      measured->way = fp_way_of_stretch (face, end);
    }
}
