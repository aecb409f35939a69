/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "measuring.h"

#include <math.h>
#include <string.h>

static const FpMeasure measures[] = {
#define FP_MEASURE(name, own_id, own_type, sight, own_label, own_tells, why) \
  { .id = own_id, .label = own_label, .tells = own_tells, .type = FP_MEASURE_##own_type, .needs_sight = sight, \
    .take = fp_take_##name, .absent = why },
#define FP_MEASURE_COUNTED(name, own_id, sight, own_one, own_many, own_label, own_tells, why) \
  { .id = own_id, .label = own_label, .tells = own_tells, .type = FP_MEASURE_COUNT, .needs_sight = sight, \
    .take = fp_take_##name, .one = own_one, .many = own_many, .absent = why },
#define FP_MEASURE_OF(name, own_id, own_unit, own_label, own_tells, why) \
  { .id = own_id, .label = own_label, .tells = own_tells, .type = FP_MEASURE_COUNT, .take = fp_take_##name, \
    .unit = own_unit, .absent = why },
#define FP_MEASURE_APART(name, own_id, own_type, own_label, own_tells, why) \
  { .id = own_id, .label = own_label, .tells = own_tells, .type = FP_MEASURE_##own_type, .take = fp_take_##name, \
    .absent = why, .apart = TRUE },
#define FP_MEASURE_PARAM(own_id, of_role, own_param, own_type, own_label, own_tells, why) \
  { .id = own_id, .label = own_label, .tells = own_tells, .type = FP_MEASURE_##own_type, .role = FP_ROLE_##of_role, \
    .param = own_param, .absent = why },
#include "measures.list.h"
#undef FP_MEASURE
#undef FP_MEASURE_PARAM
#undef FP_MEASURE_COUNTED
#undef FP_MEASURE_OF
#undef FP_MEASURE_APART
};

const FpMeasure *
fp_measures (guint *n)
{
  *n = G_N_ELEMENTS (measures);
  return measures;
}

const FpMeasure *
fp_measure_find (const char *id)
{
  for (guint i = 0; i < G_N_ELEMENTS (measures); i++)
    if (strcmp (measures[i].id, id) == 0)
      return &measures[i];
  return NULL;
}

static void
measured_clear (gpointer data)
{
  FpMeasured *measured = data;

  g_free (measured->detail);
  g_free (measured->text);
  fp_way_free (measured->way);
}

/* One value for each thing of that office that has the parameter. */
static void
take_param (const FpMeasure *measure, const FpMeasuring *of, GArray *out)
{
  for (int i = fp_measuring_next (of, measure->role, -1); i >= 0; i = fp_measuring_next (of, measure->role, i))
    {
      const FpPlaced *placed = fp_measuring_placed (of, i);
      const double value = fp_placed_param (placed, measure->param, NAN);

      if (!isnan (value))
        fp_measured_add_at (out, value, i, fp_placed_middle (placed, 0))->detail = fp_measuring_name (of, i);
    }
}

GArray *
fp_measure_take (const FpMeasure *measure, const FpMeasuring *of)
{
  GArray *out = g_array_new (FALSE, FALSE, sizeof (FpMeasured));

  g_array_set_clear_func (out, measured_clear);
  if (measure->param)
    take_param (measure, of, out);
  else if (!measure->needs_sight || of->sight)
    measure->take (of, out);
  return out;
}

const char *
fp_measure_unit_id (const FpMeasure *measure)
{
  switch (measure->type)
    {
    case FP_MEASURE_LENGTH:
      return "mm";
    case FP_MEASURE_AREA:
      return "mm2";
    case FP_MEASURE_SHARE:
      return "share";
    case FP_MEASURE_YES:
      return "yes";
    case FP_MEASURE_COUNT:
      return measure->unit ? measure->unit : "";
    }
  return "";
}
