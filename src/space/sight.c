/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sight-private.h"

#include "body.h"

#include "footpace/workers.h"

/* Below this many places others cost more than they save. */
#define PLACES_FOR_WORKERS 100
#define PARTS 16

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
  FpSight      *sight;
  GCancellable *cancel;
  guint         step; /* places part, part + step, … are of one part */
} Look;

static void
look_from (FpSight *sight, FpPosture posture, guint place)
{
  const FpVec3 eye = fp_people_eye (sight->people, place, posture);

  for (int focus = 0; focus < FP_N_FOCUSES; focus++)
    {
      FpVec3 ends[FP_SIGHT_RAYS];
      if (sight->target[focus] < 0)
        continue;
      fp_sight_ends (sight, (FpFocus) focus, eye, ends);
      *fp_sight_cell (sight, posture, (FpFocus) focus, place)
        = (guint8) fp_ray_index_seen (sight->index[posture], eye, ends, fp_sight_skip (sight, place, (FpFocus) focus));
    }
}

static void
look (guint part, gpointer data)
{
  const Look *self = data;
  guint n;
  const FpPersonPlace *place = fp_people_places (self->sight->people, &n);

  for (int posture = 0; posture < FP_N_POSTURES; posture++)
    for (guint i = part; i < n && !g_cancellable_is_cancelled (self->cancel); i += self->step)
      if (place[i].postures & (1u << posture))
        look_from (self->sight, (FpPosture) posture, i);
}

/* Every cell belongs to one part, so the answer is the same however many work at it. */
static void
look_from_everywhere (FpSight *self, GCancellable *cancel)
{
  const guint parts = self->n_places >= PLACES_FOR_WORKERS ? PARTS : 1;

  fp_workers_do (parts, look, &(Look) { self, cancel, parts });
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
  FpSight *self = g_new0 (FpSight, 1);
  gsize cells;

  g_atomic_ref_count_init (&self->ref_count);
  self->people = fp_people_ref (people);
  fp_people_places (people, &self->n_places);
  find_targets (self);
  for (int posture = 0; posture < FP_N_POSTURES; posture++)
    {
      self->obstacles[posture] = fp_sight_obstacles (people, (FpPosture) posture);
      self->index[posture] = fp_ray_index_new (self->obstacles[posture]);
    }
  cells = (gsize) FP_N_POSTURES * FP_N_FOCUSES * self->n_places;
  self->seen = g_new (guint8, cells);
  for (gsize i = 0; i < cells; i++)
    self->seen[i] = FP_SIGHT_NOT_LOOKED;
  look_from_everywhere (self, cancel);
  if (g_cancellable_is_cancelled (cancel))
    g_clear_pointer (&self, fp_sight_unref);
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
    }
  fp_people_unref (mine->people);
  g_free (mine->seen);
  g_free (mine);
}
