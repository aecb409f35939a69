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
  const char *tells;     /* in one line                                */
  const char *about;     /* in a paragraph, for its own --help         */
  const char *examples;  /* lines indented by two, each ended          */
  /* argv[0] is the command's name; returns the exit code.             */
  int (*run) (int argc, char **argv);
} FpCommand;

extern const FpCommand fp_command_check;
extern const FpCommand fp_command_draw;
extern const FpCommand fp_command_sight;
extern const FpCommand fp_command_compare;
extern const FpCommand fp_command_sun;
extern const FpCommand fp_command_linen;
extern const FpCommand fp_command_card;
extern const FpCommand fp_command_schedule;
extern const FpCommand fp_command_measures;
extern const FpCommand fp_command_capacity;

/* Parses options by @entries; prints what is wrong, or the help asked for.
 * @file: (out) (transfer full): the one file that every command works on
 * Returns: TRUE to go on; otherwise @exit_code is set. */
gboolean   fp_command_options (const FpCommand *command, int argc, char **argv, const GOptionEntry *entries,
                               char **file, int *exit_code);

/* The same of a command that works on one file or many, at least one. */
gboolean   fp_command_files (const FpCommand *command, int argc, char **argv, const GOptionEntry *entries,
                             char ***files, int *exit_code);
/* The same of a command that works on none. */
gboolean   fp_command_without_files (const FpCommand *command, int argc, char **argv, const GOptionEntry *entries,
                                     int *exit_code);

/* Words are taken as the bytes that they are: the library would refuse what the locale cannot encode. */
#define FP_OPTION_TEXT G_OPTION_ARG_FILENAME

/* Prints "footpace: reason" on standard error. Returns FP_EXIT_ERROR. */
int        fp_command_fail (const char *reason);
/* "--as is “prose”, expected text or json"; @value NULL: "--sheet is missing, expected …" */
int        fp_command_fail_value (const char *option, const char *value, const char *expected);
/* Prints "footpace: note: …" on standard error. */
void       fp_command_note (const char *note);

/* Writes to standard output, UTF-8 whatever the locale.
 * Returns FP_EXIT_CLEAR, or FP_EXIT_ERROR after having said why. */
int        fp_command_print (const char *text, gsize length);

/* NULL after having said why. */
FpProject *fp_command_load (const char *file);

/* Index of the alternative by id or name (NULL: the first); -1 after having said which there are. */
int        fp_command_alternative (const FpProject *project, const char *wanted);

/* Of all things, or (@celebration, nullable) as set for one; NULL after having said which there are. */
FpScene   *fp_command_scene (const FpProject *project, guint alternative, const char *celebration);
/* "low, sung … or bishop"; the caller's. */
char      *fp_command_celebrations (void);
#define FP_COMMAND_FOR "As set for this celebration: low, sung …; otherwise all things"

G_END_DECLS
