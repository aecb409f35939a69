/* SPDX-License-Identifier: GPL-3.0-or-later */
/* test-furnish.c - a sanctuary set out in one step: whole, in nobody's way, and told what had no room */
#include "footpace/furnish.h"
#include "footpace/new-church.h"
#include "footpace/setting-out.h"

#include <string.h>

static FpProject *
room (FpRoomShape shape, gboolean apse, double depth)
{
  g_autoptr (GError) error = NULL;
  FpNewChurch spec;
  FpProject *project;

  fp_new_church_defaults (&spec);
  spec.brief.title = "Sanctuary of Saint Vedast";
  spec.brief.place = "Oakhanger";
  spec.brief.seats = 80;
  spec.shape = shape;
  spec.apse = apse;
  spec.furnish = FALSE;
  if (depth > 0)
    spec.sanctuary_depth = depth;
  project = fp_new_church_make (&spec, &error);
  g_assert_no_error (error);
  return project;
}

static FpProject *
furnish (const FpProject *project, FpCelebration one, GArray *told)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FpScene) scene = fp_scene_new (project, 0);
  FpProject *next = fp_furnish (scene, one, told, &error);

  g_assert_no_error (error);
  return next;
}

static guint
count (const FpScene *scene, const char *kind)
{
  guint n, found = 0;
  const FpPlaced *placed = fp_scene_placed (scene, &n);

  for (guint i = 0; i < n; i++)
    found += !placed[i].ghost && strcmp (fp_item_kind (placed[i].item)->id, kind) == 0;
  return found;
}

/* By their plans alone, which is stricter than by their solids: nothing that stands on the floor takes another's room. */
static void
assert_apart (const FpScene *scene)
{
  guint n;
  const FpPlaced *placed = fp_scene_placed (scene, &n);

  for (guint i = 0; i < n; i++)
    for (guint k = i + 1; k < n; k++)
      {
        const FpBox a = placed[i].plan, b = placed[k].plan;
        const gboolean on_floor = placed[i].support < 0 && placed[k].support < 0 && !placed[i].in_survey && !placed[k].in_survey;

        if (on_floor && a.x0 + 7 < b.x1 && b.x0 + 7 < a.x1 && a.y0 + 7 < b.y1 && b.y0 + 7 < a.y1)
          g_error ("%s stands in %s", fp_item_id (placed[i].item), fp_item_id (placed[k].item));
      }
}

/* What the older form's sung Mass needs (Fortescue 1918, chapter I, from memory): altar on its steps, cross, six candlesticks,
 * cards, Missal, credence and bench. */
static void
test_sung (void)
{
  static const char *const kinds[] = { "footpace", "altar", "gradine", "tabernacle", "crucifix", "candlesticks", "altar-cards",
                                       "missal-stand", "rail", "credence", "sedilia", "sanctuary-lamp" };

  for (guint shape = 0; shape < FP_ROOM_WALKED; shape++)
    for (guint apse = 0; apse < 2; apse++)
      {
        g_autoptr (FpProject) project = room ((FpRoomShape) shape, apse == 1, 0), next = NULL;
        g_autoptr (GArray) told = fp_furnished_new ();
        g_autoptr (FpScene) scene = NULL;
        g_autofree char *text = NULL;

        next = furnish (project, FP_CELEBRATION_SUNG, told);
        scene = fp_scene_new (next, 0);
        text = fp_furnished_text (told);
        g_test_message ("%s", text);
        for (guint i = 0; i < G_N_ELEMENTS (kinds); i++)
          g_assert_cmpuint (count (scene, kinds[i]), ==, 1);
        g_assert_cmpuint (count (scene, "ambo"), ==, 0);
        assert_apart (scene);
        g_assert_true (fp_project_check (next, NULL));
      }
}

