/* SPDX-License-Identifier: GPL-3.0-or-later */
/* test-tiles.c - pages that are joined give the sheet back */
#include "drawing-private.h"

#include <math.h>
#include <string.h>

#define DOTS 2   /* a millimetre                                             */
#define NEAR 6.0 /* mm from a join: there the match marks lie                */

/* Lines and letters all over a sheet. */
static FpDrawing *
sheet_new (double width, double height)
{
  FpDrawing *sheet = fp_drawing_new (width, height);

  for (double x = 3; x < width; x += 17)
    fp_drawing_line (sheet, FP_PEN_EDGE, (FpPoint) { x, 0 }, (FpPoint) { width - x, height });
  for (double y = 5; y < height; y += 23)
    {
      fp_drawing_line (sheet, FP_PEN_OUTLINE, (FpPoint) { 0, y }, (FpPoint) { width, y });
      for (double x = 4; x < width - 30; x += 61)
        fp_drawing_text (sheet, (FpPoint) { x, y + 2 }, 3.5, 0, FP_ALIGN_LEFT, "Footpace");
    }
  return sheet;
}

static cairo_surface_t *
picture (const FpDrawing *drawing)
{
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, (int) round (fp_drawing_width (drawing) * DOTS),
                                                         (int) round (fp_drawing_height (drawing) * DOTS));
  cairo_t *cr = cairo_create (surface);

  cairo_scale (cr, DOTS, DOTS);
  fp_drawing_paint (drawing, cr, FP_SURFACE_PAPER, TRUE);
  cairo_destroy (cr);
  cairo_surface_flush (surface);
  return surface;
}

static const guint32 *
row_of (cairo_surface_t *surface, int y)
{
  return (const guint32 *) (gpointer) (cairo_image_surface_get_data (surface)
                                       + (gsize) y * (gsize) cairo_image_surface_get_stride (surface));
}

static gboolean
is_near_a_join (const FpDrawing *tile, double x, double y)
{
  guint n;
  const FpMark *mark = fp_drawing_marks (tile, &n);
  const FpPoint *pt = fp_drawing_points (tile);

  for (guint i = 0; i < n; i++)
    if (mark[i].type == FP_MARK_LINE && mark[i].pen == FP_PEN_GUIDE
        && fp_segment_distance (pt[mark[i].first], pt[mark[i].first + 1], (FpPoint) { x, y }) < NEAR)
      return TRUE;
  return FALSE;
}

/* How many pixels differ; those that agree are counted off in @seen. */
static guint
compare (cairo_surface_t *whole, const FpDrawing *tile, guint8 *seen)
{
  cairo_surface_t *part = picture (tile);
  const int width = cairo_image_surface_get_width (whole), height = cairo_image_surface_get_height (whole);
  FpPoint at;
  FpBox clip;
  const FpDrawing *sheet = fp_drawing_inset (tile, &at, &clip);
  const int left = (int) round (at.x * DOTS);
  const int top = (int) round ((fp_drawing_height (tile) - at.y - fp_drawing_height (sheet)) * DOTS);
  guint wrong = 0;

  for (int y = 0; y < cairo_image_surface_get_height (part); y++)
    for (int x = 0; x < cairo_image_surface_get_width (part); x++)
      {
        const double px = (x + 0.5) / DOTS, py = fp_drawing_height (tile) - (y + 0.5) / DOTS;
        const int sx = x - left, sy = y - top;
        if (px < clip.x0 || px > clip.x1 || py < clip.y0 || py > clip.y1 || sx < 0 || sy < 0 || sx >= width || sy >= height
            || is_near_a_join (tile, px, py))
          continue;
        seen[sy * width + sx] = 1;
        if ((row_of (part, y)[x] & 0xffffff) != (row_of (whole, sy)[sx] & 0xffffff))
          wrong++;
      }
  cairo_surface_destroy (part);
  return wrong;
}

