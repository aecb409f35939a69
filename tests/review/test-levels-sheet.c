/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The sheet of levels: what the rulebooks ask is what it measures by, and it says which scale fits. */
#include "taking.h"

#include "footpace/error.h"
#include "footpace/remedy.h"
#include "footpace/review.h"

#include <string.h>

static FpProject *
church_with_rows (void)
{
  FpProject *project = taking_church (FP_BOOKS_BOTH, FP_FACING_EAST, FP_CELEBRATION_LOW);

  taking_survey (&project, "pews", "pews", 0, -2000, "rise", 90);
  return project;
}

static FpDrawing *
sheet_of (const FpProject *project, double asked, double *scale, GError **error)
{
  g_autoptr (FpScene) scene = fp_scene_new (project, 0);
  const FpSheetSpec spec = { .paper = FP_PAPER_A4, .landscape = TRUE, .scale = asked };

  return fp_levels_sheet (scene, NULL, &spec, scale, error);
}

static gboolean
says (const FpDrawing *drawing, const char *text)
{
  guint n;
  const FpMark *mark = fp_drawing_marks (drawing, &n);

  for (guint i = 0; i < n; i++)
    if (mark[i].type == FP_MARK_TEXT && strstr (mark[i].text, text) != NULL)
      return TRUE;
  return FALSE;
}

/* All of them, in the order in which they are lettered. */
static char *
texts_of (const FpDrawing *drawing)
{
  g_autoptr (GString) all = g_string_new (NULL);
  guint n;
  const FpMark *mark = fp_drawing_marks (drawing, &n);

  for (guint i = 0; i < n; i++)
    if (mark[i].type == FP_MARK_TEXT)
      g_string_append_printf (all, "%s ", mark[i].text);
  return g_strdup (all->str);
}

/* levels: at least 1 mm below; International Building Code 2015, 1011.5.2: 4 to 7 in. */
static void
test_aims (void)
{
  g_autoptr (FpProject) project = church_with_rows ();
  g_autoptr (FpFindings) findings = taking_findings (project, FALSE);
  g_autoptr (GPtrArray) none = g_ptr_array_new ();
  g_autoptr (FpFindings) unruled = fp_findings_new (fp_findings_measuring (findings), none);
  const FpLevelAims aims = fp_level_aims (findings), free = fp_level_aims (unruled);

  g_assert_cmpfloat (aims.margin, ==, 1);
  g_assert_cmpfloat_with_epsilon (aims.risers.low, 101.6, 1e-9);
  g_assert_cmpfloat_with_epsilon (aims.risers.high, 177.8, 1e-9);
  g_assert_cmpfloat (free.margin, ==, 0);
  /* What a footpace can have at all. */
  g_assert_cmpfloat (free.risers.low, ==, 50);
  g_assert_cmpfloat (free.risers.high, ==, 250);
}

/* The last row stands at 810, the altar at 300 + 3 x 152 = 756. */
static void
test_sheet (void)
{
  g_autoptr (FpProject) project = church_with_rows ();
  double scale = 0;
  g_autoptr (FpDrawing) sheet = sheet_of (project, 0, &scale, NULL);
  g_autofree char *words = NULL;

  g_assert_nonnull (sheet);
  words = g_strdup_printf ("1:%g, heights ", scale);
  g_assert_true (says (sheet, words));
  g_assert_true (says (sheet, "+0.756 altar's floor"));
  g_assert_true (says (sheet, "8 of 80 places are not below"));
  g_assert_true (says (sheet, "is at +0.811"));
  g_assert_true (says (sheet, "Levels along the nave"));
}

/* What the sheet says of the first row is what is offered beside its finding, to the letter. */
static void
test_first_row (void)
{
  g_autoptr (FpProject) project = taking_church (FP_BOOKS_BOTH, FP_FACING_EAST, FP_CELEBRATION_LOW);

  taking_survey (&project, "pews", "pews", 0, -1000, "rows", 4);
  g_autoptr (FpFindings) findings = taking_findings (project, FALSE);
  g_autoptr (FpDrawing) sheet = sheet_of (project, 0, NULL, NULL);
  g_autofree char *all = texts_of (sheet), *words = NULL;
  FpFirstRow first;

  fp_first_row_find (findings, 60, &first);
  words = fp_first_row_words (&first, fp_findings_scene (findings));
  g_assert_cmpint (first.how, ==, FP_FIRST_ROW_BY_STEPS);
  g_assert_nonnull (strstr (all, words));
}

static void
test_too_large (void)
{
  g_autoptr (FpProject) project = church_with_rows ();
  g_autoptr (GError) error = NULL;
  double scale = 0;
  g_autoptr (FpDrawing) fits = sheet_of (project, 0, &scale, NULL);
  g_autofree char *says_which = g_strdup_printf ("at 1:1; the largest scale that fits is 1:%g", scale);
  g_autoptr (FpDrawing) none = sheet_of (project, 1, NULL, &error);
  g_autoptr (FpDrawing) asked = sheet_of (project, scale + 30, NULL, NULL);

  g_assert_null (none);
  g_assert_error (error, FP_ERROR, FP_ERROR_RANGE);
  g_assert_nonnull (strstr (error->message, says_which));
  g_assert_nonnull (asked);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/levels-sheet/aims", test_aims);
  g_test_add_func ("/levels-sheet/sheet", test_sheet);
  g_test_add_func ("/levels-sheet/first-row", test_first_row);
  g_test_add_func ("/levels-sheet/too-large", test_too_large);
  return g_test_run ();
}
