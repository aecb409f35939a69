/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The free floor of small invented churches: areas by closed forms, levels, and where they meet. */
#include "church.h"

#include "footpace/free-floor.h"

#include <math.h>

/* As the kind counts them. */
enum { ROUND, SQUARE };

#define assert_near(a, b, e) g_assert_cmpfloat_with_epsilon (a, b, e)

static void
pier (FpProject **p, const char *id, double x, double y, double turn, double shape, double width)
{
  const ChurchThing thing = { "pier", id, NULL, { x, y, turn }, NULL, 0,
                              { { "shape", shape }, { "width", width } } };

  church_survey (p, &thing);
}

static const FpFreeLevel *
level_at (const FpScene *scene, double x, double y)
{
  guint n;
  const FpFreeFloor *floor = fp_scene_free_floor (scene);
  const FpFreeLevel *level = fp_free_floor_levels (floor, &n);
  const int i = fp_free_floor_level_at (floor, (FpPoint) { x, y });

  return i >= 0 ? &level[i] : NULL;
}

/* 10 by 6 m, less what stands there; what overlaps is taken away once. */
static void
test_areas (void)
{
  FpProject *p = church_new (FP_FACING_EAST);

  church_floor (&p, "nave", (FpBox) { -5000, -6000, 5000, 0 }, 0, 0, 0, 0);
  pier (&p, "square", -2000, -3000, 30, SQUARE, 600);
  pier (&p, "round", 2000, -3000, 0, ROUND, 500);
  {
    g_autoptr (FpScene) scene = fp_scene_new (p, 0);
    const FpFreeLevel *level = level_at (scene, 0, -1000);

    g_assert_nonnull (level);
    /* The polygon of the round pier keeps within a quarter of a millimetre of it: so much along its circumference at most. */
    assert_near (fp_free_level_area (level), 60e6 - 600 * 600 - G_PI * 250 * 250, FP_FREE_SAGITTA * G_PI * 500);
    g_assert_cmpint (fp_free_floor_level_at (fp_scene_free_floor (scene), (FpPoint) { 2000, -3000 }), ==, -1);
    g_assert_cmpint (fp_free_floor_level_at (fp_scene_free_floor (scene), (FpPoint) { 9000, -3000 }), ==, -1);
    g_assert_true (fp_scene_free_floor (scene) == fp_scene_free_floor (scene));
  }
  pier (&p, "over-it", -2000, -3000, 30, SQUARE, 300);
  {
    g_autoptr (FpScene) scene = fp_scene_new (p, 0);
    assert_near (fp_free_level_area (level_at (scene, 0, -1000)), 60e6 - 600 * 600 - G_PI * 250 * 250, FP_FREE_SAGITTA * G_PI * 500);
  }
  fp_project_unref (p);
}

/* The rise from one level to the next, seen from the lower one at (x, y). */
static double
rise_at (const FpScene *scene, double x, double y)
{
  guint n;
  const FpLevelJoint *joint = fp_free_floor_joints (fp_scene_free_floor (scene), &n);

  for (guint i = 0; i < n; i++)
    if (fp_segment_distance (joint[i].a, joint[i].b, (FpPoint) { x, y }) < 1)
      return fabs (joint[i].rise_a);
  return NAN;
}

static void
test_levels (void)
{
  FpProject *p = church_new (FP_FACING_EAST);
  const ChurchThing steps = { "steps", "way-up", NULL, { 0, -300, 0 }, NULL, 0, { { "width", 3000 }, { NULL, 0 } } };
  const ChurchThing pace = { "footpace", "pace", NULL, { 0, 5000, 0 }, NULL, 0, { { "count", 3 }, { "riser", 150 }, { "tread", 300 } } };
  const ChurchThing altar = { "altar", "altar", "pace", { 0, 5000, 0 }, NULL, 0, { { NULL, 0 } } };

  church_floor (&p, "nave", (FpBox) { -5000, -6000, 5000, 0 }, 0, 0, 0, 0);
  church_floor (&p, "chancel", (FpBox) { -4000, 0, 4000, 9000 }, 300, 1, 0, 0);
  church_survey (&p, &steps);
  church_add (&p, &pace);
  church_add (&p, &altar);
  {
    g_autoptr (FpScene) scene = fp_scene_new (p, 0);
    const FpPlaced *on = church_placed (scene, "pace"), *table = church_placed (scene, "altar");

    assert_near (level_at (scene, 0, -1000)->z, 0, 1e-9);
    assert_near (level_at (scene, 0, -150)->z, 150, 1e-9);     /* the lower of two risers */
    assert_near (level_at (scene, 0, 150)->z, 300, 1e-9);
    assert_near (level_at (scene, 0, on->plan.y0 + 150)->z, 450, 1e-9);
    assert_near (level_at (scene, 0, on->plan.y0 + 450)->z, 600, 1e-9);
    assert_near (level_at (scene, 0, on->plan.y0 + 750)->z, 750, 1e-9);
    g_assert_null (level_at (scene, 0, 5000)); /* the altar */
    /* The footpace, less the altar that stands on it. */
    assert_near (fp_free_level_area (level_at (scene, 0, on->plan.y0 + 750)),
                 (on->extent.bearing.x1 - on->extent.bearing.x0) * (on->extent.bearing.y1 - on->extent.bearing.y0)
                   - (table->plan.x1 - table->plan.x0) * (table->plan.y1 - table->plan.y0), 1);
    assert_near (rise_at (scene, 0, -300), 150, 1e-9);
    assert_near (rise_at (scene, 0, 0), 150, 1e-9);
    assert_near (rise_at (scene, 3000, 0), 300, 1e-9); /* beside the steps */
    assert_near (rise_at (scene, 0, on->plan.y0), 150, 1e-9);
  }
  fp_project_unref (p);
}

