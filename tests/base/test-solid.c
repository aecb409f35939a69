/* SPDX-License-Identifier: GPL-3.0-or-later */
/* test-solid.c - solids, what they measure, and where a ray enters them */
#include "footpace/solid.h"

#include <math.h>

static FpVec3
along (FpVec3 from, FpVec3 d, double t)
{
  return fp_vec3_add (from, fp_vec3_scale (d, t));
}

/* The segment that runs ten times the direction. */
static gboolean
shoot (const FpSolid *s, FpVec3 from, FpVec3 d, double *t)
{
  const gboolean meets = fp_solid_ray (s, from, along (from, d, 10), t);

  *t *= 10;
  return meets;
}

/* Worked by the slab method: the box [0,2] x [0,1] x [0,3]; the first ray is inside from t = 2 to 4,
 * the third from 2 to 3, the fourth never (computed by hand). */
static void
test_ray_box (void)
{
  g_autoptr (FpSolids) list = fp_solids_new ();
  const FpSolid *box;
  double t = 0;

  fp_solids_add_box (list, FP_PART_BODY, 0, 0, 0, 2, 1, 3);
  box = fp_solids_get (list, 0);
  g_assert_true (shoot (box, (FpVec3) { -2, 0.5, 1 }, (FpVec3) { 1, 0, 0 }, &t));
  g_assert_cmpfloat_with_epsilon (t, 2, 1e-12);
  g_assert_true (shoot (box, (FpVec3) { 4, 0.5, 1 }, (FpVec3) { -1, 0, 0 }, &t));
  g_assert_cmpfloat_with_epsilon (t, 2, 1e-12); /* from the other end: leaves at 6 - 4 */
  g_assert_true (shoot (box, (FpVec3) { -2, -2, 0 }, (FpVec3) { 1, 1, 0.5 }, &t));
  g_assert_cmpfloat_with_epsilon (t, 2, 1e-12);
  g_assert_false (shoot (box, (FpVec3) { -2, 2, 1 }, (FpVec3) { 1, 0, 0 }, &t));
  /* A segment that ends before it, and one that begins inside. */
  g_assert_false (fp_solid_ray (box, (FpVec3) { -2, 0.5, 1 }, (FpVec3) { -0.1, 0.5, 1 }, NULL));
  g_assert_true (fp_solid_ray (box, (FpVec3) { 1, 0.5, 1 }, (FpVec3) { 9, 9, 9 }, &t));
  g_assert_cmpfloat (t, ==, 0);
  g_assert_true (fp_solid_ray (box, (FpVec3) { 1, 0.5, 9 }, (FpVec3) { 1, 0.5, -9 }, &t)); /* upright */
  g_assert_cmpfloat_with_epsilon (t, 6.0 / 18, 1e-12);
  g_assert_false (fp_solid_ray (box, (FpVec3) { 1, 2, 9 }, (FpVec3) { 1, 2, -9 }, NULL));
  g_assert_false (fp_solid_ray (box, (FpVec3) { 1, 0.5, 3 }, (FpVec3) { 1, 0.5, 9 }, NULL)); /* away from its top */
}

/* The worked rays of T. Moeller and B. Trumbore, "Fast, Minimum Storage
 * Ray-Triangle Intersection", Journal of Graphics Tools 2 (1997) 21-28 (from
 * memory), on the prism over that triangle from -0.5 to 0, whose upper face it is. */
static void
test_ray_triangle (void)
{
  g_autoptr (FpSolids) list = fp_solids_new ();
  const FpPoint triangle[] = { { 0, 0 }, { 1, 0 }, { 0, 1 } };
  const FpVec3 down = { 0, 0, -1 };
  double t = 0;

  fp_solids_add_prism (list, FP_PART_BODY, triangle, 3, -0.5, 0);
  g_assert_true (shoot (fp_solids_get (list, 0), (FpVec3) { 0.25, 0.25, 1 }, down, &t));
  g_assert_cmpfloat_with_epsilon (t, 1, 1e-12);
  g_assert_true (shoot (fp_solids_get (list, 0), (FpVec3) { 0.25, 0.25, -1.5 }, (FpVec3) { 0, 0, 1 }, &t));
  g_assert_cmpfloat_with_epsilon (t, 1, 1e-12);
  g_assert_false (shoot (fp_solids_get (list, 0), (FpVec3) { 1, 1, 1 }, down, &t));
}

