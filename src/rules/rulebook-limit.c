/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What a rule of a rulebook measures, and against which figures. */
#include "footpace/limit-range.h"
#include "printed-unit.h"
#include "rulebook-reader.h"

#include <math.h>
#include <string.h>

/* --- figures --------------------------------------------------------------------------------- */

/* "12.5" or "1/3", plain decimal, whatever the locale. */
static gboolean
parse_number (const char *text, double *value)
{
  char *end;
  double over;

  if (strspn (text, "-0123456789./") != strlen (text))
    return FALSE;
  *value = g_ascii_strtod (text, &end);
  if (end == text)
    return FALSE;
  if (*end == '/')
    {
      const char *below = end + 1;

      over = g_ascii_strtod (below, &end);
      if (end == below || !(over > 0))
        return FALSE;
      *value /= over;
    }
  return *end == '\0' && fabs (*value) <= FP_LENGTH_MAX;
}

static gboolean
number_of (const FpBookReader *reader, const xmlNode *node, const char *name, double *value)
{
  g_autofree char *text = fp_book_attribute (node, name);

  if (!text)
    return fp_book_fault (reader, node, FP_ERROR_INVALID, "the test needs a limit “%s”", name);
  if (!parse_number (text, value))
    return fp_book_fault (reader, node, FP_ERROR_RANGE, "%s is “%s”, expected a number such as 12.5 or 1/3", name, text);
  return TRUE;
}

static gboolean
read_list (const FpBookReader *reader, const xmlNode *node, FpRule *rule)
{
  g_autofree char *text = fp_book_attribute (node, "of");
  g_auto (GStrv) parts = text ? g_strsplit (text, " ", -1) : NULL;

  if (!text)
    return fp_book_fault (reader, node, FP_ERROR_INVALID, "the test needs a list “of”");
  for (guint i = 0; parts[i]; i++)
    {
      if (rule->n_one_of == G_N_ELEMENTS (rule->one_of))
        return fp_book_fault (reader, node, FP_ERROR_LIMIT, "“of” names more than %u numbers", rule->n_one_of);
      if (!parse_number (parts[i], &rule->one_of[rule->n_one_of++]))
        return fp_book_fault (reader, node, FP_ERROR_RANGE, "“%s” in “of” is not a number", parts[i]);
    }
  return TRUE;
}

/* Limits that the test does not use would be read by people and ignored by us. */
static gboolean
only_limits (const FpBookReader *reader, const xmlNode *node, FpTest test)
{
  static const char *const limits[] = { "low", "high", "of" };
  static const gboolean used[][3] = {
    [FP_TEST_AT_LEAST] = { TRUE, FALSE, FALSE }, [FP_TEST_AT_MOST] = { FALSE, TRUE, FALSE },
    [FP_TEST_BETWEEN] = { TRUE, TRUE, FALSE },   [FP_TEST_EQUALS] = { TRUE, FALSE, FALSE },
    [FP_TEST_ODD] = { FALSE, FALSE, FALSE },     [FP_TEST_ONE_OF] = { FALSE, FALSE, TRUE },
  };

  for (guint i = 0; i < G_N_ELEMENTS (limits); i++)
    if (!used[test][i] && xmlHasProp (node, (const xmlChar *) limits[i]))
      return fp_book_fault (reader, node, FP_ERROR_INVALID, "the test “%s” does not use “%s”", fp_test_id (test), limits[i]);
  return TRUE;
}

gboolean
fp_book_limit (const FpBookReader *reader, const xmlNode *node, FpRule *rule)
{
  static const char *const tests[] = { "at-least", "at-most", "between", "equals", "odd", "one-of", NULL };
  int test = 0;

  if (!fp_book_word (reader, node, "test", tests, TRUE, &test) || !only_limits (reader, node, (FpTest) test))
    return FALSE;
  rule->test = (FpTest) test;
  switch (rule->test)
    {
    case FP_TEST_AT_LEAST:
    case FP_TEST_EQUALS:
      return number_of (reader, node, "low", &rule->low);
    case FP_TEST_AT_MOST:
      return number_of (reader, node, "high", &rule->high);
    case FP_TEST_BETWEEN:
      if (!number_of (reader, node, "low", &rule->low) || !number_of (reader, node, "high", &rule->high))
        return FALSE;
      return rule->low <= rule->high
             || fp_book_fault (reader, node, FP_ERROR_RANGE, "low (%g) is above high (%g)", rule->low, rule->high);
    case FP_TEST_ODD:
      return TRUE;
    case FP_TEST_ONE_OF:
      return read_list (reader, node, rule);
    }
  return FALSE;
}

/* --- what is measured ------------------------------------------------------------------------ */

#define LIKE_MOST 3 /* letters by which a word may differ from what was meant */

