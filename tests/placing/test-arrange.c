/* SPDX-License-Identifier: GPL-3.0-or-later */
/* test-arrange.c - several things at once */
#include "church.h"

#include "footpace/arrange.h"
#include "footpace/setting-out.h"

#include <math.h>
#include <string.h>

typedef struct
{
  FpProject *project;
  FpScene   *scene;
} Fixture;

/* A nave and a sanctuary, an altar on its steps with candlesticks, a credence, a bench kept from the survey,
 * and a wall round it all with a window in its Gospel side. */
static void
set_up (Fixture *f, gconstpointer data)
{
  static const FpPoint walls[] = { { -5000, -15000 }, { -5000, 8000 }, { 5000, 8000 }, { 5000, -15000 } };

  (void) data;
  f->project = church_new (FP_FACING_EAST);
  church_floor (&f->project, "nave", (FpBox) { -5000, -15000, 5000, 0 }, 0, 0, 0, 0);
  church_floor (&f->project, "chancel", (FpBox) { -5000, 0, 5000, 8000 }, 300, 1, 0, 0);
  church_survey (&f->project, &(ChurchThing) { .kind = "wall", .id = "walls", .corner = walls, .n_corners = 4,
                                               .param = { { "closed", 1 } } });
  church_survey (&f->project, &(ChurchThing) { .kind = "opening", .id = "window", .on = "walls",
                                               .param = { { "side", 1 }, { "along", 4000 }, { "width", 1000 },
                                                          { "sill", 2000 }, { "head", 5000 } } });
  church_survey (&f->project, &(ChurchThing) { .kind = "sedilia", .id = "bench", .place = { 3000, 4000, -90 } });
  church_add (&f->project, &(ChurchThing) { .kind = "footpace", .id = "footpace" });
  church_add (&f->project, &(ChurchThing) { .kind = "altar", .id = "altar", .on = "footpace", .place = { 0, 5000, 0 } });
  church_add (&f->project, &(ChurchThing) { .kind = "candlesticks", .id = "candles", .on = "altar",
                                            .place = { 100, 50, 10 } });
  church_add (&f->project, &(ChurchThing) { .kind = "credence", .id = "credence", .place = { 4000, 6000, -90 } });
  f->scene = (FpScene *) fp_scene_new (f->project, 0);
}

static void
tear_down (Fixture *f, gconstpointer data)
{
  (void) data;
  fp_scene_unref (f->scene);
  fp_project_unref (f->project);
}

static GError *failure; /* of the edit that a test expects to succeed */

/* Takes @project. */
static const FpScene *
scene_of (FpProject *project)
{
  const FpScene *scene;

  g_assert_no_error (failure);
  g_assert_true (fp_project_check (project, NULL));
  scene = fp_scene_new (project, 0);
  fp_project_unref (project);
  return scene;
}

static void
assert_at (const FpScene *scene, const char *id, double x, double y, double turn)
{
  const FpPlaced *placed = church_placed (scene, id);

  g_assert_cmpfloat_with_epsilon (placed->place.x, x, 1e-6);
  g_assert_cmpfloat_with_epsilon (placed->place.y, y, 1e-6);
  g_assert_cmpfloat_with_epsilon (placed->place.turn, turn, 1e-6);
}

#define IDS(...) ((const char *const[]) { __VA_ARGS__, NULL })

static void
test_move (Fixture *f, gconstpointer data)
{
  g_autoptr (GError) error = NULL;
  /* The footpace carries the altar, the altar the candles: none is moved twice. */
  g_autoptr (FpScene) scene = (FpScene *) scene_of (fp_arrange_move (f->scene, IDS ("altar", "candles", "footpace",
                                                                     "credence"), (FpVec3) { 100, -200, 0 }, &failure));

  (void) data;
  assert_at (scene, "altar", 100, 4800, 0);
  assert_at (scene, "credence", 4100, 5800, -90);
  g_assert_cmpfloat_with_epsilon (church_placed (scene, "candles")->place.x,
                                  church_placed (f->scene, "candles")->place.x + 100, 1e-6);
}

