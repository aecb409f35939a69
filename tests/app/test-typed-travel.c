/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "typed-travel.h"

#include "footpace/error.h"

static FpVec3
typed (FpViewId view, FpVec3 hand, const char *text)
{
  FpTypedTravel t;
  g_autoptr (GError) error = NULL;

  fp_typed_travel_init (&t, view, hand, 0, FP_UNITS_METRIC);
  g_assert_true (fp_typed_travel_read (&t, text, &error));
  g_assert_no_error (error);
  return fp_typed_travel_by (&t);
}

/* In the direction of the hand; against it with a minus. */
static void
test_direction (void)
{
  g_assert_cmpfloat (typed (FP_VIEW_PLAN, (FpVec3) { -600.0, 40.0, 0.0 }, "450").x, ==, -450.0);
  g_assert_cmpfloat (typed (FP_VIEW_PLAN, (FpVec3) { -600.0, 40.0, 0.0 }, "-450").x, ==, 450.0);
  g_assert_cmpfloat (typed (FP_VIEW_PLAN, (FpVec3) { 30.0, -900.0, 0.0 }, "1.2 m").y, ==, -1200.0);
  g_assert_cmpfloat (typed (FP_VIEW_ELEVATION, (FpVec3) { -10.0, 0.0, 0.0 }, "300 + 150").x, ==, -450.0);
  g_assert_cmpfloat_with_epsilon (typed (FP_VIEW_SECTION, (FpVec3) { 0.0, 10.0, 0.0 }, "3'").y, 914.4, 1e-9);
  /* Not moved at all: towards the Epistle side, or east. */
  g_assert_cmpfloat (typed (FP_VIEW_SECTION, (FpVec3) { 0.0, 0.0, 0.0 }, "20").y, ==, 20.0);
}

/* A hand strays; what it means sideways it goes farther for, or something catches it. */
static void
test_straying (void)
{
  FpTypedTravel t;

  g_assert_cmpfloat (typed (FP_VIEW_PLAN, (FpVec3) { -600.0, 40.0, 0.0 }, "450").y, ==, 0.0);
  g_assert_cmpfloat (typed (FP_VIEW_PLAN, (FpVec3) { -600.0, 240.0, 0.0 }, "450").y, ==, 240.0);
  fp_typed_travel_init (&t, FP_VIEW_PLAN, (FpVec3) { -600.0, 40.0, 0.0 }, 2, FP_UNITS_METRIC);
  g_assert_cmpfloat (fp_typed_travel_by (&t).y, ==, 40.0);
}

static void
test_other_direction (void)
{
  FpTypedTravel t;
  g_autofree char *text = NULL;

  fp_typed_travel_init (&t, FP_VIEW_PLAN, (FpVec3) { 600.0, -240.0, 0.0 }, 0, FP_UNITS_METRIC);
  g_assert_cmpstr (fp_typed_travel_words (&t), ==, "To the Epistle side");
  g_assert_true (fp_typed_travel_read (&t, "450", NULL));
  g_assert_true (fp_typed_travel_other (&t));
  g_assert_cmpstr (fp_typed_travel_words (&t), ==, "West");
  text = fp_typed_travel_text (&t);
  g_assert_cmpstr (text, ==, "240");
  g_assert_true (fp_typed_travel_read (&t, "100", NULL));
  g_assert_true (fp_typed_travel_other (&t));
  g_assert_cmpfloat (fp_typed_travel_by (&t).x, ==, 450.0);
  g_assert_cmpfloat (fp_typed_travel_by (&t).y, ==, -100.0);
  fp_typed_travel_init (&t, FP_VIEW_ELEVATION, (FpVec3) { 600.0, 0.0, 0.0 }, 0, FP_UNITS_METRIC);
  g_assert_false (fp_typed_travel_other (&t));
}

/* What it goes the other way besides is told with it. */
static void
test_title (void)
{
  FpTypedTravel t;
  g_autofree char *far = fp_length_format_unit (240.0, FP_UNITS_METRIC);
  g_autofree char *both = g_strdup_printf ("To the Epistle side, and %s west", far);
  g_autofree char *first = NULL, *second = NULL, *alone = NULL;

  fp_typed_travel_init (&t, FP_VIEW_PLAN, (FpVec3) { 600.0, -240.0, 0.0 }, 0, FP_UNITS_METRIC);
  first = fp_typed_travel_title (&t);
  g_assert_cmpstr (first, ==, both);
  fp_typed_travel_other (&t);
  fp_typed_travel_other (&t);
  second = fp_typed_travel_title (&t);
  g_assert_cmpstr (second, ==, both);
  fp_typed_travel_init (&t, FP_VIEW_PLAN, (FpVec3) { 600.0, -40.0, 0.0 }, 0, FP_UNITS_METRIC);
  alone = fp_typed_travel_title (&t);
  g_assert_cmpstr (alone, ==, "To the Epistle side");
}

static void
test_unreadable (void)
{
  FpTypedTravel t;
  g_autoptr (GError) error = NULL;

  fp_typed_travel_init (&t, FP_VIEW_ELEVATION, (FpVec3) { 600.0, 0.0, 0.0 }, 0, FP_UNITS_IMPERIAL);
  g_assert_false (fp_typed_travel_read (&t, "4 parasangs", &error));
  g_assert_error (error, FP_ERROR, FP_ERROR_SYNTAX);
  g_assert_cmpfloat (fp_typed_travel_by (&t).x, ==, 600.0);
  g_assert_true (fp_typed_travel_read (&t, "1 1/2", NULL));
  g_assert_cmpfloat_with_epsilon (fp_typed_travel_by (&t).x, 38.1, 1e-9);
}

static void
test_begins (void)
{
  for (const char *c = "0123456789+-.,'("; *c != '\0'; c++)
    g_assert_true (fp_typed_travel_begins ((gunichar) *c));
  g_assert_true (fp_typed_travel_begins (0x2212));
  g_assert_false (fp_typed_travel_begins ('t'));
  g_assert_false (fp_typed_travel_begins (0));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/typed-travel/direction", test_direction);
  g_test_add_func ("/typed-travel/straying", test_straying);
  g_test_add_func ("/typed-travel/other", test_other_direction);
  g_test_add_func ("/typed-travel/unreadable", test_unreadable);
  g_test_add_func ("/typed-travel/begins", test_begins);
  g_test_add_func ("/typed-travel/title", test_title);
  return g_test_run ();
}
