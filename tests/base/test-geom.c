/* SPDX-License-Identifier: GPL-3.0-or-later */
/* test-geom.c - points, outlines and overlays */
#include "footpace/geom.h"

#include <math.h>

/* --- orientation ---
 *
 * Kettner, Mehlhorn, Pion, Schirra, Yap, "Classroom examples of robustness
 * problems in geometric computations", Computational Geometry 40 (2008) 61-78:
 * p = (0.5 + i u, 0.5 + j u) with u = 2^-53, against q = (12, 12), r = (24, 24).
 * The sign must be that of j - i for all 65 536 points.
 */
static void
test_orient_classroom (void)
{
  const double u = ldexp (1, -53);
  const FpPoint q = { 12, 12 }, r = { 24, 24 };
  guint naive_wrong = 0;

  for (int i = 0; i < 256; i++)
    for (int j = 0; j < 256; j++)
      {
        const FpPoint p = { 0.5 + i * u, 0.5 + j * u };
        const int want = (j > i) - (j < i);
        const double naive = (q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x);
        g_assert_cmpint (fp_orient (p, q, r), ==, want);
        g_assert_cmpint (fp_orient (q, r, p), ==, want);
        g_assert_cmpint (fp_orient (r, p, q), ==, want);
        g_assert_cmpint (fp_orient (q, p, r), ==, -want);
        naive_wrong += ((naive > 0) - (naive < 0)) != want;
      }
  /* The plain formula with pivot p fails on so many, without fused multiply-add:
   * computed with exact rationals.  It shows that the points are hard, and that
   * the compiler contracts nothing. */
  g_assert_cmpuint (naive_wrong, ==, 11972);
}

static void
test_orient_basics (void)
{
  const FpPoint o = { 0, 0 }, x = { 1, 0 }, y = { 0, 1 };

  g_assert_cmpint (fp_orient (o, x, y), ==, 1);
  g_assert_cmpint (fp_orient (o, y, x), ==, -1);
  g_assert_cmpint (fp_orient (o, (FpPoint) { 1, 1 }, (FpPoint) { 2, 2 }), ==, 0);
  g_assert_cmpint (fp_orient (o, o, o), ==, 0);
  g_assert_cmpint (fp_orient ((FpPoint) { 0.1, 0.1 }, (FpPoint) { 0.2, 0.2 }, (FpPoint) { 0.3, 0.3 }), ==, 0);
}

/* --- outlines --- */

static const FpPoint room_l[] = { { 0, 0 }, { 4, 0 }, { 4, 2 }, { 2, 2 }, { 2, 4 }, { 0, 4 } };

static void
test_area (void)
{
  FpPoint far[G_N_ELEMENTS (room_l)];
  FpPoint backwards[G_N_ELEMENTS (room_l)];

  g_assert_cmpfloat (fp_outline_area (room_l, 6), ==, 12);
  for (guint i = 0; i < 6; i++)
    {
      far[i] = (FpPoint) { room_l[i].x + 1e6, room_l[i].y - 1e6 };
      backwards[i] = room_l[5 - i];
    }
  g_assert_cmpfloat (fp_outline_area (far, 6), ==, 12);
  g_assert_cmpfloat (fp_outline_area (backwards, 6), ==, -12);
  g_assert_cmpfloat (fp_outline_area (room_l, 2), ==, 0);
  g_assert_cmpfloat (fp_outline_area (NULL, 0), ==, 0);
}

static void
test_centroid (void)
{
  /* Two rectangles, 4 x 2 about (2, 1) and 2 x 2 about (1, 3): (8*2 + 4*1)/12, (8*1 + 4*3)/12. */
  const FpPoint c = fp_outline_centroid (room_l, 6);
  const FpPoint line[] = { { 0, 0 }, { 2, 0 } };

  g_assert_cmpfloat_with_epsilon (c.x, 20.0 / 12, 1e-12);
  g_assert_cmpfloat_with_epsilon (c.y, 20.0 / 12, 1e-12);
  g_assert_cmpfloat (fp_outline_centroid (line, 2).x, ==, 1);
  g_assert_cmpfloat (fp_outline_centroid (NULL, 0).x, ==, 0);
}

