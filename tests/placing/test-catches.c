/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "church.h"

#include "footpace/catches.h"

#include <math.h>

typedef struct
{
  FpProject *project;
  FpScene   *scene;
} Fixture;

static void
set_up (Fixture *f, gconstpointer data)
{
  (void) data;
  f->project = church_new (FP_FACING_EAST);
  church_floor (&f->project, "chancel", (FpBox) { -5000, 0, 5000, 8000 }, 0, 1, 0, 0);
  church_add (&f->project, &(ChurchThing) { .kind = "altar", .id = "altar", .place = { 0, 5000, 0 },
                                            .param = { { "length", 2400 }, { "depth", 800 } } });
  church_add (&f->project, &(ChurchThing) { .kind = "credence", .id = "one", .place = { 2000, 2000, 0 },
                                            .param = { { "length", 800 }, { "depth", 400 } } });
  church_add (&f->project, &(ChurchThing) { .kind = "credence", .id = "two", .place = { 3700, 2000, 0 },
                                            .param = { { "length", 800 }, { "depth", 400 } } });
  church_add (&f->project, &(ChurchThing) { .kind = "credence", .id = "mover", .place = { -2000, 3000, 0 },
                                            .param = { { "length", 600 }, { "depth", 400 } } });
  f->scene = (FpScene *) fp_scene_new (f->project, 0);
}

static void
tear_down (Fixture *f, gconstpointer data)
{
  (void) data;
  fp_scene_unref (f->scene);
  fp_project_unref (f->project);
}

/* Moves its middle to (x, y) and says what caught it. */
static FpVec3
drop_at (Fixture *f, double x, double y, double reach, FpCatch *cx, FpCatch *cy)
{
  const char *const moving[] = { "mover", NULL };
  g_autoptr (FpCatches) catches = fp_catches_new (f->scene, moving, 0);
  FpVec3 by = { x + 2000, y - 3000, 0 };

  fp_catches_find (catches, &by, 3, reach, cx, cy);
  return (FpVec3) { by.x - 2000, by.y + 3000, 0 };
}

static void
test_axis (Fixture *f, gconstpointer data)
{
  FpCatch x, y;
  const FpVec3 at = drop_at (f, 12, 1003, 20, &x, &y);
  g_autofree char *tells = fp_catch_tells (&x, f->scene);

  (void) data;
  g_assert_cmpint (x.sort, ==, FP_CATCH_AXIS);
  g_assert_cmpfloat_with_epsilon (at.x, 0, 1e-9);
  g_assert_cmpstr (tells, ==, "on the axis");
  g_assert_cmpint (y.sort, ==, FP_CATCH_NONE);
  g_assert_cmpfloat_with_epsilon (at.y, 1003, 1e-9);
}

/* Against the end of the altar, and flush with its front. */
static void
test_corner (Fixture *f, gconstpointer data)
{
  FpCatch x, y;
  const FpVec3 at = drop_at (f, -1507, 4795, 20, &x, &y);

  (void) data;
  g_assert_cmpint (x.sort, ==, FP_CATCH_EDGE);
  g_assert_cmpint (y.sort, ==, FP_CATCH_EDGE);
  g_assert_cmpstr (x.id, ==, "altar");
  g_assert_cmpstr (y.id, ==, "altar");
  g_assert_cmpfloat_with_epsilon (at.x, -1500, 1e-9);
  g_assert_cmpfloat_with_epsilon (at.y, 4800, 1e-9);
}

static void
test_centre (Fixture *f, gconstpointer data)
{
  FpCatch x, y;
  const FpVec3 at = drop_at (f, -3000, 4995, 20, &x, &y);

  (void) data;
  g_assert_cmpint (y.sort, ==, FP_CATCH_CENTRE);
  g_assert_cmpstr (y.id, ==, "altar");
  g_assert_cmpfloat_with_epsilon (at.y, 5000, 1e-9);
}

/* The end of the altar, from where it is seen only in elevation. */
static void
test_in_line (Fixture *f, gconstpointer data)
{
  FpCatch x, y;
  const FpVec3 at = drop_at (f, -905, 1000, 20, &x, &y);
  g_autofree char *tells = fp_catch_tells (&x, f->scene);

  (void) data;
  g_assert_cmpint (x.sort, ==, FP_CATCH_IN_LINE);
  g_assert_cmpfloat_with_epsilon (at.x, -900, 1e-9);
  g_assert_cmpstr (tells, ==, "in line with the edge of Altar");
  g_assert_cmpfloat (x.to, >=, 5400);
}

