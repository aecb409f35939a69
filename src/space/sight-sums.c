/* SPDX-License-Identifier: GPL-3.0-or-later */
/* sight-sums.c - what was seen, gathered by place, row, block and church */
#include "sight-private.h"

const FpPeople *
fp_sight_people (const FpSight *self)
{
  return self->people;
}

gboolean
fp_sight_has (const FpSight *self, FpFocus focus)
{
  return (guint) focus < FP_N_FOCUSES && self->target[focus] >= 0;
}

double
fp_sight_share (const FpSight *self, guint place, FpPosture posture, FpFocus focus)
{
  if (place >= self->n_places || (guint) posture >= FP_N_POSTURES || (guint) focus >= FP_N_FOCUSES)
    return -1;
  guint8 seen = *fp_sight_cell (self, posture, focus, place);
  return seen == FP_SIGHT_NOT_LOOKED ? -1 : (double) seen / FP_SIGHT_RAYS;
}

/* --- sums ----------------------------------------------------------------- */

typedef struct
{
  gboolean church;   /* all but galleries and the rail */
  guint    owner;
  guint    row;      /* 0: all of them                 */
} Choice;

static gboolean
chosen (const Choice *self, const FpPersonPlace *place)
{
  if (self->church)
    return !place->gallery && !place->at_rail;
  return place->owner == self->owner && (self->row == 0 || place->row == self->row);
}

static void
add_share (FpSightSum *self, guint place, double share, double *least)
{
  self->places++;
  self->mean += share;
  self->all += share >= 1;
  self->half += share >= 0.5;
  self->none += share <= 0;
  if (share < *least)
    {
      *least = share;
      self->worst = place;
    }
}

static FpSightSum
sum_up (const FpSight *self, const Choice *choice, FpPosture posture, FpFocus focus)
{
  guint n;
  const FpPersonPlace *place = fp_people_places (self->people, &n);
  FpSightSum sum = { 0 };
  double least = G_MAXDOUBLE;

  for (guint i = 0; i < n; i++)
    {
      double share = fp_sight_share (self, i, posture, focus);
      if (share >= 0 && chosen (choice, &place[i]))
        add_share (&sum, i, share, &least);
    }
  if (sum.places > 0)
    sum.mean /= sum.places;
  return sum;
}

FpSightSum
fp_sight_church (const FpSight *self, FpPosture posture, FpFocus focus)
{
  return sum_up (self, &(Choice) { .church = TRUE }, posture, focus);
}

FpSightSum
fp_sight_block (const FpSight *self, guint owner, FpPosture posture, FpFocus focus)
{
  return sum_up (self, &(Choice) { .owner = owner }, posture, focus);
}

FpSightSum
fp_sight_row (const FpSight *self, guint owner, guint row, FpPosture posture, FpFocus focus)
{
  /* Rows are counted from 1: a row 0 has nobody in it. */
  return row > 0 ? sum_up (self, &(Choice) { .owner = owner, .row = row }, posture, focus) : (FpSightSum) { 0 };
}

/* --- what hides ----------------------------------------------------------- */

typedef struct { guint rays; guint last_ray; } Hidden; /* rays counted once for each owner */

static void
count_once (Hidden *hidden, guint ray)
{
  if (hidden->last_ray == ray + 1)
    return;
  hidden->last_ray = ray + 1;
  hidden->rays++;
}

/* Rays that each placed thing, each person, and people together stop. */
typedef struct
{
  guint   n_placed, n_places;
  Hidden *thing, *person, people;
} Count;

static void
count_candidates (const FpRayIndex *index, const GArray *candidates, const FpRay *ray, guint number, Count *count)
{
  for (guint i = 0; i < candidates->len; i++)
    {
      const FpRayCandidate *candidate = &g_array_index (candidates, FpRayCandidate, i);
      guint owner = fp_ray_index_solid (index, candidate->solid)->owner;
      if (!fp_ray_index_candidate_blocks (index, candidate, ray))
        continue;
      if (owner < FP_SIGHT_PERSON)
        count_once (&count->thing[owner], number);
      else
        {
          count_once (&count->person[owner - FP_SIGHT_PERSON], number);
          count_once (&count->people, number);
        }
    }
}

static guint
most (const Hidden *hidden, guint n)
{
  guint best = 0;
  for (guint i = 1; i < n; i++)
    if (hidden[i].rays > hidden[best].rays)
      best = i;
  return best;
}

static int
verdict (const Count *count, int *place_in_front)
{
  guint thing = most (count->thing, count->n_placed);
  guint by_thing = count->n_placed > 0 ? count->thing[thing].rays : 0;

  if (by_thing == 0 && count->people.rays == 0)
    return -2;
  if (by_thing >= count->people.rays)
    return (int) thing;
  if (place_in_front != NULL)
    *place_in_front = (int) most (count->person, count->n_places);
  return -1;
}

int
fp_sight_blocker (const FpSight *self, guint place, FpPosture posture, FpFocus focus, int *place_in_front)
{
  if (place_in_front != NULL)
    *place_in_front = -1;
  if (fp_sight_share (self, place, posture, focus) < 0)
    return -2;

  Count count = { .n_places = self->n_places };
  fp_scene_placed (fp_people_scene (self->people), &count.n_placed);
  g_autofree Hidden *things = count.thing = g_new0 (Hidden, MAX (count.n_placed, 1));
  g_autofree Hidden *persons = count.person = g_new0 (Hidden, MAX (count.n_places, 1));
  g_autoptr (GArray) candidates = g_array_new (FALSE, FALSE, sizeof (FpRayCandidate));
  FpVec3 eye = fp_people_eye (self->people, place, posture), ends[FP_SIGHT_RAYS];

  (void) things;
  (void) persons;
  fp_sight_ends (self, focus, eye, ends);
  fp_ray_index_gather (self->index[posture], eye, ends, FP_SIGHT_RAYS, fp_sight_skip (self, place, focus), candidates);
  for (guint i = 0; i < FP_SIGHT_RAYS; i++)
    {
      FpRay ray = fp_ray_make (eye, ends[i]);
      count_candidates (self->index[posture], candidates, &ray, i, &count);
    }
  return verdict (&count, place_in_front);
}
