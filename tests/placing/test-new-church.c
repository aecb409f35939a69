/* SPDX-License-Identifier: GPL-3.0-or-later */
/* test-new-church.c - every room to begin from is a whole project */
#include "church.h"

#include "footpace/new-church.h"
#include "footpace/people.h"
#include "footpace/store.h"

#include <math.h>

static FpProject *
make (const FpNewChurch *spec)
{
  g_autoptr (GError) error = NULL;
  FpProject *project = fp_new_church_make (spec, &error);

  g_assert_no_error (error);
  g_assert_true (fp_project_check (project, &error));
  g_assert_no_error (error);
  return project;
}

static FpNewChurch
defaults (FpRoomShape shape)
{
  FpNewChurch spec;

  fp_new_church_defaults (&spec);
  spec.shape = shape;
  return spec;
}

static double
area (const FpNewChurch *spec)
{
  g_autoptr (GArray) outline = fp_new_church_outline (spec, NULL);

  return -fp_outline_area ((const FpPoint *) (gpointer) outline->data, outline->len) / 1e6;
}

/* By hand, in square metres; clockwise, so that the thickness of the wall lies outside. */
static void
test_areas (void)
{
  FpNewChurch spec = defaults (FP_ROOM_RECTANGLE);

  g_assert_cmpfloat_with_epsilon (area (&spec), 12 * 29, 1e-9);
  spec.shape = FP_ROOM_CHANCEL;
  g_assert_cmpfloat_with_epsilon (area (&spec), 12 * 20 + 9 * 9, 1e-9);
  spec.shape = FP_ROOM_TRANSEPTS;
  g_assert_cmpfloat_with_epsilon (area (&spec), 12 * 20 + 10 * 6 + 9 * 9, 1e-9);
  spec.apse = TRUE;
  /* 24 sides about a half circle of radius 4.5. */
  g_assert_cmpfloat_with_epsilon (area (&spec), 12 * 20 + 10 * 6 + 9 * 4.5 + 24 * 4.5 * 4.5 * tan (G_PI / 48), 1e-6);
}

/* A wall round an apse reaches as far as the arc that it stands for: the nave, the sanctuary and a wall at either end. */
static void
test_apse_is_no_longer (void)
{
  FpNewChurch spec = defaults (FP_ROOM_CHANCEL);
  g_autoptr (FpProject) project = NULL;
  g_autoptr (FpScene) scene = NULL;
  FpBox3 all = FP_BOX3_EMPTY;
  guint n;
  const FpSolid *solid;

  spec.apse = TRUE;
  project = make (&spec);
  scene = fp_scene_new (project, 0);
  solid = fp_scene_solids (scene, &n);
  for (guint i = 0; i < n; i++)
    if (solid[i].part == FP_PART_WALL)
      for (guint k = 0; k < solid[i].n_outline; k++)
        fp_box3_add_point (&all, (FpVec3) { solid[i].outline[k].x, solid[i].outline[k].y, 0 });
  g_assert_cmpfloat_with_epsilon (all.hi.y - all.lo.y, 20000 + 9000 + 2 * 600, 1e-6);
  g_assert_cmpfloat_with_epsilon (all.hi.x - all.lo.x, 12000 + 2 * 600, 1e-6);
}

/* What stands on the floor of the sanctuary stands within the walls and nothing in the way of another. */
static void
assert_stands_well (const FpScene *scene, const GArray *outline)
{
  guint n;
  const FpPlaced *placed = fp_scene_placed (scene, &n);

  for (guint i = 0; i < n; i++)
    {
      const FpBox *one = &placed[i].plan;
      const FpPoint corner[] = { { one->x0 + 1, one->y0 + 1 }, { one->x1 - 1, one->y0 + 1 }, { one->x1 - 1, one->y1 - 1 },
                                 { one->x0 + 1, one->y1 - 1 } };

      if (placed[i].in_survey)
        continue;
      for (guint k = 0; k < G_N_ELEMENTS (corner); k++)
        g_assert_true (fp_outline_contains ((const FpPoint *) (gconstpointer) outline->data, outline->len, corner[k]));
      for (guint k = 0; k < i; k++)
        if (!placed[k].in_survey && placed[i].support < 0 && placed[k].support < 0)
          g_assert_false (fp_box_overlaps (&placed[k].plan, one));
    }
}

