/* SPDX-License-Identifier: GPL-3.0-or-later */
/* test-blank-near.c - a few words find room where nothing is drawn
 *
 * Held against a plain search of its own: every line of the drawing against
 * the box of the words, in random drawings.
 */
#include "blank-near.h"

#include <math.h>

#define WIDE  210.0
#define HIGH  148.0
#define LINES 60
#define WORDS 30.0
#define TALL  2.5

static const FpBox paper = { 0, 0, WIDE, HIGH };

/* Clips the segment to the box; TRUE where something of it is left (Liang and Barsky). */
static gboolean
meets (const FpBox *box, FpPoint a, FpPoint b)
{
  const double dx = b.x - a.x, dy = b.y - a.y;
  const double p[4] = { -dx, dx, -dy, dy }, q[4] = { a.x - box->x0, box->x1 - a.x, a.y - box->y0, box->y1 - a.y };
  double in = 0.0, out = 1.0;

  for (guint i = 0; i < 4; i++)
    if (p[i] == 0.0 && q[i] < 0.0)
      return FALSE;
    else if (p[i] < 0.0)
      in = MAX (in, q[i] / p[i]);
    else if (p[i] > 0.0)
      out = MIN (out, q[i] / p[i]);
  return in <= out;
}

static gboolean
is_blank (const FpDrawing *drawing, const FpBox *box)
{
  const FpPoint *pt = fp_drawing_points (drawing);
  guint n;
  const FpMark *mark = fp_drawing_marks (drawing, &n);

  for (guint i = 0; i < n; i++)
    for (guint k = 0; k + 1 < mark[i].n; k++)
      if (meets (box, pt[mark[i].first + k], pt[mark[i].first + k + 1]))
        return FALSE;
  return TRUE;
}

static gboolean
near (const FpDrawing *drawing, FpPoint at, FpPoint *out)
{
  const FpLaid laid = { drawing, { 0, 0 }, 1 };

  *out = (FpPoint) { NAN, NAN };
  return fp_blank_near (&laid, 1, &paper, at, WORDS, TALL, out);
}

static FpDrawing *
random_drawing (GRand *random)
{
  FpDrawing *drawing = fp_drawing_new (WIDE, HIGH);

  for (guint i = 0; i < LINES; i++)
    {
      const FpPoint a = { g_rand_double_range (random, 0, WIDE), g_rand_double_range (random, 0, HIGH) };
      const double angle = g_rand_double_range (random, 0, 2 * G_PI), length = g_rand_double_range (random, 1, 60);

      fp_drawing_line (drawing, FP_PEN_EDGE, a, (FpPoint) { a.x + length * cos (angle), a.y + length * sin (angle) });
    }
  return drawing;
}

static double
distance (FpPoint at, const FpBox *box)
{
  return hypot (MAX (MAX (box->x0 - at.x, at.x - box->x1), 0.0), MAX (MAX (box->y0 - at.y, at.y - box->y1), 0.0));
}

/* Found where nothing is drawn, on the paper; and where the search of the test, on a grid, finds much nearer room with more
 * clear about it, it has been missed. */
static void
test_random (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (81);
  guint found = 0;

  for (guint i = 0; i < 200; i++)
    {
      g_autoptr (FpDrawing) drawing = random_drawing (random);
      const FpPoint at = { g_rand_double_range (random, 20, WIDE - 20), g_rand_double_range (random, 20, HIGH - 20) };
      FpPoint p;

      if (!near (drawing, at, &p))
        continue;
      found++;
      const FpBox words = { p.x, p.y, p.x + WORDS, p.y + TALL };
      const FpBox about = { p.x - 0.7, p.y - 0.7, p.x + WORDS + 0.7, p.y + TALL + 0.7 };
      g_assert_true (is_blank (drawing, &about));
      g_assert_true (words.x0 > 0 && words.y0 > 0 && words.x1 < WIDE && words.y1 < HIGH);
      for (double x = 3; x + WORDS + 3 < WIDE; x += 1)
        for (double y = 3; y + TALL + 3 < HIGH; y += 1)
          {
            const FpBox roomy = { x - 3, y - 3, x + WORDS + 3, y + TALL + 3 }, other = { x, y, x + WORDS, y + TALL };

            if (distance (at, &other) > 3.0 && distance (at, &other) + 12.0 < distance (at, &words))
              g_assert_false (is_blank (drawing, &roomy));
          }
    }
  g_assert_cmpuint (found, >, 60);
}