static void
test_ray_concave (void)
{
  /* A U, open towards +y. */
  const FpPoint u[] = { { 0, 0 }, { 6, 0 }, { 6, 4 }, { 4, 4 }, { 4, 2 }, { 2, 2 }, { 2, 4 }, { 0, 4 } };
  g_autoptr (FpSolids) list = fp_solids_new ();
  const FpSolid *s;
  double t = 0;

  fp_solids_add_prism (list, FP_PART_BODY, u, 8, 0, 10);
  s = fp_solids_get (list, 0);
  g_assert_false (fp_solid_ray (s, (FpVec3) { 3, 8, 5 }, (FpVec3) { 3, 2.5, 5 }, NULL)); /* into the notch */
  g_assert_true (fp_solid_ray (s, (FpVec3) { 3, 8, 5 }, (FpVec3) { 3, 0, 5 }, &t));
  g_assert_cmpfloat_with_epsilon (t, 0.75, 1e-12);
  g_assert_true (fp_solid_ray (s, (FpVec3) { 3, 3, 5 }, (FpVec3) { 9, 3, 5 },
                               &t)); /* out of the notch through an arm */
  g_assert_cmpfloat_with_epsilon (t, 1.0 / 6, 1e-12);
  /* Over an arm, down into the notch: it is above the arm while it is over it. */
  g_assert_false (fp_solid_ray (s, (FpVec3) { -4, 3, 16 }, (FpVec3) { 3, 3, 9 }, NULL));
  /* Exactly through corners of the notch. */
  g_assert_true (fp_solid_ray (s, (FpVec3) { 2, 5, 5 }, (FpVec3) { 2, -1, 5 }, NULL));
}

static void
test_ray_sloping (void)
{
  /* A wedge 10 x 10 whose top is z = 1 + x / 2. */
  const FpPoint square[] = { { 0, 0 }, { 10, 0 }, { 10, 10 }, { 0, 10 } };
  g_autoptr (FpSolids) list = fp_solids_new ();
  const FpSolid *s;
  double t = 0;

  fp_solids_add_sloping (list, FP_PART_FLOOR, square, 4, 0, 1, 0.5, 0);
  s = fp_solids_get (list, 0);
  g_assert_cmpfloat (fp_solid_top_at (s, 4, 99), ==, 3);
  g_assert_cmpfloat_with_epsilon (fp_solid_volume (s), 350, 1e-9);
  g_assert_true (fp_solid_ray (s, (FpVec3) { 0, 5, 3 }, (FpVec3) { 10, 5, 3 },
                               &t)); /* level: meets the rise at x = 4 */
  g_assert_cmpfloat_with_epsilon (t, 0.4, 1e-12);
  g_assert_false (fp_solid_ray (s, (FpVec3) { 0, 5, 1.1 }, (FpVec3) { 10, 5, 6.1 }, NULL)); /* keeps above it */
  g_assert_true (fp_solid_ray (s, (FpVec3) { 0, 5, 0.9 }, (FpVec3) { 10, 5, 5.9 }, &t));
  g_assert_cmpfloat_with_epsilon (t, 0, 1e-12);
}

/* Ten wide and ten deep from z = 4 + x / 2 up to z = 12: volume 10 x 10 x (12 - 6.5), entered from below where the
 * ray meets the foot's plane. */