static void
test_remove (Fixture *f, gconstpointer data)
{
  g_autoptr (FpScene) scene = (FpScene *) scene_of (fp_arrange_remove (f->scene, IDS ("candles", "bench", "altar"),
                                                                       &failure));

  (void) data;
  g_assert_cmpint (fp_scene_find (scene, "altar"), ==, -1);
  g_assert_cmpint (fp_scene_find (scene, "candles"), ==, -1);
  g_assert_cmpint (fp_scene_find (scene, "bench"), ==, -1);
  g_assert_cmpint (fp_scene_find (scene, "credence"), >=, 0);
}

static void
test_centre (Fixture *f, gconstpointer data)
{
  g_autoptr (FpScene) scene = (FpScene *) scene_of (fp_arrange_centre (f->scene, IDS ("credence", "bench"), &failure));
  const FpBox *a = &church_placed (scene, "credence")->plan, *b = &church_placed (scene, "bench")->plan;

  (void) data;
  g_assert_cmpfloat_with_epsilon (MIN (a->x0, b->x0) + MAX (a->x1, b->x1), 0, 1e-6);
}

static void
test_mirror (Fixture *f, gconstpointer data)
{
  g_autoptr (FpScene) scene = (FpScene *) scene_of (fp_arrange_mirror (f->scene, IDS ("credence", "altar", "bench",
                                                                       "window"), FALSE, NULL, &failure));
  const FpPlaced *before = church_placed (f->scene, "candles"), *window = church_placed (scene, "window");

  (void) data;
  assert_at (scene, "credence", -4000, 6000, 90);
  assert_at (scene, "bench", -3000, 4000, 90);
  assert_at (scene, "altar", 0, 5000, 0);
  assert_at (scene, "candles", -before->place.x, before->place.y, -before->place.turn);
  g_assert_true (church_placed (scene, "bench")->moved);
  g_assert_cmpfloat (fp_item_param (window->item, "side"), ==, 3);
  g_assert_cmpfloat_with_epsilon (fp_item_param (window->item, "along"), 23000 - 4000, 1e-6);
}

/* Twice over is as before, of everything that can be mirrored where it stands. */
static void
test_mirror_twice (Fixture *f, gconstpointer data)
{
  const char *const ids[] = { "credence", "footpace", "bench", "window", "nave", "chancel", NULL };
  g_autoptr (FpScene) once = (FpScene *) scene_of (fp_arrange_mirror (f->scene, ids, FALSE, NULL, &failure));
  g_autoptr (FpScene) twice = (FpScene *) scene_of (fp_arrange_mirror (once, ids, FALSE, NULL, &failure));

  (void) data;
  g_assert_true (fp_project_equal (fp_scene_project (twice), f->project));
  g_assert_false (fp_project_equal (fp_scene_project (once), f->project));
}

static void
test_mirror_copy (Fixture *f, gconstpointer data)
{
  g_auto (GStrv) made = NULL;
  g_autoptr (FpScene) scene = (FpScene *) scene_of (fp_arrange_mirror (f->scene, IDS ("credence", "window"), TRUE, &made,
                                                                       &failure));

  (void) data;
  g_assert_cmpuint (g_strv_length (made), ==, 2);
  g_assert_cmpstr (made[0], ==, "credence-2");
  assert_at (scene, "credence", 4000, 6000, -90);
  assert_at (scene, "credence-2", -4000, 6000, 90);
  g_assert_cmpfloat (fp_item_param (church_placed (scene, made[1])->item, "side"), ==, 3);
}

