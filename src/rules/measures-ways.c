/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Ways of ministers and people: how wide a body gets from one place to another (room-to-move.h). */
#include "measuring-ways.h"

#include <math.h>

/* Design judgement, mm. */
#define BEFORE   400.0 /* who uses a credence or a bench stands so far before it                      */
#define NEAR     700.0
#define ACROSS   1e5   /* so far before an altar its front reaches, for who is not to cross it        */
#define TURNING  3000.0 /* about the head of the nave a wheelchair may turn so far                     */

static char *
from_to (const FpMeasuring *of, int thing, const char *to)
{
  g_autofree char *name = fp_measuring_name (of, thing);

  return g_strdup_printf ("from “%s” %s", name, to);
}

/* --- ministers ------------------------------------------------------------------------ */

void
fp_take_way_from_sacristy (const FpMeasuring *of, GArray *out)
{
  g_autoptr (GArray) doors = fp_measuring_doors (of, FP_FLOOR_MINISTERS);
  FpWayEnd altar;

  for (guint i = 0; fp_measuring_at_altar (of, &altar) && i < doors->len; i++)
    {
      const FpDoorEnd *door = &g_array_index (doors, FpDoorEnd, i);
      g_autofree char *lead = from_to (of, door->opening, "to the altar");

      fp_measured_add_way (out, of, fp_way_widest (of->scene, FP_GAIT_ON_FOOT, &door->inside, &altar, NULL, 0),
                           door->opening, door->inside.at, lead);
    }
}

static gboolean
narrowest_is_behind (const FpPlaced *altar, const FpWay *way)
{
  const FpPoint p = fp_placed_local (altar, way->narrow[0]), q = fp_placed_local (altar, way->narrow[1]);
  const FpPoint middle = { (p.x + q.x) / 2, (p.y + q.y) / 2 };

  return way->narrows && way->beside[0] == FP_WAY_BY_THING && way->beside[1] == FP_WAY_BY_THING && middle.y > altar->extent.plan.y1
         && middle.x >= altar->extent.plan.x0 && middle.x <= altar->extent.plan.x1;
}

/* What stands near it, as candlesticks do, is walked round with it where there is more room: all that lies so near, mm. */
static const double near_it[] = { 250, 550, 850, 1200 };

static FpWay *
way_round (const FpMeasuring *of, const FpPlaced *altar, FpPoint middle)
{
  const FpBox *own = &altar->extent.plan;
  FpWay *widest = NULL;

  for (guint k = 0; k < G_N_ELEMENTS (near_it); k++)
    {
      const FpBox box = { own->x0 - near_it[k], own->y0 - near_it[k], own->x1 + near_it[k], own->y1 + near_it[k] };
      FpPoint about[4] = { { box.x0, box.y0 }, { box.x1, box.y0 }, { box.x1, box.y1 }, { box.x0, box.y1 } };
      FpWay *way;

      for (guint i = 0; i < 4; i++)
        about[i] = fp_place_point (&altar->place, about[i]);
      way = fp_way_round (of->scene, FP_GAIT_ON_FOOT, middle, about, 4);
      if (widest && way->width <= widest->width)
        {
          fp_way_free (way);
          continue;
        }
      fp_way_free (widest);
      widest = way;
    }
  return widest;
}

/* How far it is to the next thing behind it is a measure of its own. */
void
fp_take_way_round_altar (const FpMeasuring *of, GArray *out)
{
  int index;
  const FpPlaced *altar = fp_measuring_celebrated (of, &index);
  const FpBox *own = altar ? &altar->extent.plan : NULL;
  FpPoint middle;
  FpWay *way;

  if (!altar || !fp_altar_is_free (altar))
    return;
  middle = fp_place_point (&altar->place, (FpPoint) { (own->x0 + own->x1) / 2, (own->y0 + own->y1) / 2 });
  way = way_round (of, altar, middle);
  if (!narrowest_is_behind (altar, way))
    {
      fp_measured_add_way (out, of, way, index, middle, "round the altar");
      return;
    }
  fp_way_free (way);
  fp_measured_add_nothing (out, "it is narrowest behind the altar, where it is measured of itself");
}

/* Nobody serves at a stand that carries the tabernacle. */
static gboolean
carries_tabernacle (const FpMeasuring *of, int credence)
{
  for (int i = fp_measuring_next (of, FP_ROLE_TABERNACLE, -1); i >= 0; i = fp_measuring_next (of, FP_ROLE_TABERNACLE, i))
    if (fp_measuring_stands_on (of, i, credence))
      return TRUE;
  return FALSE;
}