static void
test_all_stand_well (void)
{
  for (guint shape = 0; shape < FP_ROOM_WALKED; shape++)
    for (guint apse = 0; apse < 2; apse++)
      for (FpBooks books = FP_BOOKS_OLDER; books <= FP_BOOKS_BOTH; books++)
        {
          FpNewChurch spec = defaults (shape);
          g_autoptr (GArray) outline = NULL;
          g_autoptr (FpProject) project = NULL;
          g_autoptr (FpScene) scene = NULL;

          spec.apse = apse == 1;
          spec.brief.books = books;
          outline = fp_new_church_outline (&spec, NULL);
          project = make (&spec);
          scene = fp_scene_new (project, 0);
          assert_stands_well (scene, outline);
          /* The usual church has room for all of it. */
          g_assert_cmpint (fp_scene_find (scene, "credence"), >=, 0);
          g_assert_cmpint (fp_scene_find (scene, books == FP_BOOKS_NEWER ? "chair" : "sedilia"), >=, 0);
        }
}

/* Each makes a project that saves and opens again, with an altar that stands in the sanctuary. */
static void
test_every_room (void)
{
  for (guint shape = 0; shape < FP_ROOM_WALKED; shape++)
    for (guint apse = 0; apse < 2; apse++)
      {
        FpNewChurch spec = defaults (shape);
        g_autoptr (FpProject) project = NULL, again = NULL;
        g_autoptr (FpScene) scene = NULL;
        g_autofree char *xml = NULL;
        gsize length;
        int altar;

        spec.apse = apse == 1;
        project = make (&spec);
        xml = fp_store_write (project, &length);
        again = fp_store_parse (xml, length, "new", NULL);
        g_assert_true (fp_project_equal (project, again));
        scene = (FpScene *) fp_scene_new (project, 0);
        altar = fp_scene_celebrated_altar (scene);
        g_assert_cmpint (altar, >=, 0);
        g_assert_cmpfloat (fp_scene_placed (scene, NULL)[altar].plan.y0, >, 0);
        g_assert_cmpfloat (fp_scene_placed (scene, NULL)[altar].plan.y1, <, 9000);
        g_assert_cmpint (fp_scene_find (scene, "west-door"), >=, 0);
        g_assert_cmpint (fp_scene_find (scene, "sacristy-door"), >=, 0);
      }
}

static void
test_seats (void)
{
  FpNewChurch spec = defaults (FP_ROOM_CHANCEL);
  g_autoptr (FpProject) some = NULL, most = NULL;
  g_autoptr (FpScene) scene = NULL, full = NULL;
  g_autoptr (FpPeople) people = NULL, crowd = NULL;

  spec.brief.seats = 60;
  some = make (&spec);
  scene = (FpScene *) fp_scene_new (some, 0);
  people = fp_people_new (scene);
  g_assert_cmpuint (fp_people_seats (people), >=, 60);
  g_assert_cmpuint (fp_people_seats (people), <, 60 + 30); /* not a row too many */
  /* More than the nave can hold: as many as it can. */
  spec.brief.seats = 5000;
  most = make (&spec);
  full = (FpScene *) fp_scene_new (most, 0);
  crowd = fp_people_new (full);
  g_assert_cmpuint (fp_people_seats (crowd), >, 60);
  g_assert_cmpuint (fp_people_seats (crowd), <, 700);
}

/* In the middle of the wall. */
static void
check_door (const FpScene *scene, const char *id, double x, double y, double sill)
{
  const int i = fp_scene_find (scene, id);
  const FpPlaced *placed = fp_scene_placed (scene, NULL);

  g_assert_cmpint (i, >=, 0);
  g_assert_cmpfloat_with_epsilon ((placed[i].plan.x0 + placed[i].plan.x1) / 2.0, x, 1.0);
  g_assert_cmpfloat_with_epsilon ((placed[i].plan.y0 + placed[i].plan.y1) / 2.0, y, 1.0);
  g_assert_cmpfloat_with_epsilon (fp_item_param (placed[i].item, "sill"), sill, 1e-9);
}

/* A sanctuary as small as may be has an altar that leaves a way past it, and of the rest what finds room. */
static void
test_small_sanctuary (void)
{
  FpNewChurch spec = defaults (FP_ROOM_CHANCEL);
  g_autoptr (FpProject) project = NULL;
  g_autoptr (FpScene) scene = NULL;
  const FpPlaced *placed;
  guint n;

  spec.nave_width = spec.sanctuary_width = spec.sanctuary_depth = 3000;
  project = make (&spec);
  scene = (FpScene *) fp_scene_new (project, 0);
  placed = fp_scene_placed (scene, &n);
  g_assert_cmpint (fp_scene_find (scene, "altar"), >=, 0);
  g_assert_cmpint (fp_scene_find (scene, "crucifix"), >=, 0);
  g_assert_cmpint (fp_scene_find (scene, "sedilia"), <, 0);
  for (guint i = 0; i < n; i++)
    if (!placed[i].in_survey && placed[i].support < 0)
      for (guint k = 0; k < i; k++)
        g_assert_false (!placed[k].in_survey && placed[k].support < 0 && fp_box_overlaps (&placed[i].plan, &placed[k].plan));
}

