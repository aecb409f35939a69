/* SPDX-License-Identifier: GPL-3.0-or-later */
/* test-norms-value.c - norms as a part of a project: what is kept, and what is refused */
#include "footpace/project.h"

#include <math.h>
#include <string.h>

static void
assert_refused (const FpNorms *norms, const char *says)
{
  g_autoptr (GError) error = NULL;

  g_assert_false (fp_norms_check (norms, &error));
  g_assert_nonnull (error);
  g_test_message ("%s", error->message);
  g_assert_true (g_str_has_prefix (error->message, "norms: "));
  g_assert_nonnull (strstr (error->message, says));
}

static void
assert_change_refused (FpNormChange change, const char *says)
{
  const FpNorms norms = { .change = &change, .n_changes = 1 };

  assert_refused (&norms, says);
}

static void
test_refused (void)
{
  const FpNormChange twice[] = { { "rail", "x", TRUE, NAN, NAN, "A" }, { "rail", "x", FALSE, 1, NAN, "B" } };
  const char *const books[] = { "rail", "flame", "rail" };
  const FpNormBook own[] = { { "a", "<x/>" }, { "a", "<y/>" } };
  const FpNormBook control = { "a", "<x>\x01</x>" };
  g_autofree char *line = g_strnfill (FP_NORM_OWN_LINE + 1, 'x');
  const FpNormBook broad = { "broad.xml", line };

  assert_change_refused ((FpNormChange) { "Rail", "x", TRUE, NAN, NAN, "A" }, "“Rail” is no id of a book");
  assert_change_refused ((FpNormChange) { "rail", "", TRUE, NAN, NAN, "A" }, "is no id of a rule");
  assert_change_refused ((FpNormChange) { "rail", "x", TRUE, NAN, NAN, "" }, "no reason is given");
  assert_change_refused ((FpNormChange) { "rail", "x", FALSE, NAN, NAN, "A" }, "it is not said how");
  assert_change_refused ((FpNormChange) { "rail", "x", FALSE, 2, 1, "A" }, "which is nowhere");
  assert_change_refused ((FpNormChange) { "rail", "x", FALSE, INFINITY, NAN, "A" }, "out of all measure");
  assert_refused (&(FpNorms) { .change = twice, .n_changes = 2 }, "is changed twice");
  assert_refused (&(FpNorms) { .without = books, .n_without = 3 }, "“rail” is left out twice");
  assert_refused (&(FpNorms) { .own = own, .n_own = 2 }, "two rulebooks are called “a”");
  assert_refused (&(FpNorms) { .own = &control, .n_own = 1 }, "control character");
  assert_refused (&(FpNorms) { .own = &broad, .n_own = 1 }, "line 1 of “broad.xml” is longer");
  assert_refused (&(FpNorms) { .jurisdiction = FP_N_JURISDICTIONS }, "the jurisdiction");
}

static void
test_found (void)
{
  const FpNormChange change = { "rail", "rail-height", FALSE, NAN, 800, "A" };
  const FpNormChoice choice = { "riser", "step-and-fall", "riser-schulte" };
  const char *const books[] = { "flame" };
  const FpNorms norms = { .change = &change, .n_changes = 1, .choice = &choice, .n_choices = 1, .without = books, .n_without = 1 };

  g_assert_true (fp_norms_check (&norms, NULL));
  g_assert_true (fp_norms_change (&norms, "rail", "rail-height") == &change);
  g_assert_null (fp_norms_change (&norms, "rail", "rail-top"));
  g_assert_true (fp_norms_choice (&norms, "riser") == &choice);
  g_assert_null (fp_norms_choice (&norms, "tread"));
  g_assert_false (fp_norms_follow (&norms, "flame"));
  g_assert_true (fp_norms_follow (&norms, "rail"));
  g_assert_true (fp_norms_equal (&norms, &norms));
  g_assert_false (fp_norms_equal (&norms, &fp_norms_usual));
}

static void
test_jurisdictions (void)
{
  for (guint i = 0; i < FP_N_JURISDICTIONS; i++)
    {
      FpJurisdiction found;

      g_assert_true (fp_jurisdiction_find (fp_jurisdiction_id ((FpJurisdiction) i), &found));
      g_assert_cmpint (found, ==, i);
      g_assert_cmpuint (strlen (fp_jurisdiction_label (found)), >, 0);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/norms-value/refused", test_refused);
  g_test_add_func ("/norms-value/found", test_found);
  g_test_add_func ("/norms-value/jurisdictions", test_jurisdictions);
  return g_test_run ();
}
