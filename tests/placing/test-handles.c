/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Corners and sides pulled by hand. */
#include "church.h"

#include "footpace/handles.h"
#include "footpace/store.h"

#include <math.h>

typedef struct { FpProject *project; FpScene *scene; } Fixture;

static void
set_up (Fixture *f, gconstpointer data)
{
  /* Clockwise along the inner face: north-west, north-east … with the Epistle side to the right. */
  static const FpPoint room[] = { { -4000, 0 }, { -4000, 9000 }, { 4000, 9000 }, { 4000, 0 } };

  (void) data;
  f->project = church_new (FP_FACING_EAST);
  church_floor (&f->project, "floor", (FpBox) { -4000, 0, 4000, 9000 }, 0, 1, 0, 0);
  church_survey (&f->project, &(ChurchThing) { .kind = "wall", .id = "walls", .corner = room, .n_corners = 4,
                                               .param = { { "closed", 1 } } });
  church_survey (&f->project, &(ChurchThing) { .kind = "opening", .id = "door", .on = "walls",
                                               .param = { { "side", 3 }, { "along", 6500 }, { "width", 1000 } } });
  church_add (&f->project, &(ChurchThing) { .kind = "altar", .id = "altar", .place = { 0, 6000, 0 },
                                            .param = { { "length", 2400 }, { "depth", 800 } } });
  church_add (&f->project, &(ChurchThing) { .kind = "credence", .id = "credence", .place = { 2500, 3000, 90 },
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
scene_of (FpProject *taken, GError *error)
{
  g_autoptr (FpProject) project = taken;

  g_assert_no_error (error);
  g_assert_nonnull (project);
  return fp_scene_new (project, 0);
}

static void
assert_point (FpPoint p, double x, double y)
{
  g_assert_cmpfloat_with_epsilon (p.x, x, 1e-6);
  g_assert_cmpfloat_with_epsilon (p.y, y, 1e-6);
}

static FpPoint
corner_of (const FpScene *scene, const char *id, guint i)
{
  const FpPlaced *placed = church_placed (scene, id);

  return fp_place_point (&placed->place, placed->form.corner[i]);
}

/* --- corners ---------------------------------------------------------------- */

static void
test_corners_are_moved_added_and_removed (Fixture *f, gconstpointer data)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GArray) handles = fp_handles_new (f->scene, "floor");
  const FpHandle *corner = &g_array_index (handles, FpHandle, 2);
  g_autoptr (FpScene) moved = NULL, more = NULL, fewer = NULL;
  g_autofree char *tells = fp_handle_tells (corner, f->scene, "floor");
  int side;

  (void) data;
  g_assert_cmpuint (handles->len, ==, 4);
  g_assert_true (g_str_has_prefix (tells, "Corner 3 of "));
  moved = scene_of (fp_handle_move (f->scene, "floor", corner, (FpVec3) { 30, -20, 0 }, &error), error);
  assert_point (corner_of (moved, "floor", 2), corner->at.x + 30, corner->at.y - 20);
  assert_point (corner_of (moved, "floor", 1), corner_of (f->scene, "floor", 1).x, corner_of (f->scene, "floor", 1).y);
  side = fp_corner_side (f->scene, "floor", (FpPoint) { 4010, 4000 }, 20);
  g_assert_cmpint (side, >=, 0);
  g_assert_cmpint (fp_corner_side (f->scene, "floor", (FpPoint) { 2000, 4000 }, 20), ==, -1);
  /* A pointer is never quite on the line; the corner is, and whole millimetres along it. */
  assert_point (fp_corner_on_side (f->scene, "floor", (guint) side, (FpPoint) { 4024, 3999.6 }), 4000, 4000);
  assert_point (fp_corner_on_side (f->scene, "floor", (guint) side, (FpPoint) { 4010, 1e6 }), 4000,
                fmax (corner_of (f->scene, "floor", (guint) side).y, corner_of (f->scene, "floor", ((guint) side + 1) % 4).y));
  more = scene_of (fp_corner_add (f->scene, "floor", (guint) side, (FpPoint) { 4500, 4000 }, &error), error);
  g_assert_cmpuint (church_placed (more, "floor")->form.n_corners, ==, 5);
  assert_point (corner_of (more, "floor", (guint) side + 1), 4500, 4000);
  fewer = scene_of (fp_corner_remove (more, "floor", (guint) side + 1, &error), error);
  for (guint i = 0; i < 4; i++)
    assert_point (corner_of (fewer, "floor", i), corner_of (f->scene, "floor", i).x, corner_of (f->scene, "floor", i).y);
}

/* An outline that crosses itself, or of two corners, is none. */
static void
test_corners_that_cannot_be (Fixture *f, gconstpointer data)
{
  g_autoptr (GError) crosses = NULL, few = NULL;
  g_autoptr (GArray) handles = fp_handles_new (f->scene, "floor");
  const FpHandle *corner = &g_array_index (handles, FpHandle, 0);
  const FpPoint line[] = { { 0, 0 }, { 1000, 0 } };

  (void) data;
  /* Beyond the corner that lies opposite: the two sides to it cross the other two. */
  g_assert_null (fp_handle_move (f->scene, "floor", corner,
                                 (FpVec3) { -2.5 * corner->at.x, 4500 - corner->at.y, 0 }, &crosses));
  g_assert_error (crosses, FP_ERROR, FP_ERROR_GEOMETRY);
  g_assert_null (fp_corners_set (f->scene, "floor", line, 2, &few));
  g_assert_error (few, FP_ERROR, FP_ERROR_GEOMETRY);
}

/* A door stays where it is, however its wall is divided. */
static void
test_openings_stay (Fixture *f, gconstpointer data)
{
  const FpPlace door = church_placed (f->scene, "door")->place;
  g_autoptr (GArray) handles = fp_handles_new (f->scene, "walls");
  g_autoptr (GError) error = NULL;
  g_autoptr (FpScene) longer = NULL, divided = NULL, joined = NULL;
  const FpHandle *corner = &g_array_index (handles, FpHandle, 2);
  int side;

  (void) data;
  longer = scene_of (fp_handle_move (f->scene, "walls", corner, (FpVec3) { 0, 700, 0 }, &error), error);
  assert_point ((FpPoint) { church_placed (longer, "door")->place.x, church_placed (longer, "door")->place.y }, door.x,
                door.y);
  g_assert_cmpfloat_with_epsilon (fp_item_param (church_placed (longer, "door")->item, "along"), 7200, 1e-6);
  side = fp_corner_side (longer, "walls", (FpPoint) { 4000, 5000 }, 1);
  g_assert_cmpint (side, ==, 2);
  divided = scene_of (fp_corner_add (longer, "walls", 2, (FpPoint) { 4000, 5000 }, &error), error);
  g_assert_cmpfloat (fp_item_param (church_placed (divided, "door")->item, "side"), ==, 4);
  assert_point ((FpPoint) { church_placed (divided, "door")->place.x, church_placed (divided, "door")->place.y }, door.x,
                door.y);
  joined = scene_of (fp_corner_remove (divided, "walls", 3, &error), error);
  g_assert_cmpfloat (fp_item_param (church_placed (joined, "door")->item, "side"), ==, 3);
  assert_point ((FpPoint) { church_placed (joined, "door")->place.x, church_placed (joined, "door")->place.y }, door.x,
                door.y);
}

/* --- sides -------------------------------------------------------------------- */

static const FpHandle *
handle_at (const GArray *handles, double x, double y)
{
  for (guint i = 0; i < handles->len; i++)
    {
      const FpHandle *handle = &g_array_index (handles, FpHandle, i);

      if (hypot (handle->at.x - x, handle->at.y - y) < 1e-6)
        return handle;
    }
  g_error ("no handle at %g, %g", x, y);
}

/* On the axis both ends are pulled alike; front and back each alone. */
static void
test_altar_is_pulled (Fixture *f, gconstpointer data)
{
  g_autoptr (GArray) handles = fp_handles_new (f->scene, "altar");
  const FpBox *was = &church_placed (f->scene, "altar")->plan, *is;
  g_autoptr (GError) error = NULL;
  g_autoptr (FpScene) longer = NULL, deeper = NULL;
  const FpHandle *end, *front;

  (void) data;
  g_assert_cmpuint (handles->len, ==, 4);
  end = handle_at (handles, was->x1, (was->y0 + was->y1) / 2);
  front = handle_at (handles, 0, was->y0);
  g_assert_cmpuint (fp_handle_ways (end), ==, 1);
  g_assert_cmpuint (fp_handle_ways (front), ==, 2);
  g_assert_cmpfloat (end->reach, ==, 2400);
  longer = scene_of (fp_handle_move (f->scene, "altar", end, (FpVec3) { 100, 55, 0 }, &error), error);
  is = &church_placed (longer, "altar")->plan;
  g_assert_cmpfloat_with_epsilon (is->x0, was->x0 - 100, 1e-6);
  g_assert_cmpfloat_with_epsilon (is->x1, was->x1 + 100, 1e-6);
  g_assert_cmpfloat_with_epsilon (is->y0, was->y0, 1e-6);
  deeper = scene_of (fp_handle_move (f->scene, "altar", front, (FpVec3) { 0, -60, 0 }, &error), error);
  is = &church_placed (deeper, "altar")->plan;
  g_assert_cmpfloat_with_epsilon (is->y0, was->y0 - 60, 1e-6);
  g_assert_cmpfloat_with_epsilon (is->y1, was->y1, 1e-6);
}

/* Turned, and off the axis: the opposite side stays. */
static void
test_credence_is_pulled (Fixture *f, gconstpointer data)
{
  g_autoptr (GArray) handles = fp_handles_new (f->scene, "credence");
  const FpBox *was = &church_placed (f->scene, "credence")->plan, *is;
  const FpHandle *end = handle_at (handles, (was->x0 + was->x1) / 2, was->y1);
  g_autoptr (GError) error = NULL, too_far = NULL;
  g_autoptr (FpScene) longer = NULL;

  (void) data;
  g_assert_cmpstr (end->param, ==, "length");
  longer = scene_of (fp_handle_move (f->scene, "credence", end, (FpVec3) { 0, 90, 0 }, &error), error);
  is = &church_placed (longer, "credence")->plan;
  g_assert_cmpfloat_with_epsilon (is->y1, was->y1 + 90, 1e-6);
  g_assert_cmpfloat_with_epsilon (is->y0, was->y0, 1e-6);
  g_assert_cmpfloat_with_epsilon (is->x0, was->x0, 1e-6);
  g_assert_null (fp_handle_move (f->scene, "credence", end, (FpVec3) { 0, 90000, 0 }, &too_far));
  g_assert_error (too_far, FP_ERROR, FP_ERROR_RANGE);
}

/* Whatever can be pulled in the samples: its side comes along just as far. */
static void
check_side (const FpScene *scene, const char *id, const FpHandle *handle, guint number)
{
  const FpVec3 by = { 12 * handle->way.x, 12 * handle->way.y, 0 };
  g_autoptr (GError) error = NULL;
  g_autoptr (FpProject) next = fp_handle_move (scene, id, handle, by, &error);
  g_autoptr (FpScene) then = next != NULL ? fp_scene_new (next, fp_scene_alternative (scene)) : NULL;
  g_autoptr (GArray) handles = then != NULL ? fp_handles_new (then, id) : NULL;

  g_assert_no_error (error); /* nothing in the samples is as large as it may be */
  g_assert_nonnull (handles);
  g_assert_cmpuint (number, <, handles->len);
  assert_point (g_array_index (handles, FpHandle, number).at, handle->at.x + by.x, handle->at.y + by.y);
}

static void
test_samples_are_pulled (void)
{
  g_autofree char *path = g_build_filename (g_getenv ("FOOTPACE_SAMPLES"), "parish.footpace", NULL);
  g_autoptr (FpProject) project = fp_store_load (path, NULL);
  guint pulled = 0;

  for (guint a = 0; a < fp_project_n_alternatives (project); a++)
    {
      g_autoptr (FpScene) scene = fp_scene_new (project, a);
      guint n;
      const FpPlaced *placed = fp_scene_placed (scene, &n);

      for (guint i = 0; i < n; i++)
        {
          const char *id = fp_item_id (placed[i].item);
          g_autoptr (GArray) handles = placed[i].ghost ? NULL : fp_handles_new (scene, id);

          for (guint h = 0; handles != NULL && h < handles->len; h++)
            if (g_array_index (handles, FpHandle, h).sort == FP_HANDLE_SIDE)
              {
                check_side (scene, id, &g_array_index (handles, FpHandle, h), h);
                pulled++;
              }
        }
    }
  g_assert_cmpuint (pulled, >, 40);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
#define ADD(name, function) g_test_add ("/handles/" name, Fixture, NULL, set_up, function, tear_down)
  ADD ("corners", test_corners_are_moved_added_and_removed);
  ADD ("corners/invalid", test_corners_that_cannot_be);
  ADD ("corners/openings", test_openings_stay);
  ADD ("sides/altar", test_altar_is_pulled);
  ADD ("sides/credence", test_credence_is_pulled);
  g_test_add_func ("/handles/samples", test_samples_are_pulled);
  return g_test_run ();
}
