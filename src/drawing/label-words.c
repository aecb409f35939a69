/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "label-words.h"

/* From base line to base line, in heights of capitals. */
#define SPACING 1.45

static void
add_line (FpLabelWords *self, const char *line)
{
  self->line[self->n] = g_strdup (line);
  self->width[self->n] = fp_lettering_width (line, self->lettering);
  self->widest = MAX (self->widest, self->width[self->n]);
  self->n++;
  self->height = self->lettering * (1 + (self->n - 1) * SPACING);
}

static double
longest_word (const char *name, double lettering)
{
  g_auto (GStrv) word = g_strsplit (name, " ", -1);
  double longest = 0;

  for (guint i = 0; word[i] != NULL; i++)
    longest = MAX (longest, fp_lettering_width (word[i], lettering));
  return longest;
}

void
fp_label_words_set (FpLabelWords *self, const char *name, guint lines, double lettering)
{
  const double all = fp_lettering_width (name, lettering) + 0.01;
  const double least = lines == 1 ? all : MAX (all / lines, longest_word (name, lettering) + 0.01);
  const guint steps = 24;
  g_autoptr (GPtrArray) wrapped = NULL;

  *self = (FpLabelWords) { .lettering = lettering };
  for (guint i = 0; i <= steps && (wrapped == NULL || wrapped->len > lines); i++)
    {
      g_clear_pointer (&wrapped, g_ptr_array_unref);
      wrapped = fp_lettering_wrap (name, lettering, least + (all - least) * i / steps);
    }
  for (guint i = 0; i < MIN (wrapped->len, lines); i++)
    add_line (self, g_ptr_array_index (wrapped, i));
}

void
fp_label_words_short (FpLabelWords *self, const char *name, double width)
{
  g_autofree char *line = fp_lettering_shorten (name, FP_LABEL_HEIGHT, width);

  *self = (FpLabelWords) { .lettering = FP_LABEL_HEIGHT };
  add_line (self, line);
}

void
fp_label_words_clear (FpLabelWords *self)
{
  for (guint i = 0; i < self->n; i++)
    g_clear_pointer (&self->line[i], g_free);
  self->n = 0;
}

FpPoint
fp_label_words_at (const FpLabelWords *self, FpPoint middle, double turn, guint line)
{
  const double up = self->height / 2 - self->lettering * (1 + line * SPACING);

  if (turn == 0)
    return (FpPoint) { middle.x, middle.y + up };
  return fp_place_point (&(FpPlace) { middle.x, middle.y, turn }, (FpPoint) { 0, up });
}

guint
fp_label_words_line_boxes (const FpLabelWords *self, FpPoint middle, double turn, guint line, FpBox out[FP_FIGURE_PARTS])
{
  return fp_lettering_boxes (fp_label_words_at (self, middle, turn, line), self->width[line], self->lettering, turn, out);
}

guint
fp_label_words_boxes (const FpLabelWords *self, FpPoint middle, double turn, FpBox out[FP_LABEL_BOXES])
{
  guint n = 0;

  for (guint i = 0; i < self->n; i++)
    n += fp_label_words_line_boxes (self, middle, turn, i, &out[n]);
  return n;
}
