/* SPDX-License-Identifier: GPL-3.0-or-later */
/* sight-hides.c - what hides a target from a place
 *
 * Asked of every place at once, the first time that anybody asks.
 */
#include "sight-private.h"

#include "footpace/workers.h"

typedef struct
{
  const FpSight    *sight;
  const FpRayIndex *others, *ministers;
  FpMoment          moment;
  FpFocus           focus;
  const guint8     *seen;
  FpSightVerdict   *verdict;
  gint             *hides; /* of each placed thing: it, or who stands there, hides something from somebody */
} Asked;

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

static FpSightVerdict
judge (const Count *count)
{
  const guint thing = most (count->thing, count->n_placed), minister = most (count->minister, count->n_placed);
  const guint by_thing = count->thing[thing].rays, by_minister = count->minister[minister].rays;

  if (by_thing + by_minister + count->people.rays == 0)
    return (FpSightVerdict) { -2, FALSE, -1 };
  if (by_thing >= MAX (by_minister, count->people.rays))
    return (FpSightVerdict) { (int) thing, FALSE, -1 };
  if (by_minister >= count->people.rays)
    return (FpSightVerdict) { (int) minister, TRUE, -1 };
  return (FpSightVerdict) { -1, FALSE, (int) most (count->person, count->n_places) };
}

static void
count_rays (const Asked *asked, const FpRayIndex *index, guint place, Count *count)
{
  const FpSight *self = asked->sight;
  g_autoptr (GArray) candidates = g_array_new (FALSE, FALSE, sizeof (FpRayCandidate));
  FpRays rays;

  if (!fp_sight_rays (self, place, asked->moment, asked->focus, &rays))
    return;
  fp_ray_index_gather (index, &rays, fp_sight_skip (self, place, asked->focus), candidates);
  for (guint i = 0; i < FP_SIGHT_RAYS; i++)
    {
      const FpRay ray = fp_ray_along (rays.eye, fp_rays_way (&rays, i));
      count_candidates (index, candidates, &ray, i, count);
    }
}

static void
note_hiders (const Asked *asked, const Count *count)
{
  for (guint i = 0; i < count->n_placed; i++)
    if (count->thing[i].rays + count->minister[i].rays > 0)
      g_atomic_int_set (&asked->hides[i], TRUE);
}

static FpSightVerdict
find_blocker (const Asked *asked, guint place)
{
  Count count = { .n_places = asked->sight->n_places };

  fp_scene_placed (fp_people_scene (asked->sight->people), &count.n_placed);
  count.thing = g_new0 (Hidden, count.n_placed);
  count.minister = g_new0 (Hidden, count.n_placed);
  count.person = g_new0 (Hidden, count.n_places);
  count_rays (asked, asked->others, place, &count);
  count_rays (asked, asked->ministers, place, &count); /* of the same owner are things there and ministers here, never both */
  const FpSightVerdict verdict = judge (&count);
  note_hiders (asked, &count);
  g_free (count.thing);
  g_free (count.minister);
  g_free (count.person);
  return verdict;
}

/* --- from everywhere --------------------------------------------------------- */

/* One part in FP_SIGHT_PARTS of the places. */
static void
find_blockers (guint part, gpointer data)
{
  const Asked *self = data;

  for (guint i = part; i < self->sight->n_places; i += FP_SIGHT_PARTS)
    self->verdict[i] = self->seen[i] == FP_SIGHT_NOT_LOOKED || self->seen[i] == FP_SIGHT_RAYS
                         ? (FpSightVerdict) { -2, FALSE, -1 }
                         : find_blocker (self, i);
}

/* NULL: nobody looks there. */
static const FpSightVerdict *
verdicts (const FpSight *self, FpMoment moment, FpFocus focus)
{
  FpSight *mine = (FpSight *) self;
  FpSightVerdict **verdict = &mine->verdict[moment][focus];
  const guint8 *seen = fp_sight_seen (self, moment, focus);
  const FpRayIndex *others, *ministers;

  if (seen == NULL || g_atomic_pointer_get (verdict) != NULL)
    return *verdict;
  fp_sight_indexes (self, moment, &others, &ministers);
  g_mutex_lock (&mine->hides_mutex);
  if (*verdict == NULL)
    {
      FpSightVerdict *all = g_new (FpSightVerdict, MAX (self->n_places, 1));
      guint n_placed;
      fp_scene_placed (fp_people_scene (self->people), &n_placed);
      mine->hides[moment][focus] = g_new0 (gint, n_placed + 1);
      fp_workers_do (FP_SIGHT_PARTS, find_blockers,
                     &(Asked) { self, others, ministers, moment, focus, seen, all, mine->hides[moment][focus] });
      g_atomic_pointer_set (verdict, all);
    }
  g_mutex_unlock (&mine->hides_mutex);
  return *verdict;
}

static FpSightVerdict
verdict_at (const FpSight *self, guint place, FpMoment moment, FpFocus focus)
{
  const FpSightVerdict *verdict = NULL;

  if (place < self->n_places && (guint) moment < FP_N_MOMENTS && (guint) focus < FP_N_FOCUSES)
    verdict = verdicts (self, moment, focus);
  return verdict != NULL ? verdict[place] : (FpSightVerdict) { -2, FALSE, -1 };
}

int
fp_sight_blocker (const FpSight *self, guint place, FpMoment moment, FpFocus focus, int *place_in_front)
{
  const FpSightVerdict verdict = verdict_at (self, place, moment, focus);
  if (place_in_front != NULL)
    *place_in_front = verdict.place_in_front;
  return verdict.thing;
}

gboolean
fp_sight_blocker_is_minister (const FpSight *self, guint place, FpMoment moment, FpFocus focus)
{
  return verdict_at (self, place, moment, focus).is_minister;
}

const gboolean *
fp_sight_hiders (const FpSight *self, FpMoment moment, FpFocus focus)
{
  if ((guint) moment >= FP_N_MOMENTS || (guint) focus >= FP_N_FOCUSES || verdicts (self, moment, focus) == NULL)
    return NULL;
  return self->hides[moment][focus];
}
