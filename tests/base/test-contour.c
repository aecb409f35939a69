/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Outlines of where something holds, where they are known beforehand. */
#include "footpace/contour.h"

#include <math.h>

#define STEP 100.0

static const FpBox ALL = { -5000, -5000, 5000, 5000 };

static const FpRing *
ring_at (const GArray *rings, guint i)
{
  g_assert_cmpuint (i, <, rings->len);
  return &g_array_index (rings, FpRing, i);
}

/* Nearest corner to a point, mm. */
static double
corner_off (const FpRing *ring, double x, double y)
{
  double least = G_MAXDOUBLE;

  for (guint i = 0; i < ring->n; i++)
    least = MIN (least, hypot (ring->pt[i].x - x, ring->pt[i].y - y));
  return least;
}

static gboolean
in_outline (FpPoint at, gpointer data)
{
  const GArray *corner = data;

  return fp_outline_contains ((const FpPoint *) (gconstpointer) corner->data, corner->len, at);
}

static GArray *
contours_of (const FpPoint *corner, guint n)
{
  g_autoptr (GArray) outline = g_array_new (FALSE, FALSE, sizeof (FpPoint));

  g_array_append_vals (outline, corner, n);
  return fp_contours (&(FpField) { in_outline, NULL, outline }, &ALL, STEP, 0);
}

/* --- outlines that come back ------------------------------------------------------ */

static void
comes_back (const FpPoint *corner, guint n)
{
  g_autoptr (GArray) rings = contours_of (corner, n);

  g_assert_cmpuint (rings->len, ==, 1);
  g_assert_false (ring_at (rings, 0)->hole);
  g_assert_cmpuint (ring_at (rings, 0)->n, ==, n);
  for (guint i = 0; i < n; i++)
    g_assert_cmpfloat (corner_off (ring_at (rings, 0), corner[i].x, corner[i].y), <, 3);
  g_assert_cmpfloat_with_epsilon (fp_rings_area (rings) / 1e6, fabs (fp_outline_area (corner, n)) / 1e6, 0.005);
}

static void
test_straight_sides (void)
{
  static const FpPoint square[] = { { -1000, -1000 }, { 1000, -1000 }, { 1000, 1000 }, { -1000, 1000 } };
  static const FpPoint l[] = { { 0, 0 }, { 4000, 0 }, { 4000, 2000 }, { 2000, 2000 }, { 2000, 4000 }, { 0, 4000 } };
  static const FpPoint askew[] = { { -3070, -1210 }, { 1930, -2440 }, { 2760, 1815 }, { -440, 3333 } };

  comes_back (square, G_N_ELEMENTS (square));
  comes_back (l, G_N_ELEMENTS (l));
  comes_back (askew, G_N_ELEMENTS (askew));
}

static gboolean
between_circles (FpPoint at, gpointer data)
{
  const double r = hypot (at.x - 300, at.y + 200);

  (void) data;
  return r < 4000 && (r > 2500 || r < 1000);
}

/* A ring, and a disc in its hole: areas by the radius. */
static void
test_holes (void)
{
  g_autoptr (GArray) rings = fp_contours (&(FpField) { between_circles, NULL, NULL }, &ALL, STEP, 0);
  const double area = G_PI * (16 - 6.25 + 1);

  g_assert_cmpuint (rings->len, ==, 3);
  g_assert_cmpfloat_with_epsilon (fp_rings_area (rings) / 1e6, area, area * 0.002);
  for (guint i = 0; i < rings->len; i++)
    {
      const FpRing *ring = ring_at (rings, i);
      g_assert_cmpint (fp_outline_area (ring->pt, ring->n) < 0, ==, ring->hole);
      g_assert_true (!ring->hole || (i > 0 && !ring_at (rings, i - 1)->hole && ring_at (rings, i - 1)->pt[0].x != ring->pt[0].x));
    }
  for (double x = -4500; x < 4500; x += 130)
    for (double y = -4500; y < 4500; y += 170)
      {
        const FpPoint at = { x, y };
        const double r = hypot (x - 300, y + 200), off = MIN (fabs (r - 4000), MIN (fabs (r - 2500), fabs (r - 1000)));
        if (off > 3)
          g_assert_cmpint (fp_rings_contain (rings, at), ==, between_circles (at, NULL));
      }
}

/* --- what is left out ------------------------------------------------------------------- */

static gboolean
everywhere (FpPoint at, gpointer data)
{
  (void) at, (void) data;
  return TRUE;
}

static gboolean
nowhere (FpPoint at, gpointer data)
{
  (void) at, (void) data;
  return FALSE;
}

static void
test_bounds (void)
{
  g_autoptr (GArray) all = fp_contours (&(FpField) { everywhere, NULL, NULL }, &ALL, STEP, 0);
  g_autoptr (GArray) none = fp_contours (&(FpField) { nowhere, NULL, NULL }, &ALL, STEP, 0);
  g_autoptr (GArray) empty = fp_contours (&(FpField) { everywhere, NULL, NULL }, &FP_BOX_EMPTY, STEP, 0);

  g_assert_cmpuint (all->len, ==, 1);
  g_assert_cmpfloat_with_epsilon (fp_rings_area (all) / 1e6, 100, 0.01);
  g_assert_cmpuint (none->len, ==, 0);
  g_assert_cmpuint (empty->len, ==, 0);
}

static void
test_least (void)
{
  static const FpPoint small[] = { { 0, 0 }, { 900, 0 }, { 900, 900 }, { 0, 900 } };
  g_autoptr (GArray) outline = g_array_new (FALSE, FALSE, sizeof (FpPoint));
  g_array_append_vals (outline, small, 4);
  const FpField field = { in_outline, NULL, outline };
  g_autoptr (GArray) kept = fp_contours (&field, &ALL, STEP, 8e5);
  g_autoptr (GArray) left_out = fp_contours (&field, &ALL, STEP, 8.2e5);

  g_assert_cmpuint (kept->len, ==, 1);
  g_assert_cmpuint (left_out->len, ==, 0);
}

static gboolean
after_a_while (gpointer data)
{
  return g_atomic_int_add ((gint *) data, 1) > 200;
}

static void
test_given_up (void)
{
  gint asked = 0;

  g_assert_null (fp_contours (&(FpField) { everywhere, after_a_while, &asked }, &ALL, STEP, 0));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/contour/straight-sides", test_straight_sides);
  g_test_add_func ("/contour/holes", test_holes);
  g_test_add_func ("/contour/bounds", test_bounds);
  g_test_add_func ("/contour/least", test_least);
  g_test_add_func ("/contour/given-up", test_given_up);
  return g_test_run ();
}
