/* SPDX-License-Identifier: GPL-3.0-or-later */
/* remedy.c - which things are changed, and in which order, to settle a finding */
#include "remedy-private.h"

#include <math.h>

/* --- which things, in which order ----------------------------------------- */

void
fp_remedy_try_thing (FpRemedyStage *stage, const FpPlaced *placed, gboolean asked)
{
  g_autoptr (GArray) dials = fp_remedy_dials_new ();

  fp_remedy_add_dials (stage, placed, dials);
  fp_remedy_turn_all (stage, dials, asked);
}

gboolean
fp_remedy_stands_on (const FpPlaced *all, int thing, int below)
{
  for (int i = thing; i >= 0; i = all[i].support)
    if (i == below)
      return TRUE;
  return FALSE;
}

void
fp_remedy_try_neighbours (FpRemedyStage *stage, int owner)
{
  g_autoptr (GArray) dials = fp_remedy_dials_new ();
  guint n;
  const FpPlaced *all = fp_scene_placed (stage->scene, &n);

  for (guint i = 0; i < n; i++)
    if ((int) i != owner && (fp_remedy_stands_on (all, (int) i, owner) || fp_remedy_stands_on (all, owner, (int) i)))
      fp_remedy_add_dials (stage, &all[i], dials);
  fp_remedy_turn_all (stage, dials, TRUE);
}

void
fp_remedy_try_supports (FpRemedyStage *stage)
{
  const FpPlaced *all = fp_scene_placed (stage->scene, NULL);
  const int altar = fp_scene_celebrated_altar (stage->scene);

  for (int i = altar >= 0 ? all[altar].support : -1; i >= 0; i = all[i].support)
    fp_remedy_try_thing (stage, &all[i], stage->measure->needs_sight);
}

/* Those that were not tried yet. */
static void
try_furnishings (FpRemedyStage *stage, int owner)
{
  g_autoptr (GArray) dials = fp_remedy_dials_new ();
  guint n;
  const FpPlaced *all = fp_scene_placed (stage->scene, &n);

  for (guint i = 0; i < n; i++)
    if (!fp_remedy_is_part_of_the_building (&all[i])
        && (owner < 0 || !(fp_remedy_stands_on (all, (int) i, owner) || fp_remedy_stands_on (all, owner, (int) i))))
      fp_remedy_add_dials (stage, &all[i], dials);
  fp_remedy_turn_all (stage, dials, TRUE);
}

/* Looks are dear: what raises all that is looked at comes first, then what may be in the way, and the seats last. */
static void
try_seen (FpRemedyStage *stage)
{
  const FpPlaced *all = fp_scene_placed (stage->scene, NULL);
  const int owner = stage->all->finding->owner, altar = fp_scene_celebrated_altar (stage->scene);
  const double *cost = &stage->all->clean.cost;

  fp_remedy_try_supports (stage);
  if (isinf (*cost) && owner >= 0 && !fp_remedy_is_part_of_the_building (&all[owner]))
    fp_remedy_try_thing (stage, &all[owner], TRUE);
  if (isinf (*cost) && altar >= 0)
    fp_remedy_try_neighbours (stage, altar);
  if (isinf (*cost))
    try_furnishings (stage, altar);
  if (isinf (*cost) && owner >= 0 && fp_remedy_is_part_of_the_building (&all[owner]))
    fp_remedy_try_thing (stage, &all[owner], TRUE);
}

/* What is passed through: to walk is dear, and a way is most often narrowest there. */
static void
try_gates (FpRemedyStage *stage)
{
  g_autoptr (GArray) dials = fp_remedy_dials_new ();
  guint n;
  const FpPlaced *all = fp_scene_placed (stage->scene, &n);

  for (guint i = 0; i < n; i++)
    {
      const int gate = fp_kind_param_index (fp_item_kind (all[i].item), "gate");

      if (gate >= 0 && !all[i].ghost)
        fp_remedy_add_param (stage, &all[i], (guint) gate, dials);
    }
  fp_remedy_turn_all (stage, dials, TRUE);
}

static void
try_all (FpRemedyStage *stage)
{
  const int owner = stage->all->finding->owner;
  const double *cost = &stage->all->clean.cost;

  if (fp_measure_is_of_ways (stage->measure))
    try_gates (stage);
  if (isinf (*cost) && owner >= 0)
    fp_remedy_try_thing (stage, &fp_scene_placed (stage->scene, NULL)[owner], FALSE);
  if (isinf (*cost) && owner >= 0)
    fp_remedy_try_neighbours (stage, owner);
  if (isinf (*cost) && owner < 0 && fp_measure_is_of_altars_floor (stage->measure))
    fp_remedy_try_supports (stage);
  if (isinf (*cost))
    try_furnishings (stage, owner);
  if (isinf (*cost))
    fp_remedy_try_pairs (stage);
}

