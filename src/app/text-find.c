/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "text-find.h"

struct _FpTextFind
{
  GtkTextView *view;
  char        *words;
  GArray      *places;  /* int: offsets where the words begin, ascending      */
  guint        at;      /* index of the one gone to; places->len: none        */
};

static GtkTextBuffer *
buffer (FpTextFind *self)
{
  return gtk_text_view_get_buffer (self->view);
}

FpTextFind *
fp_text_find_new (GtkTextView *view)
{
  FpTextFind *self = g_new0 (FpTextFind, 1);

  self->view = view;
  self->places = g_array_new (FALSE, FALSE, sizeof (int));
  gtk_text_buffer_create_tag (buffer (self), "found", "background", "#f6d86b", "foreground", "#1a1a1a", NULL);
  return self;
}

void
fp_text_find_free (FpTextFind *self)
{
  g_array_unref (self->places);
  g_free (self->words);
  g_free (self);
}

static void
mark (FpTextFind *self)
{
  GtkTextIter from, start, end;

  gtk_text_buffer_get_bounds (buffer (self), &start, &end);
  gtk_text_buffer_remove_tag_by_name (buffer (self), "found", &start, &end);
  g_array_set_size (self->places, 0);
  if (self->words == NULL || *self->words == '\0')
    return;
  for (from = start; gtk_text_iter_forward_search (&from, self->words, GTK_TEXT_SEARCH_CASE_INSENSITIVE, &start, &end,
                                                   NULL); from = end)
    {
      int place = gtk_text_iter_get_offset (&start);

      gtk_text_buffer_apply_tag_by_name (buffer (self), "found", &start, &end);
      g_array_append_val (self->places, place);
    }
}

static void
go (FpTextFind *self)
{
  GtkTextIter start, end;

  if (self->at >= self->places->len)
    return;
  gtk_text_buffer_get_iter_at_offset (buffer (self), &start, g_array_index (self->places, int, self->at));
  end = start;
  gtk_text_iter_forward_chars (&end, (int) g_utf8_strlen (self->words, -1));
  gtk_text_buffer_select_range (buffer (self), &start, &end);
  gtk_text_view_scroll_to_mark (self->view, gtk_text_buffer_get_insert (buffer (self)), 0.1, FALSE, 0.0, 0.0);
}

void
fp_text_find_look (FpTextFind *self, const char *words)
{
  GtkTextIter cursor;

  g_free (self->words);
  self->words = g_strdup (words);
  gtk_text_buffer_get_iter_at_mark (buffer (self), &cursor, gtk_text_buffer_get_insert (buffer (self)));
  mark (self);
  for (self->at = 0; self->at < self->places->len; self->at++)
    if (g_array_index (self->places, int, self->at) >= gtk_text_iter_get_offset (&cursor))
      break;
  if (self->at == self->places->len)
    self->at = 0;
  go (self);
}

void
fp_text_find_again (FpTextFind *self)
{
  mark (self);
  if (self->at >= self->places->len)
    self->at = 0;
}

void
fp_text_find_step (FpTextFind *self, gboolean forward)
{
  guint n = self->places->len;

  if (n == 0)
    return;
  self->at = forward ? (self->at + 1) % n : (self->at + n - 1) % n;
  go (self);
}

guint
fp_text_find_count (FpTextFind *self)
{
  return self->places->len;
}

char *
fp_text_find_said (FpTextFind *self)
{
  if (self->words == NULL || *self->words == '\0')
    return g_strdup ("");
  if (self->places->len == 0)
    return g_strdup ("not found");
  return g_strdup_printf ("%u of %u", self->at + 1, self->places->len);
}