static void
test_contains (void)
{
  g_assert_true (fp_outline_contains (room_l, 6, (FpPoint) { 1, 1 }));
  g_assert_true (fp_outline_contains (room_l, 6, (FpPoint) { 3, 1 }));
  g_assert_true (fp_outline_contains (room_l, 6, (FpPoint) { 1, 3 }));
  g_assert_false (fp_outline_contains (room_l, 6, (FpPoint) { 3, 3 }));
  g_assert_false (fp_outline_contains (room_l, 6, (FpPoint) { -1, 2 })); /* level with a corner */
  g_assert_false (fp_outline_contains (room_l, 6, (FpPoint) { 5, 2 }));
  g_assert_false (fp_outline_contains (NULL, 0, (FpPoint) { 0, 0 }));
}

static void
test_convex (void)
{
  const FpPoint square[] = { { 0, 0 }, { 1, 0 }, { 2, 0 }, { 2, 2 }, { 0, 2 } };
  const FpPoint clockwise[] = { { 0, 0 }, { 0, 2 }, { 2, 2 }, { 2, 0 } };
  FpPoint star[5];

  for (int i = 0; i < 5; i++)
    star[i] = (FpPoint) { cos (i * 4 * G_PI / 5), sin (i * 4 * G_PI / 5) };
  g_assert_true (fp_outline_is_convex (square, 5));
  g_assert_true (fp_outline_is_convex (clockwise, 4));
  g_assert_false (fp_outline_is_convex (room_l, 6));
  g_assert_false (fp_outline_is_convex (star, 5)); /* turns one way, but twice round */
  g_assert_false (fp_outline_is_convex (square, 2));
  g_assert_false (fp_outline_is_convex (square, 3)); /* a line */
}

static void
test_crosses_itself (void)
{
  const FpPoint bow[] = { { 0, 0 }, { 2, 2 }, { 2, 0 }, { 0, 2 } };
  const FpPoint touching[] = { { 0, 0 }, { 4, 0 }, { 4, 4 }, { 2, 0 }, { 0, 4 } };
  const FpPoint doubled[] = { { 0, 0 }, { 2, 0 }, { 2, 0 }, { 2, 2 } };
  const FpPoint spike[] = { { 0, 0 }, { 4, 0 }, { 2, 0 }, { 2, 2 } };
  const FpPoint square[] = { { 0, 0 }, { 2, 0 }, { 2, 2 }, { 0, 2 } };
  const FpPoint ring[] = { { 0, 0 }, { 2, 0 }, { 2, 2 }, { 0, 2 }, { 0, 0 } };
  FpPoint at = { 7, 7 };

  g_assert_true (fp_outline_crosses_itself (bow, 4, &at));
  g_assert_cmpfloat (at.x, ==, 1);
  g_assert_cmpfloat (at.y, ==, 1);
  g_assert_true (fp_outline_crosses_itself (touching, 5, &at));
  g_assert_cmpfloat (at.x, ==, 2);
  g_assert_cmpfloat (at.y, ==, 0);
  g_assert_true (fp_outline_crosses_itself (doubled, 4, NULL));
  g_assert_true (fp_outline_crosses_itself (spike, 4, NULL));
  g_assert_false (fp_outline_crosses_itself (square, 4, &at));
  g_assert_cmpfloat (at.x, ==, 2); /* untouched */
  g_assert_false (fp_outline_crosses_itself (room_l, 6, NULL));
  g_assert_true (fp_run_crosses_itself (ring, 5, NULL));  /* closed by hand: its ends touch */
  g_assert_false (fp_run_crosses_itself (square, 4, NULL));
  g_assert_false (fp_run_crosses_itself (bow, 3, NULL));
  g_assert_true (fp_run_crosses_itself (bow, 4, NULL));
}

