/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "application.h"

#include "cli.h"

int
main (int argc, char **argv)
{
  g_autoptr (GtkApplication) app = NULL;

  if (fp_cli_wants (argc, argv))
    return fp_cli_main (argc, argv);
  app = fp_application_new ();
  return g_application_run (G_APPLICATION (app), argc, argv);
}
