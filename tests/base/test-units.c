/* SPDX-License-Identifier: GPL-3.0-or-later */
/* test-units.c - lengths as people write them
 *
 * 1 in = 25.4 mm exactly: National Bureau of Standards, "Refinement of Values
 * for the Yard and the Pound", Federal Register 24 (1 July 1959) 5348 (from memory).
 */
#include "footpace/error.h"
#include "footpace/units.h"

#include <locale.h>
#include <math.h>
#include <string.h>

typedef struct
{
  const char *text;
  FpUnits     units;
  double      mm;
} Readable;

static const Readable readable[] = {
  { "1067", FP_UNITS_METRIC, 1067 },
  { "1067", FP_UNITS_IMPERIAL, 1067 * 25.4 },
  { "1.067 m", FP_UNITS_METRIC, 1067 },
  { "1.067m", FP_UNITS_IMPERIAL, 1067 },
  { "106,7 cm", FP_UNITS_METRIC, 1067 },
  { "10,67 dm", FP_UNITS_METRIC, 1067 },
  { "  1067 MM ", FP_UNITS_METRIC, 1067 },
  { "2 700", FP_UNITS_METRIC, 2700 },
  { "2\302\240700", FP_UNITS_METRIC, 2700 },
  { "12\342\200\257345\342\200\257678 mm", FP_UNITS_IMPERIAL, -1 }, /* more than a kilometre */
  { "2\342\200\257700 mm", FP_UNITS_IMPERIAL, 2700 },
  { "3' 6\"", FP_UNITS_METRIC, 1066.8 },
  { "3'6\"", FP_UNITS_METRIC, 1066.8 },
  { "3'-6\"", FP_UNITS_METRIC, 1066.8 },
  { "3' 6", FP_UNITS_METRIC, 1066.8 },
  { "3'", FP_UNITS_METRIC, 914.4 },
  { "3' - 6\"", FP_UNITS_METRIC, 762 },
  { "3 ft 6 1/2 in", FP_UNITS_METRIC, 1079.5 },
  { "3 ft 6 1/2 in.", FP_UNITS_METRIC, 1079.5 },
  { "3 feet 6 inches", FP_UNITS_METRIC, 1066.8 },
  { "1 foot 1 inch", FP_UNITS_METRIC, 330.2 },
  { "3\342\200\262 6\342\200\263", FP_UNITS_METRIC, 1066.8 },
  { "3\342\200\231 6\342\200\235", FP_UNITS_METRIC, 1066.8 },
  { "3' 6''", FP_UNITS_METRIC, 1066.8 },
  { "3'-6 1/2\"", FP_UNITS_METRIC, 1079.5 },
  { "3' 1/2\"", FP_UNITS_METRIC, 927.1 },
  { "6½\"", FP_UNITS_METRIC, 165.1 },
  { "½ in", FP_UNITS_METRIC, 12.7 },
  { "1/2 in", FP_UNITS_METRIC, 12.7 },
  { "6 1/2", FP_UNITS_IMPERIAL, 165.1 },
  { "6 1/2", FP_UNITS_METRIC, 6.5 },
  { "7/8\"", FP_UNITS_METRIC, 22.225 },
  { "1200 + 2*35", FP_UNITS_METRIC, 1270 },
  { "(2700 - 300) / 2", FP_UNITS_METRIC, 1200 },
  { "(2700 \342\210\222 300) \303\267 2", FP_UNITS_METRIC, 1200 },
  { "2 \303\227 3' 6\"", FP_UNITS_METRIC, 2133.6 },
  { "3' 6\" * 2", FP_UNITS_METRIC, 2133.6 },
  { "1 m - 20 cm - 5", FP_UNITS_METRIC, 795 },
  { "1 m + 1", FP_UNITS_IMPERIAL, 1025.4 },
  { "12/3/2", FP_UNITS_METRIC, 2 },
  { "12 / 2/3", FP_UNITS_METRIC, 2 },
  { "2 * 1/2 in", FP_UNITS_METRIC, 25.4 },
  { "((1+1)*(2+1)) cm", FP_UNITS_METRIC, 60 },
  { "-150", FP_UNITS_METRIC, -150 },
  { "\342\210\222150", FP_UNITS_METRIC, -150 },
  { "--150", FP_UNITS_METRIC, 150 },
  { "-3'-6\"", FP_UNITS_METRIC, -1066.8 },
  { "+0.5", FP_UNITS_METRIC, 0.5 },
  { ".5 m", FP_UNITS_METRIC, 500 },
  { ",5 m", FP_UNITS_METRIC, 500 },
  { "0", FP_UNITS_METRIC, 0 },
  { "1 km", FP_UNITS_METRIC, -1 },
};

