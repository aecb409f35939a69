/* SPDX-License-Identifier: GPL-3.0-or-later */
/* test-works.c - of what a parish builds: units, weights, and what is refused */
#include "footpace/project.h"

#include <math.h>
#include <string.h>

/* 1 m2 is 10.7639 sq ft and 1 m3 35.3147 cu ft (NIST Special Publication 811, appendix B). */
static void
test_units (void)
{
  FpAmountType type;
  FpUnits units;

  g_assert_cmpfloat_with_epsilon (fp_amount_in (FP_AMOUNT_AREA, 1e6, FP_UNITS_IMPERIAL), 10.7639, 1e-4);
  g_assert_cmpfloat_with_epsilon (fp_amount_in (FP_AMOUNT_VOLUME, 1e9, FP_UNITS_IMPERIAL), 35.3147, 1e-4);
  g_assert_cmpfloat (fp_amount_in (FP_AMOUNT_LENGTH, 304.8, FP_UNITS_IMPERIAL), ==, 1.0);
  g_assert_cmpfloat (fp_amount_in (FP_AMOUNT_VOLUME, 2e9, FP_UNITS_METRIC), ==, 2.0);
  g_assert_cmpfloat (fp_amount_in (FP_AMOUNT_NUMBER, 6, FP_UNITS_IMPERIAL), ==, 6.0);
  g_assert_true (fp_amount_unit_find ("cu-ft", &type, &units));
  g_assert_cmpint (type, ==, FP_AMOUNT_VOLUME);
  g_assert_cmpint (units, ==, FP_UNITS_IMPERIAL);
  g_assert_false (fp_amount_unit_find ("m4", &type, &units));
}

/* ASCE 7, Table C3-1: marble 173 pcf is 27.2 kN/m3, from memory; 1 lbf/ft3 is 0.157087 kN/m3 (NIST SP 811). */
static void
test_weights (void)
{
  g_assert_cmpfloat_with_epsilon (fp_stone (FP_STONE_MARBLE)->weight, 173 * 0.157087, 0.05);
  g_assert_cmpfloat_with_epsilon (fp_stone (FP_STONE_OOLITE)->weight, 135 * 0.157087, 0.05);
  g_assert_cmpfloat_with_epsilon (fp_stone (FP_STONE_LIMESTONE)->weight, 165 * 0.157087, 0.05);
  /* 800 and 500 kg/m3, in kN/m3 at standard gravity. */
  g_assert_cmpfloat_with_epsilon (fp_timber (FP_TIMBER_HARDWOOD)->weight, 0.8 * FP_GRAVITY, 0.05);
  g_assert_cmpfloat_with_epsilon (fp_timber (FP_TIMBER_SOFTWOOD)->weight, 0.5 * FP_GRAVITY, 0.05);
}

static void
assert_refused (const FpWorks *works, const char *says)
{
  g_autoptr (GError) error = NULL;

  g_assert_false (fp_works_check (works, &error));
  g_assert_nonnull (error);
  g_test_message ("%s", error->message);
  g_assert_nonnull (strstr (error->message, says));
}

static void
test_refused (void)
{
  FpRate rate = { "altar", "mensa", FP_AMOUNT_VOLUME, FP_UNITS_METRIC, 10 };
  FpWorks works = fp_works_usual;

  g_assert_true (fp_works_check (&works, NULL));
  works.slab = NAN;
  assert_refused (&works, "the thickness of a slab");
  works = fp_works_usual;
  works.longest = 199;
  assert_refused (&works, "the longest slab");
  works = fp_works_usual;
  works.warp = 0.3;
  assert_refused (&works, "the shrinkage of the warp");
  works = fp_works_usual;
  works.currency = "sovereigns";
  assert_refused (&works, "the currency");
  works = fp_works_usual;
  works.small[FP_SMALL_PURIFICATOR] = 2.5;
  assert_refused (&works, "the number of purificators");
  works.small[FP_SMALL_PURIFICATOR] = -2;
  assert_refused (&works, "the number of purificators");
  works = fp_works_usual;
  works.rate = &rate;
  works.n_rates = 1;
  g_assert_true (fp_works_check (&works, NULL));
  rate.rate = INFINITY;
  assert_refused (&works, "a rate is inf");
  rate.rate = 1;
  rate.what = "";
  assert_refused (&works, "does not say what it is for");
  rate.what = "two\nlines";
  assert_refused (&works, "what a rate is for");
}

