/* SPDX-License-Identifier: GPL-3.0-or-later */
/* How wide a body gets through, by closed forms.  Each is told too great by the stated tolerance at most, and never too small. */
#include "church.h"

#include "footpace/room-to-move.h"

#include <math.h>
#include <string.h>

/* What arithmetic and the polygons of round things leave over, mm. */
#define HAIR 0.01

/* As the kind of a pier counts them. */
enum { ROUND, SQUARE };

static void
pier (FpProject **p, const char *id, double x, double y, double turn, double shape, double width)
{
  const ChurchThing thing = { "pier", id, NULL, { x, y, turn }, NULL, 0, { { "shape", shape }, { "width", width } } };

  church_survey (p, &thing);
}

/* A wall about its middle line. */
static void
block (FpProject **p, const char *id, FpBox box)
{
  const FpPoint corner[] = { { box.x0, box.y0 }, { box.x1, box.y0 } };
  const ChurchThing thing = { "wall", id, NULL, { 0, 0, 0 }, corner, 2, { { "thickness", box.y1 - box.y0 } } };

  church_survey (p, &thing);
}

static FpWay *
way_of (const FpProject *p, FpGait gait, FpPoint from, FpPoint to)
{
  g_autoptr (FpScene) scene = fp_scene_new (p, 0);
  const FpWayEnd a = { from, 100 }, b = { to, 100 };

  return fp_way_widest (scene, gait, &a, &b, NULL, 0);
}

static void
assert_width (const FpWay *way, double width)
{
  g_assert_cmpfloat (way->width, >=, width - HAIR);
  g_assert_cmpfloat (way->width, <=, width + way->tolerance + HAIR);
  g_assert_cmpfloat (way->tolerance, <=, 1.0 * 800 / MIN (800, width) + HAIR);
}

static void
assert_narrow (const FpWay *way, double width)
{
  assert_width (way, width);
  g_assert_true (way->narrows);
  g_assert_cmpfloat_with_epsilon (hypot (way->narrow[0].x - way->narrow[1].x, way->narrow[0].y - way->narrow[1].y), way->width, 1e-6);
  g_assert_cmpuint (way->n_route, >=, 2);
}

/* A hall 10 by 10 m, parted by a wall across it at y = 0 that leaves so much open about x. */
static FpProject *
parted (double x, double open)
{
  FpProject *p = church_new (FP_FACING_EAST);

  church_floor (&p, "floor", (FpBox) { -5000, -5000, 5000, 5000 }, 0, 0, 0, 0);
  block (&p, "left", (FpBox) { -5000, 0, x - open / 2, 300 });
  block (&p, "right", (FpBox) { x + open / 2, 0, 5000, 300 });
  return p;
}

static void
test_door (void)
{
  static const double open[] = { 410, 450, 813, 914.4, 1525, 3000 };

  for (guint i = 0; i < G_N_ELEMENTS (open); i++)
    {
      FpProject *p = parted (137, open[i]);
      g_autoptr (FpWay) way = way_of (p, FP_GAIT_ON_FOOT, (FpPoint) { -3000, -3000 }, (FpPoint) { 2500, 3500 });
      g_autoptr (FpWay) back = way_of (p, FP_GAIT_ON_WHEELS, (FpPoint) { 2500, 3500 }, (FpPoint) { -3000, -3000 });

      assert_narrow (way, open[i]);
      assert_narrow (back, open[i]);
      g_assert_cmpint (way->beside[0], ==, FP_WAY_BY_THING);
      g_assert_cmpint (way->beside[1], ==, FP_WAY_BY_THING);
      g_assert_cmpint (way->owner[0], !=, way->owner[1]);
      fp_project_unref (p);
    }
}

/* Straightened: through the doorway from either side it is hardly longer than straight lines past its middle. */
static void
test_route (void)
{
  FpProject *p = parted (137, 900);
  g_autoptr (FpWay) way = way_of (p, FP_GAIT_ON_FOOT, (FpPoint) { -3000, -3000 }, (FpPoint) { 2500, 3500 });
  const double straight = hypot (3137, 3000) + 300 + hypot (2363, 3200);

  g_assert_cmpfloat (way->length, >, straight * 0.8);
  g_assert_cmpfloat (way->length, <, straight * 1.15);
  fp_project_unref (p);
}

