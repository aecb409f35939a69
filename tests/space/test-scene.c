/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Where things stand: levels and places follow from what carries what. */
#include "church.h"

#include <math.h>
#include <time.h>

#define FLOOR_SANCTUARY ((FpBox) { -6000, 0, 6000, 9000 })
#define FLOOR_NAVE      ((FpBox) { -8000, -20000, 8000, 0 })

static const ChurchThing ALTAR = { "altar", "altar", "steps", { 300, 5000, 0 }, NULL, 0, { { NULL, 0 } } };
static const ChurchThing STEPS = { "footpace", "steps", NULL, { 0, 0, 0 }, NULL, 0, { { NULL, 0 } } };
static const ChurchThing GRADINE = { "gradine", "gradine", "altar", { 0, 0, 0 }, NULL, 0, { { NULL, 0 } } };
static const ChurchThing STICKS = { "candlesticks", "sticks", "gradine", { 0, 0, 0 }, NULL, 0, { { NULL, 0 } } };

static void
near_to (double found, double expected)
{
  g_assert_cmpfloat_with_epsilon (found, expected, 1e-6);
}

static FpProject *
sanctuary (void (*put) (FpProject **, const ChurchThing *))
{
  FpProject *project = church_new (FP_FACING_EAST);
  church_floor (&project, "nave", FLOOR_NAVE, 0, 0, 0, 0);
  church_floor (&project, "sanctuary", FLOOR_SANCTUARY, 300, 1, 0, 0);
  put (&project, &STEPS);
  put (&project, &ALTAR);
  put (&project, &GRADINE);
  put (&project, &STICKS);
  return project;
}

/* Catholic Encyclopedia I (1907), "Altar Steps": three steps of about 6 in, the footpace the highest of them. */
static void
test_levels_rise (void)
{
  g_autoptr (FpProject) project = sanctuary (church_add);
  g_autoptr (FpScene) before = fp_scene_new (project, 0);
  const double riser = 152, count = 3;

  near_to (church_placed (before, "steps")->level, 300);
  near_to (church_placed (before, "altar")->level, 300 + count * riser);
  near_to (church_placed (before, "gradine")->level, 300 + count * riser + 990);
  near_to (church_placed (before, "sticks")->level, 300 + count * riser + 990 + 150);

  church_param (&project, "steps", "riser", 170);
  g_autoptr (FpScene) after = fp_scene_new (project, 0);
  static const char *const ABOVE[] = { "altar", "gradine", "sticks" };
  for (guint i = 0; i < G_N_ELEMENTS (ABOVE); i++)
    near_to (church_placed (after, ABOVE[i])->level - church_placed (before, ABOVE[i])->level, 3 * (170 - riser));
  near_to (church_placed (after, "steps")->level, 300);
}

static void
test_floor_under_chain (void)
{
  g_autoptr (FpProject) project = sanctuary (church_add);
  g_autoptr (FpScene) scene = fp_scene_new (project, 0);
  near_to (church_placed (scene, "steps")->floor, 300);
  near_to (church_placed (scene, "altar")->floor, 300 + 3 * 152);
  near_to (church_placed (scene, "sticks")->floor, 300 + 3 * 152);
}

static void
test_footpace_follows_altar (void)
{
  g_autoptr (FpProject) project = sanctuary (church_add);
  g_autoptr (FpScene) scene = fp_scene_new (project, 0);
  const FpPlaced *steps = church_placed (scene, "steps");

  near_to (steps->place.x, 300);
  near_to (steps->place.y, 5000);
  near_to (steps->form.core.x0, -1200);
  near_to (steps->form.core.y1, 375);
  g_assert_cmpint (church_placed (scene, "altar")->support, ==, fp_scene_find (scene, "steps"));

  /* Schulte (1907): 42 in before the altar and two treads of 12 in more, as the kind rounds them: 1067 + 2 * 305. */
  near_to (steps->plan.y0, 5000 - 375 - 1067 - 2 * 305);

  church_param (&project, "altar", "length", 3000);
  g_autoptr (FpScene) longer = fp_scene_new (project, 0);
  near_to (church_placed (longer, "steps")->plan.x1 - steps->plan.x1, 300);
}

