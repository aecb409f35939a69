/* SPDX-License-Identifier: GPL-3.0-or-later */
/* folder.h - a folder of a test's own is taken away with the files in it */
#pragma once

#include <glib/gstdio.h>

/* Returns: how many files were in it */
static inline guint
folder_remove (const char *folder)
{
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  const char *name;
  guint n = 0;

  while (dir != NULL && (name = g_dir_read_name (dir)) != NULL)
    {
      g_autofree char *path = g_build_filename (folder, name, NULL);
      g_remove (path);
      n++;
    }
  g_rmdir (folder);
  return n;
}
