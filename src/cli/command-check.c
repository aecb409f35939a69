/* SPDX-License-Identifier: GPL-3.0-or-later */
/* footpace check: the findings of an alternative */
#include "command.h"

#include "footpace/review.h"

#include <string.h>

static int
print_findings (const FpScene *scene, gboolean json, gboolean every)
{
  g_autoptr (FpFindings) findings = fp_findings_of_scene (scene, NULL, NULL);
  g_autofree char *text = json ? fp_report_json (findings) : fp_report_text (findings, every);

  if (fp_command_print (text, strlen (text)) != FP_EXIT_CLEAR)
    return FP_EXIT_ERROR;
  return fp_findings_short (findings, FP_WEIGHT_REQUIRED) > 0 ? FP_EXIT_SHORT : FP_EXIT_CLEAR;
}

static int
run (int argc, char **argv)
{
  g_autofree char *file = NULL, *wanted = NULL, *as = NULL, *celebration = NULL;
  g_autoptr (FpScene) scene = NULL;
  g_autoptr (FpProject) project = NULL;
  gboolean every = FALSE;
  int exit_code, alternative;
  const GOptionEntry entries[] = {
    { "alternative", 'a', 0, FP_OPTION_TEXT, &wanted, "Which alternative, by id or name; otherwise the first", "ID" },
    { "for", 0, 0, FP_OPTION_TEXT, &celebration, FP_COMMAND_FOR, "CELEBRATION" },
    { "all", 0, 0, G_OPTION_ARG_NONE, &every, "List every rule, with what was measured or why it was not", NULL },
    { "as", 0, 0, FP_OPTION_TEXT, &as, "text or json; otherwise text", "FORM" },
    { NULL }
  };

  if (!fp_command_options (&fp_command_check, argc, argv, entries, &file, &exit_code))
    return exit_code;
  if (as != NULL && !g_str_equal (as, "text") && !g_str_equal (as, "json"))
    return fp_command_fail_value ("--as", as, "text or json");
  project = fp_command_load (file);
  if (project == NULL)
    return FP_EXIT_ERROR;
  alternative = fp_command_alternative (project, wanted);
  if (alternative < 0)
    return FP_EXIT_ERROR;
  scene = fp_command_scene (project, (guint) alternative, celebration);
  return scene == NULL ? FP_EXIT_ERROR : print_findings (scene, g_strcmp0 (as, "json") == 0, every);
}

const FpCommand fp_command_check = {
  "check", "FILE", "tells what was found, and against which printed sources",
  "Measures one alternative of the project FILE, holds it against the rulebooks, and\n"
  "tells what was found short, worst first: what was measured, what was asked, where,\n"
  "what to do about it, and where it is printed. Then come what was not checked and\n"
  "why, the rulebooks, and cautions.",
  "  footpace check parish.footpace\n"
  "  footpace check parish.footpace --alternative b --all\n"
  "  footpace check parish.footpace --as json > findings.json\n",
  run
};
