/* SPDX-License-Identifier: GPL-3.0-or-later */
/* sight-line.c - one look: how it goes, and what stops it */
#include "sight-private.h"

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

gboolean
fp_sight_line (const FpSight *self, guint place, FpMoment moment, FpFocus focus, FpSightLine *line)
{
  const FpRayIndex *others, *ministers;
  const FpSolid *stop = NULL;
  double nearest = 1;
  FpPosture posture;
  FpRays rays;

  if (place >= self->n_places || !fp_sight_has (self, focus) || !fp_people_looks (self->people, place, moment, &posture))
    return FALSE;
  *line = (FpSightLine) { .thing = -1, .place_in_front = -1 };
  line->eye = fp_people_eye (self->people, place, posture);
  line->middle = line->stop = middle_of (&self->point[focus]);
  const FpVec3 way = fp_vec3_sub (line->middle, line->eye);
  const double length = fp_vec3_length (way);
  const FpVec3 end = fp_vec3_add (line->eye, fp_vec3_scale (way, length > FP_SIGHT_SHORT ? 1 - FP_SIGHT_SHORT / length : 0));
  fp_rays_to (&rays, line->eye, &end, 1);
  fp_sight_indexes (self, moment, &others, &ministers);
  find_stop (others, &rays, fp_sight_skip (self, place, focus), &nearest, &stop);
  find_stop (ministers, &rays, fp_sight_skip (self, place, focus), &nearest, &stop);
  if (stop == NULL)
    return TRUE;
  line->stop = fp_vec3_add (line->eye, fp_vec3_scale (fp_rays_way (&rays, 0), nearest));
  tell_owner (stop, line);
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
