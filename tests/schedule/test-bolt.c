/* SPDX-License-Identifier: GPL-3.0-or-later */
/* test-bolt.c - pieces on a bolt of cloth: against all layouts of small ones, and against the bound of large ones
 *
 * A perfect layout is made by cutting a rectangle up, so that its shortest
 * length is known: E. Hopper and B. Turton, "An empirical investigation of
 * meta-heuristic and heuristic algorithms for a 2D packing problem", European
 * Journal of Operational Research 128 (2001), make their test problems like
 * that (from memory).
 */
#include "footpace/bolt.h"

#include "footpace/error.h"

#include <math.h>

static FpBoltPiece
piece_of (double across, double along, gboolean both)
{
  return (FpBoltPiece) { across, along, both ? along : 0, both ? across : 0 };
}

/* Nothing overlaps, nothing leaves the bolt, every piece has its measures, and the length is as far as the last goes. */
static void
assert_is_layout (const FpBoltLayout *layout, const FpBoltPiece *piece, guint n, double width)
{
  double length = 0;

  for (guint i = 0; i < n; i++)
    {
      const FpBoltPlace *p = &layout->place[i];

      g_assert_cmpfloat (p->across, ==, p->turned ? piece[i].turned_across : piece[i].across);
      g_assert_cmpfloat (p->along, ==, p->turned ? piece[i].turned_along : piece[i].along);
      g_assert_cmpfloat (p->x, >=, 0);
      g_assert_cmpfloat (p->y, >=, 0);
      g_assert_cmpfloat (p->x + p->across, <=, width + 1e-3);
      length = MAX (length, p->y + p->along);
      for (guint k = 0; k < i; k++)
        {
          const FpBoltPlace *q = &layout->place[k];
          const double wide = MIN (p->x + p->across, q->x + q->across) - MAX (p->x, q->x);
          const double high = MIN (p->y + p->along, q->y + q->along) - MAX (p->y, q->y);
          g_assert_false (wide > 1e-3 && high > 1e-3);
        }
    }
  g_assert_cmpfloat_with_epsilon (layout->length, length, 1e-6);
  g_assert_cmpfloat (layout->length, >=, layout->bound - 1e-6);
}

/* --- against all layouts ------------------------------------------------------- */

#define SQUARES_WIDE 5
#define SQUARES_LONG 12

/* On squared paper, one bit a square.  Pieces whose sides are whole numbers have a shortest layout at whole numbers. */
static gboolean
all_go_in (const FpBoltPiece *piece, guint n, guint length, guint64 taken)
{
  if (n == 0)
    return TRUE;
  for (guint turned = 0; turned < 2; turned++)
    {
      const guint w = (guint) (turned ? piece->turned_across : piece->across);
      const guint l = (guint) (turned ? piece->turned_along : piece->along);

      for (guint x = 0; w > 0 && x + w <= SQUARES_WIDE; x++)
        for (guint y = 0; y + l <= length; y++)
          {
            guint64 mask = 0;

            for (guint i = 0; i < l; i++)
              mask |= ((G_GUINT64_CONSTANT (1) << w) - 1) << (x + (y + i) * SQUARES_WIDE);
            if ((taken & mask) == 0 && all_go_in (piece + 1, n - 1, length, taken | mask))
              return TRUE;
          }
    }
  return FALSE;
}

static void
test_shortest (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (7);
  guint above = 0;

  for (guint run = 0; run < 150; run++)
    {
      const guint n = (guint) g_rand_int_range (random, 1, 6);
      FpBoltPiece piece[5];
      g_autoptr (FpBoltLayout) layout = NULL;
      guint shortest = 0;

      for (guint i = 0; i < n; i++)
        piece[i] = piece_of (g_rand_int_range (random, 1, SQUARES_WIDE), g_rand_int_range (random, 1, 5),
                             g_rand_boolean (random));
      for (guint i = 0; i < n; i++)
        if (piece[i].turned_across > SQUARES_WIDE)
          piece[i].turned_across = piece[i].turned_along = 0;
      while (shortest < SQUARES_LONG && !all_go_in (piece, n, shortest, 0))
        shortest++;
      if (shortest == SQUARES_LONG)
        continue;
      layout = fp_bolt_lay_out (piece, n, SQUARES_WIDE, NULL);
      assert_is_layout (layout, piece, n, SQUARES_WIDE);
      g_assert_true (layout->least);
      g_assert_cmpfloat_with_epsilon (layout->length, shortest, 1e-6);
      above += shortest > layout->bound + 1e-6;
    }
  g_assert_cmpuint (above, >, 20); /* the bound alone would not have told */
}

