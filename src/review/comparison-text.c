/* SPDX-License-Identifier: GPL-3.0-or-later */
/* comparison-text.c - the alternatives as a table of text, aligned for letters of one width */
#include "comparison-private.h"

#include <string.h>

/* Names longer than this are cut off. */
#define COLUMN_MOST 30

/* Cells of a terminal. */
static guint
text_width (const char *text)
{
  guint width = 0;

  for (const char *p = text; *p != '\0'; p = g_utf8_next_char (p))
    {
      const gunichar c = g_utf8_get_char (p);
      width += g_unichar_iszerowidth (c) ? 0 : g_unichar_iswide (c) ? 2 : 1;
    }
  return width;
}

/* At most @most cells, with an ellipsis where something was cut off; on one line. */
static char *
text_cut (const char *text, guint most)
{
  g_autoptr (GString) out = g_string_new (NULL);
  const gboolean fits = text_width (text) <= most;
  guint width = 0;

  for (const char *p = text; *p != '\0'; p = g_utf8_next_char (p))
    {
      const gunichar c = g_unichar_iscntrl (g_utf8_get_char (p)) ? ' ' : g_utf8_get_char (p);
      const guint w = g_unichar_iszerowidth (c) ? 0 : g_unichar_iswide (c) ? 2 : 1;
      if (!fits && width + w > most - 1)
        break;
      g_string_append_unichar (out, c);
      width += w;
    }
  if (!fits)
    g_string_append (out, "…");
  return g_string_free (g_steal_pointer (&out), FALSE);
}

static void
append_padded (GString *out, const char *text, guint width)
{
  g_string_append (out, text);
  for (guint w = text_width (text); w < width; w++)
    g_string_append_c (out, ' ');
}

/* As shown: what is short of a limit ends in " !". */
static char *
shown (const FpComparison *self, guint row, guint column)
{
  return g_strconcat (fp_comparison_cell (self, row, column), fp_comparison_short (self, row, column) ? " !" : "",
                      NULL);
}

static guint
column_width (const FpComparison *self, guint column)
{
  g_autofree char *head = text_cut (self->head[column], COLUMN_MOST);
  guint width = text_width (head);

  for (guint r = 0; r < self->rows; r++)
    {
      g_autofree char *cell = shown (self, r, column);
      width = MAX (width, text_width (cell));
    }
  return width;
}

/* Without the blanks at the end of a line. */
static void
end_line (GString *out)
{
  while (out->len > 0 && out->str[out->len - 1] == ' ')
    g_string_truncate (out, out->len - 1);
  g_string_append_c (out, '\n');
}

static void
append_rule (GString *out, guint label, const guint *width, guint n)
{
  guint all = label;

  for (guint c = 0; c < n; c++)
    all += 2 + width[c];
  for (guint i = 0; i < all; i++)
    g_string_append_c (out, '-');
  g_string_append_c (out, '\n');
}

char *
fp_comparison_text (const FpComparison *self)
{
  GString *out = g_string_new (NULL);
  g_autofree guint *width = g_new (guint, MAX (self->columns, 1u));
  guint label = 0;
  gboolean any_short = FALSE;

  for (guint r = 0; r < self->rows; r++)
    label = MAX (label, text_width (self->label[r]));
  append_padded (out, "", label);
  for (guint c = 0; c < self->columns; c++)
    {
      g_autofree char *head = text_cut (self->head[c], COLUMN_MOST);
      width[c] = column_width (self, c);
      g_string_append (out, "  ");
      append_padded (out, head, width[c]);
    }
  end_line (out);
  append_rule (out, label, width, self->columns);
  for (guint r = 0; r < self->rows; r++)
    {
      append_padded (out, self->label[r], label);
      for (guint c = 0; c < self->columns; c++)
        {
          g_autofree char *cell = shown (self, r, c);
          g_string_append (out, "  ");
          append_padded (out, cell, width[c]);
          any_short |= fp_comparison_short (self, r, c);
        }
      end_line (out);
    }
  g_string_append (out, "\nSeen: " FP_COMPARISON_SEEN ".\n");
  if (any_short)
    g_string_append (out,
                     "! outside a limit of the rules listed; `footpace check` says which, and who must confirm.\n");
  return g_string_free (out, FALSE);
}