/* A wall with its openings: every point of it comes to the other side. */
static void
test_mirror_copy_of_a_wall (Fixture *f, gconstpointer data)
{
  g_auto (GStrv) made = NULL;
  g_autoptr (FpScene) scene = (FpScene *) scene_of (fp_arrange_mirror (f->scene, IDS ("walls"), TRUE, &made, &failure));
  const FpPlaced *window = church_placed (f->scene, "window"), *other = church_placed (scene, "window-2");

  (void) data;
  g_assert_cmpstr (made[0], ==, "walls-2");
  g_assert_cmpfloat_with_epsilon (other->place.x, -window->place.x, 1e-6);
  g_assert_cmpfloat_with_epsilon (other->place.y, window->place.y, 1e-6);
  g_assert_false (fp_project_equal (fp_scene_project (scene), f->project));
}

static void
test_mirror_names (Fixture *f, gconstpointer data)
{
  FpProject *named = fp_project_ref (f->project);
  g_autoptr (FpScene) scene = NULL, after = NULL;

  (void) data;
  church_add (&named, &(ChurchThing) { .kind = "credence", .id = "table", .place = { 3000, 2000, -90 } });
  scene = (FpScene *) scene_of (named);
  after = (FpScene *) scene_of (fp_arrange_mirror (scene, IDS ("table"), TRUE, NULL, &failure));
  g_assert_cmpstr (fp_item_name (church_placed (after, "table-2")->item), ==, "Credence");
}

static void
test_space (Fixture *f, gconstpointer data)
{
  FpProject *p = fp_project_ref (f->project);
  g_autoptr (FpScene) scene = NULL, after = NULL;
  const FpBox *a, *b, *c;

  (void) data;
  church_add (&p, &(ChurchThing) { .kind = "credence", .id = "one", .place = { -3000, 2000, 0 } });
  church_add (&p, &(ChurchThing) { .kind = "chair", .id = "two", .place = { -2200, 2000, 0 } });
  church_add (&p, &(ChurchThing) { .kind = "credence", .id = "three", .place = { 2000, 2000, 0 } });
  scene = (FpScene *) scene_of (p);
  after = (FpScene *) scene_of (fp_arrange_space (scene, IDS ("three", "one", "two"), FALSE, &failure));
  a = &church_placed (after, "one")->plan;
  b = &church_placed (after, "two")->plan;
  c = &church_placed (after, "three")->plan;
  g_assert_cmpfloat_with_epsilon (b->x0 - a->x1, c->x0 - b->x1, 1e-6);
  assert_at (after, "one", -3000, 2000, 0);
  assert_at (after, "three", 2000, 2000, 0);
}

static void
test_level (Fixture *f, gconstpointer data)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FpScene) scene = (FpScene *) scene_of (fp_arrange_level (f->scene, IDS ("nave"), "chancel", &failure));
  FpProject *refused;

  (void) data;
  g_assert_cmpfloat (fp_item_param (church_placed (scene, "nave")->item, "level"), ==, 300);
  refused = fp_arrange_level (f->scene, IDS ("footpace"), "chancel", &error);
  g_assert_null (refused);
  g_assert_error (error, FP_ERROR, FP_ERROR_INVALID);
  g_clear_error (&error);
  /* The credence stands on the sanctuary floor; its top to the top of the bench's back. */
  g_clear_pointer (&scene, fp_scene_unref);
  scene = (FpScene *) scene_of (fp_arrange_level (f->scene, IDS ("credence"), "bench", &failure));
  g_assert_no_error (error);
  g_assert_cmpfloat_with_epsilon (church_placed (scene, "credence")->level
                                  + church_placed (scene, "credence")->extent.height, 300 + 850, 1e-6);
}

static void
test_repeat (Fixture *f, gconstpointer data)
{
  g_auto (GStrv) made = NULL;
  g_autoptr (GError) error = NULL;
  g_autoptr (FpScene) scene = (FpScene *) scene_of (fp_arrange_repeat (f->scene, IDS ("credence", "window"),
                                                                       (FpVec3) { 0, -1200, 0 }, 3, &made, &failure));

  (void) data;
  g_assert_cmpuint (g_strv_length (made), ==, 6);
  assert_at (scene, "credence-2", 4000, 4800, -90);
  assert_at (scene, "credence-4", 4000, 2400, -90);
  g_assert_cmpfloat_with_epsilon (fp_item_param (church_placed (scene, "window-3")->item, "along"), 1600, 1e-6);
  /* The fourth window would run into the third. */
  g_assert_null (fp_arrange_repeat (f->scene, IDS ("window"), (FpVec3) { 0, -1200, 0 }, 0, NULL, &error));
  g_assert_error (error, FP_ERROR, FP_ERROR_RANGE);
}

