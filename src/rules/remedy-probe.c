/* SPDX-License-Identifier: GPL-3.0-or-later */
/* remedy-probe.c - what is measured in a church in which one thing is otherwise */
#include "remedy-private.h"

#include <math.h>

#define DUST     1e-6  /* printed unit                                             */
#define EDGE     1.0   /* mm: what reaches so far over an edge still stands on it  */

gboolean
fp_remedy_is_over (const FpRemedySearch *all)
{
  return g_atomic_int_get (&all->scenes) >= FP_REMEDY_SCENES || g_cancellable_is_cancelled (all->cancel);
}

/* --- measuring a try ------------------------------------------------------ */

/* Only those look again before whom something was changed. */
static FpSight *
look (const FpRemedySearch *all, const FpPeople *people)
{
  return fp_sight_again (people, fp_findings_measuring (all->base)->sight, all->cancel);
}

/* INFINITY where nothing is left to be measured: to take a gate away does not make it wide enough. */
double
fp_stage_excess (const FpRemedyStage *stage, const FpScene *scene)
{
  return fp_remedy_excess (stage->all, stage->measure, stage->rule, scene, NULL) - stage->target;
}

double
fp_remedy_excess (const FpRemedySearch *all, const FpMeasure *measure, const FpRule *rule, const FpScene *scene, int *owner)
{
  g_autoptr (FpPeople) people = fp_people_new (scene);
  g_autoptr (FpSight) sight = measure->needs_sight ? look (all, people) : NULL;
  FpMeasuring of = { scene, people, fp_levels (people), sight };
  g_autoptr (GArray) measured = fp_measure_take (measure, &of);
  double worst = -INFINITY;
  gboolean any = FALSE;

  if (g_cancellable_is_cancelled (all->cancel))
    return INFINITY;
  for (guint i = 0; i < measured->len; i++)
    {
      const FpMeasured *one = &g_array_index (measured, FpMeasured, i);
      const double excess = isnan (one->value) ? -INFINITY : fp_rule_excess (rule, one->value);

      any = any || !isnan (one->value);
      if (owner != NULL && excess > worst)
        *owner = one->owner;
      worst = MAX (worst, excess);
    }
  return any ? worst : INFINITY;
}

/* A gradine that is moved off the mensa leaves more room there, but that is not meant. */
static gboolean
is_on (const FpScene *scene, int i)
{
  const FpPlaced *placed = fp_scene_placed (scene, NULL), *below = &placed[placed[i].support];
  const FpBox a = placed[i].plan, b = below->plan;

  return a.x0 >= b.x0 - EDGE && a.x1 <= b.x1 + EDGE && a.y0 >= b.y0 - EDGE && a.y1 <= b.y1 + EDGE;
}

/* What is moved through a wall is clear of it, too. */
static gboolean
is_in_church (const FpScene *scene, int i)
{
  const FpBox *plan = &fp_scene_placed (scene, NULL)[i].plan;
  gboolean found;

  fp_scene_floor_at (scene, (FpPoint) { (plan->x0 + plan->x1) / 2, (plan->y0 + plan->y1) / 2 }, &found);
  return found;
}

static gboolean
leaves_its_place (const FpRemedyStage *stage, const FpDial *dial, const FpScene *then)
{
  const char *id = fp_item_id (dial->placed->item);
  const int before = fp_scene_find (stage->scene, id), after = fp_scene_find (then, id);

  if (dial->param != NULL || before < 0 || after < 0)
    return FALSE;
  if (is_in_church (stage->scene, before) && !is_in_church (then, after))
    return TRUE;
  return dial->placed->support >= 0 && fp_scene_placed (then, NULL)[after].support >= 0 && is_on (stage->scene, before)
         && !is_on (then, after);
}

guint
fp_remedy_price (const FpMeasure *measure)
{
  if (!measure->needs_sight)
    return 1;
  return fp_measure_is_of_ways (measure) ? FP_REMEDY_WALKED : FP_REMEDY_LOOKED;
}

static double
measured_at (FpRemedyStage *stage, const FpDial *dial, double value)
{
  const FpChange change = fp_dial_change (dial, value);
  g_autoptr (FpProject) project = fp_change_make (&change, stage->whole, NULL);
  g_autoptr (FpScene) whole = NULL, scene = NULL;

  g_atomic_int_add (&stage->all->scenes, (gint) fp_remedy_price (stage->measure));
  if (project == NULL)
    return INFINITY;
  whole = fp_scene_new (project, fp_scene_alternative (stage->whole));
  scene = fp_remedy_set (whole, stage->scene);
  return leaves_its_place (stage, dial, scene) ? INFINITY : fp_stage_excess (stage, scene);
}

/* What was measured once is not measured again. */
double
fp_dial_excess (FpRemedyStage *stage, const FpDial *dial, double value)
{
  FpProbe probe = { value, stage->excess };

  if (value == dial->start)
    return stage->excess;
  for (guint i = 0; i < dial->known->len; i++)
    if (g_array_index (dial->known, FpProbe, i).at == value)
      return g_array_index (dial->known, FpProbe, i).excess;
  probe.excess = measured_at (stage, dial, value);
  g_array_append_val (dial->known, probe);
  return probe.excess;
}

gboolean
fp_dial_settles (FpRemedyStage *stage, const FpDial *dial, double value)
{
  return fp_dial_excess (stage, dial, value) <= (stage->target > 0 ? DUST : 0.0);
}

double
fp_dial_within (const FpDial *dial, double value)
{
  return CLAMP (value, dial->min, dial->max);
}

/* What is looked at or walked. */
gboolean
fp_stage_is_dear (const FpRemedyStage *stage)
{
  return stage->measure->needs_sight;
}

double
fp_dial_on_grid (const FpDial *dial, double value)
{
  return dial->start + round ((value - dial->start) / dial->least) * dial->least;
}

/* --- whether it has a say ---------------------------------------------------- */

/* What goes by jumps tells nothing of what lies between two values. */
gboolean
fp_measure_goes_by_jumps (const FpMeasure *measure)
{
  return measure->type == FP_MEASURE_YES || (measure->type == FP_MEASURE_COUNT && measure->unit == NULL);
}

gboolean
fp_remedy_has_say (FpRemedyStage *stage, const FpDial *dial)
{
  const double little = fp_dial_is_length (dial) ? FP_DIAL_LITTLE : 4.0 * dial->first;
  const double probe[] = { fp_dial_within (dial, dial->start + little), fp_dial_within (dial, dial->start - little), dial->start + dial->first,
                           dial->start - dial->first, dial->max, dial->min };
  gboolean moves = fp_measure_goes_by_jumps (stage->measure);

  if (dial->param != NULL && (dial->param->type == FP_PARAM_CHOICE || dial->param->type == FP_PARAM_COUNT))
    return TRUE;
  for (guint i = 0; i < G_N_ELEMENTS (probe) && !g_cancellable_is_cancelled (stage->all->cancel); i++)
    {
      const gboolean near = i == 2 || i == 3;
      const double excess = i < 2 || (moves && !(near && fp_stage_is_dear (stage))) ? fp_dial_excess (stage, dial, fp_dial_within (dial, probe[i])) : stage->excess;

      if (excess < stage->excess - DUST)
        return TRUE;
      /* What a little does not touch at all, more does not make better. */
      moves = moves || excess != stage->excess;
    }
  return FALSE;
}
