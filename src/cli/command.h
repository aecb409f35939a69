/* SPDX-License-Identifier: GPL-3.0-or-later */
/* command.h - what a command is, and what commands share
 *
 * A new command is a file with one `const FpCommand` and a line in the table
 * of cli.c.
 */
#pragma once

#include "cli.h"
#include "footpace/project.h"
#include "footpace/rules.h"

G_BEGIN_DECLS

typedef struct
{
  const char *name;
  const char *arguments; /* "FILE"                                     */
  const char *tells;     /* one line for --help                        */
  /* argv[0] is the command's name; returns the exit code.             */
  int (*run) (int argc, char **argv);
} FpCommand;

extern const FpCommand fp_command_check;
extern const FpCommand fp_command_draw;
extern const FpCommand fp_command_compare;

/* Parses options by @entries; prints what is wrong, or the help asked for.
 * @file: (out) (transfer full): the one file that every command works on
 * Returns: TRUE to go on; otherwise @exit_code is set. */
gboolean   fp_command_options (const FpCommand *command, int argc, char **argv, const GOptionEntry *entries,
                               char **file, int *exit_code);

/* Prints "footpace: reason" on standard error. Returns FP_EXIT_ERROR. */
int        fp_command_fail (const char *reason);

/* NULL after having said why. */
FpProject *fp_command_load (const char *file);

/* Index of the alternative by id or name (NULL: the first); -1 after having said which there are. */
int        fp_command_alternative (const FpProject *project, const char *wanted);

G_END_DECLS
