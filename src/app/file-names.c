/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "file-names.h"

#include "footpace/error.h"

#include <string.h>

char *
fp_file_with_suffix (const char *path, const char *suffix, GError **error)
{
  g_autofree char *dotted = g_strconcat (".", suffix, NULL);
  g_autofree char *lower = g_ascii_strdown (path, -1), *longer = NULL, *base = NULL;

  if (g_str_has_suffix (lower, dotted))
    return g_strdup (path);
  longer = g_strconcat (path, dotted, NULL);
  if (!g_file_test (longer, G_FILE_TEST_EXISTS))
    return g_steal_pointer (&longer);
  base = g_path_get_basename (longer);
  g_set_error (error, FP_ERROR, FP_ERROR_WRITE,
               "There is a file “%s” already. Choose it with its whole name to replace it.", base);
  return NULL;
}

char *
fp_file_clean_name (const char *name)
{
  char *clean = g_strdelimit (g_strdup (name), "/\\:\n\r\t", '-');

  if (*clean == '.')
    *clean = '-'; /* not a hidden file */
  return clean;
}

/* Bytes of each of two names, of the 255 that file systems allow. */
#define LONGEST_PART 90

static char *
part_of (const char *name)
{
  const char *end = name + MIN (strlen (name), LONGEST_PART);

  /* Not within a letter. */
  while (*end != '\0' && end > name && (*end & 0xc0) == 0x80)
    end--;
  return g_strndup (name, (gsize) (end - name));
}

char *
fp_file_offered_name (const char *project, const char *alternative, const char *what, const char *suffix)
{
  g_autofree char *title = part_of (project), *one = alternative != NULL ? part_of (alternative) : NULL;
  g_autofree char *name = g_strdup_printf ("%s%s%s, %s.%s", title, one != NULL ? ", " : "", one != NULL ? one : "", what, suffix);

  return fp_file_clean_name (name);
}
