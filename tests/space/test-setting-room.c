/* SPDX-License-Identifier: GPL-3.0-or-later */
/* test-setting-room.c - new things leave room: for doors, for walking round an altar, for each other */
#include "church.h"

#include "footpace/setting-out.h"

#include <math.h>

#define assert_near(a, b) g_assert_cmpfloat_with_epsilon (a, b, 1e-3)

/* A nave 10 x 16 m; a sanctuary 8 m wide and so deep, raised by 300; walls round both from a foot at 0. */
static FpProject *
bare_church (double depth)
{
  const FpPoint walls[] = { { -5000, -16000 }, { -5000, 0 }, { -4000, 0 }, { -4000, depth },
                            { 4000, depth }, { 4000, 0 }, { 5000, 0 }, { 5000, -16000 } };
  const ChurchThing wall = { "wall", "walls", NULL, { 0, 0, 0 }, walls, 8, { { "closed", 1 } } };
  FpProject *p = church_new (FP_FACING_EAST);

  church_floor (&p, "nave", (FpBox) { -5000, -16000, 5000, 0 }, 0, 0, 0, 0);
  church_floor (&p, "chancel", (FpBox) { -4000, 0, 4000, depth }, 300, 1, 0, 0);
  church_survey (&p, &wall);
  return p;
}

/* In the wall of the sanctuary on the Epistle side, from its east end. */
static void
add_door (FpProject **p, const char *id, double along, double width, double sill, double head)
{
  const ChurchThing door = { "opening", id, "walls", { 0, 0, 0 }, NULL, 0,
                             { { "side", 5 }, { "along", along }, { "width", width }, { "sill", sill },
                               { "head", head } } };

  church_survey (p, &door);
}

static void
replace (FpProject **p, FpProject *next, const GError *error)
{
  g_assert_no_error (error);
  g_assert_nonnull (next);
  g_assert_true (fp_project_check (next, NULL));
  fp_project_unref (*p);
  *p = next;
}

static void
add (FpProject **p, const char *kind)
{
  g_autoptr (FpScene) scene = fp_scene_new (*p, 0);
  g_autoptr (GError) error = NULL;
  FpProject *next = fp_set_out_new (scene, fp_kind_find (kind), NULL, &error);

  replace (p, next, error);
}

static void
take_away (FpProject **p, const char *id)
{
  g_autoptr (FpScene) scene = fp_scene_new (*p, 0);
  g_autoptr (GError) error = NULL;
  FpProject *next = fp_set_out_remove (scene, id, &error);

  replace (p, next, error);
}

static FpBox
plan_of (const FpProject *p, const char *id)
{
  g_autoptr (FpScene) scene = fp_scene_new (p, 0);

  return church_placed (scene, id)->plan;
}

static gboolean
plans_meet (FpBox a, FpBox b)
{
  return fp_box_overlaps (&(FpBox) { a.x0 + 0.01, a.y0 + 0.01, a.x1 - 0.01, a.y1 - 0.01 }, &b);
}

/* --- doors ------------------------------------------------------------------ */

static gboolean
is_doorway (const FpProject *p, const char *id, FpBox3 *way)
{
  g_autoptr (FpScene) scene = fp_scene_new (p, 0);

  return fp_scene_doorway (scene, (guint) fp_scene_find (scene, id), way);
}

