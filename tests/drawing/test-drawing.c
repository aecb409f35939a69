/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Marks, pens, lettering, hatches, and what lies under the pointer. */
#include "drawing-private.h"

#include <math.h>

static void
test_marks (void)
{
  const FpPoint pt[] = { { 10, 10 }, { 30, 10 }, { 30, 25 } };
  g_autoptr (FpDrawing) drawing = fp_drawing_new (420, 297);
  const FpMark *mark;
  guint n;

  fp_drawing_set_item (drawing, "altar", FP_STANDING_PROPOSED, FP_VIEW_PLAN);
  fp_drawing_run (drawing, FP_PEN_OUTLINE, pt, 3, TRUE);
  fp_drawing_set_dimension (drawing, 3, "length");
  fp_drawing_line (drawing, FP_PEN_DIMENSION, pt[0], pt[1]);
  fp_drawing_text (drawing, pt[2], 2.5, 90, FP_ALIGN_MIDDLE, "2 700");
  mark = fp_drawing_marks (drawing, &n);
  g_assert_cmpuint (n, ==, 3);
  g_assert_cmpuint (mark[0].n, ==, 3);
  g_assert_true (mark[0].closed);
  g_assert_cmpstr (mark[0].item, ==, "altar");
  g_assert_true (mark[0].item == mark[2].item);
  g_assert_cmpuint (mark[0].dimension, ==, 0);
  g_assert_cmpuint (mark[1].dimension, ==, 3);
  g_assert_cmpstr (mark[1].param, ==, "length");
  g_assert_cmpuint (mark[1].first, ==, 3);
  g_assert_cmpfloat (fp_drawing_points (drawing)[mark[1].first + 1].x, ==, 30);
  g_assert_cmpstr (mark[2].text, ==, "2 700");
  g_assert_cmpint (mark[2].view, ==, FP_VIEW_PLAN);
}

/* What cannot be drawn is left out: nothing below has to look out for it. */
static void
test_degenerate (void)
{
  const double nan = (double) NAN, inf = (double) INFINITY;
  const FpPoint bad[] = { { 0, 0 }, { nan, 1 }, { 2, 2 } }, far[] = { { 0, 0 }, { inf, 1 }, { 2, 2 } };
  g_autoptr (FpDrawing) drawing = fp_drawing_new (100, 100);
  guint n;

  fp_drawing_run (drawing, FP_PEN_EDGE, bad, 3, FALSE);
  fp_drawing_run (drawing, FP_PEN_EDGE, bad, 1, FALSE);
  fp_drawing_area (drawing, FP_PEN_EDGE, FP_FILL_CUT, 45, far, 3);
  fp_drawing_area (drawing, FP_PEN_EDGE, FP_FILL_CUT, 45, bad, 1);
  fp_drawing_circle (drawing, FP_PEN_EDGE, FP_FILL_NONE, bad[1], 5);
  fp_drawing_circle (drawing, FP_PEN_EDGE, FP_FILL_NONE, bad[0], 0);
  fp_drawing_circle (drawing, FP_PEN_EDGE, FP_FILL_NONE, bad[0], nan);
  fp_drawing_text (drawing, bad[0], 2.5, 0, FP_ALIGN_LEFT, "");
  fp_drawing_text (drawing, bad[0], 2.5, 0, FP_ALIGN_LEFT, NULL);
  fp_drawing_text (drawing, bad[0], 0, 0, FP_ALIGN_LEFT, "x");
  fp_drawing_text (drawing, bad[1], 2.5, 0, FP_ALIGN_LEFT, "x");
  fp_drawing_marks (drawing, &n);
  g_assert_cmpuint (n, ==, 0);
  g_assert_cmpint (fp_drawing_pick (drawing, (FpPoint) { 0, 0 }, 5), ==, -1);
  g_assert_true (fp_drawing_marks (drawing, NULL) == fp_drawing_marks (drawing, &n)); /* whoever need not know how many */
}

