/* SPDX-License-Identifier: GPL-3.0-or-later */
/* remedy-dial.c - what could be changed of a thing, how far, and what that costs */
#include "remedy-private.h"

#include <math.h>

/* What lies farther than this is another design, not a remedy (design judgement). */
#define MOVE_REACH   3000.0 /* mm                                            */
#define LENGTH_REACH 1500.0 /* mm, and half of what it is, or 150 mm if that is more; what is not there may come to be */
#define LENGTH_SURE  150.0
#define NOT_THERE    50.0  /* mm: less than this is as good as none         */
#define COUNT_REACH  2.0

/* To change what was measured in the church is dearer than to change what is proposed (design judgement). */
#define SURVEY_DEARER 3.0

gboolean
fp_dial_is_length (const FpDial *self)
{
  return self->param == NULL || self->param->type == FP_PARAM_LENGTH || self->param->type == FP_PARAM_LEVEL;
}

FpChange
fp_dial_change (const FpDial *self, double value)
{
  FpChange change = { .item = g_intern_string (fp_item_id (self->placed->item)), .param = self->param, .value = value };

  if (self->param == NULL)
    {
      change.value = 0.0;
      change.by = (FpVec3) { self->along.x * value, self->along.y * value, 0.0 };
    }
  return change;
}

double
fp_dial_cost (const FpDial *self, double value)
{
  const double times = self->param != NULL && self->placed->in_survey ? SURVEY_DEARER : 1.0;

  if (self->param != NULL && self->param->type == FP_PARAM_CHOICE)
    return times * self->unit;
  return times * fabs (value - self->start) / self->unit;
}

gboolean
fp_measure_is_of_altars_floor (const FpMeasure *measure)
{
  static const char *const ids[] = { "margin-below", "places-not-below", "area-not-below" };

  for (guint i = 0; i < G_N_ELEMENTS (ids); i++)
    if (g_str_equal (measure->id, ids[i]))
      return TRUE;
  return FALSE;
}

gboolean
fp_measure_is_over_heads (const FpMeasure *measure)
{
  return g_str_equal (measure->id, "row-c");
}

/* What leads out is made wider or narrower at the doors, and where it is narrowest. */
gboolean
fp_measure_is_of_ways_out (const FpMeasure *measure)
{
  return g_str_has_prefix (measure->id, "ways-out-");
}

gboolean
fp_measure_is_of_ways (const FpMeasure *measure)
{
  FpFocus focus;

  return measure->needs_sight && !fp_measure_focus (measure->id, &focus) && !fp_measure_is_over_heads (measure);
}

static gboolean
is_of_steps (const FpDial *dial, const char *param)
{
  return fp_item_kind (dial->placed->item)->role == FP_ROLE_FOOTPACE && g_str_equal (dial->param->id, param);
}

/* What is passed through may be twice as wide and is no other design. */
static gboolean
is_gate (const FpDial *dial)
{
  return g_str_equal (dial->param->id, "gate");
}

/* One finding is not settled by a step that another forbids; but what is outside of that already may stay there. */
static void
limit_riser (const FpRemedyStage *stage, FpDial *dial)
{
  const double min = dial->min, max = dial->max;

  if (!is_of_steps (dial, "riser"))
    return;
  dial->min = MIN (dial->start, MAX (min, stage->all->risers.low));
  dial->max = MAX (dial->start, MIN (max, stage->all->risers.high));
  dial->min_by_rules = dial->min > min;
  dial->max_by_rules = dial->max < max;
}

static void
limit_reach (const FpRemedyStage *stage, FpDial *dial)
{
  double reach = INFINITY;

  /* As many steps as it takes: the rows that rise behind are not fewer for it. */
  if (fp_measure_is_of_altars_floor (stage->measure) && is_of_steps (dial, "count"))
    return;
  if (dial->param->type == FP_PARAM_LENGTH)
    reach = dial->start < NOT_THERE ? LENGTH_REACH : MIN (LENGTH_REACH, MAX (LENGTH_SURE, floor (fabs (dial->start) / 2.0)));
  else if (dial->param->type == FP_PARAM_COUNT)
    reach = COUNT_REACH;
  dial->min = MAX (dial->min, dial->start - reach);
  dial->max = MIN (dial->max, dial->start + (is_gate (dial) ? MIN (2.0 * reach, LENGTH_REACH) : reach));
}

FpDial
fp_dial_of_param (const FpRemedyStage *stage, const FpPlaced *placed, const FpParam *param, double value)
{
  FpDial dial = { .placed = placed, .param = param, .start = value, .min = param->min, .max = param->max };

  switch (param->type)
    {
    case FP_PARAM_LENGTH:
    case FP_PARAM_LEVEL:
      dial.first = 10.0, dial.least = 1.0, dial.unit = FP_DIAL_LENGTH;
      break;
    case FP_PARAM_ANGLE:
      dial.first = dial.least = 1.0, dial.unit = 15.0;
      break;
    case FP_PARAM_COUNT:
      dial.first = dial.least = 1.0, dial.unit = 0.5;
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
  limit_reach (stage, &dial);
  limit_riser (stage, &dial);
  return dial;
}

/* To move a thing is more trouble than to make it a little larger. */
FpDial
fp_dial_of_move (const FpPlaced *placed, FpVec3 along)
{
  return (FpDial) { .placed = placed, .along = along, .min = -MOVE_REACH, .max = MOVE_REACH, .first = 10.0, .least = 1.0,
                    .unit = 50.0 };
}
