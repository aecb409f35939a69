/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Measures of the altar, its steps and the rail against closed-form values of small churches. */
#include "taking.h"

#include <math.h>

#define ALL_OLDER (FP_CELEBRATION_LOW | FP_CELEBRATION_SOLEMN)

static FpProject *
church (void)
{
  return taking_church (FP_BOOKS_OLDER, FP_FACING_EAST, ALL_OLDER);
}

/* --- altar --------------------------------------------------------------- */

static void
test_mensa (void)
{
  g_autoptr (FpProject) project = church ();

  assert_measure (project, "mensa-length", 2400);
  assert_measure (project, "mensa-depth", 750);
  assert_measure (project, "mensa-height", 990);
  assert_measure (project, "mensa-overhang", 150);
  assert_measure (project, "altar-freestanding", 1);
  assert_measure (project, "altars", 1);
  assert_measure (project, "mensa-clear-depth", 750);
}

/* Against the wall, or too near it, and where it has been moved away from it, whatever it was made for. */
static void
test_apart_from_the_wall (void)
{
  static const struct { double wall; gboolean apart; } rows[] = { { 0, FALSE }, { 499, FALSE }, { 500, TRUE }, { 1460, TRUE } };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    for (int setting = 0; setting < 2; setting++)
      {
        g_autoptr (FpProject) project = church ();
        g_autoptr (FpScene) scene = fp_scene_new (project, 0);
        const FpPlaced *altar = &fp_scene_placed (scene, NULL)[fp_scene_find (scene, "altar")];
        const double back = altar->plan.y1 + rows[i].wall;

        taking_wall (&project, "east", -5000, back, 5000, back);
        church_param (&project, "altar", "setting", setting);
        assert_measure (project, "altar-freestanding", rows[i].apart);
      }
}

static void
test_clear_depth (void)
{
  g_autoptr (FpProject) project = church ();

  /* A gradine 200 deep at the back of 750 leaves 550. */
  taking_add (&project, "gradine", "gradine", "altar", 0, 0, NULL, 0);
  assert_measure (project, "mensa-clear-depth", 550);
  g_assert_cmpuint (taking_count (project, "mensa-before-tabernacle"), ==, 0);

  /* A tabernacle 450 deep at the back of the gradine reaches 250 before it, and leaves 300. */
  taking_add (&project, "tabernacle", "tabernacle", "gradine", 0, 0, NULL, 0);
  assert_measure (project, "mensa-clear-depth", 300);
  assert_measure (project, "mensa-before-tabernacle", 300);
}

/* Scott's rule of a third, as reported in American Churches II (1915): a chancel of 24 ft (7315) asks for 8 ft (2438). */
static void
test_share_of_sanctuary (void)
{
  g_autoptr (FpProject) project = church ();

  g_assert_cmpuint (taking_count (project, "mensa-share-of-sanctuary"), ==, 0);
  g_assert_cmpstr (fp_found_id (taking_found (project, "older-form:altar-for-sanctuary")), ==, "nothing");

  taking_wall (&project, "gospel-wall", -3657.6, 0, -3657.6, 10000);
  taking_wall (&project, "epistle-wall", 3657.6, 10000, 3657.6, 0);
  church_param (&project, "altar", "length", 2438.4);
  g_assert_cmpfloat_with_epsilon (taking_value (project, "mensa-share-of-sanctuary"), 1.0 / 3, 1e-9);
  assert_measure (project, "sanctuary-width", 7315.2);
  assert_within (project, "older-form:altar-for-sanctuary");
  church_param (&project, "altar", "length", 2430);
  assert_short (project, "older-form:altar-for-sanctuary");
}

/* H. Hübsch, Bauwerke (1838), p. 20: 17 Baden feet of 300 mm for a high altar. */
static void
test_sanctuary_width (void)
{
  g_autoptr (FpProject) project = church ();

  g_assert_cmpuint (taking_count (project, "sanctuary-width"), ==, 0);
  taking_wall (&project, "gospel-wall", -2550, 0, -2550, 10000);
  taking_wall (&project, "epistle-wall", 2550, 10000, 2550, 0);
  assert_within (project, "older-form:sanctuary-width");
  taking_survey (&project, "pier", "pier", 2450, 8000, "width", 400);
  assert_measure (project, "sanctuary-width", 2550 + 2250);
  assert_short (project, "older-form:sanctuary-width");
}