/* Nothing is lettered on what is filled, nor on other words; nor where all is full. */
static void
test_full (void)
{
  g_autoptr (FpDrawing) drawing = fp_drawing_new (WIDE, HIGH);
  const FpPoint half[4] = { { 0, 0 }, { WIDE, 0 }, { WIDE, HIGH / 2 }, { 0, HIGH / 2 } };
  const FpPoint rest[4] = { { 0, HIGH / 2 }, { WIDE, HIGH / 2 }, { WIDE, HIGH }, { 0, HIGH } };
  FpPoint p, other;

  fp_drawing_area (drawing, FP_PEN_HATCH, FP_FILL_INK, 0, half, 4);
  g_assert_true (near (drawing, (FpPoint) { 100, 60 }, &p));
  g_assert_cmpfloat (p.y, >, HIGH / 2);
  fp_drawing_text (drawing, p, TALL, 0, FP_ALIGN_LEFT, "seventeen letters");
  g_assert_true (near (drawing, (FpPoint) { 100, 60 }, &other));
  g_assert_cmpfloat (hypot (other.x - p.x, other.y - p.y), >, TALL);
  fp_drawing_area (drawing, FP_PEN_HATCH, FP_FILL_INK, 0, rest, 4);
  g_assert_false (near (drawing, (FpPoint) { 100, 60 }, &p));
}

/* What lies in another drawing, which is laid elsewhere and larger, is kept clear of as if it had been drawn so in one. */
static void
test_laid (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (82);

  for (guint i = 0; i < 60; i++)
    {
      g_autoptr (FpDrawing) under = random_drawing (random), over = fp_drawing_new (WIDE, HIGH), both = random_drawing (random);
      const double grown = g_rand_double_range (random, 0.5, 2);
      const FpPoint corner = { g_rand_double_range (random, -30, 30), g_rand_double_range (random, -30, 30) };
      const FpPoint at = { g_rand_double_range (random, 20, WIDE - 20), g_rand_double_range (random, 20, HIGH - 20) };
      const FpLaid laid[2] = { { both, { 0, 0 }, 1 }, { over, corner, grown } };
      const FpPoint *pt = fp_drawing_points (under);
      guint n;
      const FpMark *mark = fp_drawing_marks (under, &n);
      FpPoint apart = { NAN, NAN }, together;

      for (guint k = 0; k < n; k++)
        {
          const FpPoint a = pt[mark[k].first], b = pt[mark[k].first + 1];
          fp_drawing_line (over, FP_PEN_EDGE, a, b);
        }
      const gboolean found = fp_blank_near (laid, 2, &paper, at, WORDS, TALL, &apart);
      for (guint k = 0; k < n; k++)
        {
          const FpPoint a = pt[mark[k].first], b = pt[mark[k].first + 1];
          fp_drawing_line (both, FP_PEN_EDGE, (FpPoint) { corner.x + a.x * grown, corner.y + a.y * grown },
                           (FpPoint) { corner.x + b.x * grown, corner.y + b.y * grown });
        }
      g_assert_cmpint (found, ==, near (both, at, &together));
      g_assert_true (!found || (apart.x == together.x && apart.y == together.y));
    }
}

/* Where the words stood they stay, as long as nothing comes under them. */
static void
test_stays (void)
{
  g_autoptr (FpDrawing) drawing = fp_drawing_new (WIDE, HIGH);
  const FpLaid laid = { drawing, { 0, 0 }, 1 };
  const FpPoint stood = { 110, 80 }, at = { 100, 60 };
  FpPoint p = stood;

  g_assert_true (fp_blank_near (&laid, 1, &paper, at, WORDS, TALL, &p));
  g_assert_true (p.x == stood.x && p.y == stood.y);
  fp_drawing_line (drawing, FP_PEN_EDGE, (FpPoint) { 115, 70 }, (FpPoint) { 115, 90 });
  g_assert_true (fp_blank_near (&laid, 1, &paper, at, WORDS, TALL, &p));
  g_assert_true (p.x != stood.x || p.y != stood.y);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/blank-near/random", test_random);
  g_test_add_func ("/blank-near/full", test_full);
  g_test_add_func ("/blank-near/laid", test_laid);
  g_test_add_func ("/blank-near/stays", test_stays);
  return g_test_run ();
}
