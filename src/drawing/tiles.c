/* SPDX-License-Identifier: GPL-3.0-or-later */
/* tiles.c - a large sheet on several small pages, with match marks and a ruler */
#include "footpace/drawing.h"

#include <math.h>

#define MARGIN   8.0  /* mm that common printers leave white (common practice, no source) */
#define FOOT     16.0 /* for the ruler and what the page says of itself        */
#define OVERLAP  10.0
#define CROSS    4.0  /* half the width of a match mark                        */
#define LETTERING 2.5

typedef struct
{
  FpDrawing *sheet;
  double     width, height;        /* of a page                                */
  double     inner_w, inner_h;     /* of the sheet that a page shows           */
  double     step_x, step_y;
  guint      columns, rows;
  FpUnits    units;
} Tiling;

double
fp_drawing_add_ruler (FpDrawing *self, FpPoint at, FpUnits units)
{
  const double unit = units == FP_UNITS_METRIC ? 10.0 : FP_MM_PER_INCH / 2.0;
  const guint n = units == FP_UNITS_METRIC ? 10 : 8;
  const double length = unit * n;

  fp_drawing_line (self, FP_PEN_OUTLINE, at, (FpPoint) { at.x + length, at.y });
  for (guint i = 0; i <= n; i++)
    {
      const FpPoint foot = { at.x + unit * i, at.y };
      fp_drawing_line (self, FP_PEN_DIMENSION, foot, (FpPoint) { foot.x, foot.y + (i == 0 || i == n ? 3.0 : 1.5) });
    }
  fp_drawing_text (self, (FpPoint) { at.x, at.y - LETTERING - 1.2 }, LETTERING, 0, FP_ALIGN_LEFT,
                   units == FP_UNITS_METRIC ? "100 mm when printed at 100 %" : "4 inches when printed at 100 %");
  return length;
}

/* Where join line number @i between two columns (or rows) lies, from the left (or from the upper edge). */
static double
join_at (double step, guint i)
{
  return (i + 1) * step + OVERLAP / 2.0;
}

static void
add_cross (FpDrawing *page, FpPoint at, guint column, guint row)
{
  /* Both pages that share it give it the same letters. */
  g_autofree char *letters = g_strdup_printf ("%c%u", 'A' + (char) (column % 26), row + 1);

  fp_drawing_line (page, FP_PEN_DIMENSION, (FpPoint) { at.x - CROSS, at.y }, (FpPoint) { at.x + CROSS, at.y });
  fp_drawing_line (page, FP_PEN_DIMENSION, (FpPoint) { at.x, at.y - CROSS }, (FpPoint) { at.x, at.y + CROSS });
  fp_drawing_circle (page, FP_PEN_DIMENSION, FP_FILL_NONE, at, CROSS / 2.0);
  fp_drawing_text (page, (FpPoint) { at.x + 1.0, at.y + CROSS / 2.0 + 0.8 }, LETTERING * 0.8, 0, FP_ALIGN_LEFT, letters);
}

/* Where along a join the marks are: where it meets others, and one in the middle of each stretch between. */
static guint
mark_positions (double step, guint n, double whole, double *at)
{
  guint count = 0;
  double before = 0;

  for (guint i = 0; i < n; i++)
    {
      const double next = i + 1 < n ? join_at (step, i) : whole;
      at[count++] = (before + next) / 2.0;
      if (i + 1 < n)
        at[count++] = next;
      before = next;
    }
  return count;
}

static gboolean
within (double value, double from, double length)
{
  return value >= from && value <= from + length;
}

