/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drafter.h"

#include "latest.h"

#include "footpace/workers.h"

#include <gio/gio.h>

#define GRACE_MS   400
#define AT_ONCE_US 12000 /* leaves the rest of a sixtieth of a second for painting */
#define STALL_US   100000 /* once in a while nobody minds one of this length */

struct _FpDrafter
{
  FpLatest        *latest;
  FpDrafterReceive receive;
  gpointer         data;
  FpDraft         *begun; /* NULL: none, or used already */
  FpProjection    *last[FP_N_VIEWS]; /* received last, of which the next take over what is the same; NULL */
  gint64           took;    /* µs, the last time; guarded by the mutex */
  gint64           slowest; /* µs, of all times: of any edit it may be that nothing can be taken over; likewise */
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
  FpProjection  *last[FP_N_VIEWS]; /* owned; NULL */
  GCancellable  *cancel; /* of the job; NULL: nobody waits meanwhile */
  FpDraft       *begun;  /* owned: this very draft, which is waited for; NULL */
} Order;

static void
order_free (gpointer data)
{
  Order *order = data;

  fp_scene_unref (order->scene);
  for (guint v = 0; v < FP_N_VIEWS; v++)
    fp_projection_unref (order->last[v]);
  fp_draft_free (order->begun);
  g_free (order);
}

static Order *
order_new (const FpScene *scene, const FpDraftHow *how, GCancellable *cancel)
{
  Order *order = g_new (Order, 1);

  *order = (Order) { .scene = fp_scene_ref (scene), .how = *how, .cancel = cancel };
  return order;
}

static FpProjection *
project (const Order *order, FpViewId view)
{
  return fp_projection_again (order->last[view], order->scene, view, &order->how.cut[view], order->how.hidden,
                              order->cancel);
}

typedef struct
{
  const Order   *order;
  FpProjection **projection; /* FP_N_VIEWS */
} Drawing;

static void
project_part (guint part, gpointer data)
{
  /* The plan holds as much as the other two together, so it is begun first. */
  static const FpViewId views[FP_N_VIEWS] = { FP_VIEW_PLAN, FP_VIEW_ELEVATION, FP_VIEW_SECTION };
  const Drawing *self = data;

  self->projection[views[part]] = project (self->order, views[part]);
}

static FpProjection **
project_all (const Order *order)
{
  FpProjection **projection = g_new0 (FpProjection *, FP_N_VIEWS);

  fp_workers_do (FP_N_VIEWS, project_part, &(Drawing) { order, projection });
  return projection;
}

static void
note_time (FpDrafter *self, gint64 took)
{
  g_mutex_lock (&self->mutex);
  self->took = took;
  self->slowest = MAX (self->slowest, took);
  g_mutex_unlock (&self->mutex);
}

/* Remembers how long it takes. */
static FpProjection **
project_timed (FpDrafter *self, Order *order)
{
  const gint64 begun = g_get_monotonic_time ();
  FpProjection **projection = project_all (order);

  if (!g_cancellable_is_cancelled (order->cancel))
    note_time (self, g_get_monotonic_time () - begun);
  return projection;
}

/* --- begun before there is a drafter --------------------------------------- */

struct _FpDraft
{
  Order         *order;
  GCancellable  *cancel;
  GThread       *thread; /* ends with the projections; NULL: they were handed over */
  gint64         took;   /* µs, once that has ended */
  gint           done;
};

/* On this one thread: the toolkit that starts beside it, and the display's server, have use for the other processors. */
static gpointer
draft_begun (gpointer data)
{
  FpDraft *self = data;
  const gint64 begun = g_get_monotonic_time ();
  FpProjection **projection = g_new0 (FpProjection *, FP_N_VIEWS);

  for (guint v = 0; v < FP_N_VIEWS; v++)
    projection[v] = project (self->order, (FpViewId) v);
  self->took = g_get_monotonic_time () - begun;
  g_atomic_int_set (&self->done, TRUE);
  return projection;
}

FpDraft *
fp_draft_begin (const FpScene *scene, const FpDraftHow *how)
{
  FpDraft *self = g_new0 (FpDraft, 1);

  self->cancel = g_cancellable_new ();
  self->order = order_new (scene, how, self->cancel);
  self->thread = g_thread_new ("draft", draft_begun, self);
  return self;
}

