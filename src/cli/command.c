/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "command.h"

#include "footpace/store.h"

#include <errno.h>
#include <stdio.h>
#include <string.h>

/* UTF-8 whatever the locale: names and units are not told by question marks. */
static void
say (const char *text)
{
  fputs (text, stderr);
}

int
fp_command_fail (const char *reason)
{
  say ("footpace: ");
  say (reason);
  say ("\n");
  return FP_EXIT_ERROR;
}

int
fp_command_fail_value (const char *option, const char *value, const char *expected)
{
  g_autofree char *shown = value != NULL ? g_utf8_make_valid (value, -1) : NULL;
  g_autofree char *reason = shown != NULL ? g_strdup_printf ("%s is “%s”, expected %s", option, shown, expected)
                                          : g_strdup_printf ("%s is missing, expected %s", option, expected);

  return fp_command_fail (reason);
}

void
fp_command_note (const char *note)
{
  say ("footpace: note: ");
  say (note);
  say ("\n");
}

int
fp_command_print (const char *text, gsize length)
{
  g_autofree char *reason = NULL;

  if (fwrite (text, 1, length, stdout) == length && fflush (stdout) == 0)
    return FP_EXIT_CLEAR;
  reason = g_strdup_printf ("standard output could not be written: %s", g_strerror (errno));
  return fp_command_fail (reason);
}

/* --- options ------------------------------------------------------------- */

#define EXIT_STATUS \
  "Exit status:\n" \
  "  0  done; check and compare: nothing that is required was found short\n" \
  "  1  check and compare: something that is required was found short\n" \
  "  2  bad use, input that could not be read, or output that could not be written\n" \
  "\n" \
  "Footpace approves nothing. Local codes and licensed architects and engineers decide.\n"

static GOptionContext *
new_context (const FpCommand *command, const GOptionEntry *entries)
{
  GOptionContext *context = g_option_context_new (command->arguments);
  g_autofree char *after = g_strdup_printf ("Examples:\n%s\n" EXIT_STATUS, command->examples);

  g_option_context_set_summary (context, command->about);
  g_option_context_set_description (context, after);
  g_option_context_add_main_entries (context, entries, NULL);
  /* The library's own --help would print and exit from inside a library. */
  g_option_context_set_help_enabled (context, FALSE);
  return context;
}

static gboolean
misused (const FpCommand *command, const char *reason)
{
  g_autofree char *hint = g_strdup_printf ("Try: footpace %s --help\n", command->name);

  fp_command_fail (reason);
  say (hint);
  return FALSE;
}

/* Always FALSE: there is nothing more to do. */
static gboolean
print_help (GOptionContext *context, int *exit_code)
{
  g_autofree char *text = g_option_context_get_help (context, TRUE, NULL);

  *exit_code = fp_command_print (text, strlen (text));
  return FALSE;
}

/* Options may have taken arguments away, and "--" remains. */
static guint
files_given (int *argc, char **argv)
{
  if (*argc > 1 && g_str_equal (argv[1], "--"))
    {
      memmove (argv + 1, argv + 2, (gsize) (*argc - 2) * sizeof *argv);
      --*argc;
    }
  return (guint) (*argc - 1);
}

/* TRUE to go on, with what is left in @argv. */
static gboolean
parse (const FpCommand *command, int *argc, char ***argv, const GOptionEntry *entries, int *exit_code)
{
  g_autofree char *name = g_strconcat ("footpace ", command->name, NULL);
  g_autoptr (GOptionContext) context = new_context (command, entries);
  gboolean help = FALSE;
  const GOptionEntry own[] = { { "help", 'h', 0, G_OPTION_ARG_NONE, &help, "Show this help", NULL }, { NULL } };
  g_autoptr (GError) error = NULL;

  g_option_context_add_main_entries (context, own, NULL);
  g_set_prgname (name); /* as the help calls it */
  *exit_code = FP_EXIT_ERROR;
  if (!g_option_context_parse (context, argc, argv, &error))
    return misused (command, error->message);
  return help ? print_help (context, exit_code) : TRUE;
}

