/* SPDX-License-Identifier: GPL-3.0-or-later */
/* remedy-pairs.c - two changes together: the second mends what the first makes worse, or does the rest of it */
#include "remedy-private.h"

#include <math.h>

/* First changes that are tried, the cheapest first: of those that settle it, and of those that do a part (design judgement). */
#define FIRSTS 6
#define MORE_TOGETHER 1.25
#define SHRUNK 8   /* times that the first of a pair which does a part is halved     */
#define SECOND 0.5 /* of cost: two changes are more trouble than one as large        */

static int
by_cost (gconstpointer a, gconstpointer b)
{
  const FpRemedyPromise *one = a, *other = b;

  return one->cost < other->cost ? -1 : one->cost > other->cost ? 1 : 0;
}

/* --- the church of the first change ---------------------------------------------- */

static gboolean
begin (FpRemedyStage *second, FpRemedySearch *all, const FpRemedyPromise *promise)
{
  guint n;
  const FpFinding *finding = fp_findings_get (all->base, &n), *mended = promise->settles ? &finding[promise->worse] : all->finding;
  g_autoptr (FpProject) project = fp_change_make (&promise->change, all->whole, NULL);
  double before;

  *second = (FpRemedyStage) { .all = all, .spent = promise->cost + SECOND, .rule = mended->rule };
  second->measure = fp_measure_find (mended->rule->measure);
  if (project == NULL || second->measure == NULL || second->measure->needs_sight)
    return FALSE;
  second->made.change[0] = promise->change;
  second->made.n_changes = 1;
  second->whole = fp_scene_new (project, fp_scene_alternative (all->whole));
  second->scene = fp_remedy_set (second->whole, fp_findings_scene (all->base));
  before = fp_rule_excess (mended->rule, mended->value);
  second->target = promise->settles && mended->found == FP_FOUND_SHORT ? before : 0.0;
  second->excess = fp_stage_excess (second, second->scene);
  return isfinite (second->excess) && second->excess > 0.0;
}

static void
end (FpRemedyStage *second)
{
  g_clear_pointer (&second->whole, fp_scene_unref);
  g_clear_pointer (&second->scene, fp_scene_unref);
}

/* --- tried ------------------------------------------------------------------------- */

static void
try_about (FpRemedyStage *second, const char *id)
{
  const int i = id != NULL ? fp_scene_find (second->scene, id) : -1;

  if (i < 0)
    return;
  fp_remedy_try_thing (second, &fp_scene_placed (second->scene, NULL)[i], TRUE);
  fp_remedy_try_neighbours (second, i);
}

static const char *
owner_of (const FpRemedySearch *all)
{
  const FpPlaced *placed = fp_scene_placed (fp_findings_scene (all->base), NULL);

  return all->finding->owner >= 0 ? g_intern_string (fp_item_id (placed[all->finding->owner].item)) : NULL;
}

static void
try_second (FpRemedySearch *all, const FpRemedyPromise *promise)
{
  const char *owner = owner_of (all);
  FpRemedyStage second;

  if (begin (&second, all, promise))
    {
      try_about (&second, promise->owner);
      if (owner != promise->owner)
        try_about (&second, owner);
      if (owner == NULL && fp_measure_is_of_altars_floor (second.measure))
        fp_remedy_try_supports (&second);
    }
  end (&second);
}

/* --- made smaller --------------------------------------------------------------------- */

/* The first went as far as it could, before the second was known. */
static gboolean
is_enough (FpRemedySearch *all, const FpRemedy *remedy, const FpChange *first, double cost)
{
  FpRemedyStage stage = { .all = all, .rule = all->finding->rule, .made = { .change = { *first }, .n_changes = 1 } };
  g_autoptr (FpProject) project = fp_change_make (first, all->whole, NULL);
  gboolean enough;

  if (project == NULL)
    return FALSE;
  stage.measure = fp_measure_find (stage.rule->measure);
  stage.whole = fp_scene_new (project, fp_scene_alternative (all->whole));
  stage.scene = fp_remedy_set (stage.whole, fp_findings_scene (all->base));
  enough = fp_remedy_judge (&stage, &remedy->change[1], cost);
  end (&stage);
  return enough;
}

