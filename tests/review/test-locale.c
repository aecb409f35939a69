/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Where people write 0,35 the report, the table, the data and the sheets still say 0.35, and are the same. */
#include "footpace/review.h"

#include "comma.h"
#include "taking.h"

#include <glib/gstdio.h>
#include <locale.h>
#include <string.h>

static FpProject *
church (FpUnits units)
{
  FpProject *project = taking_church (FP_BOOKS_BOTH, FP_FACING_EAST, FP_CELEBRATION_LOW);

  taking_survey (&project, "pews", "pews", 0, -2000, NULL, 0);
  taking_add (&project, "rail", "rail", NULL, 0, 405, NULL, 0);
  taking_add (&project, "credence", "credence", NULL, 3000, 8000, NULL, 0);
  taking_altar_group (&project, 2);
  taking_units (&project, units);
  church_param (&project, "nave", "fall", 0.06); /* 1:16.7 */
  church_param (&project, "steps", "riser", 152.4);
  return project;
}

static char *
sheet (const FpScene *scene, FpSheetKind kind)
{
  FpSheetSpec spec = { .kind = kind, .paper = FP_PAPER_A2, .landscape = TRUE, .whole = TRUE, .date = "2020-01-01" };
  g_autoptr (GError) error = NULL;
  g_autoptr (FpDrawing) drawing = fp_sheet_new (scene, &spec, NULL, &error);
  g_autofree char *folder = g_dir_make_tmp ("footpace-sheet-XXXXXX", NULL);
  g_autofree char *path = g_build_filename (folder, "sheet.svg", NULL);
  char *svg = NULL;

  g_assert_no_error (error);
  g_assert_true (fp_drawing_write_svg (drawing, scene, "Test", path, &error));
  g_assert_true (g_file_get_contents (path, &svg, NULL, NULL));
  g_unlink (path);
  g_rmdir (folder);
  return svg;
}

/* Everything that is handed to people, in one text. */
static char *
all_of_it (const FpProject *project)
{
  g_autoptr (FpFindings) findings = taking_findings (project, TRUE);
  FpFindings *const columns[] = { findings };
  g_autoptr (FpComparison) comparison = fp_comparison_new (columns, 1);
  g_autofree char *text = fp_report_text (findings, TRUE), *json = fp_report_json (findings);
  g_autofree char *table = fp_comparison_text (comparison);
  g_autofree char *plan = sheet (fp_findings_scene (findings), FP_SHEET_PLAN);
  g_autofree char *section = sheet (fp_findings_scene (findings), FP_SHEET_SECTION);

  return g_strjoin ("\n=====\n", text, json, table, plan, section, NULL);
}

static void
assert_same (const char *before, const char *after)
{
  g_auto (GStrv) a = g_strsplit (before, "\n", -1), b = g_strsplit (after, "\n", -1);

  for (guint i = 0; a[i] != NULL || b[i] != NULL; i++)
    g_assert_cmpstr (a[i], ==, b[i]);
}

static void
test_comma (gconstpointer data)
{
  g_autoptr (FpProject) project = church ((FpUnits) GPOINTER_TO_UINT (data));
  g_autofree char *before = NULL, *after = NULL;

  setlocale (LC_ALL, "C.UTF-8");
  before = all_of_it (project);
  if (!comma_locale ())
    {
      g_test_skip ("no locale with a decimal comma can be had");
      return;
    }
  g_assert_cmpstr (localeconv ()->decimal_point, ==, ",");
  after = all_of_it (project);
  setlocale (LC_ALL, "C.UTF-8");
  g_assert_nonnull (strstr (before, "1:16.7"));
  assert_same (before, after);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_data_func ("/locale/metric", GUINT_TO_POINTER (FP_UNITS_METRIC), test_comma);
  g_test_add_data_func ("/locale/imperial", GUINT_TO_POINTER (FP_UNITS_IMPERIAL), test_comma);
  return g_test_run ();
}