/* A. J. Schulte (1907) and A. Fortescue (1918): in front and at both ends. */
static void
test_step_sides (void)
{
  static const double sides[] = { 1, 3, 4 };
  g_autoptr (FpProject) project = church ();

  for (guint i = 0; i < G_N_ELEMENTS (sides); i++)
    {
      if (i == 2)
        church_param (&project, "steps", "behind", 1000);
      church_param (&project, "steps", "sides", i);
      assert_measure (project, "step-sides", sides[i]);
      g_assert_cmpstr (fp_found_id (taking_found (project, "older-form:steps-sides")), ==, i == 0 ? "short" : "within");
    }
}

static void
test_room_behind (void)
{
  g_autoptr (FpProject) project = church ();

  g_assert_cmpuint (taking_count (project, "room-behind-altar"), ==, 0);
  taking_wall (&project, "apse", -6000, 9500, 6000, 9500);
  assert_measure (project, "room-behind-altar", 9500 - 8375);

  /* What stands on the altar is not in the way, a reredos on the floor is: 200 deep about y = 9200. */
  taking_altar_group (&project, 6);
  assert_measure (project, "room-behind-altar", 9500 - 8375);
  taking_add (&project, "reredos", "reredos", NULL, 0, 9200, NULL, 0);
  assert_measure (project, "room-behind-altar", 9100 - 8375);

  church_param (&project, "altar", "setting", 1);
  g_assert_cmpuint (taking_count (project, "room-behind-altar"), ==, 0);
}

static double
front_of (const FpProject *project, const char *id)
{
  g_autoptr (FpScene) scene = fp_scene_new (project, 0);

  return church_placed (scene, id)->plan.y0;
}

/* A platform of 150 is not stepped over in walking round, nor another footpace; a flight between floors is walked on.
 * The altar's back is at 8375. */
static void
test_room_behind_low_things (void)
{
  g_autoptr (FpProject) project = church (), other = NULL;

  taking_wall (&project, "apse", -6000, 14000, 6000, 14000);
  church_floor (&project, "sanctuary", (FpBox) { -6000, 0, 6000, 14000 }, 300, 1, 0, 0);
  other = fp_project_ref (project);
  taking_add (&project, "chair", "chair", NULL, 0, 10500, NULL, 0);
  g_assert_cmpfloat (front_of (project, "chair"), <, 10500 - 325 - 100); /* the platform's edge, before the seat's */
  assert_measure (project, "room-behind-altar", front_of (project, "chair") - 8375);
  church_param (&project, "chair", "step", 0);
  assert_measure (project, "room-behind-altar", 10500 - 325 - 8375);

  taking_add (&other, "footpace", "second", NULL, 0, 12500, "count", 1);
  assert_measure (other, "room-behind-altar", front_of (other, "second") - 8375);
  taking_survey (&other, "steps", "flight", 0, 8800, "count", 1);
  assert_measure (other, "room-behind-altar", front_of (other, "second") - 8375);
}

/* A slender thing between the lines along which one might look; one beside the altar's end is not behind it. */
static void
test_room_behind_slender_things (void)
{
  g_autoptr (FpProject) project = church ();
  double front;

  taking_wall (&project, "apse", -6000, 9500, 6000, 9500);
  taking_add (&project, "candlesticks", "light", NULL, 870, 9000, "count", 1);
  front = front_of (project, "light");
  g_assert_cmpfloat (taking_value (project, "room-behind-altar"), >=, front - 8375); /* its foot is round */
  g_assert_cmpfloat (taking_value (project, "room-behind-altar"), <, 9000 - 8375);
  taking_add (&project, "candlesticks", "light", NULL, 1300, 9000, "count", 1);
  assert_measure (project, "room-behind-altar", 9500 - 8375);
}