static void
test_pick (void)
{
  const FpPoint area[] = { { 20, 20 }, { 60, 20 }, { 60, 60 }, { 20, 60 } };
  g_autoptr (FpDrawing) drawing = fp_drawing_new (100, 100);
  double width;

  fp_drawing_line (drawing, FP_PEN_FRAME, (FpPoint) { 0, 0 }, (FpPoint) { 100, 0 }); /* of the sheet: 0 */
  fp_drawing_set_item (drawing, "floor", FP_STANDING_EXISTING, FP_VIEW_PLAN);
  fp_drawing_area (drawing, FP_PEN_HATCH, FP_FILL_NONE, 0, area, 4); /* 1 */
  fp_drawing_set_item (drawing, "altar", FP_STANDING_EXISTING, FP_VIEW_PLAN);
  fp_drawing_line (drawing, FP_PEN_OUTLINE, (FpPoint) { 30, 30 }, (FpPoint) { 50, 30 }); /* 2 */
  fp_drawing_circle (drawing, FP_PEN_EDGE, FP_FILL_NONE, (FpPoint) { 80, 80 }, 10); /* 3 */
  fp_drawing_circle (drawing, FP_PEN_EDGE, FP_FILL_INK, (FpPoint) { 80, 50 }, 5); /* 4 */
  fp_drawing_set_item (drawing, NULL, FP_STANDING_EXISTING, -1);
  fp_drawing_set_dimension (drawing, 1, "length");
  fp_drawing_text (drawing, (FpPoint) { 80, 20 }, 3.5, 90, FP_ALIGN_MIDDLE, "2 700"); /* 5 */

  g_assert_cmpint (fp_drawing_pick (drawing, (FpPoint) { 50, 0 }, 1), ==, -1);
  g_assert_cmpint (fp_drawing_pick (drawing, (FpPoint) { 40, 30.9 }, 1), ==, 2);
  g_assert_cmpint (fp_drawing_pick (drawing, (FpPoint) { 40, 31.1 }, 1), ==, 1);
  g_assert_cmpint (fp_drawing_pick (drawing, (FpPoint) { 19.5, 40 }, 1), ==, 1);
  g_assert_cmpint (fp_drawing_pick (drawing, (FpPoint) { 18.5, 40 }, 1), ==, -1);
  g_assert_cmpint (fp_drawing_pick (drawing, (FpPoint) { 80, 80 }, 1), ==, -1);
  g_assert_cmpint (fp_drawing_pick (drawing, (FpPoint) { 80, 89.5 }, 1), ==, 3);
  g_assert_cmpint (fp_drawing_pick (drawing, (FpPoint) { 80, 51 }, 1), ==, 4);
  /* Turned by a quarter, the text runs upward from below @at to above it, its head to the left. */
  width = fp_lettering_width ("2 700", 3.5);
  g_assert_cmpint (fp_drawing_pick (drawing, (FpPoint) { 79, 20 + width / 2 - 0.2 }, 0.1), ==, 5);
  g_assert_cmpint (fp_drawing_pick (drawing, (FpPoint) { 79, 20 + width / 2 + 0.2 }, 0.1), ==, -1);
  g_assert_cmpint (fp_drawing_pick (drawing, (FpPoint) { 80 - 3.4, 20 }, 0.1), ==, 5);
  g_assert_cmpint (fp_drawing_pick (drawing, (FpPoint) { 80 + 2.0, 20 }, 0.1), ==, -1);
}

/* Widths of ISO 128-2:2020; the group 0.18 / 0.35 / 0.7 with 0.25 for symbols is ISO 128-23:1999, from memory. */
static void
test_widths (void)
{
  static const double series[] = { 0.13, 0.18, 0.25, 0.35, 0.5, 0.7, 1.0, 1.4, 2.0 };

  for (guint pen = 0; pen < FP_N_PENS; pen++)
    for (guint standing = FP_STANDING_EXISTING; standing <= FP_STANDING_REMOVED; standing++)
      {
        const double width = fp_pen_stroke ((FpPen) pen, (FpStanding) standing);
        gboolean listed = FALSE;
        for (guint i = 0; i < G_N_ELEMENTS (series); i++)
          listed = listed || series[i] == width;
        g_assert_true (listed);
      }
  g_assert_cmpfloat (fp_pen_width (FP_PEN_EDGE), ==, 0.18);
  g_assert_cmpfloat (fp_pen_width (FP_PEN_OUTLINE), ==, 0.35);
  g_assert_cmpfloat (fp_pen_width (FP_PEN_CUT), ==, 0.7);
  g_assert_cmpfloat (fp_pen_width (FP_PEN_LETTER), ==, 0.25);
  /* Frame line: ISO 5457:1999, from memory. */
  g_assert_cmpfloat (fp_pen_width (FP_PEN_FRAME), ==, 0.7);
}

