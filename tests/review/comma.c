/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "comma.h"

#include <locale.h>

gboolean
comma_locale (void)
{
  g_autofree char *folder = NULL, *made = NULL, *command = NULL, *sweep = NULL;
  gboolean found = setlocale (LC_ALL, "de_DE.UTF-8") != NULL;

  if (found)
    return TRUE;
  folder = g_dir_make_tmp ("footpace-locale-XXXXXX", NULL);
  made = g_build_filename (folder, "de_DE.UTF-8", NULL);
  command = g_strdup_printf ("localedef -i de_DE -f UTF-8 %s", made);
  if (g_spawn_command_line_sync (command, NULL, NULL, NULL, NULL))
    {
      g_setenv ("LOCPATH", folder, TRUE);
      found = setlocale (LC_ALL, "de_DE.UTF-8") != NULL;
    }
  sweep = g_strdup_printf ("rm -r %s", folder);
  g_spawn_command_line_sync (sweep, NULL, NULL, NULL, NULL);
  return found;
}
