/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "cli.h"

#include "command.h"

#include <locale.h>
#include <string.h>

static const FpCommand *const commands[] = {
  &fp_command_check, &fp_command_sight, &fp_command_draw, &fp_command_compare, &fp_command_sun,
  &fp_command_linen, &fp_command_card, &fp_command_schedule, &fp_command_capacity, &fp_command_measures,
};

static const FpCommand *
find_command (const char *name)
{
  for (gsize i = 0; i < G_N_ELEMENTS (commands); i++)
    if (g_str_equal (commands[i]->name, name))
      return commands[i];
  return NULL;
}

/* A bare word that is no file was meant for a command: a window that cannot open it would say less. */
static gboolean
is_mistaken_command (const char *word)
{
  return word[0] != '-' && strpbrk (word, "./") == NULL && !g_file_test (word, G_FILE_TEST_EXISTS);
}

gboolean
fp_cli_wants (int argc, char **argv)
{
  if (argc < 2)
    return FALSE;
  return g_str_equal (argv[1], "--help") || g_str_equal (argv[1], "-h") || g_str_equal (argv[1], "--version")
         || find_command (argv[1]) != NULL || is_mistaken_command (argv[1]);
}

static int
print_help (void)
{
  g_autoptr (GString) text = g_string_new ("Footpace sets out the sanctuary of a church.\n\n"
                                           "Usage:\n"
                                           "  footpace [FILE…]           opens the window\n");

  for (gsize i = 0; i < G_N_ELEMENTS (commands); i++)
    {
      g_autofree char *use = g_strdup_printf ("footpace %s %s", commands[i]->name, commands[i]->arguments);
      g_string_append_printf (text, "  %-26s %s\n", use, commands[i]->tells);
    }
  g_string_append (text, "  footpace --version         tells the version\n"
                         "\n"
                         "Each command tells its options with --help. None of them needs a display.\n"
                         "\n"
                         "Exit status:\n"
                         "  0  done; check and compare: nothing that is required was found short\n"
                         "  1  check and compare: something that is required was found short\n"
                         "  2  bad use, input that could not be read, or output that could not be written\n"
                         "\n"
                         "Footpace approves nothing. Local codes and licensed architects and engineers decide.\n");
  return fp_command_print (text->str, text->len);
}

static int
print_version (void)
{
  static const char version[] = "footpace " FP_VERSION "\n";

  return fp_command_print (version, strlen (version));
}

static int
refuse_command (const char *word)
{
  g_autoptr (GString) text = g_string_new (NULL);
  g_autofree char *shown = g_utf8_make_valid (word, -1);

  g_string_printf (text, "“%s” is neither a command nor a file; the commands are", shown);
  for (gsize i = 0; i < G_N_ELEMENTS (commands); i++)
    g_string_append_printf (text, "%s %s", i == 0 ? "" : i + 1 == G_N_ELEMENTS (commands) ? " and" : ",",
                            commands[i]->name);
  return fp_command_fail (text->str);
}

int
fp_cli_main (int argc, char **argv)
{
  const FpCommand *command = find_command (argv[1]);

  /* Only how text is encoded: numbers and messages are the same everywhere. */
  setlocale (LC_CTYPE, "");
  if (command != NULL)
    return command->run (argc - 1, argv + 1);
  if (g_str_equal (argv[1], "--version"))
    return print_version ();
  return argv[1][0] == '-' ? print_help () : refuse_command (argv[1]);
}
