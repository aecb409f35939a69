/* SPDX-License-Identifier: GPL-3.0-or-later */
/* test-reckoning.c - by what a parish reckons its capacity: what may be said, and what is not said */
#include "footpace/history.h"

#include <math.h>
#include <string.h>

static void
assert_refused (FpReckoningPart part, double value, const char *says)
{
  g_autoptr (GError) error = NULL;
  FpReckoning reckoning = fp_reckoning_usual;

  g_assert_false (fp_reckoning_set (&reckoning, part, value, &error));
  g_assert_error (error, FP_ERROR, FP_ERROR_RANGE);
  g_test_message ("%s", error->message);
  g_assert_nonnull (strstr (error->message, says));
  g_assert_true (fp_reckoning_equal (&reckoning, &fp_reckoning_usual));
}

static void
assert_may (FpReckoningPart part, double value)
{
  FpReckoning reckoning = fp_reckoning_usual;

  g_assert_true (fp_reckoning_set (&reckoning, part, value, NULL));
  g_assert_cmpfloat (fp_reckoning_get (&reckoning, part), ==, value);
  g_assert_false (fp_reckoning_unsaid (&reckoning, part));
  g_assert_true (fp_reckoning_check (&reckoning, NULL));
}

/* Just inside and just outside of what the header says. */
static void
test_ranges (void)
{
  assert_may (FP_RECKONING_PEOPLE, 1);
  assert_may (FP_RECKONING_PEOPLE, 20000);
  assert_refused (FP_RECKONING_PEOPLE, 0, "how many communicate is 0; it may be a whole number, 1 to 20000");
  assert_refused (FP_RECKONING_PEOPLE, 20001, "how many communicate");
  assert_refused (FP_RECKONING_PEOPLE, 12.5, "a whole number");
  assert_may (FP_RECKONING_MINISTERS, 50);
  assert_refused (FP_RECKONING_MINISTERS, 51, "how many give Communion");
  assert_refused (FP_RECKONING_LINES, -1, "the number of lines");
  assert_may (FP_RECKONING_EACH, 0.1);
  assert_refused (FP_RECKONING_EACH, 0.09, "0.1 to 600 seconds");
  assert_may (FP_RECKONING_CHANGE, 0);
  assert_may (FP_RECKONING_BACK, 600);
  assert_refused (FP_RECKONING_BACK, 600.5, "the way back along the rail");
  assert_refused (FP_RECKONING_STEP, INFINITY, "the step to the next in a line");
}

/* A blank takes back what was said; that nobody gives Communion cannot be said. */
static void
test_unsaid (void)
{
  FpReckoning reckoning = fp_reckoning_usual;

  for (guint i = 0; i < FP_N_RECKONINGS; i++)
    g_assert_cmpint (fp_reckoning_unsaid (&reckoning, (FpReckoningPart) i), ==, i != FP_RECKONING_MINISTERS);
  g_assert_true (fp_reckoning_set (&reckoning, FP_RECKONING_EACH, 4, NULL));
  g_assert_true (fp_reckoning_set (&reckoning, FP_RECKONING_PEOPLE, 90, NULL));
  g_assert_false (fp_reckoning_equal (&reckoning, &fp_reckoning_usual));
  g_assert_true (fp_reckoning_set (&reckoning, FP_RECKONING_EACH, NAN, NULL));
  g_assert_true (fp_reckoning_set (&reckoning, FP_RECKONING_PEOPLE, NAN, NULL));
  g_assert_true (fp_reckoning_equal (&reckoning, &fp_reckoning_usual));
  assert_refused (FP_RECKONING_MINISTERS, NAN, "how many give Communion");
  reckoning.sprinklers = TRUE;
  g_assert_false (fp_reckoning_equal (&reckoning, &fp_reckoning_usual));
}

/* One edit, taken back by one step; the project before has nothing of it, and later ones keep it. */
static void
test_of_a_project (void)
{
  const FpBrief brief = { .title = "Sanctuary of Saint Vedast", .ministers = 3, .percentile = 50 };
  g_autoptr (FpProject) project = fp_project_new (&brief), next = NULL, other = NULL;
  FpReckoning reckoning = fp_reckoning_usual;
  FpHistory *history = fp_history_new (project, TRUE);
  g_autoptr (GError) error = NULL;

  reckoning.ministers = 2;
  reckoning.each = 4;
  next = fp_project_with_reckoning (project, &reckoning, NULL);
  fp_history_push (history, next, "Communion", NULL);
  g_assert_true (fp_reckoning_equal (fp_project_reckoning (fp_history_now (history)), &reckoning));
  g_assert_false (fp_project_equal (project, fp_history_now (history)));
  other = fp_project_with_new_alternative (fp_history_now (history), 0, "b", "B", NULL);
  g_assert_true (fp_reckoning_equal (fp_project_reckoning (other), &reckoning));
  g_assert_true (fp_history_undo (history));
  g_assert_true (fp_project_equal (project, fp_history_now (history)));
  reckoning.each = -2;
  g_assert_null (fp_project_with_reckoning (project, &reckoning, &error));
  g_assert_error (error, FP_ERROR, FP_ERROR_RANGE);
  fp_history_free (history);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/reckoning/ranges", test_ranges);
  g_test_add_func ("/reckoning/unsaid", test_unsaid);
  g_test_add_func ("/reckoning/of-a-project", test_of_a_project);
  return g_test_run ();
}
