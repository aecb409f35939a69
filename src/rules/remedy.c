/* SPDX-License-Identifier: GPL-3.0-or-later */
/* remedy.c - which things are changed, and in which order, to settle a finding */
#include "remedy-private.h"

#include <math.h>

/* --- one thing --------------------------------------------------------------- */

static gboolean
is_part_of_the_building (const FpPlaced *placed)
{
  return (fp_item_kind (placed->item)->flags & FP_KIND_SURVEY) != 0;
}

/* What is bought whole and stands there is moved, or another is chosen; what is built where it stands can be altered there. */
static gboolean
is_bought_and_there (const FpPlaced *placed)
{
  static const FpRole built[] = { FP_ROLE_FOOTPACE, FP_ROLE_RAIL, FP_ROLE_SCREEN, FP_ROLE_RAMP, FP_ROLE_HANDRAIL };

  for (guint i = 0; i < G_N_ELEMENTS (built); i++)
    if (fp_item_kind (placed->item)->role == built[i])
      return FALSE;
  return placed->standing == FP_STANDING_EXISTING && !is_part_of_the_building (placed);
}

/* As the first change has it; two of the same would be one that goes farther. */
static gboolean
is_changed_already (const FpRemedyStage *stage, const FpDial *dial)
{
  const FpChange change = fp_dial_change (dial, 1.0), *made = &stage->made.change[0];

  return stage->made.n_changes > 0 && made->item == change.item && made->param == change.param
         && (made->by.x == 0.0) == (change.by.x == 0.0);
}

static void
turn (FpRemedyStage *stage, const FpDial *dial, gboolean far)
{
  if (!fp_remedy_is_over (stage->all) && !is_changed_already (stage, dial) && (!far || fp_remedy_has_say (stage, dial)))
    fp_remedy_turn (stage, dial);
}

void
fp_remedy_try_thing (FpRemedyStage *stage, const FpPlaced *placed, gboolean far)
{
  const double *value = fp_item_params (placed->item);
  const gboolean sized = !stage->measure->apart && !is_bought_and_there (placed);
  guint i = 0;

  /* What was measured in the church is not changed so that something else may be. */
  if (placed->ghost || (stage->made.n_changes > 0 && is_part_of_the_building (placed)))
    return;
  /* Between two things nothing is settled by what only makes the measure look elsewhere (a flame that is raised over
   * what can burn), or by a word: they are moved apart. */
  for (const FpParam *p = fp_item_kind (placed->item)->params;
       p != NULL && p->id != NULL && sized; p++, i++)
    {
      const FpDial dial = fp_dial_of_param (stage, placed, p, value[i]);

      turn (stage, &dial, far);
    }
  if (is_part_of_the_building (placed))
    return;
  for (guint axis = 0; axis < 2; axis++)
    {
      const FpDial dial = fp_dial_of_move (placed, axis == 0 ? (FpVec3) { 1.0, 0.0, 0.0 } : (FpVec3) { 0.0, 1.0, 0.0 });

      turn (stage, &dial, far);
    }
}

/* --- which things, in which order ----------------------------------------- */

static gboolean
stands_on (const FpPlaced *all, int thing, int below)
{
  for (int i = thing; i >= 0; i = all[i].support)
    if (i == below)
      return TRUE;
  return FALSE;
}

void
fp_remedy_try_neighbours (FpRemedyStage *stage, int owner)
{
  guint n;
  const FpPlaced *all = fp_scene_placed (stage->scene, &n);

  for (guint i = 0; i < n; i++)
    if ((int) i != owner && (stands_on (all, (int) i, owner) || stands_on (all, owner, (int) i)))
      fp_remedy_try_thing (stage, &all[i], TRUE);
}

void
fp_remedy_try_supports (FpRemedyStage *stage)
{
  const FpPlaced *all = fp_scene_placed (stage->scene, NULL);
  const int altar = fp_scene_celebrated_altar (stage->scene);

  for (int i = altar >= 0 ? all[altar].support : -1; i >= 0; i = all[i].support)
    fp_remedy_try_thing (stage, &all[i], FALSE);
}

/* Those that were not tried yet. */
static void
try_furnishings (FpRemedyStage *stage, int owner)
{
  guint n;
  const FpPlaced *all = fp_scene_placed (stage->scene, &n);

  for (guint i = 0; i < n; i++)
    if (!is_part_of_the_building (&all[i])
        && (owner < 0 || !(stands_on (all, (int) i, owner) || stands_on (all, owner, (int) i))))
      fp_remedy_try_thing (stage, &all[i], TRUE);
}