static void
test_ray_arching (void)
{
  const FpPoint square[] = { { 0, 0 }, { 10, 0 }, { 10, 10 }, { 0, 10 } };
  g_autoptr (FpSolids) list = fp_solids_new ();
  const FpSolid *s;
  double t = 0;
  FpBox3 box;

  fp_solids_add_arching (list, FP_PART_WALL, square, 4, 4, 0.5, 0, 12);
  s = fp_solids_get (list, 0);
  box = fp_solid_box (s);
  g_assert_cmpfloat (fp_solid_foot_at (s, 6, -99), ==, 7);
  g_assert_cmpfloat (fp_solid_top_at (s, 6, -99), ==, 12);
  g_assert_cmpfloat_with_epsilon (fp_solid_volume (s), 550, 1e-9);
  g_assert_cmpfloat (box.lo.z, ==, 4);
  g_assert_cmpfloat (box.hi.z, ==, 12);
  /* Upright, at x = 4 it enters at z = 6; from above at the top. */
  g_assert_true (fp_solid_ray (s, (FpVec3) { 4, 5, 0 }, (FpVec3) { 4, 5, 12 }, &t));
  g_assert_cmpfloat_with_epsilon (t, 0.5, 1e-12);
  g_assert_true (fp_solid_ray (s, (FpVec3) { 4, 5, 16 }, (FpVec3) { 4, 5, 0 }, &t));
  g_assert_cmpfloat_with_epsilon (t, 0.25, 1e-12);
  /* Level at z = 6, against the slope: free from x = 10 to 4, inside from there. */
  g_assert_true (fp_solid_ray (s, (FpVec3) { 10, 5, 6 }, (FpVec3) { 0, 5, 6 }, &t));
  g_assert_cmpfloat_with_epsilon (t, 0.6, 1e-12);
  g_assert_false (fp_solid_ray (s, (FpVec3) { 10, 5, 6 }, (FpVec3) { 4.1, 5, 6 }, NULL));
  /* Along the slope, a little below it and a little above. */
  g_assert_false (fp_solid_ray (s, (FpVec3) { -1, 5, 3.4 }, (FpVec3) { 11, 5, 9.4 }, NULL));
  g_assert_true (fp_solid_ray (s, (FpVec3) { -1, 5, 3.6 }, (FpVec3) { 11, 5, 9.6 }, &t));
  g_assert_cmpfloat_with_epsilon (t, 1.0 / 12, 1e-12);
  /* Under the foot, though within the box. */
  g_assert_false (fp_solid_ray (s, (FpVec3) { 9, -1, 8 }, (FpVec3) { 9, 11, 8 }, NULL));
}

/* A bar 2 thick that leans, from z = x to z = x + 2 over 10 by 10: 10 x 10 x 2 of it. */
static void
test_ray_slanting (void)
{
  const FpPoint square[] = { { 0, 0 }, { 10, 0 }, { 10, 10 }, { 0, 10 } };
  g_autoptr (FpSolids) list = fp_solids_new ();
  const FpSolid *s;
  double t = 0;

  fp_solids_add_slanting (list, FP_PART_BODY, square, 4, 0, 1, 0, 2, 1, 0);
  s = fp_solids_get (list, 0);
  g_assert_cmpfloat_with_epsilon (fp_solid_volume (s), 200, 1e-9);
  g_assert_cmpfloat (fp_solid_box (s).lo.z, ==, 0);
  g_assert_cmpfloat (fp_solid_box (s).hi.z, ==, 12);
  /* Upright at x = 4 from below: in at 4; level at z = 6 towards +x: in at x = 4, where the top is that high. */
  g_assert_true (fp_solid_ray (s, (FpVec3) { 4, 5, 0 }, (FpVec3) { 4, 5, 8 }, &t));
  g_assert_cmpfloat_with_epsilon (t, 0.5, 1e-12);
  g_assert_true (fp_solid_ray (s, (FpVec3) { 0, 5, 6 }, (FpVec3) { 10, 5, 6 }, &t));
  g_assert_cmpfloat_with_epsilon (t, 0.4, 1e-12);
  /* Along it, under it and over it, though within its box. */
  g_assert_false (fp_solid_ray (s, (FpVec3) { 1, 5, 0.5 }, (FpVec3) { 9, 5, 8.5 }, NULL));
  g_assert_false (fp_solid_ray (s, (FpVec3) { 1, 5, 3.5 }, (FpVec3) { 9, 5, 11.5 }, NULL));
  g_assert_true (fp_solid_ray (s, (FpVec3) { 1, 5, 2 }, (FpVec3) { 9, 5, 10 }, NULL));
}

