/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "footpace/levels.h"

/* Levels nearer than this are the same level. */
#define SAME_LEVEL 0.001 /* mm */

static double
level_at (const FpFloor *floor, FpPoint p)
{
  return floor->z + floor->gx * p.x + floor->gy * p.y;
}

static FpPoint
between (FpPoint a, FpPoint b, double t)
{
  return (FpPoint) { a.x + t * (b.x - a.x), a.y + t * (b.y - a.y) };
}

/* Area of the part of a floor that lies at @level or above.  Cutting by one
 * line leaves the signed area right even where it parts the outline in several pieces. */
static double
area_from (const FpFloor *floor, double level)
{
  guint n = 0;
  g_autofree FpPoint *kept = g_new (FpPoint, 2 * (gsize) floor->n_outline);

  for (guint i = 0; i < floor->n_outline; i++)
    {
      FpPoint a = floor->outline[i], b = floor->outline[(i + 1) % floor->n_outline];
      double above_a = level_at (floor, a) - level, above_b = level_at (floor, b) - level;
      if (above_a >= 0)
        kept[n++] = a;
      if ((above_a >= 0) != (above_b >= 0))
        kept[n++] = between (a, b, above_a / (above_a - above_b));
    }
  return ABS (fp_outline_area (kept, n));
}

static void
find_altar (FpLevels *self, const FpScene *scene)
{
  const FpPlaced *placed = fp_scene_placed (scene, NULL);
  int at = fp_scene_celebrated_altar (scene);
  if (at < 0)
    return;
  self->has_altar = TRUE;
  self->footpace = placed[at].level;
  while (placed[at].support >= 0)
    at = placed[at].support;
  self->sanctuary = placed[at].level;
}

static void
note_people (FpLevels *self, FpVec3 at)
{
  if (self->has_people && at.z <= self->highest)
    return;
  self->has_people = TRUE;
  self->highest = at.z;
  self->highest_at = at;
}

static void
look_at_places (FpLevels *self, const FpPeople *people, double *gallery)
{
  guint n;
  const FpPersonPlace *place = fp_people_places (people, &n);

  for (guint i = 0; i < n; i++)
    {
      if (place[i].at_rail)
        continue;
      if (place[i].gallery)
        {
          self->gallery_places++;
          *gallery = MAX (*gallery, place[i].at.z);
          continue;
        }
      self->places++;
      note_people (self, place[i].at);
      if (self->has_altar && !fp_levels_place_below (self, &place[i]))
        self->not_below++;
      if (self->has_altar && place[i].at.z > self->sanctuary + SAME_LEVEL)
        self->not_below_sanctuary++;
    }
}

/* A level floor lies at the footpace or it does not; a falling one is cut where it says. */
static double
slack (const FpFloor *floor)
{
  return floor->gx == 0 && floor->gy == 0 ? SAME_LEVEL : 0;
}

static void
look_at_floors (FpLevels *self, const FpScene *scene, double *gallery)
{
  guint n;
  const FpFloor *floor = fp_scene_floors (scene, &n);

  for (guint i = 0; i < n; i++)
    for (guint k = 0; k < floor[i].n_outline; k++)
      {
        FpPoint p = floor[i].outline[k];
        if (floor[i].use == FP_FLOOR_GALLERY)
          *gallery = MAX (*gallery, level_at (&floor[i], p));
        else if (floor[i].use == FP_FLOOR_PEOPLE)
          note_people (self, (FpVec3) { p.x, p.y, level_at (&floor[i], p) });
      }
  for (guint i = 0; i < n; i++)
    if (floor[i].use == FP_FLOOR_PEOPLE)
      {
        self->area += ABS (fp_outline_area (floor[i].outline, floor[i].n_outline));
        if (self->has_altar)
          self->area_not_below += area_from (&floor[i], self->footpace - slack (&floor[i]));
      }
}

FpLevels
fp_levels (const FpPeople *people)
{
  FpLevels self = { 0 };
  const FpScene *scene = fp_people_scene (people);
  double gallery = -G_MAXDOUBLE;

  find_altar (&self, scene);
  look_at_places (&self, people, &gallery);
  look_at_floors (&self, scene, &gallery);
  if (gallery > -G_MAXDOUBLE)
    self.gallery = gallery;
  if (self.has_altar && self.has_people)
    {
      self.margin = self.footpace - self.highest;
      if (self.margin <= SAME_LEVEL)
        self.worst_at = self.highest_at;
    }
  return self;
}

gboolean
fp_levels_place_below (const FpLevels *levels, const FpPersonPlace *place)
{
  return place->at.z < levels->footpace - SAME_LEVEL;
}
