/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "printed-unit.h"

#include "footpace/told-length.h"

#include <math.h>
#include <string.h>

#define MM2_PER_M2 1e6
#define DECIMALS_MORE 4 /* than usual; a value nearer to its limit than that is not told from it */

static const FpPrintedUnit printed[] = {
  { "mm", "mm", FP_MEASURE_LENGTH, 1, FALSE, NULL, FP_PRINTED_METRIC },
  { "cm", "cm", FP_MEASURE_LENGTH, 10, FALSE, NULL, FP_PRINTED_METRIC },
  { "m", "m", FP_MEASURE_LENGTH, 1000, FALSE, NULL, FP_PRINTED_METRIC },
  { "in", "in", FP_MEASURE_LENGTH, FP_MM_PER_INCH, TRUE, NULL, FP_PRINTED_INCHES },
  { "ft", "ft", FP_MEASURE_LENGTH, FP_MM_PER_FOOT, TRUE, NULL, FP_PRINTED_INCHES },
  { "ft-wuerttemberg", "Württemberg feet", FP_MEASURE_LENGTH, 286.49, TRUE, NULL, FP_PRINTED_OLD },
  { "ft-baden", "Baden feet", FP_MEASURE_LENGTH, 300, FALSE, NULL, FP_PRINTED_OLD },
  /* Assumed, from memory: the Roman cubit makes Borromeo's altar heights come right. */
  { "cubit", "cubits", FP_MEASURE_LENGTH, 444, TRUE, NULL, FP_PRINTED_OLD },
  { "m2", "m²", FP_MEASURE_AREA, MM2_PER_M2, FALSE, NULL, FP_PRINTED_METRIC },
  { "in2", "sq in", FP_MEASURE_AREA, FP_MM_PER_INCH * FP_MM_PER_INCH, TRUE, NULL, FP_PRINTED_INCHES },
  { "ft2", "sq ft", FP_MEASURE_AREA, FP_MM_PER_FOOT * FP_MM_PER_FOOT, TRUE, NULL, FP_PRINTED_INCHES },
  { "%", "%", FP_MEASURE_SHARE, 0.01, FALSE, NULL, FP_PRINTED_PLAIN },
  { "", "", FP_MEASURE_SHARE, 1, FALSE, NULL, FP_PRINTED_PLAIN },
  { "", "", FP_MEASURE_COUNT, 1, FALSE, NULL, FP_PRINTED_PLAIN },
  { "", "", FP_MEASURE_YES, 1, FALSE, NULL, FP_PRINTED_PLAIN },
  { "kN/m2", "kN/m²", FP_MEASURE_COUNT, 1, FALSE, "kN/m2", FP_PRINTED_METRIC },
  { "deg", "°", FP_MEASURE_COUNT, 1, FALSE, "deg", FP_PRINTED_PLAIN },
  { "psf", "lb/sq ft", FP_MEASURE_COUNT, 0.04788026, TRUE, "kN/m2", FP_PRINTED_INCHES },
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

/* All of these show @more decimals than is usual. */

/* Sixteenths of an inch are not divided further: the millimetres are told beside them. */
static char *
length_shown (double mm, FpUnits units, int more)
{
  int decimals = MAX (fp_told_decimals (mm), more);
  g_autofree char *digits = fp_number_format_rounded (mm, decimals);
  g_autofree char *metric = g_strconcat (digits, " mm", NULL), *imperial = NULL;

  if (units == FP_UNITS_METRIC)
    return decimals > 1 ? g_steal_pointer (&metric) : fp_length_format_unit (g_ascii_strtod (digits, NULL), units);
  imperial = fp_length_format_unit (mm, units);
  return more > 0 ? g_strdup_printf ("%s (%s)", imperial, metric) : g_steal_pointer (&imperial);
}

/* What is smaller than a door is told in square inches. */
#define SMALL_AREA (10 * FP_MM_PER_FOOT * FP_MM_PER_FOOT)

static char *
area_shown (double mm2, FpUnits units, int more)
{
  const gboolean small = mm2 > 0 && mm2 < SMALL_AREA;
  const FpPrintedUnit *unit = fp_printed_unit_find (units == FP_UNITS_METRIC ? "m2" : small ? "in2" : "ft2");
  const int decimals = units == FP_UNITS_METRIC ? 2 : small ? 0 : 1;
  g_autofree char *text = fp_number_format_rounded (mm2 / unit->size, decimals + more);

  return g_strdup_printf ("%s %s", text, unit->label);
}

static char *
pressure_shown (double value, FpUnits units, int more)
{
  const FpPrintedUnit *unit = fp_printed_unit_find (units == FP_UNITS_METRIC ? "kN/m2" : "psf");
  const int decimals = units != FP_UNITS_METRIC ? 0 : fabs (value) < 10 ? 2 : 1;
  g_autofree char *text = fp_number_format_rounded (value / unit->size, decimals + more);

  return g_strdup_printf ("%s %s", text, unit->label);
}

static char *
angle_shown (double value, int more)
{
  g_autofree char *text = fp_number_format_rounded (value, more);

  return g_strconcat (text, "°", NULL);
}

/* Of what is counted in a unit of its own. */
static char *
in_unit_shown (const FpMeasure *measure, double value, FpUnits units, int more)
{
  return strcmp (measure->unit, "deg") == 0 ? angle_shown (value, more) : pressure_shown (value, units, more);
}

/* "9 places", "1 place", "none". */
static char *
count_shown (const FpMeasure *measure, double value, int more)
{
  g_autofree char *text = fp_number_format_rounded (value, 2 + more);

  if (!measure->many)
    return g_steal_pointer (&text);
  if (strcmp (text, "0") == 0)
    return g_strdup ("none");
  return g_strdup_printf ("%s %s", text, strcmp (text, "1") == 0 ? measure->one : measure->many);
}

static char *
shown (const FpMeasure *measure, double value, FpUnits units, int more)
{
  switch (measure->type)
    {
    case FP_MEASURE_LENGTH:
      return length_shown (value, units, more);
    case FP_MEASURE_AREA:
      return area_shown (value, units, more);
    case FP_MEASURE_SHARE:
      return fp_share_format (value, more);
    case FP_MEASURE_YES:
      return g_strdup (value != 0 ? "yes" : "no");
    case FP_MEASURE_COUNT:
      return measure->unit ? in_unit_shown (measure, value, units, more) : count_shown (measure, value, more);
    }
  return g_strdup ("");
}

char *
fp_printed_value (const FpMeasure *measure, double value, FpUnits units)
{
  return shown (measure, value, units, 0);
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
  char *text = shown (measure, value, units, 0);

  for (int more = 1; more <= DECIMALS_MORE && isfinite (limit); more++)
    {
      g_autofree char *other = shown (measure, limit, units, more - 1);

      if (strcmp (text, other) != 0)
        break;
      g_free (text);
      text = shown (measure, value, units, more);
    }
  return text;
}

/* --- limits -------------------------------------------------------------- */

/* "4 in to 7 in", "12 in", "15 Württemberg feet": the bare figures, in the unit in which they were printed. */
static char *
figures (const FpRule *rule, const FpPrintedUnit *unit)
{
  g_autofree char *low = fp_number_format_rounded (rule->low, 4), *high = fp_number_format_rounded (rule->high, 4);

  if (rule->test == FP_TEST_BETWEEN)
    return g_strdup_printf ("%s to %s %s", low, high, unit->label);
  return g_strdup_printf ("%s %s", rule->test == FP_TEST_AT_MOST ? high : low, unit->label);
}

/* "2, 4 or 6 candles" */
static char *
list_of (const FpMeasure *measure, const FpRule *rule, const FpPrintedUnit *unit)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < rule->n_one_of; i++)
    {
      g_autofree char *one = fp_number_format_rounded (rule->one_of[i], 4);

      g_string_append (text, i == 0 ? "" : i + 1 == rule->n_one_of ? " or " : ", ");
      g_string_append (text, one);
    }
  if (measure->many || *unit->label)
    g_string_append_printf (text, " %s", measure->many ? measure->many : unit->label);
  return g_string_free (text, FALSE);
}

