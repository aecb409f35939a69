/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A way as marks on a plan: where route, dimension and circle come to lie. */
#include "footpace/way-drawing.h"

#include <math.h>

static const FpViewLayout plan = { .origin = { 100, 50 }, .scale = 50, .clip = { G_MAXDOUBLE, G_MAXDOUBLE, -G_MAXDOUBLE, -G_MAXDOUBLE } };

static FpPoint route[] = { { 0, -2000 }, { 0, 0 }, { 1000, 3000 } };

static FpDrawing *
drawn (const FpWay *way)
{
  FpDrawing *drawing = fp_drawing_new (200, 200);

  fp_drawing_add_way (drawing, way, &plan);
  return drawing;
}

static const FpMark *
mark_of (const FpDrawing *drawing, FpMarkType type, FpPen pen, guint *times)
{
  guint n;
  const FpMark *mark = fp_drawing_marks (drawing, &n), *found = NULL;

  *times = 0;
  for (guint i = 0; i < n; i++)
    if (mark[i].type == type && (type == FP_MARK_TEXT || mark[i].pen == pen))
      {
        found = found == NULL ? &mark[i] : found;
        ++*times;
      }
  return found;
}

/* Upward from (0, -2000) to (1000, 3000), through 1500 between (-700, 0) and (800, 0). */
static FpWay
way (void)
{
  return (FpWay) { .width = 1500, .narrows = TRUE, .narrow = { { 800, 0 }, { -700, 0 } }, .owner = { -1, -1 },
                   .route = route, .n_route = G_N_ELEMENTS (route) };
}

static void
test_all (void)
{
  const FpWay one = way ();
  g_autoptr (FpDrawing) drawing = drawn (&one);
  guint times;
  const FpMark *run = mark_of (drawing, FP_MARK_LINE, FP_PEN_SIGHT, &times);
  const FpPoint *pt = fp_drawing_points (drawing) + run->first;

  g_assert_cmpuint (times, ==, 1);
  g_assert_cmpuint (run->n, ==, 3);
  g_assert_cmpfloat_with_epsilon (pt[0].y, 50 - 2000.0 / 50, 1e-9);
  g_assert_cmpfloat_with_epsilon (pt[2].x, 100 + 1000.0 / 50, 1e-9);
  /* Two dots, and the body. */
  mark_of (drawing, FP_MARK_CIRCLE, FP_PEN_SIGHT, &times);
  g_assert_cmpuint (times, ==, 3);
  {
    const FpMark *text = mark_of (drawing, FP_MARK_TEXT, FP_PEN_LETTER, &times);

    g_assert_cmpuint (times, ==, 1);
    g_assert_cmpstr (text->text, ==, "1500");
    g_assert_cmpfloat_with_epsilon (text->turn, 0, 1e-9); /* read from below, though the way gives it from the right */
    g_assert_cmpfloat (text->at.y, >, 50);
    g_assert_cmpfloat (text->at.x, >, 100 - 700.0 / 50);
    g_assert_cmpfloat (text->at.x + fp_lettering_width (text->text, text->height), <, 100 + 800.0 / 50);
  }
  /* The dimension line and its two strokes. */
  mark_of (drawing, FP_MARK_LINE, FP_PEN_OUTLINE, &times);
  g_assert_cmpuint (times, ==, 3);
}

/* All marks lie in the box that is told of them. */
static void
test_box (void)
{
  const double turn[] = { 0, 30, 90, 160 };

  for (guint i = 0; i < G_N_ELEMENTS (turn); i++)
    {
      const double a = turn[i] * G_PI / 180, half = i % 2 ? 80 : 700;
      FpWay one = way ();
      FpBox box;
      guint n;

      one.narrow[0] = (FpPoint) { half * cos (a), half * sin (a) };
      one.narrow[1] = (FpPoint) { -half * cos (a), -half * sin (a) };
      one.n_route = i == 2 ? 0 : 3;
      g_autoptr (FpDrawing) drawing = drawn (&one);
      const FpMark *mark = fp_drawing_marks (drawing, &n);
      box = fp_way_drawn_box (&one, &plan);
      g_assert_cmpuint (n, >, 4);
      for (guint m = 0; m < n; m++)
        for (guint k = 0; k < mark[m].n; k++)
          {
            const FpPoint p = fp_drawing_points (drawing)[mark[m].first + k];
            g_assert_true (p.x > box.x0 && p.x < box.x1 && p.y > box.y0 && p.y < box.y1);
          }
      g_assert_cmpfloat (mark_of (drawing, FP_MARK_TEXT, FP_PEN_LETTER, &n)->turn, >, -90);
      g_assert_cmpfloat (mark_of (drawing, FP_MARK_TEXT, FP_PEN_LETTER, &n)->turn, <=, 90);
    }
}