static void
test_readable (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (readable); i++)
    {
      const Readable *r = &readable[i];
      g_autoptr (GError) error = NULL;
      double mm = 12345;
      const gboolean read = fp_length_parse (r->text, r->units, &mm, &error);

      g_test_message ("%s", r->text);
      if (r->mm == -1)
        {
          g_assert_false (read);
          g_assert_nonnull (error);
          continue;
        }
      g_assert_no_error (error);
      g_assert_true (read);
      g_assert_cmpfloat_with_epsilon (mm, r->mm, 1e-9);
    }
}

static const struct
{
  const char *text;
  int         code;
  const char *says; /* part of the message */
} unreadable[] = {
  { "", FP_ERROR_SYNTAX, "character 1" },
  { "   ", FP_ERROR_SYNTAX, "missing at the end" },
  { "abc", FP_ERROR_SYNTAX, "number is wanted" },
  { "12 px", FP_ERROR_SYNTAX, "“px” is not a unit" },
  { "12 yards", FP_ERROR_SYNTAX, "“yards” is not a unit" },
  { "1e3", FP_ERROR_SYNTAX, "“e” is not a unit" },
  { "1.2.3", FP_ERROR_SYNTAX, "only one decimal mark" },
  { "1,067.5", FP_ERROR_SYNTAX, "only one decimal mark" },
  { "5.", FP_ERROR_SYNTAX, "digit is missing" },
  { "(1200", FP_ERROR_SYNTAX, "not closed" },
  { "1200)", FP_ERROR_SYNTAX, "no bracket to close" },
  { "1200 +", FP_ERROR_SYNTAX, "missing at the end" },
  { "* 3", FP_ERROR_SYNTAX, "character 1" },
  { "1200 300", FP_ERROR_SYNTAX, "character 6" },
  { "27 00", FP_ERROR_SYNTAX, "character 4" },
  { "1 m 20 cm", FP_ERROR_SYNTAX, "cannot be read" },
  { "3 ft 6 cm", FP_ERROR_SYNTAX, "inches are wanted" },
  { "(3 ft) ft", FP_ERROR_SYNTAX, "unit already" },
  { "2 m * 3 m", FP_ERROR_SYNTAX, "an area" },
  { "6 / 2 m", FP_ERROR_SYNTAX, "without a unit can divide" },
  { "6 / 0", FP_ERROR_RANGE, "divided by 0" },
  { "6 / (3 - 3)", FP_ERROR_RANGE, "divided by 0" },
  { "1000001", FP_ERROR_RANGE, "kilometre" },
  { "999999999999999999999999999999 m * 99999999999999999999999999", FP_ERROR_RANGE, "kilometre" },
  { "NaN", FP_ERROR_SYNTAX, "number is wanted" },
  { "inf", FP_ERROR_SYNTAX, "number is wanted" },
  { "0x10", FP_ERROR_SYNTAX, "“x” is not a unit" },
  { "1200\xff", FP_ERROR_SYNTAX, "not text" },
  { "1200 ; 3", FP_ERROR_SYNTAX, "cannot be read" },
};

static void
test_unreadable (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (unreadable); i++)
    {
      g_autoptr (GError) error = NULL;
      double mm = 12345;
      g_autofree char *printable = g_strescape (unreadable[i].text, NULL);
      g_test_message ("%s", printable);
      g_assert_false (fp_length_parse (unreadable[i].text, FP_UNITS_METRIC, &mm, &error));
      g_assert_error (error, FP_ERROR, unreadable[i].code);
      g_assert_nonnull (strstr (error->message, unreadable[i].says));
      g_assert_cmpfloat (mm, ==, 12345); /* changes nothing */
    }
}

static void
test_deep_brackets (void)
{
  g_autofree char *open = g_strnfill (100000, '(');
  g_autofree char *minus = g_strnfill (100000, '-');
  g_autofree char *signed_one = g_strconcat (minus, "1", NULL);
  g_autoptr (GError) error = NULL;
  double mm;

  g_assert_false (fp_length_parse (open, FP_UNITS_METRIC, &mm, &error));
  g_assert_error (error, FP_ERROR, FP_ERROR_SYNTAX);
  g_assert_true (fp_length_parse (signed_one, FP_UNITS_METRIC, &mm, NULL));
  g_assert_cmpfloat (mm, ==, 1);
}

