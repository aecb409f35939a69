/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Room for people, and Communion at the rail and in lines. */
#include "footpace/capacity.h"
#include "footpace/communion.h"
#include "church.h"

#include <math.h>

/* --- Communion -------------------------------------------------------------------------- */

static double
seconds (guint people, guint ministers, guint places, double each, double change, double back)
{
  const FpCommunion c = { people, ministers, places, each, change, back };

  g_assert_true (fp_communion_check (&c, NULL));
  return fp_communion_seconds (&c);
}

/* By arithmetic: what can be told without going along the rail. */
static void
test_closed_forms (void)
{
  /* One line: so many of each, and a change between two. */
  g_assert_cmpfloat_with_epsilon (seconds (100, 1, 0, 4, 1, 0), 100 * 4 + 99 * 1, 1e-9);
  g_assert_cmpfloat_with_epsilon (seconds (100, 4, 0, 4, 1, 0), 25 * 4 + 24 * 1, 1e-9);
  g_assert_cmpfloat_with_epsilon (seconds (101, 4, 0, 4, 1, 0), 26 * 4 + 25 * 1, 1e-9);
  /* A rail so long that all kneel at once. */
  g_assert_cmpfloat_with_epsilon (seconds (20, 1, 20, 4, 30, 0), 80, 1e-9);
  /* One place: he waits for each change. */
  g_assert_cmpfloat_with_epsilon (seconds (10, 1, 1, 4, 6, 0), 10 * 4 + 9 * 6, 1e-9);
  /* Ten places, and a change that is done before he comes round: he never waits; five rounds, four ways back. */
  g_assert_cmpfloat_with_epsilon (seconds (50, 1, 10, 4, 30, 5), 50 * 4 + 4 * 5, 1e-9);
  /* A change longer than a round: each round takes as long as one communicant and the change. */
  g_assert_cmpfloat_with_epsilon (seconds (40, 1, 10, 2, 30, 0), 3 * (2 + 30) + 10 * 2, 1e-9);
  /* Two ministers share rail and people. */
  g_assert_cmpfloat_with_epsilon (seconds (60, 2, 20, 4, 20, 0), 30 * 4, 1e-9);
}

/* The same, second by second, written otherwise: people stand at places and ministers look at what is before them. */
static guint
by_the_clock (guint people, guint ministers, guint places, guint each, guint change, guint back)
{
  guint ready[64], at[8] = { 0 }, first[8], n[8], given = 0, last = 0, done = 0, waiting = people > places ? people - places : 0;
  gint busy[8] = { 0 };
  gboolean there[64], giving[8] = { FALSE };

  for (guint i = 0; i < places; i++)
    {
      there[i] = i < people;
      ready[i] = 0;
    }
  for (guint m = 0; m < ministers; m++)
    {
      first[m] = given;
      n[m] = (places - given) / (ministers - m);
      given += n[m];
    }
  for (guint now = 0; done < people; now++)
    {
      g_assert_cmpuint (now, <, 1000000);
      for (guint m = 0; m < ministers; m++)
        {
          gboolean any = FALSE;

          if (busy[m] > 0 && --busy[m] > 0)
            continue;
          if (giving[m])
            {
              const guint place = first[m] + at[m];

              giving[m] = FALSE;
              done++;
              last = now;
              there[place] = waiting > 0;
              ready[place] = now + change;
              waiting -= waiting > 0;
              at[m] = (at[m] + 1) % n[m];
              busy[m] = at[m] == 0 ? (gint) back : 0;
              if (busy[m] > 0)
                continue;
            }
          for (guint i = 0; i < n[m]; i++)
            any |= there[first[m] + i];
          while (any && !there[first[m] + at[m]] && busy[m] == 0)
            {
              at[m] = (at[m] + 1) % n[m];
              busy[m] = at[m] == 0 ? (gint) back : 0;
            }
          if (any && busy[m] == 0 && ready[first[m] + at[m]] <= now)
            {
              giving[m] = TRUE;
              busy[m] = (gint) each;
            }
        }
    }
  return last;
}

static void
test_by_the_clock (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (20261129);

  for (guint i = 0; i < 400; i++)
    {
      const guint places = (guint) g_rand_int_range (rand, 2, 40), ministers = 1, people = (guint) g_rand_int_range (rand, 1, 200);
      const guint each = (guint) g_rand_int_range (rand, 1, 9), change = (guint) g_rand_int_range (rand, 0, 60);
      const guint back = (guint) g_rand_int_range (rand, 0, 12);

      g_test_message ("%u people, %u places: %u, %u, %u s", people, places, each, change, back);
      g_assert_cmpfloat_with_epsilon (seconds (people, ministers, places, each, change, back),
                                      by_the_clock (people, ministers, places, each, change, back), 1e-9);
    }
}

/* More ministers, or a longer rail, never take longer by more than one change and one way back. */
static void
test_more_helps (void)
{
  for (guint ministers = 1; ministers < 6; ministers++)
    g_assert_cmpfloat (seconds (300, ministers + 1, 24, 4, 15, 4), <=, seconds (300, ministers, 24, 4, 15, 4) + 19);
}

static void
test_refused (void)
{
  g_autoptr (GError) error = NULL;
  const FpCommunion none = { 0, 1, 0, 4, 0, 0 }, never = { 10, 1, 0, NAN, 0, 0 }, slow = { 10, 1, 0, 4, INFINITY, 0 };

  g_assert_false (fp_communion_check (&none, &error));
  g_assert_nonnull (error);
  g_assert_false (fp_communion_check (&never, NULL));
  g_assert_false (fp_communion_check (&slow, NULL));
}

/* --- room -------------------------------------------------------------------------------- */

/* International Building Code 2015, 1004.4: one person for each 18 in of bench; 126 in give 7 (as reported, 128 in give 7 and
 * 144 in 8): rounded down.  Building Trades Pocketbook, "Church Dimensions": ten pews on each side, 10 ft 6 in long, seat 140. */
static void
test_benches (void)
{
  static const struct { double inches; guint seats; } rows[] = { { 126, 7 }, { 128, 7 }, { 120, 6 }, { 144, 8 }, { 240, 13 } };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      FpProject *project = church_new (FP_FACING_EAST);
      g_autoptr (FpScene) scene = NULL;
      g_autoptr (FpPeople) people = NULL;
      g_autoptr (GArray) lines = NULL;
      const ChurchThing pews = { "pews", "pews", NULL, { 0, -3000, 0 }, NULL, 0,
                                 { { "length", rows[i].inches * 25.4 }, { "rows", 20 }, { NULL, 0 } } };

      church_floor (&project, "nave", (FpBox) { -6000, -30000, 6000, 0 }, 0, 0, 0, 0);
      church_survey (&project, &pews);
      scene = fp_scene_new (project, 0);
      people = fp_people_new (scene);
      lines = fp_capacity (people);
      g_assert_cmpuint (lines->len, ==, 1);
      g_assert_true (g_array_index (lines, FpCapacityLine, 0).ruled);
      g_assert_cmpuint (g_array_index (lines, FpCapacityLine, 0).by_rule, ==, 20 * rows[i].seats);
      g_assert_cmpuint (g_array_index (lines, FpCapacityLine, 0).places, ==, fp_people_seats (people));
      fp_project_unref (project);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/communion/closed-forms", test_closed_forms);
  g_test_add_func ("/communion/by-the-clock", test_by_the_clock);
  g_test_add_func ("/communion/more-helps", test_more_helps);
  g_test_add_func ("/communion/refused", test_refused);
  g_test_add_func ("/capacity/benches", test_benches);
  return g_test_run ();
}