/* --- a search ---------------------------------------------------------------------- */

/* As things stand, all of them. */
static FpScene *
whole_of (const FpScene *scene)
{
  return fp_scene_setting (scene) == NULL ? fp_scene_ref (scene)
                                          : fp_scene_new (fp_scene_project (scene), fp_scene_alternative (scene));
}

/* How many things of an office there are: to change one makes no more of them, and need not be tried. */
static gboolean
counts_things (const FpMeasure *measure)
{
  static const char *const ids[] = { "altars", "ambos", "chairs", "credences", "crucifixes", "tabernacles",
                                       "wheelchair-lacking", "ways-out-lacking-us", "ways-out-lacking-uk" };

  for (guint i = 0; i < G_N_ELEMENTS (ids); i++)
    if (g_str_equal (measure->id, ids[i]))
      return TRUE;
  return FALSE;
}

void
fp_remedy_search_init (FpRemedySearch *all, const FpFindings *findings, const FpFinding *finding, GCancellable *cancel)
{
  const FpScene *scene = fp_findings_scene (findings);
  const gboolean metric = fp_project_brief (fp_scene_project (scene))->units == FP_UNITS_METRIC;

  *all = (FpRemedySearch) {
    .base = findings, .finding = finding, .cancel = cancel, .whole = whole_of (scene), .risers = fp_findings_risers (findings),
    .grain = metric ? 5.0 : FP_MM_PER_INCH / 4.0, .clean.cost = INFINITY, .lesser.cost = INFINITY,
  };
}

void
fp_remedy_search_clear (FpRemedySearch *all)
{
  fp_remedy_forget_others (all);
  g_clear_pointer (&all->whole, fp_scene_unref);
}

static gboolean
is_found (const FpRemedySearch *all)
{
  return isfinite (all->clean.cost) || isfinite (all->lesser.cost);
}

/* What could be told is known by then, but for what stands there. */
static gboolean
may_be_for_standing (const FpRemedySearch *all)
{
  const FpPlaced *placed = fp_scene_placed (fp_findings_scene (all->base), NULL);

  return !is_found (all) && all->finding->owner >= 0 && fp_remedy_is_bought_and_there (&placed[all->finding->owner])
         && (all->why.how == FP_HINDRANCE_NONE || all->why.how == FP_HINDRANCE_REACH);
}

static void
search (FpRemedySearch *all, const FpMeasure *measure)
{
  const FpScene *scene = fp_findings_scene (all->base);
  FpRemedyStage stage = { .all = all, .rule = all->finding->rule, .measure = measure };
  g_autoptr (GArray) partial = NULL;

  stage.whole = all->whole;
  stage.scene = (FpScene *) scene;
  stage.promises = g_array_new (FALSE, FALSE, sizeof (FpRemedyPromise));
  stage.excess = fp_stage_excess (&stage, scene);
  stage.touches = fp_remedy_touching (all->base, all->finding, measure);
  partial = g_array_ref (stage.promises);
  if (measure->needs_sight && !fp_measure_is_of_ways (measure))
    try_seen (&stage);
  else
    try_all (&stage);
  g_free (stage.touches);
  g_clear_pointer (&stage.promises, g_array_unref);
  stage.promises = partial;
  if (may_be_for_standing (all))
    all->why = fp_remedy_stands (&stage);
}

/* What is told where nothing was found. */
static FpHindrance
hindrance_of (const FpRemedySearch *all)
{
  if (g_cancellable_is_cancelled (all->cancel))
    return (FpHindrance) { .how = FP_HINDRANCE_CANCELLED };
  if (all->why.how != FP_HINDRANCE_NONE)
    return all->why;
  return (FpHindrance) { .how = fp_remedy_is_over (all) ? FP_HINDRANCE_MANY : FP_HINDRANCE_NO_SAY };
}

gboolean
fp_remedy_find (const FpFindings *findings, const FpFinding *finding, GCancellable *cancel, FpRemedy *out, FpHindrance *why)
{
  const FpMeasure *measure = fp_measure_find (finding->rule->measure);
  FpHindrance none = { .how = FP_HINDRANCE_NONE };
  FpRemedySearch all;
  gboolean found = FALSE;

  fp_remedy_search_init (&all, findings, finding, cancel);
  if (finding->found == FP_FOUND_WAITING)
    none.how = FP_HINDRANCE_SIGHT;
  else if (measure != NULL && finding->found == FP_FOUND_SHORT)
    {
      if (!counts_things (measure))
        search (&all, measure);
      found = is_found (&all) && !g_cancellable_is_cancelled (cancel);
      if (!found)
        none = hindrance_of (&all);
    }
  if (found)
    *out = isfinite (all.clean.cost) ? all.clean.remedy : all.lesser.remedy;
  fp_remedy_search_clear (&all);
  if (why != NULL)
    *why = none;
  return found;
}