/* Between the two there are 900; 600 goes between with 150 on either side, and 900 beyond them. */
static void
test_gaps (Fixture *f, gconstpointer data)
{
  FpCatch x, y;
  FpVec3 at = drop_at (f, 2856, 2100, 10, &x, &y);

  (void) data;
  g_assert_cmpint (x.sort, ==, FP_CATCH_GAP);
  g_assert_cmpfloat_with_epsilon (x.gap, 150, 1e-9);
  g_assert_cmpfloat_with_epsilon (at.x, 2850, 1e-9);
  g_assert_cmpfloat_with_epsilon (x.gap_at[0], 2400, 1e-9);
  g_assert_cmpfloat_with_epsilon (x.gap_at[1], 3150, 1e-9);
  at = drop_at (f, 395, 2100, 10, &x, &y);
  g_assert_cmpint (x.sort, ==, FP_CATCH_GAP);
  g_assert_cmpfloat_with_epsilon (x.gap, 900, 1e-9);
  g_assert_cmpfloat_with_epsilon (at.x, 400, 1e-9);
}

static void
test_out_of_reach (Fixture *f, gconstpointer data)
{
  FpCatch x, y;
  const FpVec3 at = drop_at (f, 30, 1203, 5, &x, &y);

  (void) data;
  g_assert_cmpint (x.sort, ==, FP_CATCH_NONE);
  g_assert_cmpint (y.sort, ==, FP_CATCH_NONE);
  g_assert_cmpfloat_with_epsilon (at.x, 30, 1e-9);
}

/* What stands on the thing that moves catches nothing; a point catches corners of floors. */
static void
test_point_and_carried (Fixture *f, gconstpointer data)
{
  const char *const moving[] = { "altar", NULL }, *const nothing[] = { NULL };
  FpProject *p = fp_project_ref (f->project);
  g_autoptr (FpScene) scene = NULL;
  g_autoptr (FpCatches) catches = NULL, all = NULL;
  FpPoint point = { -4996, 7993 };
  FpVec3 by = { 3, 0, 0 };
  FpCatch x, y;

  (void) data;
  church_add (&p, &(ChurchThing) { .kind = "tabernacle", .id = "tabernacle", .on = "altar" });
  scene = (FpScene *) fp_scene_new (p, 0);
  fp_project_unref (p);
  catches = fp_catches_new (scene, moving, 0);
  fp_catches_find (catches, &by, 2, 20, &x, &y);
  g_assert_cmpint (x.sort, ==, FP_CATCH_NONE); /* x was not to be caught */
  g_assert_cmpint (y.sort, ==, FP_CATCH_NONE);
  all = fp_catches_new (scene, nothing, 0);
  g_assert_true (fp_box_is_empty (&(FpBox) { fp_catches_moving (all).x0, 0, fp_catches_moving (all).x1, 0 }));
  fp_catches_find_point (all, &point, 20, &x, &y);
  g_assert_cmpfloat (point.x, ==, -5000);
  g_assert_cmpfloat (point.y, ==, 8000);
  g_assert_cmpstr (x.id, ==, "chancel");
}

/* What is not shown holds nothing; what is shown beside it still does. */
static void
test_hidden_catches_nothing (Fixture *f, gconstpointer data)
{
  const char *const nothing[] = { NULL };
  g_autoptr (FpCatches) all = fp_catches_new (f->scene, nothing, 0);
  g_autoptr (FpCatches) bare = fp_catches_new (f->scene, nothing, 1u << FP_SHOW_BUILDING);
  g_autoptr (FpCatches) none = fp_catches_new (f->scene, nothing, FP_HIDDEN_ALL);
  const FpPlaced *mover = &fp_scene_placed (f->scene, NULL)[fp_scene_find (f->scene, "mover")];
  const FpPoint corner = { -4996, 7993 }, edge = { mover->plan.x0 + 4, 5500 };
  FpPoint p = corner;
  FpCatch x, y;

  (void) data;
  fp_catches_find_point (all, &p, 20, &x, &y);
  g_assert_cmpint (x.sort, ==, FP_CATCH_EDGE);
  p = corner;
  fp_catches_find_point (bare, &p, 20, &x, &y);
  g_assert_cmpint (x.sort, ==, FP_CATCH_NONE);
  g_assert_cmpint (y.sort, ==, FP_CATCH_NONE);
  p = edge;
  fp_catches_find_point (bare, &p, 20, &x, &y);
  g_assert_cmpstr (x.id, ==, "mover");
  p = edge;
  fp_catches_find_point (none, &p, 20, &x, &y);
  g_assert_cmpint (x.sort, ==, FP_CATCH_NONE);
}

