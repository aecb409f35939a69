/* SPDX-License-Identifier: GPL-3.0-or-later */
/* remedy-judge.c - all rules are held in the church in which a remedy is made */
#include "remedy-private.h"

#include <math.h>

/* As far as a thing can be changed (design judgement): lengths, and numbers. */
#define TIMES_MOST   2.0
#define NUMBERS_MOST 6.0

/* --- what stands in the way ----------------------------------------------------- */

/* The nearer, the less. */
static double
distance (const FpHindrance *why, double by)
{
  const gboolean word = why->change.param != NULL && why->change.param->type == FP_PARAM_CHOICE;

  /* What settles it but for something else is nearer than what does not go far enough; another choice is something else. */
  return by + (word ? 3 : why->how == FP_HINDRANCE_WORSE ? 0 : why->how == FP_HINDRANCE_REACH ? 2 : 1) * FP_LENGTH_MAX;
}

static void
note (FpRemedySearch *all, const FpHindrance *why, double by)
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
    note (stage->all, &why, times);
}

/* --- judging ---------------------------------------------------------------------- */

static FpFindings *
findings_of (const FpRemedySearch *all, const FpScene *scene, gboolean sight)
{
  const FpMeasuring *base = fp_findings_measuring (all->base);
  g_autoptr (FpPeople) people = fp_people_new (scene);
  g_autoptr (FpSight) seen = sight ? fp_sight_again (people, base->sight, all->cancel) : NULL;
  const FpMeasuring of = { scene, people, fp_levels (people), seen };

  return fp_findings_new (&of, fp_findings_books (all->base));
}

static gboolean
is_short_then (const FpRemedySearch *all, const FpFindings *after, guint index)
{
  guint n;
  const FpFinding *then = fp_findings_same (after, &fp_findings_get (all->base, &n)[index]);

  return then != NULL && then->found == FP_FOUND_SHORT;
}

/* The first of the worse that weighs as much as what is to be settled, or more, and of these rather one that is short then
 * than one that is not measured any more; -1. */
static int
forbidden (const FpRemedySearch *all, const FpFindings *after, const GArray *worse)
{
  guint n;
  const FpFinding *finding = fp_findings_get (all->base, &n);
  int first = -1;

  for (guint i = 0; i < worse->len; i++)
    {
      const guint index = g_array_index (worse, guint, i);

      if (finding[index].rule->weight > all->finding->rule->weight)
        continue;
      if (is_short_then (all, after, index))
        return (int) index;
      first = first < 0 ? (int) index : first;
    }
  return first >= 0 ? first : worse->len > FP_REMEDY_WORSE ? (int) g_array_index (worse, guint, 0) : -1;
}

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

static void
promise (FpRemedyStage *stage, const FpFindings *after, const FpChange *change, double cost, guint worse)
{
  guint n;
  const FpFinding *finding = fp_findings_get (stage->all->base, &n), *then = fp_findings_same (after, &finding[worse]);
  FpRemedyPromise promise = { .change = *change, .cost = cost, .settles = TRUE, .worse = worse };

  if (stage->promises == NULL || then == NULL || then->found != FP_FOUND_SHORT || is_promised (stage->promises, change))
    return;
  if (then->owner >= 0)
    promise.owner = g_intern_string (fp_item_id (fp_scene_placed (fp_findings_scene (after), NULL)[then->owner].item));
  g_array_append_val (stage->promises, promise);
}

static void
refuse (FpRemedyStage *stage, const FpFindings *after, const FpChange *change, double cost, guint worse)
{
  const FpHindrance why = { .how = FP_HINDRANCE_WORSE, .change = *change, .worse = worse,
                            .gone = !is_short_then (stage->all, after, worse) };

  if (stage->made.n_changes == 0)
    note (stage->all, &why, cost);
}

static FpRemedy
with (const FpRemedyStage *stage, const FpChange *change, const GArray *worse)
{
  FpRemedy remedy = stage->made;

  remedy.change[remedy.n_changes++] = *change;
  remedy.n_worse = worse->len;
  for (guint i = 0; i < worse->len; i++)
    remedy.worse[i] = g_array_index (worse, guint, i);
  return remedy;
}

/* Fewer made worse, then less change. */
static gboolean
keep (FpRemedyStage *stage, const FpChange *change, double cost, const GArray *worse)
{
  FpRemedyOffer *best = worse->len == 0 ? &stage->all->clean : &stage->all->lesser;

  if (!isfinite (best->cost) || worse->len < best->remedy.n_worse || (worse->len == best->remedy.n_worse && cost < best->cost))
    *best = (FpRemedyOffer) { with (stage, change, worse), cost };
  return worse->len == 0;
}

/* Takes @worse; FALSE: it is no remedy. */
static gboolean
weigh (FpRemedyStage *stage, const FpFindings *after, const FpChange *change, double cost, GArray **worse)
{
  const FpFinding *own = fp_findings_same (after, stage->all->finding);
  int bad;

  stage->all->scenes += FP_REMEDY_JUDGED;
  *worse = fp_findings_made_worse (stage->all->base, after);
  /* Before people have looked again, what they see still waits. */
  if (own == NULL || (own->found != FP_FOUND_WITHIN && own->found != FP_FOUND_WAITING))
    return FALSE;
  bad = forbidden (stage->all, after, *worse);
  if ((*worse)->len > 0)
    promise (stage, after, change, cost, bad >= 0 ? (guint) bad : g_array_index (*worse, guint, 0));
  if (bad >= 0)
    refuse (stage, after, change, cost, (guint) bad);
  return bad < 0;
}

gboolean
fp_remedy_judge (FpRemedyStage *stage, const FpChange *change, double cost)
{
  const FpRemedySearch *all = stage->all;
  g_autoptr (FpProject) project = fp_change_make (change, stage->whole, NULL);
  g_autoptr (FpScene) whole = project != NULL ? fp_scene_new (project, fp_scene_alternative (all->whole)) : NULL;
  g_autoptr (FpScene) scene = whole != NULL ? fp_remedy_set (whole, stage->scene) : NULL;
  g_autoptr (FpFindings) after = scene != NULL ? findings_of (all, scene, FALSE) : NULL;
  g_autoptr (GArray) worse = NULL;

  if (after == NULL || !weigh (stage, after, change, cost, &worse))
    return FALSE;
  if (fp_findings_measuring (all->base)->sight != NULL)
    {
      g_clear_pointer (&after, fp_findings_unref);
      g_clear_pointer (&worse, g_array_unref);
      after = findings_of (all, scene, TRUE);
      if (g_cancellable_is_cancelled (all->cancel) || !weigh (stage, after, change, cost, &worse))
        return FALSE;
    }
  return keep (stage, change, cost, worse);
}
