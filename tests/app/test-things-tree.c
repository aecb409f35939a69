/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The tree of things without a display: what it says, that it changes only where the scene does, and typing into it. */
#include "samples.h"
#include "things-tree.h"
#include "things.h"

#include "footpace/new-church.h"
#include "footpace/setting-out.h"

#include <string.h>

static FpDocument *
open_parish (void)
{
  g_autofree char *path = fp_sample_path ("parish.footpace");
  g_autoptr (GError) error = NULL;
  FpDocument *d = fp_document_load (path, &error);

  g_assert_no_error (error);
  return d;
}

static const char *
id_of (FpDocument *d, FpRole role)
{
  return g_intern_string (fp_item_id (fp_scene_placed (fp_document_scene (d), NULL)[fp_scene_role (fp_document_scene (d),
                                                                                                   role)].item));
}

static FpThingsTree *
tree_of (FpDocument *d)
{
  FpThingsTree *tree = fp_things_tree_new ();

  g_assert_true (fp_things_tree_update (tree, d));
  return tree;
}

/* Ids as they are read down the tree, groups in brackets. */
static void
read_down (GListModel *list, GString *out)
{
  for (guint i = 0; list != NULL && i < g_list_model_get_n_items (list); i++)
    {
      g_autoptr (FpThingNode) node = g_list_model_get_item (list, i);
      const char *id = fp_thing_node_id (node);

      if (id != NULL)
        g_string_append_printf (out, "%s ", id);
      read_down (fp_thing_node_children (node), out);
    }
}

static char *
as_listed (FpDocument *d)
{
  g_autoptr (GArray) things = fp_things_new (fp_document_scene (d));
  GString *out = g_string_new (NULL);

  for (guint i = 0; i < things->len; i++)
    g_string_append_printf (out, "%s ", fp_item_id (fp_scene_placed (fp_document_scene (d), NULL)
                                                    [g_array_index (things, FpThing, i).placed].item));
  return g_string_free (out, FALSE);
}

static void
assert_same_order (FpThingsTree *tree, FpDocument *d)
{
  g_autofree char *expected = as_listed (d);
  GString *read = g_string_new (NULL);

  read_down (fp_things_tree_roots (tree), read);
  g_assert_cmpstr (read->str, ==, expected);
  g_string_free (read, TRUE);
}

static void
test_order (void)
{
  static const char *const names[] = { "parish.footpace", "chapel.footpace", "fan.footpace" };

  for (guint s = 0; s < G_N_ELEMENTS (names); s++)
    {
      g_autofree char *path = fp_sample_path (names[s]);
      g_autoptr (FpDocument) d = fp_document_load (path, NULL);
      FpThingsTree *tree = fp_things_tree_new ();

      for (guint a = 0; a < fp_project_n_alternatives (fp_document_project (d)); a++)
        {
          fp_document_set_alternative (d, a);
          fp_things_tree_update (tree, d);
          assert_same_order (tree, d);
          g_assert_false (fp_things_tree_update (tree, d)); /* nothing new */
        }
      fp_things_tree_free (tree);
    }
}

static void
test_words (void)
{
  g_autoptr (FpDocument) d = open_parish ();
  FpThingsTree *tree = tree_of (d);
  FpThingNode *altar = fp_things_tree_find (tree, id_of (d, FP_ROLE_ALTAR));

  g_assert_cmpstr (fp_thing_node_text (altar, FP_COLUMN_NAME), ==, "High altar");
  g_assert_cmpstr (fp_thing_node_text (altar, FP_COLUMN_STANDING), ==, "proposed");
  g_assert_cmpstr (fp_thing_node_text (altar, FP_COLUMN_LEVEL), ==, "+0.795");
  g_assert_cmpstr (fp_thing_node_text (altar, FP_COLUMN_HEIGHT), ==, "990");
  g_assert_true (g_str_has_prefix (fp_thing_node_speech (altar), "High altar, proposed, stands on Footpace"));
  g_assert_cmpstr (fp_thing_node_id (fp_things_tree_parent (tree, altar)), ==, id_of (d, FP_ROLE_FOOTPACE));
  /* The level follows from what it stands on; a footpace lies where the altar is. */
  g_assert_false (fp_thing_node_can_type (altar, FP_COLUMN_LEVEL));
  g_assert_true (fp_thing_node_can_type (altar, FP_COLUMN_HEIGHT));
  g_assert_false (fp_thing_node_can_type (fp_things_tree_find (tree, id_of (d, FP_ROLE_FOOTPACE)), FP_COLUMN_ALONG));
  g_assert_true (fp_thing_node_can_type (fp_things_tree_find (tree, id_of (d, FP_ROLE_FLOOR)), FP_COLUMN_LEVEL));
  fp_things_tree_free (tree);
}

/* --- it changes only where the scene does ---------------------------------- */

static void
count_changes (GListModel *list, guint at, guint gone, guint come, guint *n)
{
  (void) list, (void) at;
  *n += gone + come;
}

