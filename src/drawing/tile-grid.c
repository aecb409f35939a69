/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "tile-grid.h"

#include "annotation.h"
#include "drawing-private.h"

#include <math.h>
#include <string.h>

/* Half the width of the border, and a little. */
#define BORDER 0.5
/* The grid may begin in so many places along and down the sheet. */
#define PLACES 5u
/* What is filled all over weighs as much as a page full of lines, mm. */
#define FILLED 1000.0

/* --- what is on the sheet ------------------------------------------------------------ */

typedef struct
{
  GArray *segments; /* FpSegment                                              */
  GArray *areas;    /* indices of marks that are filled                       */
  const FpDrawing *sheet;
} Content;

/* The border; the whole sheet where there is none. */
static FpBox
border_of (const FpDrawing *sheet, gboolean *has_border)
{
  guint n;
  const FpMark *mark = fp_drawing_marks (sheet, &n);

  *has_border = TRUE;
  for (guint i = 0; i < n; i++)
    if (mark[i].type == FP_MARK_LINE && mark[i].pen == FP_PEN_FRAME && mark[i].closed)
      return fp_outline_box (fp_drawing_points (sheet) + mark[i].first, mark[i].n);
  *has_border = FALSE;
  return (FpBox) { 0, 0, fp_drawing_width (sheet), fp_drawing_height (sheet) };
}

static void
add_segment (const Content *c, FpPoint a, FpPoint b)
{
  const double height = fp_drawing_height (c->sheet);
  const FpSegment one = { { a.x, height - a.y }, { b.x, height - b.y } };

  g_array_append_val (c->segments, one);
}

static void
add_run (const Content *c, const FpPoint *pt, guint n, gboolean closed)
{
  for (guint i = 0; i + 1 < n; i++)
    add_segment (c, pt[i], pt[i + 1]);
  if (closed)
    add_segment (c, pt[n - 1], pt[0]);
}

static void
add_mark (const Content *c, const FpMark *mark, guint index)
{
  const FpPoint *pt = fp_drawing_points (c->sheet);
  const FpBox box = fp_mark_box (mark, pt);
  const FpPoint corner[4] = { { box.x0, box.y0 }, { box.x1, box.y0 }, { box.x1, box.y1 }, { box.x0, box.y1 } };

  if (mark->type == FP_MARK_LINE || mark->type == FP_MARK_AREA)
    add_run (c, pt + mark->first, mark->n, mark->closed);
  else
    add_run (c, corner, 4, TRUE);
  if (mark->type == FP_MARK_AREA && mark->fill != FP_FILL_PAPER)
    g_array_append_val (c->areas, index);
}

/* Neither the border nor what stands in the margin. */
static Content
content_of (const FpDrawing *sheet)
{
  const Content c = { g_array_new (FALSE, FALSE, sizeof (FpSegment)), g_array_new (FALSE, FALSE, sizeof (guint)), sheet };
  gboolean has_border;
  const FpBox border = border_of (sheet, &has_border);
  guint n;
  const FpMark *mark = fp_drawing_marks (sheet, &n);

  for (guint i = 0; i < n; i++)
    {
      const FpBox box = fp_mark_box (&mark[i], fp_drawing_points (sheet));
      if (mark[i].pen != FP_PEN_FRAME && (!has_border || fp_box_overlaps (&box, &border)))
        add_mark (&c, &mark[i], i);
    }
  return c;
}

/* --- one grid ------------------------------------------------------------------------ */

double
fp_tile_join_x (const FpTileGrid *self, guint i)
{
  return self->left + (i + 1) * self->step_x + FP_TILE_OVERLAP / 2;
}

double
fp_tile_join_y (const FpTileGrid *self, guint i)
{
  return self->top + (i + 1) * self->step_y + FP_TILE_OVERLAP / 2;
}

gboolean
fp_tile_is_blank (const FpTileGrid *self, int column, int row)
{
  return column >= 0 && row >= 0 && column < (int) self->columns && row < (int) self->rows
         && self->blank[(guint) row * self->columns + (guint) column];
}

/* From join to join. */
static FpBox
own_part (const FpTileGrid *g, guint column, guint row)
{
  return (FpBox) { column == 0 ? g->shown.x0 : fp_tile_join_x (g, column - 1),
                   row == 0 ? g->shown.y0 : fp_tile_join_y (g, row - 1),
                   column + 1 == g->columns ? g->shown.x1 : fp_tile_join_x (g, column),
                   row + 1 == g->rows ? g->shown.y1 : fp_tile_join_y (g, row) };
}

static gboolean
is_filled (const Content *c, const FpBox *part)
{
  const FpPoint middle = { (part->x0 + part->x1) / 2, fp_drawing_height (c->sheet) - (part->y0 + part->y1) / 2 };
  const FpMark *mark = fp_drawing_marks (c->sheet, NULL);

  for (guint i = 0; i < c->areas->len; i++)
    {
      const FpMark *area = &mark[g_array_index (c->areas, guint, i)];
      if (fp_outline_contains (fp_drawing_points (c->sheet) + area->first, area->n, middle))
        return TRUE;
    }
  return FALSE;
}

