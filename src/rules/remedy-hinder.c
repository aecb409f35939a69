/* SPDX-License-Identifier: GPL-3.0-or-later */
/* remedy-hinder.c - what stands in the way of a change, and what made the last no remedy */
#include "remedy-private.h"

#include <math.h>

/* As far as a thing can be changed (design judgement): lengths, and numbers. */
#define TIMES_MOST   2.0
#define NUMBERS_MOST 6.0
#define MOVE_TIMES   2.0  /* to move a thing is told where no size is as near */
#define DUST         1e-6 /* printed unit: what arithmetic in doubles may leave over */

/* The nearer, the less. */
static double
distance (const FpHindrance *why, double by)
{
  const gboolean word = why->change.param != NULL && why->change.param->type == FP_PARAM_CHOICE;

  /* What settles it but for something else is nearer than what does not go far enough; another choice is something else. */
  return by + (word ? 3 : why->how == FP_HINDRANCE_WORSE || why->how == FP_HINDRANCE_PLACES ? 0 : why->how == FP_HINDRANCE_REACH ? 2 : 1) * FP_LENGTH_MAX;
}

void
fp_remedy_note (FpRemedySearch *all, const FpHindrance *why, double by)
{
  const double far = distance (why, by);

  if (all->why.how != FP_HINDRANCE_NONE && far >= all->why_far)
    return;
  all->why = *why;
  all->why_far = far;
}

static FpHindranceHow
how_limited (const FpDial *dial, double limit)
{
  if (limit == dial->max ? dial->max_by_rules : dial->min_by_rules)
    return FP_HINDRANCE_RULES;
  if (dial->param != NULL && (limit == dial->param->min || limit == dial->param->max))
    return FP_HINDRANCE_RANGE;
  return FP_HINDRANCE_REACH;
}

static gboolean
is_counted (const FpDial *dial)
{
  return dial->param != NULL && dial->param->type == FP_PARAM_COUNT;
}

/* What would have to be many times as far away is no answer, and a line drawn from two points is none there. */
void
fp_remedy_note_limit (FpRemedyStage *stage, const FpDial *dial, double wanted, double limit)
{
  const double times = (wanted - dial->start) / (limit - dial->start);
  const gboolean negative = dial->param != NULL && dial->param->min >= 0.0 && wanted < 0.0;
  const FpHindrance why = {
    .how = how_limited (dial, limit), .change = fp_dial_change (dial, limit), .wanted = wanted, .limit = limit,
  };

  if (!negative && times < (is_counted (dial) ? NUMBERS_MOST : TIMES_MOST))
    fp_remedy_note (stage->all, &why, dial->param == NULL ? MOVE_TIMES * times : times);
}

/* --- what a second change may mend --------------------------------------------------- */

/* One value of a dial is enough to find what mends it: the first that was judged goes least far. */
static gboolean
is_promised (const GArray *promises, const FpChange *change)
{
  for (guint i = 0; i < promises->len; i++)
    {
      const FpChange *other = &g_array_index (promises, FpRemedyPromise, i).change;

      if (g_array_index (promises, FpRemedyPromise, i).settles && other->item == change->item && other->param == change->param
          && (other->by.x == 0.0) == (change->by.x == 0.0))
        return TRUE;
    }
  return FALSE;
}

/* @owner: what is worse then, in @after; -1. */
static void
promise (FpRemedyStage *stage, const FpScene *after, const FpChange *change, double cost, guint worse, int owner)
{
  FpRemedyPromise promise = { .change = *change, .cost = cost, .settles = TRUE, .worse = worse };

  if (stage->promises == NULL || is_promised (stage->promises, change))
    return;
  if (owner >= 0)
    promise.owner = g_intern_string (fp_item_id (fp_scene_placed (after, NULL)[owner].item));
  g_array_append_val (stage->promises, promise);
}

void
fp_remedy_promise (FpRemedyStage *stage, const FpFindings *after, const FpChange *change, double cost, guint worse)
{
  guint n;
  const FpFinding *then = fp_findings_same (after, &fp_findings_get (stage->all->base, &n)[worse]);

  if (then != NULL && then->found == FP_FOUND_SHORT)
    promise (stage, fp_findings_scene (after), change, cost, worse, then->owner);
}

void
fp_remedy_refuse (FpRemedyStage *stage, const FpChange *change, double cost, guint worse, gboolean gone)
{
  const FpHindrance why = { .how = FP_HINDRANCE_WORSE, .change = *change, .worse = worse, .gone = gone };

  if (stage->made.n_changes == 0)
    fp_remedy_note (stage->all, &why, cost);
}

/* --- what was worse before ----------------------------------------------------------- */

/* Whether it is held in every church that is made in a search, whatever becomes of others. */
static gboolean
forbids_alone (const FpRemedySearch *all, const FpRule *rule)
{
  return rule->matter == NULL && rule->freestanding < 0 && rule->weight <= all->finding->rule->weight;
}

void
fp_remedy_remember (FpRemedySearch *all, guint worse)
{
  guint i = 0, n;

  if (!forbids_alone (all, fp_findings_get (all->base, &n)[worse].rule))
    return;

  while (i < all->n_refused_by && all->refused_by[i] != worse)
    i++;
  if (i == all->n_refused_by && all->n_refused_by < FP_REMEDY_REFUSED)
    all->n_refused_by++;
  for (i = MIN (i, FP_REMEDY_REFUSED - 1); i > 0; i--)
    all->refused_by[i] = all->refused_by[i - 1];
  all->refused_by[0] = worse;
}

/* Whether the rule is short in it, and farther than it was. */
static gboolean
is_worse_in (const FpRemedySearch *all, const FpFinding *before, const FpScene *scene, int *owner)
{
  const FpMeasure *measure = fp_measure_find (before->rule->measure);
  const double excess = fp_remedy_excess (all, measure, before->rule, scene, owner);
  const double was = before->found == FP_FOUND_SHORT ? fp_rule_excess (before->rule, before->value) + DUST : 0.0;
  FpFocus focus;

  /* Of what people see a little may be lost: that is told where all rules are held. */
  if (before->found == FP_FOUND_SHORT && fp_measure_focus (measure->id, &focus))
    return FALSE;
  return isfinite (excess) && excess > was;
}

/* One rule is held sooner than all: most often it is the same again that becomes worse. */
gboolean
fp_remedy_is_refused (FpRemedyStage *stage, const FpScene *scene, const FpChange *change, double cost)
{
  FpRemedySearch *all = stage->all;
  guint n;
  const FpFinding *finding = fp_findings_get (all->base, &n);

  for (guint i = 0; i < all->n_refused_by; i++)
    {
      const guint worse = all->refused_by[i];
      int owner = -1;

      g_atomic_int_add (&all->scenes, (gint) fp_remedy_price (fp_measure_find (finding[worse].rule->measure)));
      if (!is_worse_in (all, &finding[worse], scene, &owner))
        continue;
      promise (stage, scene, change, cost, worse, owner);
      fp_remedy_refuse (stage, change, cost, worse, FALSE);
      fp_remedy_remember (all, worse);
      return TRUE;
    }
  return FALSE;
}
