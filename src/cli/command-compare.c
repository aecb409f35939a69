/* SPDX-License-Identifier: GPL-3.0-or-later */
/* footpace compare: the alternatives side by side */
#include "command.h"

#include "comparing.h"

static int
run (int argc, char **argv)
{
  g_autofree char *file = NULL, *text = NULL;
  g_autoptr (FpProject) project = NULL;
  g_autoptr (GPtrArray) findings = NULL;
  g_autoptr (FpComparison) comparison = NULL;
  const GOptionEntry entries[] = { { NULL } };
  int exit_code;

  if (!fp_command_options (&fp_command_compare, argc, argv, entries, &file, &exit_code))
    return exit_code;
  project = fp_command_load (file);
  if (project == NULL)
    return FP_EXIT_ERROR;
  findings = fp_comparing_findings (project);
  comparison = fp_comparing_new (findings);
  text = fp_comparison_text (comparison);
  g_print ("%s", text);
  return fp_comparing_exit (findings);
}

const FpCommand fp_command_compare = { "compare", "FILE", "sets the alternatives side by side in a table", run };
