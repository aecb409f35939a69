/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "footpace/remedy.h"

#include "footpace/setting-out.h"

#include <math.h>

/* What lies farther than this is another design, not a remedy (design judgement). */
#define MOVE_REACH   3000.0 /* mm                                            */
#define LENGTH_REACH 1500.0 /* mm, and half of what it is, or 150 mm if that is more */
#define LENGTH_SURE  150.0
#define COUNT_REACH  2.0
#define DEAF         4      /* probes without an answer after which a value is taken to have no say */
#define HALVINGS     24

/* What is tried, and of what the tries are measured. */
typedef struct
{
  const FpScene   *scene;
  const FpRule    *rule;
  const FpMeasure *measure;
  GCancellable    *cancel;
  FpRisers         risers;   /* that steps to the altar may have             */
  double           excess;   /* as things stand                              */
  FpRemedy         best;
  double           cost;     /* of the best; INFINITY: none yet              */
} Search;

/* One thing that could be changed, in one way. */
typedef struct
{
  const FpPlaced *placed;
  const FpParam  *param;     /* NULL: a move                                 */
  FpVec3          along;     /* of a move: its axis                          */
  double          start, min, max;
  double          first, least; /* first step, and the resolution            */
  double          unit;      /* of cost: what a person would call a small change */
} Dial;

/* --- measuring a try ------------------------------------------------------ */

static FpRemedy
remedy_of (const Dial *dial, double value)
{
  FpRemedy r = { .item = g_intern_string (fp_item_id (dial->placed->item)), .param = dial->param, .value = value };

  if (dial->param == NULL)
    {
      r.value = 0.0;
      r.by = (FpVec3) { dial->along.x * value, dial->along.y * value, 0.0 };
    }
  return r;
}

FpProject *
fp_remedy_make (const FpRemedy *remedy, const FpScene *scene, GError **error)
{
  g_autoptr (FpProject) first = NULL;
  g_autoptr (FpScene) then = NULL;

  if (remedy->param == NULL)
    return fp_set_out_move (scene, remedy->item, remedy->by, error);
  first = fp_set_out_param (scene, remedy->item, remedy->param->id, remedy->value, error);
  if (first == NULL || remedy->also == NULL)
    return g_steal_pointer (&first);
  then = fp_scene_new (first, fp_scene_alternative (scene));
  return fp_set_out_param (then, remedy->item, remedy->also->id, remedy->also_value, error);
}

/* INFINITY where nothing is left to be measured: to take a gate away does not make it wide enough. */
static double
excess_in (const Search *s, const FpScene *scene)
{
  g_autoptr (FpPeople) people = fp_people_new (scene);
  FpMeasuring of = { scene, people, fp_levels (people), NULL };
  g_autoptr (GArray) measured = fp_measure_take (s->measure, &of);
  double worst = -INFINITY;
  gboolean any = FALSE;

  for (guint i = 0; i < measured->len; i++)
    {
      double value = g_array_index (measured, FpMeasured, i).value;

      if (isnan (value))
        continue;
      any = TRUE;
      worst = MAX (worst, fp_rule_excess (s->rule, value));
    }
  return any ? worst : INFINITY;
}

static double
excess_of (const Search *s, const Dial *dial, double value)
{
  FpRemedy remedy = remedy_of (dial, value);
  g_autoptr (FpProject) project = fp_remedy_make (&remedy, s->scene, NULL);
  g_autoptr (FpScene) scene = NULL;

  if (project == NULL)
    return INFINITY;
  scene = fp_scene_new (project, fp_scene_alternative (s->scene));
  return excess_in (s, scene);
}

static gboolean
settles (const Search *s, const Dial *dial, double value)
{
  return excess_of (s, dial, value) <= 0.0;
}

/* --- searching along one dial --------------------------------------------- */

static void
offer (Search *s, const Dial *dial, double value)
{
  double cost = fabs (value - dial->start) / dial->unit;

  if (cost >= s->cost)
    return;
  s->cost = cost;
  s->best = remedy_of (dial, value);
}

/* Between what does not settle it and what does, down to the resolution; the end that does. */
static double
narrow (const Search *s, const Dial *dial, double bad, double good)
{
  while (fabs (good - bad) > dial->least * 1.001)
    {
      double middle = bad + round ((good - bad) / 2.0 / dial->least) * dial->least;

      if (middle == bad || middle == good)
        break;
      if (settles (s, dial, middle))
        good = middle;
      else
        bad = middle;
    }
  return good;
}

static gboolean
is_a_length (const Dial *dial)
{
  return dial->param == NULL || dial->param->type == FP_PARAM_LENGTH || dial->param->type == FP_PARAM_LEVEL;
}

/* A figure that a person would write. The narrowed one may lie a little beyond the one that just settles it, so the
 * nearest on either side is tried: the one nearer to how things stand first. */
