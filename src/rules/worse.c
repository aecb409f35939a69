/* SPDX-License-Identifier: GPL-3.0-or-later */
/* worse.c - what a change makes worse, as remedy.h says */
#include "remedy-private.h"

#include <math.h>

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

/* --- what people see ----------------------------------------------------------- */

static guint
places_of (const FpFindings *findings, FpFocus focus)
{
  const FpSight *sight = fp_findings_measuring (findings)->sight;

  return sight != NULL ? fp_sight_church (sight, fp_moment_of_focus (focus), focus).places : 0;
}

/* What rows see over heads is told as a share of what is asked; where more rows are short of it, that is not a little. */
static double
over_heads_lost (const FpFinding *before, const FpFinding *after)
{
  const double more = fp_rule_excess (after->rule, after->value) - fp_rule_excess (before->rule, before->value);

  if (before->rule->test != FP_TEST_AT_LEAST || !(before->rule->low > 0.0) || after->times > before->times)
    return 0.0;
  return MAX (0.0, more / before->rule->low);
}

/* A number of places is told as a share of all of them; what is a share already stays one. */
static double
sight_lost (const FpFindings *of, const FpFinding *before, const FpFinding *after)
{
  const FpMeasure *measure = fp_measure_find (before->rule->measure);
  FpFocus focus;
  guint places;

  if (before->found != FP_FOUND_SHORT || after->found != FP_FOUND_SHORT)
    return 0.0;
  if (fp_measure_is_over_heads (measure))
    return over_heads_lost (before, after);
  if (!fp_measure_focus (measure->id, &focus))
    return 0.0;
  if (measure->type == FP_MEASURE_SHARE)
    return MAX (0.0, before->value - after->value);
  places = places_of (of, focus);
  return places > 0 ? MAX (0.0, after->value - before->value) / places : 0.0;
}

double
fp_findings_sight_lost (const FpFindings *before, const FpFindings *after, guint i)
{
  guint n;
  const FpFinding *finding = &fp_findings_get (before, &n)[i], *then = fp_findings_same (after, finding);

  return then != NULL ? sight_lost (before, finding, then) : 0.0;
}

/* --- what is taken away ----------------------------------------------------------- */

static gboolean
asks_for_some (const FpRule *rule)
{
  return rule->test != FP_TEST_AT_MOST;
}

static double
value_before (const FpScene *scene, const FpChange *change)
{
  const int i = fp_scene_find (scene, change->item);

  return i >= 0 ? fp_item_param (fp_scene_placed (scene, NULL)[i].item, change->param->id) : NAN;
}

/* What the rule speaks of is not there for another size of the same thing, and there need not be any: treads of a flight that
 * has one step, but not a gate that is closed. */
static gboolean
is_taken_away_rightly (const FpFindings *before, const FpFinding *finding, const FpRemedy *by)
{
  const FpScene *scene = fp_findings_scene (before);
  const FpPlaced *all = fp_scene_placed (scene, NULL);

  for (guint i = 0; by != NULL && i < by->n_changes; i++)
    {
      const FpChange *change = &by->change[i];
      const int thing = fp_scene_find (scene, change->item);

      if (change->param == NULL || thing < 0 || finding->owner < 0 || !fp_remedy_stands_on (all, finding->owner, thing))
        continue;
      return !(asks_for_some (finding->rule) && fabs (value_before (scene, change) - finding->value) < DUST);
    }
  return FALSE;
}

/* --- worse --------------------------------------------------------------------------- */

typedef struct
{
  const FpFindings *of;
  const FpRemedy   *by;
} Change;

static gboolean
is_farther_out (const Change *self, const FpFinding *before, const FpFinding *after)
{
  const double lost = sight_lost (self->of, before, after);

  if (lost > 0.0)
    return lost >= FP_REMEDY_SIGHT_LOST;
  return after->times > before->times
         || fp_rule_excess (after->rule, after->value) > fp_rule_excess (before->rule, before->value) + DUST;
}

static gboolean
is_worse (const Change *self, const FpFinding *before, const FpFinding *after)
{
  if (after->found == FP_FOUND_NOTHING)
    return before->found == FP_FOUND_SHORT
           || (before->found == FP_FOUND_WITHIN && !is_taken_away_rightly (self->of, before, self->by));
  if (after->found != FP_FOUND_SHORT)
    return FALSE;
  return before->found != FP_FOUND_SHORT || is_farther_out (self, before, after);
}

/* What was not looked at before is not known to be worse. */
static gboolean
is_known (const FpFinding *before, const FpFinding *after)
{
  return before->found != FP_FOUND_WAITING && after != NULL && after->found != FP_FOUND_WAITING;
}

GArray *
fp_findings_made_worse (const FpFindings *before, const FpFindings *after, const FpRemedy *by)
{
  GArray *worse = g_array_new (FALSE, FALSE, sizeof (guint));
  const Change change = { before, by };
  guint n;
  const FpFinding *finding = fp_findings_get (before, &n);

  for (guint i = 0; i < n; i++)
    {
      const FpFinding *then = fp_findings_same (after, &finding[i]);

      if (is_known (&finding[i], then) && is_worse (&change, &finding[i], then))
        g_array_append_val (worse, i);
    }
  return worse;
}
