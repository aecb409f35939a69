/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sight-private.h"

#include "body.h"

#include "footpace/workers.h"

/* Below this many places others cost more than they save. */
#define PLACES_FOR_WORKERS 100

/* --- what is looked at, past what ----------------------------------------- */

FpSolids *
fp_sight_obstacles (const FpPeople *people, FpPosture posture)
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
  fp_people_ministers (people, out);
  fp_people_add_bodies (people, posture, FP_SIGHT_PERSON, out);
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

/* --- looking -------------------------------------------------------------- */

typedef struct
{
  const FpSight    *sight;
  const FpRayIndex *index;
  FpPosture         posture;
  FpFocus           focus;
  guint8           *seen;
  guint             step; /* places part, part + step, … are of one part */
} Look;

static void
look (guint part, gpointer data)
{
  const Look *self = data;
  guint n;
  const FpPersonPlace *place = fp_people_places (self->sight->people, &n);

  for (guint i = part; i < n && !g_cancellable_is_cancelled (self->sight->cancel); i += self->step)
    if (place[i].postures & (1u << self->posture))
      {
        const FpVec3 eye = fp_people_eye (self->sight->people, i, self->posture);
        FpVec3 ends[FP_SIGHT_RAYS];
        fp_sight_ends (self->sight, self->focus, eye, ends);
        self->seen[i] = (guint8) fp_ray_index_seen (self->index, eye, ends, fp_sight_skip (self->sight, i, self->focus));
      }
}

/* Every place belongs to one part, so the answer is the same however many work at it.  NULL: cancelled. */
static guint8 *
look_from_everywhere (const FpSight *self, const FpRayIndex *index, FpPosture posture, FpFocus focus)
{
  const guint parts = self->n_places >= PLACES_FOR_WORKERS ? FP_SIGHT_PARTS : 1;
  g_autofree guint8 *seen = g_malloc (MAX (self->n_places, 1));

  memset (seen, FP_SIGHT_NOT_LOOKED, self->n_places);
  fp_workers_do (parts, look, &(Look) { self, index, posture, focus, seen, parts });
  return g_cancellable_is_cancelled (self->cancel) ? NULL : g_steal_pointer (&seen);
}

/* With the mutex held. */
static const FpRayIndex *
make_index (FpSight *self, FpPosture posture)
{
  if (self->index[posture] == NULL)
    {
      self->obstacles[posture] = fp_sight_obstacles (self->people, posture);
      self->index[posture] = fp_ray_index_new (self->obstacles[posture]);
    }
  return self->index[posture];
}

/* What is asked is made once, and never changes after that: so a sight is still a value. */
const FpRayIndex *
fp_sight_index (const FpSight *self, FpPosture posture)
{
  FpSight *mine = (FpSight *) self;
  const FpRayIndex *index;

  g_mutex_lock (&mine->mutex);
  index = make_index (mine, posture);
  g_mutex_unlock (&mine->mutex);
  return index;
}

const guint8 *
fp_sight_seen (const FpSight *self, FpPosture posture, FpFocus focus)
{
  FpSight *mine = (FpSight *) self;
  guint8 **seen = &mine->seen[posture][focus];

  if (self->target[focus] < 0 || g_atomic_pointer_get (seen) != NULL)
    return *seen;
  g_mutex_lock (&mine->mutex);
  if (*seen == NULL)
    g_atomic_pointer_set (seen, look_from_everywhere (self, make_index (mine, posture), posture, focus));
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
  for (int posture = 0; posture < FP_N_POSTURES; posture++)
    {
      fp_ray_index_free (mine->index[posture]);
      fp_solids_free (mine->obstacles[posture]);
      for (int focus = 0; focus < FP_N_FOCUSES; focus++)
        {
          g_free (mine->seen[posture][focus]);
          g_free (mine->verdict[posture][focus]);
        }
    }
  fp_people_unref (mine->people);
  g_clear_object (&mine->cancel);
  g_mutex_clear (&mine->mutex);
  g_mutex_clear (&mine->hides_mutex);
  g_free (mine);
}
