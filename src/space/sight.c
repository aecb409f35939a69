/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sight-private.h"

#include "body.h"

#include "footpace/workers.h"

/* Below this many places others cost more than they save. */
#define PLACES_FOR_WORKERS 100

/* --- what is looked at, past what ----------------------------------------- */

FpSolids *
fp_sight_obstacles (const FpPeople *people, FpMoment moment)
{
  guint n;
  const FpPlaced *placed = fp_scene_placed (fp_people_scene (people), &n);
  FpSolids *out = fp_solids_new ();

  for (guint i = 0; i < n; i++)
    if (!placed[i].ghost)
      {
        g_autoptr (FpSolids) own = fp_solids_new ();
        fp_item_kind (placed[i].item)->solids (&placed[i].form, own);
        fp_solids_append_placed (out, own, &placed[i].place, placed[i].level, i);
      }
  fp_people_ministers (people, moment, out);
  fp_people_add_bodies (people, fp_moment_posture (moment), FP_SIGHT_PERSON, out);
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

void
fp_sight_ends (const FpSight *self, FpFocus focus, FpVec3 eye, FpVec3 ends[FP_SIGHT_RAYS])
{
  for (guint i = 0; i < FP_SIGHT_RAYS; i++)
    {
      FpVec3 d = fp_vec3_sub (self->point[focus][i], eye);
      double length = fp_vec3_length (d);
      double share = length > FP_SIGHT_SHORT ? 1 - FP_SIGHT_SHORT / length : 0;
      ends[i] = fp_vec3_add (eye, fp_vec3_scale (d, share));
    }
}

gboolean
fp_sight_eye (const FpSight *self, guint place, FpMoment moment, FpVec3 *eye)
{
  FpPosture posture;

  if (!fp_people_looks (self->people, place, moment, &posture))
    return FALSE;
  *eye = fp_people_eye (self->people, place, posture);
  return TRUE;
}

/* --- looking -------------------------------------------------------------- */

#define LOOK_AGAIN (FP_SIGHT_NOT_LOOKED - 1) /* what was changed may stand in the way */
G_STATIC_ASSERT (FP_SIGHT_RAYS < LOOK_AGAIN);

typedef struct
{
  const FpSight       *sight;
  FpMoment             moment;
  FpFocus              focus;
  guint                step;   /* places part, part + step, … are of one part */
  guint8              *seen;
  const guint8        *before; /* what was seen then, and what has changed since; NULL */
  const FpSightChange *change;
  const FpRayIndex    *index;  /* NULL while nobody needs it */
} Look;

/* Every place belongs to one part, so the answer is the same however many work at it. */
static void
take_over (guint part, gpointer data)
{
  const Look *self = data;

  for (guint i = part; i < self->sight->n_places; i += self->step)
    {
      FpVec3 eye, ends[FP_SIGHT_RAYS];
      self->seen[i] = FP_SIGHT_NOT_LOOKED;
      if (!fp_sight_eye (self->sight, i, self->moment, &eye))
        continue;
      fp_sight_ends (self->sight, self->focus, eye, ends);
      self->seen[i] = fp_sight_change_reaches (self->change, eye, ends) ? LOOK_AGAIN : self->before[i];
    }
}

static void
look (guint part, gpointer data)
{
  const Look *self = data;

  for (guint i = part; i < self->sight->n_places && !g_cancellable_is_cancelled (self->sight->cancel); i += self->step)
    {
      FpVec3 eye, ends[FP_SIGHT_RAYS];
      if (self->seen[i] != LOOK_AGAIN || !fp_sight_eye (self->sight, i, self->moment, &eye))
        continue;
      fp_sight_ends (self->sight, self->focus, eye, ends);
      self->seen[i] = (guint8) fp_ray_index_seen (self->index, eye, ends, fp_sight_skip (self->sight, i, self->focus));
    }
}

/* With the mutex held. */
static const FpSolids *
make_obstacles (FpSight *self, FpMoment moment)
{
  if (self->obstacles[moment] == NULL)
    self->obstacles[moment] = fp_sight_obstacles (self->people, moment);
  return self->obstacles[moment];
}

/* Likewise. */
static const FpRayIndex *
make_index (FpSight *self, FpMoment moment)
{
  if (self->index[moment] == NULL)
    self->index[moment] = fp_ray_index_new (make_obstacles (self, moment));
  return self->index[moment];
}

/* What was seen before, where it can be taken over; NULL.  With the mutex held. */
static const guint8 *
seen_before (FpSight *self, FpMoment moment, FpFocus focus)
{
  const guint8 *before = self->like_last ? g_atomic_pointer_get (&self->last->seen[moment][focus]) : NULL;

  if (before == NULL || memcmp (self->point[focus], self->last->point[focus], sizeof self->point[focus]) != 0)
    return NULL;
  if (self->change[moment] == NULL)
    self->change[moment] = fp_sight_change_new (self->last->obstacles[moment], make_obstacles (self, moment));
  return before;
}

static void
note_who_looks (const Look *self)
{
  FpVec3 eye;

  for (guint i = 0; i < self->sight->n_places; i++)
    self->seen[i] = fp_sight_eye (self->sight, i, self->moment, &eye) ? LOOK_AGAIN : FP_SIGHT_NOT_LOOKED;
}

/* With the mutex held; NULL: cancelled. */
static guint8 *
look_from_everywhere (FpSight *self, FpMoment moment, FpFocus focus)
{
  const guint parts = self->n_places >= PLACES_FOR_WORKERS ? FP_SIGHT_PARTS : 1;
  g_autofree guint8 *seen = g_malloc (MAX (self->n_places, 1));
  Look all = { .sight = self, .moment = moment, .focus = focus, .step = parts, .seen = seen };

  all.before = seen_before (self, moment, focus);
  all.change = self->change[moment];
  if (all.before != NULL)
    fp_workers_do (parts, take_over, &all);
  else
    note_who_looks (&all);
  if (memchr (seen, LOOK_AGAIN, self->n_places) != NULL)
    {
      all.index = make_index (self, moment);
      fp_workers_do (parts, look, &all);
    }
  return g_cancellable_is_cancelled (self->cancel) ? NULL : g_steal_pointer (&seen);
}

/* What is asked is made once, and never changes after that: so a sight is still a value. */
const FpRayIndex *
fp_sight_index (const FpSight *self, FpMoment moment)
{
  FpSight *mine = (FpSight *) self;
  const FpRayIndex *index;

  g_mutex_lock (&mine->mutex);
  index = make_index (mine, moment);
  g_mutex_unlock (&mine->mutex);
  return index;
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

/* --- life ----------------------------------------------------------------- */

static void
find_targets (FpSight *self)
{
  const FpScene *scene = fp_people_scene (self->people);
  for (int focus = 0; focus < FP_N_FOCUSES; focus++)
    {
      guint n = fp_sight_points (scene, (FpFocus) focus, self->point[focus]);
      self->target[focus] = n > 0 ? fp_sight_target (scene, (FpFocus) focus) : -1;
    }
}

FpSight *
fp_sight_new (const FpPeople *people, GCancellable *cancel)
{
  FpSight *self;

  if (g_cancellable_is_cancelled (cancel))
    return NULL;
  self = g_new0 (FpSight, 1);
  g_atomic_ref_count_init (&self->ref_count);
  g_mutex_init (&self->mutex);
  g_mutex_init (&self->hides_mutex);
  self->people = fp_people_ref (people);
  self->cancel = cancel != NULL ? g_object_ref (cancel) : NULL;
  fp_people_places (people, &self->n_places);
  find_targets (self);
  return self;
}

/* What that one was made from is kept no longer than for one more: unless it is just being asked. */
static void
let_go_of_last (FpSight *self)
{
  FpSight *before = NULL;

  if (!g_mutex_trylock (&self->mutex))
    return;
  before = g_steal_pointer (&self->last);
  self->like_last = FALSE;
  g_mutex_unlock (&self->mutex);
  if (before != NULL)
    fp_sight_unref (before);
}

FpSight *
fp_sight_again (const FpPeople *people, const FpSight *last, GCancellable *cancel)
{
  FpSight *self = fp_sight_new (people, cancel);

  if (self == NULL || last == NULL || !fp_sight_same_eyes (last->people, people))
    return self;
  self->last = fp_sight_ref (last);
  self->like_last = TRUE;
  let_go_of_last (self->last);
  return self;
}

FpSight *
fp_sight_ref (const FpSight *self)
{
  FpSight *mine = (FpSight *) self;
  g_atomic_ref_count_inc (&mine->ref_count);
  return mine;
}

void
fp_sight_unref (const FpSight *self)
{
  FpSight *mine = (FpSight *) self;
  if (!g_atomic_ref_count_dec (&mine->ref_count))
    return;
  for (int moment = 0; moment < FP_N_MOMENTS; moment++)
    {
      fp_sight_change_free (mine->change[moment]); /* it borrows from the obstacles */
      fp_ray_index_free (mine->index[moment]);
      fp_solids_free (mine->obstacles[moment]);
      for (int focus = 0; focus < FP_N_FOCUSES; focus++)
        {
          g_free (mine->seen[moment][focus]);
          g_free (mine->verdict[moment][focus]);
        }
    }
  g_clear_pointer (&mine->last, fp_sight_unref);
  fp_people_unref (mine->people);
  g_clear_object (&mine->cancel);
  g_mutex_clear (&mine->mutex);
  g_mutex_clear (&mine->hides_mutex);
  g_free (mine);
}
