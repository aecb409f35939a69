/* SPDX-License-Identifier: GPL-3.0-or-later */
/* worse.c - what a change makes worse, as remedy.h says */
#include "remedy-private.h"

/* In the printed unit: what arithmetic in doubles may leave over. */
#define DUST 1e-6

const FpFinding *
fp_findings_same (const FpFindings *self, const FpFinding *as)
{
  guint n;
  const FpFinding *finding = fp_findings_get (self, &n);

  for (guint i = 0; i < n; i++)
    if (g_str_equal (finding[i].rule->id, as->rule->id) && g_str_equal (fp_rulebook_id (finding[i].book), fp_rulebook_id (as->book)))
      return &finding[i];
  return NULL;
}

static gboolean
is_worse (const FpFinding *before, const FpFinding *after)
{
  const gboolean was_measured = before->found == FP_FOUND_SHORT || before->found == FP_FOUND_WITHIN;

  if (after->found == FP_FOUND_NOTHING)
    return was_measured;
  if (after->found != FP_FOUND_SHORT)
    return FALSE;
  return before->found != FP_FOUND_SHORT || after->times > before->times
         || fp_rule_excess (after->rule, after->value) > fp_rule_excess (before->rule, before->value) + DUST;
}

/* What was not looked at before is not known to be worse. */
static gboolean
is_known (const FpFinding *before, const FpFinding *after)
{
  return before->found != FP_FOUND_WAITING && after != NULL && after->found != FP_FOUND_WAITING;
}

GArray *
fp_findings_made_worse (const FpFindings *before, const FpFindings *after)
{
  GArray *worse = g_array_new (FALSE, FALSE, sizeof (guint));
  guint n;
  const FpFinding *finding = fp_findings_get (before, &n);

  for (guint i = 0; i < n; i++)
    {
      const FpFinding *then = fp_findings_same (after, &finding[i]);

      if (is_known (&finding[i], then) && is_worse (&finding[i], then))
        g_array_append_val (worse, i);
    }
  return worse;
}
