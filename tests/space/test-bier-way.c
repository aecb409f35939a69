/* SPDX-License-Identifier: GPL-3.0-or-later */
/* How wide a bier gets round corners, by closed forms and by a flood of all its poses on a fine grid. */
#include "church.h"

#include "footpace/room-to-move.h"

#include <math.h>

#define MOST 1200.0

static FpWay *
way_of (const FpProject *p, double length, FpBierEnd from, FpBierEnd to)
{
  g_autoptr (FpScene) scene = fp_scene_new (p, 0);

  return fp_way_of_bier (scene, length, MOST, &from, NULL, &to);
}

/* --- straight on --------------------------------------------------------------------- */

static void
test_straight (void)
{
  static const double width[] = { 410, 700, 955.5, 1199 };

  for (guint i = 0; i < G_N_ELEMENTS (width); i++)
    {
      FpProject *p = church_new (FP_FACING_EAST);
      g_autoptr (FpWay) way = NULL;

      church_floor (&p, "floor", (FpBox) { 100, -8000, 100 + width[i], 8000 }, 0, 0, 0, 0);
      way = way_of (p, 2200, (FpBierEnd) { { 100 + width[i] / 2 + 20, -6000 }, 200, 0 },
                    (FpBierEnd) { { 100 + width[i] / 2, 6000 }, 300, 180 });
      g_assert_cmpfloat_with_epsilon (way->width, width[i], 1);
      g_assert_cmpuint (way->n_outline, ==, 4);
      g_assert_cmpuint (way->n_route, >, 10);
      g_assert_cmpfloat_with_epsilon (way->length, 12000, 700);
      fp_project_unref (p);
    }
}

static void
test_wide_and_shut (void)
{
  FpProject *p = church_new (FP_FACING_EAST);
  const FpBierEnd from = { { 0, -4000 }, 200, 0 }, to = { { 0, 4000 }, 200, 90 };

  church_floor (&p, "floor", (FpBox) { -5000, -6000, 5000, 6000 }, 0, 0, 0, 0);
  {
    g_autoptr (FpWay) way = way_of (p, 2200, from, to);

    g_assert_cmpfloat (way->width, ==, MOST);
    g_assert_false (way->narrows);
    g_assert_null (way->outline);
  }
  {
    const FpPoint corner[] = { { -5000, 0 }, { 5000, 0 } };
    const ChurchThing wall = { "wall", "wall", NULL, { 0, 0, 0 }, corner, 2, { { "thickness", 300 } } };

    church_survey (&p, &wall);
  }
  {
    g_autoptr (FpWay) way = way_of (p, 2200, from, to);

    g_assert_cmpfloat (way->width, ==, 0);
    g_assert_cmpuint (way->n_route, ==, 0);
  }
  fp_project_unref (p);
}

/* --- round a corner --------------------------------------------------------------------- */

/* The longest rectangle of a width that goes round the corner of two ways of widths a and b touches both outer walls with one
 * side and the inner corner with the other: when it is turned by t, its length is (a cos t + b sin t - w) / (sin t cos t).
 * So the widest of a length is the least, over all turns, of this. */
static double
widest_round (double a, double b, double length)
{
  double least = MIN (a, b);

  for (guint i = 1; i < 100000; i++)
    {
      const double t = i * G_PI / 2 / 100000;
      least = MIN (least, a * cos (t) + b * sin (t) - length * sin (t) * cos (t));
    }
  return least;
}

/* With no width it is a ladder: (a^(2/3) + b^(2/3))^(3/2) long. */
static void
test_ladder (void)
{
  static const double way[][2] = { { 1000, 1000 }, { 1200, 900 }, { 700, 2000 } };

  for (guint i = 0; i < G_N_ELEMENTS (way); i++)
    {
      const double ladder = pow (cbrt (way[i][0] * way[i][0]) + cbrt (way[i][1] * way[i][1]), 1.5);

      g_assert_cmpfloat_with_epsilon (widest_round (way[i][0], way[i][1], ladder), 0, 1e-3);
    }
  /* At 45 degrees where both are alike: a * sqrt 2 - length / 2. */
  g_assert_cmpfloat_with_epsilon (widest_round (1300, 1300, 2200), 1300 * G_SQRT2 - 1100, 1e-6);
}

