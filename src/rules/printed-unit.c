/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "printed-unit.h"

#include <math.h>
#include <string.h>

#define MM2_PER_M2 1e6
#define DECIMALS_MORE 4 /* than usual; a value nearer to its limit than that is not told from it */

static const FpPrintedUnit printed[] = {
  { "mm", "mm", FP_MEASURE_LENGTH, 1, FALSE, NULL },
  { "cm", "cm", FP_MEASURE_LENGTH, 10, FALSE, NULL },
  { "m", "m", FP_MEASURE_LENGTH, 1000, FALSE, NULL },
  { "in", "in", FP_MEASURE_LENGTH, FP_MM_PER_INCH, TRUE, NULL },
  { "ft", "ft", FP_MEASURE_LENGTH, FP_MM_PER_FOOT, TRUE, NULL },
  { "ft-wuerttemberg", "Württemberg feet", FP_MEASURE_LENGTH, 286.49, TRUE, NULL },
  { "ft-baden", "Baden feet", FP_MEASURE_LENGTH, 300, FALSE, NULL },
  /* Assumed, from memory: the Roman cubit makes Borromeo's altar heights come right. */
  { "cubit", "cubits", FP_MEASURE_LENGTH, 444, TRUE, NULL },
  { "m2", "m²", FP_MEASURE_AREA, MM2_PER_M2, FALSE, NULL },
  { "in2", "sq in", FP_MEASURE_AREA, FP_MM_PER_INCH * FP_MM_PER_INCH, TRUE, NULL },
  { "ft2", "sq ft", FP_MEASURE_AREA, FP_MM_PER_FOOT * FP_MM_PER_FOOT, TRUE, NULL },
  { "%", "%", FP_MEASURE_SHARE, 0.01, FALSE, NULL },
  { "", "", FP_MEASURE_SHARE, 1, FALSE, NULL },
  { "", "", FP_MEASURE_COUNT, 1, FALSE, NULL },
  { "", "", FP_MEASURE_YES, 1, FALSE, NULL },
  { "kN/m2", "kN/m²", FP_MEASURE_COUNT, 1, FALSE, "kN/m2" },
  { "psf", "lb/sq ft", FP_MEASURE_COUNT, 0.04788026, TRUE, "kN/m2" },
};

const FpPrintedUnit *
fp_printed_unit_find (const char *id)
{
  for (guint i = 0; i < G_N_ELEMENTS (printed); i++)
    if (strcmp (printed[i].id, id) == 0)
      return &printed[i];
  return NULL;
}

gboolean
fp_printed_unit_fits (const FpPrintedUnit *unit, const FpMeasure *measure)
{
  /* A bare number is of whatever type has no unit of its own. */
  if (*unit->id == '\0')
    return measure->type != FP_MEASURE_LENGTH && measure->type != FP_MEASURE_AREA && !measure->unit;
  return unit->type == measure->type && g_strcmp0 (unit->counts, measure->unit) == 0;
}

/* At most @decimals decimals, without zeros at the end. */
static char *
number (double value, int decimals)
{
  double tens = pow (10, decimals), rounded = round (value * tens) / tens;

  return fp_number_format (isfinite (rounded) ? rounded : 0);
}

/* All of these show @more decimals than is usual. */

/* Whole millimetres, but not for what is of the order of a millimetre.  Sixteenths of an inch are not divided further:
 * the millimetres are told beside them. */
static char *
length_shown (double mm, FpUnits units, int more)
{
  int decimals = MAX (fabs (mm) >= 20 ? 0 : 1, more);
  g_autofree char *digits = number (mm, decimals), *metric = g_strconcat (digits, " mm", NULL), *imperial = NULL;

  if (units == FP_UNITS_METRIC)
    return decimals > 1 ? g_steal_pointer (&metric) : fp_length_format_unit (g_ascii_strtod (digits, NULL), units);
  imperial = fp_length_format_unit (mm, units);
  return more > 0 ? g_strdup_printf ("%s (%s)", imperial, metric) : g_steal_pointer (&imperial);
}

static char *
area_shown (double mm2, FpUnits units, int more)
{
  g_autofree char *text = NULL;

  if (units == FP_UNITS_METRIC)
    {
      text = number (mm2 / MM2_PER_M2, 2 + more);
      return g_strconcat (text, " m²", NULL);
    }
  text = number (mm2 / (FP_MM_PER_FOOT * FP_MM_PER_FOOT), 1 + more);
  return g_strconcat (text, " sq ft", NULL);
}

static char *
count_shown (const FpMeasure *measure, const char *unit, double value, int more)
{
  const FpPrintedUnit *in = fp_printed_unit_find (unit);
  g_autofree char *text = NULL, *si = NULL;

  if (!measure->unit)
    return number (value, 2 + more);
  si = number (value, 1 + more);
  if (!in || strcmp (in->id, "kN/m2") == 0 || !fp_printed_unit_fits (in, measure))
    return g_strconcat (si, " kN/m²", NULL);
  text = number (value / in->size, more);
  return g_strdup_printf ("%s %s (%s kN/m²)", text, in->label, si);
}

static char *
shown (const FpMeasure *measure, const char *unit, double value, FpUnits units, int more)
{
  g_autofree char *text = NULL;

  switch (measure->type)
    {
    case FP_MEASURE_LENGTH:
      return length_shown (value, units, more);
    case FP_MEASURE_AREA:
      return area_shown (value, units, more);
    case FP_MEASURE_SHARE:
      text = number (value * 100, (fabs (value) < 0.1 ? 1 : 0) + more);
      return g_strconcat (text, " %", NULL);
    case FP_MEASURE_YES:
      return g_strdup (value != 0 ? "yes" : "no");
    case FP_MEASURE_COUNT:
      return count_shown (measure, unit, value, more);
    }
  return g_strdup ("");
}