static void
check_joined (double width, double height, FpPaper paper, gboolean landscape, guint expected)
{
  g_autoptr (FpDrawing) sheet = sheet_new (width, height);
  g_autoptr (GPtrArray) pages = fp_drawing_tiles (sheet, paper, landscape, FP_UNITS_METRIC);
  cairo_surface_t *whole = picture (sheet);
  const int w = cairo_image_surface_get_width (whole), h = cairo_image_surface_get_height (whole);
  g_autofree guint8 *seen = g_malloc0 ((gsize) w * (gsize) h);
  guint unseen = 0;

  g_assert_cmpuint (pages->len, ==, expected);
  for (guint i = 0; i < pages->len; i++)
    g_assert_cmpuint (compare (whole, g_ptr_array_index (pages, i), seen), ==, 0);
  for (int i = 0; i < w * h; i++)
    unseen += seen[i] == 0;
  /* All but the strips along the joins. */
  g_assert_cmpfloat (unseen / (double) (w * h), <, 0.15);
  cairo_surface_destroy (whole);
}

/* A4 shows 194 by 265 mm, in steps of 184 and 255; A1 is 841 by 594. */
static void
test_joined (void)
{
  check_joined (841, 594, FP_PAPER_A4, FALSE, 5 * 3);
  check_joined (420, 297, FP_PAPER_A4, TRUE, 2 * 2);
  check_joined (150, 200, FP_PAPER_A4, FALSE, 1);
}

/* The same letters are at the same point of the sheet on every page that has them. */
static void
test_crosses (void)
{
  g_autoptr (FpDrawing) sheet = sheet_new (841, 594);
  g_autoptr (GPtrArray) pages = fp_drawing_tiles (sheet, FP_PAPER_A4, FALSE, FP_UNITS_METRIC);
  g_autoptr (GHashTable) at = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, g_free);
  guint shared = 0;

  for (guint i = 0; i < pages->len; i++)
    {
      const FpDrawing *page = g_ptr_array_index (pages, i);
      FpPoint origin, *known;
      FpBox clip;
      guint n;
      const FpMark *mark = fp_drawing_marks (page, &n);

      fp_drawing_inset (page, &origin, &clip);
      for (guint k = 0; k < n; k++)
        if (mark[k].type == FP_MARK_TEXT && mark[k].height < 2.5)
          {
            const FpPoint p = { mark[k].at.x - origin.x, mark[k].at.y - origin.y };
            known = g_hash_table_lookup (at, mark[k].text);
            if (known == NULL)
              g_hash_table_insert (at, g_strdup (mark[k].text), g_memdup2 (&p, sizeof p));
            else
              {
                g_assert_cmpfloat_with_epsilon (known->x, p.x, 1e-9);
                g_assert_cmpfloat_with_epsilon (known->y, p.y, 1e-9);
                shared++;
              }
          }
    }
  g_assert_cmpuint (shared, >=, 20);
}

/* --- blank pages ------------------------------------------------------------------------ */

/* A border all round, as on any sheet, a title block and something in the upper left. */
static FpDrawing *
sparse_sheet_new (double width, double height)
{
  FpDrawing *sheet = fp_drawing_new (width, height);
  const FpPoint border[4] = { { 20, 10 }, { width - 10, 10 }, { width - 10, height - 10 }, { 20, height - 10 } };
  const FpPoint thing[4] = { { 40, height - 40 }, { 170, height - 40 }, { 170, height - 150 }, { 40, height - 150 } };

  fp_drawing_run (sheet, FP_PEN_FRAME, border, 4, TRUE);
  fp_drawing_run (sheet, FP_PEN_OUTLINE, thing, 4, TRUE);
  fp_drawing_text (sheet, (FpPoint) { width - 150, 20 }, 3.5, 0, FP_ALIGN_LEFT, "Title block");
  return sheet;
}

static guint
count_words (const FpDrawing *page, const char *prefix)
{
  guint n, found = 0;
  const FpMark *mark = fp_drawing_marks (page, &n);

  for (guint i = 0; i < n; i++)
    found += mark[i].type == FP_MARK_TEXT && g_str_has_prefix (mark[i].text, prefix) ? 1 : 0;
  return found;
}

