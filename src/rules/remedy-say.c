/* SPDX-License-Identifier: GPL-3.0-or-later */
/* remedy-say.c - what could be changed of things, and which of it has a say in what is measured
 *
 * Most of a church has none: that is asked before anything is turned, of
 * several changes side by side.
 */
#include "remedy-private.h"

#include "footpace/workers.h"

#define AT_ONCE 16

/* --- one thing --------------------------------------------------------------- */

gboolean
fp_remedy_is_part_of_the_building (const FpPlaced *placed)
{
  return (fp_item_kind (placed->item)->flags & FP_KIND_SURVEY) != 0;
}

gboolean
fp_remedy_is_bought_and_there (const FpPlaced *placed)
{
  static const FpRole built[] = { FP_ROLE_FOOTPACE, FP_ROLE_RAIL, FP_ROLE_SCREEN, FP_ROLE_RAMP, FP_ROLE_HANDRAIL };

  for (guint i = 0; i < G_N_ELEMENTS (built); i++)
    if (fp_item_kind (placed->item)->role == built[i])
      return FALSE;
  return placed->standing == FP_STANDING_EXISTING && !fp_remedy_is_part_of_the_building (placed);
}

/* Rows that are straight have no radius: to bend them is another design. */
static gboolean
would_bend (const FpParam *param, double value)
{
  return g_str_equal (param->id, "radius") && value <= 0.0;
}

/* As the first change has it; two of the same would be one that goes farther. */
static gboolean
is_changed_already (const FpRemedyStage *stage, const FpDial *dial)
{
  const FpChange change = fp_dial_change (dial, 1.0), *made = &stage->made.change[0];

  return stage->made.n_changes > 0 && made->item == change.item && made->param == change.param
         && (made->by.x == 0.0) == (change.by.x == 0.0);
}

/* --- a list of dials ------------------------------------------------------------ */

static void
dial_clear (gpointer data)
{
  g_clear_pointer (&((FpDial *) data)->known, g_array_unref);
}

GArray *
fp_remedy_dials_new (void)
{
  GArray *self = g_array_new (FALSE, FALSE, sizeof (FpDial));

  g_array_set_clear_func (self, dial_clear);
  return self;
}

static void
add (const FpRemedyStage *stage, FpDial dial, GArray *out)
{
  if (is_changed_already (stage, &dial))
    return;
  dial.known = g_array_new (FALSE, FALSE, sizeof (FpProbe));
  g_array_append_val (out, dial);
}

void
fp_remedy_add_param (const FpRemedyStage *stage, const FpPlaced *placed, guint param, GArray *out)
{
  const FpParam *p = &fp_item_kind (placed->item)->params[param];

  if (would_bend (p, fp_item_params (placed->item)[param]))
    return;
  add (stage, fp_dial_of_param (stage, placed, p, fp_item_params (placed->item)[param]), out);
}

void
fp_remedy_add_sizes (const FpRemedyStage *stage, const FpPlaced *placed, GArray *out)
{
  for (guint i = 0; i < fp_kind_n_params (fp_item_kind (placed->item)); i++)
    fp_remedy_add_param (stage, placed, i, out);
}

void
fp_remedy_add_dials (const FpRemedyStage *stage, const FpPlaced *placed, GArray *out)
{
  const int index = (int) (placed - fp_scene_placed (stage->scene, NULL));

  /* What was measured in the church is not changed so that something else may be. */
  if (placed->ghost || (stage->made.n_changes > 0 && fp_remedy_is_part_of_the_building (placed)))
    return;
  if (stage->touches != NULL && !stage->touches[index])
    return;
  /* Between two things nothing is settled by what only makes the measure look elsewhere (a flame that is raised over
   * what can burn), or by a word: they are moved apart. */
  if (!stage->measure->apart && !fp_remedy_is_bought_and_there (placed))
    fp_remedy_add_sizes (stage, placed, out);
  if (fp_remedy_is_part_of_the_building (placed))
    return;
  add (stage, fp_dial_of_move (placed, (FpVec3) { 1.0, 0.0, 0.0 }), out);
  add (stage, fp_dial_of_move (placed, (FpVec3) { 0.0, 1.0, 0.0 }), out);
}

