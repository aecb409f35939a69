/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The people below the altar: levels, margins and areas worked out by hand. */
#include "church.h"
#include "footpace/levels.h"

#include <math.h>

#define NAVE ((FpBox) { -8000, -20000, 8000, 0 })

static void
near_to (double found, double expected)
{
  g_assert_cmpfloat_with_epsilon (found, expected, 1e-6 * MAX (1, fabs (expected)));
}

/* Three steps of 150 on a sanctuary at @sanctuary. */
static FpProject *
altar_on_steps (double sanctuary)
{
  FpProject *project = church_new (FP_FACING_EAST);
  const ChurchThing steps = { "footpace", "steps", NULL, { 0, 0, 0 }, NULL, 0, { { "riser", 150 }, { NULL, 0 } } };
  const ChurchThing altar = { "altar", "altar", "steps", { 0, 5000, 0 }, NULL, 0, { { NULL, 0 } } };
  church_floor (&project, "sanctuary", (FpBox) { -6000, 0, 6000, 9000 }, sanctuary, 1, 0, 0);
  church_add (&project, &steps);
  church_add (&project, &altar);
  return project;
}

static void
add_pews (FpProject **project, const char *id, const char *on, double y, double rows, double rise)
{
  const ChurchThing pews = {
    "pews", id, on, { 0, y, 0 }, NULL, 0, { { "rows", rows }, { "rise", rise }, { NULL, 0 } },
  };
  church_survey (project, &pews);
}

static FpLevels
levels_of (FpProject *project)
{
  g_autoptr (FpScene) scene = fp_scene_new (project, 0);
  g_autoptr (FpPeople) people = fp_people_new (scene);
  return fp_levels (people);
}

static void
test_flat (void)
{
  g_autoptr (FpProject) project = altar_on_steps (300);
  church_floor (&project, "nave", NAVE, 0, 0, 0, 0);
  add_pews (&project, "pews", NULL, -2000, 10, 0);
  FpLevels levels = levels_of (project);

  g_assert_true (levels.has_altar && levels.has_people);
  near_to (levels.sanctuary, 300);
  near_to (levels.footpace, 300 + 3 * 150);
  near_to (levels.highest, 0);
  near_to (levels.margin, 750);
  g_assert_cmpuint (levels.places, ==, 10 * 8);
  g_assert_cmpuint (levels.not_below, ==, 0);
  g_assert_cmpuint (levels.not_below_sanctuary, ==, 0);
  near_to (levels.area, 16000.0 * 20000);
  near_to (levels.area_not_below, 0);
}

/* An old altar on five steps at the wall, a new one on the floor of the sanctuary before it: facing the people, it is
 * the new one below which they must stand, and a place at 350 is not. */
static void
test_old_altar_behind (void)
{
  static const FpFacing facing[] = { FP_FACING_EAST, FP_FACING_PEOPLE };
  for (guint i = 0; i < G_N_ELEMENTS (facing); i++)
    {
      g_autoptr (FpProject) project = church_new (facing[i]);
      const ChurchThing steps = {
        "footpace", "steps", NULL, { 0, 0, 0 }, NULL, 0, { { "riser", 150 }, { "count", 5 }, { NULL, 0 } },
      };
      const ChurchThing old = { "altar", "old", "steps", { 0, 8000, 0 }, NULL, 0, { { "setting", 1 }, { NULL, 0 } } };
      const ChurchThing new = { "altar", "new", NULL, { 0, 2000, 0 }, NULL, 0, { { NULL, 0 } } };
      church_floor (&project, "nave", NAVE, 350, 0, 0, 0);
      church_floor (&project, "sanctuary", (FpBox) { -6000, 0, 6000, 9000 }, 300, 1, 0, 0);
      church_survey (&project, &steps);
      church_survey (&project, &old);
      church_add (&project, &new);
      add_pews (&project, "pews", NULL, -2000, 5, 0);
      FpLevels levels = levels_of (project);
      near_to (levels.sanctuary, 300);
      near_to (levels.footpace, i == 0 ? 300 + 5 * 150 : 300);
      near_to (levels.margin, i == 0 ? 700 : -50);
      g_assert_cmpuint (levels.not_below, ==, i == 0 ? 0 : 5 * 8);
    }
}