static void
count (FpThingNode *node, guint *n)
{
  (void) node;
  (*n)++;
}

static void
test_edit_keeps_rows (void)
{
  g_autoptr (FpDocument) d = open_parish ();
  FpThingsTree *tree = tree_of (d);
  const char *id = id_of (d, FP_ROLE_CREDENCE);
  FpThingNode *credence = fp_things_tree_find (tree, id), *rail = fp_things_tree_find (tree, id_of (d, FP_ROLE_RAIL));
  GListModel *siblings = fp_thing_node_children (fp_things_tree_parent (tree, credence));
  guint rows = 0, told = 0, told_rail = 0;

  g_signal_connect (siblings, "items-changed", G_CALLBACK (count_changes), &rows);
  g_signal_connect (credence, "changed", G_CALLBACK (count), &told);
  g_signal_connect (rail, "changed", G_CALLBACK (count), &told_rail);
  g_assert_true (fp_document_edit (d, fp_set_out_move (fp_document_scene (d), id, (FpVec3) { -100, 0, 0 }, NULL), "m",
                                   NULL));
  g_assert_true (fp_things_tree_update (tree, d));
  g_assert_cmpuint (rows, ==, 0);
  g_assert_cmpuint (told, ==, 1);
  g_assert_cmpuint (told_rail, ==, 0);
  /* One more: one row comes, and the others stay the same objects. */
  g_assert_true (fp_document_edit (d, fp_set_out_new (fp_document_scene (d), fp_kind_find ("credence"), NULL, NULL), "n",
                                   NULL));
  g_assert_true (fp_things_tree_update (tree, d));
  g_assert_cmpuint (rows, ==, 1);
  g_assert_true (fp_things_tree_find (tree, id) == credence);
  assert_same_order (tree, d);
  fp_things_tree_free (tree);
}

/* Takes away all that stands on the altar. */
static void
bare_altar (FpDocument *d)
{
  gboolean bare = FALSE;

  while (!bare)
    {
      const FpScene *scene = fp_document_scene (d);
      const int altar = fp_scene_role (scene, FP_ROLE_ALTAR);
      guint n;
      const FpPlaced *placed = fp_scene_placed (scene, &n);

      bare = TRUE;
      for (guint i = 0; i < n && bare; i++)
        if (placed[i].support == altar)
          {
            g_assert_true (fp_document_edit (d, fp_set_out_remove (scene, fp_item_id (placed[i].item), NULL), "b", NULL));
            bare = FALSE;
          }
    }
}

/* What begins to carry something is put in anew, so that it can be unfolded. */
static void
test_first_to_stand_on_it (void)
{
  FpNewChurch spec;
  g_autoptr (FpDocument) d = NULL;
  g_autoptr (FpProject) project = NULL;
  FpThingsTree *tree;
  FpThingNode *altar;
  guint rows = 0;

  fp_new_church_defaults (&spec);
  project = fp_new_church_make (&spec, NULL);
  d = fp_document_new (project, NULL, FALSE);
  bare_altar (d);
  tree = tree_of (d);
  altar = fp_things_tree_find (tree, id_of (d, FP_ROLE_ALTAR));
  g_assert_null (fp_thing_node_children (altar));
  g_signal_connect (fp_thing_node_children (fp_things_tree_parent (tree, altar)), "items-changed",
                    G_CALLBACK (count_changes), &rows);
  g_assert_true (fp_document_edit (d, fp_set_out_new (fp_document_scene (d), fp_kind_find ("tabernacle"), NULL, NULL),
                                   "t", NULL));
  fp_things_tree_update (tree, d);
  g_assert_nonnull (fp_thing_node_children (altar));
  g_assert_cmpuint (rows, >=, 2);
  fp_document_undo (d);
  fp_things_tree_update (tree, d);
  g_assert_null (fp_thing_node_children (altar));
  fp_things_tree_free (tree);
}

/* --- sorting ----------------------------------------------------------------- */

static void
test_compare (void)
{
  g_autoptr (FpDocument) d = open_parish ();
  FpThingsTree *tree = tree_of (d);
  FpThingNode *altar = fp_things_tree_find (tree, id_of (d, FP_ROLE_ALTAR));
  FpThingNode *rail = fp_things_tree_find (tree, id_of (d, FP_ROLE_RAIL));

  g_assert_cmpint (fp_thing_node_compare (rail, altar, FP_COLUMN_NAME), <, 0); /* Communion rail, High altar */
  g_assert_cmpint (fp_thing_node_compare (altar, rail, FP_COLUMN_NAME), >, 0);
  g_assert_cmpint (fp_thing_node_compare (altar, rail, FP_COLUMN_LEVEL), >, 0);
  g_assert_cmpint (fp_thing_node_compare (altar, rail, FP_COLUMN_ALONG), >, 0);
  g_assert_cmpint (fp_thing_node_compare (altar, altar, FP_COLUMN_SIZE), ==, 0);
  fp_things_tree_free (tree);
}