static void
test_distance (void)
{
  /* libgeos/geos, tests/unit/capi/GEOSDistanceTest.cpp, test 1 (ticket 377):
   * (10 10) to (3 6) is 8.06225774829855 within 1e-12. */
  const FpPoint a = { 10, 10 };

  g_assert_cmpfloat_with_epsilon (fp_segment_distance (a, a, (FpPoint) { 3, 6 }), 8.06225774829855, 1e-12);
  g_assert_cmpfloat (fp_segment_distance ((FpPoint) { 0, 0 }, (FpPoint) { 10, 0 }, (FpPoint) { 4, -3 }), ==, 3);
  g_assert_cmpfloat (fp_segment_distance ((FpPoint) { 0, 0 }, (FpPoint) { 10, 0 }, (FpPoint) { 13, 4 }), ==, 5);
}

static void
test_boxes (void)
{
  FpBox box = FP_BOX_EMPTY;
  const FpBox a = { 0, 0, 2, 2 }, touching = { 2, 0, 4, 2 }, over = { 1, 1, 3, 3 }, empty = FP_BOX_EMPTY;

  g_assert_true (fp_box_is_empty (&box));
  fp_box_add_box (&box, &empty);
  g_assert_true (fp_box_is_empty (&box));
  fp_box_add_point (&box, (FpPoint) { 3, -1 });
  fp_box_add_box (&box, &a);
  g_assert_cmpfloat (box.x1, ==, 3);
  g_assert_cmpfloat (box.y0, ==, -1);
  g_assert_false (fp_box_overlaps (&a, &touching));
  g_assert_true (fp_box_overlaps (&a, &over));
  g_assert_false (fp_box_overlaps (&a, &empty));
  /* Through it, within it, past a corner, along its border, and ending before it. */
  g_assert_true (fp_box_is_crossed (&a, (FpPoint) { a.x0 - 1, a.y0 + 0.1 }, (FpPoint) { a.x1 + 1, a.y1 - 0.1 }));
  g_assert_true (fp_box_is_crossed (&a, (FpPoint) { (a.x0 + a.x1) / 2, a.y1 - 0.1 }, (FpPoint) { (a.x0 + a.x1) / 2, a.y1 + 9 }));
  g_assert_false (fp_box_is_crossed (&a, (FpPoint) { a.x0 - 1, a.y0 + 0.5 }, (FpPoint) { a.x0 + 0.5, a.y0 - 1 }));
  g_assert_false (fp_box_is_crossed (&a, (FpPoint) { a.x0, a.y0 - 1 }, (FpPoint) { a.x0, a.y1 + 1 }));
  g_assert_false (fp_box_is_crossed (&a, (FpPoint) { a.x0 - 5, (a.y0 + a.y1) / 2 }, (FpPoint) { a.x0 - 1, (a.y0 + a.y1) / 2 }));
}

static void
test_places (void)
{
  const FpPlace quarter = { 10, 20, 90 }, odd = { -3, 7, 33.3 };
  const FpPoint p = fp_place_point (&quarter, (FpPoint) { 1, 2 });
  const FpPoint back = fp_place_unpoint (&odd, fp_place_point (&odd, (FpPoint) { 123, -45 }));
  const FpPlace both = fp_place_compose (&odd, &quarter);
  const FpPoint one = fp_place_point (&both, (FpPoint) { 5, 6 });
  const FpPoint two = fp_place_point (&odd, fp_place_point (&quarter, (FpPoint) { 5, 6 }));

  g_assert_cmpfloat (p.x, ==, 8); /* exactly: quarter turns leave no dust */
  g_assert_cmpfloat (p.y, ==, 21);
  g_assert_cmpfloat_with_epsilon (back.x, 123, 1e-12);
  g_assert_cmpfloat_with_epsilon (back.y, -45, 1e-12);
  g_assert_cmpfloat_with_epsilon (one.x, two.x, 1e-12);
  g_assert_cmpfloat_with_epsilon (one.y, two.y, 1e-12);
  for (int quarters = -8; quarters <= 8; quarters++)
    {
      const FpPlace turn = { 0, 0, 90.0 * quarters };
      const FpPoint x = fp_place_point (&turn, (FpPoint) { 1, 0 });
      g_assert_cmpfloat_with_epsilon (x.x, cos (quarters * G_PI / 2), 1e-12);
      g_assert_cmpfloat_with_epsilon (x.y, sin (quarters * G_PI / 2), 1e-12);
      g_assert_cmpfloat (fabs (x.x) + fabs (x.y), ==, 1);
    }
}

