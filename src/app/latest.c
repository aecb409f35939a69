/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "latest.h"

#include "give-back.h"

struct _FpLatest
{
  gatomicrefcount     ref_count;
  const FpLatestWork *work;
  gpointer            data;
  GMainContext       *context;
  GThread            *thread;
  GSource            *overdue;   /* owner's thread only                      */
  gboolean            closed;    /* owner's thread only                      */
  gint                undelivered;

  GMutex              mutex;     /* guards all below                         */
  GCond               wake;
  gpointer            waiting;
  gboolean            quit;
  GCancellable       *running;   /* NULL: idle                               */
  gint64              started;
};

struct _FpLatestJob
{
  FpLatest     *owner;
  GCancellable *cancel;
};

typedef struct
{
  FpLatest     *owner;
  GCancellable *cancel;
  gpointer      result;
} Delivery;

/* Requests that wait or run, and results that are yet to be handed over, of all objects. */
static gint at_work;

static FpLatest *
latest_ref (FpLatest *self)
{
  g_atomic_ref_count_inc (&self->ref_count);
  return self;
}

static void
latest_unref (FpLatest *self)
{
  if (!g_atomic_ref_count_dec (&self->ref_count))
    return;
  g_main_context_unref (self->context);
  g_mutex_clear (&self->mutex);
  g_cond_clear (&self->wake);
  g_free (self);
}

static gboolean
deliver (gpointer data)
{
  Delivery *d = data;

  g_atomic_int_add (&d->owner->undelivered, -1);
  if (!d->owner->closed && !g_cancellable_is_cancelled (d->cancel))
    d->owner->work->receive (d->result, d->owner->data);
  return G_SOURCE_REMOVE;
}

static void
delivery_free (gpointer data)
{
  Delivery *d = data;

  d->owner->work->result_free (d->result);
  g_object_unref (d->cancel);
  latest_unref (d->owner);
  g_free (d);
  g_atomic_int_add (&at_work, -1);
  fp_give_back_later ();
}

GCancellable *
fp_latest_job_cancellable (FpLatestJob *job)
{
  return job->cancel;
}

void
fp_latest_job_post (FpLatestJob *job, gpointer result)
{
  Delivery *d = g_new (Delivery, 1);
  GSource *source = g_idle_source_new ();

  *d = (Delivery) { latest_ref (job->owner), g_object_ref (job->cancel), result };
  g_atomic_int_inc (&job->owner->undelivered);
  g_atomic_int_inc (&at_work);
  /* Above drawing: where frames are slow and something is always moving (the
   * spinner that waits for this very result), a lower one is never reached.  A stream of results cannot
   * starve drawing either, since at most one job runs and each result costs far less than a frame. */
  g_source_set_priority (source, G_PRIORITY_DEFAULT);
  g_source_set_callback (source, deliver, d, delivery_free);
  g_source_attach (source, job->owner->context);
  g_source_unref (source);
}

/* The next request, or NULL when it is time to end. */
static gpointer
next_request (FpLatest *self, FpLatestJob *job)
{
  gpointer request = NULL;

  g_mutex_lock (&self->mutex);
  if (self->running != NULL)
    g_atomic_int_add (&at_work, -1);
  g_clear_object (&self->running);
  while (self->waiting == NULL && !self->quit)
    g_cond_wait (&self->wake, &self->mutex);
  if (!self->quit)
    {
      request = g_steal_pointer (&self->waiting);
      job->cancel = g_cancellable_new ();
      self->running = g_object_ref (job->cancel);
      self->started = g_get_monotonic_time ();
    }
  g_mutex_unlock (&self->mutex);
  return request;
}

static gpointer
work (gpointer data)
{
  FpLatest *self = data;
  FpLatestJob job = { self, NULL };
  gpointer request;

  while ((request = next_request (self, &job)) != NULL)
    {
      self->work->run (&job, request, self->data);
      self->work->request_free (request);
      g_clear_object (&job.cancel);
    }
  latest_unref (self);
  return NULL;
}

FpLatest *
fp_latest_new (const char *name, const FpLatestWork *what, gpointer data)
{
  FpLatest *self = g_new0 (FpLatest, 1);

  g_atomic_ref_count_init (&self->ref_count);
  self->work = what;
  self->data = data;
  self->context = g_main_context_ref_thread_default ();
  g_mutex_init (&self->mutex);
  g_cond_init (&self->wake);
  fp_give_back_share ();
  self->thread = g_thread_new (name, work, latest_ref (self));
  return self;
}

static void
stop_waiting_for_overdue (FpLatest *self)
{
  if (self->overdue == NULL)
    return;
  g_source_destroy (self->overdue);
  g_clear_pointer (&self->overdue, g_source_unref);
}

void
fp_latest_free (FpLatest *self)
{
  if (self == NULL)
    return;
  self->closed = TRUE;
  stop_waiting_for_overdue (self);
  g_mutex_lock (&self->mutex);
  self->quit = TRUE;
  if (self->running != NULL)
    g_cancellable_cancel (self->running);
  g_cond_signal (&self->wake);
  g_mutex_unlock (&self->mutex);
  g_thread_join (self->thread);
  if (self->waiting != NULL)
    {
      self->work->request_free (self->waiting);
      g_atomic_int_add (&at_work, -1);
    }
  latest_unref (self);
}

/* Cancels what runs when something newer waits and its time is up; tells how long it may still run, 0 if not at all. */
static guint
end_overdue (FpLatest *self)
{
  guint left = 0;

  g_mutex_lock (&self->mutex);
  if (self->running != NULL && self->waiting != NULL && !g_cancellable_is_cancelled (self->running))
    {
      gint64 ran = (g_get_monotonic_time () - self->started) / 1000;

      if (ran >= self->work->grace)
        g_cancellable_cancel (self->running);
      else
        left = self->work->grace - (guint) ran;
    }
  g_mutex_unlock (&self->mutex);
  return left;
}

static void watch (FpLatest *self);

static gboolean
on_overdue (gpointer data)
{
  FpLatest *self = data;

  g_clear_pointer (&self->overdue, g_source_unref);
  watch (self);
  return G_SOURCE_REMOVE;
}

static void
watch (FpLatest *self)
{
  guint left = end_overdue (self);

  if (left == 0 || self->overdue != NULL)
    return;
  self->overdue = g_timeout_source_new (left + 1);
  g_source_set_callback (self->overdue, on_overdue, self, NULL);
  g_source_attach (self->overdue, self->context);
}

void
fp_latest_ask (FpLatest *self, gpointer request)
{
  gpointer replaced;

  g_mutex_lock (&self->mutex);
  replaced = self->waiting;
  self->waiting = request;
  if (replaced == NULL)
    g_atomic_int_inc (&at_work);
  g_cond_signal (&self->wake);
  g_mutex_unlock (&self->mutex);
  if (replaced != NULL)
    self->work->request_free (replaced);
  watch (self);
}

gboolean
fp_latest_is_busy (FpLatest *self)
{
  gboolean busy;

  g_mutex_lock (&self->mutex);
  busy = self->waiting != NULL || self->running != NULL;
  g_mutex_unlock (&self->mutex);
  return busy || g_atomic_int_get (&self->undelivered) > 0;
}

gboolean
fp_latest_all_at_rest (void)
{
  return g_atomic_int_get (&at_work) == 0;
}
