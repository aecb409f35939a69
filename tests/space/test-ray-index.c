/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Rays against the index of solids: the same answers as asking every solid,
 * and heads that hide as a table computed by hand says. */
#include "footpace/sight.h"

#include <math.h>

static double
between (GRand *rand, double a, double b)
{
  return g_rand_double_range (rand, a, b);
}

static FpVec3
somewhere (GRand *rand)
{
  return (FpVec3) { between (rand, -4000, 4000), between (rand, -6000, 3000), between (rand, -500, 3000) };
}

static void
add_star (GRand *rand, FpSolids *out, double x, double y)
{
  FpPoint corner[10];
  for (guint i = 0; i < 10; i++)
    {
      double a = i * G_PI / 5, r = (i % 2 ? 200 : 500) + between (rand, 0, 200);
      corner[i] = (FpPoint) { x + r * cos (a), y + r * sin (a) };
    }
  double gx = between (rand, -0.1, 0.1), gy = between (rand, -0.1, 0.1);
  fp_solids_add_sloping (out, FP_PART_BODY, corner, 10, between (rand, -500, 0), 1500 - gx * x - gy * y, gx, gy);
}

static FpSolids *
random_solids (GRand *rand, guint n)
{
  g_autoptr (FpSolids) one = NULL;
  FpSolids *out = fp_solids_new ();
  for (guint i = 0; i < n; i++)
    {
      FpVec3 p = somewhere (rand);
      g_clear_pointer (&one, fp_solids_free);
      one = fp_solids_new ();
      switch (i % 4)
        {
        case 0:
          add_star (rand, one, p.x, p.y);
          break;
        case 1:
          fp_solids_add_round (one, FP_PART_PIER, p.x, p.y, 0, between (rand, 500, 9000), between (rand, 0, 600),
                               between (rand, 100, 600));
          break;
        case 2:
          fp_solids_add_ellipsoid (one, FP_PART_HEAD, p, between (rand, 70, 300), between (rand, 70, 300),
                                   between (rand, 70, 300), between (rand, -180, 180));
          break;
        default:
          fp_solids_add_box (one, FP_PART_BODY, p.x, p.y, p.z, p.x + between (rand, 1, 2000), p.y + 400, p.z + 600);
          break;
        }
      fp_solids_append_placed (out, one, &(FpPlace) { 0, 0, between (rand, -180, 180) }, 0, i);
    }
  return out;
}

static gboolean
any_blocks (const FpSolids *solids, FpVec3 from, FpVec3 to, guint skip)
{
  guint n;
  const FpSolid *s = fp_solids_peek (solids, &n);
  for (guint i = 0; i < n; i++)
    if (s[i].owner != skip && fp_solid_ray (&s[i], from, to, NULL))
      return TRUE;
  return FALSE;
}

static void
test_same_as_asking_all (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (20240614);
  static const guint COUNTS[] = { 0, 1, 2, 4, 5, 9, 40, 333 };
  guint blocked = 0, rays = 0;

  for (guint c = 0; c < G_N_ELEMENTS (COUNTS); c++)
    {
      g_autoptr (FpSolids) solids = random_solids (rand, COUNTS[c]);
      g_autoptr (FpRayIndex) index = fp_ray_index_new (solids);
      for (guint i = 0; i < 2000; i++)
        {
          FpVec3 from = somewhere (rand), to = somewhere (rand);
          /* Rays along the axes have no inverse. */
          if (i % 5 == 1)
            to.x = from.x;
          if (i % 5 == 2)
            to.y = from.y, to.z = from.z;
          if (i % 5 == 3)
            to.x = from.x, to.y = from.y;
          guint skip = i % 3 == 0 ? (guint) between (rand, 0, COUNTS[c]) : G_MAXUINT;
          int found = fp_ray_index_blocked (index, from, to, skip);
          g_assert_cmpint (found >= 0, ==, any_blocks (solids, from, to, skip));
          if (found >= 0)
            {
              g_assert_true (fp_solid_ray (fp_solids_get (solids, (guint) found), from, to, NULL));
              g_assert_cmpuint (fp_solids_get (solids, (guint) found)->owner, !=, skip);
            }
          blocked += found >= 0;
          rays++;
        }
    }
  /* A test in which nearly all rays answer alike would prove little. */
  g_assert_cmpuint (blocked, >, rays / 20);
  g_assert_cmpuint (blocked, <, rays - rays / 20);
}