static void
test_corner (void)
{
  static const struct { double a, b, length; } rows[] = {
    { 1300, 1300, 2200 }, { 1273, 1273, 2200 }, { 1200, 1500, 2200 }, { 1600, 1150, 2200 }, { 1100, 1100, 1800 }, { 1400, 1250, 2500 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      const double a = rows[i].a, b = rows[i].b, expected = widest_round (a, b, rows[i].length);
      FpProject *p = church_new (FP_FACING_EAST);
      g_autoptr (FpWay) way = NULL;

      church_floor (&p, "leg", (FpBox) { 0, -7000, a, 0 }, 0, 0, 0, 0);
      church_floor (&p, "arm", (FpBox) { 0, 0, 8000, b }, 0, 0, 0, 0);
      way = way_of (p, rows[i].length, (FpBierEnd) { { a / 2, -5000 }, 200, 0 }, (FpBierEnd) { { 6000, b / 2 }, 200, 90 });
      g_test_message ("%g and %g, %g long: %.1f, by the closed form %.1f", a, b, rows[i].length, way->width, expected);
      g_assert_cmpfloat (way->width, <=, expected + way->tolerance);
      g_assert_cmpfloat (way->width, >=, expected - FP_BIER_SLACK);
      fp_project_unref (p);
    }
}

/* A corner round which it does not get, though a round body would. */
static void
test_stuck (void)
{
  FpProject *p = church_new (FP_FACING_EAST);
  g_autoptr (FpWay) way = NULL;

  church_floor (&p, "leg", (FpBox) { 0, -7000, 900, 0 }, 0, 0, 0, 0);
  church_floor (&p, "arm", (FpBox) { 0, 0, 8000, 900 }, 0, 0, 0, 0);
  g_assert_cmpfloat (widest_round (900, 900, 2200), <, 400);
  way = way_of (p, 2200, (FpBierEnd) { { 450, -5000 }, 200, 0 }, (FpBierEnd) { { 6000, 450 }, 200, 90 });
  g_assert_cmpfloat (way->width, ==, 0);
  fp_project_unref (p);
}

/* --- against all poses -------------------------------------------------------------------- */

#define HALL  6000.0
#define CELL  30.0
#define NX    200 /* HALL / CELL */
#define TURNS 60
#define DOTS  25.0
#define LEAP  60.0

typedef struct { FpBox box[4]; guint n_boxes; GArray *dots; float *width; } Flood;

static void
add_dots (Flood *self, FpPoint a, FpPoint b)
{
  const guint n = (guint) ceil (hypot (b.x - a.x, b.y - a.y) / DOTS);

  for (guint i = 0; i < n; i++)
    {
      const FpPoint p = { a.x + (b.x - a.x) * i / n, a.y + (b.y - a.y) * i / n };
      g_array_append_val (self->dots, p);
    }
}

/* By dots along all that stands there, and by its corners against the walls of the hall. */
static float
width_at (const Flood *self, double x, double y, double turn, double length)
{
  const double c = cos (turn), s = sin (turn), half = length / 2;
  double least = MOST / 2;

  for (guint i = 0; i < self->n_boxes; i++)
    if (x > self->box[i].x0 && x < self->box[i].x1 && y > self->box[i].y0 && y < self->box[i].y1)
      return 0;
  for (guint i = 0; i < self->dots->len; i++)
    {
      const FpPoint p = g_array_index (self->dots, FpPoint, i);
      const double along = (p.x - x) * c + (p.y - y) * s;
      if (fabs (along) <= half)
        least = MIN (least, fabs ((p.y - y) * c - (p.x - x) * s));
    }
  /* |half cos| + |w sin| may not exceed the distance to the nearer wall. */
  if (fabs (s) > 1e-9)
    least = MIN (least, (MIN (x, HALL - x) - half * fabs (c)) / fabs (s));
  else if (MIN (x, HALL - x) < half)
    return 0;
  if (fabs (c) > 1e-9)
    least = MIN (least, (MIN (y, HALL - y) - half * fabs (s)) / fabs (c));
  else if (MIN (y, HALL - y) < half)
    return 0;
  return (float) (2 * MAX (least, 0));
}

static guint
index_of (guint x, guint y, guint t)
{
  return (t * NX + y) * NX + x;
}

static gboolean
floods (const Flood *self, double width, guint from, guint to)
{
  g_autofree guint8 *seen = g_new0 (guint8, NX * NX * TURNS);
  g_autoptr (GArray) stack = g_array_new (FALSE, FALSE, sizeof (guint));

  if (self->width[from] < width)
    return FALSE;
  g_array_append_val (stack, from);
  seen[from] = 1;
  while (stack->len > 0)
    {
      const guint at = g_array_index (stack, guint, stack->len - 1);
      const guint x = at % NX, y = at / NX % NX, t = at / NX / NX;

      g_array_set_size (stack, stack->len - 1);
      if (at == to)
        return TRUE;
      for (int k = 0; k < 27; k++)
        {
          const int nx = (int) x + k % 3 - 1, ny = (int) y + k / 3 % 3 - 1;
          const guint nt = (t + TURNS + (guint) (k / 9) - 1) % TURNS;
          guint next;

          if (nx < 0 || ny < 0 || nx >= NX || ny >= NX)
            continue;
          next = index_of ((guint) nx, (guint) ny, nt);
          if (seen[next] || self->width[next] < width)
            continue;
          seen[next] = 1;
          g_array_append_val (stack, next);
        }
    }
  return FALSE;
}

static double
widest_flood (const Flood *self, guint from, guint to)
{
  double low = 0, high = MOST;

  while (high - low > 2)
    {
      const double width = (low + high) / 2;
      if (floods (self, width, from, to))
        low = width;
      else
        high = width;
    }
  return low;
}

static void
block (FpProject **p, Flood *flood, const char *id, FpBox box)
{
  const FpPoint corner[] = { { box.x0, box.y0 }, { box.x1, box.y0 } };
  const ChurchThing thing = { "wall", id, NULL, { 0, 0, 0 }, corner, 2, { { "thickness", box.y1 - box.y0 } } };

  church_survey (p, &thing);
  flood->box[flood->n_boxes++] = box;
  add_dots (flood, (FpPoint) { box.x0, box.y0 }, (FpPoint) { box.x1, box.y0 });
  add_dots (flood, (FpPoint) { box.x1, box.y0 }, (FpPoint) { box.x1, box.y1 });
  add_dots (flood, (FpPoint) { box.x1, box.y1 }, (FpPoint) { box.x0, box.y1 });
  add_dots (flood, (FpPoint) { box.x0, box.y1 }, (FpPoint) { box.x0, box.y0 });
}

/* A hall that two walls part, each with a gap, not one behind the other. */
static void
test_flood (void)
{
  for (guint i = 0; i < 2; i++)
    {
      FpProject *p = church_new (FP_FACING_EAST);
      const double length = 1800, gap = g_test_rand_double_range (1000, 1300), one = g_test_rand_double_range (600, 1600),
                   other = one + g_test_rand_double_range (900, 1600), between = g_test_rand_double_range (1200, 1700);
      Flood flood = { .dots = g_array_new (FALSE, FALSE, sizeof (FpPoint)), .width = g_new (float, NX * NX * TURNS) };
      g_autoptr (FpWay) way = NULL;
      double expected;

      church_floor (&p, "floor", (FpBox) { 0, 0, HALL, HALL }, 0, 0, 0, 0);
      block (&p, &flood, "a", (FpBox) { 0, 2000, one, 2200 });
      block (&p, &flood, "b", (FpBox) { one + gap, 2000, HALL, 2200 });
      block (&p, &flood, "c", (FpBox) { 0, 2200 + between, other, 2400 + between });
      block (&p, &flood, "d", (FpBox) { other + gap, 2200 + between, HALL, 2400 + between });
      for (guint t = 0; t < TURNS; t++)
        for (guint y = 0; y < NX; y++)
          for (guint x = 0; x < NX; x++)
            flood.width[index_of (x, y, t)] = width_at (&flood, (x + 0.5) * CELL, (y + 0.5) * CELL, t * G_PI / TURNS, length);
      expected = widest_flood (&flood, index_of (100, 33, 0), index_of (100, 173, 0));
      way = way_of (p, length, (FpBierEnd) { { 100.5 * CELL, 33.5 * CELL }, 10, 90 }, (FpBierEnd) { { 100.5 * CELL, 173.5 * CELL }, 150, 90 });
      g_test_message ("gaps of %.0f from %.0f and %.0f, %.0f between: %.1f, by flood %.1f", gap, one, other, between, way->width, expected);
      /* The flood jumps from pose to pose and may leap over a corner; and it misses what lies between its own steps. */
      g_assert_cmpfloat (expected, >, FP_WAY_LEAST + LEAP);
      g_assert_cmpfloat (fabs (way->width - expected), <, LEAP);
      g_array_unref (flood.dots);
      g_free (flood.width);
      fp_project_unref (p);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/bier-way/straight", test_straight);
  g_test_add_func ("/bier-way/wide-and-shut", test_wide_and_shut);
  g_test_add_func ("/bier-way/ladder", test_ladder);
  g_test_add_func ("/bier-way/corner", test_corner);
  g_test_add_func ("/bier-way/stuck", test_stuck);
  g_test_add_func ("/bier-way/flood", test_flood);
  return g_test_run ();
}