/* The sanctuary's floor is at 300; the foot of the wall at 0, 600 thick. */
static void
test_doorways (void)
{
  static const struct { double width, sill, head; gboolean walked; } cases[] = {
    { 950, 300, 2400, TRUE },   /* at the level of the floor                        */
    { 950, 450, 2400, TRUE },   /* over a threshold of 150                          */
    { 950, 0, 2400, TRUE },     /* told from the foot of the wall, under the floor   */
    { 950, 1200, 3300, FALSE }, /* a window                                         */
    { 950, 300, 1200, FALSE },  /* a cupboard for the oils                          */
    { 950, 0, 1500, FALSE },    /* a hatch, for the most part under the floor        */
    { 300, 300, 2400, FALSE },  /* a slit                                           */
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (FpProject) p = bare_church (7000);
      FpBox3 way;

      add_door (&p, "door", 2000, cases[i].width, cases[i].sill, cases[i].head);
      g_assert_cmpint (is_doorway (p, "door", &way), ==, cases[i].walked);
      if (!cases[i].walked)
        continue;
      assert_near (way.hi.x - way.lo.x, 950);
      assert_near (way.lo.y, -900);
      assert_near (way.hi.y, 600 + 900);
      g_assert_true (fp_doorway_is_door (&way));
    }
}

/* One that is walled up is no way; nor is what is no opening.  An arch is a way, but no door. */
static void
test_no_doorways (void)
{
  g_autoptr (FpProject) p = bare_church (7000);
  FpBox3 way;

  add_door (&p, "door", 2000, 950, 300, 2400);
  add_door (&p, "arch", 5000, 3600, 300, 4000);
  g_assert_false (is_doorway (p, "walls", &way));
  g_assert_true (is_doorway (p, "arch", &way));
  g_assert_false (fp_doorway_is_door (&way));
  church_fate (&p, "door", FP_FATE_REMOVED, NULL, NULL);
  {
    g_autoptr (FpScene) scene = fp_scene_new (p, 0);
    g_assert_cmpint (fp_scene_find (scene, "door"), ==, -1);
  }
}

/* Before anything is measured but a wall, a sill near its foot is taken for a door. */
static void
test_doorway_without_floor (void)
{
  static const FpPoint line[] = { { 0, 0 }, { 9000, 0 } };
  const ChurchThing wall = { "wall", "walls", NULL, { 0, 0, 0 }, line, 2, { { "base", 500 } } };
  const ChurchThing door = { "opening", "door", "walls", { 0, 0, 0 }, NULL, 0, { { "along", 2000 } } };
  const ChurchThing window = { "opening", "window", "walls", { 0, 0, 0 }, NULL, 0,
                               { { "along", 6000 }, { "sill", 1000 }, { "head", 3000 } } };
  g_autoptr (FpProject) p = church_new (FP_FACING_EAST);
  FpBox3 way;

  church_survey (&p, &wall);
  church_survey (&p, &door);
  church_survey (&p, &window);
  g_assert_true (is_doorway (p, "door", &way));
  g_assert_false (is_doorway (p, "window", &way));
}

/* A door to a higher floor on its other side is one, though it is a window's height above the floor on this. */
static void
test_doorway_other_side (void)
{
  g_autoptr (FpProject) p = bare_church (7000);
  FpBox3 way;

  add_door (&p, "door", 2000, 950, 1500, 3600);
  g_assert_false (is_doorway (p, "door", &way));
  church_floor (&p, "sacristy", (FpBox) { 4600, 3000, 8000, 7000 }, 1500, 1, 0, 0);
  g_assert_true (is_doorway (p, "door", &way));
}

/* Credences fill the wall beside a door at the level of the floor, never the way through it, however many there are. */
static void
test_doors_stay_free (void)
{
  g_autoptr (FpProject) p = bare_church (7000);
  const FpBox way = { 4000 - 900, 4900 - 475, 4600 + 900, 4900 + 475 };

  add_door (&p, "door", 7000 - 4900, 950, 300, 2400);
  add (&p, "altar");
  for (guint i = 0; i < 8; i++)
    {
      g_autofree char *id = fp_project_free_id (p, "credence");
      add (&p, "credence");
      g_assert_false (plans_meet (plan_of (p, id), way));
    }
  add (&p, "sedilia");
  add (&p, "ambo");
  add (&p, "chair");
  g_assert_false (plans_meet (plan_of (p, "sedilia"), way));
  g_assert_false (plans_meet (plan_of (p, "ambo"), way));
  g_assert_false (plans_meet (plan_of (p, "chair"), way));
}

