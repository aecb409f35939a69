/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drafter.h"

#include "latest.h"

#include <gio/gio.h>

#define GRACE_MS   400
#define AT_ONCE_US 12000 /* leaves the rest of a sixtieth of a second for painting */

struct _FpDrafter
{
  FpLatest        *latest;
  FpDrafterReceive receive;
  gpointer         data;
  gint64           took;  /* µs, the last time; guarded by the mutex */
  GMutex           mutex;
};

static void
projections_free (gpointer data)
{
  FpProjection **projection = data;

  for (guint v = 0; v < FP_N_VIEWS; v++)
    g_clear_pointer (&projection[v], fp_projection_unref);
  g_free (projection);
}

typedef struct
{
  const FpScene *scene;
  FpViewId       view;
} OneView;

static gpointer
project_one (gpointer data)
{
  const OneView *one = data;

  return fp_projection_new (one->scene, one->view);
}

/* The plan holds as much as the other two together, so it has a thread to itself. */
static FpProjection **
project_all (FpDrafter *self, const FpScene *scene)
{
  FpProjection **projection = g_new0 (FpProjection *, FP_N_VIEWS);
  gint64 begun = g_get_monotonic_time ();
  OneView plan = { scene, FP_VIEW_PLAN };
  GThread *thread = g_thread_new ("plan", project_one, &plan);

  projection[FP_VIEW_ELEVATION] = fp_projection_new (scene, FP_VIEW_ELEVATION);
  projection[FP_VIEW_SECTION] = fp_projection_new (scene, FP_VIEW_SECTION);
  projection[FP_VIEW_PLAN] = g_thread_join (thread);
  g_mutex_lock (&self->mutex);
  self->took = g_get_monotonic_time () - begun;
  g_mutex_unlock (&self->mutex);
  return projection;
}

static void
draft (FpLatestJob *job, gpointer request, gpointer data)
{
  fp_latest_job_post (job, project_all (data, request));
}

static void
receive (gpointer result, gpointer data)
{
  FpDrafter *self = data;

  self->receive (result, self->data);
}

static const FpLatestWork drafting = {
  draft, receive, (GDestroyNotify) fp_scene_unref, projections_free, GRACE_MS
};

FpDrafter *
fp_drafter_new (FpDrafterReceive on_projections, gpointer data)
{
  FpDrafter *self = g_new0 (FpDrafter, 1);

  self->receive = on_projections;
  self->data = data;
  self->took = G_MAXINT64;
  g_mutex_init (&self->mutex);
  self->latest = fp_latest_new ("drafting", &drafting, self);
  return self;
}

void
fp_drafter_free (FpDrafter *self)
{
  if (self == NULL)
    return;
  fp_latest_free (self->latest);
  g_mutex_clear (&self->mutex);
  g_free (self);
}

void
fp_drafter_draft (FpDrafter *self, const FpScene *scene)
{
  FpProjection **projection;
  gboolean at_once;

  g_mutex_lock (&self->mutex);
  at_once = self->took <= AT_ONCE_US;
  g_mutex_unlock (&self->mutex);
  /* What was asked before must not arrive after what is made now. */
  if (!at_once || fp_latest_is_busy (self->latest))
    {
      fp_latest_ask (self->latest, (gpointer) fp_scene_ref (scene));
      return;
    }
  projection = project_all (self, scene);
  self->receive (projection, self->data);
  projections_free (projection);
}
