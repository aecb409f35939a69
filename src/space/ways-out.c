/* SPDX-License-Identifier: GPL-3.0-or-later */
/* ways-out.c - by which doors the people leave, and how many and how wide the printed tables want them */
#include "footpace/capacity.h"
#include "footpace/free-floor.h"

#include <math.h>

#define AT_FACE 300.0 /* mm: how far from the wall the floor is asked for; design judgement */

/* --- found ------------------------------------------------------------------------------- */

/* The free floor on one side of the wall; NULL where none was surveyed. */
static const FpFreeLevel *
level_beside (const FpScene *scene, const FpPlaced *placed, double face, double side)
{
  guint n;
  const FpFreeFloor *floor = fp_scene_free_floor (scene);
  const FpFreeLevel *level = fp_free_floor_levels (floor, &n);
  const int i = fp_free_floor_level_at (floor, fp_place_point (&placed->place, (FpPoint) { 0, face + side * AT_FACE }));

  return i >= 0 ? &level[i] : NULL;
}

/* A flight or a ramp before the door is no room. */
static gboolean
is_room (const FpFreeLevel *level)
{
  return level != NULL && level->use != FP_FLOOR_WAY;
}

/* @side: 1 where the people are on the far side of the wall, -1 on the near one. */
static gboolean
leads_out (const FpScene *scene, guint opening, const FpBox3 *way, double side, FpWayOut *out)
{
  guint n;
  const FpPlaced *placed = &fp_scene_placed (scene, &n)[opening];
  const double far = way->hi.y - FP_DOORWAY_DEPTH, near = way->lo.y + FP_DOORWAY_DEPTH;
  const double within = side > 0 ? far : near, without = side > 0 ? near : far;
  const FpFreeLevel *level = level_beside (scene, placed, within, side);

  if (level == NULL || level->use != FP_FLOOR_PEOPLE || is_room (level_beside (scene, placed, without, -side)))
    return FALSE;
  *out = (FpWayOut) {
    .opening = opening,
    .at = fp_place_point (&placed->place, (FpPoint) { 0, within }),
    .jamb = { fp_place_point (&placed->place, (FpPoint) { way->lo.x, within }),
              fp_place_point (&placed->place, (FpPoint) { way->hi.x, within }) },
    .clear = way->hi.x - way->lo.x,
  };
  return TRUE;
}

GArray *
fp_ways_out (const FpScene *scene)
{
  GArray *ways = g_array_new (FALSE, FALSE, sizeof (FpWayOut));
  guint n;

  fp_scene_placed (scene, &n);
  for (guint i = 0; i < n; i++)
    {
      FpBox3 way;
      FpWayOut out;

      if (fp_scene_doorway (scene, i, &way) && fp_doorway_is_door (&way)
          && (leads_out (scene, i, &way, 1, &out) || leads_out (scene, i, &way, -1, &out)))
        g_array_append_val (ways, out);
    }
  return ways;
}

/* --- reckoned ------------------------------------------------------------------------------ */

static double
farthest_two (const GArray *points)
{
  double most = 0;

  for (guint i = 0; i < points->len; i++)
    for (guint k = 0; k < i; k++)
      {
        const FpPoint a = g_array_index (points, FpPoint, i), b = g_array_index (points, FpPoint, k);

        most = MAX (most, hypot (a.x - b.x, a.y - b.y));
      }
  return most;
}

static double
diagonal_of (const FpScene *scene)
{
  g_autoptr (GArray) corners = g_array_new (FALSE, FALSE, sizeof (FpPoint));
  guint n;
  const FpFloor *floor = fp_scene_floors (scene, &n);

  for (guint i = 0; i < n; i++)
    if (floor[i].use == FP_FLOOR_PEOPLE)
      g_array_append_vals (corners, floor[i].outline, floor[i].n_outline);
  return farthest_two (corners);
}

FpLeaving
fp_leaving (const FpPeople *people)
{
  const FpScene *scene = fp_people_scene (people);
  g_autoptr (GArray) ways = fp_ways_out (scene), middles = g_array_new (FALSE, FALSE, sizeof (FpPoint));
  FpLeaving leaving = { .load = fp_occupant_load (people), .ways = ways->len, .diagonal = diagonal_of (scene) };

  for (guint i = 0; i < ways->len; i++)
    {
      const FpWayOut *way = &g_array_index (ways, FpWayOut, i);

      leaving.clear += way->clear;
      leaving.widest = MAX (leaving.widest, way->clear);
      g_array_append_val (middles, way->at);
    }
  leaving.apart = farthest_two (middles);
  return leaving;
}

/* --- printed: United States ----------------------------------------------------------------- */

guint
fp_us_ways_wanted (guint load)
{
  return load < 50 ? 1 : load <= 500 ? 2 : load <= 1000 ? 3 : 4;
}

double
fp_us_width_wanted (guint load, gboolean sprinklers)
{
  return load * (sprinklers ? 0.15 : 0.2) * FP_MM_PER_INCH;
}

double
fp_us_main_wanted (guint load, gboolean sprinklers)
{
  return load > 300 ? fp_us_width_wanted (load, sprinklers) / 2 : 0;
}

double
fp_us_apart_wanted (double diagonal, gboolean sprinklers)
{
  return diagonal / (sprinklers ? 3 : 2);
}

/* --- printed: United Kingdom ------------------------------------------------------------------ */

guint
fp_uk_ways_wanted (guint load)
{
  return load <= 60 ? 1 : load <= 600 ? 2 : 3;
}

guint
fp_uk_way_holds (double clear)
{
  static const struct { double clear; guint people; } table[] = { { 1050, 220 }, { 850, 110 }, { 750, 60 } };
  const guint each_5_mm = (guint) floor (clear / 5 + 1e-9);

  for (guint i = 0; i < G_N_ELEMENTS (table); i++)
    if (clear >= table[i].clear)
      return i == 0 ? MAX (table[i].people, each_5_mm) : table[i].people;
  return 0;
}

guint
fp_uk_ways_hold (const GArray *ways)
{
  guint all = 0, most = 0;

  for (guint i = 0; i < ways->len; i++)
    {
      const guint holds = fp_uk_way_holds (g_array_index (ways, FpWayOut, i).clear);

      all += holds;
      most = MAX (most, holds);
    }
  return ways->len > 1 ? all - most : all;
}