/* A foot that rises above its top is cut off there; what lies wholly above it is left out. */
static void
test_arching_ends (void)
{
  const FpPoint square[] = { { 0, 0 }, { 10, 0 }, { 10, 10 }, { 0, 10 } };
  g_autoptr (FpSolids) list = fp_solids_new ();
  FpBox3 box;

  fp_solids_add_arching (list, FP_PART_WALL, square, 4, 0, 0, 1, 5);
  g_assert_cmpuint (fp_solids_count (list), ==, 1);
  box = fp_solid_box (fp_solids_get (list, 0));
  g_assert_cmpfloat (box.hi.y, ==, 5);
  g_assert_cmpfloat_with_epsilon (fp_solid_volume (fp_solids_get (list, 0)), 125, 1e-9);
  fp_solids_add_arching (list, FP_PART_WALL, square, 4, 6, 0, 1, 5);
  fp_solids_add_arching (list, FP_PART_WALL, square, 4, 0, NAN, 1, 5);
  fp_solids_add_arching (list, FP_PART_WALL, square, 4, 0, 0, INFINITY, 5);
  g_assert_cmpuint (fp_solids_count (list), ==, 1);
}

static void
test_ray_round (void)
{
  g_autoptr (FpSolids) list = fp_solids_new ();
  const FpSolid *pier, *cone;
  double t = 0;

  fp_solids_add_round (list, FP_PART_PIER, 10, 0, 0, 8, 3, 3);
  fp_solids_add_round (list, FP_PART_CANDLE, 0, 0, 0, 10, 5, 0);
  pier = fp_solids_get (list, 0);
  cone = fp_solids_get (list, 1);
  g_assert_true (fp_solid_ray (pier, (FpVec3) { 0, 0, 4 }, (FpVec3) { 20, 0, 4 }, &t));
  g_assert_cmpfloat_with_epsilon (t, 7.0 / 20, 1e-12);
  g_assert_false (fp_solid_ray (pier, (FpVec3) { 0, 3.001, 4 }, (FpVec3) { 20, 3.001, 4 }, NULL));
  g_assert_true (fp_solid_ray (pier, (FpVec3) { 0, 2.999, 4 }, (FpVec3) { 20, 2.999, 4 }, NULL));
  g_assert_false (fp_solid_ray (pier, (FpVec3) { 0, 0, 8.001 }, (FpVec3) { 20, 0, 8.001 }, NULL));
  g_assert_true (fp_solid_ray (pier, (FpVec3) { 10, 0, 18 }, (FpVec3) { 10, 0, -2 }, &t)); /* upright, by the cap */
  g_assert_cmpfloat_with_epsilon (t, 0.5, 1e-12);
  /* At half its height the cone is 2.5 wide. */
  g_assert_true (fp_solid_ray (cone, (FpVec3) { -10, 0, 5 }, (FpVec3) { 10, 0, 5 }, &t));
  g_assert_cmpfloat_with_epsilon (t, 7.5 / 20, 1e-12);
  /* Its mirror image above the tip is no part of it. */
  g_assert_false (fp_solid_ray (cone, (FpVec3) { -10, 0, 15 }, (FpVec3) { 10, 0, 15 }, NULL));
  /* Steeper than its side: enters by the side, at radius 1.25 and level 7.5. */
  g_assert_true (fp_solid_ray (cone, (FpVec3) { 1.25, 0, 10 }, (FpVec3) { 1.25, 0, 0 }, &t));
  g_assert_cmpfloat_with_epsilon (t, 0.25, 1e-12);
  g_assert_cmpfloat_with_epsilon (fp_solid_volume (pier), G_PI * 9 * 8, 1e-9);
  g_assert_cmpfloat_with_epsilon (fp_solid_volume (cone), G_PI * 25 * 10 / 3, 1e-9);
}