/* What touched the back of the mensa still does when the mensa grows deeper. */
static void
test_back_is_kept (void)
{
  g_autoptr (FpProject) project = sanctuary (church_add);
  g_autoptr (FpScene) before = fp_scene_new (project, 0);
  near_to (church_placed (before, "gradine")->plan.y1, 5000 + 375);

  church_param (&project, "altar", "depth", 1000);
  g_autoptr (FpScene) after = fp_scene_new (project, 0);
  near_to (church_placed (after, "gradine")->plan.y1, 5000 + 500);
  near_to (church_placed (after, "sticks")->place.y, 5000 + 500 - 100);
}

static void
test_turned (void)
{
  g_autoptr (FpProject) project = church_new (FP_FACING_EAST);
  const ChurchThing altar = { "altar", "side", NULL, { -4000, 2000, 90 }, NULL, 0, { { NULL, 0 } } };
  const ChurchThing gradine = { "gradine", "shelf", "side", { 0, 0, 0 }, NULL, 0, { { "depth", 200 }, { NULL, 0 } } };
  church_add (&project, &altar);
  church_add (&project, &gradine);
  g_autoptr (FpScene) scene = fp_scene_new (project, 0);
  const FpPlaced *shelf = church_placed (scene, "shelf");

  /* Its own back, +y, has turned towards -x. */
  near_to (shelf->place.turn, 90);
  near_to (shelf->place.x, -4000 - 375 + 100);
  near_to (shelf->place.y, 2000);
  near_to (shelf->plan.x0, -4000 - 375);
}

static void
test_place_on_is_inverse (void)
{
  g_autoptr (FpProject) project = sanctuary (church_add);
  const ChurchThing box = { "tabernacle", "box", "altar", { 137, -20, 30 }, NULL, 0, { { NULL, 0 } } };
  church_param (&project, "altar", "depth", 900);
  church_add (&project, &box);
  g_autoptr (FpScene) scene = fp_scene_new (project, 0);
  const FpPlaced *placed = church_placed (scene, "box");
  FpPlace found = fp_scene_place_on (scene, placed->support, fp_item_kind (placed->item), &placed->extent.plan,
                                     placed->place);
  near_to (found.x, 137);
  near_to (found.y, -20);
  near_to (found.turn, 30);

  const FpPlaced *altar = church_placed (scene, "altar");
  found = fp_scene_place_on (scene, altar->support, fp_item_kind (altar->item), &altar->extent.plan, altar->place);
  near_to (found.x, 300);
  near_to (found.y, 5000);
}

/* --- fates ---------------------------------------------------------------- */

static void
test_kept (void)
{
  g_autoptr (FpProject) project = sanctuary (church_survey);
  g_autoptr (FpScene) scene = fp_scene_new (project, 0);
  guint n;
  const FpPlaced *placed = fp_scene_placed (scene, &n);
  g_assert_cmpuint (n, ==, 6);
  for (guint i = 0; i < n; i++)
    {
      g_assert_false (placed[i].ghost);
      g_assert_true (placed[i].in_survey);
      g_assert_cmpint (placed[i].standing, ==, FP_STANDING_EXISTING);
    }
}

static void
test_moved (void)
{
  g_autoptr (FpProject) project = sanctuary (church_survey);
  const FpPlace there = { 0, 3500, 0 };
  church_fate (&project, "altar", FP_FATE_MOVED, &there, "steps");
  g_autoptr (FpScene) scene = fp_scene_new (project, 0);

  const FpPlaced *altar = church_placed (scene, "altar"), *ghost = church_ghost (scene, "altar");
  near_to (altar->place.y, 3500);
  g_assert_true (altar->moved);
  g_assert_cmpint (altar->standing, ==, FP_STANDING_PROPOSED);
  g_assert_nonnull (ghost);
  near_to (ghost->place.y, 5000);
  near_to (ghost->place.x, 300);
  near_to (ghost->level, altar->level);
  g_assert_cmpuint (ghost->n_solids, ==, altar->n_solids);
  g_assert_cmpint (ghost->standing, ==, FP_STANDING_REMOVED);

  /* What it carries and what lies round it came along, and left ghosts where they were. */
  near_to (church_placed (scene, "steps")->place.y, 3500);
  near_to (church_placed (scene, "sticks")->place.y, 3500 + 375 - 100);
  near_to (church_ghost (scene, "sticks")->place.y, 5000 + 375 - 100);
  g_assert_true (church_ghost (scene, "steps")->ghost);
  g_assert_null (church_ghost (scene, "nave"));
  g_assert_cmpint (church_ghost (scene, "sticks")->support, >=, (int) 6);
}

