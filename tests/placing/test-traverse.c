/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "footpace/traverse.h"

#include <math.h>

static void
test_rectangle (void)
{
  const FpLeg leg[] = { { 6000, -90 }, { 4000, -90 }, { 6000, -90 }, { 4000, -90 } };
  const FpClosure closure = fp_traverse_closure (leg, 4, 0);
  FpPoint corner[5];

  fp_traverse_corners (leg, 4, (FpPoint) { 0, 0 }, 0, corner);
  g_assert_cmpfloat (corner[2].x, ==, 4000);
  g_assert_cmpfloat (corner[2].y, ==, 6000);
  g_assert_cmpfloat (closure.distance, ==, 0);
  g_assert_cmpfloat (closure.angle, ==, 0);
  g_assert_cmpfloat (closure.walked, ==, 20000);
}

static void
test_gap (void)
{
  const FpLeg leg[] = { { 6000, -90 }, { 4000, -90 }, { 5970, -90 }, { 4040, -85 } };
  const FpClosure closure = fp_traverse_closure (leg, 4, 0);

  /* It ends at (-40, 30). */
  g_assert_cmpfloat_with_epsilon (closure.gap.x, 40, 1e-9);
  g_assert_cmpfloat_with_epsilon (closure.gap.y, -30, 1e-9);
  g_assert_cmpfloat_with_epsilon (closure.distance, 50, 1e-9);
  g_assert_cmpfloat_with_epsilon (closure.angle, -5, 1e-9);
}

/* The compass rule by its definition: corrections in proportion to the way walked.  The sides 3000, 4000 and 4900
 * come back 80 short of a 3:4:5 triangle's 5000 along its slope after a gap of (60, -80), by hand. */
static void
test_compass_rule (void)
{
  FpPoint corner[4] = { { 0, 0 }, { 0, 3000 }, { 4000, 3000 }, { 80, 60 } };
  const double long_side = hypot (3920, 2940), whole = 3000 + 4000 + long_side;

  fp_traverse_adjust (corner, 3, NULL);
  g_assert_cmpfloat_with_epsilon (corner[1].x, -80 * 3000 / whole, 1e-9);
  g_assert_cmpfloat_with_epsilon (corner[1].y, 3000 - 60 * 3000 / whole, 1e-9);
  g_assert_cmpfloat_with_epsilon (corner[2].x, 4000 - 80 * 7000 / whole, 1e-9);
  g_assert_cmpfloat (corner[3].x, ==, 0);
  g_assert_cmpfloat (corner[3].y, ==, 0);
}

/* A side that is kept is only carried along; the others take the gap by the rule, in proportion to their lengths. */
static void
test_kept_sides (void)
{
  const FpLeg leg[] = { { 20000, -90 }, { 12000, -90 }, { 19985, -90 }, { 12000, -90 } };
  const gboolean kept[] = { TRUE, FALSE, FALSE, FALSE }, all[] = { TRUE, TRUE, TRUE, TRUE },
                 none[] = { FALSE, FALSE, FALSE, FALSE }, most[] = { TRUE, TRUE, TRUE, FALSE };
  const FpClosure closure = fp_traverse_closure (leg, 4, 0), far = { { 0, 0 }, 1300, 63985, 0 };
  FpPoint corner[5];

  g_assert_cmpfloat_with_epsilon (closure.distance, 15, 1e-9);
  g_assert_true (fp_closure_is_small (&closure));
  g_assert_cmpfloat_with_epsilon (fp_closure_limit (&closure), 639.85, 1e-9);
  g_assert_false (fp_closure_is_small (&far));
  g_assert_true (fp_traverse_can_keep (leg, 4, kept, &closure));
  g_assert_true (fp_traverse_can_keep (leg, 4, most, &closure));
  g_assert_false (fp_traverse_can_keep (leg, 4, most, &far));
  g_assert_false (fp_traverse_can_keep (leg, 4, all, &closure));
  g_assert_false (fp_traverse_can_keep (leg, 4, none, &closure));
  fp_traverse_corners (leg, 4, (FpPoint) { 0, 0 }, 0, corner);
  fp_traverse_adjust (corner, 4, kept);
  g_assert_cmpfloat (corner[1].x, ==, 0);
  g_assert_cmpfloat (corner[1].y, ==, 20000);
  g_assert_cmpfloat_with_epsilon (corner[2].y, 20000 - 15 * 12000.0 / 43985, 1e-9);
  g_assert_cmpfloat_with_epsilon (corner[3].y, 15 - 15 * 31985.0 / 43985, 1e-9);
  g_assert_cmpfloat (corner[4].y, ==, 0);
}

/* Walks along random outlines come back, and are told again as they were walked. */
static void
test_there_and_back (void)
{
  for (guint round = 0; round < 200; round++)
    {
      FpPoint outline[12], corner[13];
      FpLeg leg[12];
      const guint n = (guint) g_test_rand_int_range (3, 13);
      FpClosure closure;
      double direction;

      for (guint i = 0; i < n; i++)
        {
          const double a = 2 * G_PI * i / n, r = g_test_rand_double_range (3000, 30000);
          outline[i] = (FpPoint) { r * cos (a), r * sin (a) };
        }
      fp_traverse_from_outline (outline, n, leg, &direction);
      closure = fp_traverse_closure (leg, n, direction);
      g_assert_cmpfloat (closure.distance, <, 1e-6);
      g_assert_cmpfloat (fabs (closure.angle), <, 1e-6);
      fp_traverse_corners (leg, n, outline[0], direction, corner);
      for (guint i = 0; i < n; i++)
        g_assert_cmpfloat (hypot (corner[i].x - outline[i].x, corner[i].y - outline[i].y), <, 1e-6);
    }
}

static void
test_nothing (void)
{
  const FpLeg none[] = { { 0, 0 }, { 0, 0 } };
  FpPoint corner[3];

  fp_traverse_corners (none, 2, (FpPoint) { 5, 7 }, 13, corner);
  fp_traverse_adjust (corner, 2, NULL);
  g_assert_cmpfloat (corner[2].x, ==, 5);
  g_assert_cmpfloat (fp_traverse_closure (none, 0, 0).distance, ==, 0);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/traverse/rectangle", test_rectangle);
  g_test_add_func ("/traverse/gap", test_gap);
  g_test_add_func ("/traverse/compass-rule", test_compass_rule);
  g_test_add_func ("/traverse/kept", test_kept_sides);
  g_test_add_func ("/traverse/there-and-back", test_there_and_back);
  g_test_add_func ("/traverse/nothing", test_nothing);
  return g_test_run ();
}