/* Dash 12, gap 3, long dash 24, dot at most half a width: ISO 128-2, from memory. */
static void
test_dashes (void)
{
  double d[6];

  g_assert_cmpuint (fp_pen_dashes (FP_PEN_OUTLINE, FP_STANDING_EXISTING, d), ==, 0);
  g_assert_cmpuint (fp_pen_dashes (FP_PEN_HIDDEN, FP_STANDING_EXISTING, d), ==, 2);
  g_assert_cmpfloat_with_epsilon (d[0], 12 * 0.18, 1e-12);
  g_assert_cmpfloat_with_epsilon (d[1], 3 * 0.18, 1e-12);
  g_assert_cmpuint (fp_pen_dashes (FP_PEN_AXIS, FP_STANDING_EXISTING, d), ==, 4);
  g_assert_cmpfloat_with_epsilon (d[0], 24 * 0.18, 1e-12);
  g_assert_cmpfloat (d[2], <=, 0.5 * 0.18);
}

/* Standing is told without colour: proposed by its weight, removed by dashes and crosses. */
static void
test_standing_without_colour (void)
{
  double d[6];

  for (FpPen pen = FP_PEN_CUT; pen <= FP_PEN_EDGE; pen++)
    {
      g_assert_cmpuint (fp_pen_dashes (pen, FP_STANDING_EXISTING, d), ==, 0);
      g_assert_cmpuint (fp_pen_dashes (pen, FP_STANDING_PROPOSED, d), ==, 0);
      g_assert_cmpuint (fp_pen_dashes (pen, FP_STANDING_REMOVED, d), ==, 2);
    }
  /* Widths of one drawing differ by 2 : 1 at least, or 0.7 : 0.35 and 0.35 : 0.18 of the series (ISO 128-2, from memory). */
  g_assert_cmpfloat (fp_pen_stroke (FP_PEN_OUTLINE, FP_STANDING_PROPOSED), >=,
                     1.94 * fp_pen_stroke (FP_PEN_OUTLINE, FP_STANDING_EXISTING));
  g_assert_cmpfloat (fp_pen_stroke (FP_PEN_EDGE, FP_STANDING_PROPOSED), >=,
                     1.94 * fp_pen_stroke (FP_PEN_EDGE, FP_STANDING_EXISTING));
  g_assert_true (fp_pen_crosses (FP_PEN_OUTLINE, FP_STANDING_REMOVED));
  g_assert_false (fp_pen_crosses (FP_PEN_OUTLINE, FP_STANDING_EXISTING));
}

static double
linear (double c)
{
  return c <= 0.04045 ? c / 12.92 : pow ((c + 0.055) / 1.055, 2.4);
}

static double
luminance (FpInk ink)
{
  return 0.2126 * linear (ink.r) + 0.7152 * linear (ink.g) + 0.0722 * linear (ink.b);
}

/* Contrast of lines with the paper: at least 3 : 1 for graphics, 4.5 : 1 for text (W3C WCAG 2.1, 1.4.11 and 1.4.3,
 * whose formula of relative luminance this is). */
static void
test_contrast (void)
{
  for (FpSurfaceLook look = FP_SURFACE_PAPER; look < FP_N_SURFACE_LOOKS; look++)
    for (guint pen = 0; pen < FP_N_PENS; pen++)
      for (guint standing = FP_STANDING_EXISTING; standing <= FP_STANDING_REMOVED; standing++)
        {
          const double a = luminance (fp_pen_ink ((FpPen) pen, (FpStanding) standing, look));
          const double b = luminance (fp_fill_ink (FP_FILL_PAPER, FP_STANDING_EXISTING, look));
          const double contrast = (MAX (a, b) + 0.05) / (MIN (a, b) + 0.05);
          g_assert_cmpfloat (contrast, >=, pen == FP_PEN_LETTER ? 4.5 : 3.0);
        }
}

/* --- told apart by everyone ------------------------------------------------------- */

typedef struct { double c[3]; } Linear;

