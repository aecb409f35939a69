/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "csv.h"

void
fp_csv_add_quoted (GString *out, const char *text)
{
  g_string_append_c (out, '"');
  for (; *text != '\0'; text++)
    {
      if (*text == '"')
        g_string_append_c (out, '"');
      g_string_append_c (out, *text);
    }
  g_string_append_c (out, '"');
}