/* --- overlay --- */

static void
test_common_area (void)
{
  const FpPoint a[] = { { 0, 0 }, { 4, 0 }, { 4, 4 }, { 0, 4 } };
  const FpPoint b[] = { { 2, 2 }, { 2, 6 }, { 6, 6 }, { 6, 2 } }; /* clockwise */
  const FpPoint beside[] = { { 4, 0 }, { 8, 0 }, { 8, 4 }, { 4, 4 } };
  const FpPoint bow[] = { { 0, 0 }, { 4, 4 }, { 4, 0 }, { 0, 4 } };
  const FpPoint flat[] = { { 0, 0 }, { 4, 0 }, { 2, 0 } };
  const FpPoint odd[] = { { 0, 0 }, { NAN, 0 }, { 2, 3 } };

  g_assert_cmpfloat_with_epsilon (fp_outlines_common_area (a, 4, b, 4), 4, 1e-12);
  g_assert_cmpfloat_with_epsilon (fp_outlines_common_area (room_l, 6, a, 4), 12, 1e-12);
  g_assert_cmpfloat_with_epsilon (fp_outlines_common_area (room_l, 6, b, 4), 0, 1e-12);
  g_assert_cmpfloat (fp_outlines_common_area (a, 4, beside, 4), ==, 0);
  /* Two triangles of 4 each: the even-odd inside of a bow. */
  g_assert_cmpfloat_with_epsilon (fp_outlines_common_area (bow, 4, a, 4), 8, 1e-12);
  g_assert_cmpfloat (fp_outlines_common_area (flat, 3, a, 4), ==, 0);
  g_assert_cmpfloat (fp_outlines_common_area (odd, 3, a, 4), ==, 0);
  g_assert_cmpfloat (fp_outlines_common_area (a, 2, a, 4), ==, 0);
  g_assert_cmpfloat (fp_outlines_common_area (NULL, 0, NULL, 0), ==, 0);
}

/* Random triangles: what is common is the same either way round, and never more than either. */
static void
test_common_area_random (void)
{
  for (guint i = 0; i < 500; i++)
    {
      FpPoint a[3], b[3];
      double common;
      for (guint k = 0; k < 3; k++)
        {
          a[k] = (FpPoint) { g_test_rand_double_range (-5, 5), g_test_rand_double_range (-5, 5) };
          b[k] = (FpPoint) { g_test_rand_double_range (-5, 5), g_test_rand_double_range (-5, 5) };
        }
      common = fp_outlines_common_area (a, 3, b, 3);
      g_assert_cmpfloat_with_epsilon (common, fp_outlines_common_area (b, 3, a, 3), 1e-9);
      g_assert_cmpfloat (common, <=, MIN (fabs (fp_outline_area (a, 3)), fabs (fp_outline_area (b, 3))) + 1e-9);
      g_assert_cmpfloat_with_epsilon (fp_outlines_common_area (a, 3, a, 3), fabs (fp_outline_area (a, 3)), 1e-9);
    }
}