/* To the Epistle end of the altar, never past the line before its middle. */
static void
take_side_way (const FpMeasuring *of, FpRole role, GArray *out)
{
  const FpPlaced *altar = fp_measuring_celebrated (of, NULL);
  const FpBox *own = altar ? &altar->extent.plan : NULL;

  for (int i = fp_measuring_next (of, role, -1); altar && i >= 0; i = fp_measuring_next (of, role, i))
    {
      const FpPlaced *thing = fp_measuring_placed (of, i);
      const FpBox *plan = &thing->extent.plan;
      const FpWayEnd from = { fp_place_point (&thing->place, (FpPoint) { (plan->x0 + plan->x1) / 2, plan->y0 - BEFORE }), NEAR };
      const FpWayEnd to = { fp_place_point (&altar->place, (FpPoint) { own->x1 - BEFORE / 2, own->y0 - BEFORE }), NEAR };
      const FpBar front = { fp_place_point (&altar->place, (FpPoint) { (own->x0 + own->x1) / 2, (own->y0 + own->y1) / 2 }),
                            fp_place_point (&altar->place, (FpPoint) { (own->x0 + own->x1) / 2, -ACROSS }) };
      g_autofree char *lead = from_to (of, i, "to the Epistle side of the altar");

      if (!carries_tabernacle (of, i))
        fp_measured_add_way (out, of, fp_way_widest (of->scene, FP_GAIT_ON_FOOT, &from, &to, &front, 1), i, from.at, lead);
    }
}

void
fp_take_way_from_credence (const FpMeasuring *of, GArray *out)
{
  take_side_way (of, FP_ROLE_CREDENCE, out);
}

void
fp_take_way_from_sedilia (const FpMeasuring *of, GArray *out)
{
  take_side_way (of, FP_ROLE_SEDILIA, out);
}

/* --- people ------------------------------------------------------------------------------ */

void
fp_take_way_through_nave (const FpMeasuring *of, GArray *out)
{
  FpDoorEnd door;
  FpWayEnd head;

  if (fp_measuring_main_door (of, &door) && fp_measuring_nave_head (of, &head))
    {
      g_autofree char *lead = from_to (of, door.opening, "to the head of the nave");

      fp_measured_add_way (out, of, fp_way_widest (of->scene, FP_GAIT_ON_FOOT, &door.inside, &head, NULL, 0), -1, head.at, lead);
    }
}

void
fp_take_way_of_procession (const FpMeasuring *of, GArray *out)
{
  FpDoorEnd door;
  FpWayEnd foot;

  if (fp_measuring_main_door (of, &door) && fp_measuring_before_altar (of, &foot))
    {
      g_autofree char *lead = from_to (of, door.opening, "to the foot of the altar");

      fp_measured_add_way (out, of, fp_way_widest (of->scene, FP_GAIT_ON_FOOT, &door.inside, &foot, NULL, 0), -1, foot.at, lead);
    }
}

/* By whichever door is best; a door that is narrower than what lies behind it is itself the narrowest place. */
static FpWay *
way_by_door (const FpMeasuring *of, const FpDoorEnd *door, const FpWayEnd *to)
{
  FpWay *way = fp_way_widest (of->scene, FP_GAIT_ON_WHEELS, &door->inside, to, NULL, 0);

  if (door->threshold > FP_CLIMB_ON_WHEELS)
    {
      way->width = 0;
      way->narrows = FALSE;
      way->n_route = 0;
    }
  fp_way_through_door (way, door);
  return way;
}

void
fp_take_way_on_wheels (const FpMeasuring *of, GArray *out)
{
  g_autoptr (GArray) doors = fp_measuring_doors (of, FP_FLOOR_PEOPLE);
  FpWay *best = NULL;
  FpWayEnd head;
  int by = -1;

  if (!fp_measuring_nave_head (of, &head))
    return;
  for (guint i = 0; i < doors->len; i++)
    {
      const FpDoorEnd *door = &g_array_index (doors, FpDoorEnd, i);
      FpWay *way = way_by_door (of, door, &head);

      if (best && way->width <= best->width)
        {
          fp_way_free (way);
          continue;
        }
      fp_way_free (best);
      best = way;
      by = door->opening;
    }
  if (best)
    {
      g_autofree char *lead = best->width > 0 ? from_to (of, by, "to the head of the nave")
                                              : g_strdup ("from no door to the head of the nave");
      fp_measured_add_way (out, of, best, -1, head.at, lead);
    }
}

void
fp_take_turning_circle (const FpMeasuring *of, GArray *out)
{
  FpWayEnd head;
  FpPoint middle = { 0, 0 };
  double diameter;

  if (!fp_measuring_nave_head (of, &head))
    return;
  {
    const FpPlaced *altar = fp_measuring_celebrated (of, NULL);
    const FpPoint p = fp_placed_local (altar, head.at);
    FpPoint about[4] = { { p.x - TURNING, p.y - TURNING }, { p.x + TURNING, p.y - TURNING },
                         { p.x + TURNING, p.y + BEFORE }, { p.x - TURNING, p.y + BEFORE } };
    for (guint i = 0; i < 4; i++)
      about[i] = fp_place_point (&altar->place, about[i]);
    diameter = fp_room_circle (of->scene, FP_GAIT_ON_WHEELS, about, 4, &middle);
  }
  if (diameter > 0)
    fp_measured_add_way (out, of, fp_way_of_stretch ((FpPoint) { middle.x - diameter / 2, middle.y },
                                                     (FpPoint) { middle.x + diameter / 2, middle.y }),
                         -1, middle, NULL);
  else
    fp_measured_add_at (out, 0, -1, (FpVec3) { head.at.x, head.at.y, fp_measuring_floor (of, head.at) });
}