/* Of more pieces than are searched, so that the largest are, and the others go into the gaps: what is said to be the shortest
 * is it, and nothing is said to take more than it does. */
static void
test_shortest_of_many (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (17);
  guint proven = 0, met = 0, runs = 12;

  for (guint run = 0; run < runs; run++)
    {
      FpBoltPiece piece[10];
      g_autoptr (FpBoltLayout) layout = NULL;
      guint shortest;

      /* The larger first, which is sooner known to go in nowhere. */
      for (guint i = 0; i < G_N_ELEMENTS (piece); i++)
        piece[i] = piece_of (g_rand_int_range (random, 1, i < 4 ? 5 : 3), i < 2 ? 3 : g_rand_int_range (random, 1, 3), i % 2 == 0);
      layout = fp_bolt_lay_out (piece, G_N_ELEMENTS (piece), SQUARES_WIDE, NULL);
      assert_is_layout (layout, piece, G_N_ELEMENTS (piece), SQUARES_WIDE);
      shortest = (guint) ceil (layout->bound - 1e-6);
      while (shortest < SQUARES_LONG && !all_go_in (piece, G_N_ELEMENTS (piece), shortest, 0))
        shortest++;
      g_assert_cmpuint (shortest, <, SQUARES_LONG);
      g_assert_cmpfloat (layout->length, >=, shortest - 1e-6);
      g_assert_cmpfloat (layout->bound, <=, shortest + 1e-6);
      if (layout->least)
        g_assert_cmpfloat_with_epsilon (layout->length, shortest, 1e-6);
      g_assert_cmpfloat (layout->length, <=, shortest + 1 + 1e-6);
      met += layout->length <= shortest + 1e-6 ? 1 : 0;
      proven += layout->least ? 1 : 0;
    }
  g_test_message ("of %u %u are the shortest, %u proven", runs, met, proven);
  g_assert_cmpuint (proven, >, 0);
  g_assert_cmpuint (met, >, runs / 2);
}

/* --- against the bound ----------------------------------------------------------- */

static void
cut_up (GRand *random, double across, double along, guint parts, GArray *out)
{
  const double share = g_rand_double_range (random, 0.25, 0.75);
  const guint first = parts / 2;

  if (parts == 1)
    {
      const FpBoltPiece piece = piece_of (across, along, FALSE);
      g_array_append_val (out, piece);
    }
  else if (g_rand_boolean (random))
    {
      cut_up (random, across * share, along, first, out);
      cut_up (random, across * (1 - share), along, parts - first, out);
    }
  else
    {
      cut_up (random, across, along * share, first, out);
      cut_up (random, across, along * (1 - share), parts - first, out);
    }
}

/* Of 1500 by 4000, nothing left over. */
static void
test_cut_up (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (11);
  double worst = 0;

  for (guint run = 0; run < 40; run++)
    {
      const guint parts = run < 20 ? 2 + run % 6 : 20 + run;
      g_autoptr (GArray) piece = g_array_new (FALSE, FALSE, sizeof (FpBoltPiece));
      g_autoptr (FpBoltLayout) layout = NULL;

      cut_up (random, 1500, 4000, parts, piece);
      layout = fp_bolt_lay_out ((const FpBoltPiece *) (gpointer) piece->data, piece->len, 1500, NULL);
      assert_is_layout (layout, (const FpBoltPiece *) (gpointer) piece->data, piece->len, 1500);
      g_test_message ("%u pieces: %.0f of %.0f", parts, layout->length, layout->bound);
      if (parts <= 7)
        g_assert_cmpfloat_with_epsilon (layout->length, 4000, 1e-3);
      worst = MAX (worst, layout->length / 4000);
    }
  g_assert_cmpfloat (worst, <, 1.2);
}

/* What is cut up has many large pieces and some small ones that go where they were cut: of 1500 by 4000. The small ones are
 * beside the largest eight, which take all of the length. */
