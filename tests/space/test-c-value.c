/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The C-value against published examples.  Lengths in the unit of the source. */
#include "footpace/sight.h"

#include <math.h>

static void
assert_near (double found, double expected, double tolerance)
{
  g_assert_cmpfloat_with_epsilon (found, expected, tolerance);
}

/* "Arsenal Collection: Stadium Sightline" (plus.maths.org.uk), the problem of P. Shepherd's
 * worksheet "Sightlines" (University of Bath, 2012): D 30 m, R 10 m, T 1 m. The answers are its formula's. */
static void
test_stadium_problem (void)
{
  assert_near (fp_c_rise (30, 10, 0, 1), 1.0 / 3, 1e-12);
  assert_near (fp_c_value (30, 10, 1.0 / 3, 1), 0, 1e-12);
  assert_near (fp_c_rise (30, 10, 0.15, 1), 0.488333, 5e-7);
  assert_near (fp_c_value (30, 10, fp_c_rise (30, 10, 0.15, 1), 1), 0.15, 1e-12);
}

/* G. John, R. Sheard, "Stadia: A Design and Development Guide", chapter on viewing: from memory. */
static void
test_textbook (void)
{
  assert_near (fp_c_rise (18, 6.5, 0.12, 0.8), 0.4142, 5e-5);
}

/* Rows of a community's study of its own stand (a published table with all its inputs): pitch 24 in, rise 11 5/8 in,
 * eyes 150 mm before the rear edge of each row, 1200 mm (seated) and 1600 mm (standing) above it, point of focus on
 * the ground before the stand. */
static void
check_stand (double first_edge, double eye, const int *expected)
{
  const double pitch = 24 * 25.4, rise = 11.625 * 25.4;
  for (int row = 1; row <= 5; row++)
    {
      double d = first_edge + row * pitch - 150, r = (row - 1) * rise + eye;
      g_assert_cmpint ((int) lround (fp_c_value (d, r, rise, pitch)), ==, expected[row - 1]);
    }
}

static void
test_stand (void)
{
  check_stand (25 * 304.8, 1200, (const int[]) { 190, 178, 167, 157, 149 });
  check_stand (25 * 304.8, 1600, (const int[]) { 162, 152, 142, 134, 127 });
}

/* A uniform rake, computed by hand from Shepherd's formula: the clearance falls row by row. */
static void
test_uniform_rake (void)
{
  static const double EXPECTED[] = { 95.8, 80.9, 70.1, 61.8, 55.2, 49.9 };
  for (int row = 0; row < 6; row++)
    assert_near (fp_c_value (4000 + row * 900, 145 + row * 150, 150, 900), EXPECTED[row], 0.05);
}

/* A level nave, computed by hand: C = -R T / (D + T). Eye 1120, rows 900 apart; UFC 4-730-02 (2004), 2 g and h,
 * puts the altar's top at 975, 1125 or 1275 above the nave. */
static void
test_level_nave (void)
{
  static const double FOCUS[] = { 975, 1125, 1275, 1466 };
  static const double EXPECTED[][3] = {
    { -33.5, -18.9, -13.2 }, { 1.2, 0.7, 0.5 }, { 35.8, 20.2, 14.1 }, { 79.8, 45.1, 31.5 },
  };
  for (guint i = 0; i < 4; i++)
    for (guint k = 0; k < 3; k++)
      assert_near (fp_c_value (3000 * (k + 1), 1120 - FOCUS[i], 0, 900), EXPECTED[i][k], 0.05);
}

/* What is added to the level of the focus takes as much from R, and nothing from N: put back into Shepherd's formula,
 * it gives the C that was wanted. By hand: from 1275 and 35.8 on a level nave, 60 wants (60 - 35.8)(3900)/900 more. */
static void
test_raised_focus (void)
{
  static const double RISES[] = { 0, 40, 150 };

  assert_near (fp_c_raise (35.8, 60, 3000, 900), 104.866667, 1e-6);
  for (guint i = 0; i < G_N_ELEMENTS (RISES); i++)
    for (double wanted = -60; wanted <= 120; wanted += 30)
      {
        const double now = fp_c_value (8200, 145, RISES[i], 950), more = fp_c_raise (now, wanted, 8200, 950);
        assert_near (fp_c_value (8200, 145 - more, RISES[i], 950), wanted, 1e-9);
      }
}

static void
test_degenerate (void)
{
  g_assert_cmpfloat (fp_c_raise (10, 60, 900, 0), ==, 0);
  g_assert_cmpfloat (fp_c_value (0, 100, 10, 0), ==, 0);
  g_assert_cmpfloat (fp_c_value (-900, 100, 10, 900), ==, 0);
  g_assert_cmpfloat (fp_c_rise (0, 100, 10, 900), ==, 0);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/c-value/stadium-problem", test_stadium_problem);
  g_test_add_func ("/c-value/textbook", test_textbook);
  g_test_add_func ("/c-value/stand", test_stand);
  g_test_add_func ("/c-value/uniform-rake", test_uniform_rake);
  g_test_add_func ("/c-value/level-nave", test_level_nave);
  g_test_add_func ("/c-value/raised-focus", test_raised_focus);
  g_test_add_func ("/c-value/degenerate", test_degenerate);
  return g_test_run ();
}
