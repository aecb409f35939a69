/* SPDX-License-Identifier: GPL-3.0-or-later */
/* sight-look.c - from every place to every point, when somebody asks
 *
 * First past all that is the same whenever the people do the same: building,
 * furnishings and people.  What is seen past them is then looked at past the
 * few ministers of the moment.
 */
#include "sight-private.h"

#include "body.h"

#include "footpace/workers.h"

/* Below this many places others cost more than they save. */
#define PLACES_FOR_WORKERS 100

/* --- what is looked at, past what ----------------------------------------- */

void
fp_sight_add_things (const FpPeople *people, FpSolids *out)
{
  guint n;
  const FpPlaced *placed = fp_scene_placed (fp_people_scene (people), &n);

  for (guint i = 0; i < n; i++)
    if (!placed[i].ghost)
      {
        g_autoptr (FpSolids) own = fp_solids_new ();
        fp_item_kind (placed[i].item)->solids (&placed[i].form, own);
        fp_solids_append_placed (out, own, &placed[i].place, placed[i].level, i);
      }
}

static void
add_others (const FpPeople *people, FpPosture posture, FpSolids *out)
{
  fp_sight_add_things (people, out);
  fp_people_add_bodies (people, posture, FP_SIGHT_PERSON, out);
}

FpSolids *
fp_sight_obstacles (const FpPeople *people, FpMoment moment)
{
  FpSolids *out = fp_solids_new ();

  fp_people_ministers (people, moment, out);
  add_others (people, fp_moment_posture (moment), out);
  return out;
}

/* The reader is what one looks at, at the ambo; the celebrant, at the chair. */
static gboolean
is_minister (FpFocus focus)
{
  return focus == FP_FOCUS_AMBO || focus == FP_FOCUS_CHAIR;
}

FpRaySkip
fp_sight_skip (const FpSight *self, guint place, FpFocus focus)
{
  return (FpRaySkip) {
    FP_SIGHT_PERSON + place, is_minister (focus) ? (guint) self->target[focus] : FP_RAY_SKIP_NOBODY,
  };
}

gboolean
fp_sight_rays (const FpSight *self, guint place, FpMoment moment, FpFocus focus, FpRays *rays)
{
  FpPosture posture;

  if (!fp_people_looks (self->people, place, moment, &posture))
    return FALSE;
  fp_rays_to_points (rays, fp_people_eye (self->people, place, posture), &self->point[focus], FP_SIGHT_SHORT);
  return TRUE;
}

/* --- made when they are needed, with the mutex held ------------------------- */

static const FpSolids *
make_others (FpSight *self, FpPosture posture)
{
  FpSightObstacles *others = &self->others[posture];

  if (others->solids == NULL)
    {
      others->solids = fp_solids_new ();
      add_others (self->people, posture, others->solids);
    }
  return others->solids;
}

static const FpRayIndex *
index_others (FpSight *self, FpPosture posture)
{
  FpSightObstacles *others = &self->others[posture];

  if (others->index == NULL)
    others->index = fp_ray_index_new (make_others (self, posture));
  return others->index;
}

static const FpRayIndex *
index_ministers (FpSight *self, FpMoment moment)
{
  FpSightObstacles *ministers = &self->ministers[moment];

  if (ministers->index == NULL)
    {
      ministers->solids = fp_solids_new ();
      fp_people_ministers (self->people, moment, ministers->solids);
      ministers->index = fp_ray_index_new (ministers->solids);
    }
  return ministers->index;
}

/* --- past all but the ministers ----------------------------------------------- */

typedef struct
{
  const FpSight       *sight;
  FpMoment             moment; /* any at which the people do the same         */
  FpFocus              focus;
  guint                step;   /* places part, part + step, … are of one part */
  guint64             *past;
  gboolean            *again;  /* whether what was changed may stand in the way, or nobody has looked before */
  const guint64       *before; /* what was seen then, and what has changed since; NULL */
  const FpSightChange *change;
  const FpRayIndex    *index;  /* NULL while nobody needs it                  */
} Look;

/* Every place belongs to one part, so the answer is the same however many work at it. */
static void
take_over (guint part, gpointer data)
{
  const Look *self = data;

  for (guint i = part; i < self->sight->n_places; i += self->step)
    {
      FpRays rays;
      self->past[i] = 0;
      self->again[i] = FALSE;
      if (!fp_sight_rays (self->sight, i, self->moment, self->focus, &rays))
        continue;
      self->again[i] = self->before == NULL || fp_sight_change_reaches (self->change, &rays);
      self->past[i] = self->again[i] ? 0 : self->before[i];
    }
}

static void
look_past_others (guint part, gpointer data)
{
  const Look *self = data;

  for (guint i = part; i < self->sight->n_places && !g_cancellable_is_cancelled (self->sight->cancel); i += self->step)
    {
      FpRays rays;
      if (self->again[i] && fp_sight_rays (self->sight, i, self->moment, self->focus, &rays))
        self->past[i] = fp_ray_index_seen (self->index, &rays, fp_sight_skip (self->sight, i, self->focus), FP_SIGHT_ALL);
    }
}

