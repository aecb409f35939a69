/* SPDX-License-Identifier: GPL-3.0-or-later */
/* remedy-walk.c - along one dial: bracketed by ever longer steps, then bisected */
#include "remedy-private.h"

#include <math.h>

#define DEAF     4     /* probes without an answer after which a value is taken to have no say */
#define STILL    2     /* likewise of probes that change nothing at all, where what is measured does not go by jumps */
#define HALVINGS 24
#define STEEPER  2.0
#define DIPS     0.3   /* of what is to be done is left, where more is sought between (design judgement) */
#define FEW      4     /* values that are all tried                              */
#define A_LITTLE 100.0 /* mm: by which it is asked whether a length has a say     */
#define FARTHER  4     /* values beyond what settles it that are tried for making nothing worse */
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
static double
excess_of (FpRemedyStage *stage, const FpDial *dial, double value)
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

static gboolean
settles (FpRemedyStage *stage, const FpDial *dial, double value)
{
  return excess_of (stage, dial, value) <= (stage->target > 0 ? DUST : 0.0);
}

static double
within (const FpDial *dial, double value)
{
  return CLAMP (value, dial->min, dial->max);
}

/* What is looked at or walked. */
static gboolean
is_dear (const FpRemedyStage *stage)
{
  return stage->measure->needs_sight;
}

/* --- what just settles it --------------------------------------------------- */

/* Most of what is measured goes along a straight line: where that meets the limit, rounded to the side that settles it. */
static double
by_line (FpRemedyStage *stage, const FpDial *dial, double bad, double good)
{
  const double at_bad = excess_of (stage, dial, bad), at_good = excess_of (stage, dial, good), way = good > bad ? 1.0 : -1.0;
  const double steps = fabs (good - bad) / dial->least * (at_bad / (at_bad - at_good));

  if (!isfinite (steps))
    return NAN;
  return bad + way * MAX (1.0, ceil (steps - DUST)) * dial->least;
}

static double
by_half (const FpDial *dial, double bad, double good)
{
  return bad + round ((good - bad) / 2.0 / dial->least) * dial->least;
}