static void
test_ray_ellipsoid (void)
{
  g_autoptr (FpSolids) list = fp_solids_new ();
  const FpSolid *s;
  double t = 0;
  FpBox3 box;

  fp_solids_add_ellipsoid (list, FP_PART_HEAD, (FpVec3) { 0, 0, 100 }, 4, 2, 6, 90);
  s = fp_solids_get (list, 0);
  box = fp_solid_box (s);
  g_assert_cmpfloat_with_epsilon (box.hi.x, 2, 1e-12); /* turned by a quarter */
  g_assert_cmpfloat_with_epsilon (box.hi.y, 4, 1e-12);
  g_assert_cmpfloat_with_epsilon (box.lo.z, 94, 1e-12);
  g_assert_true (fp_solid_ray (s, (FpVec3) { -10, 0, 100 }, (FpVec3) { 10, 0, 100 }, &t));
  g_assert_cmpfloat_with_epsilon (t, 0.4, 1e-12);
  g_assert_true (fp_solid_ray (s, (FpVec3) { 0, -10, 100 }, (FpVec3) { 0, 10, 100 }, &t));
  g_assert_cmpfloat_with_epsilon (t, 0.3, 1e-12);
  g_assert_false (fp_solid_ray (s, (FpVec3) { -10, 0, 106.01 }, (FpVec3) { 10, 0, 106.01 }, NULL));
  g_assert_cmpfloat_with_epsilon (fp_solid_volume (s), 4 * G_PI / 3 * 48, 1e-9);
}

/* Whether a point lies inside, told without the ray code. */
static gboolean
holds (const FpSolid *s, FpVec3 p)
{
  const FpPlace at = { s->cx, s->cy, s->turn };
  FpPoint q;
  double r;

  switch (s->shape)
    {
    case FP_SOLID_PRISM:
      return p.z > fp_solid_foot_at (s, p.x, p.y) && p.z < fp_solid_top_at (s, p.x, p.y)
             && fp_outline_contains (s->outline, s->n_outline, (FpPoint) { p.x, p.y });
    case FP_SOLID_ROUND:
      r = s->r0 + (s->r1 - s->r0) * (p.z - s->z0) / (s->z1 - s->z0);
      return p.z > s->z0 && p.z < s->z1 && hypot (p.x - s->cx, p.y - s->cy) < r;
    case FP_SOLID_ELLIPSOID:
      q = fp_place_unpoint (&at, (FpPoint) { p.x, p.y });
      return pow (q.x / s->rx, 2) + pow (q.y / s->ry, 2) + pow ((p.z - s->cz) / s->rz, 2) < 1;
    }
  return FALSE;
}

static FpVec3
random_point (void)
{
  return (FpVec3) { g_test_rand_double_range (-12, 12), g_test_rand_double_range (-12, 12),
                    g_test_rand_double_range (-12, 12) };
}

static void
add_random (FpSolids *list)
{
  FpPoint outline[7];
  const double turn = g_test_rand_double_range (0, 360);
  const guint n = (guint) g_test_rand_int_range (3, 8);

  /* Star-shaped about the origin, hence simple; mostly not convex. */
  for (guint i = 0; i < n; i++)
    {
      const double a = 2 * G_PI * (i + g_test_rand_double_range (0, 0.9)) / n, r = g_test_rand_double_range (1, 8);
      outline[i] = (FpPoint) { r * cos (a), r * sin (a) };
    }
  fp_solids_add_sloping (list, FP_PART_BODY, outline, n, -9, g_test_rand_double_range (2, 5),
                         g_test_rand_double_range (-0.5, 0.5), g_test_rand_double_range (-0.5, 0.5));
  fp_solids_add_arching (list, FP_PART_BODY, outline, n, g_test_rand_double_range (-5, 2),
                         g_test_rand_double_range (-0.8, 0.8), g_test_rand_double_range (-0.8, 0.8), 6);
  fp_solids_add_round (list, FP_PART_BODY, 1, -2, -3, 4, g_test_rand_double_range (0, 6),
                       g_test_rand_double_range (0.1, 6));
  fp_solids_add_ellipsoid (list, FP_PART_BODY, (FpVec3) { -1, 2, 1 }, g_test_rand_double_range (1, 6),
                           g_test_rand_double_range (1, 6), g_test_rand_double_range (1, 6), turn);
}

