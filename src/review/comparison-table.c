/* SPDX-License-Identifier: GPL-3.0-or-later */
/* comparison-table.c - the table of a comparison on paper, and what its marks mean */
#include "comparison-page.h"

/* All in paper mm. */
#define NOTE       10.0 /* what the marks say, under the table */
#define SMALL_TEXT 1.8

/* In which lettering it stands. */
typedef struct { double text, row, mark, label; } Size;

static const Size USUAL = { 2.5, 4.8, 1.8, FP_COMPARISON_LABEL };
static const Size LARGE = { 3.5, 6.8, 2.5, 1.4 * FP_COMPARISON_LABEL };

double
fp_comparison_table_height (const FpComparison *of)
{
  return of->rows * USUAL.row + NOTE;
}

/* --- how large ------------------------------------------------------------------------------ */

/* From the left edge of a column to what its cells say. */
static double
indent (const Size *size)
{
  return FP_COMPARISON_GAP + size->mark + 1.2;
}

static gboolean
cells_fit (const FpComparison *of, const FpComparisonArea *area, guint row, const Size *size)
{
  const double room = fp_comparison_column_width (area) - indent (size) - 1;

  for (guint i = 0; i < area->n; i++)
    if (fp_lettering_width (fp_comparison_cell (of, row, area->first + i), size->text) > room)
      return FALSE;
  return fp_lettering_width (of->label[row], size->text) <= size->label - 2;
}

static gboolean
is_size_for (const FpComparison *of, const FpComparisonArea *area, double top, const Size *size)
{
  FpComparisonArea wider = *area;

  wider.label = size->label;
  if (top - of->rows * size->row - NOTE < area->content.y0)
    return FALSE;
  for (guint r = 0; r < of->rows; r++)
    if (!cells_fit (of, &wider, r, size))
      return FALSE;
  return TRUE;
}

/* --- rows ------------------------------------------------------------------------------------- */

static void
draw_mark (const FpComparisonArea *area, FpPoint at, double size)
{
  /* A diamond, as the window marks the same. */
  const double half = size / 2;
  const FpPoint pt[4] = { { at.x + half, at.y }, { at.x + size, at.y + half }, { at.x + half, at.y + size },
                          { at.x, at.y + half } };

  fp_drawing_area (area->drawing, FP_PEN_EDGE, FP_FILL_INK, 0, pt, 4);
}

static void
draw_cell (const FpComparison *of, const FpComparisonArea *area, guint row, guint i, double y, const Size *size)
{
  const double x = fp_comparison_column_x (area, i);
  g_autofree char *cell = fp_lettering_shorten (fp_comparison_cell (of, row, area->first + i), size->text,
                                                fp_comparison_column_width (area) - indent (size) - 1);

  if (fp_comparison_short (of, row, area->first + i))
    draw_mark (area, (FpPoint) { x + FP_COMPARISON_GAP, y + (size->text - size->mark) / 2 + 0.1 }, size->mark);
  fp_drawing_text (area->drawing, (FpPoint) { x + indent (size), y }, size->text, 0, FP_ALIGN_LEFT, cell);
}

static void
draw_row (const FpComparison *of, const FpComparisonArea *area, guint row, double foot, const Size *size)
{
  const double y = foot + (size->row - size->text) / 2;
  g_autofree char *label = fp_lettering_shorten (of->label[row], size->text, size->label - 2);

  fp_drawing_text (area->drawing, (FpPoint) { area->content.x0, y }, size->text, 0, FP_ALIGN_LEFT, label);
  for (guint i = 0; i < area->n; i++)
    draw_cell (of, area, row, i, y, size);
  fp_drawing_line (area->drawing, FP_PEN_EDGE, (FpPoint) { area->content.x0, foot },
                   (FpPoint) { fp_comparison_column_x (area, area->n), foot });
}

/* What the marks and what "seen" mean. */
static void
draw_note (const FpComparisonArea *area, double foot)
{
  static const char *const notes[] = {
    "outside a limit of the rules listed; who must confirm it is told in the report of findings",
    "Seen: " FP_COMPARISON_SEEN,
    "–  nothing there to measure",
  };
  double y = foot - 1.4;

  draw_mark (area, (FpPoint) { area->content.x0, y - SMALL_TEXT + 0.2 }, USUAL.mark);
  for (guint i = 0; i < G_N_ELEMENTS (notes); i++)
    {
      const double after = i == 0 ? USUAL.mark + 1.2 : 0;
      g_autofree char *line = fp_lettering_shorten (notes[i], SMALL_TEXT, area->content.x1 - area->content.x0 - after);
      fp_drawing_text (area->drawing, (FpPoint) { area->content.x0 + after, y - SMALL_TEXT }, SMALL_TEXT, 0,
                       FP_ALIGN_LEFT, line);
      y -= 3;
    }
}

static void
draw_frame (const FpComparisonArea *area, double top, double foot)
{
  const double left = area->content.x0, right = fp_comparison_column_x (area, area->n);

  fp_drawing_line (area->drawing, FP_PEN_OUTLINE, (FpPoint) { left, top }, (FpPoint) { right, top });
  for (guint i = 0; i <= area->n; i++)
    {
      const double x = fp_comparison_column_x (area, i);
      fp_drawing_line (area->drawing, FP_PEN_EDGE, (FpPoint) { x, top }, (FpPoint) { x, foot });
    }
  fp_drawing_line (area->drawing, FP_PEN_OUTLINE, (FpPoint) { left, foot }, (FpPoint) { right, foot });
}

void
fp_comparison_draw_table (const FpComparison *of, FpComparisonArea *area, double top, gboolean fills)
{
  const Size *size = fills && is_size_for (of, area, top, &LARGE) ? &LARGE : &USUAL;
  const double foot = top - of->rows * size->row;

  area->label = size->label;
  fp_drawing_set_item (area->drawing, NULL, FP_STANDING_EXISTING, -1);
  for (guint r = 0; r < of->rows; r++)
    draw_row (of, area, r, top - (r + 1) * size->row, size);
  draw_frame (area, top, foot);
  draw_note (area, foot);
}