/* All or none: what stands on another that is chosen too is not left out. */
static void
test_param (Fixture *f, gconstpointer data)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FpScene) scene = (FpScene *) scene_of (fp_arrange_param (f->scene, IDS ("altar", "credence"), "height", 1000,
                                                                      &failure));

  (void) data;
  g_assert_cmpfloat (fp_item_param (church_placed (scene, "altar")->item, "height"), ==, 1000);
  g_assert_cmpfloat (fp_item_param (church_placed (scene, "credence")->item, "height"), ==, 1000);
  g_assert_null (fp_arrange_param (f->scene, IDS ("credence", "window"), "height", 1000, &error));
  g_assert_error (error, FP_ERROR, FP_ERROR_REFERENCE);
  g_clear_error (&error);
  /* Named once, by its id, with lengths as the project has them. */
  g_assert_null (fp_arrange_param (f->scene, IDS ("credence"), "height", 99999 + 1.0 / 3.0, &error));
  g_assert_error (error, FP_ERROR, FP_ERROR_RANGE);
  g_assert_true (g_str_has_prefix (error->message, "credence: "));
  g_assert_nonnull (strstr (error->message, " is 99\342\200\257999.3 mm; it may be from "));
}

/* What has a level of its own goes up by it; a credence stands on what is beneath it. */
/* Twice, to the west. */
static FpScene *
repeated (FpScene *scene, const char *const *ids)
{
  FpScene *next = (FpScene *) scene_of (fp_arrange_repeat (scene, ids, (FpVec3) { 0, -200, 0 }, 2, NULL, &failure));

  fp_scene_unref (scene);
  return next;
}

static FpScene *
called (FpScene *scene, const char *id, const char *name)
{
  FpScene *next = (FpScene *) scene_of (fp_set_out_name (scene, id, name, &failure));

  fp_scene_unref (scene);
  return next;
}

/* Each of the like has a name of its own: that of its kind, or what a person has called it, and a number. */
static void
test_repeat_names (Fixture *f, gconstpointer data)
{
  FpProject *named = fp_project_ref (f->project);
  FpScene *scene;

  (void) data;
  church_add (&named, &(ChurchThing) { .kind = "chair", .id = "old", .place = { -3000, 2000, 0 } });
  church_add (&named, &(ChurchThing) { .kind = "chair", .id = "stool", .place = { -3000, 3000, 0 } });
  scene = called (called ((FpScene *) scene_of (named), "old", "Chair of 1974"), "stool", "Stool 7");
  scene = repeated (scene, IDS ("credence", "old", "stool"));
  g_assert_cmpstr (fp_item_name (church_placed (scene, "credence")->item), ==, "Credence");
  g_assert_cmpstr (fp_item_name (church_placed (scene, "credence-2")->item), ==, "Credence 2");
  g_assert_cmpstr (fp_item_name (church_placed (scene, "credence-3")->item), ==, "Credence 3");
  g_assert_cmpstr (fp_item_name (church_placed (scene, "old-2")->item), ==, "Chair of 1974 2");
  g_assert_cmpstr (fp_item_name (church_placed (scene, "stool-2")->item), ==, "Stool 2");
  g_assert_cmpstr (fp_item_name (church_placed (scene, "stool-3")->item), ==, "Stool 3");
  /* And once more: those that there are keep theirs. */
  scene = repeated (scene, IDS ("credence-3"));
  g_assert_cmpstr (fp_item_name (church_placed (scene, "credence-5")->item), ==, "Credence 5");
  fp_scene_unref (scene);
}

