/* SPDX-License-Identifier: GPL-3.0-or-later */
/* capacities-text.c - in columns of text */
#include "capacities-private.h"

#include "words.h"

#define BETWEEN 2

/* Numbers end on the right. */
static gboolean
is_number (guint column)
{
  return column == FP_CAPACITY_FOUND || column == FP_CAPACITY_ASKED;
}

static void
widen (glong *width, const char *const *cell)
{
  for (guint k = 0; k < FP_N_CAPACITY_CELLS; k++)
    width[k] = MAX (width[k], g_utf8_strlen (cell[k], -1));
}

static void
add_line (GString *out, const char *const *cell, const glong *width)
{
  glong column = BETWEEN;

  g_string_append (out, "  ");
  for (guint k = 0; k < FP_CAPACITY_NOTE; k++)
    {
      const int room = (int) (width[k] - g_utf8_strlen (cell[k], -1));

      if (width[k] == 0)
        continue;
      g_string_append_printf (out, "%*s%s%*s", is_number (k) ? room : 0, "", cell[k], (is_number (k) ? 0 : room) + BETWEEN, "");
      column += width[k] + BETWEEN;
    }
  if (*cell[FP_CAPACITY_NOTE] != '\0')
    {
      fp_words_wrap (out, cell[FP_CAPACITY_NOTE], (guint) column, (guint) column);
      return;
    }
  while (out->str[out->len - 1] == ' ')
    g_string_truncate (out, out->len - 1);
  g_string_append_c (out, '\n');
}

static void
add_section (GString *out, const FpCapacitySection *section)
{
  glong width[FP_N_CAPACITY_CELLS] = { 0 };

  fp_words_heading (out, section->title);
  widen (width, section->head);
  for (guint i = 0; i < section->rows->len; i++)
    widen (width, (const char *const *) g_array_index (section->rows, FpCapacityRow, i).cell);
  add_line (out, section->head, width);
  for (guint i = 0; i < section->rows->len; i++)
    {
      const FpCapacityRow *row = &g_array_index (section->rows, FpCapacityRow, i);
      g_autofree char *note = row->lacking ? g_strconcat ("SHORT", row->cell[FP_CAPACITY_NOTE][0] != '\0' ? ": " : "",
                                                          row->cell[FP_CAPACITY_NOTE], NULL)
                                           : g_strdup (row->cell[FP_CAPACITY_NOTE]);
      const char *const cell[FP_N_CAPACITY_CELLS] = { row->cell[0], row->cell[1], row->cell[2], note };

      add_line (out, cell, width);
    }
  g_string_append (out, "  ");
  fp_words_wrap (out, section->closing, BETWEEN, BETWEEN);
}

char *
fp_capacities_text (const FpCapacities *self)
{
  GString *out = g_string_new ("Capacity\n========\n");

  for (guint i = 0; i < FP_N_CAPACITIES; i++)
    add_section (out, fp_capacities_section (self, (FpCapacityOf) i));
  g_string_append_c (out, '\n');
  fp_words_wrap (out, fp_capacities_caution, 0, 0);
  return g_string_free (out, FALSE);
}

/* --- in a report ------------------------------------------------------------------------------- */

static char *
sentence (const FpCapacitySection *section, const FpCapacityRow *row)
{
  const char *const *cell = (const char *const *) row->cell;
  g_autofree char *asked = g_ascii_strdown (section->head[FP_CAPACITY_ASKED], -1);

  return g_strconcat (row->lacking ? "SHORT: " : "", cell[FP_CAPACITY_WHAT], *cell[FP_CAPACITY_FOUND] != '\0' ? ": " : "",
                      cell[FP_CAPACITY_FOUND], *cell[FP_CAPACITY_ASKED] != '\0' ? ", " : "",
                      *cell[FP_CAPACITY_ASKED] != '\0' ? asked : "", *cell[FP_CAPACITY_ASKED] != '\0' ? " " : "",
                      cell[FP_CAPACITY_ASKED], *cell[FP_CAPACITY_NOTE] != '\0' ? " (" : "", cell[FP_CAPACITY_NOTE],
                      *cell[FP_CAPACITY_NOTE] != '\0' ? ")" : "", NULL);
}

void
fp_capacities_put_sums (GString *out, const FpCapacities *self)
{
  for (guint i = 0; i < FP_N_CAPACITIES; i++)
    {
      const FpCapacitySection *section = fp_capacities_section (self, (FpCapacityOf) i);

      fp_words_wrap (out, section->title, 0, 0);
      for (guint k = 0; k < section->rows->len; k++)
        {
          const FpCapacityRow *row = &g_array_index (section->rows, FpCapacityRow, k);
          g_autofree char *line = row->sum || row->item == NULL ? sentence (section, row) : NULL;

          fp_words_put (out, 2, "-", 2, line);
        }
    }
  g_string_append_c (out, '\n');
  fp_words_wrap (out, fp_capacities_caution, 0, 0);
}
