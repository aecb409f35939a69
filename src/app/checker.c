/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "checker.h"

#include "latest.h"

/* A check of a parish church ends well within this, so findings follow a drag; a slower one gives way to the newest. */
#define GRACE_MS 250

struct _FpChecker
{
  FpLatest        *latest;
  GPtrArray       *books;
  FpCheckerReceive receive;
  gpointer         data;
};

static void
check (FpLatestJob *job, gpointer request, gpointer data)
{
  FpChecker *self = data;
  const FpScene *scene = request;
  GCancellable *cancel = fp_latest_job_cancellable (job);
  g_autoptr (FpPeople) people = fp_people_new (scene);
  g_autoptr (FpSight) sight = NULL;
  FpMeasuring of = { scene, people, fp_levels (people), NULL };

  fp_latest_job_post (job, fp_findings_new (&of, self->books));
  sight = fp_sight_new (people, cancel);
  if (sight == NULL || g_cancellable_is_cancelled (cancel))
    return;
  of.sight = sight;
  fp_latest_job_post (job, fp_findings_new (&of, self->books));
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
  self->books = fp_rulebooks_built_in ();
  self->latest = fp_latest_new ("checks", &checking, self);
  return self;
}

void
fp_checker_free (FpChecker *self)
{
  if (self == NULL)
    return;
  fp_latest_free (self->latest);
  g_ptr_array_unref (self->books);
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
