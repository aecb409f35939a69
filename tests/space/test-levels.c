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
  g_test_add_func ("/levels/nothing", test_nothing);
  return g_test_run ();
}