/* Square to an altar that is turned: from its back, 375 from its middle, to a wall 2000 from there. */
static void
test_room_behind_turned (void)
{
  const double turn = 30 * G_PI / 180, dx = -sin (turn), dy = cos (turn);
  const ChurchThing altar = { "altar", "altar", NULL, { 0, 5000, 30 }, NULL, 0, { { NULL, 0 } } };
  g_autoptr (FpProject) project = church_new (FP_FACING_EAST);

  church_floor (&project, "sanctuary", (FpBox) { -9000, 0, 9000, 12000 }, 300, 1, 0, 0);
  church_add (&project, &altar);
  taking_wall (&project, "wall", 2000 * dx - 4000 * dy, 5000 + 2000 * dy + 4000 * dx, 2000 * dx + 4000 * dy,
               5000 + 2000 * dy - 4000 * dx);
  assert_measure (project, "room-behind-altar", 2000 - 375);
}

/* By arithmetic: a solid altar of 1.50 × 0.75 × 0.95 m at 28 kN/m3 (slate in EN 1991-1-1, Table A.5) is 29.925 kN on 1.125 m2,
 * 26.6 kN/m2; on a floor that bears 5 kN/m2 that is 5.32 times what it bears.  Without blocks it has a core that is lighter. */
static void
test_pressure (void)
{
  g_autoptr (FpProject) project = church ();
  FpWorks works = fp_works_usual;

  works.stone = FP_STONE_SLATE;
  works.solid = TRUE;
  works.joint = 0;
  church_param (&project, "altar", "length", 1500);
  church_param (&project, "altar", "height", 950);
  church_param (&project, "altar", "overhang", 0);
  taking_works (&project, &works);
  g_assert_cmpfloat_with_epsilon (taking_value (project, "altar-pressure"), 26.6, 1e-9);
  assert_short (project, "floor-and-weight:altar-weight");
  works.bears = 5;
  taking_works (&project, &works);
  g_assert_cmpfloat_with_epsilon (taking_value (project, "altar-on-rating"), 26.6 / 5, 1e-9);
  assert_short (project, "floor-and-weight:altar-weight-rated");
  works.solid = FALSE;
  taking_works (&project, &works);
  g_assert_cmpfloat (taking_value (project, "altar-on-rating"), <, 26.6 / 5 - 0.1);
}

/* --- steps --------------------------------------------------------------- */

static void
test_steps (void)
{
  g_autoptr (FpProject) project = church ();

  assert_measure (project, "altar-steps", 3);
  assert_measure (project, "riser", 152);
  assert_measure (project, "tread", 305);
  assert_measure (project, "two-risers-and-tread", 609);
  assert_measure (project, "footpace-celebrant", 1067);
  assert_measure (project, "footpace-ends", 305);
  assert_measure (project, "footpace-behind-share", 0);
  assert_measure (project, "floor-riser", 150);
  assert_measure (project, "floor-tread", 300);

  church_param (&project, "steps", "count", 1);
  g_assert_cmpuint (taking_count (project, "tread"), ==, 0);
  g_assert_cmpuint (taking_count (project, "two-risers-and-tread"), ==, 0);

  church_param (&project, "steps", "behind", 1200);
  taking_brief (&project, FP_BOOKS_NEWER, FP_FACING_PEOPLE, FP_CELEBRATION_SUNDAY);
  assert_measure (project, "footpace-celebrant", 1200);
  g_assert_cmpfloat_with_epsilon (taking_value (project, "footpace-behind-share"), 1200.0 / 1067, 1e-9);
}

static void
test_no_footpace (void)
{
  g_autoptr (FpProject) project = church_new (FP_FACING_EAST);

  g_assert_cmpuint (taking_count (project, "altar-steps"), ==, 0);
  taking_add (&project, "altar", "altar", NULL, 0, 0, NULL, 0);
  assert_measure (project, "altar-steps", 0);
  g_assert_cmpuint (taking_count (project, "riser"), ==, 0);
}

/* Twice riser and tread, by arithmetic: (150, 300) 600; (178, 279) 635; (150, 450) 750, which is
 * outside 550 to 700 (Approved Document K, England, 2013, as reported). */