/* An altar on the bare nave floor: nobody is below it. */
static void
test_level_with_the_altar (void)
{
  g_autoptr (FpProject) project = church_new (FP_FACING_EAST);
  const ChurchThing altar = { "altar", "altar", NULL, { 0, -1000, 0 }, NULL, 0, { { NULL, 0 } } };
  church_floor (&project, "nave", NAVE, 0, 0, 0, 0);
  church_add (&project, &altar);
  add_pews (&project, "pews", NULL, -4000, 5, 0);
  FpLevels levels = levels_of (project);
  near_to (levels.margin, 0);
  g_assert_cmpuint (levels.not_below, ==, 5 * 8);
  g_assert_cmpuint (levels.not_below_sanctuary, ==, 0);
  near_to (levels.area_not_below, levels.area);
}

/* Rows rise 60 mm each: row k stands at 60 (k - 1); the footpace lies at 450, so rows 9 (480) and 10 (540) are not
 * below it, and row 8 (420) is. */
static void
test_raked_rows (void)
{
  g_autoptr (FpProject) project = altar_on_steps (0);
  church_floor (&project, "nave", NAVE, 0, 0, 0, 0);
  add_pews (&project, "pews", NULL, -2000, 10, 60);
  FpLevels levels = levels_of (project);
  near_to (levels.footpace, 450);
  near_to (levels.highest, 540);
  near_to (levels.margin, -90);
  near_to (levels.worst_at.z, 540);
  g_assert_cmpuint (levels.not_below, ==, 2 * 8);
  g_assert_cmpuint (levels.not_below_sanctuary, ==, 9 * 8);
  near_to (levels.area_not_below, 0);

  FpPersonPlace eighth = { .at = { 0, 0, 420 } }, ninth = { .at = { 0, 0, 480 } };
  g_assert_true (fp_levels_place_below (&levels, &eighth));
  g_assert_false (fp_levels_place_below (&levels, &ninth));
}

/* A floor that falls 1 in 20 towards the altar, 0 at y = 0, reaches 450 at y = -9000: beyond that lie
 * 16 m x 11 m of it. */
static void
test_falling_floor (void)
{
  g_autoptr (FpProject) project = altar_on_steps (0);
  church_floor (&project, "nave", NAVE, 0, 0, 0.05, 0);
  FpLevels levels = levels_of (project);
  g_assert_cmpuint (levels.places, ==, 0);
  g_assert_true (levels.has_people);
  near_to (levels.highest, 1000);
  near_to (levels.margin, 450 - 1000);
  near_to (levels.worst_at.y, -20000);
  near_to (levels.area, 16000.0 * 20000);
  near_to (levels.area_not_below, 16000.0 * 11000);
}

/* Falling at 45 degrees, the line at the footpace's level cuts a triangle off one corner. */
static void
test_falling_aslant (void)
{
  g_autoptr (FpProject) project = altar_on_steps (0);
  const double fall = 0.04, direction = 45, slope = fall * sqrt (0.5);
  church_floor (&project, "nave", NAVE, 0, 0, fall, direction);
  FpLevels levels = levels_of (project);
  /* It descends towards (-1, 1); the corner (8000, -20000) lies highest, at slope * 28000. */
  const double highest = slope * 28000, leg = (highest - 450) / slope;
  near_to (levels.highest, highest);
  near_to (levels.highest_at.x, 8000);
  g_assert_cmpfloat (leg, <, 16000);
  near_to (levels.area_not_below, leg * leg / 2);
}

/* A floor in the shape of a U, cut across both its legs. */
static void
test_two_pieces (void)
{
  g_autoptr (FpProject) project = altar_on_steps (0);
  const FpPoint u[] = { { -8000, -20000 }, { -4000, -20000 }, { -4000, -5000 }, { 4000, -5000 },
                        { 4000, -20000 },  { 8000, -20000 },  { 8000, 0 },      { -8000, 0 } };
  const ChurchThing floor = { "floor", "u", NULL, { 0, 0, 0 }, u, 8, { { "fall", 0.05 }, { NULL, 0 } } };
  church_survey (&project, &floor);
  FpLevels levels = levels_of (project);
  near_to (levels.area_not_below, 2 * 4000.0 * 11000);
}