/* G. M. Machado, M. M. Oliveira, L. A. F. Fernandes, "A physiologically-based model for simulation of color vision
 * deficiency", IEEE Transactions on Visualization and Computer Graphics 15 (2009), the matrices of severity 1 for
 * linear sRGB, from memory: whole colour vision, protanopia, deuteranopia, tritanopia. */
static const double VISION[4][3][3] = {
  { { 1, 0, 0 }, { 0, 1, 0 }, { 0, 0, 1 } },
  { { 0.152286, 1.052583, -0.204868 }, { 0.114503, 0.786281, 0.099216 }, { -0.003882, -0.048116, 1.051998 } },
  { { 0.367322, 0.860646, -0.227968 }, { 0.280085, 0.672501, 0.047413 }, { -0.011820, 0.042940, 0.968881 } },
  { { 1.255528, -0.076749, -0.178779 }, { -0.078411, 0.930809, 0.147602 }, { 0.004733, 0.691367, 0.303900 } },
};

static Linear
as_seen (FpInk ink, guint vision)
{
  const double c[3] = { linear (ink.r), linear (ink.g), linear (ink.b) };
  Linear out;

  for (guint i = 0; i < 3; i++)
    {
      const double *row = VISION[vision][i];
      out.c[i] = CLAMP (row[0] * c[0] + row[1] * c[1] + row[2] * c[2], 0, 1);
    }
  return out;
}

static double
lab_curve (double t)
{
  return t > 216.0 / 24389 ? cbrt (t) : (24389.0 / 27 * t + 16) / 116;
}

/* CIE 1976 L*a*b* from linear sRGB (IEC 61966-2-1), white D65. */
static void
to_lab (Linear l, double lab[3])
{
  const double x = lab_curve ((0.4124564 * l.c[0] + 0.3575761 * l.c[1] + 0.1804375 * l.c[2]) / 0.95047);
  const double y = lab_curve (0.2126729 * l.c[0] + 0.7151522 * l.c[1] + 0.0721750 * l.c[2]);
  const double z = lab_curve ((0.0193339 * l.c[0] + 0.1191920 * l.c[1] + 0.9503041 * l.c[2]) / 1.08883);

  lab[0] = 116 * y - 16;
  lab[1] = 500 * (x - y);
  lab[2] = 200 * (y - z);
}

/* CIE 1976 colour difference of the outlines of two standings. */
static double
difference (FpSurfaceLook look, FpStanding a, FpStanding b, guint vision)
{
  double p[3], q[3];

  to_lab (as_seen (fp_pen_ink (FP_PEN_OUTLINE, a, look), vision), p);
  to_lab (as_seen (fp_pen_ink (FP_PEN_OUTLINE, b, look), vision), q);
  return sqrt ((p[0] - q[0]) * (p[0] - q[0]) + (p[1] - q[1]) * (p[1] - q[1]) + (p[2] - q[2]) * (p[2] - q[2]));
}

static double
least_difference (FpSurfaceLook look, guint vision)
{
  return MIN (MIN (difference (look, FP_STANDING_EXISTING, FP_STANDING_PROPOSED, vision),
                   difference (look, FP_STANDING_EXISTING, FP_STANDING_REMOVED, vision)),
              difference (look, FP_STANDING_PROPOSED, FP_STANDING_REMOVED, vision));
}

/* A difference of 2.3 is just noticed side by side (Mahy, Van Eycken and Oosterlinck 1994, from memory); of thin
 * lines apart from each other more than ten times that is asked (design judgement). */
