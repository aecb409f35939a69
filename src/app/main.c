/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "application.h"

#include "cli.h"

#include <gtk/gtk.h>
#include <signal.h>
#include <stdio.h>

/* As the commands end when something could not be done. */
#define EXIT_NOT_DONE 2

/* The file that is to be opened first; NULL. */
static const char *
first_file (int argc, char **argv)
{
  return argc > 1 && *argv[1] != '-' ? argv[1] : NULL;
}

int
main (int argc, char **argv)
{
  g_autoptr (GtkApplication) app = NULL;
  g_autoptr (FpAhead) ahead = NULL;

  /* Where files may not grow further, that is told as a full disk is: to be killed for it would leave half a file. */
  signal (SIGXFSZ, SIG_IGN);
  if (fp_cli_wants (argc, argv))
    return fp_cli_main (argc, argv);
  if (first_file (argc, argv) != NULL)
    ahead = fp_ahead_begin (first_file (argc, argv));
  if (!gtk_init_check ())
    {
      fputs ("footpace: there is no display for the window. The commands need none: footpace --help lists them.\n", stderr);
      return EXIT_NOT_DONE;
    }
  /* Its icons are looked for on a thread that begins here: the window is built meanwhile, and shown with them. */
  gtk_icon_theme_get_for_display (gdk_display_get_default ());
  /* A terminal that is closed takes no project with it. */
  signal (SIGPIPE, SIG_IGN);
  app = fp_application_new ();
  fp_application_take_ahead (FP_APPLICATION (app), g_steal_pointer (&ahead));
  return g_application_run (G_APPLICATION (app), argc, argv);
}