static void
test_numbers (void)
{
  static const struct { const char *text; double value; } fair[] = {
    { "6", 6 }, { "2,5", 2.5 }, { "3 1/2", 3.5 }, { "1/8", 0.125 }, { "(6+1)*2", 14 }, { "-90", -90 }, { "1e", NAN },
    { "6 mm", NAN }, { "6'", NAN }, { "", NAN }, { "5 %", NAN },
  };

  for (guint i = 0; i < G_N_ELEMENTS (fair); i++)
    {
      g_autoptr (GError) error = NULL;
      double value = 77;
      g_test_message ("%s", fair[i].text);
      g_assert_cmpint (fp_number_parse (fair[i].text, &value, &error), ==, !isnan (fair[i].value));
      if (isnan (fair[i].value))
        g_assert_error (error, FP_ERROR, FP_ERROR_SYNTAX);
      g_assert_cmpfloat (value, ==, isnan (fair[i].value) ? 77 : fair[i].value);
    }
}

static const struct
{
  double      mm;
  const char *metric, *imperial, *with_unit, *level, *level_imperial;
} shown[] = {
  { 2700, "2700", "8' 10 5/16\"", "2\342\200\257700 mm", "+2.700", "+8' 10 5/16\"" },
  { 1067, "1067", "3' 6\"", "1\342\200\257067 mm", "+1.067", "+3' 6\"" },
  { 480.25, "480.3", "1' 6 15/16\"", "480.3 mm", "+0.480", "+1' 6 15/16\"" },
  { 0, "0", "0\"", "0 mm", "\302\2610.000", "\302\2610\"" },
  { -0.2, "\342\210\2220.2", "0\"", "\342\210\2220.2 mm", "\302\2610.000", "\302\2610\"" },
  { -0.01, "0", "0\"", "0 mm", "\302\2610.000", "\302\2610\"" },
  { -152.4, "\342\210\222152.4", "\342\210\2226\"", "\342\210\222152.4 mm", "\342\210\2220.152", "\342\210\2226\"" },
  { 304.8, "304.8", "1' 0\"", "304.8 mm", "+0.305", "+1' 0\"" },
  { 304.7, "304.7", "1' 0\"", "304.7 mm", "+0.305", "+1' 0\"" }, /* sixteenths carry into feet */
  { 12.7, "12.7", "1/2\"", "12.7 mm", "+0.013", "+1/2\"" },
  { 1000000, "1000000", "3280' 10 1/16\"", "1\342\200\257000\342\200\257000 mm", "+1000.000", "+3280' 10 1/16\"" },
};

static void
test_shown (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (shown); i++)
    {
      g_autofree char *metric = fp_length_format (shown[i].mm, FP_UNITS_METRIC);
      g_autofree char *imperial = fp_length_format (shown[i].mm, FP_UNITS_IMPERIAL);
      g_autofree char *with_unit = fp_length_format_unit (shown[i].mm, FP_UNITS_METRIC);
      g_autofree char *level = fp_level_format (shown[i].mm, FP_UNITS_METRIC);
      g_autofree char *level_imperial = fp_level_format (shown[i].mm, FP_UNITS_IMPERIAL);

      g_assert_cmpstr (metric, ==, shown[i].metric);
      g_assert_cmpstr (imperial, ==, shown[i].imperial);
      g_assert_cmpstr (with_unit, ==, shown[i].with_unit);
      g_assert_cmpstr (level, ==, shown[i].level);
      g_assert_cmpstr (level_imperial, ==, shown[i].level_imperial);
    }
}

static void
test_not_a_length (void)
{
  const double odd[] = { NAN, INFINITY, -INFINITY, 1e300 };

  for (guint i = 0; i < G_N_ELEMENTS (odd); i++)
    for (int units = 0; units < 2; units++)
      {
        g_autofree char *a = fp_length_format (odd[i], (FpUnits) units);
        g_autofree char *b = fp_level_format (odd[i], (FpUnits) units);
        g_autofree char *c = fp_length_format_unit (odd[i], (FpUnits) units);
        g_assert_cmpstr (a, ==, "\342\200\223");
        g_assert_cmpstr (b, ==, "\342\200\223");
        g_assert_cmpstr (c, ==, "\342\200\223");
      }
}

/* What is shown can be typed back: to half of the last place that is shown. */
static void
test_shown_reads_back (void)
{
  for (guint i = 0; i < 5000; i++)
    {
      const double mm = g_test_rand_double_range (-50000, 50000);
      for (int units = 0; units < 2; units++)
        {
          const double half = units == FP_UNITS_METRIC ? 0.05 : 25.4 / 32;
          g_autofree char *plain = fp_length_format (mm, (FpUnits) units);
          g_autofree char *with_unit = fp_length_format_unit (mm, (FpUnits) units);
          g_autoptr (GError) error = NULL;
          double back = 0;

          fp_length_parse (plain, (FpUnits) units, &back, &error);
          g_assert_no_error (error);
          g_assert_cmpfloat_with_epsilon (back, mm, half + 1e-9);
          fp_length_parse (with_unit, FP_UNITS_METRIC, &back, &error);
          g_assert_no_error (error);
          g_assert_cmpfloat_with_epsilon (back, mm, half + 1e-9);
        }
    }
}