static double
start_of (const FpRemedySearch *all, const FpChange *change)
{
  const int i = fp_scene_find (all->whole, change->item);

  return change->param == NULL || i < 0 ? 0.0 : fp_item_param (fp_scene_placed (all->whole, NULL)[i].item, change->param->id);
}

static double
rounded (const FpRemedySearch *all, const FpChange *change, double value)
{
  const FpParamType type = change->param != NULL ? change->param->type : FP_PARAM_LENGTH;
  const double grain = type == FP_PARAM_LENGTH || type == FP_PARAM_LEVEL ? all->grain : type == FP_PARAM_SHARE ? 0.001 : 1.0;

  return round (value / grain) * grain;
}

static void
shrink (FpRemedySearch *all)
{
  const FpRemedy pair = all->clean.remedy;
  const FpChange *whole = &pair.change[0];
  const double length = whole->by.x + whole->by.y, full = whole->param != NULL ? whole->value : length;
  const double start = start_of (all, whole), cost = all->clean.cost;
  double bad = start, good = full;

  if (whole->param != NULL && whole->param->type == FP_PARAM_CHOICE)
    return;
  for (guint i = 0; i < SHRUNK && !fp_remedy_is_over (all); i++)
    {
      const double middle = rounded (all, whole, (bad + good) / 2.0), part = (middle - start) / (full - start);
      FpChange first = *whole;

      if (middle == bad || middle == good || !(part > 0.0 && part < 1.0))
        return;
      first.value = whole->param != NULL ? middle : 0.0;
      first.by = whole->param != NULL ? whole->by : (FpVec3) { whole->by.x * part, whole->by.y * part, 0.0 };
      if (is_enough (all, &pair, &first, cost * (0.5 + part / 2.0)))
        good = middle;
      else
        bad = middle;
    }
}

/* --- all -------------------------------------------------------------------------------- */

/* The most that any but it does of what is to be done: a size done by halves twice is counted once. */
static double
most_beside (const GArray *promises, guint but)
{
  double most = 0.0;

  for (guint i = 0; i < promises->len; i++)
    {
      const FpRemedyPromise *other = &g_array_index (promises, FpRemedyPromise, i);

      if (i != but && !other->settles)
        most = MAX (most, other->gain);
    }
  return most;
}

/* Two that are too little even added up need not be tried; what is more together than added up is seldom much more. */
static gboolean
is_too_little (const FpRemedyStage *first, const GArray *promises, guint i)
{
  const FpRemedyPromise *promise = &g_array_index (promises, FpRemedyPromise, i);

  return !promise->settles && MORE_TOGETHER * (promise->gain + most_beside (promises, i)) < first->excess;
}

static void
try_sort (FpRemedyStage *first, const GArray *promises, gboolean settles)
{
  FpRemedySearch *all = first->all;
  guint tried = 0;

  for (guint i = 0; i < promises->len && tried < FIRSTS && !fp_remedy_is_over (all) && isinf (all->clean.cost); i++)
    {
      const FpRemedyPromise *promise = &g_array_index (promises, FpRemedyPromise, i);

      if (promise->settles != settles || is_too_little (first, promises, i))
        continue;
      tried++;
      try_second (all, promise);
    }
}

void
fp_remedy_try_pairs (FpRemedyStage *first)
{
  FpRemedySearch *all = first->all;
  g_autoptr (GArray) promises = g_steal_pointer (&first->promises); /* a second change promises nothing more */

  g_array_sort (promises, by_cost);
  try_sort (first, promises, TRUE);
  if (isfinite (all->clean.cost))
    return;
  try_sort (first, promises, FALSE);
  if (isfinite (all->clean.cost))
    shrink (all);
}