/* Walks along random segments in small steps: where the ray says it enters,
 * nothing before is inside, and what follows is. */
static void
check_walk (const FpSolid *s, FpVec3 from, FpVec3 to)
{
  const int steps = 400;
  const FpVec3 d = fp_vec3_sub (to, from);
  double t = 2;
  const gboolean meets = fp_solid_ray (s, from, to, &t);

  for (int k = 1; k < steps; k++)
    {
      const double at = (double) k / steps;
      /* A corner may be cut between two steps; nothing inside may come before t. */
      if (holds (s, along (from, d, at)))
        {
          g_assert_true (meets);
          g_assert_cmpfloat (t, <=, at + 1e-9);
          break;
        }
    }
  if (meets && t + 1e-7 < 1)
    {
      gboolean inside = FALSE;
      for (int k = 7; k >= 2 && !inside; k--)
        inside = holds (s, along (from, d, t + pow (10, -k) * 1e-2 * 3));
      if (!inside) /* only a graze may be so short */
        for (double e = 1e-9; e < 1e-3 && !inside; e *= 2)
          inside = holds (s, along (from, d, t + e));
      g_assert_true (inside);
    }
}

static void
test_ray_random (void)
{
  for (guint i = 0; i < 150; i++)
    {
      g_autoptr (FpSolids) list = fp_solids_new ();
      add_random (list);
      for (guint k = 0; k < fp_solids_count (list); k++)
        for (guint m = 0; m < 20; m++)
          check_walk (fp_solids_get (list, k), random_point (), random_point ());
    }
}

static void
test_degenerate_is_left_out (void)
{
  g_autoptr (FpSolids) list = fp_solids_new ();
  const FpPoint line[] = { { 0, 0 }, { 5, 0 }, { 9, 0 } };
  const FpPoint odd[] = { { 0, 0 }, { 5, 0 }, { 5, NAN } };

  fp_solids_add_box (list, FP_PART_BODY, 0, 0, 0, 0, 1, 1);
  fp_solids_add_box (list, FP_PART_BODY, 0, 0, 1, 1, 1, 1);
  fp_solids_add_box (list, FP_PART_BODY, 0, 0, 2, 1, 1, 1);
  fp_solids_add_prism (list, FP_PART_BODY, line, 3, 0, 1);
  fp_solids_add_prism (list, FP_PART_BODY, odd, 3, 0, 1);
  fp_solids_add_prism (list, FP_PART_BODY, line, 0, 0, 1);
  fp_solids_add_round (list, FP_PART_BODY, 0, 0, 0, 1, 0, 0);
  fp_solids_add_round (list, FP_PART_BODY, 0, 0, 1, 1, 2, 2);
  fp_solids_add_round (list, FP_PART_BODY, NAN, 0, 0, 1, 2, 2);
  fp_solids_add_ellipsoid (list, FP_PART_BODY, (FpVec3) { 0, 0, 0 }, 1, 0, 1, 0);
  g_assert_cmpuint (fp_solids_count (list), ==, 0);
}

static void
test_clockwise_is_turned (void)
{
  const FpPoint clockwise[] = { { 0, 0 }, { 0, 2 }, { 2, 2 }, { 2, 0 } };
  g_autoptr (FpSolids) list = fp_solids_new ();

  fp_solids_add_prism (list, FP_PART_BODY, clockwise, 4, 0, 3);
  g_assert_cmpfloat (fp_outline_area (fp_solids_get (list, 0)->outline, 4), ==, 4);
  g_assert_cmpfloat (fp_solid_volume (fp_solids_get (list, 0)), ==, 12);
}

