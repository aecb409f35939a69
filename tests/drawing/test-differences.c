/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What two drawings tell of where they differ: painted again there alone, the picture of the one becomes the other's. */
#include "footpace/drawing.h"
#include "footpace/setting-out.h"

#include "parish.h"
#include "random-sanctuary.h"

#include <cairo.h>
#include <math.h>
#include <string.h>

#define PX_PER_MM (96.0 / 25.4)
#define WIDTH  300.0 /* mm of paper */
#define HEIGHT 200.0
/* Levels: within several rectangles cairo smooths edges with another rounding; a line that is missing or too much differs by 100. */
#define ROUNDING 24

/* --- pictures ------------------------------------------------------------------ */

static cairo_surface_t *
picture_new (void)
{
  return cairo_image_surface_create (CAIRO_FORMAT_RGB24, (int) (WIDTH * PX_PER_MM), (int) (HEIGHT * PX_PER_MM));
}

static void
paint (cairo_surface_t *picture, const FpDrawing *drawing, const cairo_region_t *where)
{
  cairo_t *cr = cairo_create (picture);

  for (int i = 0; where != NULL && i < cairo_region_num_rectangles (where); i++)
    {
      cairo_rectangle_int_t r;
      cairo_region_get_rectangle (where, i, &r);
      cairo_rectangle (cr, r.x, r.y, r.width, r.height);
    }
  if (where != NULL)
    cairo_clip (cr);
  cairo_scale (cr, PX_PER_MM, PX_PER_MM);
  fp_drawing_paint (drawing, cr, FP_SURFACE_PAPER, TRUE);
  cairo_destroy (cr);
  cairo_surface_flush (picture);
}

/* Whole pixels that the boxes touch. */
static cairo_region_t *
pixels_of (const GArray *boxes)
{
  cairo_region_t *region = cairo_region_create ();

  for (guint i = 0; i < boxes->len; i++)
    {
      const FpBox *b = &g_array_index (boxes, FpBox, i);
      const int x0 = (int) floor (MAX (b->x0, 0) * PX_PER_MM) - 1, x1 = (int) ceil (MIN (b->x1, WIDTH) * PX_PER_MM) + 1;
      const int y0 = (int) floor (MAX (HEIGHT - b->y1, 0) * PX_PER_MM) - 1;
      const int y1 = (int) ceil (MIN (HEIGHT - b->y0, HEIGHT) * PX_PER_MM) + 1;
      if (x1 > x0 && y1 > y0)
        cairo_region_union_rectangle (region, &(cairo_rectangle_int_t) { x0, y0, x1 - x0, y1 - y0 });
    }
  return region;
}

/* The most that any pixel differs, in levels of 255 of red, green or blue. */
static int
unlikeness (cairo_surface_t *a, cairo_surface_t *b)
{
  const int stride = cairo_image_surface_get_stride (a), height = cairo_image_surface_get_height (a);
  const guchar *p = cairo_image_surface_get_data (a), *q = cairo_image_surface_get_data (b);
  int most = 0;

  for (int i = 0; i < height * stride; i++)
    if (i % 4 != (G_BYTE_ORDER == G_LITTLE_ENDIAN ? 3 : 0)) /* the byte that is not used */
      most = MAX (most, ABS (p[i] - q[i]));
  return most;
}

/* Paints @is over a picture of @was where they tell that they differ; returns the share of the page that is. */
static double
assert_repainted (const FpDrawing *was, const FpDrawing *is)
{
  g_autoptr (GArray) boxes = g_array_new (FALSE, FALSE, sizeof (FpBox));
  cairo_surface_t *again = picture_new (), *anew = picture_new ();
  cairo_region_t *region;
  double area = 0;

  paint (again, was, NULL);
  paint (anew, is, NULL);
  g_assert_true (fp_drawing_differences (was, is, boxes));
  region = pixels_of (boxes);
  if (!cairo_region_is_empty (region))
    paint (again, is, region);
  g_assert_cmpint (unlikeness (again, anew), <=, ROUNDING);
  for (int i = 0; i < cairo_region_num_rectangles (region); i++)
    {
      cairo_rectangle_int_t r;
      cairo_region_get_rectangle (region, i, &r);
      area += (double) r.width * r.height;
    }
  cairo_region_destroy (region);
  cairo_surface_destroy (again);
  cairo_surface_destroy (anew);
  return area / (WIDTH * HEIGHT * PX_PER_MM * PX_PER_MM);
}

/* --- drawings --------------------------------------------------------------------- */