/* Of a square with points in it, on its sides and twice on its corners, the corners are left. */
static void
test_hull (void)
{
  FpPoint pt[] = { { 2, 2 }, { 0, 0 }, { 4, 4 }, { 2, 0 }, { 0, 4 }, { 4, 0 }, { 1, 3 }, { 4, 4 }, { 0, 0 }, { 4, 1 } };
  FpPoint line[] = { { 3, 3 }, { 1, 1 }, { 2, 2 } };
  FpPoint one[] = { { 5, 6 } };

  g_assert_cmpuint (fp_hull (pt, G_N_ELEMENTS (pt)), ==, 4);
  g_assert_cmpfloat (fp_outline_area (pt, 4), ==, 16);
  g_assert_cmpuint (fp_hull (line, 3), <, 3);
  g_assert_cmpuint (fp_hull (one, 1), <, 3);
  g_assert_cmpuint (fp_hull (NULL, 0), ==, 0);
}

static double
area_of_rings (const GArray *rings)
{
  double area = 0;

  for (guint i = 0; i < rings->len; i++)
    {
      const FpRing *ring = &g_array_index (rings, FpRing, i);
      area += fabs (fp_outline_area (ring->pt, ring->n)) * (ring->hole ? -1 : 1);
    }
  return area;
}

/* A square of 1000 of which the half is common; a hole of 100 is cut into that, then a strip of 200 that parts it, by two
 * pieces that overlap. */
static void
test_common_less (void)
{
  const FpPoint a[] = { { 0, 0 }, { 1000, 0 }, { 1000, 1000 }, { 0, 1000 } };
  const FpPoint b[] = { { 500, -500 }, { 500, 1500 }, { 2000, 1500 }, { 2000, -500 } };
  const FpPoint hole[] = { { 700, 100 }, { 800, 100 }, { 800, 200 }, { 700, 200 } };
  const FpPoint low[] = { { 400, 400 }, { 1100, 400 }, { 1100, 550 }, { 400, 550 } };
  const FpPoint high[] = { { 400, 500 }, { 1100, 500 }, { 1100, 600 }, { 400, 600 } };
  g_autoptr (GArray) less = fp_rings_new (), nothing = fp_outlines_common_less (a, 4, b, 2, less);
  g_autoptr (GArray) whole = fp_outlines_common_less (a, 4, b, 4, less), pierced = NULL, parted = NULL, none = NULL;

  g_assert_cmpuint (nothing->len, ==, 0);
  g_assert_cmpuint (whole->len, ==, 1);
  g_assert_cmpfloat_with_epsilon (area_of_rings (whole), 500000, 1e-6);
  fp_rings_add (less, hole, 4, FALSE);
  pierced = fp_outlines_common_less (a, 4, b, 4, less);
  g_assert_cmpuint (pierced->len, ==, 2);
  g_assert_true (g_array_index (pierced, FpRing, 1).hole);
  g_assert_cmpfloat_with_epsilon (area_of_rings (pierced), 490000, 1e-6);
  fp_rings_add (less, low, 4, FALSE);
  fp_rings_add (less, high, 4, FALSE);
  parted = fp_outlines_common_less (a, 4, b, 4, less);
  g_assert_cmpuint (parted->len, ==, 3);
  g_assert_cmpfloat_with_epsilon (area_of_rings (parted), 390000, 1e-6);
  fp_rings_add (less, a, 4, FALSE);
  none = fp_outlines_common_less (a, 4, b, 4, less);
  g_assert_cmpuint (none->len, ==, 0);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/geom/orient/classroom", test_orient_classroom);
  g_test_add_func ("/geom/orient/basics", test_orient_basics);
  g_test_add_func ("/geom/area", test_area);
  g_test_add_func ("/geom/centroid", test_centroid);
  g_test_add_func ("/geom/contains", test_contains);
  g_test_add_func ("/geom/convex", test_convex);
  g_test_add_func ("/geom/crosses-itself", test_crosses_itself);
  g_test_add_func ("/geom/distance", test_distance);
  g_test_add_func ("/geom/boxes", test_boxes);
  g_test_add_func ("/geom/places", test_places);
  g_test_add_func ("/geom/common-area", test_common_area);
  g_test_add_func ("/geom/hull", test_hull);
  g_test_add_func ("/geom/common-less", test_common_less);
  g_test_add_func ("/geom/common-area-random", test_common_area_random);
  return g_test_run ();
}