static void
test_repeat_upward (Fixture *f, gconstpointer data)
{
  g_auto (GStrv) made = NULL;
  g_autoptr (GError) error = NULL;
  guint n;
  const FpPlaced *placed = fp_scene_placed (f->scene, &n);

  (void) data;
  for (guint i = 0; i < n; i++)
    if (fp_item_kind (placed[i].item)->role == FP_ROLE_FLOOR)
      {
        const char *id = fp_item_id (placed[i].item);
        g_autoptr (FpScene) scene = (FpScene *) scene_of (fp_arrange_repeat (f->scene, IDS (id), (FpVec3) { 0, 0, 150 },
                                                                             2, &made, &failure));
        const int third = fp_scene_find (scene, made[1]);

        g_assert_cmpint (third, >=, 0);
        g_assert_cmpfloat (fp_item_param (fp_scene_placed (scene, NULL)[third].item, "level"), ==,
                           fp_item_param (placed[i].item, "level") + 300);
        break;
      }
  g_assert_null (fp_arrange_repeat (f->scene, IDS ("credence"), (FpVec3) { 0, 500, 150 }, 1, NULL, &error));
  g_assert_error (error, FP_ERROR, FP_ERROR_INVALID);
}

/* Openings may not overlap, so a repeat that would make them is refused as a whole. */
static void
test_repeat_refused (Fixture *f, gconstpointer data)
{
  g_autoptr (GError) error = NULL;

  (void) data;
  g_assert_null (fp_arrange_repeat (f->scene, IDS ("window"), (FpVec3) { 0, -300, 0 }, 2, NULL, &error));
  g_assert_nonnull (error);
}

/* A copy of what carries others carries copies of them. */
static void
test_repeat_carries (Fixture *f, gconstpointer data)
{
  g_autoptr (FpScene) scene = (FpScene *) scene_of (fp_arrange_repeat (f->scene, IDS ("footpace"),
                                                                       (FpVec3) { 0, -3000, 0 }, 1, NULL, &failure));
  const FpPlaced *candles = church_placed (scene, "candles-2");
  const FpPlaced *placed = fp_scene_placed (scene, NULL);

  (void) data;
  assert_at (scene, "altar-2", 0, 2000, 0);
  assert_at (scene, "footpace-2", 0, 2000, 0);
  g_assert_cmpstr (fp_item_id (placed[candles->support].item), ==, "altar-2");
  g_assert_cmpfloat_with_epsilon (candles->place.y, church_placed (f->scene, "candles")->place.y - 3000, 1e-6);
}

static void
test_copy_to (Fixture *f, gconstpointer data)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FpProject) two = fp_project_with_new_alternative (f->project, -1, "b", "B", &error);
  g_autoptr (FpProject) moved = fp_project_with_fate (two, 0, "bench", FP_FATE_REMOVED, NULL, NULL, &error);
  g_autoptr (FpScene) scene = (FpScene *) fp_scene_new (two, 0), there = NULL;
  g_autoptr (FpProject) copied = fp_arrange_copy_to (scene, IDS ("altar", "credence", "bench"), 1, &error);

  (void) data;
  g_assert_no_error (error);
  g_assert_nonnull (moved);
  there = (FpScene *) fp_scene_new (copied, 1);
  /* The footpace is not there: the altar comes down to the floor, with what stands on it. */
  g_assert_cmpuint (fp_alternative_n_items (fp_project_alternative (copied, 1)), ==, 3);
  g_assert_cmpuint (fp_alternative_n_items (fp_project_alternative (copied, 0)), ==, 4);
  for (guint i = 0; i < 3; i++)
    {
      const FpItem *item = fp_alternative_item (fp_project_alternative (copied, 1), i);
      if (fp_item_kind (item)->role == FP_ROLE_ALTAR)
        {
          g_assert_null (fp_item_on (item));
          assert_at (there, fp_item_id (item), 0, 5000, 0);
        }
    }
  g_assert_null (fp_arrange_copy_to (scene, IDS ("altar"), 0, &error));
  g_assert_error (error, FP_ERROR, FP_ERROR_REFERENCE);
}

