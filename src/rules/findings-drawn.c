/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What of findings is drawn: ways, and what was measured. */
#include "footpace/rules.h"

#include <math.h>
#include <string.h>

FpEvidence *
fp_finding_evidence (const FpFindings *self, const FpFinding *finding)
{
  const FpMeasured one = { .value = finding->value, .owner = finding->owner, .at = finding->at, .has_at = finding->has_at,
                           .row = finding->row, .way = finding->way, .has_span = finding->has_span,
                           .text = finding->measured, .span = { finding->span[0], finding->span[1] } };

  if (isnan (finding->value))
    return NULL;
  return fp_measured_evidence (fp_measure_find (finding->rule->measure), fp_findings_measuring (self), &one);
}

static gboolean
is_one_way (const FpWay *a, const FpWay *b)
{
  return a->narrows == b->narrows && a->n_route == b->n_route && memcmp (a->narrow, b->narrow, sizeof a->narrow) == 0;
}

const FpWay **
fp_findings_ways (const FpFindings *self)
{
  g_autoptr (GPtrArray) ways = g_ptr_array_new ();
  guint n;
  const FpFinding *finding = fp_findings_get (self, &n);

  for (guint i = 0; i < n; i++)
    {
      gboolean known = finding[i].found != FP_FOUND_SHORT || finding[i].way == NULL;

      for (guint k = 0; k < ways->len && !known; k++)
        known = is_one_way (g_ptr_array_index (ways, k), finding[i].way);
      if (!known)
        g_ptr_array_add (ways, finding[i].way);
    }
  g_ptr_array_add (ways, NULL);
  return (const FpWay **) g_ptr_array_free (g_steal_pointer (&ways), FALSE);
}

static gboolean
is_one_span (const FpFinding *a, const FpFinding *b)
{
  return a->has_span && b->has_span && memcmp (a->span, b->span, sizeof a->span) == 0;
}

FpEvidence *
fp_findings_spans (const FpFindings *self)
{
  FpEvidence *spans = fp_evidence_new ();
  guint n;
  const FpFinding *finding = fp_findings_get (self, &n);

  for (guint i = 0; i < n; i++)
    {
      gboolean known = finding[i].found != FP_FOUND_SHORT || !finding[i].has_span
                       || fp_measure_find (finding[i].rule->measure)->type != FP_MEASURE_LENGTH;

      for (guint k = 0; k < i && !known; k++)
        known = finding[k].found == FP_FOUND_SHORT && is_one_span (&finding[k], &finding[i]);
      if (!known)
        fp_evidence_add_length (spans, finding[i].span[0], finding[i].span[1], 1);
    }
  return spans;
}
