/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "walk-editor.h"

#include "footpace/error.h"

#include <string.h>

static void
test_turns (void)
{
  const struct { const char *text; double turn; } good[] = {
    { "right 90", -90 }, { "left 45", 45 }, { "90", -90 }, { "R 30.5", -30.5 }, { "l 12,5°", 12.5 }, { "straight on", 0 },
    { " right 180/4 ", -45 }, { "0", 0 },
    { "90 left", 90 }, { "90° Right", -90 }, { "30.5l", 30.5 },
  };
  const char *const bad[] = { "", "right", "up 3", "right 181", "left 1e9", "right 90 90", "°", "left", "left 90 right" };

  for (guint i = 0; i < G_N_ELEMENTS (good); i++)
    {
      g_autoptr (GError) error = NULL;
      g_autofree char *again = NULL;
      double turn = 1234, back = 1234;

      g_assert_true (fp_turn_parse (good[i].text, &turn, &error));
      g_assert_no_error (error);
      g_assert_cmpfloat (turn, ==, good[i].turn);
      again = fp_turn_format (turn);
      g_assert_true (fp_turn_parse (again, &back, NULL));
      g_assert_cmpfloat (back, ==, turn);
    }
  for (guint i = 0; i < G_N_ELEMENTS (bad); i++)
    {
      g_autoptr (GError) error = NULL;
      double turn = 1234;

      g_assert_false (fp_turn_parse (bad[i], &turn, &error));
      g_assert_nonnull (error);
      g_assert_cmpfloat (turn, ==, 1234);
      /* As it was typed, not without its first letters. */
      if (!g_error_matches (error, FP_ERROR, FP_ERROR_RANGE))
        g_assert_nonnull (strstr (error->message, *bad[i] != '\0' ? bad[i] : "\"\""));
    }
}

/* A corner that was shifted by millimetres does not fill the field with digits. */
static void
test_turn_is_rounded (void)
{
  g_autofree char *right = fp_turn_format (-90.02147786211276), *straight = fp_turn_format (0.004);

  g_assert_cmpstr (right, ==, "right 90.02°");
  g_assert_cmpstr (straight, ==, "straight on");
}

static void
test_closing (void)
{
  const FpLeg square[] = { { 5000, -90 }, { 4000, -90 }, { 5000, -90 }, { 4000, -90 } };
  const FpLeg off[] = { { 5000, -90 }, { 4000, -90 }, { 5030, -90 }, { 4040, -85 } };
  const FpLeg long_off[] = { { 5000, -90 }, { 4000, -90 }, { 5000, -90 }, { 4200, -90 } };
  const FpClosure far = fp_traverse_closure (long_off, 4, 0);
  const FpClosure closed = fp_traverse_closure (square, 4, 0), open = fp_traverse_closure (off, 4, 0);
  g_autofree char *good = fp_closure_tells (&closed, TRUE, FP_UNITS_METRIC);
  g_autofree char *bad = fp_closure_tells (&open, FALSE, FP_UNITS_METRIC), *kept = fp_closure_tells (&open, TRUE, FP_UNITS_METRIC);
  g_autofree char *much = fp_closure_tells (&far, FALSE, FP_UNITS_METRIC);

  g_assert_cmpstr (good, ==, "It closes.");
  g_assert_cmpstr (bad, ==, "It fails to close by 50 mm in 18\u202f070 mm walked: the first corner lies 40 mm towards the "
                   "Epistle side and 30 mm east of where the walk ends. The turns add up to 5° less than once round. "
                   "That is shared out over the sides: up to 180 mm may be, 1 % of the way.");
  g_assert_nonnull (strstr (kept, " over the sides that were not typed: up to 180 mm"));
  g_assert_cmpstr (much, ==, "It fails to close by 200 mm in 18\u202f200 mm walked: the first corner lies 200 mm towards the "
                   "Epistle side of where the walk ends. That is too much to be shared out: up to 182 mm may "
                   "be, 1 % of the way.");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/walk/turns", test_turns);
  g_test_add_func ("/walk/turn-is-rounded", test_turn_is_rounded);
  g_test_add_func ("/walk/closing", test_closing);
  return g_test_run ();
}
