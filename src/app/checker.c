/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "checker.h"

#include "latest.h"

/* A check of a parish church ends well within this, so findings follow a drag; a slower one gives way to the newest. */
#define GRACE_MS 250
/* What takes no longer than this is told at once, whole: half an answer before it would only be shown for a moment. */
#define WHOLE_US 100000
/* For so long a frame waits, so that findings are told in the one in which the drawing changes. */
#define SOON_US 6000

struct _FpChecker
{
  FpLatest        *latest;
  FpCheckerReceive receive;
  gpointer         data;
  FpSight         *sight; /* the last; of the background thread alone */
  gint64           asked;  /* when, last; of the owner's thread alone */
  GMutex           mutex;  /* guards what follows */
  gint64           took;   /* µs, the last check */
};

static gint64
last_took (FpChecker *self)
{
  gint64 took;

  g_mutex_lock (&self->mutex);
  took = self->took;
  g_mutex_unlock (&self->mutex);
  return took;
}

static void
note_time (FpChecker *self, gint64 took)
{
  g_mutex_lock (&self->mutex);
  self->took = took;
  g_mutex_unlock (&self->mutex);
}

/* The answer that needs no sight, where one would wait for the other. */
static void
post_first (FpChecker *self, FpLatestJob *job, const FpMeasuring *of)
{
  if (last_took (self) > WHOLE_US)
    fp_latest_job_post (job, fp_findings_new (of, NULL));
}

/* The next is made from it. */
static void
keep_sight (FpChecker *self, const FpSight *sight)
{
  g_clear_pointer (&self->sight, fp_sight_unref);
  self->sight = fp_sight_ref (sight);
}

static void
check (FpLatestJob *job, gpointer request, gpointer data)
{
  FpChecker *self = data;
  const FpScene *scene = request;
  GCancellable *cancel = fp_latest_job_cancellable (job);
  const gint64 begun = g_get_monotonic_time ();
  g_autoptr (FpPeople) people = fp_people_new (scene);
  g_autoptr (FpSight) sight = NULL;
  g_autoptr (FpFindings) findings = NULL;
  FpMeasuring of = { scene, people, fp_levels (people), NULL };

  post_first (self, job, &of);
  sight = fp_sight_again (people, self->sight, cancel);
  if (sight == NULL)
    return;
  of.sight = sight;
  findings = fp_findings_new (&of, NULL);
  if (g_cancellable_is_cancelled (cancel)) /* meanwhile: not all was looked at */
    return;
  note_time (self, g_get_monotonic_time () - begun);
  fp_latest_job_post (job, g_steal_pointer (&findings));
  keep_sight (self, sight);
}

static void
receive (gpointer result, gpointer data)
{
  FpChecker *self = data;

  self->receive (result, self->data);
}

static const FpLatestWork checking = {
  check, receive, (GDestroyNotify) fp_scene_unref, (GDestroyNotify) fp_findings_unref, GRACE_MS, 0
};

FpChecker *
fp_checker_new (FpCheckerReceive on_findings, gpointer data)
{
  FpChecker *self = g_new0 (FpChecker, 1);

  self->receive = on_findings;
  self->data = data;
  self->took = G_MAXINT64;
  g_mutex_init (&self->mutex);
  self->latest = fp_latest_new ("checks", &checking, self);
  return self;
}

void
fp_checker_free (FpChecker *self)
{
  if (self == NULL)
    return;
  fp_latest_free (self->latest);
  g_mutex_clear (&self->mutex);
  g_clear_pointer (&self->sight, fp_sight_unref);
  g_free (self);
}

void
fp_checker_check (FpChecker *self, const FpScene *scene)
{
  self->asked = g_get_monotonic_time ();
  fp_latest_ask (self->latest, (gpointer) fp_scene_ref (scene));
}

/* One that is as slow as the last, and a half more, must be there in time; or else nothing is waited for. */
void
fp_checker_catch_up (FpChecker *self)
{
  const gint64 took = last_took (self), ran = g_get_monotonic_time () - self->asked;
  const gboolean soon = took < WHOLE_US && took + took / 2 - ran <= SOON_US;

  fp_latest_catch_up (self->latest, soon ? SOON_US : 0);
}

gboolean
fp_checker_is_busy (FpChecker *self)
{
  return fp_latest_is_busy (self->latest);
}