/* @x0, @y0: of the page's part of the sheet, y from the upper edge. */
static void
add_joins (const Tiling *t, FpDrawing *page, double x0, double y0)
{
  const double left = MARGIN, top = t->height - MARGIN;
  g_autofree double *at = g_new (double, 2 * MAX (t->columns, t->rows) + 1);

  for (guint c = 0; c + 1 < t->columns; c++)
    {
      const double x = join_at (t->step_x, c);
      const guint n = mark_positions (t->step_y, t->rows, fp_drawing_height (t->sheet), at);
      if (!within (x, x0, t->inner_w))
        continue;
      fp_drawing_line (page, FP_PEN_GUIDE, (FpPoint) { left + x - x0, top }, (FpPoint) { left + x - x0, top - t->inner_h });
      for (guint i = 0; i < n; i++)
        if (within (at[i], y0, t->inner_h))
          add_cross (page, (FpPoint) { left + x - x0, top - (at[i] - y0) }, c, i);
    }
  for (guint r = 0; r + 1 < t->rows; r++)
    {
      const double y = join_at (t->step_y, r);
      const guint n = mark_positions (t->step_x, t->columns, fp_drawing_width (t->sheet), at);
      if (!within (y, y0, t->inner_h))
        continue;
      fp_drawing_line (page, FP_PEN_GUIDE, (FpPoint) { left, top - (y - y0) },
                       (FpPoint) { left + t->inner_w, top - (y - y0) });
      /* The odd ones lie on joins between columns and are marked there. */
      for (guint i = 0; i < n; i += 2)
        if (within (at[i], x0, t->inner_w))
          add_cross (page, (FpPoint) { left + at[i] - x0, top - (y - y0) }, t->columns + r, i);
    }
}

static void
add_foot (const Tiling *t, FpDrawing *page, guint column, guint row)
{
  const guint number = row * t->columns + column + 1, n = t->columns * t->rows;
  g_autofree char *where = g_strdup_printf ("Page %u of %u: row %u of %u, column %u of %u", number, n, row + 1, t->rows,
                                            column + 1, t->columns);
  const double ruler = fp_drawing_add_ruler (page, (FpPoint) { MARGIN, MARGIN + 5.0 }, t->units);
  const double x = MARGIN + ruler + 6.0, room = t->width - MARGIN - x;
  g_autofree char *first = fp_lettering_shorten (where, LETTERING, room);
  g_autofree char *second = n > 1 ? fp_lettering_shorten ("Cut along the dotted lines, join at crosses of like letters.",
                                                          LETTERING, room) : g_strdup ("");

  fp_drawing_text (page, (FpPoint) { x, MARGIN + 5.0 }, LETTERING, 0, FP_ALIGN_LEFT, first);
  fp_drawing_text (page, (FpPoint) { x, MARGIN + 1.3 }, LETTERING, 0, FP_ALIGN_LEFT, second);
}

static FpDrawing *
tile_new (const Tiling *t, guint column, guint row)
{
  FpDrawing *page = fp_drawing_new (t->width, t->height);
  const double x0 = column * t->step_x, y0 = row * t->step_y;
  const FpBox window = { MARGIN, t->height - MARGIN - t->inner_h, MARGIN + t->inner_w, t->height - MARGIN };
  const FpPoint at = { MARGIN - x0, t->height - MARGIN + y0 - fp_drawing_height (t->sheet) };

  fp_drawing_set_inset (page, t->sheet, at, &window);
  add_joins (t, page, x0, y0);
  add_foot (t, page, column, row);
  return page;
}

static guint
tiles_across (double whole, double inner, double step)
{
  return whole <= inner ? 1 : (guint) ceil ((whole - OVERLAP - 1e-6) / step);
}

GPtrArray *
fp_drawing_tiles (FpDrawing *sheet, FpPaper paper, gboolean landscape, FpUnits units)
{
  GPtrArray *pages = g_ptr_array_new_with_free_func ((GDestroyNotify) fp_drawing_unref);
  Tiling t = { .sheet = sheet, .units = units };

  fp_paper_size (paper, landscape, &t.width, &t.height);
  t.inner_w = t.width - 2 * MARGIN;
  t.inner_h = t.height - 2 * MARGIN - FOOT;
  t.step_x = t.inner_w - OVERLAP;
  t.step_y = t.inner_h - OVERLAP;
  t.columns = tiles_across (fp_drawing_width (sheet), t.inner_w, t.step_x);
  t.rows = tiles_across (fp_drawing_height (sheet), t.inner_h, t.step_y);
  for (guint row = 0; row < t.rows; row++)
    for (guint column = 0; column < t.columns; column++)
      g_ptr_array_add (pages, tile_new (&t, column, row));
  return pages;
}
