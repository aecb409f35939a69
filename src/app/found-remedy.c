/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "found-remedy.h"

typedef struct
{
  FpFindings      *of;      /* owned */
  const FpFinding *finding;
} Request;

gpointer
fp_remedy_request_new (const FpFindings *of, const FpFinding *finding)
{
  Request *self = g_new (Request, 1);

  *self = (Request) { fp_findings_ref (of), finding };
  return self;
}

void
fp_remedy_request_free (gpointer request)
{
  Request *self = request;

  fp_findings_unref (self->of);
  g_free (self);
}

void
fp_found_remedy_free (gpointer found)
{
  FpFoundRemedy *self = found;

  fp_findings_unref (self->of);
  g_free (self->words);
  g_free (self->further_words);
  g_free (self);
}

/* Where rows see over heads, the altar can be raised at least for the first of them. */
static void
find_first_row (FpFoundRemedy *self, GCancellable *cancel)
{
  if (!g_str_equal (self->finding->rule->measure, "row-c"))
    return;
  for (guint i = 0; i < FP_FIRST_ROW_CS && !g_cancellable_is_cancelled (cancel); i++)
    fp_first_row_find (self->of, fp_first_row_c (i), &self->first[self->n_first++]);
}

static void
find_remedy (FpFoundRemedy *self, GCancellable *cancel)
{
  FpHindrance why;

  self->found = fp_remedy_find (self->of, self->finding, cancel, &self->remedy, &why);
  self->goes_further = self->found
                       && fp_remedy_further (self->of, self->finding, &self->remedy, FP_WEIGHT_CUSTOMARY, cancel, &self->further);
  if (self->goes_further)
    self->further_words = fp_remedy_words (&self->further, self->of);
  self->words = self->found ? fp_remedy_words (&self->remedy, self->of) : fp_hindrance_words (&why, self->of);
}

void
fp_found_remedy_run (FpLatestJob *job, gpointer request, gpointer owner)
{
  const Request *asked = request;
  FpFoundRemedy *self = g_new0 (FpFoundRemedy, 1);

  (void) owner;
  *self = (FpFoundRemedy) { .of = fp_findings_ref (asked->of), .finding = asked->finding };
  find_remedy (self, fp_latest_job_cancellable (job));
  find_first_row (self, fp_latest_job_cancellable (job));
  fp_latest_job_post (job, self);
}
