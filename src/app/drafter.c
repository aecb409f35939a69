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
  const FpScene *scene; /* owned */
  FpDraftHow     how;
  GCancellable  *cancel; /* of the job; NULL: nobody waits meanwhile */
} Order;

static void
order_free (gpointer data)
{
  Order *order = data;

  fp_scene_unref (order->scene);
  g_free (order);
}

static FpProjection *
project (const Order *order, FpViewId view)
{
  return fp_projection_new_until (order->scene, view, &order->how.cut[view], order->how.hidden, order->cancel);
}

static gpointer
project_plan (gpointer data)
{
  return project (data, FP_VIEW_PLAN);
}

/* The plan holds as much as the other two together, so it has a thread to itself. */
static FpProjection **
project_all (FpDrafter *self, Order *order)
{
  FpProjection **projection = g_new0 (FpProjection *, FP_N_VIEWS);
  gint64 begun = g_get_monotonic_time ();
  GThread *thread = g_thread_new ("plan", project_plan, order);

  projection[FP_VIEW_ELEVATION] = project (order, FP_VIEW_ELEVATION);
  projection[FP_VIEW_SECTION] = project (order, FP_VIEW_SECTION);
  projection[FP_VIEW_PLAN] = g_thread_join (thread);
  if (g_cancellable_is_cancelled (order->cancel))
    return projection; /* how long it takes is not known */
  g_mutex_lock (&self->mutex);
  self->took = g_get_monotonic_time () - begun;
  g_mutex_unlock (&self->mutex);
  return projection;
}

static void
draft (FpLatestJob *job, gpointer request, gpointer data)
{
  Order *order = request;

  order->cancel = fp_latest_job_cancellable (job);
  fp_latest_job_post (job, project_all (data, order));
}

static void
receive (gpointer result, gpointer data)
{
  FpDrafter *self = data;

  self->receive (result, self->data);
}

static const FpLatestWork drafting = {
  draft, receive, order_free, projections_free, GRACE_MS
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
fp_drafter_draft (FpDrafter *self, const FpScene *scene, const FpDraftHow *how)
{
  Order *order = g_new (Order, 1);
  FpProjection **projection;
  gboolean at_once;

  *order = (Order) { fp_scene_ref (scene), *how, NULL };
  g_mutex_lock (&self->mutex);
  at_once = self->took <= AT_ONCE_US;
  g_mutex_unlock (&self->mutex);
  /* What was asked before must not arrive after what is made now. */
  if (!at_once || fp_latest_is_busy (self->latest))
    {
      fp_latest_ask (self->latest, order);
      return;
    }
  projection = project_all (self, order);
  order_free (order);
  self->receive (projection, self->data);
  projections_free (projection);
}