static void
test_shut (void)
{
  FpProject *p = parted (0, 350); /* less than anybody */
  g_autoptr (FpWay) way = way_of (p, FP_GAIT_ON_FOOT, (FpPoint) { 0, -3000 }, (FpPoint) { 0, 3000 });
  g_autoptr (FpWay) off = way_of (p, FP_GAIT_ON_FOOT, (FpPoint) { 0, -3000 }, (FpPoint) { 0, 30000 });
  g_autoptr (FpWay) open = way_of (p, FP_GAIT_ON_FOOT, (FpPoint) { 0, -2500 }, (FpPoint) { 40, -2520 });

  g_assert_cmpfloat (way->width, ==, 0);
  g_assert_false (way->narrows);
  g_assert_cmpfloat (off->width, ==, 0);
  g_assert_cmpfloat (open->width, >, 4900); /* one open space of 10 by 5 m */
  g_assert_false (open->narrows);
  fp_project_unref (p);
}

/* 2 m wide, with a round pier of 600 that stands 150 off its middle: 550 and 850 are left. */
static void
test_pier (void)
{
  FpProject *p = church_new (FP_FACING_EAST);

  church_floor (&p, "floor", (FpBox) { -1000, -5000, 1000, 5000 }, 0, 0, 0, 0);
  pier (&p, "pier", 150, 0, 0, ROUND, 600);
  {
    g_autoptr (FpWay) way = way_of (p, FP_GAIT_ON_FOOT, (FpPoint) { 0, -3000 }, (FpPoint) { 0, 3000 });

    assert_width (way, 850 - FP_FREE_SAGITTA);
    g_assert_cmpfloat (way->width, <=, 850 + FP_FREE_SAGITTA + way->tolerance);
    g_assert_true (way->beside[0] != way->beside[1]); /* the pier, and the end of the floor */
  }
  fp_project_unref (p);
}

/* A circle goes round a bend that is as wide as it. */
static void
test_bend (void)
{
  const FpPoint corner[] = { { -5000, 0 }, { -5000, -900 }, { 0, -900 }, { 0, 4000 }, { -1300, 4000 }, { -1300, 0 } };
  const ChurchThing floor = { "floor", "floor", NULL, { 0, 0, 0 }, corner, 6, { { NULL, 0 } } };
  FpProject *p = church_new (FP_FACING_EAST);

  church_survey (&p, &floor);
  {
    g_autoptr (FpWay) way = way_of (p, FP_GAIT_ON_FOOT, (FpPoint) { -4000, -450 }, (FpPoint) { -650, 3000 });

    assert_narrow (way, 900);
  }
  fp_project_unref (p);
}

/* Two square piers turned by 45 degrees: between their corners. */
static void
test_corners (void)
{
  FpProject *p = parted (0, 2000);

  pier (&p, "one", -1000, 150, 45, SQUARE, 800);
  pier (&p, "two", 1000, 150, 45, SQUARE, 500);
  {
    g_autoptr (FpWay) way = way_of (p, FP_GAIT_ON_FOOT, (FpPoint) { 0, -3000 }, (FpPoint) { 0, 3000 });

    assert_narrow (way, 2000 - 400 * sqrt (2) - 250 * sqrt (2));
    g_assert_cmpfloat_with_epsilon (way->narrow[0].y, 150, 1e-3);
  }
  fp_project_unref (p);
}

/* A floor 600 higher: up the steps, as wide as they are, or up the ramp on wheels. */
static void
test_levels (void)
{
  const ChurchThing steps = { "steps", "steps", NULL, { 2000, -900, 0 }, NULL, 0,
                              { { "width", 1400 }, { "count", 4 }, { "riser", 150 }, { "tread", 300 } } };
  const ChurchThing ramp = { "ramp", "ramp", NULL, { -2500, -7200 - 1525, 0 }, NULL, 0, { { "rise", 600 }, { "width", 1000 } } };
  const FpPoint from = { 4000, -9000 }, to = { 0, 4000 };
  FpProject *p = church_new (FP_FACING_EAST);

  church_floor (&p, "low", (FpBox) { -5000, -12000, 5000, 0 }, 0, 0, 0, 0);
  church_floor (&p, "high", (FpBox) { -5000, 0, 5000, 5000 }, 600, 0, 0, 0);
  {
    g_autoptr (FpWay) way = way_of (p, FP_GAIT_ON_FOOT, from, to);
    g_assert_cmpfloat (way->width, ==, 0);
  }
  church_survey (&p, &steps);
  {
    g_autoptr (FpWay) walked = way_of (p, FP_GAIT_ON_FOOT, from, to), rolled = way_of (p, FP_GAIT_ON_WHEELS, from, to);
    assert_narrow (walked, 1400);
    g_assert_cmpint (walked->beside[0], ==, FP_WAY_BY_STEP);
    g_assert_cmpfloat (rolled->width, ==, 0);
  }
  church_fate (&p, "steps", FP_FATE_REMOVED, NULL, NULL);
  church_add (&p, &ramp);
  {
    g_autoptr (FpWay) rolled = way_of (p, FP_GAIT_ON_WHEELS, from, to), walked = way_of (p, FP_GAIT_ON_FOOT, from, to);

    /* Between the handrails, which stand 4 mm within the curbs of 50 that lie beside its clear width. */
    assert_narrow (rolled, 1000 + 2 * 4);
    assert_narrow (walked, 1000 + 2 * 4);
    g_assert_cmpint (rolled->owner[0], >=, 0);
    g_assert_cmpint (rolled->owner[0], ==, rolled->owner[1]);
  }
  church_param (&p, "ramp", "slope", 0.1); /* steeper than a ramp may be, and shorter than the way to the floor */
  {
    g_autoptr (FpWay) rolled = way_of (p, FP_GAIT_ON_WHEELS, from, to);

    g_assert_cmpfloat (rolled->width, ==, 0);
  }
  fp_project_unref (p);
}