static void
test_removed (void)
{
  g_autoptr (FpProject) project = sanctuary (church_survey);
  const ChurchThing cross = { "crucifix", "cross", "gradine", { 0, 0, 0 }, NULL, 0, { { NULL, 0 } } };
  church_survey (&project, &cross);
  g_autoptr (FpScene) whole = fp_scene_new (project, 0);
  church_fate (&project, "gradine", FP_FATE_REMOVED, NULL, NULL);
  church_fate (&project, "sticks", FP_FATE_REMOVED, NULL, NULL);
  g_autoptr (FpScene) scene = fp_scene_new (project, 0);

  g_assert_cmpint (fp_scene_find (scene, "gradine"), ==, -1);
  g_assert_cmpint (fp_scene_role (scene, FP_ROLE_CANDLES), ==, -1);
  g_assert_nonnull (church_ghost (scene, "gradine"));
  g_assert_nonnull (church_ghost (scene, "sticks"));

  /* Nobody said what becomes of the cross: it stays where it was on the plan, on the floor. */
  const FpPlaced *left = church_placed (scene, "cross"), *was = church_placed (whole, "cross");
  g_assert_cmpint (left->support, ==, -1);
  near_to (left->place.x, was->place.x);
  near_to (left->place.y, was->place.y);
  near_to (left->level, 300);
}

/* A new altar on the steps of the old one: they come to lie round it, and a ghost tells where they lay. */
static void
test_altar_replaced (void)
{
  g_autoptr (FpProject) project = sanctuary (church_survey);
  const ChurchThing fresh = { "altar", "fresh", "steps", { 0, 4000, 0 }, NULL, 0, { { "length", 2000 }, { NULL, 0 } } };
  const FpPlace middle = { 0, 0, 0 };
  church_add (&project, &fresh);
  g_autoptr (FpScene) both = fp_scene_new (project, 0);
  near_to (church_placed (both, "steps")->place.y, 5000);

  church_fate (&project, "altar", FP_FATE_REMOVED, NULL, NULL);
  church_fate (&project, "gradine", FP_FATE_MOVED, &middle, "fresh");
  g_autoptr (FpScene) scene = fp_scene_new (project, 0);
  const FpPlaced *steps = church_placed (scene, "steps"), *gradine = church_placed (scene, "gradine");
  near_to (steps->place.y, 4000);
  near_to (steps->form.core.x1, 1000);
  g_assert_true (steps->moved);
  near_to (church_ghost (scene, "steps")->form.core.x1, 1200);
  g_assert_cmpint (gradine->support, ==, fp_scene_find (scene, "fresh"));
  near_to (gradine->plan.y1, 4000 + 375);
  near_to (church_placed (scene, "sticks")->place.y, 4000 + 375 - 100);
  g_assert_cmpint (church_placed (scene, "fresh")->standing, ==, FP_STANDING_PROPOSED);
  g_assert_false (church_placed (scene, "fresh")->in_survey);
}

/* Nothing that could be an altar stands on it: it lies where it was put. */
static void
test_footpace_alone (void)
{
  g_autoptr (FpProject) project = church_new (FP_FACING_EAST);
  const ChurchThing steps = { "footpace", "steps", NULL, { 100, 3000, 0 }, NULL, 0, { { NULL, 0 } } };
  const ChurchThing panel = { "reredos", "panel", "steps", { 0, 0, 0 }, NULL, 0, { { NULL, 0 } } };
  church_add (&project, &steps);
  church_add (&project, &panel);
  g_autoptr (FpScene) scene = fp_scene_new (project, 0);
  const FpPlaced *placed = church_placed (scene, "steps");
  near_to (placed->place.x, 100);
  near_to (placed->place.y, 3000);
  g_assert_cmpfloat (placed->form.core.x1, >, placed->form.core.x0);
  near_to (church_placed (scene, "panel")->place.x, 100);
  near_to (church_placed (scene, "panel")->level, 3 * 152);
}

/* --- floors --------------------------------------------------------------- */

