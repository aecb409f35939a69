/* SPDX-License-Identifier: GPL-3.0-or-later */
/* remedy-further.c - more of the same change, where that settles other findings too */
#include "remedy-private.h"

#include <math.h>

#define LITTLE_MORE 1.0 /* of cost: 100 mm of a length (design judgement) */

typedef struct
{
  FpRemedySearch *all;
  const FpRemedy *of;
  FpDial          dial;
  int             way;
  FpWeight        least;
} Further;

static gboolean
is_settled (const FpRemedy *remedy, guint finding)
{
  for (guint i = 0; i < remedy->n_settles; i++)
    if (remedy->settles[i] == finding)
      return TRUE;
  return FALSE;
}

/* What people see takes long, and hangs on everything; a way hangs on a gate. */
static gboolean
is_asked (const Further *self, const FpFinding *finding, const FpMeasure *measure)
{
  if (finding->found != FP_FOUND_SHORT || finding->rule->weight > self->least || finding == self->all->finding || measure->apart)
    return FALSE;
  return !measure->needs_sight || (fp_measure_is_of_ways (measure) && g_str_equal (self->dial.param->id, "gate"));
}

/* Where the other finding is settled, farther the same way; NAN. */
static double
value_for (const Further *self, guint i)
{
  guint n;
  const FpFinding *finding = &fp_findings_get (self->all->base, &n)[i];
  FpRemedyStage stage = { .all = self->all, .rule = finding->rule, .measure = fp_measure_find (finding->rule->measure),
                          .whole = self->all->whole, .scene = (FpScene *) fp_findings_scene (self->all->base) };
  double value;

  if (stage.measure == NULL || !is_asked (self, finding, stage.measure) || is_settled (self->of, i))
    return NAN;
  stage.excess = fp_rule_excess (finding->rule, finding->value);
  g_array_set_size (self->dial.known, 0);
  value = fp_remedy_beyond (&stage, &self->dial, self->of->change[0].value, self->way);
  return value;
}

static int
by_value (gconstpointer a, gconstpointer b)
{
  const double p = *(const double *) a, q = *(const double *) b;

  return (p > q) - (p < q);
}

/* All of them, the nearest first. */
static GArray *
values_for_all (const Further *self)
{
  GArray *values = g_array_new (FALSE, FALSE, sizeof (double));
  guint n;

  fp_findings_get (self->all->base, &n);
  for (guint i = 0; i < n && !fp_remedy_is_over (self->all); i++)
    {
      const double value = self->way * value_for (self, i);

      if (!isnan (value))
        g_array_append_val (values, value);
    }
  g_array_sort (values, by_value);
  return values;
}

/* The farthest that settles more than any nearer one, and makes nothing worse. */
static gboolean
find (const Further *self, FpRemedy *out)
{
  g_autoptr (GArray) values = values_for_all (self);
  FpRemedyStage stage = { .all = self->all, .rule = self->all->finding->rule, .measure = fp_measure_find (self->all->finding->rule->measure),
                          .whole = self->all->whole, .scene = (FpScene *) fp_findings_scene (self->all->base) };
  guint settles = self->of->n_settles;

  for (guint i = 0; i < values->len && !fp_remedy_is_over (self->all); i++)
    {
      const double value = self->way * g_array_index (values, double, i);
      const FpChange change = fp_dial_change (&self->dial, value);

      self->all->clean.cost = INFINITY;
      if ((i > 0 && value == self->way * g_array_index (values, double, i - 1))
          || !fp_remedy_judge (&stage, &change, fp_dial_cost (&self->dial, value)) || self->all->clean.remedy.n_settles <= settles)
        continue;
      *out = self->all->clean.remedy;
      settles = out->n_settles;
    }
  return settles > self->of->n_settles;
}

static gboolean
is_of_one_size (const FpRemedy *remedy)
{
  return remedy->n_changes == 1 && remedy->change[0].param != NULL && remedy->change[0].param->type != FP_PARAM_CHOICE;
}

gboolean
fp_remedy_further (const FpFindings *findings, const FpFinding *finding, const FpRemedy *of, FpWeight least, GCancellable *cancel,
                   FpRemedy *out)
{
  const FpChange *change = &of->change[0];
  const int i = fp_scene_find (fp_findings_scene (findings), change->item);
  FpRemedySearch all;
  Further self = { .all = &all, .of = of, .least = least };
  gboolean found = FALSE;

  if (!is_of_one_size (of) || i < 0)
    return FALSE;
  fp_remedy_search_init (&all, findings, finding, cancel);
  {
    const FpRemedyStage stage = { .all = &all, .rule = finding->rule, .measure = fp_measure_find (finding->rule->measure) };
    const FpPlaced *placed = &fp_scene_placed (fp_findings_scene (findings), NULL)[i];

    self.dial = fp_dial_of_param (&stage, placed, change->param, fp_item_param (placed->item, change->param->id));
  }
  self.dial.known = g_array_new (FALSE, FALSE, sizeof (FpProbe));
  self.way = change->value > self.dial.start ? 1 : -1;
  found = find (&self, out) && !g_cancellable_is_cancelled (cancel);
  g_array_unref (self.dial.known);
  fp_remedy_search_clear (&all);
  return found;
}

gboolean
fp_remedy_is_little_more (const FpRemedy *further, const FpRemedy *than)
{
  const FpParamType type = further->change[0].param->type;
  const double more = fabs (further->change[0].value - than->change[0].value);

  return (type == FP_PARAM_LENGTH || type == FP_PARAM_LEVEL) && more <= LITTLE_MORE * FP_DIAL_LENGTH;
}