/* Lowest height seen, @d beyond a head whose middle is @pitch before an eye at 1120. */
static double
lowest_seen (double pitch, double half_length, double eye_to_crown, double d)
{
  g_autoptr (FpSolids) head = fp_solids_new ();
  fp_solids_add_ellipsoid (head, FP_PART_HEAD, (FpVec3) { 0, 0, 1120 }, 75, half_length, eye_to_crown, 0);
  g_autoptr (FpRayIndex) index = fp_ray_index_new (head);
  double hidden = 1120, seen = 5000;
  while (seen - hidden > 1e-6)
    {
      double half = (seen + hidden) / 2;
      if (fp_ray_index_blocked (index, (FpVec3) { 0, -pitch, 1120 }, (FpVec3) { 0, d, half }, G_MAXUINT) >= 0)
        hidden = half;
      else
        seen = half;
    }
  return seen;
}

/* Computed by hand: z = e + E + E D / p on a level floor, eye e = 1120, rows 900 apart; E the 4 1/2 in of Theatre
 * Catalog 1947, p. 155, and 5 in, about the 125 mm of the Metric Handbook (from memory). The formula takes a head for a
 * mark at its crown, so here first for one a millimetre long. */
static void
test_over_a_head (void)
{
  static const struct { double eye_to_crown; int every[3], second[3]; } TABLE[] = {
    { 114.3, { 1615, 1996, 2377 }, { 1425, 1615, 1806 } },
    { 127.0, { 1670, 2094, 2517 }, { 1459, 1670, 1882 } },
  };
  for (guint i = 0; i < 2; i++)
    for (guint k = 0; k < 3; k++)
      {
        double d = 3000 * (k + 1), e = TABLE[i].eye_to_crown;
        g_assert_cmpint ((int) lround (lowest_seen (900, 0.5, e, d)), ==, TABLE[i].every[k]);
        g_assert_cmpint ((int) lround (lowest_seen (1800, 0.5, e, d)), ==, TABLE[i].second[k]);
        /* The line over a real head touches it before its crown: m = E / sqrt (p^2 - (length/2)^2). */
        double slope = e / sqrt (900 * 900 - 97.5 * 97.5);
        g_assert_cmpfloat_with_epsilon (lowest_seen (900, 97.5, e, d), 1120 + slope * (900 + d), 0.01);
      }
}

/* A cloth that hangs against a thing is seen in its place, so it stops nothing; where there is nothing else, nothing does. */
static void
test_past_cloths (void)
{
  g_autoptr (FpSolids) cloth = fp_solids_new (), both = fp_solids_new (), none = fp_solids_new ();
  const FpVec3 from = { 0, -1000, 500 }, to = { 0, 1000, 500 };

  fp_solids_add_box (cloth, FP_PART_CLOTH, -500, -20, 0, 500, 0, 1000);
  fp_solids_add_box (both, FP_PART_CLOTH, -500, -20, 0, 500, 0, 1000);
  fp_solids_add_box (both, FP_PART_SUPPORT, -500, 0, 0, 500, 400, 1000);
  g_autoptr (FpRayIndex) hung = fp_ray_index_new (cloth), altar = fp_ray_index_new (both), empty = fp_ray_index_new (none);
  g_assert_cmpint (fp_ray_index_blocked (hung, from, to, G_MAXUINT), ==, -1);
  g_assert_cmpint (fp_ray_index_blocked (empty, from, to, G_MAXUINT), ==, -1);
  g_assert_cmpint (fp_ray_index_blocked (altar, from, to, G_MAXUINT), ==, 1);
  g_assert_cmpint (fp_ray_index_blocked (altar, from, (FpVec3) { 0, -10, 500 }, G_MAXUINT), ==, -1);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/ray-index/same-as-asking-all", test_same_as_asking_all);
  g_test_add_func ("/ray-index/over-a-head", test_over_a_head);
  g_test_add_func ("/ray-index/past-cloths", test_past_cloths);
  return g_test_run ();
}
