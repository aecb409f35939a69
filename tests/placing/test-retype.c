/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Measures between things, and levels, typed over. */
#include "church.h"

#include "footpace/retype.h"

#include <math.h>
#include <string.h>

typedef struct { FpProject *project; FpScene *scene; } Fixture;

static const char *const nothing[] = { NULL };

static void
set_up (Fixture *f, gconstpointer data)
{
  static const FpPoint room[] = { { -4000, 0 }, { -4000, 9000 }, { 4000, 9000 }, { 4000, 0 } };

  (void) data;
  f->project = church_new (FP_FACING_EAST);
  church_floor (&f->project, "floor", (FpBox) { -4000, 0, 4000, 9000 }, 150, 1, 0, 0);
  /* 10 m along, falling by 1 in 100 towards the altar: 100 mm higher in the west. */
  church_floor (&f->project, "nave", (FpBox) { -4000, -10000, 4000, 0 }, 0, 0, 0.01, 0);
  church_survey (&f->project, &(ChurchThing) { .kind = "wall", .id = "walls", .corner = room, .n_corners = 4,
                                               .param = { { "closed", 1 }, { "thickness", 600 } } });
  church_add (&f->project, &(ChurchThing) { .kind = "footpace", .id = "steps", .place = { 0, 6000, 0 },
                                            .param = { { "count", 3 }, { "riser", 150 } } });
  church_add (&f->project, &(ChurchThing) { .kind = "altar", .id = "altar", .on = "steps", .place = { 0, 6000, 0 },
                                            .param = { { "length", 2400 }, { "depth", 800 }, { "height", 990 } } });
  church_add (&f->project, &(ChurchThing) { .kind = "rail", .id = "rail", .place = { 0, 500, 0 } });
  church_add (&f->project, &(ChurchThing) { .kind = "credence", .id = "credence", .place = { 3800, 3000, -90 },
                                            .param = { { "length", 800 }, { "depth", 400 } } });
  /* Its end 120 from the wall. */
  church_add (&f->project, &(ChurchThing) { .kind = "credence", .id = "shelf", .place = { 3480, 7500, 0 },
                                            .param = { { "length", 800 }, { "depth", 400 } } });
  f->scene = fp_scene_new (f->project, 0);
}

static void
tear_down (Fixture *f, gconstpointer data)
{
  (void) data;
  fp_scene_unref (f->scene);
  fp_project_unref (f->project);
}

static FpScene *
retyped (Fixture *f, const FpStretch *stretch, double value, const char *const *chosen)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FpProject) next = fp_retype (f->scene, stretch, value, chosen, &error);

  g_assert_no_error (error);
  g_assert_nonnull (next);
  return fp_scene_new (next, 0);
}

#define FROM_TO(p, q) g_assert_cmpfloat_with_epsilon (p, q, 1e-6)

/* Rail to lowest step: the rail is farther from the altar and moves; unless the altar is chosen. */
static void
test_apart (Fixture *f, gconstpointer data)
{
  const FpBox *rail = &church_placed (f->scene, "rail")->plan, *steps = &church_placed (f->scene, "steps")->plan;
  const double length = steps->y0 - rail->y1;
  const FpStretch stretch = { FP_STRETCH_APART, { -1000, rail->y1, 150 }, { -1000, steps->y0, 150 }, "rail", "steps" };
  const char *const altar[] = { "steps", NULL };
  g_autoptr (FpScene) farther = retyped (f, &stretch, length + 300, nothing);
  g_autoptr (FpScene) altar_moved = retyped (f, &stretch, length + 300, altar);
  g_autofree char *tells = fp_stretch_tells (&stretch, f->scene);

  (void) data;
  FROM_TO (fp_stretch_value (&stretch), length);
  g_assert_nonnull (strstr (tells, " to "));
  FROM_TO (church_placed (farther, "rail")->plan.y1, rail->y1 - 300);
  FROM_TO (church_placed (farther, "steps")->plan.y0, steps->y0);
  FROM_TO (church_placed (altar_moved, "rail")->plan.y1, rail->y1);
  FROM_TO (church_placed (altar_moved, "steps")->plan.y0, steps->y0 + 300);
}