static void
test_gaps (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (5);

  for (guint run = 0; run < 10; run++)
    {
      g_autoptr (GArray) piece = g_array_new (FALSE, FALSE, sizeof (FpBoltPiece));
      g_autoptr (FpBoltLayout) layout = NULL;
      double along = 4000;

      /* Four pairs of large ones, each as long as both, and a strip beside them for 16 small ones. */
      for (guint i = 0; i < 4; i++)
        {
          const double part = i == 3 ? along : along * g_rand_double_range (random, 0.2, 0.4), first = 500 + 50 * i;
          const FpBoltPiece pair[2] = { piece_of (first, part, FALSE), piece_of (1300 - first, part, FALSE) };

          g_array_append_vals (piece, pair, 2);
          along -= part;
        }
      for (guint i = 0; i < 16; i++)
        {
          const FpBoltPiece small = piece_of (200, 4000 / 16.0, TRUE);
          g_array_append_val (piece, small);
        }
      layout = fp_bolt_lay_out ((const FpBoltPiece *) (gpointer) piece->data, piece->len, 1500, NULL);
      assert_is_layout (layout, (const FpBoltPiece *) (gpointer) piece->data, piece->len, 1500);
      g_test_message ("%.1f of %.1f", layout->length, layout->bound);
      g_assert_cmpfloat (layout->length, <, 4000 * 1.05);
    }
}

/* By hand: one of 1000 by 3000 leaves 500 beside it, into which go eight of 500 by 300 and four of 250 by 300, for
 * 8 x 300 + 2 x 300 = 3000. Nothing is shorter than the longest. */
static void
test_beside_the_longest (void)
{
  FpBoltPiece piece[13] = { piece_of (1000, 3000, FALSE) };
  g_autoptr (FpBoltLayout) layout = NULL;

  for (guint i = 1; i < 13; i++)
    piece[i] = piece_of (i < 9 ? 500 : 250, 300, FALSE);
  layout = fp_bolt_lay_out (piece, 13, 1500, NULL);
  assert_is_layout (layout, piece, 13, 1500);
  g_assert_true (layout->least);
  g_assert_cmpfloat_with_epsilon (layout->length, 3000, 1e-6);
}

/* --- what is refused, and what is always so ---------------------------------------- */

static void
refused (FpBoltPiece piece, double width, const char *words)
{
  g_autoptr (GError) error = NULL;

  g_assert_null (fp_bolt_lay_out (&piece, 1, width, &error));
  g_assert_error (error, FP_ERROR, FP_ERROR_RANGE);
  g_assert_nonnull (strstr (error->message, words));
}

static void
test_refused (void)
{
  g_autoptr (FpBoltLayout) none = fp_bolt_lay_out (NULL, 0, 1500, NULL);

  g_assert_cmpfloat (none->length, ==, 0);
  refused (piece_of (1600, 2000, TRUE), 1500, "Piece 1 is wider than the bolt of 1500 mm");
  refused (piece_of (1600, 1400, FALSE), 1500, "wider");
  refused (piece_of (NAN, 100, TRUE), 1500, "Piece 1");
  refused (piece_of (-1, 100, FALSE), 1500, "Piece 1");
  refused (piece_of (100, 100, TRUE), 0, "no width");
  refused (piece_of (0, 0, TRUE), 1500, "wider");
}

/* A piece that is wider than the bolt goes along it. */
static void
test_turned (void)
{
  const FpBoltPiece piece = piece_of (1600, 1400, TRUE);
  g_autoptr (FpBoltLayout) layout = fp_bolt_lay_out (&piece, 1, 1500, NULL);

  g_assert_true (layout->place[0].turned && layout->least);
  g_assert_cmpfloat (layout->length, ==, 1600);
}

static void
test_alike_each_time (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (3);
  FpBoltPiece piece[60];

  for (guint i = 0; i < G_N_ELEMENTS (piece); i++)
    piece[i] = piece_of (g_rand_double_range (random, 100, 1400), g_rand_double_range (random, 100, 1400), TRUE);
  g_autoptr (FpBoltLayout) one = fp_bolt_lay_out (piece, G_N_ELEMENTS (piece), 1500, NULL);
  g_autoptr (FpBoltLayout) other = fp_bolt_lay_out (piece, G_N_ELEMENTS (piece), 1500, NULL);
  assert_is_layout (one, piece, G_N_ELEMENTS (piece), 1500);
  g_assert_cmpfloat (one->length, ==, other->length);
  for (guint i = 0; i < G_N_ELEMENTS (piece); i++)
    g_assert_true (one->place[i].x == other->place[i].x && one->place[i].y == other->place[i].y);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/bolt/shortest", test_shortest);
  g_test_add_func ("/bolt/shortest-of-many", test_shortest_of_many);
  g_test_add_func ("/bolt/cut-up", test_cut_up);
  g_test_add_func ("/bolt/gaps", test_gaps);
  g_test_add_func ("/bolt/beside-the-longest", test_beside_the_longest);
  g_test_add_func ("/bolt/refused", test_refused);
  g_test_add_func ("/bolt/turned", test_turned);
  g_test_add_func ("/bolt/alike-each-time", test_alike_each_time);
  return g_test_run ();
}
