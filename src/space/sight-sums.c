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

/* Rays that each placed thing, the minister at each, each person, and people together stop. */
typedef struct
{
  guint   n_placed, n_places;
  Hidden *thing, *minister, *person, people;
} Count;

typedef struct
{
  int      thing;          /* -1: people; -2: nothing */
  gboolean is_minister;
  int      place_in_front; /* -1: not a person        */
} Verdict;

static void
count_candidates (const FpRayIndex *index, const GArray *candidates, const FpRay *ray, guint number, Count *count)
{
  for (guint i = 0; i < candidates->len; i++)
    {
      const FpRayCandidate *candidate = &g_array_index (candidates, FpRayCandidate, i);
      const FpSolid *solid = fp_ray_index_solid (index, candidate->solid);
      if (!fp_ray_index_candidate_blocks (index, candidate, ray))
        continue;
      if (solid->owner >= FP_SIGHT_PERSON)
        {
          count_once (&count->person[solid->owner - FP_SIGHT_PERSON], number);
          count_once (&count->people, number);
        }
      else if (solid->part == FP_PART_HEAD || solid->part == FP_PART_TRUNK)
        count_once (&count->minister[solid->owner], number);
      else
        count_once (&count->thing[solid->owner], number);
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

static Verdict
judge (const Count *count)
{
  const guint thing = most (count->thing, count->n_placed), minister = most (count->minister, count->n_placed);
  const guint by_thing = count->thing[thing].rays, by_minister = count->minister[minister].rays;

  if (by_thing + by_minister + count->people.rays == 0)
    return (Verdict) { -2, FALSE, -1 };
  if (by_thing >= MAX (by_minister, count->people.rays))
    return (Verdict) { (int) thing, FALSE, -1 };
  if (by_minister >= count->people.rays)
    return (Verdict) { (int) minister, TRUE, -1 };
  return (Verdict) { -1, FALSE, (int) most (count->person, count->n_places) };
}

static void
count_rays (const FpSight *self, guint place, FpPosture posture, FpFocus focus, Count *count)
{
  const FpRayIndex *index = self->index[posture];
  g_autoptr (GArray) candidates = g_array_new (FALSE, FALSE, sizeof (FpRayCandidate));
  FpVec3 eye = fp_people_eye (self->people, place, posture), ends[FP_SIGHT_RAYS];

  fp_sight_ends (self, focus, eye, ends);
  fp_ray_index_gather (index, eye, ends, FP_SIGHT_RAYS, fp_sight_skip (self, place, focus), candidates);
  for (guint i = 0; i < FP_SIGHT_RAYS; i++)
    {
      FpRay ray = fp_ray_make (eye, ends[i]);
      count_candidates (index, candidates, &ray, i, count);
    }
}

static Verdict
find_blocker (const FpSight *self, guint place, FpPosture posture, FpFocus focus)
{
  Count count = { .n_places = self->n_places };
  if (fp_sight_share (self, place, posture, focus) < 0)
    return (Verdict) { -2, FALSE, -1 };

  fp_scene_placed (fp_people_scene (self->people), &count.n_placed);
  count.thing = g_new0 (Hidden, count.n_placed);
  count.minister = g_new0 (Hidden, count.n_placed);
  count.person = g_new0 (Hidden, count.n_places);
  count_rays (self, place, posture, focus, &count);
  const Verdict verdict = judge (&count);
  g_free (count.thing);
  g_free (count.minister);
  g_free (count.person);
  return verdict;
}

int
fp_sight_blocker (const FpSight *self, guint place, FpPosture posture, FpFocus focus, int *place_in_front)
{
  const Verdict verdict = find_blocker (self, place, posture, focus);
  if (place_in_front != NULL)
    *place_in_front = verdict.place_in_front;
  return verdict.thing;
}

gboolean
fp_sight_blocker_is_minister (const FpSight *self, guint place, FpPosture posture, FpFocus focus)
{
  return find_blocker (self, place, posture, focus).is_minister;
}