static void
test_told_apart (void)
{
  static const FpSurfaceLook safe[] = { FP_SURFACE_SAFE, FP_SURFACE_SAFE_DARK };

  for (guint vision = 0; vision < 4; vision++)
    {
      for (guint row = 0; row < 3; row++) /* white stays white */
        g_assert_cmpfloat_with_epsilon (VISION[vision][row][0] + VISION[vision][row][1] + VISION[vision][row][2], 1, 1e-5);
      for (guint i = 0; i < G_N_ELEMENTS (safe); i++)
        g_assert_cmpfloat (least_difference (safe[i], vision), >=, 30);
    }
  /* Red and yellow by themselves would not do: hence this ink, and weight and dashes in every ink. */
  g_assert_cmpfloat (least_difference (FP_SURFACE_PAPER, 2), <, 15);
  for (guint pen = FP_PEN_OUTLINE; pen <= FP_PEN_EDGE; pen++)
    {
      double none[6], dashes[6];
      g_assert_cmpfloat (fp_pen_stroke ((FpPen) pen, FP_STANDING_PROPOSED), >=,
                         1.9 * fp_pen_stroke ((FpPen) pen, FP_STANDING_EXISTING));
      g_assert_cmpuint (fp_pen_dashes ((FpPen) pen, FP_STANDING_EXISTING, none), ==, 0);
      g_assert_cmpuint (fp_pen_dashes ((FpPen) pen, FP_STANDING_REMOVED, dashes), >, 0);
    }
}

/* What a copier is given has no colour at all, and its three greys differ in lightness too. */
static void
test_grey (void)
{
  for (guint standing = FP_STANDING_EXISTING; standing <= FP_STANDING_REMOVED; standing++)
    {
      for (guint pen = 0; pen < FP_N_PENS; pen++)
        {
          const FpInk ink = fp_pen_ink ((FpPen) pen, (FpStanding) standing, FP_SURFACE_GREY);
          g_assert_true (ink.r == ink.g && ink.g == ink.b);
        }
      for (guint fill = 0; fill <= FP_FILL_INK; fill++)
        {
          const FpInk ink = fp_fill_ink ((FpFill) fill, (FpStanding) standing, FP_SURFACE_GREY);
          g_assert_true (ink.r == ink.g && ink.g == ink.b);
        }
    }
  g_assert_cmpfloat (least_difference (FP_SURFACE_GREY, 0), >=, 15);
  g_assert_cmpint (fp_surface_look (FP_INK_GREY, FALSE), ==, FP_SURFACE_GREY);
  g_assert_cmpint (fp_surface_look (FP_INK_GREY, TRUE), ==, FP_SURFACE_DARK);
}

/* --- lettering ------------------------------------------------------------------- */

static void
test_lettering_width (void)
{
  const double one = fp_lettering_width ("ELEVATION, FACING EAST", 2.5);

  g_assert_cmpfloat (fp_lettering_width ("", 2.5), ==, 0);
  g_assert_cmpfloat (fp_lettering_width (NULL, 2.5), ==, 0);
  g_assert_cmpfloat (one, >, 20);
  g_assert_cmpfloat (one, <, 60);
  /* In proportion to the height, to the last digit: nothing is hinted or rounded. */
  for (double height = 0.5; height < 40; height *= 1.37)
    g_assert_cmpfloat_with_epsilon (fp_lettering_width ("ELEVATION, FACING EAST", height), one * height / 2.5, 1e-9);
  g_assert_cmpfloat (fp_lettering_width ("\377\376 not text", 2.5), >, 0);
}

/* Capitals are as high as asked: ink of H, measured on a picture of 40 dots a mm. */
static void
test_capitals (void)
{
  enum { DOTS = 40, SIDE = 10 * DOTS };
  g_autoptr (FpDrawing) drawing = fp_drawing_new (10, 10);
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_A8, SIDE, SIDE);
  cairo_t *cr = cairo_create (surface);
  const unsigned char *data;
  int top = SIDE, bottom = -1;

  fp_drawing_text (drawing, (FpPoint) { 5, 2 }, 5, 0, FP_ALIGN_MIDDLE, "H");
  cairo_scale (cr, DOTS, DOTS);
  fp_drawing_paint (drawing, cr, FP_SURFACE_PAPER, FALSE);
  cairo_destroy (cr);
  cairo_surface_flush (surface);
  data = cairo_image_surface_get_data (surface);
  for (int y = 0; y < SIDE; y++)
    for (int x = 0; x < SIDE; x++)
      if (data[y * cairo_image_surface_get_stride (surface) + x] >= 128)
        {
          top = MIN (top, y);
          bottom = MAX (bottom, y);
        }
  cairo_surface_destroy (surface);
  g_assert_cmpint (ABS (bottom + 1 - top - 5 * DOTS), <=, 1);
  g_assert_cmpint (ABS (SIDE - 2 * DOTS - (bottom + 1)), <=, 1); /* stands on the base line */
}