/* What hangs is walked under, what is low is walked over, a gate is open. */
static void
test_in_the_way (void)
{
  FpProject *p = church_new (FP_FACING_EAST);
  const FpPoint walls[] = { { -5000, 0 }, { 5000, 0 } };
  const ChurchThing wall = { "wall", "wall", NULL, { 0, 0, 0 }, walls, 2, { { "thickness", 400 } } };
  const ChurchThing door = { "opening", "door", "wall", { 0, 0, 0 }, NULL, 0,
                             { { "side", 1 }, { "along", 5000 }, { "width", 900 }, { "sill", 0 }, { "head", 2100 } } };
  const ChurchThing rail = { "rail", "rail", NULL, { 0, -3000, 0 }, NULL, 0, { { "length", 6000 }, { "gate", 1000 } } };

  church_floor (&p, "nave", (FpBox) { -5000, -6000, 5000, 3000 }, 0, 0, 0, 0);
  church_survey (&p, &wall);
  church_survey (&p, &door);
  church_add (&p, &rail);
  {
    g_autoptr (FpScene) scene = fp_scene_new (p, 0);

    g_assert_nonnull (level_at (scene, 0, 200));     /* through the door */
    g_assert_nonnull (level_at (scene, 440, 200));
    g_assert_null (level_at (scene, 460, 200));      /* in the wall */
    g_assert_nonnull (level_at (scene, 0, -3000));   /* through the gate */
    g_assert_nonnull (level_at (scene, 490, -3000));
    g_assert_null (level_at (scene, 510, -3000));
    g_assert_null (level_at (scene, 1500, -3000));
  }
  fp_project_unref (p);
}

/* A floor surveyed in two pieces, 10 mm apart, is one to walk on; 50 mm apart it is not. */
static void
test_pieces (void)
{
  for (guint apart = 10; apart <= 50; apart += 40)
    {
      FpProject *p = church_new (FP_FACING_EAST);

      church_floor (&p, "west", (FpBox) { -5000, -6000, 5000, -3000 }, 0, 0, 0, 0);
      church_floor (&p, "east", (FpBox) { -5000, -3000.0 + apart, 5000, 0 }, 20, 0, 0, 0);
      {
        g_autoptr (FpScene) scene = fp_scene_new (p, 0);
        guint n;

        fp_free_floor_joints (fp_scene_free_floor (scene), &n);
        g_assert_cmpuint (n, ==, apart == 10 ? 1 : 0);
      }
      fp_project_unref (p);
    }
}

static void
test_nothing (void)
{
  FpProject *p = church_new (FP_FACING_EAST);
  g_autoptr (FpScene) scene = fp_scene_new (p, 0);
  guint n;

  fp_free_floor_levels (fp_scene_free_floor (scene), &n);
  g_assert_cmpuint (n, ==, 0);
  g_assert_cmpint (fp_free_floor_level_at (fp_scene_free_floor (scene), (FpPoint) { 0, 0 }), ==, -1);
  fp_project_unref (p);
}

/* --- threads ------------------------------------------------------------------- */

static gpointer
ask (gpointer scene)
{
  return (gpointer) fp_scene_free_floor (scene);
}

static void
test_threads (void)
{
  FpProject *p = church_new (FP_FACING_EAST);

  church_floor (&p, "nave", (FpBox) { -5000, -6000, 5000, 0 }, 0, 0, 0, 0);
  pier (&p, "round", 2000, -3000, 0, ROUND, 500);
  for (guint times = 0; times < 20; times++)
    {
      g_autoptr (FpScene) scene = fp_scene_new (p, 0);
      GThread *thread[4];

      for (guint i = 0; i < G_N_ELEMENTS (thread); i++)
        thread[i] = g_thread_new ("ask", ask, scene);
      for (guint i = 0; i < G_N_ELEMENTS (thread); i++)
        g_assert_true (g_thread_join (thread[i]) == (gpointer) fp_scene_free_floor (scene));
    }
  fp_project_unref (p);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/free-floor/areas", test_areas);
  g_test_add_func ("/free-floor/levels", test_levels);
  g_test_add_func ("/free-floor/in-the-way", test_in_the_way);
  g_test_add_func ("/free-floor/pieces", test_pieces);
  g_test_add_func ("/free-floor/nothing", test_nothing);
  g_test_add_func ("/free-floor/threads", test_threads);
  return g_test_run ();
}
