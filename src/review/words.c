/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "words.h"

#define COLUMNS 100
#define LEAST   24 /* however far it is indented */

void
fp_words_wrap (GString *out, const char *text, guint indent, guint column)
{
  g_auto (GStrv) words = g_strsplit_set (text, " \n\t", -1);
  gboolean first = TRUE;

  for (guint i = 0; words[i]; i++)
    {
      guint length = (guint) g_utf8_strlen (words[i], -1);

      if (length == 0)
        continue;
      if (!first && column + 1 + length > MAX (COLUMNS, indent + LEAST))
        {
          g_string_append_printf (out, "\n%*s", (int) indent, "");
          column = indent;
        }
      else if (!first)
        {
          g_string_append_c (out, ' ');
          column++;
        }
      g_string_append (out, words[i]);
      column += length;
      first = FALSE;
    }
  g_string_append_c (out, '\n');
}

void
fp_words_put (GString *out, guint indent, const char *label, guint width, const char *text)
{
  guint labelled = (guint) g_utf8_strlen (label, -1);

  if (!text || *text == '\0')
    return;
  g_string_append_printf (out, "%*s%s%*s", (int) indent, "", label,
                          (int) (width > labelled ? width - labelled : 1), "");
  fp_words_wrap (out, text, indent + width, indent + MAX (width, labelled + 1));
}

void
fp_words_heading (GString *out, const char *text)
{
  g_string_append_printf (out, "\n%s\n", text);
  for (glong i = g_utf8_strlen (text, -1); i > 0; i--)
    g_string_append_c (out, '-');
  g_string_append_c (out, '\n');
}