static void
test_nothing (void)
{
  const FpWay none = { .width = 0, .owner = { -1, -1 } };
  g_autoptr (FpDrawing) drawing = drawn (&none);
  const FpBox box = fp_way_drawn_box (&none, &plan);
  guint n;

  fp_drawing_marks (drawing, &n);
  g_assert_cmpuint (n, ==, 0);
  g_assert_true (fp_box_is_empty (&box));
}

/* Of what the plan does not show nothing is drawn: here all that lies farther west than y = -500, or east than 1000. */
static void
test_clipped (void)
{
  const FpBox shown = { -5000, -500, 5000, 1000 };
  FpViewLayout part = plan;
  FpWay one = way ();
  g_autoptr (FpDrawing) drawing = fp_drawing_new (200, 200), without = fp_drawing_new (200, 200);
  guint n, times;
  const FpMark *mark;

  part.clip = shown;
  fp_drawing_add_way (drawing, &one, &part);
  mark = fp_drawing_marks (drawing, &n);
  for (guint i = 0; i < n; i++)
    for (guint k = 0; mark[i].pen == FP_PEN_SIGHT && mark[i].type == FP_MARK_LINE && k < mark[i].n; k++)
      {
        const FpPoint p = fp_drawing_points (drawing)[mark[i].first + k];
        g_assert_cmpfloat (p.y, >=, 50 - 500.0 / 50 - 1e-9);
        g_assert_cmpfloat (p.y, <=, 50 + 1000.0 / 50 + 1e-9);
      }
  mark_of (drawing, FP_MARK_LINE, FP_PEN_SIGHT, &times);
  g_assert_cmpuint (times, ==, 2); /* one of each leg */
  mark_of (drawing, FP_MARK_TEXT, FP_PEN_LETTER, &times);
  g_assert_cmpuint (times, ==, 1);

  one.narrow[0] = (FpPoint) { 800, -1500 };
  one.narrow[1] = (FpPoint) { -700, -1500 };
  fp_drawing_add_way (without, &one, &part);
  mark_of (without, FP_MARK_TEXT, FP_PEN_LETTER, &times);
  g_assert_cmpuint (times, ==, 0);
}

/* A figure that has no room on its line stands clear of what is drawn already, and a leader goes there. */
static void
test_aside (void)
{
  g_autoptr (FpDrawing) drawing = fp_drawing_new (200, 200);
  FpWay one = way ();
  guint times;
  const FpMark *text;

  one.narrow[0] = (FpPoint) { 40, 0 };
  one.narrow[1] = (FpPoint) { -40, 0 };
  one.n_route = 0;
  /* To the right of it all is hatched. */
  fp_drawing_area (drawing, FP_PEN_EDGE, FP_FILL_CUT, 0,
                   (FpPoint[]) { { 102, 20 }, { 150, 20 }, { 150, 80 }, { 102, 80 } }, 4);
  fp_drawing_add_way (drawing, &one, &plan);
  text = mark_of (drawing, FP_MARK_TEXT, FP_PEN_LETTER, &times);
  g_assert_cmpuint (times, ==, 1);
  g_assert_cmpfloat (text->at.x + fp_lettering_width (text->text, text->height), <, 102.5);
  mark_of (drawing, FP_MARK_LINE, FP_PEN_DIMENSION, &times);
  g_assert_cmpuint (times, ==, 1);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/way-plan/all", test_all);
  g_test_add_func ("/way-plan/box", test_box);
  g_test_add_func ("/way-plan/clipped", test_clipped);
  g_test_add_func ("/way-plan/aside", test_aside);
  g_test_add_func ("/way-plan/nothing", test_nothing);
  return g_test_run ();
}
