/* SPDX-License-Identifier: GPL-3.0-or-later */
/* remedy-judge.c - all rules are held in the church in which a remedy is made */
#include "remedy-private.h"

#include <math.h>

/* As far as a thing can be changed (design judgement): lengths, and numbers. */
#define TIMES_MOST   2.0
#define NUMBERS_MOST 6.0
#define MOVE_TIMES   2.0 /* to move a thing is told where no size is as near */

#define DIM_COST     50.0 /* of all places lost to sight: 1 in 100 is as much as half a change */

#define DUST 1e-6 /* printed unit: what arithmetic in doubles may leave over */

/* --- what stands in the way ----------------------------------------------------- */

/* The nearer, the less. */
static double
distance (const FpHindrance *why, double by)
{
  const gboolean word = why->change.param != NULL && why->change.param->type == FP_PARAM_CHOICE;

  /* What settles it but for something else is nearer than what does not go far enough; another choice is something else. */
  return by + (word ? 3 : why->how == FP_HINDRANCE_WORSE || why->how == FP_HINDRANCE_PLACES ? 0 : why->how == FP_HINDRANCE_REACH ? 2 : 1) * FP_LENGTH_MAX;
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
    note (stage->all, &why, dial->param == NULL ? MOVE_TIMES * times : times);
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

static void
promise_of (FpRemedyStage *stage, const FpFindings *after, const FpChange *change, double cost, guint worse)
{
  guint n;
  const FpFinding *then = fp_findings_same (after, &fp_findings_get (stage->all->base, &n)[worse]);

  if (then != NULL && then->found == FP_FOUND_SHORT)
    promise (stage, fp_findings_scene (after), change, cost, worse, then->owner);
}

static void
refuse (FpRemedyStage *stage, const FpChange *change, double cost, guint worse, gboolean gone)
{
  const FpHindrance why = { .how = FP_HINDRANCE_WORSE, .change = *change, .worse = worse, .gone = gone };

  if (stage->made.n_changes == 0)
    note (stage->all, &why, cost);
}

/* --- what was worse before ----------------------------------------------------------- */

/* Whether it is held in every church that is made in a search, whatever becomes of others. */
static gboolean
forbids_alone (const FpRemedySearch *all, const FpRule *rule)
{
  return rule->matter == NULL && rule->freestanding < 0 && rule->weight <= all->finding->rule->weight;
}

static void
remember (FpRemedySearch *all, guint worse)
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
static gboolean
is_refused_as_before (FpRemedyStage *stage, const FpScene *scene, const FpChange *change, double cost)
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
      refuse (stage, change, cost, worse, FALSE);
      remember (all, worse);
      return TRUE;
    }
  return FALSE;
}

FpRemedy
fp_remedy_with (const FpRemedyStage *stage, const FpChange *change)
{
  FpRemedy remedy = stage->made;

  remedy.change[remedy.n_changes++] = *change;
  return remedy;
}

/* --- what it does besides --------------------------------------------------------------- */

static guint
places_in (const FpPeople *people)
{
  guint n, count = 0;
  const FpPersonPlace *place = fp_people_places (people, &n);

  for (guint i = 0; i < n; i++)
    count += place[i].at_rail ? 0 : 1;
  return count;
}

static void
note_dim (FpRemedy *remedy, guint finding, double lost)
{
  if (remedy->n_dims == FP_REMEDY_DIMS)
    return;
  remedy->dims[remedy->n_dims].finding = finding;
  remedy->dims[remedy->n_dims++].lost = lost;
}

/* Of findings that were short: what is settled too, and what is seen less. */
static void
note_effects (const FpRemedySearch *all, FpRemedy *remedy, const FpFindings *after)
{
  guint n;
  const FpFinding *finding = fp_findings_get (all->base, &n);

  remedy->n_settles = remedy->n_dims = 0;
  for (guint i = 0; i < n && finding[i].found == FP_FOUND_SHORT; i++)
    {
      const FpFinding *then = fp_findings_same (after, &finding[i]);
      const double lost = fp_findings_sight_lost (all->base, after, i);

      if (then != NULL && then->found == FP_FOUND_WITHIN && &finding[i] != all->finding && remedy->n_settles < FP_REMEDY_SETTLES)
        remedy->settles[remedy->n_settles++] = i;
      if (lost > 0.0 && lost < FP_REMEDY_SIGHT_LOST)
        note_dim (remedy, i, lost);
    }
}

static void
note_worse (FpRemedy *remedy, const GArray *worse)
{
  remedy->n_worse = worse->len;
  for (guint i = 0; i < worse->len; i++)
    remedy->worse[i] = g_array_index (worse, guint, i);
}

/* --- keeping it ----------------------------------------------------------------------- */

static guint
troubles (const FpRemedy *remedy)
{
  return remedy->n_worse + (remedy->places_lost > 0 ? 1 : 0);
}