/* "from 4 to 6 candles", "from 102 mm to 178 mm" */
static char *
range_of (const FpMeasure *measure, const FpRule *rule, const char *low, const char *high)
{
  g_autofree char *bare = fp_number_format_rounded (rule->low, 4);

  return g_strdup_printf ("from %s to %s", measure->many && rule->low > 0 ? bare : low, high);
}

/* "none", of what is counted; "none lacking" of what lacks, lest it be read as if none were wanted. */
static char *
none_of (const FpMeasure *measure)
{
  return g_strdup (strstr (measure->id, "lacking") != NULL ? "none lacking" : "none");
}

/* "at least 970 mm", "none", from the rule's own numbers, in the units of the brief. */
static char *
spelled (const FpMeasure *measure, const FpRule *rule, const FpPrintedUnit *unit, FpUnits units)
{
  g_autofree char *low = shown (measure, rule->low * unit->size, units, 0);
  g_autofree char *high = shown (measure, rule->high * unit->size, units, 0);

  switch (rule->test)
    {
    case FP_TEST_AT_LEAST:
      return g_strconcat ("at least ", low, NULL);
    case FP_TEST_AT_MOST:
      return measure->many && !(rule->high > 0) ? none_of (measure) : g_strconcat ("at most ", high, NULL);
    case FP_TEST_BETWEEN:
      return range_of (measure, rule, low, high);
    case FP_TEST_EQUALS:
      return g_steal_pointer (&low);
    case FP_TEST_ODD:
      return g_strdup_printf ("an odd number of %s", measure->many ? measure->many : "them");
    case FP_TEST_ONE_OF:
      return list_of (measure, rule, unit);
    }
  return g_strdup ("");
}

/* "In the middle" is not said better by the number that stands for it, nor is a share of places. */
static gboolean
speaks_for_itself (const char *phrase, const FpPrintedUnit *unit)
{
  return unit->system == FP_PRINTED_PLAIN || strpbrk (phrase, "0123456789") == NULL;
}

char *
fp_printed_limit (const FpMeasure *measure, const FpRule *rule, FpUnits units)
{
  const FpPrintedUnit *unit = fp_printed_unit_find (rule->unit);
  const FpPrintedSystem at_home = units == FP_UNITS_METRIC ? FP_PRINTED_METRIC : FP_PRINTED_INCHES;
  g_autofree char *here = NULL, *there = NULL;

  if (!unit || (rule->printed && speaks_for_itself (rule->printed, unit)))
    return g_strdup (rule->printed ? rule->printed : "");
  here = spelled (measure, rule, unit, units);
  if (rule->printed)
    return g_strdup_printf ("%s (printed: %s)", here, rule->printed);
  if (unit->system == FP_PRINTED_PLAIN || unit->system == at_home || rule->test == FP_TEST_ODD
      || rule->test == FP_TEST_ONE_OF)
    return g_steal_pointer (&here);
  there = figures (rule, unit);
  return g_strdup_printf ("%s (%s)", here, there);
}