/* When the Epistle side is full, the other wall comes before the middle of the floor. */
static void
test_other_wall (void)
{
  g_autoptr (FpProject) p = bare_church (4000);
  FpBox plan;

  add_door (&p, "door", 2000, 2600, 300, 2400);
  add (&p, "altar");
  add (&p, "sedilia");
  plan = plan_of (p, "sedilia");
  assert_near (plan.x0, -4000 + 50);
}

/* The way is free on both sides of the wall. */
static void
test_behind_a_door (void)
{
  g_autoptr (FpProject) p = bare_church (7000);

  /* A second wall with a door across the sanctuary, 1 m before its east end. */
  const FpPoint line[] = { { -4000, 6000 }, { 4000, 6000 } };
  const ChurchThing screen = { "wall", "screen", NULL, { 0, 0, 0 }, line, 2, { { "thickness", 100 } } };
  const ChurchThing door = { "opening", "way", "screen", { 0, 0, 0 }, NULL, 0,
                             { { "along", 7000 }, { "width", 1200 }, { "sill", 300 }, { "head", 2400 } } };
  church_survey (&p, &screen);
  church_survey (&p, &door);
  for (guint i = 0; i < 4; i++)
    {
      g_autofree char *id = fp_project_free_id (p, "credence");
      add (&p, "credence");
      g_assert_false (plans_meet (plan_of (p, id), (FpBox) { 2400, 5100, 3600, 7000 }));
    }
}

/* Not across the edge of a floor that is a step higher. */
static void
test_on_one_level (void)
{
  g_autoptr (FpProject) p = bare_church (7000);

  church_floor (&p, "upper", (FpBox) { -3000, 2000, 3900, 7000 }, 450, 1, 0, 0);
  add (&p, "altar");
  for (guint i = 0; i < 4; i++)
    {
      g_autofree char *id = fp_project_free_id (p, "ambo");
      FpBox plan;
      add (&p, "ambo");
      plan = plan_of (p, id);
      g_assert_false (plan.y0 < 2000 - 1 && plan.y1 > 2000 + 1 && plan.x1 > -3000 && plan.x0 < 3900);
    }
}

/* --- walking round the altar --------------------------------------------------- */

static double
behind_altar (const FpProject *p, double wall)
{
  return wall - plan_of (p, "altar").y1;
}

/* The footpace first, as a new project is made, or the altar first.  At least 3 ft of Württemberg, 286.49 mm each:
 * Regierungsblatt (1889), § 38. */
static void
test_way_round (void)
{
  for (guint depth = 3500; depth <= 12000; depth += 500)
    for (guint altar_first = 0; altar_first < 2; altar_first++)
      {
        g_autoptr (FpProject) p = bare_church (depth);

        add (&p, altar_first ? "altar" : "footpace");
        add (&p, altar_first ? "footpace" : "altar");
        g_assert_cmpfloat (behind_altar (p, depth), >=, 3 * 286.49);
        g_assert_cmpfloat (plan_of (p, "altar").x0, ==, -1200);
        g_assert_cmpfloat (plan_of (p, "altar").y0, >=, depth / 2.0 - 375 - 1);
      }
}

/* In too small a sanctuary the steps keep to its floor, and as much as can be is left behind. */
static void
test_shallow (void)
{
  g_autoptr (FpProject) p = bare_church (3000);

  add (&p, "footpace");
  add (&p, "altar");
  g_assert_cmpfloat (plan_of (p, "footpace").y0, >=, -0.001);
  g_assert_cmpfloat (plan_of (p, "footpace").y0, <, 100);
  g_assert_cmpfloat (behind_altar (p, 3000), >, 450);
}

