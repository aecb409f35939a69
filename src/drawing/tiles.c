/* SPDX-License-Identifier: GPL-3.0-or-later */
/* tiles.c - a large sheet on several small pages, with match marks and a ruler */
#include "sheet-parts.h"
#include "sheet-views.h"
#include "tile-grid.h"

#include <math.h>

#define MARGIN   8.0  /* mm that common printers leave white (common practice, no source) */
#define FOOT     16.0 /* for the ruler and what the page says of itself        */
#define CROSS    4.0  /* half the width of a match mark                        */
#define LETTERING 2.5

typedef struct
{
  FpDrawing *sheet;
  double     width, height;        /* of a page                                */
  FpTileGrid grid;
  FpUnits    units;
} Tiling;

/* Where a page lies in the grid, and what it shows of the sheet begins; y from the upper edge. */
typedef struct { guint column, row; double x0, y0; } Spot;

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
mark_positions (const FpTileGrid *g, gboolean down, double *at)
{
  const guint n = down ? g->rows : g->columns;
  const double end = down ? g->shown.y1 : g->shown.x1;
  double before = down ? g->shown.y0 : g->shown.x0;
  guint count = 0;

  for (guint i = 0; i < n; i++)
    {
      const double next = i + 1 == n ? end : down ? fp_tile_join_y (g, i) : fp_tile_join_x (g, i);
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

/* From the mark in the middle of a side on, in the strip beyond the join: there nothing of the sheet stands. */
static void
tell_blank (FpDrawing *page, FpPoint at, FpPoint way, gboolean on_left)
{
  const double along = CROSS + 1.0, aside = on_left ? 1.2 : -1.2 - LETTERING * 0.8;
  const FpPoint from = { at.x + way.x * along - way.y * aside, at.y + way.y * along + way.x * aside };

  fp_drawing_text (page, from, LETTERING * 0.8, way.y > 0 ? 90 : 0, FP_ALIGN_LEFT, "No page here: it would be blank.");
}

static void
add_upright_join (const Tiling *t, FpDrawing *page, const Spot *spot, guint c, double *at)
{
  const FpTileGrid *g = &t->grid;
  const double x = fp_tile_join_x (g, c), top = t->height - MARGIN;
  const int beyond = c == spot->column ? (int) c + 1 : (int) c;
  const guint n = mark_positions (g, TRUE, at);

  if (!within (x, spot->x0, g->inner_w))
    return;
  const double on_page = MARGIN + x - spot->x0;
  fp_drawing_line (page, FP_PEN_GUIDE, (FpPoint) { on_page, top }, (FpPoint) { on_page, top - g->inner_h });
  for (guint i = 0; i < n; i++)
    {
      const FpPoint p = { on_page, top - (at[i] - spot->y0) };
      if (!within (at[i], spot->y0, g->inner_h))
        continue;
      add_cross (page, p, c, i);
      if (i == 2 * spot->row && fp_tile_is_blank (g, beyond, (int) spot->row))
        tell_blank (page, p, (FpPoint) { 0, 1 }, c != spot->column);
    }
}

static void
add_level_join (const Tiling *t, FpDrawing *page, const Spot *spot, guint r, double *at)
{
  const FpTileGrid *g = &t->grid;
  const double y = fp_tile_join_y (g, r);
  const int beyond = r == spot->row ? (int) r + 1 : (int) r;
  const guint n = mark_positions (g, FALSE, at);

  if (!within (y, spot->y0, g->inner_h))
    return;
  const double on_page = t->height - MARGIN - (y - spot->y0);
  fp_drawing_line (page, FP_PEN_GUIDE, (FpPoint) { MARGIN, on_page }, (FpPoint) { MARGIN + g->inner_w, on_page });
  /* The odd ones lie on joins between columns and are marked there. */
  for (guint i = 0; i < n; i += 2)
    {
      const FpPoint p = { MARGIN + at[i] - spot->x0, on_page };
      if (!within (at[i], spot->x0, g->inner_w))
        continue;
      add_cross (page, p, g->columns + r, i);
      if (i == 2 * spot->column && fp_tile_is_blank (g, (int) spot->column, beyond))
        tell_blank (page, p, (FpPoint) { 1, 0 }, r != spot->row);
    }
}

static void
add_joins (const Tiling *t, FpDrawing *page, const Spot *spot)
{
  g_autofree double *at = g_new (double, 2 * MAX (t->grid.columns, t->grid.rows) + 1);

  for (guint c = 0; c + 1 < t->grid.columns; c++)
    add_upright_join (t, page, spot, c, at);
  for (guint r = 0; r + 1 < t->grid.rows; r++)
    add_level_join (t, page, spot, r, at);
}

static void
add_foot (const Tiling *t, FpDrawing *page, const Spot *spot, guint number)
{
  const FpTileGrid *g = &t->grid;
  g_autofree char *where = g_strdup_printf ("Page %u of %u: row %u of %u, column %u of %u", number, g->n_pages,
                                            spot->row + 1, g->rows, spot->column + 1, g->columns);
  const double ruler = fp_drawing_add_ruler (page, (FpPoint) { MARGIN, MARGIN + 5.0 }, t->units);
  const double x = MARGIN + ruler + 6.0, room = t->width - MARGIN - x;
  g_autofree char *first = fp_lettering_shorten (where, LETTERING, room);
  g_autofree char *second = g->n_pages > 1 ? fp_lettering_shorten ("Cut on the dotted lines; join like letters.",
                                                                   LETTERING, room) : g_strdup ("");

  fp_drawing_text (page, (FpPoint) { x, MARGIN + 5.0 }, LETTERING, 0, FP_ALIGN_LEFT, first);
  fp_drawing_text (page, (FpPoint) { x, MARGIN + 1.3 }, LETTERING, 0, FP_ALIGN_LEFT, second);
}

static FpDrawing *
tile_new (const Tiling *t, guint column, guint row, guint number)
{
  const FpTileGrid *g = &t->grid;
  const Spot spot = { column, row, g->left + column * g->step_x, g->top + row * g->step_y };
  const double top = t->height - MARGIN;
  const FpBox window = { MARGIN + MAX (g->shown.x0 - spot.x0, 0), top - MIN (g->shown.y1 - spot.y0, g->inner_h),
                         MARGIN + MIN (g->shown.x1 - spot.x0, g->inner_w), top - MAX (g->shown.y0 - spot.y0, 0) };
  const FpPoint at = { MARGIN - spot.x0, top + spot.y0 - fp_drawing_height (t->sheet) };
  FpDrawing *page = fp_drawing_new (t->width, t->height);

  fp_drawing_set_ink (page, fp_drawing_ink (t->sheet));
  fp_drawing_set_inset (page, t->sheet, at, &window);
  add_joins (t, page, &spot);
  add_foot (t, page, &spot, number);
  return page;
}

GPtrArray *
fp_drawing_tiles (FpDrawing *sheet, FpPaper paper, gboolean landscape, FpUnits units)
{
  GPtrArray *pages = g_ptr_array_new_with_free_func ((GDestroyNotify) fp_drawing_unref);
  Tiling t = { .sheet = sheet, .units = units };

  fp_paper_size (paper, landscape, &t.width, &t.height);
  fp_tile_grid_init (&t.grid, sheet, t.width - 2 * MARGIN, t.height - 2 * MARGIN - FOOT);
  for (guint row = 0; row < t.grid.rows; row++)
    for (guint column = 0; column < t.grid.columns; column++)
      if (!fp_tile_is_blank (&t.grid, (int) column, (int) row))
        g_ptr_array_add (pages, tile_new (&t, column, row, pages->len + 1));
  fp_tile_grid_clear (&t.grid);
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

/* Only the drawing is joined from pages; the findings that follow it are read one page after another. */
static GPtrArray *
drawing_tiled (const GPtrArray *sheets, FpPaper tile, FpUnits units)
{
  GPtrArray *pages = g_ptr_array_new_with_free_func ((GDestroyNotify) fp_drawing_unref);

  append_tiles (pages, g_ptr_array_index (sheets, 0), tile, units);
  for (guint i = 1; i < sheets->len; i++)
    g_ptr_array_add (pages, fp_drawing_ref (g_ptr_array_index (sheets, i)));
  return pages;
}

/* Larger than any paper that is printed in one piece (ISO 216; 2A0 and 4A0 from memory), landscape. */
static const struct { const char *name; double width, height; } large[] = {
  { "A3", 420, 297 }, { "A2", 594, 420 }, { "A1", 841, 594 }, { "A0", 1189, 841 }, { "2A0", 1682, 1189 },
  { "4A0", 2378, 1682 },
};

/* On a larger sheet, that way up that takes fewer pages; NULL where it fits neither way, with @why not that of the spec. */
static GPtrArray *
tiled_on (const FpScene *scene, const FpSheetSpec *spec, guint size, FpPaper tile, double *scale, GError **why)
{
  const FpUnits units = fp_project_brief (fp_scene_project (scene))->units;
  GPtrArray *fewest = NULL;

  for (guint way = 0; way < 2; way++)
    {
      const gboolean lies = way == 0 ? spec->landscape : !spec->landscape;
      FpSheetSpec larger = *spec;
      larger.landscape = lies;
      larger.width = lies ? large[size].width : large[size].height;
      larger.height = lies ? large[size].height : large[size].width;
      larger.paper_name = large[size].name;
      g_autoptr (GPtrArray) sheets = fp_sheet_pages_further_on (scene, &larger, &tile, scale, way == 0 ? why : NULL);
      GPtrArray *pages = sheets != NULL ? drawing_tiled (sheets, tile, units) : NULL;
      if (pages == NULL)
        continue;
      if (fewest != NULL && fewest->len <= pages->len)
        g_ptr_array_unref (pages);
      else
        {
          g_clear_pointer (&fewest, g_ptr_array_unref);
          fewest = pages;
        }
    }
  return fewest;
}

/* On the smallest sheet larger than that of the spec on which it fits; NULL with the error of the largest. */
GPtrArray *
fp_sheet_pages_tiled (const FpScene *scene, const FpSheetSpec *spec, FpPaper tile, double *scale, GError **error)
{
  g_autofree char *piece = fp_sheet_paper_name (&(FpSheetSpec) { .paper = tile });
  FpSheetSpec joined = *spec;
  g_autoptr (GPtrArray) sheets = NULL;
  GError *why = NULL;
  GPtrArray *pages = NULL;
  double width, height;

  joined.joined_from = spec->width > 0 || spec->paper != tile ? piece : NULL;
  sheets = fp_sheet_pages_further_on (scene, &joined, &tile, scale, &why);
  if (sheets != NULL)
    return drawing_tiled (sheets, tile, fp_project_brief (fp_scene_project (scene))->units);
  fp_paper_size (spec->paper, TRUE, &width, &height);
  for (guint i = 0; pages == NULL && spec->scale > 0 && i < G_N_ELEMENTS (large); i++)
    if (large[i].width > width && large[i].height > height)
      {
        g_clear_error (&why);
        joined.joined_from = piece;
        pages = tiled_on (scene, &joined, i, tile, scale, &why);
      }
  if (pages == NULL)
    g_propagate_error (error, why);
  else
    g_clear_error (&why);
  return pages;
}