static void
test_falling_floor (void)
{
  g_autoptr (FpProject) project = church_new (FP_FACING_EAST);
  church_floor (&project, "nave", FLOOR_NAVE, 0, 0, 0.05, 0);
  const ChurchThing pews = { "pews", "pews", NULL, { 0, -4000, 0 }, NULL, 0, { { NULL, 0 } } };
  church_survey (&project, &pews);
  g_autoptr (FpScene) scene = fp_scene_new (project, 0);
  const FpPlaced *placed = church_placed (scene, "pews");

  /* It descends towards the altar: a metre farther back it lies 50 mm higher. */
  near_to (fp_scene_floor_at (scene, (FpPoint) { 0, -1000 }, NULL), 50);
  near_to (placed->level, 200);
  g_assert_nonnull (placed->form.ground);
  near_to (placed->form.ground (placed->form.ground_data, (FpPoint) { 500, -3000 }), 150);

  /* Beyond the floor, as level as where it stands. */
  near_to (placed->form.ground (placed->form.ground_data, (FpPoint) { 0, 90000 }), 0);
}

static void
test_falls_sideways (void)
{
  g_autoptr (FpProject) project = church_new (FP_FACING_EAST);
  church_floor (&project, "nave", FLOOR_NAVE, 100, 0, 0.02, 90);
  g_autoptr (FpScene) scene = fp_scene_new (project, 0);
  /* 90 degrees: towards the Gospel side. */
  near_to (fp_scene_floor_at (scene, (FpPoint) { -1000, -5000 }, NULL), 80);
  near_to (fp_scene_floor_at (scene, (FpPoint) { 1000, -5000 }, NULL), 120);
}

static void
test_highest_floor (void)
{
  g_autoptr (FpProject) project = church_new (FP_FACING_EAST);
  gboolean found;
  church_floor (&project, "all", (FpBox) { -8000, -20000, 8000, 9000 }, 0, 0, 0, 0);
  church_floor (&project, "sanctuary", FLOOR_SANCTUARY, 450, 1, 0, 0);
  g_autoptr (FpScene) scene = fp_scene_new (project, 0);

  near_to (fp_scene_floor_at (scene, (FpPoint) { 0, 4000 }, &found), 450);
  g_assert_true (found);
  near_to (fp_scene_floor_at (scene, (FpPoint) { 0, -4000 }, &found), 0);
  /* Its edge belongs to it. */
  near_to (fp_scene_floor_at (scene, (FpPoint) { 1234, 0 }, &found), 450);
  near_to (fp_scene_floor_at (scene, (FpPoint) { 0, 30000 }, &found), 0);
  g_assert_false (found);
}

#define STAR_SIDES 1900

static void
add_star (FpProject **project, const char *id, double level, FpPoint corner[STAR_SIDES])
{
  for (guint i = 0; i < STAR_SIDES; i++)
    {
      const double turn = 2 * G_PI * i / STAR_SIDES, r = i % 2 == 0 ? 20000 : 26000;
      corner[i] = (FpPoint) { r * cos (turn), r * sin (turn) };
    }
  const ChurchThing floor = {
    "floor", id, NULL, { 0, 0, 0 }, corner, STAR_SIDES, { { "level", level }, { NULL, 0 } },
  };
  church_survey (project, &floor);
}

/* A floor of many sides is found where its outline lies, on every edge, and nowhere else. */
static void
test_many_sides (void)
{
  g_autoptr (FpProject) project = church_new (FP_FACING_EAST);
  g_autoptr (GRand) rand = g_rand_new_with_seed (7);
  FpPoint corner[STAR_SIDES];
  guint inside = 0;
  gboolean found;

  add_star (&project, "star", 300, corner);
  g_autoptr (FpScene) scene = fp_scene_new (project, 0);
  for (guint i = 0; i < 20000; i++)
    {
      const double r = g_rand_double_range (rand, 19000, 27000), turn = g_rand_double_range (rand, 0, 2 * G_PI);
      const FpPoint p = { r * cos (turn), r * sin (turn) };
      fp_scene_floor_at (scene, p, &found);
      /* Within a hundredth of a millimetre of the edge either is right. */
      if (found != fp_outline_contains (corner, STAR_SIDES, p))
        {
          double nearest = G_MAXDOUBLE;
          for (guint k = 0; k < STAR_SIDES; k++)
            nearest = MIN (nearest, fp_segment_distance (corner[k], corner[(k + 1) % STAR_SIDES], p));
          g_assert_cmpfloat (nearest, <=, 0.011);
        }
      inside += found ? 1 : 0;
    }
  g_assert_cmpuint (inside, >, 5000);
  g_assert_cmpuint (inside, <, 15000);
  for (guint i = 0; i < STAR_SIDES; i++)
    {
      const FpPoint a = corner[i], b = corner[(i + 1) % STAR_SIDES];
      near_to (fp_scene_floor_at (scene, (FpPoint) { (a.x + b.x) / 2, (a.y + b.y) / 2 }, &found), 300);
      g_assert_true (found);
    }
}