static double
even (const Search *s, const Dial *dial, double value, int way)
{
  gboolean metric = fp_project_brief (fp_scene_project (s->scene))->units == FP_UNITS_METRIC;
  double grain = metric ? 5.0 : 25.4 / 4.0;
  double origin = dial->param != NULL ? 0.0 : dial->start;
  double before = origin + (way > 0 ? floor ((value - origin) / grain) : ceil ((value - origin) / grain)) * grain;

  for (int i = 0; is_a_length (dial) && i < 2; i++)
    {
      double even_value = before + i * way * grain;

      if (way * (even_value - dial->start) > 0.0 && even_value >= dial->min && even_value <= dial->max
          && settles (s, dial, even_value))
        return even_value;
    }
  return value;
}

static double
on_grid (const Dial *dial, double value)
{
  return dial->start + round ((value - dial->start) / dial->least) * dial->least;
}

/* A limit of two sides, or one figure, is easily stepped over: the excess falls and rises again between @from and
 * @to.  Where it is least; NAN where even that does not settle it. */
static double
least_between (const Search *s, const Dial *dial, double from, double to)
{
  for (guint i = 0; i < HALVINGS && fabs (to - from) > 2.0 * dial->least; i++)
    {
      double a = on_grid (dial, from + (to - from) / 3.0), b = on_grid (dial, to - (to - from) / 3.0);
      double at_a = excess_of (s, dial, a), at_b = excess_of (s, dial, b);

      if (at_a <= 0.0)
        return a;
      if (at_b <= 0.0)
        return b;
      *(at_a < at_b ? &to : &from) = at_a < at_b ? b : a;
    }
  for (double v = MIN (from, to); v <= MAX (from, to); v += dial->least)
    if (settles (s, dial, v))
      return v;
  return NAN;
}

static void
take (Search *s, const Dial *dial, double bad, double good, int way)
{
  offer (s, dial, even (s, dial, narrow (s, dial, bad, good), way));
}

/* Ever longer steps one way, until one settles it or there is no hope that way. */
static void
walk (Search *s, const Dial *dial, int way)
{
  double end = way > 0 ? dial->max : dial->min, step = dial->first;
  double before = dial->start, last = dial->start, last_excess = s->excess;
  guint deaf = 0;

  while (last != end && deaf < DEAF && fabs (last - dial->start) / dial->unit < s->cost
         && !g_cancellable_is_cancelled (s->cancel))
    {
      double value = way > 0 ? MIN (last + step, end) : MAX (last - step, end);
      double excess = excess_of (s, dial, value), good = excess <= 0.0 ? value : NAN;

      if (isnan (good) && excess > last_excess && last_excess < s->excess)
        good = least_between (s, dial, before, value);
      if (!isnan (good))
        {
          take (s, dial, way * (good - last) > 0.0 ? last : before, good, way);
          return;
        }
      deaf += excess >= s->excess ? 1 : 0;
      before = last;
      last = value;
      last_excess = excess;
      step *= 2.0;
    }
}

static void
choose (Search *s, const Dial *dial)
{
  for (double c = 0.0; c <= dial->max; c += 1.0)
    if (c != dial->start && !g_cancellable_is_cancelled (s->cancel) && settles (s, dial, c))
      {
        s->cost = MIN (s->cost, dial->unit);
        s->best = remedy_of (dial, c);
        return;
      }
}

static void
turn (Search *s, const Dial *dial)
{
  if (dial->param != NULL && dial->param->type == FP_PARAM_CHOICE)
    {
      if (s->cost > dial->unit)
        choose (s, dial);
      return;
    }
  walk (s, dial, 1);
  walk (s, dial, -1);
}

/* --- the dials of one thing ----------------------------------------------- */

/* How far the people are below the altar's own floor, which its steps decide. */
static gboolean
is_of_the_altars_floor (const FpMeasure *measure)
{
  static const char *const ids[] = { "margin-below", "places-not-below", "area-not-below" };

  for (guint i = 0; i < G_N_ELEMENTS (ids); i++)
    if (g_str_equal (measure->id, ids[i]))
      return TRUE;
  return FALSE;
}

static gboolean
is_of_steps (const Dial *dial, const char *param)
{
  return fp_item_kind (dial->placed->item)->role == FP_ROLE_FOOTPACE && g_str_equal (dial->param->id, param);
}

/* One finding is not settled by a step that another forbids; but what is outside of that already may stay there. */
static void
limit_riser (const Search *s, Dial *dial)
{
  if (!is_of_steps (dial, "riser"))
    return;
  dial->min = MIN (dial->start, MAX (dial->min, s->risers.low));
  dial->max = MAX (dial->start, MIN (dial->max, s->risers.high));
}