/* A floor measured from a point of its own, turned. */
static void
test_turned_floor (void)
{
  g_autoptr (FpProject) project = altar_on_steps (0);
  const FpPoint box[] = { { -5000, 0 }, { 5000, 0 }, { 5000, 10000 }, { -5000, 10000 } };
  const ChurchThing floor = {
    "floor", "wing", NULL, { -8000, -3000, 90 }, box, 4,
    { { "level", 100 }, { "fall", 0.08 }, { "direction", 180 }, { NULL, 0 } },
  };
  church_survey (&project, &floor);
  FpLevels levels = levels_of (project);
  /* Its own +y, the way it rises, has turned towards -x: 100 + 80 a metre; 450 after 4375 of its 10 000 mm. */
  near_to (levels.highest, 900);
  near_to (levels.highest_at.x, -18000);
  near_to (levels.area_not_below, 10000.0 * (10000 - 4375));
}

static void
test_gallery_apart (void)
{
  g_autoptr (FpProject) project = altar_on_steps (0);
  const FpPoint loft[] = { { -5000, -20000 }, { 5000, -20000 }, { 5000, -16000 }, { -5000, -16000 } };
  const ChurchThing gallery = { "gallery", "loft", NULL, { 0, 0, 0 }, loft, 4, { { "level", 3200 }, { NULL, 0 } } };
  church_floor (&project, "nave", NAVE, 0, 0, 0, 0);
  church_survey (&project, &gallery);
  add_pews (&project, "nave-pews", NULL, -2000, 3, 0);
  add_pews (&project, "choir", "loft", -16500, 2, 150);
  FpLevels levels = levels_of (project);
  near_to (levels.highest, 0);
  near_to (levels.margin, 450);
  g_assert_cmpuint (levels.not_below, ==, 0);
  g_assert_cmpuint (levels.places, ==, 24);
  g_assert_cmpuint (levels.gallery_places, ==, 16);
  near_to (levels.gallery, 3350);
  near_to (levels.area, 16000.0 * 20000);
}

static void
test_nothing (void)
{
  g_autoptr (FpProject) project = church_new (FP_FACING_EAST);
  FpLevels levels = levels_of (project);
  g_assert_false (levels.has_altar);
  g_assert_false (levels.has_people);
  g_assert_cmpuint (levels.places + levels.not_below + levels.gallery_places, ==, 0);
  near_to (levels.margin, 0);

  church_floor (&project, "nave", NAVE, 200, 0, 0, 0);
  levels = levels_of (project);
  g_assert_true (levels.has_people);
  near_to (levels.highest, 200);
  near_to (levels.margin, 0);
  near_to (levels.area_not_below, 0);
}

/* --- row by row, and how high the altar must stand --------------------------- */

static FpRowLevel
row_level (const GArray *rows, guint i)
{
  g_assert_cmpuint (i, <, rows->len);
  return g_array_index (rows, FpRowLevel, i);
}

/* Ten rows that rise 90 each, the first on the floor at @floor: row r stands at floor + 90 (r - 1). */
static GArray *
rows_of_ten (FpProject **project, double floor, FpLevels *levels)
{
  g_autoptr (FpScene) scene = NULL;
  g_autoptr (FpPeople) people = NULL;

  church_floor (project, "nave", NAVE, floor, 0, 0, 0);
  add_pews (project, "pews", NULL, -2000, 10, 90);
  scene = fp_scene_new (*project, 0);
  people = fp_people_new (scene);
  *levels = fp_levels (people);
  return fp_row_levels (people, levels);
}

