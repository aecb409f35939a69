/* SPDX-License-Identifier: GPL-3.0-or-later */
/* sight.c - the life of a sight; what it sees is in sight-look.c */
#include "sight-private.h"

static void
find_targets (FpSight *self)
{
  const FpScene *scene = fp_people_scene (self->people);
  for (int focus = 0; focus < FP_N_FOCUSES; focus++)
    {
      FpVec3 point[FP_SIGHT_RAYS];
      self->target[focus] = -1;
      if (fp_sight_points (scene, (FpFocus) focus, point) == 0)
        continue;
      self->target[focus] = fp_sight_target (scene, (FpFocus) focus);
      self->point[focus] = fp_ray_points (point);
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
  g_mutex_init (&self->blind_mutex);
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

static void
clear_obstacles (FpSightObstacles *self)
{
  fp_ray_index_free (self->index);
  fp_solids_free (self->solids);
}

static void
free_seen (FpSight *self)
{
  for (int posture = 0; posture < FP_N_POSTURES; posture++)
    {
      fp_sight_change_free (self->change[posture]); /* it borrows from the obstacles */
      clear_obstacles (&self->others[posture]);
      for (int focus = 0; focus < FP_N_FOCUSES; focus++)
        {
          g_free (self->past[posture][focus]);
          g_clear_pointer (&self->blind[posture][focus], g_array_unref);
        }
    }
  clear_obstacles (&self->fixed);
  for (int moment = 0; moment < FP_N_MOMENTS; moment++)
    {
      clear_obstacles (&self->ministers[moment]);
      for (int focus = 0; focus < FP_N_FOCUSES; focus++)
        {
          g_free (self->seen[moment][focus]);
          g_free (self->verdict[moment][focus]);
          g_free (self->hides[moment][focus]);
        }
    }
}

void
fp_sight_unref (const FpSight *self)
{
  FpSight *mine = (FpSight *) self;
  if (!g_atomic_ref_count_dec (&mine->ref_count))
    return;
  free_seen (mine);
  g_clear_pointer (&mine->last, fp_sight_unref);
  fp_people_unref (mine->people);
  g_clear_object (&mine->cancel);
  g_mutex_clear (&mine->mutex);
  g_mutex_clear (&mine->hides_mutex);
  g_mutex_clear (&mine->blind_mutex);
  g_free (mine);
}

int
fp_sight_target_of (const FpSight *self, FpFocus focus)
{
  return (guint) focus < FP_N_FOCUSES ? self->target[focus] : -1;
}
