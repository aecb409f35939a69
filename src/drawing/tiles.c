/* SPDX-License-Identifier: GPL-3.0-or-later */
/* tiles.c - a large sheet on several small pages, with match marks and a ruler */
#include "footpace/tiles.h"

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

typedef struct { double unit; guint n; const char *words; } Ruler;

/* 100 mm or 4 in, or half of it. */
static Ruler
ruler_of (FpUnits units, gboolean half)
{
  if (units == FP_UNITS_METRIC)
    return (Ruler) { 10.0, half ? 5 : 10, half ? "50 mm when printed at 100 %" : "100 mm when printed at 100 %" };
  return (Ruler) { FP_MM_PER_INCH / 2.0, half ? 4 : 8,
                   half ? "2 inches when printed at 100 %" : "4 inches when printed at 100 %" };
}

static void
draw_ruler (FpDrawing *self, FpPoint at, double turn, const Ruler *r)
{
  const FpPlace place = { at.x, at.y, turn };

  fp_drawing_line (self, FP_PEN_OUTLINE, at, fp_place_point (&place, (FpPoint) { r->unit * r->n, 0 }));
  for (guint i = 0; i <= r->n; i++)
    fp_drawing_line (self, FP_PEN_DIMENSION, fp_place_point (&place, (FpPoint) { r->unit * i, 0 }),
                     fp_place_point (&place, (FpPoint) { r->unit * i, i == 0 || i == r->n ? 3.0 : 1.5 }));
}

double
fp_drawing_add_ruler (FpDrawing *self, FpPoint at, FpUnits units)
{
  const Ruler r = ruler_of (units, FALSE);

  draw_ruler (self, at, 0, &r);
  fp_drawing_text (self, (FpPoint) { at.x, at.y - LETTERING - 1.2 }, LETTERING, 0, FP_ALIGN_LEFT, r.words);
  return r.unit * r.n;
}

double
fp_drawing_add_ruler_upright (FpDrawing *self, FpPoint at, double room, FpUnits units)
{
  Ruler r = ruler_of (units, FALSE);

  if (r.unit * r.n > room)
    r = ruler_of (units, TRUE);
  if (r.unit * r.n > room)
    return 0;
  draw_ruler (self, at, 90, &r);
  fp_drawing_text (self, (FpPoint) { at.x - 4.0, at.y }, LETTERING, 90, FP_ALIGN_LEFT, r.words);
  return r.unit * r.n;
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
  g_autofree char *second = n > 1 ? fp_lettering_shorten ("Cut on the dotted lines; join like letters.",
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

  fp_drawing_set_ink (page, fp_drawing_ink (t->sheet));
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

/* --- sheets on several pages ---------------------------------------------------- */

static void
append_tiles (GPtrArray *to, FpDrawing *sheet, FpPaper tile, FpUnits units)
{
  g_autoptr (GPtrArray) lying = fp_drawing_tiles (sheet, tile, TRUE, units);
  g_autoptr (GPtrArray) upright = fp_drawing_tiles (sheet, tile, FALSE, units);
  const GPtrArray *fewer = upright->len < lying->len ? upright : lying;

  for (guint i = 0; i < fewer->len; i++)
    g_ptr_array_add (to, fp_drawing_ref (g_ptr_array_index (fewer, i)));
}

GPtrArray *
fp_sheets_tiled (const GPtrArray *sheets, FpPaper tile, FpUnits units)
{
  GPtrArray *pages = g_ptr_array_new_with_free_func ((GDestroyNotify) fp_drawing_unref);

  for (guint i = 0; i < sheets->len; i++)
    append_tiles (pages, g_ptr_array_index (sheets, i), tile, units);
  return pages;
}

/* Larger than any paper that is printed in one piece (ISO 216; 2A0 and 4A0 from memory), landscape. */
static const struct { const char *name; double width, height; } large[] = {
  { "A3", 420, 297 }, { "A2", 594, 420 }, { "A1", 841, 594 }, { "A0", 1189, 841 }, { "2A0", 1682, 1189 },
  { "4A0", 2378, 1682 },
};

/* On the smallest sheet larger than that of the spec on which it fits; NULL with the error of the spec's own. */
static GPtrArray *
sheets_that_fit (const FpScene *scene, const FpSheetSpec *spec, double *scale, GError **error)
{
  GError *first = NULL;
  GPtrArray *sheets = fp_sheet_pages (scene, spec, scale, &first);
  double width, height;

  fp_paper_size (spec->paper, TRUE, &width, &height);
  for (guint i = 0; sheets == NULL && spec->scale > 0 && i < G_N_ELEMENTS (large); i++)
    {
      FpSheetSpec larger = *spec;
      larger.width = spec->landscape ? large[i].width : large[i].height;
      larger.height = spec->landscape ? large[i].height : large[i].width;
      larger.paper_name = large[i].name;
      if (large[i].width > width && large[i].height > height)
        sheets = fp_sheet_pages (scene, &larger, scale, NULL);
    }
  if (sheets == NULL)
    g_propagate_error (error, g_steal_pointer (&first));
  g_clear_error (&first);
  return sheets;
}

GPtrArray *
fp_sheet_pages_tiled (const FpScene *scene, const FpSheetSpec *spec, FpPaper tile, double *scale, GError **error)
{
  g_autoptr (GPtrArray) sheets = sheets_that_fit (scene, spec, scale, error);

  return sheets == NULL ? NULL : fp_sheets_tiled (sheets, tile, fp_project_brief (fp_scene_project (scene))->units);
}
