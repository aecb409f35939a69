/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Levels, seats and rows, and what is seen. */
#include "taking.h"

#include <math.h>
#include <string.h>

static FpProject *
church (void)
{
  return taking_church (FP_BOOKS_BOTH, FP_FACING_EAST, FP_CELEBRATION_LOW | FP_CELEBRATION_SUNDAY);
}

static void
add_pews (FpProject **project, const char *id, double x, double y, double rows)
{
  taking_survey (project, "pews", id, x, y, "rows", rows);
}

/* --- levels -------------------------------------------------------------- */

static void
test_levels (void)
{
  g_autoptr (FpProject) project = church ();

  add_pews (&project, "pews", 0, -2000, 10);
  /* 300 to the sanctuary, three steps of 152, and the nave at the datum. */
  assert_measure (project, "margin-below", 756);
  assert_measure (project, "places-not-below", 0);
  assert_measure (project, "area-not-below", 0);
  assert_measure (project, "places-above-sanctuary", 0);
  g_assert_cmpuint (taking_count (project, "gallery-places"), ==, 0);
  assert_within (project, "levels:people-below");
}

/* A floor that falls towards the altar by 1:10: at y = -20000 it is 2 m up, and 756 is passed at y = -7560. */
static void
test_falling_floor (void)
{
  g_autoptr (FpProject) project = church ();
  g_autoptr (GArray) values = NULL;

  church_param (&project, "nave", "fall", 0.1);
  add_pews (&project, "pews", 0, -2000, 10);
  assert_measure (project, "margin-below", 756 - 2000);
  g_assert_cmpfloat_with_epsilon (taking_value (project, "area-not-below"), 12000.0 * (20000 - 7560), 1);
  assert_measure (project, "floor-fall", 0.1);
  assert_short (project, "levels:people-below");
  assert_short (project, "levels:area-below");
  assert_short (project, "access:floor-level");
  assert_short (project, "access:floor-ramp");

  /* Rows 900 apart from y = -2000: the seventh is about 7.6 m down the nave. */
  values = taking_values (project, "places-not-below");
  g_assert_cmpuint (values->len, ==, 1);
  g_assert_cmpstr (g_array_index (values, FpMeasured, 0).detail, ==, "Pews: rows 7 to 10");
  g_assert_cmpfloat (g_array_index (values, FpMeasured, 0).value, ==, 4 * 8);
}

/* Level with the altar is not below it. */
static void
test_level_with_altar (void)
{
  g_autoptr (FpProject) project = church ();

  church_param (&project, "nave", "level", 756);
  add_pews (&project, "gospel", -3000, -2000, 3);
  assert_measure (project, "margin-below", 0);
  assert_measure (project, "places-not-below", 24);
  g_assert_cmpfloat_with_epsilon (taking_value (project, "area-not-below"), 12000.0 * 20000, 1);
  assert_short (project, "levels:people-below");
  assert_short (project, "levels:places-below");
  assert_short (project, "levels:sanctuary-highest");
}

static void
test_gallery (void)
{
  g_autoptr (FpProject) project = church ();
  const FpPoint corner[] = { { -6000, -20000 }, { 6000, -20000 }, { 6000, -16000 }, { -6000, -16000 } };
  const ChurchThing gallery = { "gallery", "loft", NULL, { 0, 0, 0 }, corner, 4, { { NULL, 0 } } };
  const ChurchThing pews
    = { "pews", "choir", "loft", { 0, -16500, 0 }, NULL, 0, { { "rows", 2 }, { "length", 457 * 3 }, { NULL, 0 } } };

  church_survey (&project, &gallery);
  church_survey (&project, &pews);
  add_pews (&project, "pews", 0, -2000, 5);
  assert_measure (project, "gallery-places", 6);
  assert_short (project, "levels:gallery");
  assert_measure (project, "places-not-below", 0);
  assert_measure (project, "margin-below", 756);
}

/* US Department of Defense, UFC 4-730-02 (2004), ch. 3, 2g: 6 rows want 1 step, 7 want 2, 10 want 2, 11 want 3, 13
 * want 3, 14 are outside the table.  A footpace of one step of 152 on a sanctuary at the nave's level gives one. */
static void
test_rows_and_steps (void)
{
  static const struct { double rows, lacking; } table[] = { { 6, 0 }, { 7, 1 }, { 10, 1 }, { 11, 2 }, { 13, 2 } };

  for (guint i = 0; i < G_N_ELEMENTS (table); i++)
    {
      g_autoptr (FpProject) project = church ();

      church_param (&project, "sanctuary", "level", 0);
      church_param (&project, "steps", "count", 1);
      add_pews (&project, "pews", 0, -2000, table[i].rows);
      assert_measure (project, "steps-lacking-for-rows", table[i].lacking);
      church_param (&project, "steps", "count", 3);
      assert_measure (project, "steps-lacking-for-rows", 0);
    }

  {
    g_autoptr (FpProject) project = church ();

    add_pews (&project, "pews", 0, -2000, 14);
    g_assert_cmpuint (taking_count (project, "steps-lacking-for-rows"), ==, 0);
    g_assert_cmpstr (fp_found_id (taking_found (project, "levels:height-for-rows")), ==, "nothing");
  }
}

