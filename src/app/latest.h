/* SPDX-License-Identifier: GPL-3.0-or-later */
/* latest.h - one background thread on which only the newest request counts
 *
 * A request that still waits is replaced by the next.  One that is being
 * worked on is given a short while to end, so that results follow a drag,
 * and is cancelled after that, so that a slow one never holds up the newest.
 *
 * Results are handed over on the main context of the thread that made the
 * object; none is after fp_latest_free().
 */
#pragma once

#include <gio/gio.h>

G_BEGIN_DECLS

typedef struct _FpLatest FpLatest;
typedef struct _FpLatestJob FpLatestJob;

typedef struct
{
  /* On the background thread; may post any number of results. */
  void (*run) (FpLatestJob *job, gpointer request, gpointer data);
  /* On the owner's thread; @result is borrowed. */
  void (*receive) (gpointer result, gpointer data);
  GDestroyNotify request_free, result_free;
  guint grace; /* ms for which a request is left to run when a newer one waits */
  guint lull;  /* ms after which one is begun, if none newer has come */
} FpLatestWork;

/* @work and @data must outlive the object. */
FpLatest *fp_latest_new  (const char *name, const FpLatestWork *work, gpointer data);
void      fp_latest_free (FpLatest *self); /* cancels and waits for the thread to see it */
void      fp_latest_ask  (FpLatest *self, gpointer request); /* takes @request */
/* Hands over at once what there is, for who draws a frame and would rather have it in this one; waits for a result that
 * is being worked for, but no longer than @wait_us. */
void      fp_latest_catch_up (FpLatest *self, guint wait_us);
gboolean  fp_latest_is_busy (FpLatest *self); /* something waits, runs, or is yet to be handed over */

/* None of all that there are is busy: until then what is shown may still change by itself. */
gboolean fp_latest_all_at_rest (void);

/* For run(). */
GCancellable *fp_latest_job_cancellable (FpLatestJob *job);
/* Takes @result; dropped when the job was cancelled. */
void          fp_latest_job_post (FpLatestJob *job, gpointer result);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FpLatest, fp_latest_free)

G_END_DECLS