/* To the wall: the wall stays. */
static void
test_apart_from_the_wall (Fixture *f, gconstpointer data)
{
  const FpBox *altar = &church_placed (f->scene, "altar")->plan;
  const FpStretch stretch = { FP_STRETCH_APART, { 0, altar->y1, 600 }, { 0, 9000, 600 }, "altar", NULL };
  g_autoptr (FpScene) then = retyped (f, &stretch, 1000, nothing);

  (void) data;
  FROM_TO (church_placed (then, "altar")->plan.y1, 8000);
}

static void
test_footpace (Fixture *f, gconstpointer data)
{
  const FpBox *altar = &church_placed (f->scene, "altar")->plan, *steps = &church_placed (f->scene, "steps")->plan;
  const FpStretch front = { FP_STRETCH_FRONT, { 0, altar->y0, 0 }, { 0, steps->y0, 0 }, "steps", NULL };
  const FpStretch ends = { FP_STRETCH_ENDS, { steps->x0, 0, 0 }, { steps->x1, 0, 0 }, "steps", NULL };
  g_autoptr (FpScene) deeper = retyped (f, &front, altar->y0 - steps->y0 + 120, nothing);
  g_autoptr (FpScene) wider = retyped (f, &ends, steps->x1 - steps->x0 + 200, nothing);

  (void) data;
  FROM_TO (church_placed (deeper, "steps")->plan.y0, steps->y0 - 120);
  FROM_TO (church_placed (deeper, "altar")->plan.y0, altar->y0);
  FROM_TO (church_placed (wider, "steps")->plan.x0, steps->x0 - 100);
  FROM_TO (church_placed (wider, "steps")->plan.x1, steps->x1 + 100);
}

/* A footpace rises by its risers, and the altar with it; a floor with all on it; a mensa by its height. */
static void
test_levels (Fixture *f, gconstpointer data)
{
  const FpPlaced *altar = church_placed (f->scene, "altar");
  const double top = altar->level + altar->extent.top;
  const FpStretch footpace = { FP_STRETCH_LEVEL, { 0, 0, 0 }, { 0, 0, altar->level }, "steps", NULL };
  const FpStretch floor = { FP_STRETCH_LEVEL, { 0, 0, 0 }, { 0, 0, 150 }, "floor", NULL };
  const FpStretch mensa = { FP_STRETCH_LEVEL, { 0, 0, 0 }, { 0, 0, top }, "altar", NULL };
  g_autoptr (FpScene) a = retyped (f, &footpace, altar->level + 30, nothing);
  g_autoptr (FpScene) b = retyped (f, &floor, 180, nothing);
  g_autoptr (FpScene) c = retyped (f, &mensa, top + 25, nothing);
  g_autoptr (GError) error = NULL;

  (void) data;
  g_assert_true (fp_stretch_is_level (&mensa));
  FROM_TO (fp_item_param (church_placed (a, "steps")->item, "riser"), 160);
  FROM_TO (church_placed (a, "altar")->level, altar->level + 30);
  FROM_TO (church_placed (b, "altar")->level, altar->level + 30);
  FROM_TO (fp_item_param (church_placed (c, "altar")->item, "height"), 1015);
  g_assert_null (fp_retype (f->scene, &mensa, top + 5000, nothing, &error));
  g_assert_error (error, FP_ERROR, FP_ERROR_RANGE);
}