/* --- typing ------------------------------------------------------------------- */

static void
test_typing (void)
{
  g_autoptr (FpDocument) d = open_parish ();
  const char *altar = id_of (d, FP_ROLE_ALTAR), *floor = id_of (d, FP_ROLE_FLOOR);
  g_autofree char *before = fp_column_typed (d, altar, FP_COLUMN_HEIGHT);
  g_autoptr (GError) error = NULL;
  const guint depth = fp_document_depth (d);

  g_assert_cmpstr (before, ==, "990");
  g_assert_true (fp_column_enter (d, altar, FP_COLUMN_HEIGHT, "990", NULL));
  g_assert_cmpuint (fp_document_depth (d), ==, depth); /* what is shown changes nothing */
  g_assert_true (fp_column_enter (d, altar, FP_COLUMN_HEIGHT, "1.02 m", NULL));
  g_assert_cmpfloat (fp_item_param (fp_document_placed (d, altar)->item, "height"), ==, 1020.0);
  g_assert_cmpstr (fp_document_undo_label (d), ==, "Height of the mensa of High altar");
  g_assert_true (fp_column_enter (d, altar, FP_COLUMN_ACROSS, "-120", NULL));
  g_assert_cmpfloat (fp_document_placed (d, altar)->place.x, ==, -120.0);
  g_assert_true (fp_column_enter (d, altar, FP_COLUMN_NAME, "Altar of the parish", NULL));
  g_assert_cmpstr (fp_item_name (fp_document_placed (d, altar)->item), ==, "Altar of the parish");
  g_assert_true (fp_column_enter (d, floor, FP_COLUMN_LEVEL, "25", NULL));
  g_assert_cmpfloat (fp_item_param (fp_document_placed (d, floor)->item, "level"), ==, 25.0);
  g_assert_cmpuint (fp_document_depth (d), ==, depth + 4);
  g_assert_false (fp_column_enter (d, altar, FP_COLUMN_HEIGHT, "high", &error));
  g_assert_nonnull (error);
  g_clear_error (&error);
  g_assert_false (fp_column_enter (d, "nothing-of-the-kind", FP_COLUMN_NAME, "x", &error));
  g_assert_error (error, FP_ERROR, FP_ERROR_REFERENCE);
}

typedef struct { FpThingNode *moved; char *read; guint times; } Watch;

static void
on_items_changed (GListModel *list, guint at, guint removed, guint added, gpointer data)
{
  Watch *w = data;

  (void) list, (void) at, (void) removed, (void) added;
  g_assert_cmpstr (fp_thing_node_text (w->moved, FP_COLUMN_ALONG), ==, w->read);
  w->times++;
}

/* One step moves a thing and adds another: what is sorted by where things stand may merge the new row into the old ones
 * before those read otherwise, or its order holds of neither. */
static void
test_rows_come_before_readings (void)
{
  g_autoptr (FpDocument) d = open_parish ();
  FpThingsTree *tree;
  g_autoptr (FpProject) moved = NULL;
  g_autoptr (FpScene) scene = NULL;
  GListModel *rows;
  const char *id;
  Watch w = { 0 };

  fp_document_set_alternative (d, 2);
  tree = tree_of (d);
  id = id_of (d, FP_ROLE_RAIL);
  w.moved = fp_things_tree_find (tree, id);
  w.read = g_strdup (fp_thing_node_text (w.moved, FP_COLUMN_ALONG));
  rows = fp_thing_node_children (fp_things_tree_parent (tree, w.moved));
  g_signal_connect (rows, "items-changed", G_CALLBACK (on_items_changed), &w);
  moved = fp_set_out_move (fp_document_base_scene (d), id, (FpVec3) { 0.0, 170.0, 0.0 }, NULL);
  scene = fp_scene_new (moved, 2);
  g_assert_true (fp_document_edit (d, fp_set_out_new (scene, fp_kind_find ("credence"), NULL, NULL), "Both", NULL));
  g_assert_true (fp_things_tree_update (tree, d));
  g_signal_handlers_disconnect_by_data (rows, &w);
  g_assert_cmpuint (w.times, >, 0);
  g_assert_cmpstr (fp_thing_node_text (w.moved, FP_COLUMN_ALONG), !=, w.read);
  assert_same_order (tree, d);
  fp_things_tree_free (tree);
  g_free (w.read);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/things-tree/order", test_order);
  g_test_add_func ("/things-tree/rows-before-readings", test_rows_come_before_readings);
  g_test_add_func ("/things-tree/words", test_words);
  g_test_add_func ("/things-tree/keeps-rows", test_edit_keeps_rows);
  g_test_add_func ("/things-tree/first-on-it", test_first_to_stand_on_it);
  g_test_add_func ("/things-tree/compare", test_compare);
  g_test_add_func ("/things-tree/typing", test_typing);
  return g_test_run ();
}