/* Each corner of each is asked for the floors beneath it. In time of the processor: others may use it, too. */
static void
test_many_sided_floors (void)
{
  g_autoptr (FpProject) project = church_new (FP_FACING_EAST);
  FpPoint corner[STAR_SIDES];

  for (guint i = 0; i < 12; i++)
    {
      g_autofree char *id = g_strdup_printf ("star-%u", i);
      add_star (&project, id, i, corner);
    }
  const clock_t start = clock ();
  g_autoptr (FpScene) scene = fp_scene_new (project, 0);
  const double seconds = (double) (clock () - start) / CLOCKS_PER_SEC;
  g_test_message ("%.2f s", seconds);
  near_to (fp_scene_floor_at (scene, (FpPoint) { 0, 0 }, NULL), 11);
  g_assert_cmpfloat (seconds, <, 8);
}

static void
test_empty (void)
{
  g_autoptr (FpProject) project = church_new (FP_FACING_EAST);
  g_autoptr (FpScene) scene = fp_scene_new (project, 7);
  guint n;
  fp_scene_placed (scene, &n);
  g_assert_cmpuint (n, ==, 0);
  g_assert_cmpuint (fp_scene_alternative (scene), ==, 0);
  fp_scene_floors (scene, &n);
  g_assert_cmpuint (n, ==, 0);
  g_assert_cmpint (fp_scene_role (scene, FP_ROLE_ALTAR), ==, -1);
  g_assert_cmpint (fp_scene_find (scene, "altar"), ==, -1);
  g_assert_cmpint (fp_scene_find (scene, NULL), ==, -1);
  g_assert_cmpfloat (fp_scene_box (scene).hi.x, <, fp_scene_box (scene).lo.x);
}

static void
test_highest_altar (void)
{
  g_autoptr (FpProject) project = sanctuary (church_add);
  const ChurchThing side = { "altar", "side", NULL, { -4000, -2000, 0 }, NULL, 0, { { NULL, 0 } } };
  church_survey (&project, &side);
  g_autoptr (FpScene) scene = fp_scene_new (project, 0);
  g_assert_cmpint (fp_scene_role (scene, FP_ROLE_ALTAR), ==, fp_scene_find (scene, "altar"));
}

static int
celebrated (const FpProject *project)
{
  g_autoptr (FpScene) scene = fp_scene_new (project, 0);
  const int at = fp_scene_celebrated_altar (scene);
  int named = -1;

  for (int i = 0; i < 3; i++)
    {
      static const char *const ids[] = { "low", "high", "wall" };
      if (at >= 0 && at == fp_scene_find (scene, ids[i]))
        named = i;
    }
  return named;
}

/* Two that stand free, and one against the wall on the highest steps. */
static FpProject *
three_altars (FpFacing facing)
{
  FpProject *project = church_new (facing);
  const ChurchThing steps[] = {
    { "footpace", "steps", NULL, { 0, 0, 0 }, NULL, 0, { { NULL, 0 } } },
    { "footpace", "more", NULL, { 0, 0, 0 }, NULL, 0, { { "count", 5 }, { NULL, 0 } } },
  };
  const ChurchThing altar[] = {
    { "altar", "low", NULL, { 0, 2000, 0 }, NULL, 0, { { NULL, 0 } } },
    { "altar", "high", "steps", { 0, 6000, 0 }, NULL, 0, { { NULL, 0 } } },
    { "altar", "wall", "more", { 0, 9000, 0 }, NULL, 0, { { "setting", 1 }, { NULL, 0 } } },
  };
  for (guint i = 0; i < 2; i++)
    church_add (&project, &steps[i]);
  for (guint i = 0; i < 3; i++)
    church_add (&project, &altar[i]);
  return project;
}

