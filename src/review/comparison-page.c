/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "comparison-page.h"

double
fp_comparison_column_width (const FpComparisonArea *self)
{
  return MIN (FP_COMPARISON_MOST, (self->content.x1 - self->content.x0 - self->label) / MAX (self->n, 1u));
}

double
fp_comparison_column_x (const FpComparisonArea *self, guint i)
{
  return self->content.x0 + self->label + i * fp_comparison_column_width (self);
}

void
fp_comparison_draw_label (const FpComparisonArea *area, double y, const char *text)
{
  fp_drawing_set_item (area->drawing, NULL, FP_STANDING_EXISTING, -1);
  fp_drawing_text (area->drawing, (FpPoint) { area->content.x0, y }, 2.5, 0, FP_ALIGN_LEFT, text);
}

/* --- names ---------------------------------------------------------------------------------- */

/* Lettering in which a name is tried, the largest first: all take no more than the head is high. */
typedef struct { double height, line; guint lines; } Lettering;

static const Lettering HEADS[] = { { 3.5, 5.2, 2 }, { 2.5, 4.0, 3 }, { 1.8, 2.9, 4 } };

/* Whole, in the largest lettering in which it finds room; only what is longer than the smallest allows is cut. */
static guint
wrap_head (const char *name, double room, GPtrArray **lines)
{
  for (guint way = 0; way < G_N_ELEMENTS (HEADS); way++)
    {
      g_clear_pointer (lines, g_ptr_array_unref);
      *lines = fp_lettering_wrap (name, HEADS[way].height, room);
      if ((*lines)->len <= HEADS[way].lines)
        return way;
    }
  return (guint) G_N_ELEMENTS (HEADS) - 1;
}

static void
draw_head (const FpComparisonArea *area, guint i, const char *name)
{
  const double width = fp_comparison_column_width (area);
  g_autoptr (GPtrArray) lines = NULL;
  const Lettering *way = &HEADS[wrap_head (name, width - 2 * FP_COMPARISON_GAP, &lines)];

  for (guint l = 0; l < MIN (lines->len, way->lines); l++)
    {
      const gboolean cut = l + 1 == way->lines && lines->len > way->lines;
      g_autofree char *text = g_strconcat (g_ptr_array_index (lines, l), cut ? " …" : "", NULL);
      const FpPoint at = { fp_comparison_column_x (area, i) + width / 2,
                           area->content.y1 - way->height - l * way->line };
      fp_drawing_text (area->drawing, at, way->height, 0, FP_ALIGN_MIDDLE, text);
    }
}

void
fp_comparison_draw_heads (const FpComparison *of, const FpComparisonArea *area)
{
  for (guint i = 0; i < area->n; i++)
    draw_head (area, i, of->head[area->first + i]);
}
