/* SPDX-License-Identifier: GPL-3.0-or-later */
/* resident.h - how much real memory the program has */
#pragma once

#include <glib.h>

#include <string.h>
#include <unistd.h>

/* MB; 0 where that is not known. */
static inline gsize
resident_mb (void)
{
  g_autofree char *text = NULL;
  const char *second;

  if (!g_file_get_contents ("/proc/self/statm", &text, NULL, NULL) || (second = strchr (text, ' ')) == NULL)
    return 0;
  return (gsize) g_ascii_strtoull (second, NULL, 10) * (gsize) sysconf (_SC_PAGESIZE) >> 20;
}