/* One end of a floor that falls: the other stays. */
static void
test_fall (Fixture *f, gconstpointer data)
{
  const FpStretch end = { FP_STRETCH_FALL, { 0, 0, 0 }, { 0, 0, 100 }, "nave", NULL };
  const FpStretch round = { FP_STRETCH_FALL, { 0, 0, 0 }, { 0, 0, 100 }, "nave", NULL };
  g_autoptr (FpScene) then = retyped (f, &end, 200, nothing);
  g_autoptr (GError) error = NULL;
  gboolean found;

  (void) data;
  g_assert_cmpfloat_with_epsilon (fp_scene_floor_at (f->scene, (FpPoint) { 0, -5000 }, &found), 50, 1e-6);
  g_assert_cmpfloat_with_epsilon (fp_scene_floor_at (then, (FpPoint) { 0, -5000 }, &found), 100, 1e-6);
  g_assert_cmpfloat_with_epsilon (fp_scene_floor_at (then, (FpPoint) { 0, -10000 }, &found), 200, 1e-6);
  g_assert_null (fp_retype (f->scene, &round, -20, nothing, &error));
  g_assert_error (error, FP_ERROR, FP_ERROR_INVALID);
}

/* Both walls give way, the floor and what leans on them with them. */
static void
test_walls (Fixture *f, gconstpointer data)
{
  const FpStretch width = { FP_STRETCH_WALLS, { -4000, 5000, 0 }, { 4000, 5000, 0 }, NULL, NULL };
  const FpStretch overall = { FP_STRETCH_WALLS, { -4600, -600, 0 }, { 4600, 9600, 0 }, NULL, NULL };
  g_autoptr (FpScene) wider = retyped (f, &width, 8200, nothing);
  g_autoptr (FpScene) longer = retyped (f, &overall, 10500, nothing);
  const FpBox *was = &church_placed (f->scene, "walls")->plan, *is = &church_placed (wider, "walls")->plan;

  (void) data;
  FROM_TO (is->x0, was->x0 - 100);
  FROM_TO (is->x1, was->x1 + 100);
  FROM_TO (is->y0, was->y0);
  FROM_TO (church_placed (wider, "floor")->plan.x1, 4100);
  FROM_TO (church_placed (wider, "credence")->plan.x1, 4100);
  FROM_TO (church_placed (wider, "shelf")->plan.x1, church_placed (f->scene, "shelf")->plan.x1 + 100);
  FROM_TO (church_placed (wider, "altar")->place.x, 0);
  /* In length the west end gives way; over all, the outer faces count. */
  FROM_TO (church_placed (longer, "walls")->plan.y0, was->y0 - 300);
  FROM_TO (church_placed (longer, "walls")->plan.y1, was->y1);
}

static void
test_what_cannot_be (Fixture *f, gconstpointer data)
{
  const FpStretch ends = { FP_STRETCH_ENDS, { 0, 0, 0 }, { 100, 0, 0 }, "rail", NULL };
  const FpStretch gone = { FP_STRETCH_APART, { 0, 0, 0 }, { 100, 0, 0 }, "nobody", NULL };
  const FpStretch walls = { FP_STRETCH_WALLS, { -100, 5000, 0 }, { 100, 5000, 0 }, NULL, NULL };
  g_autoptr (GError) a = NULL, b = NULL, c = NULL, d = NULL;

  (void) data;
  g_assert_null (fp_retype (f->scene, &ends, 50, nothing, &a));
  g_assert_error (a, FP_ERROR, FP_ERROR_INVALID);
  g_assert_null (fp_retype (f->scene, &gone, 50, nothing, &b));
  g_assert_error (b, FP_ERROR, FP_ERROR_INVALID);
  g_assert_null (fp_retype (f->scene, &walls, 50, nothing, &c));
  g_assert_error (c, FP_ERROR, FP_ERROR_INVALID);
  g_assert_null (fp_retype (f->scene, &ends, -50, nothing, &d));
  g_assert_error (d, FP_ERROR, FP_ERROR_RANGE);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
#define ADD(name, function) g_test_add ("/retype/" name, Fixture, NULL, set_up, function, tear_down)
  ADD ("apart", test_apart);
  ADD ("apart/wall", test_apart_from_the_wall);
  ADD ("footpace", test_footpace);
  ADD ("levels", test_levels);
  ADD ("fall", test_fall);
  ADD ("walls", test_walls);
  ADD ("refused", test_what_cannot_be);
  return g_test_run ();
}
