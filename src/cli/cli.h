/* SPDX-License-Identifier: GPL-3.0-or-later */
/* cli.h - footpace on the command line; needs no display */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* Exit codes, also written in --help. */
enum
{
  FP_EXIT_CLEAR = 0, /* nothing required was found short             */
  FP_EXIT_SHORT = 1, /* something required was found short           */
  FP_EXIT_ERROR = 2, /* input not read, output not written, bad use  */
};

/* Whether these arguments ask for a command or an option of the command
 * line; otherwise they are files for the window. */
gboolean fp_cli_wants (int argc, char **argv);

/* Runs it; returns the exit code. Reasons for 2 go to standard error. */
int fp_cli_main (int argc, char **argv);

G_END_DECLS
