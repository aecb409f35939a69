/* SPDX-License-Identifier: GPL-3.0-or-later */
/* test-norms-value.c - norms as a part of a project: what is kept, and what is refused */
#include "footpace/norms-edit.h"

#include "making.h"

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

/* Takes the next project in the place of the last. */
static void
take (FpProject **project, FpProject *next, GError *error)
{
  g_assert_no_error (error);
  g_assert_nonnull (next);
  fp_project_unref (*project);
  *project = next;
}

static void
test_edits (void)
{
  g_autoptr (FpProject) first = test_parish (), project = fp_project_ref (first);
  const FpNormChange held = { "rail", "rail-height", FALSE, NAN, 800, "A" }, aside = { "rail", "rail-height", TRUE, NAN, NAN, "B" };
  const FpNormChoice choice = { "riser", "step-and-fall", "riser-schulte" };
  GError *error = NULL;

  take (&project, fp_norms_set_followed (project, "flame", FALSE, &error), error);
  take (&project, fp_norms_set_followed (project, "flame", FALSE, &error), error);
  g_assert_cmpuint (fp_project_norms (project)->n_without, ==, 1);
  take (&project, fp_norms_hold_otherwise (project, &held, &error), error);
  take (&project, fp_norms_hold_otherwise (project, &aside, &error), error);
  g_assert_cmpuint (fp_project_norms (project)->n_changes, ==, 1);
  g_assert_true (fp_project_norms (project)->change[0].aside);
  take (&project, fp_norms_go_by (project, &choice, &error), error);
  take (&project, fp_norms_set_jurisdiction (project, FP_JURISDICTION_UK, &error), error);
  take (&project, fp_norms_add_book (project, "d.xml", "<a>\r\n</a>", &error), error);
  take (&project, fp_norms_add_book (project, "d.xml", "<b>\r\n</b>", &error), error);
  g_assert_cmpuint (fp_project_norms (project)->n_own, ==, 1);
  g_assert_cmpstr (fp_project_norms (project)->own[0].xml, ==, "<b>\n</b>");
  /* And all of it taken back, nothing is left. */
  take (&project, fp_norms_remove_book (project, "d.xml", &error), error);
  take (&project, fp_norms_hold_as_printed (project, "rail", "rail-height", &error), error);
  take (&project, fp_norms_go_by_all (project, "riser", &error), error);
  take (&project, fp_norms_set_jurisdiction (project, FP_JURISDICTION_UNSAID, &error), error);
  take (&project, fp_norms_set_followed (project, "flame", TRUE, &error), error);
  g_assert_true (fp_project_equal (first, project));
}

static void
test_edit_refused (void)
{
  g_autoptr (FpProject) project = test_parish ();
  g_autoptr (GError) error = NULL;

  g_assert_null (fp_norms_add_book (project, "d.xml", "\x02", &error));
  g_assert_nonnull (strstr (error->message, "line 1 of “d.xml”"));
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
  g_test_add_func ("/norms-value/edits", test_edits);
  g_test_add_func ("/norms-value/edit-refused", test_edit_refused);
  return g_test_run ();
}