/* Length of the lines in a part of the sheet, mm. */
static double
amount_in (const Content *c, const FpBox *part)
{
  double amount = 0;

  for (guint i = 0; i < c->segments->len; i++)
    {
      FpSegment s = g_array_index (c->segments, FpSegment, i);
      if (MAX (s.a.x, s.b.x) < part->x0 || MIN (s.a.x, s.b.x) > part->x1 || MAX (s.a.y, s.b.y) < part->y0
          || MIN (s.a.y, s.b.y) > part->y1)
        continue;
      if (fp_clip_segment (&s.a, &s.b, part))
        amount += hypot (s.b.x - s.a.x, s.b.y - s.a.y);
    }
  return amount > 0 ? amount : is_filled (c, part) ? FILLED : 0;
}

/* Notes which pages are blank; the least that stands on any other, mm. */
static double
weigh (FpTileGrid *g, const Content *c)
{
  double least = G_MAXDOUBLE;

  g->n_pages = 0;
  for (guint row = 0; row < g->rows; row++)
    for (guint column = 0; column < g->columns; column++)
      {
        const FpBox part = own_part (g, column, row);
        const double amount = amount_in (c, &part);
        g->blank[row * g->columns + column] = amount <= 0;
        g->n_pages += amount > 0 ? 1 : 0;
        least = amount > 0 ? MIN (least, amount) : least;
      }
  return least;
}

/* --- the best ------------------------------------------------------------------------- */

static guint
count_across (double whole, double inner)
{
  return whole <= inner ? 1 : (guint) ceil ((whole - FP_TILE_OVERLAP - 1e-6) / (inner - FP_TILE_OVERLAP));
}

/* The margin about the border is left out where that saves a column or a row. */
static void
set_extent (FpTileGrid *g, const FpDrawing *sheet)
{
  const double width = fp_drawing_width (sheet), height = fp_drawing_height (sheet);
  gboolean has_border;
  const FpBox border = border_of (sheet, &has_border);
  const double w = border.x1 - border.x0 + 2 * BORDER, h = border.y1 - border.y0 + 2 * BORDER;

  g->shown = (FpBox) { 0, 0, width, height };
  g->columns = count_across (width, g->inner_w);
  g->rows = count_across (height, g->inner_h);
  if (has_border && count_across (w, g->inner_w) < g->columns)
    {
      g->shown.x0 = border.x0 - BORDER;
      g->shown.x1 = border.x1 + BORDER;
      g->columns = count_across (w, g->inner_w);
    }
  if (has_border && count_across (h, g->inner_h) < g->rows)
    {
      g->shown.y0 = height - border.y1 - BORDER;
      g->shown.y1 = height - border.y0 + BORDER;
      g->rows = count_across (h, g->inner_h);
    }
}

/* How much more paper there is than sheet. */
static double
spare (double step, guint n, double shown)
{
  return MAX (n * step + FP_TILE_OVERLAP - shown, 0);
}

static void
begin_at (FpTileGrid *g, guint i, guint j)
{
  const double x = spare (g->step_x, g->columns, g->shown.x1 - g->shown.x0);
  const double y = spare (g->step_y, g->rows, g->shown.y1 - g->shown.y0);

  g->left = g->shown.x0 - x * i / (PLACES - 1);
  g->top = g->shown.y0 - y * j / (PLACES - 1);
}

void
fp_tile_grid_init (FpTileGrid *self, const FpDrawing *sheet, double inner_w, double inner_h)
{
  const Content c = content_of (sheet);
  guint best_i = 0, best_j = 0, fewest = G_MAXUINT;
  double most = 0;

  *self = (FpTileGrid) { .inner_w = inner_w, .inner_h = inner_h, .step_x = inner_w - FP_TILE_OVERLAP,
                         .step_y = inner_h - FP_TILE_OVERLAP };
  set_extent (self, sheet);
  self->blank = g_new0 (gboolean, self->columns * self->rows);
  for (guint i = 0; i < PLACES; i++)
    for (guint j = 0; j < PLACES && self->columns * self->rows > 1; j++)
      {
        begin_at (self, i, j);
        const double least = weigh (self, &c);
        if (self->n_pages > fewest || (self->n_pages == fewest && least <= most))
          continue;
        fewest = self->n_pages;
        most = least;
        best_i = i;
        best_j = j;
      }
  begin_at (self, best_i, best_j);
  weigh (self, &c);
  /* A sheet with nothing on it is one that somebody wanted to see. */
  if (self->n_pages == 0 || self->columns * self->rows == 1)
    {
      memset (self->blank, 0, self->columns * self->rows * sizeof (gboolean));
      self->n_pages = self->columns * self->rows;
    }
  g_array_unref (c.segments);
  g_array_unref (c.areas);
}

void
fp_tile_grid_clear (FpTileGrid *self)
{
  g_clear_pointer (&self->blank, g_free);
}