/* How many letters are to be put in, taken out or changed to make one of the other (V. I. Levenshtein, 1965). */
static guint
letters_apart (const char *a, const char *b)
{
  const gsize n = strlen (b);
  g_autofree guint *row = g_new (guint, n + 1);

  for (gsize k = 0; k <= n; k++)
    row[k] = (guint) k;
  for (gsize i = 0; a[i] != '\0'; i++)
    {
      guint before = row[0];

      row[0] = (guint) i + 1;
      for (gsize k = 1; k <= n; k++)
        {
          const guint changed = before + (a[i] != b[k - 1]);

          before = row[k];
          row[k] = MIN (MIN (row[k], row[k - 1]) + 1, changed);
        }
    }
  return row[n];
}

static gboolean
no_measure (const FpBookReader *reader, const xmlNode *node, const char *id)
{
  guint n, least = LIKE_MOST + 1;
  const FpMeasure *measure = fp_measures (&n), *like = NULL;

  for (guint i = 0; i < n; i++)
    {
      const guint apart = letters_apart (id, measure[i].id);

      if (apart < least)
        {
          least = apart;
          like = &measure[i];
        }
    }
  if (like)
    return fp_book_fault (reader, node, FP_ERROR_REFERENCE, "there is no measure “%s”; is “%s” meant?", id, like->id);
  return fp_book_fault (reader, node, FP_ERROR_REFERENCE, "there is no measure “%s”; “footpace measures” lists them", id);
}

/* Numbers are without a unit where a measure has none. */
static char *
units_of (const FpMeasure *measure)
{
  static const char *const ids[] = { "mm", "cm", "m", "in", "ft", "ft-wuerttemberg", "ft-baden", "cubit", "m2", "in2", "ft2", "%",
                                     "kN/m2", "psf", "deg" };
  g_autoptr (GString) fit = g_string_new (NULL);

  for (guint i = 0; i < G_N_ELEMENTS (ids); i++)
    if (fp_printed_unit_fits (fp_printed_unit_find (ids[i]), measure))
      g_string_append_printf (fit, "%s%s", fit->len > 0 ? ", " : "", ids[i]);
  return fit->len > 0 ? g_strdup_printf ("its units are %s", fit->str) : g_strdup ("it has no unit");
}

gboolean
fp_book_limit_fits (const FpBookReader *reader, const xmlNode *node, const FpRule *rule)
{
  const FpMeasure *measure = fp_measure_find (rule->measure);
  const double limits[] = { rule->test == FP_TEST_AT_MOST ? NAN : rule->low,
                            rule->test == FP_TEST_AT_MOST || rule->test == FP_TEST_BETWEEN ? rule->high : NAN };

  if (rule->test == FP_TEST_ODD || rule->test == FP_TEST_ONE_OF)
    return TRUE;
  for (guint i = 0; i < G_N_ELEMENTS (limits); i++)
    {
      g_autofree char *amiss = fp_limit_amiss (measure, rule->unit, limits[i]);

      if (amiss)
        return fp_book_fault (reader, node, FP_ERROR_RANGE, "%s", amiss);
    }
  return TRUE;
}

static gboolean
read_unit (const FpBookReader *reader, const xmlNode *node, FpRule *rule, const FpMeasure *measure)
{
  const FpPrintedUnit *printed = fp_printed_unit_find (rule->unit);
  g_autofree char *fit = measure ? units_of (measure) : g_strdup ("footpace measures tells those that there are");

  if (!printed)
    return fp_book_fault (reader, node, FP_ERROR_INVALID, "“%s” is not a unit; %s", rule->unit, fit);
  if (!measure || fp_printed_unit_fits (printed, measure))
    return TRUE;
  return *rule->unit == '\0'
           ? fp_book_fault (reader, node, FP_ERROR_INVALID, "“%s” needs the unit in which its limit is printed; %s", rule->measure, fit)
           : fp_book_fault (reader, node, FP_ERROR_INVALID, "“%s” cannot be held against figures in “%s”; %s", rule->measure,
                            rule->unit, fit);
}

gboolean
fp_book_measure (const FpBookReader *reader, const xmlNode *node, FpRule *rule)
{
  g_autofree char *unit = fp_book_attribute (node, "unit");
  const FpMeasure *measure;

  rule->unit = fp_book_keep (reader, unit ? unit : "");
  if (!fp_book_needed_id (reader, node, "measure", &rule->measure))
    return FALSE;
  measure = fp_measure_find (rule->measure);
  if (!measure)
    no_measure (reader, node, rule->measure);
  if (!read_unit (reader, node, rule, measure) || !measure)
    return FALSE;
  if (rule->test == FP_TEST_ODD && (measure->type != FP_MEASURE_COUNT || measure->unit))
    return fp_book_fault (reader, node, FP_ERROR_INVALID, "“%s” is not counted: it is neither odd nor even", rule->measure);
  return TRUE;
}
