/* SPDX-License-Identifier: GPL-3.0-or-later */
/* limits.c - what the rules that hold leave of a measure */
#include "printed-unit.h"

#include <math.h>

static void
narrow (FpLimits *limits, const FpRule *rule)
{
  const FpPrintedUnit *unit = fp_printed_unit_find (rule->unit);
  const gboolean has_low = rule->test == FP_TEST_AT_LEAST || rule->test == FP_TEST_BETWEEN || rule->test == FP_TEST_EQUALS;

  if (unit == NULL)
    return;
  if (has_low)
    limits->low = MAX (limits->low, rule->low * unit->size);
  if (rule->test == FP_TEST_AT_MOST || rule->test == FP_TEST_BETWEEN)
    limits->high = MIN (limits->high, rule->high * unit->size);
  else if (rule->test == FP_TEST_EQUALS)
    limits->high = MIN (limits->high, rule->low * unit->size);
}

FpLimits
fp_findings_limits (const FpFindings *self, const char *measure, FpWeight least)
{
  FpLimits limits = { -INFINITY, INFINITY };
  guint n;
  const FpFinding *finding = fp_findings_get (self, &n);

  for (guint i = 0; i < n; i++)
    if (finding[i].found != FP_FOUND_APART && finding[i].rule->weight <= least
        && g_str_equal (finding[i].rule->measure, measure))
      narrow (&limits, finding[i].rule);
  return limits;
}

FpRisers
fp_findings_risers (const FpFindings *self)
{
  const FpLimits limits = fp_findings_limits (self, "riser", FP_WEIGHT_RECOMMENDED);
  const FpKind *kind = fp_kind_find ("footpace");
  const FpParam *riser = &kind->params[fp_kind_param_index (kind, "riser")];

  return (FpRisers) { MAX (riser->min, limits.low), MIN (riser->max, limits.high) };
}