static void
test_number_format (void)
{
  static const struct { double value; const char *text; } table[] = {
    { 0, "0" }, { -0.0, "0" }, { 1, "1" }, { -1, "-1" }, { 0.1, "0.1" }, { 1067.5, "1067.5" }, { 1e6, "1000000" },
    { 1e-7, "0.0000001" }, { 1e22, "10000000000000000000000" }, { 0.30000000000000004, "0.30000000000000004" },
    { 120, "120" }, { -0.025, "-0.025" }, { 123456789.125, "123456789.125" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (table); i++)
    {
      g_autofree char *text = fp_number_format (table[i].value);
      g_assert_cmpstr (text, ==, table[i].text);
    }
}

static void
test_number_format_reads_back (void)
{
  for (guint i = 0; i < 20000; i++)
    {
      const double value = ldexp (g_test_rand_double_range (-1, 1), g_test_rand_int_range (-60, 60));
      g_autofree char *text = fp_number_format (value);
      g_assert_cmpfloat (g_ascii_strtod (text, NULL), ==, value);
      g_assert_null (strpbrk (text, "eE,"));
    }
  {
    const double extreme[] = { G_MAXDOUBLE, -G_MAXDOUBLE, G_MINDOUBLE, 4.9e-324 };
    for (guint i = 0; i < G_N_ELEMENTS (extreme); i++)
      {
        g_autofree char *text = fp_number_format (extreme[i]);
        g_assert_cmpfloat (g_ascii_strtod (text, NULL), ==, extreme[i]);
      }
  }
}

static void
test_share (void)
{
  static const struct { double share; int more; const char *text; } rows[] = {
    { 0, 0, "0 %" }, { 1, 0, "100 %" }, { 0.656, 0, "66 %" }, { 0.034, 0, "3.4 %" }, { 0.656, 1, "65.6 %" },
    /* All but one, and one alone, of 312 and of 20,000. */
    { 311.0 / 312, 0, "99.7 %" }, { 1.0 / 312, 0, "0.3 %" }, { 19999.0 / 20000, 0, "99.995 %" }, { 1.0 / 20000, 0, "0.01 %" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *text = fp_share_format (rows[i].share, rows[i].more);

      g_assert_cmpstr (text, ==, rows[i].text);
    }
}

static void
test_number_format_rounded (void)
{
  static const struct { double value; int decimals; const char *says; } table[] = {
    { 33.333, 1, "33.3" },  { 2, 3, "2" },      { -0.04, 1, "0" },   { 1.25, 1, "1.3" }, { 1e6, 0, "1000000" },
    { INFINITY, 2, "0" },   { NAN, 2, "0" },    { 0.125, 99, "0.125" }, { 17.6, -3, "18" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (table); i++)
    {
      g_autofree char *text = fp_number_format_rounded (table[i].value, table[i].decimals);
      g_assert_cmpstr (text, ==, table[i].says);
    }
}

/* Half of Europe writes 0,35: a file must not. */
static void
test_any_locale (void)
{
  g_autofree char *before = g_strdup (setlocale (LC_NUMERIC, NULL));
  g_autofree char *number = NULL, *level = NULL;
  double mm = 0;

  if (setlocale (LC_NUMERIC, "de_DE.UTF-8") == NULL)
    {
      g_test_skip ("no locale with a decimal comma is installed");
      return;
    }
  number = fp_number_format (0.35);
  level = fp_level_format (350, FP_UNITS_METRIC);
  g_assert_true (fp_length_parse ("0.35 m", FP_UNITS_METRIC, &mm, NULL));
  setlocale (LC_NUMERIC, before);
  g_assert_cmpstr (number, ==, "0.35");
  g_assert_cmpstr (level, ==, "+0.350");
  g_assert_cmpfloat_with_epsilon (mm, 350, 1e-9);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/units/readable", test_readable);
  g_test_add_func ("/units/unreadable", test_unreadable);
  g_test_add_func ("/units/deep-brackets", test_deep_brackets);
  g_test_add_func ("/units/numbers", test_numbers);
  g_test_add_func ("/units/shown", test_shown);
  g_test_add_func ("/units/not-a-length", test_not_a_length);
  g_test_add_func ("/units/shown-reads-back", test_shown_reads_back);
  g_test_add_func ("/units/number-format", test_number_format);
  g_test_add_func ("/units/share", test_share);
  g_test_add_func ("/units/number-format-rounded", test_number_format_rounded);
  g_test_add_func ("/units/number-format-reads-back", test_number_format_reads_back);
  g_test_add_func ("/units/any-locale", test_any_locale);
  return g_test_run ();
}