/* An altar that stands free, 700 before the wall behind it. */
static void
test_round (void)
{
  const FpPoint within[] = { { -1600, -900 }, { 1600, -900 }, { 1600, 900 }, { -1600, 900 } };
  const ChurchThing altar = { "altar", "altar", NULL, { 0, 0, 0 }, NULL, 0, { { "length", 2400 }, { "depth", 1000 } } };
  FpProject *p = church_new (FP_FACING_EAST);

  church_floor (&p, "floor", (FpBox) { -4000, -8000, 4000, 3000 }, 0, 1, 0, 0);
  church_add (&p, &altar);
  {
    g_autoptr (FpScene) bare = fp_scene_new (p, 0);
    const double back = church_placed (bare, "altar")->plan.y1;

    block (&p, "wall", (FpBox) { -4000, back + 700, 4000, back + 900 });
  }
  {
    g_autoptr (FpScene) scene = fp_scene_new (p, 0);
    g_autoptr (FpWay) way = fp_way_round (scene, FP_GAIT_ON_FOOT, (FpPoint) { 0, 0 }, within, 4);
    g_autoptr (FpWay) none = fp_way_round (scene, FP_GAIT_ON_FOOT, (FpPoint) { 0, 0 }, within, 2);

    assert_narrow (way, 700);
    g_assert_cmpuint (way->n_route, >=, 4);
    g_assert_cmpfloat (way->length, >, 2 * 2400);
    g_assert_cmpfloat (none->width, ==, 0);
  }
  fp_project_unref (p);
}

/* What may not be crossed parts what it is drawn across, and nothing else. */
static void
test_bars (void)
{
  FpProject *p = parted (0, 1000);
  g_autoptr (FpScene) scene = fp_scene_new (p, 0);
  const FpWayEnd left = { { -3000, -3000 }, 100 }, right = { { 3000, -3000 }, 100 }, beyond = { { 3000, 3000 }, 100 };
  const FpBar across[] = { { { -600, 100 }, { 600, 100 } }, { { -700, -5100 }, { -700, 150 } } };
  g_autoptr (FpWay) open = fp_way_widest (scene, FP_GAIT_ON_FOOT, &left, &beyond, NULL, 0);
  g_autoptr (FpWay) shut = fp_way_widest (scene, FP_GAIT_ON_FOOT, &left, &beyond, &across[0], 1);
  g_autoptr (FpWay) parted = fp_way_widest (scene, FP_GAIT_ON_FOOT, &left, &right, &across[1], 1);
  g_autoptr (FpWay) past = fp_way_widest (scene, FP_GAIT_ON_FOOT, &right, &beyond, &across[1], 1);

  assert_narrow (open, 1000);
  g_assert_cmpfloat (shut->width, ==, 0);
  g_assert_cmpfloat (parted->width, ==, 0);
  assert_narrow (past, 1000);
  fp_project_unref (p);
}

