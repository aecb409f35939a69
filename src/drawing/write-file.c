/* SPDX-License-Identifier: GPL-3.0-or-later */
/* write-file.c - a finished document onto the disk
 *
 * Documents are made in memory and written in one go, so that a full disk
 * leaves neither half a drawing nor takes the old one away.
 */
#include "drawing-private.h"

#include "footpace/cause.h"

#include <errno.h>
#include <glib/gstdio.h>
#include <stdio.h>
#include <unistd.h>

#define LINKS_MAX 40 /* as the system follows them */

gboolean
fp_write_failed (const char *path, const char *why, GError **error)
{
  g_autofree char *shown = g_filename_display_name (path);

  g_set_error (error, FP_ERROR, FP_ERROR_WRITE, "“%s” could not be written: %s", shown, why);
  return FALSE;
}

/* A pipe or a device is written into, never replaced by a file. */
static gboolean
write_into (const char *path, gconstpointer data, gsize length, GError **error)
{
  FILE *file = g_fopen (path, "wb");
  gboolean whole;

  if (file == NULL)
    return fp_write_failed (path, g_strerror (errno), error);
  errno = 0;
  whole = fwrite (data, 1, length, file) == length;
  if (fclose (file) != 0)
    whole = FALSE;
  return whole || fp_write_failed (path, g_strerror (errno), error);
}

/* GLib would replace a symbolic link instead of what it points to, whether that is there yet or not. */
static char *
resolve (const char *path)
{
  char *at = g_strdup (path);

  for (int i = 0; i < LINKS_MAX; i++)
    {
      g_autofree char *target = g_file_read_link (at, NULL), *folder = g_path_get_dirname (at);
      if (target == NULL)
        break;
      g_free (at);
      at = g_path_is_absolute (target) ? g_steal_pointer (&target) : g_build_filename (folder, target, NULL);
    }
  return at;
}

gboolean
fp_write_file (const char *path, gconstpointer data, gsize length, GError **error)
{
  g_autofree char *target = resolve (path);
  g_autoptr (GError) why = NULL;
  GStatBuf old;
  const gboolean there = g_stat (target, &old) == 0;

  if (g_file_test (target, G_FILE_TEST_IS_SYMLINK))
    return fp_write_failed (path, "it is a link that leads round in a circle", error);
  if (there && S_ISDIR (old.st_mode))
    return fp_write_failed (path, "it is a folder; a file is expected", error);
  if (there && !S_ISREG (old.st_mode))
    return write_into (target, data, length, error);
  /* A rename over it would not ask. */
  if (there && g_access (target, W_OK) != 0)
    return fp_write_failed (path, "the file is write-protected; it is left as it is", error);
  if (length > G_MAXSSIZE
      || !g_file_set_contents_full (target, data, (gssize) length,
                                    G_FILE_SET_CONTENTS_CONSISTENT | G_FILE_SET_CONTENTS_DURABLE,
                                    there ? (int) (old.st_mode & 0777) : 0666, &why))
    return fp_write_failed (path, why != NULL ? fp_error_cause (why) : g_strerror (EFBIG), error);
  return TRUE;
}
