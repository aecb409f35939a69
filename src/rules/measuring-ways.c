/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "measuring-ways.h"

#include <math.h>

/* Design judgement, mm. */
#define INSIDE   600.0   /* who has come in stands so far behind the wall            */
#define REACH    900.0   /* about such a place the middle of a body may be anywhere  */
#define AT_FACE  300.0   /* how far from the wall the floor is asked for             */
#define STANDS   350.0   /* the middle of who stands at an altar, before its table   */
#define FAR      60000.0
#define STRIDE   50.0
#define HEAD     700.0   /* the head of the nave, behind the edge or the rail        */

/* --- the free floor --------------------------------------------------------------- */

static const FpFreeLevel *
level_at (const FpMeasuring *of, FpPoint at)
{
  guint n;
  const FpFreeFloor *floor = fp_scene_free_floor (of->scene);
  const FpFreeLevel *level = fp_free_floor_levels (floor, &n);
  const int i = fp_free_floor_level_at (floor, at);

  return i >= 0 ? &level[i] : NULL;
}

double
fp_measuring_floor (const FpMeasuring *of, FpPoint at)
{
  const FpFreeLevel *level = level_at (of, at);

  return level ? fp_free_level_height (level, at) : 0;
}

/* --- doors -------------------------------------------------------------------------- */

static gboolean
door_at (const FpMeasuring *of, int opening, const FpBox3 *way, double face, double beyond, FpFloorUse use, FpDoorEnd *door)
{
  const FpPlaced *placed = fp_measuring_placed (of, opening);
  const double side = beyond > face ? 1 : -1;
  const FpPoint near = fp_place_point (&placed->place, (FpPoint) { 0, face + side * AT_FACE });
  const FpFreeLevel *level = level_at (of, near);

  if (!level || level->use != use)
    return FALSE;
  *door = (FpDoorEnd) {
    .opening = opening, .clear = way->hi.x - way->lo.x,
    .inside = { fp_place_point (&placed->place, (FpPoint) { 0, face + side * INSIDE }), REACH },
    .threshold = MAX (0, placed->level + way->lo.z
                           - fp_free_level_height (level, fp_place_point (&placed->place, (FpPoint) { 0, face }))),
    .jamb = { fp_place_point (&placed->place, (FpPoint) { way->lo.x, face }),
              fp_place_point (&placed->place, (FpPoint) { way->hi.x, face }) },
  };
  return TRUE;
}

GArray *
fp_measuring_doors (const FpMeasuring *of, FpFloorUse use)
{
  GArray *out = g_array_new (FALSE, FALSE, sizeof (FpDoorEnd));

  for (int i = fp_measuring_next (of, FP_ROLE_OPENING, -1); i >= 0; i = fp_measuring_next (of, FP_ROLE_OPENING, i))
    {
      FpBox3 way;
      FpDoorEnd door;

      if (fp_scene_doorway (of->scene, (guint) i, &way) && fp_doorway_is_door (&way)
          && (door_at (of, i, &way, way.lo.y + FP_DOORWAY_DEPTH, way.lo.y, use, &door)
              || door_at (of, i, &way, way.hi.y - FP_DOORWAY_DEPTH, way.hi.y, use, &door)))
        g_array_append_val (out, door);
    }
  return out;
}

gboolean
fp_measuring_main_door (const FpMeasuring *of, FpDoorEnd *door)
{
  g_autoptr (GArray) doors = fp_measuring_doors (of, FP_FLOOR_PEOPLE);
  const FpDoorEnd *widest = NULL;

  for (guint i = 0; i < doors->len; i++)
    {
      const FpDoorEnd *one = &g_array_index (doors, FpDoorEnd, i);
      if (!widest || one->clear > widest->clear)
        widest = one;
    }
  if (widest)
    *door = *widest;
  return widest != NULL;
}

/* --- at the altar ---------------------------------------------------------------------- */

gboolean
fp_measuring_at_altar (const FpMeasuring *of, FpWayEnd *end)
{
  const FpPlaced *altar = fp_measuring_celebrated (of, NULL);
  const gboolean behind = altar && altar->form.facing == FP_FACING_PEOPLE;
  const double middle = altar ? (altar->extent.plan.x0 + altar->extent.plan.x1) / 2 : 0;

  if (!altar)
    return FALSE;
  *end = (FpWayEnd) {
    fp_place_point (&altar->place,
                    (FpPoint) { middle, behind ? altar->extent.plan.y1 + STANDS : altar->extent.plan.y0 - STANDS }), REACH };
  return TRUE;
}

/* How far before the altar its lowest step ends. */
static double
foot_of_steps (const FpMeasuring *of, const FpPlaced *altar)
{
  const FpPlaced *footpace = fp_measuring_placed (of, fp_measuring_footpace (of, altar));

  return footpace ? MIN (altar->extent.plan.y0, fp_placed_box_in (footpace, altar).y0) : altar->extent.plan.y0;
}