/* A top that dips under its foot is cut off there. */
static void
test_sloping_dips (void)
{
  const FpPoint square[] = { { 0, 0 }, { 10, 0 }, { 10, 10 }, { 0, 10 } };
  g_autoptr (FpSolids) list = fp_solids_new ();
  FpBox3 box;

  fp_solids_add_sloping (list, FP_PART_FLOOR, square, 4, 0, -5, 1, 0); /* above its foot from x = 5 on */
  g_assert_cmpuint (fp_solids_count (list), ==, 1);
  box = fp_solid_box (fp_solids_get (list, 0));
  g_assert_cmpfloat (box.lo.x, ==, 5);
  g_assert_cmpfloat_with_epsilon (fp_solid_volume (fp_solids_get (list, 0)), 125, 1e-9);
}

static void
test_append_placed (void)
{
  const FpPoint square[] = { { 0, 0 }, { 10, 0 }, { 10, 10 }, { 0, 10 } };
  const FpPlace place = { 100, 50, 90 };
  g_autoptr (FpSolids) from = fp_solids_new (), to = fp_solids_new ();
  const FpSolid *s;
  guint n;

  fp_solids_add_sloping (from, FP_PART_FLOOR, square, 4, 0, 1, 0.5, 0.25);
  fp_solids_add_round (from, FP_PART_PIER, 3, 4, 0, 8, 1, 1);
  fp_solids_add_arching (from, FP_PART_WALL, square, 4, 2, 0.75, -0.1, 20);
  fp_solids_append_placed (to, from, &place, 1000, 7);
  s = fp_solids_peek (to, &n);
  g_assert_cmpuint (n, ==, 3);
  g_assert_cmpuint (s[0].owner, ==, 7);
  for (guint i = 0; i < 4; i++)
    {
      const FpPoint moved = fp_place_point (&place, square[i]);
      g_assert_cmpfloat_with_epsilon (fp_solid_top_at (&s[0], moved.x, moved.y),
                                      1000 + 1 + 0.5 * square[i].x + 0.25 * square[i].y, 1e-9);
      g_assert_cmpfloat_with_epsilon (fp_solid_foot_at (&s[0], moved.x, moved.y), 1000, 1e-9);
      g_assert_cmpfloat_with_epsilon (fp_solid_foot_at (&s[2], moved.x, moved.y),
                                      1000 + 2 + 0.75 * square[i].x - 0.1 * square[i].y, 1e-9);
      g_assert_cmpfloat_with_epsilon (fp_solid_top_at (&s[2], moved.x, moved.y), 1020, 1e-9);
    }
  g_assert_cmpfloat (s[1].cx, ==, 96);
  g_assert_cmpfloat (s[1].cy, ==, 53);
  g_assert_cmpfloat (s[1].z1, ==, 1008);
  g_assert_cmpfloat_with_epsilon (fp_solid_volume (&s[0]), fp_solid_volume (fp_solids_get (from, 0)), 1e-9);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/solid/ray/box", test_ray_box);
  g_test_add_func ("/solid/ray/triangle", test_ray_triangle);
  g_test_add_func ("/solid/ray/concave", test_ray_concave);
  g_test_add_func ("/solid/ray/sloping", test_ray_sloping);
  g_test_add_func ("/solid/ray/arching", test_ray_arching);
  g_test_add_func ("/solid/ray/slanting", test_ray_slanting);
  g_test_add_func ("/solid/ray/round", test_ray_round);
  g_test_add_func ("/solid/ray/ellipsoid", test_ray_ellipsoid);
  g_test_add_func ("/solid/ray/random", test_ray_random);
  g_test_add_func ("/solid/degenerate", test_degenerate_is_left_out);
  g_test_add_func ("/solid/clockwise", test_clockwise_is_turned);
  g_test_add_func ("/solid/sloping-dips", test_sloping_dips);
  g_test_add_func ("/solid/arching-ends", test_arching_ends);
  g_test_add_func ("/solid/append-placed", test_append_placed);
  return g_test_run ();
}
