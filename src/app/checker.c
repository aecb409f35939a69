/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "checker.h"

#include "latest.h"

/* A check of a parish church ends well within this, so findings follow a drag; a slower one gives way to the newest. */
#define GRACE_MS 250
/* What takes no longer than this is told at once, whole: half an answer before it would only be shown for a moment. */
#define WHOLE_US 100000

struct _FpChecker
{
  FpLatest        *latest;
  GPtrArray       *books; /* of the background thread alone */
  FpCheckerReceive receive;
  gpointer         data;
  gint64           took; /* µs, the last check; of the background thread alone */
};

/* The answer that needs no sight, where one would wait for the other. */
static void
post_first (FpChecker *self, FpLatestJob *job, const FpMeasuring *of)
{
  if (self->took > WHOLE_US)
    fp_latest_job_post (job, fp_findings_new (of, self->books));
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

  if (self->books == NULL)
    self->books = fp_rulebooks_built_in (); /* read here: the first frame is not to wait for it */
  post_first (self, job, &of);
  sight = fp_sight_new (people, cancel);
  if (sight == NULL)
    return;
  of.sight = sight;
  findings = fp_findings_new (&of, self->books);
  if (g_cancellable_is_cancelled (cancel)) /* meanwhile: not all was looked at */
    return;
  fp_latest_job_post (job, g_steal_pointer (&findings));
  self->took = g_get_monotonic_time () - begun;
}

static void
receive (gpointer result, gpointer data)
{
  FpChecker *self = data;

  self->receive (result, self->data);
}

static const FpLatestWork checking = {
  check, receive, (GDestroyNotify) fp_scene_unref, (GDestroyNotify) fp_findings_unref, GRACE_MS
};

FpChecker *
fp_checker_new (FpCheckerReceive on_findings, gpointer data)
{
  FpChecker *self = g_new0 (FpChecker, 1);

  self->receive = on_findings;
  self->data = data;
  self->took = G_MAXINT64;
  self->latest = fp_latest_new ("checks", &checking, self);
  return self;
}

void
fp_checker_free (FpChecker *self)
{
  if (self == NULL)
    return;
  fp_latest_free (self->latest);
  g_clear_pointer (&self->books, g_ptr_array_unref);
  g_free (self);
}

void
fp_checker_check (FpChecker *self, const FpScene *scene)
{
  fp_latest_ask (self->latest, (gpointer) fp_scene_ref (scene));
}

gboolean
fp_checker_is_busy (FpChecker *self)
{
  return fp_latest_is_busy (self->latest);
}