/* A footpace goes with its altar: it must not hold it back.  What stands on the mensa is lined up there. */
static void
test_what_may_catch (Fixture *f, gconstpointer data)
{
  const char *const altar[] = { "altar", NULL }, *const cross[] = { "cross", NULL }, *const mover[] = { "mover", NULL };
  FpProject *p = fp_project_ref (f->project);
  g_autoptr (FpScene) scene = NULL;
  g_autoptr (FpCatches) of_altar = NULL, of_cross = NULL, of_mover = NULL;
  FpCatch x, y;
  FpVec3 by;

  (void) data;
  church_add (&p, &(ChurchThing) { .kind = "footpace", .id = "footpace", .place = { 0, 5000, 0 } });
  church_add (&p, &(ChurchThing) { .kind = "altar", .id = "altar", .on = "footpace", .place = { 40, 5000, 0 },
                                   .param = { { "length", 2400 }, { "depth", 800 } } });
  church_add (&p, &(ChurchThing) { .kind = "crucifix", .id = "cross", .on = "altar" });
  scene = (FpScene *) fp_scene_new (p, 0);
  fp_project_unref (p);
  of_altar = fp_catches_new (scene, altar, 0);
  by = (FpVec3) { 700, 333, 0 };
  fp_catches_find (of_altar, &by, 3, 5000, &x, &y);
  g_assert_cmpstr (x.id, !=, "footpace");
  g_assert_cmpstr (y.id, !=, "footpace");
  /* In line with the credence that stands on the floor: not from up there. */
  of_cross = fp_catches_new (scene, cross, 0);
  by = (FpVec3) { 2000 - 40 + 3, 0, 0 };
  fp_catches_find (of_cross, &by, 1, 20, &x, &y);
  g_assert_cmpint (x.sort, ==, FP_CATCH_NONE);
  by = (FpVec3) { 3, 0, 0 };
  fp_catches_find (of_cross, &by, 1, 20, &x, &y);
  g_assert_cmpint (x.sort, ==, FP_CATCH_CENTRE);
  g_assert_cmpstr (x.id, ==, "altar");
  /* Nor is the credence caught by the cross on the mensa, but by the altar. */
  of_mover = fp_catches_new (scene, mover, 0);
  by = (FpVec3) { 2000 + 40, 0, 0 };
  fp_catches_find (of_mover, &by, 1, 10, &x, &y);
  g_assert_cmpint (x.sort, ==, FP_CATCH_CENTRE);
  g_assert_cmpstr (x.id, !=, "cross");
}

/* Whatever is caught, the thing ends exactly there, and no farther than the reach. */
static void
test_random (Fixture *f, gconstpointer data)
{
  guint across[FP_CATCH_IN_LINE + 1] = { 0 }, along[FP_CATCH_IN_LINE + 1] = { 0 };

  (void) data;
  for (guint i = 0; i < 2000; i++)
    {
      const double wx = g_test_rand_double_range (-5000, 5000), wy = g_test_rand_double_range (0, 8000);
      FpCatch x, y;
      const FpVec3 at = drop_at (f, wx, wy, 40, &x, &y);

      across[x.sort]++;
      along[y.sort]++;
      g_assert_cmpfloat (fabs (at.x - wx), <=, 40 + 1e-6);
      g_assert_cmpfloat (fabs (at.y - wy), <=, 40 + 1e-6);
      g_assert_true ((x.sort == FP_CATCH_NONE) == (at.x == wx) || fabs (at.x - wx) < 1e-9);
      if (x.sort == FP_CATCH_EDGE || x.sort == FP_CATCH_IN_LINE)
        g_assert_true (fabs (at.x - 300 - x.at) < 1e-6 || fabs (at.x + 300 - x.at) < 1e-6);
    }
  /* Of 2000 some come to rest on each sort of thing, most on none; a gap is too seldom to be sure of. */
  g_assert_cmpuint (across[FP_CATCH_AXIS], >, 0);
  for (guint i = 0; i <= FP_CATCH_IN_LINE; i++)
    if (i != FP_CATCH_AXIS && i != FP_CATCH_GAP)
      {
        g_assert_cmpuint (across[i], >, 0);
        g_assert_cmpuint (along[i], >, 0);
      }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
#define ADD(name, function) g_test_add ("/catches/" name, Fixture, NULL, set_up, function, tear_down)
  ADD ("axis", test_axis);
  ADD ("corner", test_corner);
  ADD ("centre", test_centre);
  ADD ("in-line", test_in_line);
  ADD ("gaps", test_gaps);
  ADD ("out-of-reach", test_out_of_reach);
  ADD ("point-and-carried", test_point_and_carried);
  ADD ("what-may-catch", test_what_may_catch);
  ADD ("hidden", test_hidden_catches_nothing);
  ADD ("random", test_random);
  return g_test_run ();
}