static void
test_rows (void)
{
  g_autoptr (FpProject) project = altar_on_steps (300);
  FpLevels levels;
  g_autoptr (GArray) rows = rows_of_ten (&project, 0, &levels);
  const FpRowLevel *tightest = fp_row_levels_tightest (rows);

  g_assert_cmpuint (rows->len, ==, 10);
  for (guint i = 0; i < rows->len; i++)
    {
      const FpRowLevel row = row_level (rows, i);

      g_assert_cmpuint (row.row, ==, i + 1);
      g_assert_cmpuint (row.places, ==, 8);
      near_to (row.at.z, 90.0 * i);
      near_to (row.margin, 750 - 90.0 * i);
      g_assert_cmpuint (row.not_below, ==, i >= 9 ? 8 : 0); /* 750 / 90 = 8.3 */
      near_to (row.eye - row.at.z, row_level (rows, 0).eye);
    }
  g_assert_cmpuint (tightest->row, ==, 10);
  near_to (tightest->margin, 750 - 810);
  /* Raised to what is wanted, all of them are below by as much as was asked. */
  near_to (fp_levels_footpace_wanted (&levels, 1), 811);
  g_assert_cmpuint (levels.not_below, ==, 8);
  church_param (&project, "steps", "riser", (fp_levels_footpace_wanted (&levels, 1) - 300) / 3);
  levels = levels_of (project);
  near_to (levels.margin, 1);
  g_assert_cmpuint (levels.not_below, ==, 0);
}

/* Of rows on one level the one nearest to the altar is told; those of a gallery are not. */
static void
test_rows_level (void)
{
  g_autoptr (FpProject) project = altar_on_steps (0);
  g_autoptr (GArray) none = g_array_new (FALSE, FALSE, sizeof (FpRowLevel));
  FpLevels levels;
  g_autoptr (GArray) rows = NULL;

  add_pews (&project, "back", NULL, -15000, 2, 0);
  rows = rows_of_ten (&project, 0, &levels);
  g_assert_cmpuint (rows->len, ==, 12);
  church_param (&project, "pews", "rise", 0);
  {
    g_autoptr (FpScene) scene = fp_scene_new (project, 0);
    g_autoptr (FpPeople) people = fp_people_new (scene);
    const FpLevels flat = fp_levels (people);
    g_autoptr (GArray) level = fp_row_levels (people, &flat);

    g_assert_cmpuint (fp_row_levels_tightest (level)->row, ==, 1);
    g_assert_cmpfloat (fp_row_levels_tightest (level)->at.y, >, -15000);
  }
  g_assert_null (fp_row_levels_tightest (none));
}

static void
ground_is (const FpProject *project, const FpGroundPart *expected, guint n)
{
  g_autoptr (FpScene) scene = fp_scene_new (project, 0);
  g_autoptr (FpPeople) people = fp_people_new (scene);
  const FpLevels levels = fp_levels (people);
  g_autoptr (GArray) rows = fp_row_levels (people, &levels);
  g_autoptr (GArray) ground = fp_ground_along_nave (scene, rows);

  g_assert_cmpuint (ground->len, ==, n);
  for (guint i = 0; i < n; i++)
    {
      const FpGroundPart *one = &g_array_index (ground, FpGroundPart, i);

      near_to (one->y0, expected[i].y0);
      near_to (one->z0, expected[i].z0);
      near_to (one->y1, expected[i].y1);
      near_to (one->z1, expected[i].z1);
      g_assert_cmpint (one->standing, ==, expected[i].standing);
    }
}

/* The altar (900 deep, its middle at 5000) has 1067 before it and nothing behind; treads of 305 lie before that alone,
 * since the steps pass in front and at the ends. */
static void
test_ground_steps (void)
{
  g_autoptr (FpProject) project = altar_on_steps (300);
  const double back = 5000 + 450, front = 5000 - 450 - 1067;
  const FpGroundPart expected[] = {
    { -20000, 0, 0, 0, FP_STANDING_EXISTING },
    { 0, 300, front - 610, 300, FP_STANDING_EXISTING },
    { front - 610, 450, front - 305, 450, FP_STANDING_PROPOSED },
    { front - 305, 600, front, 600, FP_STANDING_PROPOSED },
    { front, 750, back, 750, FP_STANDING_PROPOSED },
    { back, 300, 9000, 300, FP_STANDING_EXISTING },
  };

  church_param (&project, "altar", "depth", 900);
  church_floor (&project, "nave", NAVE, 0, 0, 0, 0);
  ground_is (project, expected, G_N_ELEMENTS (expected));
}