/* What was seen before, where it can be taken over; NULL. */
static const guint64 *
past_before (FpSight *self, FpPosture posture, FpFocus focus)
{
  const guint64 *before = self->like_last ? g_atomic_pointer_get (&self->last->past[posture][focus]) : NULL;

  if (before == NULL || memcmp (&self->point[focus], &self->last->point[focus], sizeof self->point[focus]) != 0)
    return NULL;
  if (self->change[posture] == NULL)
    self->change[posture] = fp_sight_change_new (self->last->others[posture].solids, make_others (self, posture));
  return before;
}

static gboolean
any (const gboolean *flag, guint n)
{
  for (guint i = 0; i < n; i++)
    if (flag[i])
      return TRUE;
  return FALSE;
}

static guint
parts_of (const FpSight *self)
{
  return self->n_places >= PLACES_FOR_WORKERS ? FP_SIGHT_PARTS : 1;
}

/* NULL: cancelled. */
static const guint64 *
make_past (FpSight *self, FpMoment moment, FpFocus focus)
{
  const FpPosture posture = fp_moment_posture (moment);
  g_autofree guint64 *past = NULL;
  g_autofree gboolean *again = NULL;
  Look all = { .sight = self, .moment = moment, .focus = focus, .step = parts_of (self) };

  if (self->past[posture][focus] != NULL)
    return self->past[posture][focus];
  all.past = past = g_new (guint64, MAX (self->n_places, 1));
  all.again = again = g_new (gboolean, MAX (self->n_places, 1));
  all.before = past_before (self, posture, focus);
  all.change = self->change[posture];
  fp_workers_do (all.step, take_over, &all);
  if (any (again, self->n_places))
    {
      all.index = index_others (self, posture);
      fp_workers_do (all.step, look_past_others, &all);
    }
  if (g_cancellable_is_cancelled (self->cancel))
    return NULL;
  make_others (self, posture); /* the next one will be held against them */
  g_atomic_pointer_set (&self->past[posture][focus], g_steal_pointer (&past));
  return self->past[posture][focus];
}

/* --- past the ministers ----------------------------------------------------------- */

typedef struct
{
  const FpSight    *sight;
  FpMoment          moment;
  FpFocus           focus;
  guint             step;
  const guint64    *past;
  const FpRayIndex *ministers;
  guint8           *seen;
} Count;

static void
count_seen (guint part, gpointer data)
{
  const Count *self = data;

  for (guint i = part; i < self->sight->n_places; i += self->step)
    {
      guint64 seen = self->past[i];
      FpPosture posture;
      FpRays rays;
      self->seen[i] = FP_SIGHT_NOT_LOOKED;
      if (!fp_people_looks (self->sight->people, i, self->moment, &posture))
        continue;
      if (seen != 0 && fp_solids_count (self->sight->ministers[self->moment].solids) > 0
          && fp_sight_rays (self->sight, i, self->moment, self->focus, &rays))
        seen = fp_ray_index_seen (self->ministers, &rays, fp_sight_skip (self->sight, i, self->focus), seen);
      self->seen[i] = (guint8) __builtin_popcountll (seen);
    }
}

/* NULL: cancelled. */
static guint8 *
look_from_everywhere (FpSight *self, FpMoment moment, FpFocus focus)
{
  Count all = { .sight = self, .moment = moment, .focus = focus, .step = parts_of (self) };

  all.past = make_past (self, moment, focus);
  if (all.past == NULL)
    return NULL;
  all.ministers = index_ministers (self, moment);
  all.seen = g_malloc (MAX (self->n_places, 1));
  fp_workers_do (all.step, count_seen, &all);
  return all.seen;
}

/* --- asked by others ----------------------------------------------------------------- */

/* What is asked is made once, and never changes after that: so a sight is still a value. */
void
fp_sight_indexes (const FpSight *self, FpMoment moment, const FpRayIndex **others, const FpRayIndex **ministers)
{
  FpSight *mine = (FpSight *) self;

  g_mutex_lock (&mine->mutex);
  *others = index_others (mine, fp_moment_posture (moment));
  *ministers = index_ministers (mine, moment);
  g_mutex_unlock (&mine->mutex);
}

const guint8 *
fp_sight_seen (const FpSight *self, FpMoment moment, FpFocus focus)
{
  FpSight *mine = (FpSight *) self;
  guint8 **seen = &mine->seen[moment][focus];

  if (self->target[focus] < 0 || g_atomic_pointer_get (seen) != NULL)
    return *seen;
  g_mutex_lock (&mine->mutex);
  if (*seen == NULL)
    g_atomic_pointer_set (seen, look_from_everywhere (mine, moment, focus));
  g_mutex_unlock (&mine->mutex);
  return g_atomic_pointer_get (seen);
}