static void
test_celebrated_altar (void)
{
  enum { LOW, HIGH, WALL };
  g_autoptr (FpProject) none = church_new (FP_FACING_PEOPLE);
  g_autoptr (FpProject) east = three_altars (FP_FACING_EAST), people = three_altars (FP_FACING_PEOPLE);

  g_assert_cmpint (celebrated (none), ==, -1);
  /* Facing east at the highest, facing the people at the freestanding one nearest to them. */
  g_assert_cmpint (celebrated (east), ==, WALL);
  g_assert_cmpint (celebrated (people), ==, LOW);
  church_param (&people, "low", "setting", 1);
  g_assert_cmpint (celebrated (people), ==, HIGH);
  /* None stands free: the highest again, and of equals the first. */
  church_param (&people, "high", "setting", 1);
  g_assert_cmpint (celebrated (people), ==, WALL);
  church_param (&people, "more", "count", 3);
  g_assert_cmpint (celebrated (people), ==, HIGH);
}

/* A flight of one riser at the very edge of the sanctuary rises from the nave, not from the sanctuary; turned too. */
static void
test_steps_at_edge (void)
{
  g_autoptr (FpProject) project = church_new (FP_FACING_EAST);
  const ChurchThing step = {
    "steps", "step", NULL, { 0, 0, 0 }, NULL, 0, { { "count", 1 }, { "riser", 300 }, { NULL, 0 } },
  };
  const ChurchThing aside = {
    "steps", "aside", NULL, { -6000, 4000, -90 }, NULL, 0, { { "count", 2 }, { "riser", 150 }, { NULL, 0 } },
  };
  const ChurchThing nowhere = { "steps", "nowhere", NULL, { 0, 9000, 180 }, NULL, 0, { { NULL, 0 } } };
  church_floor (&project, "nave", FLOOR_NAVE, 0, 0, 0, 0);
  church_floor (&project, "aisle", (FpBox) { -9000, 0, -6000, 9000 }, -60, 0, 0, 0);
  church_floor (&project, "sanctuary", FLOOR_SANCTUARY, 300, 1, 0, 0);
  church_survey (&project, &step);
  church_survey (&project, &aside);
  church_survey (&project, &nowhere);
  g_autoptr (FpScene) scene = fp_scene_new (project, 0);
  near_to (church_placed (scene, "step")->level, 0);
  near_to (church_placed (scene, "step")->floor, 0);
  near_to (church_placed (scene, "aside")->level, -60);
  /* No floor before it: the one on which it stands. */
  near_to (church_placed (scene, "nowhere")->level, 300);

  const FpPlaced *placed = church_placed (scene, "step");
  FpBox3 box = fp_solid_box (&fp_scene_solids (scene, NULL)[placed->first_solid]);
  near_to (box.lo.z, 0);
  near_to (box.hi.z, 300);
}

static void
test_boxes (void)
{
  g_autoptr (FpProject) project = sanctuary (church_add);
  g_autoptr (FpScene) scene = fp_scene_new (project, 0);
  FpBox3 all = fp_scene_box (scene), framed = fp_scene_sanctuary (scene);
  near_to (all.lo.y, -20000);
  near_to (all.hi.y, 9000);
  near_to (framed.lo.y, 0);
  near_to (framed.hi.y, 9000);
  near_to (framed.lo.z, 300);
  near_to (framed.hi.z, all.hi.z);
  g_assert_cmpfloat (framed.hi.z, >, 300 + 3 * 152 + 990 + 150 + 500);
}

/* A wall with a door: what lies beyond is seen through it, not past it. */
static void
test_opening (void)
{
  g_autoptr (FpProject) project = church_new (FP_FACING_EAST);
  const FpPoint run[] = { { -5000, 0 }, { 5000, 0 } };
  const ChurchThing wall = { "wall", "wall", NULL, { 0, 1000, 0 }, run, 2, { { "base", 100 }, { NULL, 0 } } };
  const ChurchThing door = {
    "opening", "door", "wall", { 0, 0, 0 }, NULL, 0,
    { { "side", 1 }, { "along", 4000 }, { "width", 1000 }, { NULL, 0 } },
  };
  church_survey (&project, &wall);
  church_survey (&project, &door);
  g_autoptr (FpScene) scene = fp_scene_new (project, 0);
  const FpPlaced *placed = church_placed (scene, "door");
  near_to (placed->place.x, -1000);
  near_to (placed->place.y, 1000);
  near_to (placed->level, 100);

  guint n;
  const FpSolid *solid = fp_scene_solids (scene, &n);
  gboolean through = FALSE, beside = FALSE;
  for (guint i = 0; i < n; i++)
    {
      through |= fp_solid_ray (&solid[i], (FpVec3) { -1000, -2000, 1500 }, (FpVec3) { -1000, 4000, 1500 }, NULL);
      beside |= fp_solid_ray (&solid[i], (FpVec3) { 0, -2000, 1500 }, (FpVec3) { 0, 4000, 1500 }, NULL);
    }
  g_assert_false (through);
  g_assert_true (beside);

  church_fate (&project, "wall", FP_FATE_REMOVED, NULL, NULL);
  g_autoptr (FpScene) without = fp_scene_new (project, 0);
  g_assert_cmpint (fp_scene_find (without, "door"), ==, -1);
}