/* --- hatches and crosses ------------------------------------------------------------ */

/* The lines of a hatch, by the gap between them, are as long as the area is large. */
static void
test_hatch (void)
{
  const FpPoint ring[] = { { 3, 3 }, { 83, 3 }, { 83, 63 }, { 3, 63 }, { 3, 3 },
                           { 23, 23 }, { 23, 43 }, { 63, 43 }, { 63, 23 }, { 23, 23 } };
  g_autoptr (GArray) lines = g_array_new (FALSE, FALSE, sizeof (FpSegment));
  double length = 0;

  g_assert_cmpfloat (FP_HATCH_GAP, >=, 0.7); /* ISO 128, READ-2 in the sources */
  fp_hatch_lines (ring, G_N_ELEMENTS (ring), 45, lines);
  for (guint i = 0; i < lines->len; i++)
    {
      const FpSegment s = g_array_index (lines, FpSegment, i);
      const FpPoint m = { (s.a.x + s.b.x) / 2, (s.a.y + s.b.y) / 2 };
      length += hypot (s.b.x - s.a.x, s.b.y - s.a.y);
      g_assert_cmpfloat_with_epsilon (s.b.x - s.a.x, s.b.y - s.a.y, 1e-9); /* 45 degrees */
      g_assert_true (fp_outline_contains (ring, G_N_ELEMENTS (ring), m));
    }
  g_assert_cmpfloat_with_epsilon (length * FP_HATCH_GAP, 80 * 60 - 40 * 20, 80);
}

static void
test_hatch_degenerate (void)
{
  const FpPoint flat[] = { { 0, 0 }, { 10, 0 }, { 5, 0 } }, huge[] = { { -1e9, -1e9 }, { 1e9, -1e9 }, { 0, 1e9 } };
  g_autoptr (GArray) lines = g_array_new (FALSE, FALSE, sizeof (FpSegment));

  fp_hatch_lines (flat, 3, 0.1, lines);
  fp_hatch_lines (flat, 2, 45, lines);
  fp_hatch_lines (huge, 3, 45, lines);
  fp_hatch_lines (NULL, 0, 45, lines);
  g_assert_cmpuint (lines->len, ==, 0);
}

static void
test_crosses (void)
{
  g_autoptr (GArray) lines = g_array_new (FALSE, FALSE, sizeof (FpSegment));

  fp_cross_lines ((FpPoint) { 0, 0 }, (FpPoint) { 2, 0 }, lines);
  g_assert_cmpuint (lines->len, ==, 0);
  fp_cross_lines ((FpPoint) { 0, 0 }, (FpPoint) { 0, 0 }, lines);
  g_assert_cmpuint (lines->len, ==, 0);
  fp_cross_lines ((FpPoint) { 0, 0 }, (FpPoint) { 0, 8 }, lines);
  g_assert_cmpuint (lines->len, ==, 2);
  for (guint i = 0; i < 2; i++)
    {
      const FpSegment s = g_array_index (lines, FpSegment, i);
      g_assert_cmpfloat_with_epsilon ((s.a.y + s.b.y) / 2, 4, 1e-12);
      g_assert_cmpfloat_with_epsilon ((s.a.x + s.b.x) / 2, 0, 1e-12);
    }
}

/* --- painting -------------------------------------------------------------------------- */

/* 10,000 level and upright lines of one pen, painted as a board of 1280 × 800 is. */
static void
test_many_marks (void)
{
  g_autoptr (FpDrawing) drawing = fp_drawing_new (400, 250);
  g_autoptr (GRand) rand = g_rand_new_with_seed (5);
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, 1280, 800);
  cairo_t *cr = cairo_create (surface);
  gint64 before;

  for (guint i = 0; i < 10000; i++)
    {
      const FpPoint a = { g_rand_double_range (rand, 0, 400), g_rand_double_range (rand, 0, 250) };
      const double length = g_rand_double_range (rand, 1, 30);
      const FpPoint b = i % 2 ? (FpPoint) { a.x + length, a.y } : (FpPoint) { a.x, a.y + length };
      fp_drawing_line (drawing, FP_PEN_OUTLINE, a, b);
    }
  cairo_scale (cr, 3.2, 3.2);
  before = g_get_monotonic_time ();
  fp_drawing_paint (drawing, cr, FP_SURFACE_DARK, TRUE);
  g_test_message ("10 000 lines: %.1f ms", (double) (g_get_monotonic_time () - before) / 1000.0);
  g_assert_cmpint (cairo_status (cr), ==, CAIRO_STATUS_SUCCESS);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
}