/* Two blocks one behind the other are added up, two side by side are not. */
static void
test_rows_of_blocks (void)
{
  g_autoptr (FpProject) project = church ();

  church_param (&project, "sanctuary", "level", 0);
  church_param (&project, "steps", "count", 1);
  add_pews (&project, "gospel", -2500, -2000, 6);
  add_pews (&project, "epistle", 2500, -2000, 6);
  assert_measure (project, "steps-lacking-for-rows", 0);
  add_pews (&project, "back", 2500, -9000, 5);
  assert_measure (project, "steps-lacking-for-rows", 2);
}

/* --- seats --------------------------------------------------------------- */

static void
test_seats (void)
{
  g_autoptr (FpProject) project = church ();

  add_pews (&project, "pews", 0, -2000, 10);
  g_assert_cmpuint (taking_count (project, "seats-share"), ==, 0);
  taking_seats (&project, 100);
  g_assert_cmpfloat_with_epsilon (taking_value (project, "seats-share"), 0.8, 1e-9); /* 10 × floor (4000 / 457) */
  assert_short (project, "seating-and-ways-out:seats-wanted");
  taking_seats (&project, 80);
  assert_within (project, "seating-and-ways-out:seats-wanted");

  assert_measure (project, "row-spacing", 900);
  assert_measure (project, "row-clear", 350);
  assert_measure (project, "seat-width", 457);
  assert_measure (project, "row-seats", 8);
}

/* By arithmetic: a pitch of 36 in with pews 24 in deep leaves 12 in, the least that New York City Building Code 1029.8.1
 * has, as reported. */
static void
test_row_clear (void)
{
  g_autoptr (FpProject) project = church ();

  add_pews (&project, "pews", 0, -2000, 10);
  church_param (&project, "pews", "spacing", 914.4);
  church_param (&project, "pews", "depth", 609.6);
  assert_measure (project, "row-clear", 304.8);
  assert_within (project, "seating-and-ways-out:row-clear");
  church_param (&project, "pews", "depth", 620);
  assert_short (project, "seating-and-ways-out:row-clear");
}

static void
test_farthest (void)
{
  g_autoptr (FpProject) project = church ();
  g_autoptr (GArray) values = NULL;
  guint n;

  add_pews (&project, "pews", 0, -2000, 10);
  {
    g_autoptr (FpScene) scene = fp_scene_new (project, 0);
    g_autoptr (FpPeople) people = fp_people_new (scene);
    const FpPersonPlace *place = fp_people_places (people, &n);
    double farthest = 0;

    for (guint i = 0; i < n; i++)
      farthest = MAX (farthest, hypot (place[i].at.x, place[i].at.y - 8000));
    assert_measure (project, "farthest-place", farthest);
  }
  values = taking_values (project, "farthest-place");
  g_assert_true (strstr (g_array_index (values, FpMeasured, 0).detail, "row 10") != NULL);
}

/* --- sight --------------------------------------------------------------- */

/* A table lower than the eyes of those who sit. */
static void
lower_altar (FpProject **project)
{
  church_param (project, "sanctuary", "level", 0);
  church_param (project, "steps", "count", 1);
  church_param (project, "steps", "riser", 50);
  church_param (project, "altar", "height", 800);
}

/* One man alone sees all of everything that is not behind something. */
static void
test_seen_by_one (void)
{
  g_autoptr (FpProject) project = church ();

  taking_brief (&project, FP_BOOKS_NEWER, FP_FACING_PEOPLE, FP_CELEBRATION_SUNDAY);
  lower_altar (&project);
  add_pews (&project, "pews", 0, -2000, 1);
  church_param (&project, "pews", "length", 457);
  taking_add (&project, "ambo", "ambo", NULL, -4000, 2000, NULL, 0);
  taking_add (&project, "chair", "chair", NULL, 4000, 5000, NULL, 0);
  assert_measure (project, "mensa-seen", 1);
  assert_measure (project, "mensa-mean", 1);
  assert_measure (project, "ambo-seen", 1);
  assert_measure (project, "chair-seen", 1);
  assert_measure (project, "host-unseen", 0);
  assert_measure (project, "hidden-by-ambo", 0);
  g_assert_cmpuint (taking_count (project, "tabernacle-seen"), ==, 0);
}