/* Between what does not settle it and what does, down to the resolution; the end that does. */
static double
narrow (FpRemedyStage *stage, const FpDial *dial, double bad, double good)
{
  for (guint i = 0; fabs (good - bad) > dial->least * 1.001; i++)
    {
      const double line = i % 3 == 0 ? by_line (stage, dial, bad, good) : NAN;
      /* After the line has met it, what lies just before it is asked; and in between halves, for what is not straight. */
      double middle = i % 3 == 1 ? good - (good > bad ? 1.0 : -1.0) * dial->least : isnan (line) ? by_half (dial, bad, good) : line;

      if (middle == good)
        middle = by_half (dial, bad, good);
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

  for (int i = is_dear (stage) && before != value ? 1 : 0; fp_dial_is_length (dial) && i < 2; i++)
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
 * @to.  Where it is least, by the golden section; NAN where even that does not settle it. */
static double
least_between (FpRemedyStage *stage, const FpDial *dial, double from, double to)
{
  const double golden = (sqrt (5.0) - 1.0) / 2.0;

  for (guint i = 0; i < 2 * HALVINGS && fabs (to - from) > 3.0 * dial->least; i++)
    {
      const double a = on_grid (dial, to - golden * (to - from)), b = on_grid (dial, from + golden * (to - from));
      const double at_a = excess_of (stage, dial, a), at_b = excess_of (stage, dial, b);

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

/* What goes by jumps tells nothing of what lies between two values. */
static gboolean
goes_by_jumps (const FpMeasure *measure)
{
  return measure->type == FP_MEASURE_YES || (measure->type == FP_MEASURE_COUNT && measure->unit == NULL);
}

/* Whether it may meet the limit between two that do not: it falls no more than so many times as fast as it did, or as it rises
 * after that. */
static gboolean
may_dip (const FpRemedyStage *stage, FpProbe before, FpProbe last, FpProbe next)
{
  const double falls = (before.excess - last.excess) / fabs (last.at - before.at);
  const double rises = isfinite (next.excess) ? (next.excess - last.excess) / fabs (next.at - last.at) : INFINITY;
  const double reach = fabs (next.at - before.at);

  return goes_by_jumps (stage->measure) || last.excess <= STEEPER * MAX (falls, isfinite (rises) ? rises : 0.0) * reach;
}

/* The line through where it stands and @from leads to the first guess; then as far as it goes. */
static double
guess_beyond (FpRemedyStage *stage, const FpDial *dial, double from, int way)
{
  const double at_from = excess_of (stage, dial, from), gone = fabs (from - dial->start);
  const double more = gone > 0.0 ? at_from * gone / (stage->excess - at_from) : 0.0;
  const double guess = within (dial, on_grid (dial, from + way * ceil (more / dial->least - DUST) * dial->least));

  if (gone > 0.0 && !(stage->excess - at_from > DUST))
    return NAN;
  for (double step = dial->first; gone <= 0.0 && step < fabs ((way > 0 ? dial->max : dial->min) - from); step *= 2.0)
    if (settles (stage, dial, from + way * step))
      return from + way * step;
  return gone > 0.0 && guess != from && settles (stage, dial, guess) ? guess : way > 0 ? dial->max : dial->min;
}

double
fp_remedy_beyond (FpRemedyStage *stage, const FpDial *dial, double from, int way)
{
  const double good = guess_beyond (stage, dial, from, way);

  if (isnan (good) || good == from || excess_of (stage, dial, from) <= 0.0 || !settles (stage, dial, good))
    return NAN;
  return even (stage, dial, narrow (stage, dial, from, good), way);
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
      if (value < dial->min || value > dial->max || is_dearer (stage, dial, value))
        return;
      /* What is dear is asked once more where all rules are held, if it comes to that. */
      if ((!is_dear (stage) && !settles (stage, dial, value)) || judge (stage, dial, value))
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

/* What does a part of it, and what would do all of it beyond the end, as the last two that were measured have it. */
static void
give_up (FpRemedyStage *stage, const FpDial *dial, int way, FpProbe before, FpProbe last, FpProbe best)
{
  const double end = way > 0 ? dial->max : dial->min, gain = before.excess - last.excess;

  if (best.excess < stage->excess - DUST && stage->promises != NULL)
    {
      const FpRemedyPromise promise = { .change = fp_dial_change (dial, best.at), .cost = fp_dial_cost (dial, best.at),
                                        .gain = stage->excess - best.excess };
      g_array_append_val (stage->promises, promise);
    }
  if (last.at == end && gain > DUST && isfinite (last.excess) && stage->made.n_changes == 0)
    fp_remedy_note_limit (stage, dial, last.at + last.excess * (last.at - before.at) / gain, end);
}

/* To look and to walk is dear: of a whole way few values are asked, and between two of them only where one settles it or most
 * of it is done. */
static void
scan (FpRemedyStage *stage, const FpDial *dial, int way)
{
  const double end = way > 0 ? dial->max : dial->min, most = end - dial->start;
  const double little = fp_dial_is_length (dial) ? way * A_LITTLE : way * 4.0 * dial->first;
  const double asked[] = { within (dial, dial->start + little), on_grid (dial, dial->start + most / 4.0),
                           on_grid (dial, dial->start + most / 2.0), end };
  FpProbe before = { dial->start, stage->excess }, last = before, best = before, around[2] = { before, before };

  for (guint i = 0; i < G_N_ELEMENTS (asked) && !fp_remedy_is_over (stage->all) && !is_dearer (stage, dial, last.at); i++)
    {
      FpProbe next = { asked[i], 0.0 };

      if (way * (next.at - last.at) <= 0.0)
        continue;
      next.excess = excess_of (stage, dial, next.at);
      if (next.excess <= 0.0)
        {
          take (stage, dial, last.at, next.at, way);
          return;
        }
      if (i == 0 && next.excess > stage->excess && !goes_by_jumps (stage->measure))
        return;
      if (last.excess < stage->excess && last.at == best.at)
        around[1] = next;
      if (next.excess < best.excess)
        around[0] = last, best = around[1] = next;
      before = last;
      last = next;
    }
  if (best.excess < DIPS * stage->excess && around[1].at != best.at && may_dip (stage, around[0], best, around[1]))
    {
      const double good = least_between (stage, dial, around[0].at, around[1].at);

      if (!isnan (good))
        {
          take (stage, dial, way * (good - best.at) > 0.0 ? best.at : around[0].at, good, way);
          return;
        }
    }
  give_up (stage, dial, way, before, last, best);
}

/* Ever longer steps one way, until one settles it or there is no hope that way. */
static void
walk (FpRemedyStage *stage, const FpDial *dial, int way)
{
  const double end = way > 0 ? dial->max : dial->min;
  FpProbe before = { dial->start, stage->excess }, last = before, best = before;
  double step = dial->first;
  guint deaf = 0, still = 0;

  while (last.at != end && deaf < DEAF && still < STILL && !is_dearer (stage, dial, last.at) && !fp_remedy_is_over (stage->all))
    {
      FpProbe next = { way > 0 ? MIN (last.at + step, end) : MAX (last.at - step, end), 0.0 };
      double good;

      next.excess = excess_of (stage, dial, next.at);
      good = next.excess <= 0.0 ? next.at : NAN;
      if (isnan (good) && next.excess > last.excess && last.excess < stage->excess
          && may_dip (stage, before, last, next))
        good = least_between (stage, dial, before.at, next.at);
      if (!isnan (good))
        {
          take (stage, dial, way * (good - last.at) > 0.0 ? last.at : before.at, good, way);
          return;
        }
      deaf += next.excess >= stage->excess ? 1 : 0;
      still += next.excess == stage->excess && !goes_by_jumps (stage->measure) ? 1 : 0;
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
  for (int way = 1; way >= -1; way -= 2)
    if (is_dear (stage) && fabs ((way > 0 ? dial->max : dial->min) - dial->start) > FEW * dial->least)
      scan (stage, dial, way);
    else
      walk (stage, dial, way);
}

gboolean
fp_remedy_has_say (FpRemedyStage *stage, const FpDial *dial)
{
  const double little = fp_dial_is_length (dial) ? A_LITTLE : 4.0 * dial->first;
  const double probe[] = { within (dial, dial->start + little), within (dial, dial->start - little), dial->start + dial->first,
                           dial->start - dial->first, dial->max, dial->min };
  gboolean moves = goes_by_jumps (stage->measure);

  if (dial->param != NULL && (dial->param->type == FP_PARAM_CHOICE || dial->param->type == FP_PARAM_COUNT))
    return TRUE;
  for (guint i = 0; i < G_N_ELEMENTS (probe) && !g_cancellable_is_cancelled (stage->all->cancel); i++)
    {
      const gboolean near = i == 2 || i == 3;
      const double excess = i < 2 || (moves && !(near && is_dear (stage))) ? excess_of (stage, dial, within (dial, probe[i])) : stage->excess;

      if (excess < stage->excess - DUST)
        return TRUE;
      /* What a little does not touch at all, more does not make better. */
      moves = moves || excess != stage->excess;
    }
  return FALSE;
}
