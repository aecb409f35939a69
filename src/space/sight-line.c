/* SPDX-License-Identifier: GPL-3.0-or-later */
/* sight-line.c - one look: how it goes, and what stops it */
#include "sight-private.h"

#include <math.h>

#define WHOLE 0.95 /* design judgement */

/* --- how it goes --------------------------------------------------------------- */

FpSightHow
fp_sight_how (const FpSight *self, guint place, FpMoment moment, FpFocus focus)
{
  const double share = fp_sight_share (self, place, moment, focus);

  if (share < 0)
    return FP_SIGHT_NOBODY;
  if (share >= WHOLE)
    return FP_SIGHT_WHOLE;
  if (!(share > 0))
    return FP_SIGHT_NOTHING;
  return fp_sight_blocker (self, place, moment, focus, NULL) == -1 ? FP_SIGHT_BETWEEN_HEADS : FP_SIGHT_PAST_THINGS;
}

const char *
fp_sight_how_label (FpSightHow how)
{
  static const char *const LABELS[FP_N_SIGHT_HOWS] = {
    [FP_SIGHT_WHOLE] = "seen", [FP_SIGHT_BETWEEN_HEADS] = "between heads", [FP_SIGHT_PAST_THINGS] = "past something",
    [FP_SIGHT_NOTHING] = "not seen", [FP_SIGHT_NOBODY] = "nobody there",
  };

  return LABELS[how];
}

/* --- what stops it ----------------------------------------------------------------- */

static FpVec3
middle_of (const FpRayPoints *point)
{
  FpVec3 sum = { 0, 0, 0 };

  for (guint i = 0; i < FP_SIGHT_RAYS; i++)
    sum = fp_vec3_add (sum, (FpVec3) { point->x[i], point->y[i], point->z[i] });
  return fp_vec3_scale (sum, 1.0 / FP_SIGHT_RAYS);
}

/* Takes what of the index the ray meets before anything else so far. */
static void
find_stop (const FpRayIndex *index, const FpRays *rays, FpRaySkip skip, double *nearest, const FpSolid **stop)
{
  g_autoptr (GArray) candidates = g_array_new (FALSE, FALSE, sizeof (FpRayCandidate));
  const FpVec3 end = fp_vec3_add (rays->eye, fp_rays_way (rays, 0));

  fp_ray_index_gather (index, rays, skip, candidates);
  for (guint i = 0; i < candidates->len; i++)
    {
      const FpSolid *solid = fp_ray_index_solid (index, g_array_index (candidates, FpRayCandidate, i).solid);
      double t;
      if (fp_solid_ray (solid, rays->eye, end, &t) && t < *nearest)
        {
          *nearest = t;
          *stop = solid;
        }
    }
}

static void
tell_owner (const FpSolid *stop, FpSightLine *line)
{
  line->stopped = TRUE;
  line->is_minister = FALSE;
  line->place_in_front = -1;
  line->thing = -1;
  if (stop->owner >= FP_SIGHT_PERSON)
    line->place_in_front = (int) (stop->owner - FP_SIGHT_PERSON);
  else
    {
      line->thing = (int) stop->owner;
      line->is_minister = stop->part == FP_PART_HEAD || stop->part == FP_PART_TRUNK;
    }
}

typedef struct
{
  const FpRayIndex *others, *ministers;
  FpRaySkip         skip;
} Looking;

static FpSightLine
look_at (const Looking *self, FpVec3 eye, FpVec3 goal)
{
  FpSightLine line = { .eye = eye, .goal = goal, .stop = goal, .thing = -1, .place_in_front = -1 };
  const FpVec3 way = fp_vec3_sub (goal, eye);
  const double length = fp_vec3_length (way);
  const FpVec3 end = fp_vec3_add (eye, fp_vec3_scale (way, length > FP_SIGHT_SHORT ? 1 - FP_SIGHT_SHORT / length : 0));
  const FpSolid *stop = NULL;
  double nearest = 1;
  FpRays rays;

  fp_rays_to (&rays, eye, &end, 1);
  find_stop (self->others, &rays, self->skip, &nearest, &stop);
  find_stop (self->ministers, &rays, self->skip, &nearest, &stop);
  if (stop == NULL)
    return line;
  line.stop = fp_vec3_add (eye, fp_vec3_scale (fp_rays_way (&rays, 0), nearest));
  tell_owner (stop, &line);
  return line;
}

