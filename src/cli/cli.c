/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "cli.h"

#include "command.h"

#include <locale.h>
#include <string.h>

static const FpCommand *const commands[] = { &fp_command_check, &fp_command_draw, &fp_command_compare };

static const FpCommand *
find_command (const char *name)
{
  for (gsize i = 0; i < G_N_ELEMENTS (commands); i++)
    if (g_str_equal (commands[i]->name, name))
      return commands[i];
  return NULL;
}

gboolean
fp_cli_wants (int argc, char **argv)
{
  if (argc < 2)
    return FALSE;
  return g_str_equal (argv[1], "--help") || g_str_equal (argv[1], "-h") || g_str_equal (argv[1], "--version")
         || find_command (argv[1]) != NULL;
}

static void
print_help (void)
{
  g_print ("Footpace sets out the sanctuary of a church.\n\n"
           "  footpace [FILE…]                 opens the window\n");
  for (gsize i = 0; i < G_N_ELEMENTS (commands); i++)
    {
      g_autofree char *use = g_strdup_printf ("footpace %s %s", commands[i]->name, commands[i]->arguments);
      g_print ("  %-32s %s\n", use, commands[i]->tells);
    }
  g_print ("\nEach command tells its options with --help.\n"
           "Exit status: 0 nothing required was found short; 1 something was;\n"
           "2 the input could not be read or the output not written.\n\n"
           "Footpace approves nothing. Local codes and licensed architects and engineers decide.\n");
}

int
fp_cli_main (int argc, char **argv)
{
  setlocale (LC_ALL, "");
  if (g_str_equal (argv[1], "--version"))
    g_print ("footpace %s\n", FP_VERSION);
  else if (argv[1][0] == '-')
    print_help ();
  else
    return find_command (argv[1])->run (argc - 1, argv + 1);
  return FP_EXIT_CLEAR;
}
