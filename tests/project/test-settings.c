/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "making.h"

#include <string.h>

static void
step (FpProject **p, FpProject *next, GError **error)
{
  g_assert_no_error (*error);
  g_assert_nonnull (next);
  fp_project_unref (*p);
  *p = next;
}

static FpSettingChange
said (const FpProject *p, guint alternative, FpCelebration one, const char *id)
{
  return fp_alternative_setting (fp_project_alternative (p, alternative), one, id);
}

/* What nobody said is not kept; each of the three is said by itself. */
static void
test_said (void)
{
  g_autoptr (FpProject) p = test_parish (), was = fp_project_ref (p), meanwhile = NULL;
  g_autoptr (GError) error = NULL;
  FpSettingChange change = said (p, 0, FP_CELEBRATION_SUNG, "gradine");

  g_assert_true (fp_setting_change_is_empty (&change));
  change.lit = 4;
  step (&p, fp_project_with_setting (p, 0, FP_CELEBRATION_SUNG, "gradine", &change, &error), &error);
  g_assert_false (fp_project_equal (was, p));
  g_assert_cmpint (said (p, 0, FP_CELEBRATION_SUNG, "gradine").lit, ==, 4);
  g_assert_cmpint (said (p, 0, FP_CELEBRATION_SUNG, "gradine").stands, ==, FP_UNSAID);
  g_assert_cmpint (said (p, 0, FP_CELEBRATION_LOW, "gradine").lit, ==, FP_LIT_UNSAID);
  g_assert_cmpint (said (p, 1, FP_CELEBRATION_SUNG, "gradine").lit, ==, FP_LIT_UNSAID);
  g_assert_cmpint (said (was, 0, FP_CELEBRATION_SUNG, "gradine").lit, ==, FP_LIT_UNSAID);
  meanwhile = fp_project_ref (p);
  change.stands = FP_SAID_NO;
  step (&p, fp_project_with_setting (p, 0, FP_CELEBRATION_SUNG, "gradine", &change, &error), &error);
  g_assert_false (fp_project_equal (meanwhile, p));
  g_assert_cmpint (said (p, 0, FP_CELEBRATION_SUNG, "gradine").stands, ==, FP_SAID_NO);
  change = FP_SETTING_UNSAID;
  step (&p, fp_project_with_setting (p, 0, FP_CELEBRATION_SUNG, "gradine", &change, &error), &error);
  g_assert_true (fp_project_equal (was, p));
}

static void
test_colour_and_kept (void)
{
  g_autoptr (FpProject) p = test_parish (), was = fp_project_ref (p);
  g_autoptr (GError) error = NULL;
  FpColour colour;

  step (&p, fp_project_with_colour (p, 0, FP_CELEBRATION_REQUIEM, FP_COLOUR_VIOLET, &error), &error);
  g_assert_cmpint (fp_alternative_colour (fp_project_alternative (p, 0), FP_CELEBRATION_REQUIEM), ==, FP_COLOUR_VIOLET);
  g_assert_cmpint (fp_alternative_colour (fp_project_alternative (p, 0), FP_CELEBRATION_SUNG), ==, FP_COLOUR_UNSAID);
  g_assert_false (fp_project_equal (was, p));
  step (&p, fp_project_with_kept (p, 0, "gradine", "press, upper shelf", &error), &error);
  g_assert_cmpstr (fp_alternative_kept (fp_project_alternative (p, 0), "gradine"), ==, "press, upper shelf");
  /* its own text may be given back to it */
  step (&p, fp_project_with_kept (p, 0, "gradine", fp_alternative_kept (fp_project_alternative (p, 0), "gradine"), &error),
        &error);
  g_assert_cmpstr (fp_alternative_kept (fp_project_alternative (p, 0), "gradine"), ==, "press, upper shelf");
  step (&p, fp_project_without_setting (p, 0, FP_CELEBRATION_REQUIEM, &error), &error);
  step (&p, fp_project_with_kept (p, 0, "gradine", "", &error), &error);
  g_assert_true (fp_project_equal (was, p));

  for (guint i = FP_COLOUR_UNSAID + 1; i < FP_N_COLOURS; i++)
    {
      g_assert_true (fp_colour_find (fp_colour_id ((FpColour) i), &colour));
      g_assert_cmpint (colour, ==, i);
    }
  g_assert_false (fp_colour_find ("", &colour));
  g_assert_false (fp_colour_find ("mauve", &colour));
}