gboolean
fp_command_files (const FpCommand *command, int argc, char **argv, const GOptionEntry *entries, char ***files, int *exit_code)
{
  guint given;

  if (!parse (command, &argc, &argv, entries, exit_code))
    return FALSE;
  given = files_given (&argc, argv);
  if (given == 0 || (given == 1 && *argv[1] == '\0')) /* a script's variable that was never set */
    {
      g_autofree char *reason = g_strdup_printf ("%s needs a project to read: FILE is missing", command->name);

      return misused (command, reason);
    }
  *files = g_strdupv (argv + 1);
  return TRUE;
}

gboolean
fp_command_without_files (const FpCommand *command, int argc, char **argv, const GOptionEntry *entries, int *exit_code)
{
  if (!parse (command, &argc, &argv, entries, exit_code))
    return FALSE;
  if (files_given (&argc, argv) > 0)
    {
      g_autofree char *reason = g_strdup_printf ("%s reads no file", command->name);

      return misused (command, reason);
    }
  return TRUE;
}

gboolean
fp_command_options (const FpCommand *command, int argc, char **argv, const GOptionEntry *entries, char **file,
                    int *exit_code)
{
  g_auto (GStrv) files = NULL;

  if (!fp_command_files (command, argc, argv, entries, &files, exit_code))
    return FALSE;
  if (g_strv_length (files) != 1)
    {
      g_autofree char *reason = g_strdup_printf ("%s reads one project, and was given %u", command->name, g_strv_length (files));

      *exit_code = FP_EXIT_ERROR;
      return misused (command, reason);
    }
  *file = g_strdup (files[0]);
  return TRUE;
}

/* --- the project --------------------------------------------------------- */

FpProject *
fp_command_load (const char *file)
{
  g_autoptr (GError) error = NULL;
  FpProject *project = fp_store_load (file, &error);

  if (project == NULL)
    fp_command_fail (error->message);
  return project;
}

static void
say_which_there_are (const FpProject *project, const char *wanted)
{
  g_autoptr (GString) text = g_string_new (NULL);
  g_autofree char *shown = g_utf8_make_valid (wanted, -1);

  g_string_printf (text, "there is no alternative “%s”; there are:", shown);
  for (guint i = 0; i < fp_project_n_alternatives (project); i++)
    {
      const FpAlternative *one = fp_project_alternative (project, i);
      g_string_append_printf (text, "\n  %s (%s)", fp_alternative_id (one), fp_alternative_name (one));
    }
  fp_command_fail (text->str);
}

int
fp_command_alternative (const FpProject *project, const char *wanted)
{
  if (wanted == NULL)
    return 0;
  for (guint i = 0; i < fp_project_n_alternatives (project); i++)
    {
      const FpAlternative *one = fp_project_alternative (project, i);
      if (g_str_equal (fp_alternative_id (one), wanted) || g_str_equal (fp_alternative_name (one), wanted))
        return (int) i;
    }
  say_which_there_are (project, wanted);
  return -1;
}

char *
fp_command_celebrations (void)
{
  g_autoptr (GString) out = g_string_new ("");

  for (guint i = 0; i < FP_N_CELEBRATIONS; i++)
    g_string_append_printf (out, "%s%s", i == 0 ? "" : i + 1 < FP_N_CELEBRATIONS ? ", " : " or ",
                            fp_celebration_id ((FpCelebration) (1u << i)));
  return g_strdup (out->str);
}

FpScene *
fp_command_scene (const FpProject *project, guint alternative, const char *celebration)
{
  g_autoptr (FpScene) whole = NULL;
  g_autofree char *all = NULL;
  FpCelebration one;

  if (celebration == NULL)
    return fp_scene_new (project, alternative);
  if (!fp_celebration_find (celebration, &one))
    {
      all = fp_command_celebrations ();
      fp_command_fail_value ("--for", celebration, all);
      return NULL;
    }
  whole = fp_scene_new (project, alternative);
  return fp_scene_new_set (whole, one);
}