/* What stands there already is existing in every alternative, and what carries it too; what it carries is proposed. */
static void
test_existing (Fixture *f, gconstpointer data)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FpProject) two = fp_project_with_new_alternative (f->project, 0, "b", "Copy", &error);
  g_autoptr (FpScene) scene = fp_scene_new (two, 0), now = NULL, other = NULL;
  g_autoptr (FpProject) next = NULL;
  g_auto (GStrv) made = NULL;

  (void) data;
  next = fp_arrange_existing (scene, IDS ("altar"), &made, &error);
  g_assert_no_error (error);
  now = (FpScene *) fp_scene_new (next, 0);
  other = (FpScene *) fp_scene_new (next, 1);
  /* The copy has an altar of that id: the survey's gets another. */
  g_assert_cmpuint (g_strv_length (made), ==, 1);
  g_assert_cmpstr (made[0], !=, "altar");
  g_assert_true (church_placed (now, made[0])->in_survey);
  g_assert_true (church_placed (other, made[0])->in_survey);
  assert_at (now, made[0], 0, 5000, 0);
  g_assert_true (fp_scene_placed (now, NULL)[church_placed (now, made[0])->support].in_survey);
  g_assert_false (church_placed (now, "candles")->in_survey);
  g_assert_cmpstr (fp_item_on (church_placed (now, "candles")->item), ==, made[0]);
  assert_at (now, "candles", 100, 5050, 10);
  g_assert_cmpint (fp_scene_find (now, "altar"), <, 0);
  g_assert_false (church_placed (other, "altar")->in_survey);
  g_assert_true (fp_project_check (next, NULL));
  g_assert_null (fp_arrange_existing (now, (const char *const *) made, NULL, &error));
  g_assert_error (error, FP_ERROR, FP_ERROR_INVALID);
}

/* What was decided of a setting goes with the thing, under whatever id; in other alternatives it stays. */
static void
test_existing_settings (Fixture *f, gconstpointer data)
{
  const FpSettingChange veiled = { FP_UNSAID, FP_SAID_YES, FP_LIT_UNSAID };
  g_autoptr (FpProject) kept = fp_project_with_kept (f->project, 0, "altar", "here", NULL);
  g_autoptr (FpProject) set = fp_project_with_setting (kept, 0, FP_CELEBRATION_LOW, "altar", &veiled, NULL);
  g_autoptr (FpProject) coloured = fp_project_with_colour (set, 0, FP_CELEBRATION_SUNG, FP_COLOUR_RED, NULL);
  g_autoptr (FpProject) two = fp_project_with_new_alternative (coloured, 0, "b", "Copy", NULL), next = NULL;
  g_autoptr (FpScene) scene = fp_scene_new (two, 0);
  const FpAlternative *here, *other;
  g_auto (GStrv) made = NULL;

  (void) data;
  next = fp_arrange_existing (scene, IDS ("altar"), &made, NULL);
  g_assert_nonnull (next);
  here = fp_project_alternative (next, 0);
  other = fp_project_alternative (next, 1);
  g_assert_cmpstr (made[0], !=, "altar");
  g_assert_cmpint (fp_alternative_setting (here, FP_CELEBRATION_LOW, made[0]).veiled, ==, FP_SAID_YES);
  g_assert_cmpstr (fp_alternative_kept (here, made[0]), ==, "here");
  g_assert_cmpint (fp_alternative_colour (here, FP_CELEBRATION_SUNG), ==, FP_COLOUR_RED);
  g_assert_cmpint (fp_alternative_setting (other, FP_CELEBRATION_LOW, "altar").veiled, ==, FP_SAID_YES);
  g_assert_cmpint (fp_alternative_setting (other, FP_CELEBRATION_LOW, made[0]).veiled, ==, FP_UNSAID);
}