/* --- asked and turned --------------------------------------------------------------- */

typedef struct
{
  FpRemedyStage *stage;
  const FpDial  *dial;
  gboolean       has[AT_ONCE];
} Asking;

static void
ask (guint part, gpointer data)
{
  Asking *self = data;

  self->has[part] = fp_remedy_has_say (self->stage, &self->dial[part]);
}

/* How many are asked at once does not hang on the computer: so it tries as much on every one. */
void
fp_remedy_turn_all (FpRemedyStage *stage, const GArray *dials, gboolean asked)
{
  for (guint first = 0; first < dials->len && !fp_remedy_is_over (stage->all); first += AT_ONCE)
    {
      Asking asking = { .stage = stage, .dial = &g_array_index (dials, FpDial, first) };
      const guint n = MIN (AT_ONCE, dials->len - first);

      if (asked)
        fp_workers_do (n, ask, &asking);
      for (guint i = 0; i < n && !fp_remedy_is_over (stage->all); i++)
        if (!asked || asking.has[i])
          fp_remedy_turn (stage, &asking.dial[i]);
    }
}

/* --- what can have a say -------------------------------------------------------------- */

#define BESIDE 100.0 /* mm: what bounds a way is no farther from where it is narrowest */

/* It and what it stands on, by which it is raised and moved. */
static void
touch (gboolean *touches, const FpPlaced *all, int thing)
{
  for (int i = thing; i >= 0; i = all[i].support)
    touches[i] = TRUE;
}

/* What is looked at, from where, and what is in the way now: nothing else can make it better seen. */
static gboolean *
seen_by (const FpMeasuring *of, FpFocus focus)
{
  guint n, n_places;
  const FpPlaced *all = fp_scene_placed (of->scene, &n);
  const FpPersonPlace *place = fp_people_places (of->people, &n_places);
  const gboolean *hides = fp_sight_hiders (of->sight, fp_moment_of_focus (focus), focus);
  gboolean *touches;

  if (hides == NULL)
    return NULL;
  touches = g_new0 (gboolean, n + 1);
  touch (touches, all, fp_sight_target_of (of->sight, focus));
  for (guint i = 0; i < n; i++)
    if (hides[i])
      touch (touches, all, (int) i);
  for (guint i = 0; i < n_places; i++)
    if (i == 0 || place[i].owner != place[i - 1].owner)
      touch (touches, all, (int) place[i].owner);
  return touches;
}

static gboolean
is_beside (const FpBox *plan, FpPoint p)
{
  return p.x >= plan->x0 - BESIDE && p.x <= plan->x1 + BESIDE && p.y >= plan->y0 - BESIDE && p.y <= plan->y1 + BESIDE;
}

static gboolean
is_between (const FpBox *plan, const FpWay *way)
{
  return way != NULL && way->narrows && (is_beside (plan, way->narrow[0]) || is_beside (plan, way->narrow[1]));
}

/* Between what a way is narrowest, and of ways out the doors: nothing else makes it wider.  @way: (nullable). */
static gboolean *
bounded_by (const FpScene *scene, const FpWay *way, gboolean doors)
{
  guint n;
  const FpPlaced *all = fp_scene_placed (scene, &n);
  gboolean *touches = g_new0 (gboolean, n + 1);

  for (guint i = 0; i < n; i++)
    if (!all[i].ghost && ((doors && fp_item_kind (all[i].item)->role == FP_ROLE_OPENING) || is_between (&all[i].plan, way)))
      touch (touches, all, (int) i);
  return touches;
}

gboolean *
fp_remedy_touching (const FpFindings *findings, const FpFinding *finding, const FpMeasure *measure)
{
  const FpMeasuring *of = fp_findings_measuring (findings);
  FpFocus focus;

  if (of->sight != NULL && fp_measure_focus (measure->id, &focus))
    return seen_by (of, focus);
  if (fp_measure_is_of_ways_out (measure))
    return bounded_by (of->scene, finding->way, TRUE);
  if (fp_measure_is_of_ways (measure) && finding->way != NULL && finding->way->narrows)
    return bounded_by (of->scene, finding->way, FALSE);
  return NULL;
}