/* Fewer made worse, then more places kept, then less change. */
static gboolean
is_better (const FpRemedyOffer *a, const FpRemedyOffer *b)
{
  if (!isfinite (b->cost) || troubles (&a->remedy) != troubles (&b->remedy))
    return !isfinite (b->cost) || troubles (&a->remedy) < troubles (&b->remedy);
  if (a->remedy.places_lost != b->remedy.places_lost)
    return a->remedy.places_lost < b->remedy.places_lost;
  return a->cost < b->cost;
}

static double
price_of_dims (const FpRemedy *remedy)
{
  double price = 0.0;

  for (guint i = 0; i < remedy->n_dims; i++)
    price += DIM_COST * remedy->dims[i].lost;
  return price;
}

/* TRUE: nothing is worse for it. */
static gboolean
keep (FpRemedyStage *stage, const FpRemedy *remedy, double cost)
{
  const FpRemedyOffer offer = { *remedy, cost + price_of_dims (remedy) };
  FpRemedyOffer *best = troubles (remedy) == 0 ? &stage->all->clean : &stage->all->lesser;

  if (is_better (&offer, best))
    *best = offer;
  return troubles (remedy) == 0;
}

/* Fills in what comes of it; FALSE: it is no remedy. */
static gboolean
weigh (FpRemedyStage *stage, const FpFindings *after, FpRemedy *remedy, double cost)
{
  FpRemedySearch *all = stage->all;
  const FpChange *change = &remedy->change[remedy->n_changes - 1];
  const FpFinding *own = fp_findings_same (after, all->finding);
  g_autoptr (GArray) worse = fp_findings_made_worse (all->base, after, remedy);
  int bad;

  g_atomic_int_add (&all->scenes, FP_REMEDY_JUDGED);
  /* What has vanished is not settled. Before people have looked again, what they see still waits. */
  if (own == NULL || (own->found != FP_FOUND_WITHIN && own->found != FP_FOUND_WAITING))
    return FALSE;
  bad = forbidden (all, after, worse);
  if (worse->len > 0)
    promise_of (stage, after, change, cost, bad >= 0 ? (guint) bad : g_array_index (worse, guint, 0));
  if (bad >= 0)
    {
      refuse (stage, change, cost, (guint) bad, !is_short_then (all, after, (guint) bad));
      if (is_short_then (all, after, (guint) bad))
        remember (all, (guint) bad);
      return FALSE;
    }
  note_worse (remedy, worse);
  note_effects (all, remedy, after);
  return TRUE;
}

/* So many places are not given away. */
static gboolean
keeps_places (FpRemedyStage *stage, const FpScene *scene, FpRemedy *remedy, double cost)
{
  const guint before = places_in (fp_findings_measuring (stage->all->base)->people);
  g_autoptr (FpPeople) people = fp_people_new (scene);
  const guint after = places_in (people);
  const FpHindrance why = { .how = FP_HINDRANCE_PLACES, .change = remedy->change[remedy->n_changes - 1],
                            .lost = before > after ? before - after : 0 };

  remedy->places_lost = why.lost;
  if (why.lost <= FP_REMEDY_PLACES_LOST * before)
    return TRUE;
  if (stage->made.n_changes == 0)
    note (stage->all, &why, cost);
  return FALSE;
}

static gboolean
spares_others (FpRemedyStage *stage, const FpProject *project, const FpRemedy *remedy, double cost)
{
  FpHindrance why = { .how = FP_HINDRANCE_WORSE, .change = remedy->change[remedy->n_changes - 1] };

  if (!fp_remedy_spoils_others (stage->all, remedy, project, &why.other, &why.worse))
    return TRUE;
  why.other++;
  if (stage->made.n_changes == 0)
    note (stage->all, &why, cost);
  return FALSE;
}

/* The cheapest first: without sight, then with it, then in all other alternatives. */
static gboolean
is_remedy (FpRemedyStage *stage, const FpProject *project, const FpScene *scene, FpRemedy *remedy, double cost)
{
  const FpRemedySearch *all = stage->all;
  g_autoptr (FpFindings) after = findings_of (all, scene, FALSE);

  if (!weigh (stage, after, remedy, cost) || !keeps_places (stage, scene, remedy, cost))
    return FALSE;
  if (fp_findings_measuring (all->base)->sight != NULL)
    {
      g_clear_pointer (&after, fp_findings_unref);
      after = findings_of (all, scene, TRUE);
      if (g_cancellable_is_cancelled (all->cancel) || !weigh (stage, after, remedy, cost))
        return FALSE;
    }
  return spares_others (stage, project, remedy, cost);
}

gboolean
fp_remedy_judge (FpRemedyStage *stage, const FpChange *change, double cost)
{
  FpRemedy remedy = fp_remedy_with (stage, change);
  g_autoptr (FpProject) project = fp_change_make (change, stage->whole, NULL);
  g_autoptr (FpScene) whole = project != NULL ? fp_scene_new (project, fp_scene_alternative (stage->all->whole)) : NULL;
  g_autoptr (FpScene) scene = whole != NULL ? fp_remedy_set (whole, stage->scene) : NULL;

  return scene != NULL && !is_refused_as_before (stage, scene, change, cost) && is_remedy (stage, project, scene, &remedy, cost)
         && keep (stage, &remedy, cost);
}
