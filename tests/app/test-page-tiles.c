/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A page in tiles shows what painting it at once would, and paints little where little has changed. */
#include "page-tiles.h"

#define SCALE (96.0 / 25.4)

/* All of it, and more than there is. */
#define ALL { 0, 0, 4000, 4000 }

/* Levels of 255 that edges may be smoothed otherwise: see test-differences.c. */
#define ROUNDING 24

static FpDrawing *
drawing_with (double x)
{
  FpDrawing *drawing = fp_drawing_new (200, 150);
  const FpPoint pt[] = { { x, 20 }, { x + 20, 20 }, { x + 25, 30 }, { x, 40 } };

  for (guint i = 0; i < 300; i++)
    fp_drawing_line (drawing, FP_PEN_EDGE, (FpPoint) { 3 + i * 0.6, 100 }, (FpPoint) { 5 + i * 0.6, 145 });
  fp_drawing_area (drawing, FP_PEN_OUTLINE, FP_FILL_CUT, 45, pt, G_N_ELEMENTS (pt));
  fp_drawing_text (drawing, (FpPoint) { x, 50 }, 3.5, 0, FP_ALIGN_LEFT, "1067");
  return drawing;
}

static cairo_surface_t *
surface_new (int density)
{
  return cairo_image_surface_create (CAIRO_FORMAT_RGB24, (int) (200 * SCALE) * density, (int) (150 * SCALE) * density);
}

static cairo_surface_t *
shown (FpPageTiles *tiles, const FpPagePaint *paint)
{
  cairo_surface_t *surface = surface_new (paint->density);
  cairo_t *cr = cairo_create (surface);
  GtkSnapshot *snapshot = gtk_snapshot_new ();
  GskRenderNode *node;

  fp_page_tiles_snapshot (tiles, paint, snapshot);
  node = gtk_snapshot_free_to_node (snapshot);
  cairo_scale (cr, paint->density, paint->density);
  if (node != NULL) /* nothing of it is seen */
    {
      gsk_render_node_draw (node, cr);
      gsk_render_node_unref (node);
    }
  cairo_destroy (cr);
  return surface;
}

static cairo_surface_t *
painted (const FpPagePaint *paint)
{
  cairo_surface_t *surface = surface_new (paint->density);
  cairo_t *cr = cairo_create (surface);

  cairo_scale (cr, paint->px_per_mm * paint->density, paint->px_per_mm * paint->density);
  fp_drawing_paint (paint->drawing, cr, paint->look, TRUE);
  cairo_destroy (cr);
  return surface;
}

static int
unlikeness (cairo_surface_t *a, cairo_surface_t *b)
{
  const int size = cairo_image_surface_get_stride (a) * cairo_image_surface_get_height (a);
  int most = 0;

  cairo_surface_flush (a);
  cairo_surface_flush (b);
  for (int i = 0; i < size; i++)
    if (i % 4 != (G_BYTE_ORDER == G_LITTLE_ENDIAN ? 3 : 0))
      most = MAX (most, ABS (cairo_image_surface_get_data (a)[i] - cairo_image_surface_get_data (b)[i]));
  return most;
}

static void
assert_shown (FpPageTiles *tiles, const FpPagePaint *paint)
{
  cairo_surface_t *is = shown (tiles, paint), *must = painted (paint);

  g_assert_cmpint (unlikeness (is, must), <=, ROUNDING);
  cairo_surface_destroy (is);
  cairo_surface_destroy (must);
}

static void
test_moved (gconstpointer data)
{
  FpPageTiles *tiles = fp_page_tiles_new ();
  const int density = GPOINTER_TO_INT (data);
  const double all = 200 * SCALE * density * 150 * SCALE * density;

  for (guint i = 0; i < 5; i++)
    {
      g_autoptr (FpDrawing) drawing = drawing_with (30 + i * 7.3);
      const FpPagePaint paint = { drawing, FP_SURFACE_PAPER, SCALE, density, ALL };

      assert_shown (tiles, &paint);
      if (i == 0)
        g_assert_cmpfloat ((double) fp_page_tiles_painted (tiles) / all, >, 0.99);
      else
        g_assert_cmpfloat ((double) fp_page_tiles_painted (tiles) / all, <, 0.15);
    }
  fp_page_tiles_free (tiles);
}

/* Another look, another density, another size of paper: everything is painted, and as it should be. */
static void
test_otherwise (void)
{
  FpPageTiles *tiles = fp_page_tiles_new ();
  g_autoptr (FpDrawing) one = drawing_with (30), wide = fp_drawing_new (300, 100);
  const FpPagePaint paint[] = {
    { one, FP_SURFACE_PAPER, SCALE, 1, ALL }, { one, FP_SURFACE_DARK, SCALE, 1, ALL }, { one, FP_SURFACE_DARK, SCALE, 2, ALL },
    { one, FP_SURFACE_PAPER, SCALE / 2, 2, ALL }, { wide, FP_SURFACE_PAPER, SCALE / 2, 2, ALL }, { one, FP_SURFACE_PAPER, SCALE, 1, ALL },
  };

  for (guint i = 0; i < G_N_ELEMENTS (paint); i++)
    if (paint[i].drawing == one && paint[i].px_per_mm == SCALE)
      assert_shown (tiles, &paint[i]);
    else
      cairo_surface_destroy (shown (tiles, &paint[i]));
  fp_page_tiles_forget (tiles);
  assert_shown (tiles, &paint[0]);
  fp_page_tiles_free (tiles);
}

/* What is not seen is not painted, and is as it should be when it comes into view, whatever was drawn meanwhile. */
static void
test_unseen (void)
{
  const double all = 200 * SCALE * 150 * SCALE;
  FpPageTiles *tiles = fp_page_tiles_new ();
  g_autoptr (FpDrawing) one = drawing_with (30), other = drawing_with (60);
  FpPagePaint paint = { one, FP_SURFACE_PAPER, SCALE, 1, { 400, 300, 200, 150 } };

  cairo_surface_destroy (shown (tiles, &paint));
  g_assert_cmpfloat ((double) fp_page_tiles_painted (tiles) / all, <, 0.5);
  paint.drawing = other;
  paint.seen = (cairo_rectangle_int_t) { -100, -50, 300, 200 };
  cairo_surface_destroy (shown (tiles, &paint));
  paint.seen = (cairo_rectangle_int_t) { -900, -900, 300, 200 };
  cairo_surface_destroy (shown (tiles, &paint));
  paint.seen = (cairo_rectangle_int_t) ALL;
  assert_shown (tiles, &paint);
  fp_page_tiles_free (tiles);
}

int
main (int argc, char *argv[])
{
  gtk_test_init (&argc, &argv, NULL);
  g_test_add_data_func ("/page-tiles/moved", GINT_TO_POINTER (1), test_moved);
  g_test_add_data_func ("/page-tiles/moved/dense", GINT_TO_POINTER (2), test_moved);
  g_test_add_func ("/page-tiles/unseen", test_unseen);
  g_test_add_func ("/page-tiles/otherwise", test_otherwise);
  return g_test_run ();
}