static void
test_stride (void)
{
  static const struct { double riser, tread, stride; gboolean within; } rows[]
    = { { 150, 300, 600, TRUE }, { 178, 279, 635, TRUE }, { 150, 450, 750, FALSE } };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (FpProject) project = church ();

      church_param (&project, "steps", "riser", rows[i].riser);
      church_param (&project, "steps", "tread", rows[i].tread);
      assert_measure (project, "two-risers-and-tread", rows[i].stride);
      g_assert_cmpstr (fp_found_id (taking_found (project, "step-and-fall:stride")), ==,
                       rows[i].within ? "within" : "short");
    }
}

static void
test_spread (void)
{
  g_autoptr (FpProject) project = church ();

  /* 150, 150 between the floors, 152 at the altar. */
  assert_measure (project, "riser-spread", 2);

  /* The floor above was measured at 340: the last riser is 190, and 150 the least. */
  church_param (&project, "sanctuary", "level", 340);
  assert_measure (project, "riser-spread", 40);
  assert_short (project, "step-and-fall:even-risers");
}

static void
test_sanctuary_edge (void)
{
  g_autoptr (FpProject) project = church ();

  /* 8000 - 375 (half the mensa) - 1067 (footpace) - 2 × 305 (treads), from the edge at y = 0. */
  assert_measure (project, "step-to-sanctuary-edge", 5948);
  assert_measure (project, "sanctuary-above-nave", 300);

  church_param (&project, "sanctuary", "level", 0);
  g_assert_cmpuint (taking_count (project, "step-to-sanctuary-edge"), ==, 0);
  assert_measure (project, "sanctuary-above-nave", 0);
  assert_short (project, "levels:sanctuary-raised");
}

/* A floor surveyed in pieces, one 10 mm lower than the other, is walked over: that is no step. */
static void
test_uneven_floor (void)
{
  g_autoptr (FpProject) project = church ();

  church_floor (&project, "sanctuary", (FpBox) { -6000, 3000, 6000, 10000 }, 300, 1, 0, 0);
  church_floor (&project, "forward", (FpBox) { -6000, 0, 6000, 3000 }, 290, 1, 0, 0);
  assert_measure (project, "step-to-sanctuary-edge", 5948);
  assert_measure (project, "sanctuary-above-nave", 290);
}

/* --- rail ---------------------------------------------------------------- */

static void
test_rail (void)
{
  g_autoptr (FpProject) project = church ();

  g_assert_cmpuint (taking_count (project, "rail-height"), ==, 0);
  g_assert_cmpuint (taking_count (project, "gate-clear"), ==, 0);

  /* Its face towards the people 305 behind the edge: its middle, 100 farther. */
  taking_add (&project, "rail", "rail", NULL, 0, 405, NULL, 0);
  assert_measure (project, "rail-height", 762);
  assert_measure (project, "rail-top", 200);
  assert_measure (project, "rail-setback", 305);
  assert_measure (project, "kneeling-width", 600);
  assert_measure (project, "kneeling-places", 8); /* (6000 - 1200) / 2 = 2400 on either side of the gate, 4 × 600 */
  assert_measure (project, "gate-clear", 1200);
  assert_measure (project, "gates", 1);
  assert_measure (project, "gate-off-axis", 0);
  assert_measure (project, "step-to-rail", 5948 - 505);

  church_param (&project, "rail", "returns", 1500);
  assert_measure (project, "rail-setback", 305);
  assert_measure (project, "step-to-rail", 5948 - 505);

  church_param (&project, "rail", "gate", 0);
  assert_measure (project, "gates", 0);
  g_assert_cmpuint (taking_count (project, "gate-clear"), ==, 0);
  g_assert_cmpuint (taking_count (project, "gate-off-axis"), ==, 0);
}

static void
test_rail_without_ledge (void)
{
  g_autoptr (FpProject) project = church ();

  /* Far back on the sanctuary's floor people kneel on that floor: there is no ledge to speak of. */
  taking_add (&project, "rail", "rail", NULL, 0, 3000, NULL, 0);
  g_assert_cmpuint (taking_count (project, "rail-setback"), ==, 0);
  /* In the nave likewise. */
  taking_add (&project, "rail", "rail", NULL, 0, -1000, NULL, 0);
  g_assert_cmpuint (taking_count (project, "rail-setback"), ==, 0);
  assert_measure (project, "step-to-rail", 5948 + 900);
}