/* Over the whole length of the altar, where an apse narrows. */
static void
test_way_round_in_apse (void)
{
  const FpPoint walls[] = { { -4000, -500 }, { -4000, 5000 }, { -1000, 7000 }, { 1000, 7000 }, { 4000, 5000 },
                            { 4000, -500 } };
  const ChurchThing wall = { "wall", "apse", NULL, { 0, 0, 0 }, walls, 6, { { NULL, 0 } } };
  const ChurchThing floor = { "floor", "chancel", NULL, { 0, 0, 0 }, (FpPoint[]) { { -4000, 0 }, { 4000, 0 },
                              { 4000, 5000 }, { 1000, 7000 }, { -1000, 7000 }, { -4000, 5000 } }, 6,
                              { { "level", 300 }, { "use", 1 } } };
  g_autoptr (FpProject) p = church_new (FP_FACING_EAST);

  church_survey (&p, &floor);
  church_survey (&p, &wall);
  add (&p, "altar");
  /* At x = 1200 the wall is at 7000 - 200 * 2 / 3. */
  g_assert_cmpfloat (plan_of (p, "altar").y1, <=, 7000 - 400 / 3.0 - 900 + 0.001);
  g_assert_cmpfloat (plan_of (p, "altar").y1, >, 7000 - 400 / 3.0 - 900 - 100);
}

/* An old platform against the wall is brought forward under a new altar that stands free. */
static void
test_old_footpace_at_wall (void)
{
  const ChurchThing old = { "footpace", "old", NULL, { 0, 6500, 0 }, NULL, 0, { { "count", 1 } } };
  g_autoptr (FpProject) p = bare_church (7000);

  church_survey (&p, &old);
  add (&p, "altar");
  assert_near (behind_altar (p, 7000), 900);
  assert_near (plan_of (p, "old").y1, plan_of (p, "altar").y1);
}

/* What is added later keeps out of the way round. */
static void
test_way_round_stays_free (void)
{
  g_autoptr (FpProject) p = bare_church (7000);
  FpBox way;

  add (&p, "altar");
  way = plan_of (p, "altar");
  way.y0 = way.y1;
  way.y1 += 900;
  add (&p, "altar");
  add (&p, "chair");
  add (&p, "credence");
  g_assert_false (plans_meet (plan_of (p, "altar-2"), way));
  g_assert_false (plans_meet (plan_of (p, "chair"), way));
  g_assert_false (plans_meet (plan_of (p, "credence"), way));
}

/* --- a reredos ------------------------------------------------------------------- */

/* An altar told to stand against the wall, with a gradine and a cross. */
static FpProject *
church_with_high_altar (void)
{
  const ChurchThing footpace = { "footpace", "footpace", NULL, { 0, 0, 0 }, NULL, 0, { { NULL, 0 } } };
  const ChurchThing altar = { "altar", "altar", "footpace", { 0, 6625, 0 }, NULL, 0, { { "setting", 1 } } };
  FpProject *p = bare_church (7000);

  church_add (&p, &footpace);
  church_add (&p, &altar);
  add (&p, "gradine");
  add (&p, "crucifix");
  return p;
}

/* The altar comes forward by the depth of the reredos, and with it its steps and what stands on it: in one edit. */
static void
test_reredos_makes_room (void)
{
  static const char *const moved[] = { "altar", "footpace", "gradine", "crucifix" };
  g_autoptr (FpProject) p = church_with_high_altar (), before = fp_project_ref (p);

  add (&p, "reredos");
  assert_near (plan_of (p, "reredos").y1, 7000);
  assert_near (plan_of (p, "altar").y1, 6800);
  for (guint i = 0; i < G_N_ELEMENTS (moved); i++)
    assert_near (plan_of (p, moved[i]).y1, plan_of (before, moved[i]).y1 - 200);
}

static void
test_reredos_moves_old_altar (void)
{
  const ChurchThing altar = { "altar", "altar", NULL, { 0, 6625, 0 }, NULL, 0, { { "setting", 1 } } };
  g_autoptr (FpProject) p = bare_church (7000);

  church_survey (&p, &altar);
  add (&p, "reredos");
  g_assert_cmpint (fp_alternative_fate (fp_project_alternative (p, 0), "altar", NULL, NULL), ==, FP_FATE_MOVED);
  assert_near (plan_of (p, "altar").y1, 6800);
}