/* A pier of 500 about 3 m before him takes some 1.7 m out of the altar's 2.4 m, 10 m away: a little is still seen. */
static void
test_seen_in_part (void)
{
  g_autoptr (FpProject) project = church ();
  g_autoptr (GArray) values = NULL;

  lower_altar (&project);
  add_pews (&project, "pews", 0, -2000, 1);
  church_param (&project, "pews", "length", 457);
  taking_survey (&project, "pier", "pier", 0, 700, "width", 500);
  assert_measure (project, "mensa-seen", 0);
  g_assert_cmpfloat (taking_value (project, "mensa-mean"), >, 0);
  g_assert_cmpfloat (taking_value (project, "mensa-mean"), <, 0.5);
  values = taking_values (project, "mensa-seen");
  g_assert_cmpstr (g_array_index (values, FpMeasured, 0).text, ==, "0 of 1 place see half of it or more, sitting");
  g_assert_cmpstr (g_array_index (values, FpMeasured, 0).detail, ==, "Pews");
}

/* An ambo close before him hides it. */
static void
test_hidden_by_ambo (void)
{
  g_autoptr (FpProject) project = church ();

  lower_altar (&project);
  add_pews (&project, "pews", 0, -2000, 1);
  church_param (&project, "pews", "length", 457);
  taking_add (&project, "ambo", "ambo", NULL, 0, -1000, "width", 1800);
  church_param (&project, "ambo", "height", 1500);
  assert_measure (project, "mensa-seen", 0);
  assert_measure (project, "hidden-by-ambo", 1);
}

/* GIRM 307: candlesticks that stand like a fence close before him hide it; one does not. */
static void
test_hidden_by_candles (void)
{
  g_autoptr (FpProject) project = church ();

  taking_brief (&project, FP_BOOKS_NEWER, FP_FACING_PEOPLE, FP_CELEBRATION_SUNDAY);
  lower_altar (&project);
  add_pews (&project, "pews", 0, -2000, 1);
  church_param (&project, "pews", "length", 457);
  g_assert_cmpuint (taking_count (project, "hidden-by-candles"), ==, 0);
  for (int i = -5; i <= 5; i++)
    {
      g_autofree char *id = g_strdup_printf ("stick-%d", i + 5);

      taking_add (&project, "candlesticks", id, NULL, i * 40, -1200, "count", 1);
      church_param (&project, id, "height", 1600);
      if (i == -5)
        assert_measure (project, "hidden-by-candles", 0);
    }
  assert_measure (project, "mensa-seen", 0);
  assert_measure (project, "hidden-by-candles", 1);
}

/* On a level floor C = -R T / (D + T), from Shepherd's formula (University of Bath, 2012) with N = 0: below 0
 * for what lies below the eye, rising row by row.  The rows are 900 apart, of one place each, and look at the front edge
 * of a mensa of 750, whose top is 50 + 800 high. */
static void
test_c_values (void)
{
  g_autoptr (FpProject) project = church ();
  g_autoptr (FpScene) scene = NULL;
  g_autoptr (FpPeople) people = NULL;
  g_autoptr (GArray) values = NULL;
  FpVec3 eye;
  double before = -G_MAXDOUBLE;

  lower_altar (&project);
  add_pews (&project, "pews", 0, -2000, 5);
  church_param (&project, "pews", "length", 457);
  scene = fp_scene_new (project, 0);
  people = fp_people_new (scene);
  eye = fp_people_eye (people, 0, FP_POSTURE_SITTING);
  values = taking_values (project, "row-c");
  g_assert_cmpuint (values->len, ==, 4);
  for (guint i = 0; i < values->len; i++)
    {
      const double c = g_array_index (values, FpMeasured, i).value, d = 8000 - 375 - eye.y + 900 * i;

      g_assert_cmpfloat_with_epsilon (c, -(eye.z - 850) * 900 / (d + 900), 1e-6);
      g_assert_cmpfloat (c, <, 0);
      g_assert_cmpfloat (c, >, before);
      before = c;
    }
  assert_short (project, "sight:sight-over-heads");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/levels/below", test_levels);
  g_test_add_func ("/levels/falling", test_falling_floor);
  g_test_add_func ("/levels/level", test_level_with_altar);
  g_test_add_func ("/levels/gallery", test_gallery);
  g_test_add_func ("/levels/rows-and-steps", test_rows_and_steps);
  g_test_add_func ("/levels/rows-of-blocks", test_rows_of_blocks);
  g_test_add_func ("/people/seats", test_seats);
  g_test_add_func ("/people/row-clear", test_row_clear);
  g_test_add_func ("/people/farthest", test_farthest);
  g_test_add_func ("/sight/one", test_seen_by_one);
  g_test_add_func ("/sight/part", test_seen_in_part);
  g_test_add_func ("/sight/hidden-by-ambo", test_hidden_by_ambo);
  g_test_add_func ("/sight/hidden-by-candles", test_hidden_by_candles);
  g_test_add_func ("/sight/c-values", test_c_values);
  return g_test_run ();
}