/* What is said of a thing goes with it, from every alternative where it was in the survey. */
static void
test_follows_things (void)
{
  g_autoptr (FpProject) p = test_parish ();
  g_autoptr (GError) error = NULL;
  const FpSettingChange none = { FP_SAID_NO, FP_UNSAID, FP_LIT_UNSAID };
  g_autoptr (FpProject) stranger = NULL;
  const char *survey_id = fp_item_id (fp_project_survey (p, fp_project_n_survey (p) - 1));
  g_autofree char *id = g_strdup (survey_id);

  step (&p, fp_project_with_setting (p, 0, FP_CELEBRATION_LOW, "gradine", &none, &error), &error);
  step (&p, fp_project_with_setting (p, 0, FP_CELEBRATION_LOW, id, &none, &error), &error);
  step (&p, fp_project_with_setting (p, 1, FP_CELEBRATION_LOW, id, &none, &error), &error);
  step (&p, fp_project_with_kept (p, 1, id, "loft", &error), &error);
  step (&p, fp_project_with_new_alternative (p, 0, "copy", "Copy", &error), &error);
  g_assert_cmpint (said (p, 2, FP_CELEBRATION_LOW, "gradine").stands, ==, FP_SAID_NO);
  step (&p, fp_project_without_item (p, 0, "gradine", &error), &error);
  g_assert_cmpint (said (p, 0, FP_CELEBRATION_LOW, "gradine").stands, ==, FP_UNSAID);
  g_assert_cmpint (said (p, 2, FP_CELEBRATION_LOW, "gradine").stands, ==, FP_SAID_NO);
  step (&p, fp_project_without_item (p, 0, id, &error), &error);
  for (guint i = 0; i < 3; i++)
    g_assert_cmpint (said (p, i, FP_CELEBRATION_LOW, id).stands, ==, FP_UNSAID);
  g_assert_cmpstr (fp_alternative_kept (fp_project_alternative (p, 1), id), ==, "");
  g_assert_true (fp_project_check (p, &error));

  stranger = fp_project_with_setting (p, 0, FP_CELEBRATION_LOW, id, &none, &error);
  g_assert_null (stranger);
  g_assert_error (error, FP_ERROR, FP_ERROR_REFERENCE);
}

static void
refused (FpProject *made, GError **error, FpError code)
{
  g_assert_null (made);
  g_assert_error (*error, FP_ERROR, (int) code);
  g_clear_error (error);
}

static void
test_refused (void)
{
  g_autoptr (FpProject) p = test_parish ();
  g_autoptr (GError) error = NULL;
  const FpSettingChange many = { FP_UNSAID, FP_UNSAID, FP_COUNT_MAX + 1 }, less = { FP_UNSAID, FP_UNSAID, -2 };
  const FpSettingChange maybe = { (FpSaid) 3, FP_UNSAID, FP_LIT_UNSAID }, none = { FP_SAID_NO, FP_UNSAID, FP_LIT_UNSAID };
  g_autofree char *long_text = g_strnfill (FP_TEXT_MAX + 1, 'x');

  refused (fp_project_with_setting (p, 0, FP_CELEBRATION_LOW, "gradine", &many, &error), &error, FP_ERROR_RANGE);
  refused (fp_project_with_setting (p, 0, FP_CELEBRATION_LOW, "gradine", &less, &error), &error, FP_ERROR_RANGE);
  refused (fp_project_with_setting (p, 0, FP_CELEBRATION_LOW, "gradine", &maybe, &error), &error, FP_ERROR_RANGE);
  refused (fp_project_with_setting (p, 0, (FpCelebration) 3, "gradine", &none, &error), &error, FP_ERROR_RANGE);
  refused (fp_project_with_setting (p, 0, FP_CELEBRATION_LOW, "no id", &none, &error), &error, FP_ERROR_INVALID);
  refused (fp_project_with_setting (p, 9, FP_CELEBRATION_LOW, "gradine", &none, &error), &error, FP_ERROR_REFERENCE);
  refused (fp_project_with_colour (p, 0, FP_CELEBRATION_LOW, FP_N_COLOURS, &error), &error, FP_ERROR_RANGE);
  refused (fp_project_with_kept (p, 0, "gradine", "two\nlines", &error), &error, FP_ERROR_INVALID);
  refused (fp_project_with_kept (p, 0, "gradine", long_text, &error), &error, FP_ERROR_LIMIT);
  refused (fp_project_with_kept (p, 0, "nothing", "loft", &error), &error, FP_ERROR_REFERENCE);
}

/* In whatever order they were decided. */
static void
test_equal (void)
{
  g_autoptr (FpProject) p = test_parish (), q = test_parish ();
  g_autoptr (GError) error = NULL;
  const FpSettingChange no = { FP_SAID_NO, FP_UNSAID, FP_LIT_UNSAID }, two = { FP_UNSAID, FP_UNSAID, 2 };

  step (&p, fp_project_with_setting (p, 0, FP_CELEBRATION_LOW, "gradine", &no, &error), &error);
  step (&p, fp_project_with_setting (p, 0, FP_CELEBRATION_SUNG, "gradine", &two, &error), &error);
  step (&q, fp_project_with_setting (q, 0, FP_CELEBRATION_SUNG, "gradine", &two, &error), &error);
  g_assert_false (fp_project_equal (p, q));
  step (&q, fp_project_with_setting (q, 0, FP_CELEBRATION_LOW, "gradine", &no, &error), &error);
  g_assert_true (fp_project_equal (p, q));
  step (&q, fp_project_with_setting (q, 0, FP_CELEBRATION_LOW, "gradine", &two, &error), &error);
  g_assert_false (fp_project_equal (p, q));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/settings/said", test_said);
  g_test_add_func ("/settings/colour-and-kept", test_colour_and_kept);
  g_test_add_func ("/settings/follows-things", test_follows_things);
  g_test_add_func ("/settings/refused", test_refused);
  g_test_add_func ("/settings/equal", test_equal);
  return g_test_run ();
}