/* One that stands free leaves the way round, too. */
static void
test_reredos_behind_free_altar (void)
{
  g_autoptr (FpProject) p = bare_church (7000);

  add (&p, "altar");
  add (&p, "footpace");
  add (&p, "reredos");
  assert_near (plan_of (p, "reredos").y1, 7000);
  assert_near (plan_of (p, "altar").y1, 6800 - 900);
}

/* Not into the rail, nor so near to it that nobody passes; then the finding stays. */
static void
test_reredos_without_room (void)
{
  g_autoptr (FpProject) p = church_with_high_altar ();
  /* The steps begin at 6250 - 1067 - 610 = 4573. */
  const ChurchThing rail = { "rail", "rail", NULL, { 0, 4573 - 914.4 - 100 - 150, 0 }, NULL, 0, { { "length", 7000 } } };

  church_add (&p, &rail);
  add (&p, "reredos");
  assert_near (plan_of (p, "altar").y1, 7000);
  assert_near (plan_of (p, "reredos").y1, 7000);
}

/* --- a footpace without its altar -------------------------------------------------- */

/* It stays where it was: one of the survey with the shape that was measured, a new one with the common shape. */
static void
test_footpace_stays (void)
{
  for (guint old = 0; old < 2; old++)
    {
      const ChurchThing footpace = { "footpace", "footpace", NULL, { 0, 0, 0 }, NULL, 0, { { NULL, 0 } } };
      const ChurchThing altar = { "altar", "altar", "footpace", { 300, 5500, 0 }, NULL, 0, { { "length", 1800 } } };
      void (*put) (FpProject **, const ChurchThing *) = old ? church_survey : church_add;
      g_autoptr (FpProject) p = bare_church (7000);
      FpBox before, after;

      put (&p, &footpace);
      put (&p, &altar);
      before = plan_of (p, "footpace");
      take_away (&p, "altar");
      after = plan_of (p, "footpace");
      assert_near ((after.x0 + after.x1) / 2, 300);
      assert_near (after.y0, old ? before.y0 : before.y0 + 375 - 450);
      if (old)
        assert_near (after.x1, before.x1);
      add (&p, "altar"); /* it has an id of its own where the old one is only removed */
      assert_near (plan_of (p, old ? "altar-2" : "altar").y1, 5500 + 375);
    }
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/doorway/which", test_doorways);
  g_test_add_func ("/doorway/none", test_no_doorways);
  g_test_add_func ("/doorway/without-floor", test_doorway_without_floor);
  g_test_add_func ("/doorway/other-side", test_doorway_other_side);
  g_test_add_func ("/setting-room/doors-stay-free", test_doors_stay_free);
  g_test_add_func ("/setting-room/other-wall", test_other_wall);
  g_test_add_func ("/setting-room/behind-a-door", test_behind_a_door);
  g_test_add_func ("/setting-room/on-one-level", test_on_one_level);
  g_test_add_func ("/setting-room/way-round", test_way_round);
  g_test_add_func ("/setting-room/shallow", test_shallow);
  g_test_add_func ("/setting-room/way-round-in-apse", test_way_round_in_apse);
  g_test_add_func ("/setting-room/old-footpace-at-wall", test_old_footpace_at_wall);
  g_test_add_func ("/setting-room/way-round-stays-free", test_way_round_stays_free);
  g_test_add_func ("/setting-room/reredos-makes-room", test_reredos_makes_room);
  g_test_add_func ("/setting-room/reredos-moves-old-altar", test_reredos_moves_old_altar);
  g_test_add_func ("/setting-room/reredos-behind-free-altar", test_reredos_behind_free_altar);
  g_test_add_func ("/setting-room/reredos-without-room", test_reredos_without_room);
  g_test_add_func ("/setting-room/footpace-stays", test_footpace_stays);
  return g_test_run ();
}