static void
test_walked (void)
{
  /* Counter-clockwise, an octagon cut by the line of the sanctuary. */
  const FpPoint corner[] = { { 4000, -9000 }, { 8000, -5000 }, { 8000, 3000 }, { 4000, 7000 }, { -4000, 7000 },
                             { -8000, 3000 }, { -8000, -5000 }, { -4000, -9000 } };
  const FpPoint bow[] = { { 0, -5000 }, { 5000, 5000 }, { 0, 5000 }, { 5000, -5000 } };
  FpNewChurch spec = defaults (FP_ROOM_WALKED);
  g_autoptr (GError) error = NULL;
  g_autoptr (FpProject) project = NULL;
  g_autoptr (FpScene) scene = NULL;
  gboolean found;

  spec.corner = corner;
  spec.n_corners = G_N_ELEMENTS (corner);
  project = make (&spec);
  scene = (FpScene *) fp_scene_new (project, 0);
  g_assert_cmpfloat (fp_scene_floor_at (scene, (FpPoint) { 7900, 100 }, &found), ==, 450);
  g_assert_true (found);
  g_assert_cmpfloat (fp_scene_floor_at (scene, (FpPoint) { 7900, -100 }, &found), ==, 0);
  g_assert_true (found);
  /* A door in the middle of the side that is farthest west, and one in the first side of the sanctuary from the east. */
  check_door (scene, "west-door", 0, -9000, 0);
  check_door (scene, "sacristy-door", 4000 + 750 * G_SQRT2 / 2, 7000 - 750 * G_SQRT2 / 2, 450);
  spec.doors = FALSE;
  fp_project_unref (project);
  fp_scene_unref (scene);
  project = make (&spec);
  scene = (FpScene *) fp_scene_new (project, 0);
  g_assert_cmpint (fp_scene_find (scene, "west-door"), <, 0);
  spec.corner = bow;
  spec.n_corners = 4;
  g_assert_null (fp_new_church_make (&spec, &error));
  g_assert_error (error, FP_ERROR, FP_ERROR_GEOMETRY);
}

static void
test_refusals (void)
{
  FpNewChurch narrow = defaults (FP_ROOM_CHANCEL), arms = defaults (FP_ROOM_TRANSEPTS), shallow = narrow,
              nan = narrow, none = defaults (FP_ROOM_WALKED);
  FpNewChurch *all[] = { &narrow, &arms, &shallow, &nan, &none };

  narrow.sanctuary_width = narrow.nave_width + 1;
  arms.transept_span = arms.nave_width;
  shallow.apse = TRUE;
  shallow.sanctuary_depth = shallow.sanctuary_width / 2.0;
  nan.wall_height = NAN;
  for (guint i = 0; i < G_N_ELEMENTS (all); i++)
    {
      g_autoptr (GError) error = NULL;

      g_assert_null (fp_new_church_make (all[i], &error));
      g_assert_nonnull (error);
      g_assert_cmpint (error->domain, ==, FP_ERROR);
    }
}

/* As wide as the nave, the chancel has no corners of its own. */
static void
test_as_wide_as_the_nave (void)
{
  FpNewChurch spec = defaults (FP_ROOM_CHANCEL);
  g_autoptr (FpProject) project = NULL;

  spec.sanctuary_width = spec.nave_width;
  spec.sanctuary_level = 0;
  project = make (&spec);
  g_assert_nonnull (project);
  spec.apse = TRUE;
  g_clear_pointer (&project, fp_project_unref);
  project = make (&spec);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/new-church/areas", test_areas);
  g_test_add_func ("/new-church/all-stand-well", test_all_stand_well);
  g_test_add_func ("/new-church/apse-is-no-longer", test_apse_is_no_longer);
  g_test_add_func ("/new-church/every-room", test_every_room);
  g_test_add_func ("/new-church/seats", test_seats);
  g_test_add_func ("/new-church/small-sanctuary", test_small_sanctuary);
  g_test_add_func ("/new-church/walked", test_walked);
  g_test_add_func ("/new-church/refusals", test_refusals);
  g_test_add_func ("/new-church/as-wide-as-the-nave", test_as_wide_as_the_nave);
  return g_test_run ();
}
