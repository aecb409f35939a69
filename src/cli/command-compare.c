/* SPDX-License-Identifier: GPL-3.0-or-later */
/* footpace compare: the alternatives side by side */
#include "command.h"

#include "comparing.h"

#include <string.h>

static int
run (int argc, char **argv)
{
  g_autofree char *file = NULL, *text = NULL;
  g_autoptr (FpProject) project = NULL;
  g_autoptr (GPtrArray) findings = NULL;
  g_autoptr (FpComparison) comparison = NULL;
  g_autoptr (FpComparison) by_moment = NULL;
  gboolean moments = FALSE;
  const GOptionEntry entries[] = {
    { "moments", 'm', 0, G_OPTION_ARG_NONE, &moments, "Who sees all of what, moment by moment, instead", NULL },
    { NULL },
  };
  int exit_code;

  if (!fp_command_options (&fp_command_compare, argc, argv, entries, &file, &exit_code))
    return exit_code;
  project = fp_command_load (file);
  if (project == NULL)
    return FP_EXIT_ERROR;
  findings = fp_comparing_findings (project);
  comparison = fp_comparing_new (findings);
  if (moments)
    by_moment = fp_comparison_by_moment (comparison);
  text = fp_comparison_text (moments ? by_moment : comparison);
  if (fp_command_print (text, strlen (text)) != FP_EXIT_CLEAR)
    return FP_EXIT_ERROR;
  return fp_comparing_exit (findings);
}

const FpCommand fp_command_compare = {
  "compare", "FILE", "sets the alternatives side by side in a table",
  "Measures every alternative of the project FILE and sets them side by side: levels,\n"
  "what is seen, the rail, findings, and what is kept, new, moved and removed.\n"
  "To draw them side by side: footpace draw FILE --sheet compare --out FILE.pdf",
  "  footpace compare parish.footpace\n"
  "  footpace compare parish.footpace --moments\n",
  run
};
