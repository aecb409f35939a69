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
  GCond               posted;    /* a result, or the thread has come to rest  */
  GQueue              results;   /* Delivery, to be handed over               */
  gpointer            waiting;
  gint64              asked;     /* when that came */
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
delivery_free (FpLatest *self, Delivery *d)
{
  self->work->result_free (d->result);
  g_object_unref (d->cancel);
  g_free (d);
  g_atomic_int_add (&at_work, -1);
  fp_give_back_later ();
}

static void
latest_unref (gpointer data)
{
  FpLatest *self = data;
  Delivery *d;

  if (!g_atomic_ref_count_dec (&self->ref_count))
    return;
  while ((d = g_queue_pop_head (&self->results)) != NULL)
    delivery_free (self, d);
  g_main_context_unref (self->context);
  g_mutex_clear (&self->mutex);
  g_cond_clear (&self->wake);
  g_cond_clear (&self->posted);
  g_free (self);
}

static Delivery *
next_result (FpLatest *self)
{
  Delivery *d;

  g_mutex_lock (&self->mutex);
  d = g_queue_pop_head (&self->results);
  g_mutex_unlock (&self->mutex);
  return d;
}

/* All that there is, in order; whoever receives one may free the object. */
static void
hand_over (FpLatest *self)
{
  Delivery *d;

  latest_ref (self);
  while ((d = next_result (self)) != NULL)
    {
      g_atomic_int_add (&self->undelivered, -1);
      if (!self->closed && !g_cancellable_is_cancelled (d->cancel))
        self->work->receive (d->result, self->data);
      delivery_free (self, d);
    }
  latest_unref (self);
}

static gboolean
deliver (gpointer data)
{
  hand_over (data);
  return G_SOURCE_REMOVE;
}

GCancellable *
fp_latest_job_cancellable (FpLatestJob *job)
{
  return job->cancel;
}

void
fp_latest_job_post (FpLatestJob *job, gpointer result)
{
  FpLatest *self = job->owner;
  Delivery *d = g_new (Delivery, 1);
  GSource *source = g_idle_source_new ();

  *d = (Delivery) { g_object_ref (job->cancel), result };
  g_atomic_int_inc (&self->undelivered);
  g_atomic_int_inc (&at_work);
  g_mutex_lock (&self->mutex);
  g_queue_push_tail (&self->results, d);
  g_cond_signal (&self->posted);
  g_mutex_unlock (&self->mutex);
  /* Above drawing: where frames are slow and something is always moving (the
   * spinner that waits for this very result), a lower one is never reached.  A stream of results cannot
   * starve drawing either, since at most one job runs and each result costs far less than a frame. */
  g_source_set_priority (source, G_PRIORITY_DEFAULT);
  g_source_set_callback (source, deliver, latest_ref (self), latest_unref);
  g_source_attach (source, self->context);
  g_source_unref (source);
}

/* Until one has waited for as long as it has to, or it is time to end. */
static void
wait_for_request (FpLatest *self)
{
  const gint64 lull = (gint64) self->work->lull * 1000;

  while (!self->quit && (self->waiting == NULL || g_get_monotonic_time () < self->asked + lull))
    if (self->waiting == NULL)
      g_cond_wait (&self->wake, &self->mutex);
    else
      g_cond_wait_until (&self->wake, &self->mutex, self->asked + lull);
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
  g_cond_signal (&self->posted);
  wait_for_request (self);
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
  g_cond_init (&self->posted);
  g_queue_init (&self->results);
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
  self->asked = g_get_monotonic_time ();
  if (replaced == NULL)
    g_atomic_int_inc (&at_work);
  g_cond_signal (&self->wake);
  g_mutex_unlock (&self->mutex);
  if (replaced != NULL)
    self->work->request_free (replaced);
  watch (self);
}

void
fp_latest_catch_up (FpLatest *self, guint wait_us)
{
  const gint64 until = g_get_monotonic_time () + wait_us;
  gboolean in_time = TRUE;

  g_mutex_lock (&self->mutex);
  while (in_time && wait_us > 0 && (self->waiting != NULL || self->running != NULL) && g_queue_is_empty (&self->results))
    in_time = g_cond_wait_until (&self->posted, &self->mutex, until);
  g_mutex_unlock (&self->mutex);
  hand_over (self);
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