/* Its steps alone: they stay where the altar on them has put them. */
static void
test_existing_footpace (Fixture *f, gconstpointer data)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FpProject) moved = fp_arrange_existing (f->scene, IDS ("footpace"), NULL, &error);
  g_autoptr (FpProject) bare = NULL;
  g_autoptr (FpScene) now = NULL, without = NULL;

  (void) data;
  g_assert_no_error (error);
  now = (FpScene *) fp_scene_new (moved, 0);
  g_assert_true (church_placed (now, "footpace")->in_survey);
  g_assert_false (church_placed (now, "altar")->in_survey);
  assert_at (now, "altar", 0, 5000, 0);
  bare = fp_project_without_item (moved, 0, "altar", &error);
  g_assert_no_error (error);
  without = (FpScene *) fp_scene_new (bare, 0);
  assert_at (without, "footpace", 0, 5000, 0);
}

static void
test_refusals (Fixture *f, gconstpointer data)
{
  g_autoptr (GError) error = NULL;

  (void) data;
  g_assert_null (fp_arrange_move (f->scene, IDS ("nobody"), (FpVec3) { 1, 1, 0 }, &error));
  g_assert_error (error, FP_ERROR, FP_ERROR_REFERENCE);
  g_clear_error (&error);
  g_assert_null (fp_arrange_space (f->scene, IDS ("altar", "candles", "credence"), FALSE, &error));
  g_assert_error (error, FP_ERROR, FP_ERROR_INVALID);
  g_clear_error (&error);
  g_assert_null (fp_arrange_mirror (f->scene, IDS ("walls"), FALSE, NULL, &error));
  g_assert_error (error, FP_ERROR, FP_ERROR_INVALID);
}

/* Moved in one go they come to stand where they would if each were moved in the scene that the one before has left. */
static void
test_move_as_one_by_one (Fixture *f, gconstpointer data)
{
  static const char *const all[] = { "footpace", "bench", "credence", "window" };
  const FpVec3 by = { 170, -230, 0 };

  (void) data;
  for (guint chosen = 1; chosen < 16; chosen++)
    {
      const char *ids[5] = { NULL };
      const FpScene *each = fp_scene_ref (f->scene), *once;
      guint n = 0, n_placed;

      for (guint i = 0; i < G_N_ELEMENTS (all); i++)
        if ((chosen & (1u << i)) != 0)
          {
            const FpScene *before = each;

            ids[n++] = all[i];
            each = scene_of (fp_set_out_move (before, all[i], by, &failure));
            fp_scene_unref (before);
          }
      once = scene_of (fp_arrange_move (f->scene, ids, by, &failure));
      const FpPlaced *placed = fp_scene_placed (each, &n_placed);
      for (guint i = 0; i < n_placed; i++)
        if (!placed[i].ghost)
          assert_at (once, fp_item_id (placed[i].item), placed[i].place.x, placed[i].place.y, placed[i].place.turn);
      fp_scene_unref (each);
      fp_scene_unref (once);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
#define ADD(name, function) g_test_add ("/arrange/" name, Fixture, NULL, set_up, function, tear_down)
  ADD ("move-as-one-by-one", test_move_as_one_by_one);
  ADD ("move", test_move);
  ADD ("remove", test_remove);
  ADD ("centre", test_centre);
  ADD ("mirror", test_mirror);
  ADD ("mirror-twice", test_mirror_twice);
  ADD ("mirror-copy", test_mirror_copy);
  ADD ("mirror-copy-of-a-wall", test_mirror_copy_of_a_wall);
  ADD ("mirror-names", test_mirror_names);
  ADD ("repeat-names", test_repeat_names);
  ADD ("space", test_space);
  ADD ("level", test_level);
  ADD ("repeat", test_repeat);
  ADD ("param", test_param);
  ADD ("repeat-upward", test_repeat_upward);
  ADD ("repeat-refused", test_repeat_refused);
  ADD ("repeat-carries", test_repeat_carries);
  ADD ("copy-to", test_copy_to);
  ADD ("existing", test_existing);
  ADD ("existing-settings", test_existing_settings);
  ADD ("existing-footpace", test_existing_footpace);
  ADD ("refusals", test_refusals);
  return g_test_run ();
}