static void
test_circle (void)
{
  const FpPoint all[] = { { -9000, -9000 }, { 9000, -9000 }, { 9000, 9000 }, { -9000, 9000 } };
  FpProject *p = church_new (FP_FACING_EAST);
  FpPoint middle;

  church_floor (&p, "floor", (FpBox) { -1500, -2000, 1500, 2000 }, 0, 0, 0, 0);
  {
    g_autoptr (FpScene) scene = fp_scene_new (p, 0);

    g_assert_cmpfloat_with_epsilon (fp_room_circle (scene, FP_GAIT_ON_WHEELS, all, 4, &middle), 3000, 0.5);
    g_assert_cmpfloat_with_epsilon (middle.x, 0, 1);
    g_assert_cmpfloat_with_epsilon (fp_room_clear_about (scene, FP_GAIT_ON_WHEELS, (FpPoint) { 1100, -300 }), 400, 1e-6);
    g_assert_cmpfloat (fp_room_clear_about (scene, FP_GAIT_ON_WHEELS, (FpPoint) { 5000, 0 }), ==, 0);
  }
  /* With a pier of radius 250 in the middle: in each corner a circle of radius x touches both walls and the pier, and
   * hypot (1500 - x, 2000 - x) = 250 + x; on the long axis one of 875 has room between the pier and the end. */
  pier (&p, "pier", 0, 0, 0, ROUND, 500);
  {
    g_autoptr (FpScene) scene = fp_scene_new (p, 0);
    double lo = 500, hi = 1500;
    for (guint i = 0; i < 60; i++)
      {
        const double x = (lo + hi) / 2;
        *(hypot (1500 - x, 2000 - x) > 250 + x ? &lo : &hi) = x;
      }
    g_assert_cmpfloat_with_epsilon (fp_room_circle (scene, FP_GAIT_ON_FOOT, all, 4, NULL), 2 * lo, 2.0);
  }
  fp_project_unref (p);
}

/* Floors as long as no church is: nothing is looked for, and nothing grows beyond measure. */
static void
test_vast (void)
{
  FpProject *p = church_new (FP_FACING_EAST);

  for (guint i = 0; i < 6; i++)
    {
      g_autofree char *id = g_strdup_printf ("floor-%u", i);
      church_floor (&p, id, (FpBox) { -1e6, -1000 + 20000.0 * i, 1e6, 9000 + 20000.0 * i }, 0, 0, 0, 0);
    }
  {
    g_autoptr (FpWay) way = way_of (p, FP_GAIT_ON_FOOT, (FpPoint) { 0, 0 }, (FpPoint) { 0, 5000 });

    g_assert_cmpfloat (way->width, ==, 0);
  }
  fp_project_unref (p);
}

/* --- threads ------------------------------------------------------------------ */

static gpointer
ask (gpointer scene)
{
  const FpWayEnd a = { { -3000, -3000 }, 100 }, b = { { 2500, 3500 }, 100 };

  return fp_way_widest (scene, FP_GAIT_ON_FOOT, &a, &b, NULL, 0);
}

/* Whoever asks first makes the ways; all are told alike. */
static void
test_threads (void)
{
  FpProject *p = parted (137, 900);

  for (guint times = 0; times < 10; times++)
    {
      g_autoptr (FpScene) scene = fp_scene_new (p, 0);
      GThread *thread[4];

      for (guint i = 0; i < G_N_ELEMENTS (thread); i++)
        thread[i] = g_thread_new ("ask", ask, scene);
      for (guint i = 0; i < G_N_ELEMENTS (thread); i++)
        {
          g_autoptr (FpWay) way = g_thread_join (thread[i]);
          assert_narrow (way, 900);
        }
    }
  fp_project_unref (p);
}

/* The same of an unchanged church, to the last bit, however often it is asked. */
static void
test_again (void)
{
  FpProject *p = parted (137, 900);
  g_autoptr (FpWay) one = way_of (p, FP_GAIT_ON_FOOT, (FpPoint) { -3000, -3000 }, (FpPoint) { 2500, 3500 });
  g_autoptr (FpWay) two = way_of (p, FP_GAIT_ON_FOOT, (FpPoint) { -3000, -3000 }, (FpPoint) { 2500, 3500 });
  g_autoptr (FpWay) copy = fp_way_copy (one);

  g_assert_cmpfloat (one->width, ==, two->width);
  g_assert_cmpuint (one->n_route, ==, two->n_route);
  g_assert_true (memcmp (one->route, two->route, one->n_route * sizeof (FpPoint)) == 0);
  g_assert_true (memcmp (copy->route, one->route, copy->n_route * sizeof (FpPoint)) == 0);
  g_assert_true (copy->route != one->route);
  g_assert_null (fp_way_copy (NULL));
  fp_project_unref (p);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/room-to-move/door", test_door);
  g_test_add_func ("/room-to-move/route", test_route);
  g_test_add_func ("/room-to-move/shut", test_shut);
  g_test_add_func ("/room-to-move/pier", test_pier);
  g_test_add_func ("/room-to-move/bend", test_bend);
  g_test_add_func ("/room-to-move/corners", test_corners);
  g_test_add_func ("/room-to-move/levels", test_levels);
  g_test_add_func ("/room-to-move/round", test_round);
  g_test_add_func ("/room-to-move/bars", test_bars);
  g_test_add_func ("/room-to-move/circle", test_circle);
  g_test_add_func ("/room-to-move/vast", test_vast);
  g_test_add_func ("/room-to-move/threads", test_threads);
  g_test_add_func ("/room-to-move/again", test_again);
  return g_test_run ();
}
