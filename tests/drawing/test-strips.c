/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Convex cut pieces side by side made one: the same is covered, by fewer. */
#include "projection-private.h"

#include <math.h>

#define ROWS   200
#define POINTS 400

static void
clear_piece (gpointer data)
{
  FpCutPiece *piece = data;

  g_free (piece->pt);
}

static GArray *
pieces_new (void)
{
  GArray *pieces = g_array_new (FALSE, FALSE, sizeof (FpCutPiece));

  g_array_set_clear_func (pieces, clear_piece);
  return pieces;
}

static FpCutPiece *
piece_at (GArray *pieces, guint i)
{
  return &g_array_index (pieces, FpCutPiece, i);
}

/* A rectangle set out in @place. */
static void
add_rectangle (GArray *pieces, guint owner, const FpPlace *place, FpBox box)
{
  const FpPoint corner[] = { { box.x0, box.y0 }, { box.x1, box.y0 }, { box.x1, box.y1 }, { box.x0, box.y1 } };
  FpCutPiece piece = { g_new (FpPoint, 4), 4, owner, 0, box.x0 };

  for (guint i = 0; i < 4; i++)
    piece.pt[i] = fp_place_point (place, corner[i]);
  g_array_append_val (pieces, piece);
}

static double
area_of (GArray *pieces)
{
  double area = 0;

  for (guint i = 0; i < pieces->len; i++)
    area += fabs (fp_outline_area (piece_at (pieces, i)->pt, piece_at (pieces, i)->n));
  return area;
}

static guint
count_over (GArray *pieces, guint owner, FpPoint p)
{
  guint n = 0;

  for (guint i = 0; i < pieces->len; i++)
    n += piece_at (pieces, i)->owner == owner
         && fp_outline_contains (piece_at (pieces, i)->pt, piece_at (pieces, i)->n, p);
  return n;
}

/* The strips of a round arch 2,400 mm wide through a wall 600 mm thick, which stands askew. */
static void
test_arch (void)
{
  g_autoptr (GArray) pieces = pieces_new ();
  const FpPlace askew = { 1234.5, -678.9, 27.3 };

  for (guint i = 0; i < 36; i++)
    add_rectangle (pieces, 3, &askew,
                   (FpBox) { -1200 * cos (i * G_PI / 36), 0, -1200 * cos ((i + 1) * G_PI / 36), 600 });
  fp_cut_strips_join (pieces);
  g_assert_cmpuint (pieces->len, ==, 1);
  g_assert_cmpuint (piece_at (pieces, 0)->n, ==, 4);
  g_assert_cmpfloat_with_epsilon (area_of (pieces), 2400.0 * 600.0, 1);
  g_assert_cmpuint (piece_at (pieces, 0)->owner, ==, 3);
  g_assert_cmpfloat_with_epsilon (piece_at (pieces, 0)->depth, 1200 * cos (G_PI / 36), 1e-9); /* the nearest */
}

static guint
joined_len (FpBox a, FpBox b, guint owner_of_b)
{
  g_autoptr (GArray) pieces = pieces_new ();
  const FpPlace straight = { 0, 0, 0 };

  add_rectangle (pieces, 0, &straight, a);
  add_rectangle (pieces, owner_of_b, &straight, b);
  fp_cut_strips_join (pieces);
  return pieces->len;
}

static void
test_apart (void)
{
  const FpBox a = { 0, 0, 100, 100 };

  g_assert_cmpuint (joined_len (a, (FpBox) { 100, 0, 150, 100 }, 0), ==, 1);
  g_assert_cmpuint (joined_len (a, (FpBox) { 100, 0, 150, 100 }, 1), ==, 2); /* of another thing   */
  g_assert_cmpuint (joined_len (a, (FpBox) { 101, 0, 150, 100 }, 0), ==, 2); /* a gap              */
  g_assert_cmpuint (joined_len (a, (FpBox) { 100, 0, 150, 50 }, 0), ==, 2);  /* half a side        */
  g_assert_cmpuint (joined_len (a, (FpBox) { 99, 0, 150, 100 }, 0), ==, 2);  /* one over the other */
  g_assert_cmpuint (joined_len (a, a, 0), ==, 2);
}

/* A quarter of a curved wall: each block shares a side with the next, but two together are not convex. */
static void
test_curved (void)
{
  g_autoptr (GArray) pieces = pieces_new ();
  double area;

  for (guint i = 0; i < 12; i++)
    {
      const double from = i * G_PI / 24, to = (i + 1) * G_PI / 24;
      const FpPoint corner[] = { { 3000 * cos (from), 3000 * sin (from) }, { 3600 * cos (from), 3600 * sin (from) },
                                 { 3600 * cos (to), 3600 * sin (to) }, { 3000 * cos (to), 3000 * sin (to) } };
      const FpCutPiece piece = { g_memdup2 (corner, sizeof corner), 4, 0, 0, 0 };
      g_array_append_val (pieces, piece);
    }
  area = area_of (pieces);
  fp_cut_strips_join (pieces);
  g_assert_cmpuint (pieces->len, ==, 12);
  g_assert_cmpfloat (area_of (pieces), ==, area);
}

/* Rows with gaps, steps, overlaps and several owners: every point is covered as often as before. */
static void
check_row (GRand *rand)
{
  g_autoptr (GArray) before = pieces_new (), after = pieces_new ();
  const FpPlace place = { g_rand_double_range (rand, -2e4, 2e4), g_rand_double_range (rand, -2e4, 2e4),
                          g_rand_double_range (rand, 0, 360) };
  double x = 0, deep = 400;

  for (guint i = 0; i < 30; i++)
    {
      const double wide = g_rand_double_range (rand, 5, 120);
      const FpBox box = { x, 0, x + wide, deep };
      const guint owner = (guint) g_rand_int_range (rand, 0, 8) == 0;
      add_rectangle (before, owner, &place, box);
      add_rectangle (after, owner, &place, box);
      x += wide + (g_rand_int_range (rand, 0, 6) == 0 ? g_rand_double_range (rand, -4, 4) : 0);
      deep = g_rand_int_range (rand, 0, 6) == 0 ? g_rand_double_range (rand, 200, 600) : deep;
    }
  fp_cut_strips_join (after);
  g_assert_cmpuint (after->len, <, before->len);
  g_assert_cmpfloat_with_epsilon (area_of (after), area_of (before), 1e-3 * area_of (before) / 400);
  for (guint i = 0; i < POINTS; i++)
    {
      const FpPoint p = fp_place_point (&place, (FpPoint) { g_rand_double_range (rand, -50, x + 50),
                                                            g_rand_double_range (rand, -50, 650) });
      for (guint owner = 0; owner < 2; owner++)
        g_assert_cmpuint (count_over (after, owner, p), ==, count_over (before, owner, p));
    }
}

static void
test_rows (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (20261128);

  for (guint i = 0; i < ROWS; i++)
    check_row (rand);
}

static void
test_none (void)
{
  g_autoptr (GArray) pieces = pieces_new ();

  fp_cut_strips_join (pieces);
  g_assert_cmpuint (pieces->len, ==, 0);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/strips/none", test_none);
  g_test_add_func ("/strips/arch", test_arch);
  g_test_add_func ("/strips/apart", test_apart);
  g_test_add_func ("/strips/curved", test_curved);
  g_test_add_func ("/strips/rows", test_rows);
  return g_test_run ();
}