static void
test_two_rails (void)
{
  g_autoptr (FpProject) project = church ();

  taking_add (&project, "rail", "gospel-rail", NULL, -2100, 405, "gate", 0);
  taking_add (&project, "rail", "epistle-rail", NULL, 2200, 405, "gate", 0);
  church_param (&project, "gospel-rail", "length", 3000);
  church_param (&project, "epistle-rail", "length", 3000);
  /* From -600 to 700: 1300 clear, its middle 50 towards the Epistle side. */
  assert_measure (project, "gate-clear", 1300);
  assert_measure (project, "gates", 1);
  assert_measure (project, "gate-off-axis", 50);
  g_assert_cmpuint (taking_count (project, "rail-height"), ==, 2);
}

/* A church turned by 90 degrees measures the same. */
static void
test_turned (void)
{
  g_autoptr (FpProject) project = church_new (FP_FACING_EAST);
  const ChurchThing rail = { "rail", "rail", NULL, { -405, 0, 90 }, NULL, 0, { { NULL, 0 } } };
  const ChurchThing foot = { "footpace", "steps", NULL, { -8000, 0, 90 }, NULL, 0, { { NULL, 0 } } };
  const ChurchThing altar = { "altar", "altar", "steps", { -8000, 0, 90 }, NULL, 0, { { NULL, 0 } } };

  church_floor (&project, "nave", (FpBox) { 0, -6000, 20000, 6000 }, 0, 0, 0, 0);
  church_floor (&project, "sanctuary", (FpBox) { -10000, -6000, 0, 6000 }, 300, 1, 0, 0);
  church_add (&project, &foot);
  church_add (&project, &altar);
  church_add (&project, &rail);
  assert_measure (project, "step-to-sanctuary-edge", 5948);
  assert_measure (project, "step-to-rail", 5948 - 505);
  assert_measure (project, "rail-setback", 305);
  assert_measure (project, "gate-off-axis", 0);
}

/* What was removed is not measured. */
static void
test_removed (void)
{
  g_autoptr (FpProject) project = church ();

  taking_survey (&project, "rail", "old-rail", 0, 405, NULL, 0);
  g_assert_cmpuint (taking_count (project, "rail-height"), ==, 1);
  church_fate (&project, "old-rail", FP_FATE_REMOVED, NULL, NULL);
  g_assert_cmpuint (taking_count (project, "rail-height"), ==, 0);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/altar/mensa", test_mensa);
  g_test_add_func ("/altar/apart-from-the-wall", test_apart_from_the_wall);
  g_test_add_func ("/altar/clear-depth", test_clear_depth);
  g_test_add_func ("/altar/share-of-sanctuary", test_share_of_sanctuary);
  g_test_add_func ("/altar/sanctuary-width", test_sanctuary_width);
  g_test_add_func ("/altar/step-sides", test_step_sides);
  g_test_add_func ("/altar/room-behind", test_room_behind);
  g_test_add_func ("/altar/room-behind-low-things", test_room_behind_low_things);
  g_test_add_func ("/altar/room-behind-slender-things", test_room_behind_slender_things);
  g_test_add_func ("/altar/room-behind-turned", test_room_behind_turned);
  g_test_add_func ("/altar/pressure", test_pressure);
  g_test_add_func ("/steps/all", test_steps);
  g_test_add_func ("/steps/no-footpace", test_no_footpace);
  g_test_add_func ("/steps/stride", test_stride);
  g_test_add_func ("/steps/spread", test_spread);
  g_test_add_func ("/steps/sanctuary-edge", test_sanctuary_edge);
  g_test_add_func ("/steps/uneven-floor", test_uneven_floor);
  g_test_add_func ("/rail/all", test_rail);
  g_test_add_func ("/rail/without-ledge", test_rail_without_ledge);
  g_test_add_func ("/rail/two", test_two_rails);
  g_test_add_func ("/rail/turned", test_turned);
  g_test_add_func ("/rail/removed", test_removed);
  return g_test_run ();
}
