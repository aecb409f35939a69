/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Whether a measured value lies outside a limit, in the unit in which the limit was printed. */
#include "printed-unit.h"

#include <math.h>

/* mm.  Norms in inches print whole millimetres beside them (7 in = 178, 36 in = 914), up to 0.4 mm away. */
#define ROUNDING 0.45
/* What arithmetic in doubles may leave over. */
#define DUST 1e-9

static double
slack (const FpPrintedUnit *unit)
{
  if (!unit->rounded)
    return DUST;
  switch (unit->type)
    {
    case FP_MEASURE_LENGTH:
      return ROUNDING / unit->size;
    case FP_MEASURE_AREA:
    case FP_MEASURE_COUNT:
    case FP_MEASURE_SHARE:
    case FP_MEASURE_YES:
      return DUST;
    }
  return DUST;
}

/* How far @v is from what the rule asks, before any slack. */
static double
outside (const FpRule *rule, double v)
{
  double nearest = G_MAXDOUBLE;

  switch (rule->test)
    {
    case FP_TEST_AT_LEAST:
      return rule->low - v;
    case FP_TEST_AT_MOST:
      return v - rule->high;
    case FP_TEST_BETWEEN:
      return MAX (rule->low - v, v - rule->high);
    case FP_TEST_EQUALS:
      return fabs (v - rule->low);
    case FP_TEST_ODD:
      return fabs (fmod (round (v), 2)) > 0.5 ? -1 : 1;
    case FP_TEST_ONE_OF:
      for (guint i = 0; i < rule->n_one_of; i++)
        nearest = MIN (nearest, fabs (v - rule->one_of[i]));
      return nearest;
    }
  return -1;
}

double
fp_rule_excess (const FpRule *rule, double value)
{
  const FpPrintedUnit *unit = fp_printed_unit_find (rule->unit);
  double excess;

  if (isnan (value) || !unit)
    return -INFINITY;
  excess = outside (rule, value / unit->size);
  return excess <= slack (unit) ? MIN (excess, 0) : excess;
}

FpSide
fp_rule_side (const FpRule *rule, double value)
{
  const FpPrintedUnit *unit = fp_printed_unit_find (rule->unit);
  const double high = rule->test == FP_TEST_EQUALS ? rule->low : rule->high;

  if (!(fp_rule_excess (rule, value) > 0))
    return FP_SIDE_NONE;
  switch (rule->test)
    {
    case FP_TEST_AT_LEAST:
      return FP_SIDE_BELOW;
    case FP_TEST_AT_MOST:
      return FP_SIDE_ABOVE;
    case FP_TEST_BETWEEN:
    case FP_TEST_EQUALS:
      return value / unit->size > high ? FP_SIDE_ABOVE : FP_SIDE_BELOW;
    case FP_TEST_ODD:
    case FP_TEST_ONE_OF:
      return FP_SIDE_NONE;
    }
  return FP_SIDE_NONE;
}

const char *
fp_test_id (FpTest test)
{
  static const char *const ids[] = { "at-least", "at-most", "between", "equals", "odd", "one-of" };

  return ids[test];
}

const char *
fp_weight_label (FpWeight weight)
{
  static const char *const labels[] = { "required", "recommended", "customary" };

  return (guint) weight < FP_N_WEIGHTS ? labels[weight] : "";
}

const char *
fp_found_id (FpFound found)
{
  static const char *const ids[] = { "short", "within", "waiting", "nothing", "apart" };

  return ids[found];
}