static void
assert_length (FpWorksLength which, const char *typed, FpUnits units, const char *says)
{
  g_autoptr (GError) error = NULL;
  double mm;

  g_assert_true (fp_length_parse (typed, units, &mm, NULL));
  g_assert_cmpint (fp_works_length_check (which, mm, typed, units, &error), ==, says == NULL);
  if (says != NULL)
    {
      g_test_message ("%s", error->message);
      g_assert_error (error, FP_ERROR, FP_ERROR_RANGE);
      g_assert_nonnull (strstr (error->message, says));
    }
}

/* A bare number is in the units of the project: it is told which they are, and how to write another. */
static void
test_lengths (void)
{
  assert_length (FP_WORKS_BOLT, "1500", FP_UNITS_METRIC, NULL);
  assert_length (FP_WORKS_BOLT, "60", FP_UNITS_IMPERIAL, NULL);
  assert_length (FP_WORKS_BOLT, "1500 mm", FP_UNITS_IMPERIAL, NULL);
  assert_length (FP_WORKS_BOLT, "1500", FP_UNITS_IMPERIAL, "“1500” was read in inches; for millimetres write “1500 mm”");
  assert_length (FP_WORKS_BOLT, "60", FP_UNITS_METRIC, "“60” was read in millimetres; for inches write “60 in”");
  assert_length (FP_WORKS_BOLT, "5 m", FP_UNITS_IMPERIAL, "it may be 11 13/16\" to 13");
  assert_length (FP_WORKS_SLAB, "30", FP_UNITS_IMPERIAL, "the thickness of a slab is 2");
  assert_length (FP_WORKS_LONGEST, "1500", FP_UNITS_IMPERIAL, "write “1500 mm”");
}

static void
test_smalls (void)
{
  for (guint i = 0; i < FP_N_SMALLS; i++)
    {
      FpSmall one;

      g_assert_true (fp_small_find (fp_small_id ((FpSmall) i), &one));
      g_assert_cmpuint (one, ==, i);
      g_assert_cmpuint (strlen (fp_small_label (one)), >, 4);
    }
  g_assert_false (fp_small_find ("napkins", &(FpSmall) { 0 }));
}

/* The next project has it, the one before has not; what is borrowed for the call may go. */
static void
test_of_a_project (void)
{
  const FpBrief brief = { .title = "Sanctuary of Saint Vedast", .ministers = 3, .percentile = 50 };
  g_autoptr (FpProject) project = fp_project_new (&brief), next = NULL, other = NULL;
  g_autofree char *what = g_strdup ("mensa");
  const FpRate rate = { "altar", what, FP_AMOUNT_VOLUME, FP_UNITS_METRIC, 3200 };
  FpWorks works = fp_works_usual;

  works.rate = &rate;
  works.n_rates = 1;
  next = fp_project_with_works (project, &works, NULL);
  g_assert_true (fp_works_equal (fp_project_works (next), &works));
  *what = 'M';
  g_assert_false (fp_works_equal (fp_project_works (next), &works));
  g_assert_false (fp_project_has_works (project));
  g_assert_true (fp_works_equal (fp_project_works (project), &fp_works_usual));
  other = fp_project_with_new_alternative (next, 0, "b", "B", NULL);
  g_assert_cmpfloat (fp_works_rate (fp_project_works (other), "altar", "mensa", FP_AMOUNT_VOLUME)->rate, ==, 3200);
  g_assert_null (fp_works_rate (fp_project_works (other), "altar", "mensa", FP_AMOUNT_AREA));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/works/units", test_units);
  g_test_add_func ("/works/weights", test_weights);
  g_test_add_func ("/works/refused", test_refused);
  g_test_add_func ("/works/lengths", test_lengths);
  g_test_add_func ("/works/smalls", test_smalls);
  g_test_add_func ("/works/of-a-project", test_of_a_project);
  return g_test_run ();
}
