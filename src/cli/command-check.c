/* SPDX-License-Identifier: GPL-3.0-or-later */
/* footpace check: the findings of an alternative, or a row for each of many projects */
#include "check-books.h"
#include "check-many.h"

#include "footpace/review.h"

#include <string.h>

typedef struct
{
  char    *alternative, *as, *celebration;
  char   **rulebooks;
  gboolean every, rows, remedied;
} Asked;

static void
asked_clear (Asked *asked)
{
  g_free (asked->alternative);
  g_free (asked->as);
  g_free (asked->celebration);
  g_strfreev (asked->rulebooks);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Asked, asked_clear)

static char *
report (const Asked *asked, const FpFindings *findings)
{
  g_autoptr (FpRemedies) remedies = asked->remedied ? fp_remedies_new (findings, NULL) : NULL;

  if (g_strcmp0 (asked->as, "json") == 0)
    return fp_report_json_remedied (findings, remedies);
  return g_strcmp0 (asked->as, "csv") == 0 ? fp_report_csv (findings)
                                           : fp_report_text_remedied (findings, asked->every, remedies);
}

static int
check_one (const Asked *asked, const char *file, const GPtrArray *more)
{
  g_autoptr (FpProject) project = fp_command_load (file);
  g_autoptr (FpScene) scene = NULL;
  g_autoptr (FpFindings) findings = NULL;
  g_autoptr (GPtrArray) books = NULL;
  g_autofree char *text = NULL;
  int alternative;

  if (project == NULL || (alternative = fp_command_alternative (project, asked->alternative)) < 0)
    return FP_EXIT_ERROR;
  scene = fp_command_scene (project, (guint) alternative, asked->celebration);
  if (scene == NULL)
    return FP_EXIT_ERROR;
  books = fp_check_books_for (project, more);
  findings = fp_findings_of_scene (scene, books, NULL);
  text = report (asked, findings);
  if (fp_command_print (text, strlen (text)) != FP_EXIT_CLEAR)
    return FP_EXIT_ERROR;
  return fp_findings_short (findings, FP_WEIGHT_REQUIRED) > 0 ? FP_EXIT_SHORT : FP_EXIT_CLEAR;
}

static int
check_all (const Asked *asked, char *const *given, GPtrArray *books)
{
  g_autoptr (GPtrArray) files = fp_check_many_files (given, g_strv_length ((char **) given));
  const FpCheckMany many = { asked->alternative, books, g_strcmp0 (asked->as, "csv") == 0 };

  if (g_strcmp0 (asked->as, "json") == 0)
    return fp_command_fail ("--as json is of one project; of many there are rows: text or csv");
  if (asked->remedied)
    return fp_command_fail ("--remedies is of one project; of many there are rows, without remedies");
  if (asked->celebration != NULL || asked->every)
    return fp_command_fail ("--for and --all are of one project; of many there is a row for each");
  if (files->len == 0)
    return fp_command_fail ("there is no project (*.footpace) in the folder");
  return fp_check_many (&many, files);
}

static gboolean
is_one (char *const *files)
{
  return files[1] == NULL && !g_file_test (files[0], G_FILE_TEST_IS_DIR);
}

static int
run (int argc, char **argv)
{
  g_auto (Asked) asked = { 0 };
  g_auto (GStrv) files = NULL;
  g_autoptr (GPtrArray) books = NULL;
  int exit_code;
  const GOptionEntry entries[] = {
    { "alternative", 'a', 0, FP_OPTION_TEXT, &asked.alternative, "Which alternative, by id or name; otherwise the first", "ID" },
    { "for", 0, 0, FP_OPTION_TEXT, &asked.celebration, FP_COMMAND_FOR, "CELEBRATION" },
    { "all", 0, 0, G_OPTION_ARG_NONE, &asked.every, "List every rule, with what was measured or why it was not", NULL },
    { "remedies", 0, 0, G_OPTION_ARG_NONE, &asked.remedied,
      "Tell the smallest change that settles each, or what stands in the way", NULL },
    { "rulebook", 0, 0, G_OPTION_ARG_FILENAME_ARRAY, &asked.rulebooks,
      "Hold this book too, or in place of one that is kept; may be said again", "BOOK" },
    { "rows", 0, 0, G_OPTION_ARG_NONE, &asked.rows, "A row for each alternative, also of one project", NULL },
    { "as", 0, 0, FP_OPTION_TEXT, &asked.as, "text, json or csv; otherwise text", "FORM" },
    { NULL }
  };

  if (!fp_command_files (&fp_command_check, argc, argv, entries, &files, &exit_code))
    return exit_code;
  if (asked.as != NULL && !g_str_equal (asked.as, "text") && !g_str_equal (asked.as, "json") && !g_str_equal (asked.as, "csv"))
    return fp_command_fail_value ("--as", asked.as, "text, json or csv");
  books = fp_check_books_asked (asked.rulebooks);
  if (books == NULL)
    return FP_EXIT_ERROR;
  return is_one (files) && !asked.rows ? check_one (&asked, files[0], books) : check_all (&asked, files, books);
}

const FpCommand fp_command_check = {
  "check", "FILE…", "tells what was found, and against which printed sources",
  "Measures one alternative of the project FILE, holds it against the rulebooks, and\n"
  "tells what was found short, worst first: what was measured, what was asked, where,\n"
  "what to do about it, and where it is printed. Then come what was not checked and\n"
  "why, the rulebooks, and cautions. A remedy makes nothing worse that weighs as much;\n"
  "looking for them takes a little while.\n"
  "\n"
  "Of many files, or of folders with projects in them, every alternative gives a row;\n"
  "they are checked side by side, and one that cannot be read stops none.",
  "  footpace check parish.footpace\n"
  "  footpace check parish.footpace --alternative b --all\n"
  "  footpace check parish.footpace --remedies\n"
  "  footpace check parish.footpace --as json > findings.json\n"
  "  footpace check diocese/ --rulebook diocese.xml --as csv > rows.csv\n"
  "  find diocese/ -name '*.footpace' | parallel footpace check --rows\n",
  run
};