static void
limit_reach (const Search *s, Dial *dial)
{
  double reach = INFINITY;

  /* As many steps as it takes: the rows that rise behind are not fewer for it. */
  if (is_of_the_altars_floor (s->measure) && is_of_steps (dial, "count"))
    return;
  if (dial->param->type == FP_PARAM_LENGTH)
    reach = MIN (LENGTH_REACH, MAX (LENGTH_SURE, fabs (dial->start) / 2.0));
  else if (dial->param->type == FP_PARAM_COUNT)
    reach = COUNT_REACH;
  dial->min = MAX (dial->min, dial->start - reach);
  dial->max = MIN (dial->max, dial->start + reach);
}

static Dial
dial_of_param (const Search *s, const FpPlaced *placed, const FpParam *param, double value)
{
  Dial dial = { .placed = placed, .param = param, .start = value, .min = param->min, .max = param->max };

  switch (param->type)
    {
    case FP_PARAM_LENGTH:
    case FP_PARAM_LEVEL:
      dial.first = 10.0, dial.least = 1.0, dial.unit = 100.0;
      break;
    case FP_PARAM_ANGLE:
      dial.first = dial.least = 1.0, dial.unit = 15.0;
      break;
    case FP_PARAM_COUNT:
      dial.first = dial.least = dial.unit = 1.0;
      break;
    case FP_PARAM_SHARE:
      dial.first = dial.least = 0.001, dial.unit = 0.02;
      break;
    case FP_PARAM_CHOICE:
      dial.unit = 2.0;
      for (dial.max = -1.0; param->choices[(int) dial.max + 1].id != NULL;)
        dial.max += 1.0;
      break;
    }
  limit_reach (s, &dial);
  limit_riser (s, &dial);
  return dial;
}

/* To move a thing is more trouble than to make it a little larger. */
static Dial
dial_of_move (const FpPlaced *placed, FpVec3 along)
{
  return (Dial) { .placed = placed, .along = along, .min = -MOVE_REACH, .max = MOVE_REACH, .first = 10.0, .least = 1.0,
                  .unit = 50.0 };
}

static gboolean
is_part_of_the_building (const FpPlaced *placed)
{
  return (fp_item_kind (placed->item)->flags & FP_KIND_SURVEY) != 0;
}

static void
try_thing (Search *s, const FpPlaced *placed)
{
  const double *value = fp_item_params (placed->item);
  guint i = 0;

  if (placed->ghost)
    return;
  /* Between two things nothing is settled by what only makes the measure look elsewhere (a flame that is raised over
   * what can burn), or by a word: they are moved apart. */
  for (const FpParam *p = fp_item_kind (placed->item)->params;
       p != NULL && p->id != NULL && !s->measure->apart; p++, i++)
    {
      Dial dial = dial_of_param (s, placed, p, value[i]);

      turn (s, &dial);
    }
  if (is_part_of_the_building (placed))
    return;
  for (guint axis = 0; axis < 2; axis++)
    {
      Dial dial = dial_of_move (placed, axis == 0 ? (FpVec3) { 1.0, 0.0, 0.0 } : (FpVec3) { 0.0, 1.0, 0.0 });

      turn (s, &dial);
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

/* What it stands on and what stands on it, however many are between. */
static void
try_neighbours (Search *s, const FpPlaced *all, guint n, int owner)
{
  for (guint i = 0; i < n; i++)
    if ((int) i != owner && (stands_on (all, (int) i, owner) || stands_on (all, owner, (int) i)))
      try_thing (s, &all[i]);
}

/* What the altar stands on. */
static void
try_supports (Search *s, const FpPlaced *all)
{
  const int altar = fp_scene_celebrated_altar (s->scene);

  for (int i = altar >= 0 ? all[altar].support : -1; i >= 0; i = all[i].support)
    try_thing (s, &all[i]);
}

static void
try_furnishings (Search *s, const FpPlaced *all, guint n)
{
  for (guint i = 0; i < n; i++)
    if (!is_part_of_the_building (&all[i]))
      try_thing (s, &all[i]);
}

gboolean
fp_remedy_find (const FpFindings *findings, const FpFinding *finding, GCancellable *cancel, FpRemedy *out)
{
  Search s = { .scene = fp_findings_scene (findings), .rule = finding->rule, .cancel = cancel, .cost = INFINITY };
  guint n;
  const FpPlaced *all = fp_scene_placed (s.scene, &n);

  s.measure = fp_measure_find (finding->rule->measure);
  if (s.measure == NULL || s.measure->needs_sight || finding->found != FP_FOUND_SHORT)
    return FALSE;
  s.risers = fp_findings_risers (findings);
  s.excess = excess_in (&s, s.scene);
  if (finding->owner >= 0)
    try_thing (&s, &all[finding->owner]);
  if (isinf (s.cost) && finding->owner >= 0)
    try_neighbours (&s, all, n, finding->owner);
  if (isinf (s.cost) && finding->owner < 0 && is_of_the_altars_floor (s.measure))
    try_supports (&s, all);
  if (isinf (s.cost))
    try_furnishings (&s, all, n);
  if (isinf (s.cost) || g_cancellable_is_cancelled (cancel))
    return FALSE;
  *out = s.best;
  return TRUE;
}