/* What lies outside what is seen is skipped, and nothing that is seen is: two halves make the whole. */
static void
test_clip (void)
{
  g_autoptr (FpDrawing) drawing = fp_drawing_new (100, 100);
  cairo_surface_t *whole = cairo_image_surface_create (CAIRO_FORMAT_RGB24, 200, 200);
  cairo_surface_t *halves = cairo_image_surface_create (CAIRO_FORMAT_RGB24, 200, 200);

  for (guint i = 0; i < 20; i++)
    {
      fp_drawing_set_item (drawing, "a", (FpStanding) (i % 3), FP_VIEW_PLAN);
      fp_drawing_line (drawing, FP_PEN_OUTLINE, (FpPoint) { 5 * i, 3 }, (FpPoint) { 95, 5 * i });
      fp_drawing_circle (drawing, FP_PEN_CUT, FP_FILL_TINT, (FpPoint) { 5 * i, 50 }, 4);
      fp_drawing_text (drawing, (FpPoint) { 50, 5 * i }, 3, 17.0 * i, (FpAlign) (i % 3), "Gospel side");
    }
  for (int part = 0; part < 3; part++)
    {
      cairo_t *cr = cairo_create (part == 0 ? whole : halves);
      if (part > 0)
        {
          cairo_rectangle (cr, part == 1 ? 0 : 100, 0, 100, 200);
          cairo_clip (cr);
        }
      cairo_scale (cr, 2, 2);
      fp_drawing_paint (drawing, cr, FP_SURFACE_PAPER, TRUE);
      cairo_destroy (cr);
    }
  cairo_surface_flush (whole);
  cairo_surface_flush (halves);
  /* cairo covers pixels a little differently with a clip: up to 16 of 255 here. A mark left out makes far more. */
  const unsigned char *a = cairo_image_surface_get_data (whole), *b = cairo_image_surface_get_data (halves);
  for (guint i = 0; i < 200 * 200 * 4; i++)
    g_assert_cmpint (ABS (a[i] - b[i]), <=, 32);
  cairo_surface_destroy (whole);
  cairo_surface_destroy (halves);
}

static gpointer
letter_in_thread (gpointer data)
{
  double *width = data;

  *width = fp_lettering_width ("PRELIMINARY, NOT FOR CONSTRUCTION", 5);
  return NULL;
}

static void
test_lettering_threads (void)
{
  double width[4];
  GThread *thread[4];

  for (guint i = 0; i < 4; i++)
    thread[i] = g_thread_new ("lettering", letter_in_thread, &width[i]);
  for (guint i = 0; i < 4; i++)
    {
      g_thread_join (thread[i]);
      g_assert_cmpfloat (width[i], ==, fp_lettering_width ("PRELIMINARY, NOT FOR CONSTRUCTION", 5));
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/drawing/marks", test_marks);
  g_test_add_func ("/drawing/degenerate", test_degenerate);
  g_test_add_func ("/drawing/pick", test_pick);
  g_test_add_func ("/drawing/widths", test_widths);
  g_test_add_func ("/drawing/dashes", test_dashes);
  g_test_add_func ("/drawing/standing-without-colour", test_standing_without_colour);
  g_test_add_func ("/drawing/contrast", test_contrast);
  g_test_add_func ("/drawing/lettering-width", test_lettering_width);
  g_test_add_func ("/drawing/capitals", test_capitals);
  g_test_add_func ("/drawing/hatch", test_hatch);
  g_test_add_func ("/drawing/hatch-degenerate", test_hatch_degenerate);
  g_test_add_func ("/drawing/crosses", test_crosses);
  g_test_add_func ("/drawing/many-marks", test_many_marks);
  g_test_add_func ("/drawing/clip", test_clip);
  g_test_add_func ("/drawing/lettering-threads", test_lettering_threads);
  g_test_add_func ("/drawing/told-apart", test_told_apart);
  g_test_add_func ("/drawing/grey", test_grey);
  return g_test_run ();
}