/* Looks are dear: what raises all that is looked at comes first, then what may be in the way, and the seats last. */
static void
try_seen (FpRemedyStage *stage)
{
  const FpPlaced *all = fp_scene_placed (stage->scene, NULL);
  const int owner = stage->all->finding->owner, altar = fp_scene_celebrated_altar (stage->scene);
  const double *cost = &stage->all->clean.cost;

  fp_remedy_try_supports (stage);
  if (isinf (*cost) && owner >= 0 && !is_part_of_the_building (&all[owner]))
    fp_remedy_try_thing (stage, &all[owner], TRUE);
  if (isinf (*cost) && altar >= 0)
    fp_remedy_try_neighbours (stage, altar);
  if (isinf (*cost))
    try_furnishings (stage, altar);
  if (isinf (*cost) && owner >= 0 && is_part_of_the_building (&all[owner]))
    fp_remedy_try_thing (stage, &all[owner], TRUE);
}

/* What is passed through: to walk is dear, and a way is most often narrowest there. */
static void
try_gates (FpRemedyStage *stage)
{
  guint n;
  const FpPlaced *all = fp_scene_placed (stage->scene, &n);

  for (guint i = 0; i < n; i++)
    {
      const int gate = fp_kind_param_index (fp_item_kind (all[i].item), "gate");

      if (gate >= 0 && !all[i].ghost)
        {
          const double value = fp_item_params (all[i].item)[gate];
          const FpDial dial = fp_dial_of_param (stage, &all[i], &fp_item_kind (all[i].item)->params[gate], value);

          turn (stage, &dial, TRUE);
        }
    }
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
  static const char *const ids[] = { "altars", "ambos", "chairs", "credences", "crucifixes", "tabernacles" };

  for (guint i = 0; i < G_N_ELEMENTS (ids); i++)
    if (g_str_equal (measure->id, ids[i]))
      return TRUE;
  return FALSE;
}

static void
search (FpRemedySearch *all, const FpMeasure *measure)
{
  const FpScene *scene = fp_findings_scene (all->base);
  FpRemedyStage stage = { .all = all, .rule = all->finding->rule, .measure = measure };

  all->whole = whole_of (scene);
  stage.whole = all->whole;
  stage.scene = (FpScene *) scene;
  stage.promises = g_array_new (FALSE, FALSE, sizeof (FpRemedyPromise));
  stage.excess = fp_stage_excess (&stage, scene);
  if (measure->needs_sight && !fp_measure_is_of_ways (measure))
    try_seen (&stage);
  else
    try_all (&stage);
  g_clear_pointer (&stage.promises, g_array_unref);
  g_clear_pointer (&all->whole, fp_scene_unref);
}

/* What is told where nothing was found. */
static FpHindrance
hindrance_of (const FpRemedySearch *all)
{
  const FpPlaced *placed = fp_scene_placed (fp_findings_scene (all->base), NULL);

  if (g_cancellable_is_cancelled (all->cancel))
    return (FpHindrance) { .how = FP_HINDRANCE_CANCELLED };
  if (all->why.how != FP_HINDRANCE_NONE && all->why.how != FP_HINDRANCE_REACH)
    return all->why;
  if (all->finding->owner >= 0 && is_bought_and_there (&placed[all->finding->owner]))
    return (FpHindrance) { .how = FP_HINDRANCE_STANDS, .change.item = g_intern_string (fp_item_id (placed[all->finding->owner].item)) };
  if (all->why.how != FP_HINDRANCE_NONE)
    return all->why;
  return (FpHindrance) { .how = fp_remedy_is_over (all) ? FP_HINDRANCE_MANY : FP_HINDRANCE_NO_SAY };
}

gboolean
fp_remedy_find (const FpFindings *findings, const FpFinding *finding, GCancellable *cancel, FpRemedy *out, FpHindrance *why)
{
  const gboolean metric = fp_project_brief (fp_scene_project (fp_findings_scene (findings)))->units == FP_UNITS_METRIC;
  const FpMeasure *measure = fp_measure_find (finding->rule->measure);
  FpRemedySearch all = {
    .base = findings, .finding = finding, .cancel = cancel, .risers = fp_findings_risers (findings),
    .grain = metric ? 5.0 : FP_MM_PER_INCH / 4.0, .clean.cost = INFINITY, .lesser.cost = INFINITY,
  };
  FpHindrance none = { .how = FP_HINDRANCE_NONE };
  gboolean found = FALSE;

  if (finding->found == FP_FOUND_WAITING)
    none.how = FP_HINDRANCE_SIGHT;
  else if (measure != NULL && finding->found == FP_FOUND_SHORT)
    {
      if (!counts_things (measure))
        search (&all, measure);
      found = (isfinite (all.clean.cost) || isfinite (all.lesser.cost)) && !g_cancellable_is_cancelled (cancel);
      if (!found)
        none = hindrance_of (&all);
    }
  if (found)
    *out = isfinite (all.clean.cost) ? all.clean.remedy : all.lesser.remedy;
  if (why != NULL)
    *why = none;
  return found;
}
