/* SPDX-License-Identifier: GPL-3.0-or-later */
/* remedy-judge.c - all rules are held in the church in which a remedy is made */
#include "remedy-private.h"

#include <math.h>

#define DIM_COST 50.0 /* of all places lost to sight: 1 in 100 is as much as half a change */

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

FpRemedy
fp_remedy_with (const FpRemedyStage *stage, const FpChange *change)
{
  FpRemedy remedy = stage->made;

  remedy.change[remedy.n_changes++] = *change;
  return remedy;
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
    fp_remedy_promise (stage, after, change, cost, bad >= 0 ? (guint) bad : g_array_index (worse, guint, 0));
  if (bad >= 0)
    {
      fp_remedy_refuse (stage, change, cost, (guint) bad, !is_short_then (all, after, (guint) bad));
      if (is_short_then (all, after, (guint) bad))
        fp_remedy_remember (all, (guint) bad);
      return FALSE;
    }
  fp_remedy_note_worse (remedy, worse);
  fp_remedy_note_effects (all, remedy, after);
  return TRUE;
}

/* So many places are not given away. */
static gboolean
keeps_places (FpRemedyStage *stage, const FpScene *scene, FpRemedy *remedy, double cost)
{
  const guint before = fp_remedy_places (fp_findings_measuring (stage->all->base)->people);
  g_autoptr (FpPeople) people = fp_people_new (scene);
  const guint after = fp_remedy_places (people);
  const FpHindrance why = { .how = FP_HINDRANCE_PLACES, .change = remedy->change[remedy->n_changes - 1],
                            .lost = before > after ? before - after : 0 };

  remedy->places_lost = why.lost;
  if (why.lost <= FP_REMEDY_PLACES_LOST * before)
    return TRUE;
  if (stage->made.n_changes == 0)
    fp_remedy_note (stage->all, &why, cost);
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
    fp_remedy_note (stage->all, &why, cost);
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

  return scene != NULL && !fp_remedy_is_refused (stage, scene, change, cost) && is_remedy (stage, project, scene, &remedy, cost)
         && keep (stage, &remedy, cost);
}
