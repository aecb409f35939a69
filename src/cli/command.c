/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "command.h"

#include "footpace/store.h"

int
fp_command_fail (const char *reason)
{
  g_printerr ("footpace: %s\n", reason);
  return FP_EXIT_ERROR;
}

static GOptionContext *
new_context (const FpCommand *command, const GOptionEntry *entries)
{
  g_autofree char *arguments = g_strdup_printf ("%s", command->arguments);
  GOptionContext *context = g_option_context_new (arguments);

  g_option_context_set_summary (context, command->tells);
  g_option_context_add_main_entries (context, entries, NULL);
  /* The library's own --help would print and exit from inside a library. */
  g_option_context_set_help_enabled (context, FALSE);
  return context;
}

gboolean
fp_command_options (const FpCommand *command, int argc, char **argv, const GOptionEntry *entries, char **file,
                    int *exit_code)
{
  g_autoptr (GOptionContext) context = new_context (command, entries);
  gboolean help = FALSE;
  const GOptionEntry own[] = { { "help", 'h', 0, G_OPTION_ARG_NONE, &help, "Show this help", NULL }, { NULL } };
  g_autoptr (GError) error = NULL;

  g_option_context_add_main_entries (context, own, NULL);
  *exit_code = FP_EXIT_ERROR;
  if (!g_option_context_parse (context, &argc, &argv, &error))
    {
      fp_command_fail (error->message);
      g_printerr ("Try: footpace %s --help\n", command->name);
      return FALSE;
    }
  if (help)
    {
      g_autofree char *text = g_option_context_get_help (context, TRUE, NULL);
      g_print ("%s", text);
      *exit_code = FP_EXIT_CLEAR;
      return FALSE;
    }
  if (argc != 2)
    {
      g_autofree char *reason = g_strdup_printf ("%s wants one file, and was given %d", command->name, argc - 1);
      fp_command_fail (reason);
      g_printerr ("Try: footpace %s --help\n", command->name);
      return FALSE;
    }
  *file = g_strdup (argv[1]);
  return TRUE;
}

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

  g_string_printf (text, "there is no alternative “%s”; there are:", wanted);
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