/* The newer form asks for ambo and chair; asked again nothing is missing; another form adds only what that one lacks. */
static void
test_again (void)
{
  g_autoptr (FpProject) project = room (FP_ROOM_CHANCEL, FALSE, 0), next = NULL, same = NULL, both = NULL;
  g_autoptr (GArray) first = fp_furnished_new (), second = fp_furnished_new (), third = fp_furnished_new ();
  g_autoptr (FpScene) scene = NULL;
  g_autofree char *text = NULL;

  next = furnish (project, FP_CELEBRATION_SUNDAY, first);
  scene = fp_scene_new (next, 0);
  g_assert_cmpuint (count (scene, "ambo"), ==, 1);
  g_assert_cmpuint (count (scene, "chair"), ==, 1);
  g_assert_cmpuint (count (scene, "rail"), ==, 0);
  same = furnish (next, FP_CELEBRATION_SUNDAY, second);
  g_assert_true (fp_project_equal (next, same));
  text = fp_furnished_text (second);
  g_assert_cmpstr (text, ==, "Nothing was missing.");
  both = furnish (next, FP_CELEBRATION_LOW, third);
  g_clear_pointer (&scene, fp_scene_unref);
  scene = fp_scene_new (both, 0);
  g_assert_cmpuint (count (scene, "altar"), ==, 1);
  g_assert_cmpuint (count (scene, "rail"), ==, 1);
  assert_apart (scene);
}

/* Where the Blessed Sacrament is kept a lamp burns before it, whatever else is there already; where not, none is asked for. */
static void
test_lamp (void)
{
  g_autoptr (FpProject) project = room (FP_ROOM_CHANCEL, FALSE, 0), next = NULL, without = NULL, again = NULL;
  g_autoptr (GArray) first = fp_furnished_new (), second = fp_furnished_new (), newer = fp_furnished_new ();
  g_autoptr (FpScene) scene = NULL, bare = NULL, anew = NULL;
  g_autofree char *text = NULL;

  next = furnish (project, FP_CELEBRATION_SUNDAY, newer);
  scene = fp_scene_new (next, 0);
  g_assert_cmpuint (count (scene, "tabernacle"), ==, 0);
  g_assert_cmpuint (count (scene, "sanctuary-lamp"), ==, 0);
  g_clear_pointer (&next, fp_project_unref);
  g_clear_pointer (&scene, fp_scene_unref);

  next = furnish (project, FP_CELEBRATION_LOW, first);
  scene = fp_scene_new (next, 0);
  g_assert_cmpuint (count (scene, "sanctuary-lamp"), ==, 1);
  for (guint i = 0; i < first->len; i++)
    if (g_str_equal (g_array_index (first, FpFurnished, i).kind->id, "sanctuary-lamp"))
      without = fp_set_out_remove (scene, g_array_index (first, FpFurnished, i).id, NULL);
  g_assert_nonnull (without);
  again = furnish (without, FP_CELEBRATION_WEEKDAY, second);
  anew = fp_scene_new (again, 0);
  g_assert_cmpuint (count (anew, "sanctuary-lamp"), ==, 1);
  text = fp_furnished_text (second);
  g_assert_nonnull (strstr (text, "Sanctuary lamp"));
}

/* In a small sanctuary not all of it finds room: what does not is told with what stands there. */
static void
test_small (void)
{
  g_autoptr (FpProject) project = room (FP_ROOM_CHANCEL, FALSE, 3000), next = NULL;
  g_autoptr (GArray) told = fp_furnished_new ();
  g_autoptr (FpScene) scene = NULL;
  g_autofree char *text = NULL;
  guint left_out = 0;

  next = furnish (project, FP_CELEBRATION_SOLEMN, told);
  scene = fp_scene_new (next, 0);
  assert_apart (scene);
  for (guint i = 0; i < told->len; i++)
    left_out += g_array_index (told, FpFurnished, i).id == NULL;
  text = fp_furnished_text (told);
  g_test_message ("%s", text);
  g_assert_cmpuint (left_out, >, 0);
  g_assert_nonnull (strstr (text, "There is no room for: "));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/furnish/sung", test_sung);
  g_test_add_func ("/furnish/again", test_again);
  g_test_add_func ("/furnish/lamp", test_lamp);
  g_test_add_func ("/furnish/small", test_small);
  return g_test_run ();
}