/* Owned by the caller; waits. */
static FpProjection **
draft_end (FpDraft *self)
{
  return g_thread_join (g_steal_pointer (&self->thread));
}

void
fp_draft_free (FpDraft *self)
{
  if (self == NULL)
    return;
  g_cancellable_cancel (self->cancel);
  if (self->thread != NULL)
    projections_free (draft_end (self));
  order_free (self->order);
  g_object_unref (self->cancel);
  g_free (self);
}

gboolean
fp_draft_is_done (FpDraft *self)
{
  return g_atomic_int_get (&self->done);
}

static gboolean
is_cut_alike (const FpDraftHow *a, const FpDraftHow *b)
{
  for (guint v = 0; v < FP_N_VIEWS; v++)
    if (a->cut[v].placed != b->cut[v].placed || a->cut[v].at != b->cut[v].at || a->cut[v].turned != b->cut[v].turned)
      return FALSE;
  return TRUE;
}

static gboolean
is_draft_of (const FpDraft *self, const Order *order)
{
  return self->order->scene == order->scene && self->order->how.hidden == order->how.hidden
         && is_cut_alike (&self->order->how, &order->how);
}

static FpProjection **
take_begun (FpDrafter *self, FpDraft *begun)
{
  FpProjection **projection = draft_end (begun);

  note_time (self, begun->took);
  return projection;
}

/* --- on the background thread ------------------------------------------------ */

static void
cancel_begun (GCancellable *job, gpointer begun)
{
  (void) job;
  g_cancellable_cancel (begun);
}

static FpProjection **
wait_for_begun (FpDrafter *self, FpDraft *begun, GCancellable *cancel)
{
  const gulong id = g_cancellable_connect (cancel, G_CALLBACK (cancel_begun), begun->cancel, NULL);
  FpProjection **projection = take_begun (self, begun);

  g_cancellable_disconnect (cancel, id);
  return projection;
}

static void
draft (FpLatestJob *job, gpointer request, gpointer data)
{
  Order *order = request;

  order->cancel = fp_latest_job_cancellable (job);
  fp_latest_job_post (job, order->begun != NULL ? wait_for_begun (data, order->begun, order->cancel)
                                                : project_timed (data, order));
}

static void
receive (gpointer result, gpointer data)
{
  FpDrafter *self = data;
  FpProjection *const *projection = result;

  for (guint v = 0; v < FP_N_VIEWS; v++)
    {
      fp_projection_unref (self->last[v]);
      self->last[v] = fp_projection_ref (projection[v]);
    }
  self->receive (projection, self->data);
}

static const FpLatestWork drafting = {
  draft, receive, order_free, projections_free, GRACE_MS, 0
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
  fp_draft_free (self->begun);
  for (guint v = 0; v < FP_N_VIEWS; v++)
    fp_projection_unref (self->last[v]);
  g_mutex_clear (&self->mutex);
  g_free (self);
}

void
fp_drafter_take_begun (FpDrafter *self, FpDraft *begun)
{
  fp_draft_free (self->begun);
  self->begun = begun;
}

/* What may be made while somebody waits for it, or has been made already. */
static FpProjection **
draft_at_once (FpDrafter *self, Order *order)
{
  gboolean at_once;

  if (order->begun != NULL)
    return fp_draft_is_done (order->begun) ? take_begun (self, order->begun) : NULL;
  g_mutex_lock (&self->mutex);
  at_once = self->took <= AT_ONCE_US && self->slowest <= STALL_US;
  g_mutex_unlock (&self->mutex);
  /* What was asked before must not arrive after what is made now. */
  return at_once && !fp_latest_is_busy (self->latest) ? project_timed (self, order) : NULL;
}

void
fp_drafter_draft (FpDrafter *self, const FpScene *scene, const FpDraftHow *how)
{
  Order *order = order_new (scene, how, NULL);
  FpDraft *begun = g_steal_pointer (&self->begun);
  FpProjection **projection;

  for (guint v = 0; v < FP_N_VIEWS; v++)
    order->last[v] = self->last[v] != NULL ? fp_projection_ref (self->last[v]) : NULL;
  if (begun != NULL && is_draft_of (begun, order))
    order->begun = begun;
  else
    fp_draft_free (begun);
  projection = draft_at_once (self, order);
  if (projection == NULL)
    {
      fp_latest_ask (self->latest, order);
      return;
    }
  order_free (order);
  receive (projection, self);
  projections_free (projection);
}