/* A nave that falls 1 in 50 to the east meets a level aisle at 100 where it is 100 high, 5 m from its end. */
static void
test_ground_crossing (void)
{
  g_autoptr (FpProject) project = church_new (FP_FACING_EAST);
  const FpGroundPart expected[] = {
    { -20000, 400, -5000, 100, FP_STANDING_EXISTING }, { -5000, 100, 0, 100, FP_STANDING_EXISTING },
  };

  church_floor (&project, "nave", NAVE, 0, 0, 0.02, 0);
  church_floor (&project, "aisle", (FpBox) { 8000, -20000, 11000, 0 }, 100, 0, 0, 0);
  ground_is (project, expected, G_N_ELEMENTS (expected));
}

/* Falling at 45 degrees, the floor is highest on its east edge at x = 8000, where z = slope (x - y): there all along; and
 * a square that stands on its corner shows its two upper edges. */
static void
test_ground_aslant (void)
{
  g_autoptr (FpProject) project = church_new (FP_FACING_EAST), turned = church_new (FP_FACING_EAST);
  const double slope = 0.04 * sqrt (0.5);
  const FpGroundPart expected[] = { { -20000, slope * 28000, 0, slope * 8000, FP_STANDING_EXISTING } };
  const FpPoint diamond[] = { { 0, -10000 }, { 5000, -5000 }, { 0, 0 }, { -5000, -5000 } };
  const ChurchThing floor = {
    "floor", "nave", NULL, { 0, 0, 0 }, diamond, 4, { { "fall", 0.02 }, { "direction", 90 }, { NULL, 0 } },
  };
  const FpGroundPart upper[] = { { -10000, 0, -5000, 100, FP_STANDING_EXISTING }, { -5000, 100, 0, 0, FP_STANDING_EXISTING } };

  church_floor (&project, "nave", NAVE, 0, 0, 0.04, 45);
  ground_is (project, expected, G_N_ELEMENTS (expected));
  church_survey (&turned, &floor);
  ground_is (turned, upper, G_N_ELEMENTS (upper));
}

/* n = ceil (rise / high), each of rise / n or of the least that is allowed. */
static void
test_flight (void)
{
  static const struct { double rise, low, high; guint steps; double riser; } cases[] = {
    { 450, 100, 150, 3, 150 },   { 451, 100, 150, 4, 112.75 }, { 60, 100, 180, 1, 100 },
    { 811, 101.6, 177.8, 5, 162.2 }, { 0, 100, 150, 0, 0 },    { -20, 100, 150, 0, 0 },
    /* One step is too little and two are more than was asked: both of the least. */
    { 160, 100, 150, 2, 100 },   { 300, 200, 150, 0, 0 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      const FpFlight flight = fp_flight_for (cases[i].rise, (FpRisers) { cases[i].low, cases[i].high });

      g_assert_cmpuint (flight.steps, ==, cases[i].steps);
      near_to (flight.riser, cases[i].riser);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/levels/flat", test_flat);
  g_test_add_func ("/levels/level-with-the-altar", test_level_with_the_altar);
  g_test_add_func ("/levels/old-altar-behind", test_old_altar_behind);
  g_test_add_func ("/levels/raked-rows", test_raked_rows);
  g_test_add_func ("/levels/falling-floor", test_falling_floor);
  g_test_add_func ("/levels/falling-aslant", test_falling_aslant);
  g_test_add_func ("/levels/two-pieces", test_two_pieces);
  g_test_add_func ("/levels/turned-floor", test_turned_floor);
  g_test_add_func ("/levels/gallery-apart", test_gallery_apart);
  g_test_add_func ("/levels/rows", test_rows);
  g_test_add_func ("/levels/rows-on-one-level", test_rows_level);
  g_test_add_func ("/levels/ground-with-steps", test_ground_steps);
  g_test_add_func ("/levels/ground-that-crosses", test_ground_crossing);
  g_test_add_func ("/levels/ground-aslant", test_ground_aslant);
  g_test_add_func ("/levels/flight", test_flight);
  g_test_add_func ("/levels/nothing", test_nothing);
  return g_test_run ();
}