/* What hides most of it, by the same measure as that of the words. */
typedef struct { int thing, place_in_front; gboolean is_minister; } Blocker;

static gboolean
is_stopped_by (const FpSightLine *line, const Blocker *blocker)
{
  return line->stopped && line->thing == blocker->thing && line->is_minister == blocker->is_minister
         && (blocker->thing >= 0 || line->place_in_front == blocker->place_in_front);
}

/* To the point nearest to the middle that is hidden by @blocker before all else, where there is one. */
static void
look_past (const Looking *self, const FpRayPoints *point, const Blocker *blocker, FpSightLine *line)
{
  const FpVec3 middle = line->goal;
  double nearest = INFINITY;

  for (guint i = 0; i < FP_SIGHT_RAYS; i++)
    {
      const FpVec3 goal = { point->x[i], point->y[i], point->z[i] };
      const double far = fp_vec3_length (fp_vec3_sub (goal, middle));
      const FpSightLine other = far < nearest ? look_at (self, line->eye, goal) : (FpSightLine) { .stopped = FALSE };

      if (!is_stopped_by (&other, blocker))
        continue;
      nearest = far;
      *line = other;
    }
}

gboolean
fp_sight_line (const FpSight *self, guint place, FpMoment moment, FpFocus focus, FpSightLine *line)
{
  Looking looking;
  Blocker blocker;
  FpPosture posture;

  if (place >= self->n_places || !fp_sight_has (self, focus) || !fp_people_looks (self->people, place, moment, &posture))
    return FALSE;
  looking.skip = fp_sight_skip (self, place, focus);
  fp_sight_indexes (self, moment, &looking.others, &looking.ministers);
  *line = look_at (&looking, fp_people_eye (self->people, place, posture), middle_of (&self->point[focus]));
  blocker.thing = fp_sight_blocker (self, place, moment, focus, &blocker.place_in_front);
  blocker.is_minister = blocker.thing >= 0 && fp_sight_blocker_is_minister (self, place, moment, focus);
  if (blocker.thing >= -1 && !is_stopped_by (line, &blocker))
    look_past (&looking, &self->point[focus], &blocker, line);
  return TRUE;
}

/* --- in words ------------------------------------------------------------------------- */

static char *
minister_words (const FpPlaced *placed)
{
  const FpRole role = fp_item_kind (placed->item)->role;

  return g_strdup (role == FP_ROLE_AMBO ? "the reader" : role == FP_ROLE_ALTAR ? "the ministers at the altar" : "the celebrant");
}

static char *
person_words (const FpPersonPlace *place)
{
  if (place->who.eye > 0)
    return g_strdup_printf ("the person at wheelchair place %u", place->number);
  if (place->postures & (1u << FP_POSTURE_SITTING))
    return g_strdup_printf ("the person in row %u, seat %u", place->row, place->number);
  return g_strdup_printf ("the person at place %u", place->number);
}

char *
fp_sight_line_words (const FpSight *self, const FpSightLine *line)
{
  const FpPlaced *placed = fp_scene_placed (fp_people_scene (self->people), NULL);

  if (!line->stopped)
    return NULL;
  if (line->place_in_front >= 0)
    return person_words (&fp_people_places (self->people, NULL)[line->place_in_front]);
  if (line->is_minister)
    return minister_words (&placed[line->thing]);
  return g_strdup (fp_item_name (placed[line->thing].item));
}
