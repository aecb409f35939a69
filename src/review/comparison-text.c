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

/* As shown: what is short of a limit ends in " !", what is most in its row, in " *". */
static char *
shown (const FpComparison *self, guint row, guint column)
{
  return g_strconcat (fp_comparison_cell (self, row, column), fp_comparison_short (self, row, column)  ? " !"
                                                              : fp_comparison_best (self, row, column) ? " *"
                                                                                                       : "",
                      NULL);
}

/* What stands under a heading is set in. */
static char *
label_shown (const FpComparison *self, guint row)
{
  const gboolean set_in = !self->heading[row] && self->rows > 0 && self->heading[0];

  return g_strconcat (set_in ? "  " : "", self->label[row], NULL);
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

static guint
label_width (const FpComparison *self)
{
  guint width = 0;

  for (guint r = 0; r < self->rows; r++)
    {
      g_autofree char *label = label_shown (self, r);
      width = MAX (width, text_width (label));
    }
  return width;
}

static void
append_heads (const FpComparison *self, guint label, guint *width, GString *out)
{
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
}

static void
append_row (const FpComparison *self, guint row, guint label, const guint *width, GString *out)
{
  g_autofree char *name = label_shown (self, row);

  if (self->heading[row] && row > 0)
    g_string_append_c (out, '\n');
  append_padded (out, name, label);
  for (guint c = 0; c < self->columns; c++)
    {
      g_autofree char *cell = shown (self, row, c);
      g_string_append (out, "  ");
      append_padded (out, cell, width[c]);
    }
  end_line (out);
}

static gboolean
any_cell (const FpComparison *self, gboolean (*is) (const FpComparison *self, guint row, guint column))
{
  for (guint r = 0; r < self->rows; r++)
    for (guint c = 0; c < self->columns; c++)
      if (is (self, r, c))
        return TRUE;
  return FALSE;
}

char *
fp_comparison_text (const FpComparison *self)
{
  GString *out = g_string_new (NULL);
  g_autofree guint *width = g_new (guint, MAX (self->columns, 1u));
  const guint label = label_width (self);

  append_heads (self, label, width, out);
  for (guint r = 0; r < self->rows; r++)
    append_row (self, r, label, width, out);
  g_string_append_printf (out, "\nSeen: %s.\n", self->seen);
  if (any_cell (self, fp_comparison_short))
    g_string_append (out,
                     "! outside a limit of the rules listed; `footpace check` says which, and who must confirm.\n");
  if (any_cell (self, fp_comparison_best))
    g_string_append (out, "* from most places of all alternatives.\n");
  return g_string_free (out, FALSE);
}