char *
fp_printed_value (const FpMeasure *measure, const char *unit, double value, FpUnits units)
{
  return shown (measure, unit, value, units, 0);
}

/* The end of the limit that @v lies beyond; all in the printed unit. */
static double
nearest_limit (const FpRule *rule, double v)
{
  double nearest = rule->low;

  switch (rule->test)
    {
    case FP_TEST_AT_LEAST:
    case FP_TEST_EQUALS:
      return rule->low;
    case FP_TEST_AT_MOST:
      return rule->high;
    case FP_TEST_BETWEEN:
      return v < rule->low ? rule->low : rule->high;
    case FP_TEST_ODD:
      return NAN;
    case FP_TEST_ONE_OF:
      nearest = rule->one_of[0];
      for (guint i = 1; i < rule->n_one_of; i++)
        if (fabs (rule->one_of[i] - v) < fabs (nearest - v))
          nearest = rule->one_of[i];
      return nearest;
    }
  return NAN;
}

char *
fp_printed_outside (const FpMeasure *measure, const FpRule *rule, double value, FpUnits units)
{
  const FpPrintedUnit *unit = fp_printed_unit_find (rule->unit);
  double limit = unit ? nearest_limit (rule, value / unit->size) * unit->size : NAN;
  char *text = shown (measure, rule->unit, value, units, 0);

  for (int more = 1; more <= DECIMALS_MORE && isfinite (limit); more++)
    {
      g_autofree char *other = shown (measure, rule->unit, limit, units, more - 1);

      if (strcmp (text, other) != 0)
        break;
      g_free (text);
      text = shown (measure, rule->unit, value, units, more);
    }
  return text;
}

/* --- limits -------------------------------------------------------------- */

static char *
in_unit (const FpPrintedUnit *unit, double value)
{
  g_autofree char *text = number (value, 4);

  return *unit->label ? g_strconcat (text, " ", unit->label, NULL) : g_steal_pointer (&text);
}

static char *
list_of (const FpRule *rule)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < rule->n_one_of; i++)
    {
      g_autofree char *one = number (rule->one_of[i], 4);

      g_string_append (text, i == 0 ? "" : i + 1 == rule->n_one_of ? " or " : ", ");
      g_string_append (text, one);
    }
  return g_string_free (text, FALSE);
}

/* "at least 97 cm", from the rule's own numbers. */
static char *
spelled (const FpMeasure *measure, const FpRule *rule, const FpPrintedUnit *unit)
{
  g_autofree char *low = in_unit (unit, rule->low), *high = in_unit (unit, rule->high);

  switch (rule->test)
    {
    case FP_TEST_AT_LEAST:
      return g_strconcat ("at least ", low, NULL);
    case FP_TEST_AT_MOST:
      return g_strconcat ("at most ", high, NULL);
    case FP_TEST_BETWEEN:
      return g_strdup_printf ("from %s to %s", low, high);
    case FP_TEST_EQUALS:
      if (measure->type == FP_MEASURE_YES)
        return g_strdup (rule->low != 0 ? "yes" : "no");
      return g_steal_pointer (&low);
    case FP_TEST_ODD:
      return g_strdup ("an odd number");
    case FP_TEST_ONE_OF:
      return list_of (rule);
    }
  return g_strdup ("");
}

/* The limit in the units of the brief, where it was printed in others; NULL. */
static char *
turned (const FpMeasure *measure, const FpRule *rule, const FpPrintedUnit *unit, FpUnits units)
{
  g_autofree char *low = NULL, *high = NULL;
  gboolean metric = !unit->rounded && strcmp (unit->id, "ft-baden") != 0;

  /* "In the middle" is not said better by the number that stands for it. */
  if (rule->printed && (!strpbrk (rule->printed, "0123456789") || strstr (rule->printed, "mm")))
    return NULL;
  if ((measure->type != FP_MEASURE_LENGTH && measure->type != FP_MEASURE_AREA) || rule->test == FP_TEST_ONE_OF
      || rule->test == FP_TEST_ODD)
    return NULL;
  if ((units == FP_UNITS_METRIC && metric) || (units == FP_UNITS_IMPERIAL && g_str_has_prefix (unit->id, "in")))
    return NULL;

  low = fp_printed_value (measure, unit->id, rule->low * unit->size, units);
  high = fp_printed_value (measure, unit->id, rule->high * unit->size, units);
  if (rule->test == FP_TEST_BETWEEN)
    return g_strdup_printf ("%s to %s", low, high);
  return g_strdup (rule->test == FP_TEST_AT_MOST ? high : low);
}

char *
fp_printed_limit (const FpMeasure *measure, const FpRule *rule, FpUnits units)
{
  const FpPrintedUnit *unit = fp_printed_unit_find (rule->unit);
  g_autofree char *text = rule->printed ? g_strdup (rule->printed) : unit ? spelled (measure, rule, unit) : NULL;
  g_autofree char *also = unit ? turned (measure, rule, unit, units) : NULL;

  if (!text)
    return g_strdup ("");
  return also ? g_strdup_printf ("%s (%s)", text, also) : g_steal_pointer (&text);
}
