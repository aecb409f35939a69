/* SPDX-License-Identifier: GPL-3.0-or-later */
/* remedy-walk.c - along one dial: bracketed by ever longer steps, then bisected */
#include "remedy-private.h"

#include <math.h>

#define DEAF     4     /* probes without an answer after which a value is taken to have no say */
#define HALVINGS 24
#define A_LITTLE 100.0 /* mm: by which it is asked whether a length has a say     */
#define FARTHER  4     /* values beyond what settles it that are tried for making nothing worse */
#define DUST     1e-6  /* printed unit                                             */
#define EDGE     1.0   /* mm: what reaches so far over an edge still stands on it  */

gboolean
fp_remedy_is_over (const FpRemedySearch *all)
{
  return all->scenes >= FP_REMEDY_SCENES || g_cancellable_is_cancelled (all->cancel);
}

/* --- measuring a try ------------------------------------------------------ */

/* Only those look again before whom something was changed. */
static FpSight *
look (const FpRemedyStage *stage, const FpPeople *people)
{
  return fp_sight_again (people, fp_findings_measuring (stage->all->base)->sight, stage->all->cancel);
}

/* INFINITY where nothing is left to be measured: to take a gate away does not make it wide enough. */
double
fp_stage_excess (const FpRemedyStage *stage, const FpScene *scene)
{
  g_autoptr (FpPeople) people = fp_people_new (scene);
  g_autoptr (FpSight) sight = stage->measure->needs_sight ? look (stage, people) : NULL;
  FpMeasuring of = { scene, people, fp_levels (people), sight };
  g_autoptr (GArray) measured = fp_measure_take (stage->measure, &of);
  double worst = -INFINITY;
  gboolean any = FALSE;

  if (g_cancellable_is_cancelled (stage->all->cancel))
    return INFINITY;
  for (guint i = 0; i < measured->len; i++)
    {
      double value = g_array_index (measured, FpMeasured, i).value;

      if (isnan (value))
        continue;
      any = TRUE;
      worst = MAX (worst, fp_rule_excess (stage->rule, value));
    }
  return any ? worst - stage->target : INFINITY;
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

static guint
price (const FpMeasure *measure)
{
  if (!measure->needs_sight)
    return 1;
  return fp_measure_is_of_ways (measure) ? FP_REMEDY_WALKED : FP_REMEDY_LOOKED;
}

static double
excess_of (FpRemedyStage *stage, const FpDial *dial, double value)
{
  const FpChange change = fp_dial_change (dial, value);
  g_autoptr (FpProject) project = fp_change_make (&change, stage->whole, NULL);
  g_autoptr (FpScene) whole = NULL, scene = NULL;

  stage->all->scenes += price (stage->measure);
  if (project == NULL)
    return INFINITY;
  whole = fp_scene_new (project, fp_scene_alternative (stage->whole));
  scene = fp_remedy_set (whole, stage->scene);
  return leaves_its_place (stage, dial, scene) ? INFINITY : fp_stage_excess (stage, scene);
}

static gboolean
settles (FpRemedyStage *stage, const FpDial *dial, double value)
{
  return excess_of (stage, dial, value) <= (stage->target > 0 ? DUST : 0.0);
}

/* --- what just settles it --------------------------------------------------- */

/* Between what does not settle it and what does, down to the resolution; the end that does. */
static double
narrow (FpRemedyStage *stage, const FpDial *dial, double bad, double good)
{
  while (fabs (good - bad) > dial->least * 1.001)
    {
      double middle = bad + round ((good - bad) / 2.0 / dial->least) * dial->least;

      if (middle == bad || middle == good)
        break;
      if (settles (stage, dial, middle))
        good = middle;
      else
        bad = middle;
    }
  return good;
}

/* A figure that a person would write. The narrowed one may lie a little beyond the one that just settles it, so the
 * nearest on either side is tried: the one nearer to how things stand first. */
static double
even (FpRemedyStage *stage, const FpDial *dial, double value, int way)
{
  const double grain = stage->all->grain, origin = dial->param != NULL ? 0.0 : dial->start;
  double before = origin + (way > 0 ? floor ((value - origin) / grain) : ceil ((value - origin) / grain)) * grain;

  for (int i = 0; fp_dial_is_length (dial) && i < 2; i++)
    {
      double even_value = before + i * way * grain;

      if (way * (even_value - dial->start) > 0.0 && even_value >= dial->min && even_value <= dial->max
          && settles (stage, dial, even_value))
        return even_value;
    }
  return value;
}

static double
on_grid (const FpDial *dial, double value)
{
  return dial->start + round ((value - dial->start) / dial->least) * dial->least;
}

/* A limit of two sides, or one figure, is easily stepped over: the excess falls and rises again between @from and
 * @to.  Where it is least; NAN where even that does not settle it. */
static double
least_between (FpRemedyStage *stage, const FpDial *dial, double from, double to)
{
  for (guint i = 0; i < HALVINGS && fabs (to - from) > 2.0 * dial->least; i++)
    {
      double a = on_grid (dial, from + (to - from) / 3.0), b = on_grid (dial, to - (to - from) / 3.0);
      double at_a = excess_of (stage, dial, a), at_b = excess_of (stage, dial, b);

      if (at_a <= 0.0)
        return a;
      if (at_b <= 0.0)
        return b;
      *(at_a < at_b ? &to : &from) = at_a < at_b ? b : a;
    }
  for (double v = MIN (from, to); v <= MAX (from, to); v += dial->least)
    if (settles (stage, dial, v))
      return v;
  return NAN;
}

/* --- offering it -------------------------------------------------------------- */

static gboolean
is_dearer (const FpRemedyStage *stage, const FpDial *dial, double value)
{
  return stage->spent + fp_dial_cost (dial, value) >= stage->all->clean.cost;
}

static gboolean
judge (FpRemedyStage *stage, const FpDial *dial, double value)
{
  const FpChange change = fp_dial_change (dial, value);

  return !is_dearer (stage, dial, value) && fp_remedy_judge (stage, &change, stage->spent + fp_dial_cost (dial, value));
}

/* What makes something worse where it just settles it may not a little farther on. */
static void
go_on (FpRemedyStage *stage, const FpDial *dial, double value, int way)
{
  double step = dial->first;

  for (guint i = 0; i < FARTHER && !fp_remedy_is_over (stage->all); i++, step *= 2.0)
    {
      value += way * step;
      if (value < dial->min || value > dial->max || !settles (stage, dial, value) || judge (stage, dial, value))
        return;
    }
}

static void
take (FpRemedyStage *stage, const FpDial *dial, double bad, double good, int way)
{
  const double exact = narrow (stage, dial, bad, good), evened = even (stage, dial, exact, way);

  if (judge (stage, dial, evened) || (exact != evened && judge (stage, dial, exact)) || is_dearer (stage, dial, evened))
    return;
  go_on (stage, dial, evened, way);
}

/* --- walking -------------------------------------------------------------------- */

typedef struct { double at, excess; } Probe;

/* What does a part of it, and what would do all of it beyond the end, as the last two that were measured have it. */
static void
give_up (FpRemedyStage *stage, const FpDial *dial, int way, Probe before, Probe last, Probe best)
{
  const double end = way > 0 ? dial->max : dial->min, gain = before.excess - last.excess;

  if (best.excess < stage->excess - DUST && stage->promises != NULL)
    {
      const FpRemedyPromise promise = { .change = fp_dial_change (dial, best.at), .cost = fp_dial_cost (dial, best.at) };
      g_array_append_val (stage->promises, promise);
    }
  if (last.at == end && gain > DUST && isfinite (last.excess) && stage->made.n_changes == 0)
    fp_remedy_note_limit (stage, dial, last.at + last.excess * (last.at - before.at) / gain, end);
}

/* Ever longer steps one way, until one settles it or there is no hope that way. */
static void
walk (FpRemedyStage *stage, const FpDial *dial, int way)
{
  const double end = way > 0 ? dial->max : dial->min;
  Probe before = { dial->start, stage->excess }, last = before, best = before;
  double step = dial->first;
  guint deaf = 0;

  while (last.at != end && deaf < DEAF && !is_dearer (stage, dial, last.at) && !fp_remedy_is_over (stage->all))
    {
      Probe next = { way > 0 ? MIN (last.at + step, end) : MAX (last.at - step, end), 0.0 };
      double good;

      next.excess = excess_of (stage, dial, next.at);
      good = next.excess <= 0.0 ? next.at : NAN;
      if (isnan (good) && next.excess > last.excess && last.excess < stage->excess)
        good = least_between (stage, dial, before.at, next.at);
      if (!isnan (good))
        {
          take (stage, dial, way * (good - last.at) > 0.0 ? last.at : before.at, good, way);
          return;
        }
      deaf += next.excess >= stage->excess ? 1 : 0;
      before = last;
      last = next;
      if (next.excess < best.excess)
        best = next;
      step *= 2.0;
    }
  give_up (stage, dial, way, before, last, best);
}

static void
choose (FpRemedyStage *stage, const FpDial *dial)
{
  for (double c = 0.0; c <= dial->max && !fp_remedy_is_over (stage->all); c += 1.0)
    if (c != dial->start && settles (stage, dial, c) && judge (stage, dial, c))
      return;
}

void
fp_remedy_turn (FpRemedyStage *stage, const FpDial *dial)
{
  if (dial->param != NULL && dial->param->type == FP_PARAM_CHOICE)
    {
      if (!is_dearer (stage, dial, dial->start))
        choose (stage, dial);
      return;
    }
  walk (stage, dial, 1);
  walk (stage, dial, -1);
}

gboolean
fp_remedy_has_say (FpRemedyStage *stage, const FpDial *dial)
{
  const double little = fp_dial_is_length (dial) ? A_LITTLE : 4.0 * dial->first;
  const double probe[] = { dial->start + dial->first, dial->start - dial->first, dial->start + little, dial->start - little,
                           dial->max, dial->min };

  if (dial->param != NULL && (dial->param->type == FP_PARAM_CHOICE || dial->param->type == FP_PARAM_COUNT))
    return TRUE;
  for (guint i = 0; i < G_N_ELEMENTS (probe) && !fp_remedy_is_over (stage->all); i++)
    if (probe[i] >= dial->min && probe[i] <= dial->max && probe[i] != dial->start
        && excess_of (stage, dial, probe[i]) < stage->excess - DUST)
      return TRUE;
  return FALSE;
}