static void
test_gallery (void)
{
  g_autoptr (FpProject) project = church_new (FP_FACING_EAST);
  const FpPoint loft[] = { { -5000, -20000 }, { 5000, -20000 }, { 5000, -16000 }, { -5000, -16000 } };
  const ChurchThing gallery = { "gallery", "loft", NULL, { 0, 0, 0 }, loft, 4, { { "level", 3200 }, { NULL, 0 } } };
  const ChurchThing pews = { "pews", "choir", "loft", { 0, -16500, 0 }, NULL, 0, { { "rows", 3 }, { NULL, 0 } } };
  const ChurchThing below = { "pews", "nave", NULL, { 0, -16500, 0 }, NULL, 0, { { "rows", 3 }, { NULL, 0 } } };
  church_survey (&project, &gallery);
  church_survey (&project, &pews);
  church_survey (&project, &below);
  g_autoptr (FpScene) scene = fp_scene_new (project, 0);
  near_to (church_placed (scene, "choir")->level, 3200);
  near_to (church_placed (scene, "choir")->place.y, -16500);
  near_to (church_placed (scene, "nave")->level, 0);
}

/* Made anew on every frame of a drag. The bound is loose: tests run under sanitizers, on shared machines. */
static void
test_quick (void)
{
  g_autoptr (FpProject) project = sanctuary (church_add);
  for (guint i = 0; i < 190; i++)
    {
      g_autofree char *id = g_strdup_printf ("pier-%u", i);
      const FpPlace place = { i % 2 ? 7000 : -7000, -100.0 * i, 0 };
      const ChurchThing pier = { "pier", id, NULL, place, NULL, 0, { { NULL, 0 } } };
      church_survey (&project, &pier);
    }
  gint64 start = g_get_monotonic_time ();
  for (guint i = 0; i < 20; i++)
    {
      FpScene *scene = fp_scene_new (project, 0);
      fp_scene_unref (scene);
    }
  double each = (double) (g_get_monotonic_time () - start) / 20;
  g_test_message ("a scene of 200 things: %.0f microseconds", each);
  g_assert_cmpfloat (each, <, 20000);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/scene/levels-rise", test_levels_rise);
  g_test_add_func ("/scene/floor-under-chain", test_floor_under_chain);
  g_test_add_func ("/scene/footpace-follows-altar", test_footpace_follows_altar);
  g_test_add_func ("/scene/back-is-kept", test_back_is_kept);
  g_test_add_func ("/scene/turned", test_turned);
  g_test_add_func ("/scene/place-on-is-inverse", test_place_on_is_inverse);
  g_test_add_func ("/scene/kept", test_kept);
  g_test_add_func ("/scene/moved", test_moved);
  g_test_add_func ("/scene/removed", test_removed);
  g_test_add_func ("/scene/altar-replaced", test_altar_replaced);
  g_test_add_func ("/scene/footpace-alone", test_footpace_alone);
  g_test_add_func ("/scene/falling-floor", test_falling_floor);
  g_test_add_func ("/scene/falls-sideways", test_falls_sideways);
  g_test_add_func ("/scene/highest-floor", test_highest_floor);
  g_test_add_func ("/scene/many-sides", test_many_sides);
  g_test_add_func ("/scene/many-sided-floors", test_many_sided_floors);
  g_test_add_func ("/scene/empty", test_empty);
  g_test_add_func ("/scene/highest-altar", test_highest_altar);
  g_test_add_func ("/scene/celebrated-altar", test_celebrated_altar);
  g_test_add_func ("/scene/steps-at-edge", test_steps_at_edge);
  g_test_add_func ("/scene/boxes", test_boxes);
  g_test_add_func ("/scene/opening", test_opening);
  g_test_add_func ("/scene/gallery", test_gallery);
  g_test_add_func ("/scene/quick", test_quick);
  return g_test_run ();
}
