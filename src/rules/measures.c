/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "measuring.h"

#include <string.h>

static const FpMeasure measures[] = {
#define FP_MEASURE(name, measure_id, measure_type, sight, measure_label, measure_tells) \
  { measure_id, measure_label, measure_tells, FP_MEASURE_##measure_type, sight, fp_take_##name, NULL },
#define FP_MEASURE_OF(name, measure_id, measure_type, measure_unit, measure_label, measure_tells) \
  { measure_id, measure_label, measure_tells, FP_MEASURE_##measure_type, FALSE, fp_take_##name, measure_unit },
#include "measures.list.h"
#undef FP_MEASURE
#undef FP_MEASURE_OF
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
}

GArray *
fp_measure_take (const FpMeasure *measure, const FpMeasuring *of)
{
  GArray *out = g_array_new (FALSE, FALSE, sizeof (FpMeasured));

  g_array_set_clear_func (out, measured_clear);
  if (!measure->needs_sight || of->sight)
    measure->take (of, out);
  return out;
}