gboolean
fp_measuring_before_altar (const FpMeasuring *of, FpWayEnd *end)
{
  const FpPlaced *altar = fp_measuring_celebrated (of, NULL);

  if (!altar)
    return FALSE;
  *end = (FpWayEnd) { fp_place_point (&altar->place, (FpPoint) { 0, foot_of_steps (of, altar) - STANDS }), REACH };
  return TRUE;
}

/* The face towards the people of a rail that crosses the axis of the altar, in the altar's coordinates; @foot where none does. */
static double
rail_before (const FpMeasuring *of, const FpPlaced *altar, double foot)
{
  double face = foot;

  for (int i = fp_measuring_next (of, FP_ROLE_RAIL, -1); i >= 0; i = fp_measuring_next (of, FP_ROLE_RAIL, i))
    {
      const FpBox box = fp_placed_box_in (fp_measuring_placed (of, i), altar);
      if (box.x0 < 0 && box.x1 > 0 && box.y0 < foot)
        face = MIN (face, box.y0);
    }
  return face;
}

gboolean
fp_measuring_nave_head (const FpMeasuring *of, FpWayEnd *end)
{
  const FpPlaced *altar = fp_measuring_celebrated (of, NULL);
  double y = altar ? rail_before (of, altar, foot_of_steps (of, altar)) - STRIDE : 0;

  for (double gone = 0; altar && gone < FAR; gone += STRIDE)
    {
      const FpPoint at = fp_place_point (&altar->place, (FpPoint) { 0, y - gone });
      const FpFreeLevel *level = level_at (of, at);

      if (level && level->use == FP_FLOOR_PEOPLE)
        {
          *end = (FpWayEnd) { fp_place_point (&altar->place, (FpPoint) { 0, y - gone - HEAD }), REACH };
          return level_at (of, end->at) != NULL;
        }
    }
  return FALSE;
}

/* --- told --------------------------------------------------------------------------------- */

static void
append_beside (GString *out, const FpMeasuring *of, const FpWay *way, guint side)
{
  g_autofree char *name = NULL;

  switch (way->beside[side])
    {
    case FP_WAY_BY_THING:
      name = fp_measuring_name (of, way->owner[side]);
      g_string_append_printf (out, "“%s”", name);
      break;
    case FP_WAY_BY_STEP:
      g_string_append (out, "a step");
      break;
    case FP_WAY_BY_BODY:
      g_string_append (out, "who stands there");
      break;
    case FP_WAY_BY_END:
    default:
      g_string_append (out, "the edge of the floor");
      break;
    }
}

/* "West door to the altar; narrowest between “Pews” and “Pier”". */
static char *
way_in_words (const FpMeasuring *of, const FpWay *way, const char *lead)
{
  GString *out = g_string_new (lead);

  if (lead == NULL || !way->narrows)
    return g_string_free (out, lead == NULL);
  if (way->owner[0] >= 0 && way->owner[0] == way->owner[1])
    {
      g_string_append (out, "; narrowest at ");
      append_beside (out, of, way, 0);
      return g_string_free (out, FALSE);
    }
  g_string_append (out, "; narrowest between ");
  append_beside (out, of, way, 0);
  g_string_append (out, " and ");
  append_beside (out, of, way, 1);
  return g_string_free (out, FALSE);
}

FpMeasured *
fp_measured_add_way (GArray *out, const FpMeasuring *of, FpWay *way, int owner, FpPoint at, const char *lead)
{
  FpMeasured *measured;

  if (way->narrows)
    at = (FpPoint) { (way->narrow[0].x + way->narrow[1].x) / 2, (way->narrow[0].y + way->narrow[1].y) / 2 };
  measured = fp_measured_add_at (out, way->width, owner, (FpVec3) { at.x, at.y, fp_measuring_floor (of, at) });
  measured->detail = way_in_words (of, way, lead);
  measured->text = way->width > 0 ? NULL : g_strdup ("no way");
  measured->way = way;
  return measured;
}

FpWay *
fp_way_of_stretch (FpPoint a, FpPoint b)
{
  FpWay *way = g_new0 (FpWay, 1);

  *way = (FpWay) { .width = hypot (b.x - a.x, b.y - a.y), .narrows = TRUE, .narrow = { a, b }, .owner = { -1, -1 } };
  return way;
}

void
fp_way_through_door (FpWay *way, const FpDoorEnd *door)
{
  if (way->width <= door->clear)
    return;
  way->width = door->clear;
  way->tolerance = 0;
  way->narrows = TRUE;
  for (guint i = 0; i < 2; i++)
    {
      way->narrow[i] = door->jamb[i];
      way->beside[i] = FP_WAY_BY_THING;
      way->owner[i] = door->opening;
    }
  g_clear_pointer (&way->outline, g_free);
  way->n_outline = 0;
}