/* Whether some page shows a point of the sheet. */
static gboolean
is_on_a_page (const GPtrArray *pages, FpPoint p)
{
  for (guint i = 0; i < pages->len; i++)
    {
      FpPoint at;
      FpBox clip;
      fp_drawing_inset (g_ptr_array_index (pages, i), &at, &clip);
      if (p.x + at.x >= clip.x0 && p.x + at.x <= clip.x1 && p.y + at.y >= clip.y0 && p.y + at.y <= clip.y1)
        return TRUE;
    }
  return FALSE;
}

/* A0 takes 4 by 7 pages lying or 7 by 4 upright; what stands on it takes one page for the thing and one for the title. */
static void
test_blank_left_out (void)
{
  g_autoptr (FpDrawing) sheet = sparse_sheet_new (1189, 841);

  for (int lies = 0; lies < 2; lies++)
    {
      g_autoptr (GPtrArray) pages = fp_drawing_tiles (sheet, FP_PAPER_A4, lies, FP_UNITS_METRIC);
      const double width = fp_lettering_width ("Title block", 3.5);
      g_assert_cmpuint (pages->len, ==, 2);
      for (guint i = 0; i < pages->len; i++)
        {
          g_autofree char *number = g_strdup_printf ("Page %u of 2", i + 1);
          g_assert_cmpuint (count_words (g_ptr_array_index (pages, i), number), ==, 1);
          /* Beside it and above or below it. */
          g_assert_cmpuint (count_words (g_ptr_array_index (pages, i), "No page here"), >=, 2);
        }
      g_assert_true (is_on_a_page (pages, (FpPoint) { 40, 801 }) && is_on_a_page (pages, (FpPoint) { 170, 691 }));
      g_assert_true (is_on_a_page (pages, (FpPoint) { 1039, 20 }) && is_on_a_page (pages, (FpPoint) { 1039 + width, 23.5 }));
    }
}

/* 811 mm lie between the borders of an A1 sheet (ISO 5457, from memory): three A4 pages of 271 mm and the overlap; the
 * sheet with its margins would take four. */
static void
test_margin_left_out (void)
{
  g_autoptr (FpDrawing) sheet = fp_drawing_new (841, 150);
  const FpPoint border[4] = { { 20, 10 }, { 831, 10 }, { 831, 140 }, { 20, 140 } };

  fp_drawing_run (sheet, FP_PEN_FRAME, border, 4, TRUE);
  for (double x = 30; x < 831; x += 10)
    fp_drawing_line (sheet, FP_PEN_OUTLINE, (FpPoint) { x, 20 }, (FpPoint) { x, 130 });
  g_autoptr (GPtrArray) pages = fp_drawing_tiles (sheet, FP_PAPER_A4, TRUE, FP_UNITS_METRIC);
  g_assert_cmpuint (pages->len, ==, 3);
  g_assert_true (is_on_a_page (pages, (FpPoint) { 20, 10 }) && is_on_a_page (pages, (FpPoint) { 831, 140 }));
}

/* ISO 80000-3 and the international inch: 100 mm, and 4 in = 101.6 mm. */
static void
test_ruler (void)
{
  g_autoptr (FpDrawing) drawing = fp_drawing_new (210, 297);

  g_assert_cmpfloat (fp_drawing_add_ruler (drawing, (FpPoint) { 10, 20 }, FP_UNITS_METRIC), ==, 100);
  g_assert_cmpfloat_with_epsilon (fp_drawing_add_ruler (drawing, (FpPoint) { 10, 40 }, FP_UNITS_IMPERIAL), 101.6, 1e-9);
  g_assert_cmpfloat (fp_drawing_points (drawing)[1].x - fp_drawing_points (drawing)[0].x, ==, 100);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/tiles/joined", test_joined);
  g_test_add_func ("/tiles/crosses", test_crosses);
  g_test_add_func ("/tiles/blank-left-out", test_blank_left_out);
  g_test_add_func ("/tiles/margin-left-out", test_margin_left_out);
  g_test_add_func ("/tiles/ruler", test_ruler);
  return g_test_run ();
}