static FpDrawing *
draw (const FpScene *scene, double scale)
{
  FpProjection *projection[FP_N_VIEWS];
  FpBoardLayout layout;
  FpDrawing *drawing;

  for (guint v = 0; v < FP_N_VIEWS; v++)
    projection[v] = fp_projection_new (scene, (FpViewId) v);
  fp_board_layout (scene, NULL, scale, (FpPoint) { 75, 150 }, FP_UNITS_METRIC, &layout);
  drawing = fp_board_draw (projection, &layout, WIDTH, HEIGHT);
  for (guint v = 0; v < FP_N_VIEWS; v++)
    fp_projection_unref (projection[v]);
  return drawing;
}

/* One thing is somewhere else; NULL: it cannot be moved. */
static FpScene *
moved (const FpScene *scene, GRand *random)
{
  guint n;
  const FpPlaced *placed = fp_scene_placed (scene, &n);
  const FpPlaced *one = &placed[g_rand_int_range (random, 0, (gint32) n)];
  const FpVec3 by = { g_rand_double_range (random, -200, 200), g_rand_double_range (random, -200, 200), 0 };
  g_autoptr (FpProject) project = fp_set_out_move (scene, fp_item_id (one->item), by, NULL);

  return project != NULL ? fp_scene_new (project, fp_scene_alternative (scene)) : NULL;
}

/* Returns the least share of the page that was painted again. */
static double
move_and_repaint (FpScene *scene, guint32 seed, guint n)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (seed);
  FpDrawing *was = draw (scene, 60);
  double least = 1;

  for (guint i = 0; i < n; i++)
    {
      FpScene *next = moved (scene, random);
      FpDrawing *is;
      if (next == NULL)
        continue;
      is = draw (next, 60);
      least = MIN (least, assert_repainted (was, is));
      fp_scene_unref (scene);
      fp_drawing_unref (was);
      scene = next;
      was = is;
    }
  fp_scene_unref (scene);
  fp_drawing_unref (was);
  return least;
}

static void
test_parish (void)
{
  g_assert_cmpfloat (move_and_repaint (parish_scene_new (), 1, 40), <, 0.1);
}

static void
test_random (void)
{
  for (guint32 seed = 1; seed <= 20; seed++)
    move_and_repaint (random_sanctuary_new (seed, FP_UNITS_METRIC), seed, 6);
}

/* --- by hand ------------------------------------------------------------------------ */

static const FpPoint square[] = { { 10, 10 }, { 40, 10 }, { 40, 40 }, { 10, 40 } };
static const FpPoint aside[] = { { 30, 30 }, { 60, 30 }, { 60, 60 }, { 30, 60 } };

static void
test_alike (void)
{
  g_autoptr (FpScene) scene = parish_scene_new ();
  g_autoptr (FpDrawing) one = draw (scene, 60), two = draw (scene, 60);
  g_autoptr (GArray) boxes = g_array_new (FALSE, FALSE, sizeof (FpBox));

  g_assert_true (fp_drawing_differences (one, two, boxes));
  g_assert_cmpuint (boxes->len, ==, 0);
}

/* The same marks in another order: what was above lies below. */
static void
test_order (void)
{
  g_autoptr (FpDrawing) one = fp_drawing_new (WIDTH, HEIGHT), two = fp_drawing_new (WIDTH, HEIGHT);

  fp_drawing_area (one, FP_PEN_OUTLINE, FP_FILL_CUT, 0, square, 4);
  fp_drawing_area (one, FP_PEN_OUTLINE, FP_FILL_INK, 0, aside, 4);
  fp_drawing_area (two, FP_PEN_OUTLINE, FP_FILL_INK, 0, aside, 4);
  fp_drawing_area (two, FP_PEN_OUTLINE, FP_FILL_CUT, 0, square, 4);
  g_assert_cmpfloat (assert_repainted (one, two), >, 0);
}

static void
test_size (void)
{
  g_autoptr (FpDrawing) one = fp_drawing_new (WIDTH, HEIGHT), two = fp_drawing_new (WIDTH, HEIGHT + 1);
  g_autoptr (GArray) boxes = g_array_new (FALSE, FALSE, sizeof (FpBox));

  g_assert_false (fp_drawing_differences (one, two, boxes));
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/differences/parish", test_parish);
  g_test_add_func ("/differences/random", test_random);
  g_test_add_func ("/differences/alike", test_alike);
  g_test_add_func ("/differences/order", test_order);
  g_test_add_func ("/differences/size", test_size);
  return g_test_run ();
}
