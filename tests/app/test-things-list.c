/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The list of things on a screen: the same choice as the board, kept rows, typing in a cell, and two thousand things. */
#include "thing-cell.h"
#include "things-list.h"
#include "things.h"
#include "waiting.h"
#include "widget-help.h"
#include "window.h"

#include "footpace/setting-out.h"

#include <string.h>

static GtkSelectionModel *
model_of (GtkWidget *things)
{
  return gtk_column_view_get_model (GTK_COLUMN_VIEW (help_find (things, GTK_TYPE_COLUMN_VIEW)));
}

static FpThingNode *
node_at (GtkWidget *things, guint i)
{
  g_autoptr (GtkTreeListRow) row = g_list_model_get_item (G_LIST_MODEL (model_of (things)), i);
  g_autoptr (FpThingNode) node = row != NULL ? gtk_tree_list_row_get_item (row) : NULL;

  return node;
}

static guint
n_things (GtkWidget *things)
{
  guint n = 0;

  for (guint i = 0; i < g_list_model_get_n_items (G_LIST_MODEL (model_of (things))); i++)
    n += fp_thing_node_id (node_at (things, i)) != NULL ? 1 : 0;
  return n;
}

static guint
row_of (GtkWidget *things, const char *id)
{
  for (guint i = 0; i < g_list_model_get_n_items (G_LIST_MODEL (model_of (things))); i++)
    if (g_strcmp0 (fp_thing_node_id (node_at (things, i)), id) == 0)
      return i;
  return GTK_INVALID_LIST_POSITION;
}

static GtkWidget *
cell_of (GtkWidget *top, const char *id, FpColumn column)
{
  if (FP_IS_THING_CELL (top) && gtk_widget_get_mapped (top) && fp_thing_cell_column (FP_THING_CELL (top)) == column
      && fp_thing_cell_node (FP_THING_CELL (top)) != NULL
      && g_strcmp0 (fp_thing_node_id (fp_thing_cell_node (FP_THING_CELL (top))), id) == 0)
    return top;
  for (GtkWidget *w = gtk_widget_get_first_child (top); w != NULL; w = gtk_widget_get_next_sibling (w))
    {
      GtkWidget *found = cell_of (w, id, column);

      if (found != NULL)
        return found;
    }
  return NULL;
}

static GtkWidget *
open_list (FpDocument *d, GtkWidget **window)
{
  GtkWidget *things = fp_things_list_new (TRUE);

  fp_things_list_set_document (FP_THINGS_LIST (things), d);
  *window = help_show (things);
  return things;
}

/* --- the same choice -------------------------------------------------------- */

static void
test_choice_both_ways (void)
{
  g_autoptr (FpDocument) d = help_open_sample ("parish.footpace");
  GtkWidget *window, *things = open_list (d, &window);
  g_autoptr (GArray) expected = fp_things_new (fp_document_scene (d));
  const char *altar = help_altar_id (d);
  g_autofree char *next = NULL;
  guint at;

  g_assert_cmpuint (n_things (things), ==, expected->len);
  fp_document_choose (d, altar);
  at = row_of (things, altar);
  g_assert_true (gtk_selection_model_is_selected (model_of (things), at));
  /* One more in the list: both are chosen, the new one is in mind. */
  next = g_strdup (fp_thing_node_id (node_at (things, at + 1)));
  gtk_selection_model_select_item (model_of (things), at + 1, FALSE);
  g_assert_cmpuint (fp_document_n_chosen (d), ==, 2);
  g_assert_cmpstr (fp_document_chosen (d), ==, next);
  g_assert_true (fp_document_is_chosen (d, altar));
  gtk_selection_model_unselect_item (model_of (things), at);
  g_assert_cmpuint (fp_document_n_chosen (d), ==, 1);
  fp_document_choose (d, NULL);
  g_assert_false (gtk_selection_model_is_selected (model_of (things), at + 1));
  /* What is removed leaves the list, and comes back. */
  fp_document_edit (d, fp_project_without_item (fp_document_project (d), fp_document_alternative (d), altar, NULL),
                    "Remove", NULL);
  g_assert_cmpuint (row_of (things, altar), ==, GTK_INVALID_LIST_POSITION);
  fp_document_undo (d);
  g_assert_cmpuint (n_things (things), ==, expected->len);
  gtk_window_destroy (GTK_WINDOW (window));
}

/* What is folded stays so when the scene changes, and unfolds for what is chosen on the board. */
static void
test_folds (void)
{
  g_autoptr (FpDocument) d = help_open_sample ("parish.footpace");
  GtkWidget *window, *things = open_list (d, &window);
  const char *altar = help_altar_id (d), *credence;
  const guint at = row_of (things, altar);
  g_autoptr (GtkTreeListRow) row = g_list_model_get_item (G_LIST_MODEL (model_of (things)), at - 1);
  g_autoptr (GtkTreeListRow) again = NULL;

  gtk_tree_list_row_set_expanded (row, FALSE); /* the footpace */
  g_assert_cmpuint (row_of (things, altar), ==, GTK_INVALID_LIST_POSITION);
  credence = g_intern_string (fp_item_id (fp_scene_placed (fp_document_scene (d), NULL)
                                          [fp_scene_role (fp_document_scene (d), FP_ROLE_CREDENCE)].item));
  fp_document_edit (d, fp_set_out_move (fp_document_scene (d), credence, (FpVec3) { -50, 0, 0 }, NULL), "m", NULL);
  fp_document_edit (d, fp_set_out_new (fp_document_scene (d), fp_kind_find ("credence"), NULL, NULL), "n", NULL);
  again = g_list_model_get_item (G_LIST_MODEL (model_of (things)), at - 1);
  g_assert_true (again == row);
  g_assert_cmpuint (row_of (things, altar), ==, GTK_INVALID_LIST_POSITION);
  fp_document_choose (d, altar);
  g_assert_cmpuint (row_of (things, altar), ==, at);
  g_assert_true (gtk_selection_model_is_selected (model_of (things), at));
  gtk_window_destroy (GTK_WINDOW (window));
}

static void
test_sorted (void)
{
  g_autoptr (FpDocument) d = help_open_sample ("parish.footpace");
  GtkWidget *window, *things = open_list (d, &window);
  const guint n = n_things (things), unsorted = row_of (things, help_altar_id (d));
  const char *before = NULL;

  fp_document_choose (d, help_altar_id (d));
  fp_things_list_sort (FP_THINGS_LIST (things), "name");
  g_assert_cmpuint (n_things (things), ==, n);
  g_assert_true (gtk_selection_model_is_selected (model_of (things), row_of (things, help_altar_id (d))));
  for (guint i = 0; i < g_list_model_get_n_items (G_LIST_MODEL (model_of (things))); i++)
    {
      g_autoptr (GtkTreeListRow) row = g_list_model_get_item (G_LIST_MODEL (model_of (things)), i);

      if (gtk_tree_list_row_get_depth (row) == 0)
        before = NULL; /* each group for itself, and what stands on a thing with it */
      if (gtk_tree_list_row_get_depth (row) != 1)
        continue;
      if (before != NULL)
        g_assert_cmpint (g_utf8_collate (before, fp_thing_node_text (node_at (things, i), FP_COLUMN_NAME)), <=, 0);
      before = fp_thing_node_text (node_at (things, i), FP_COLUMN_NAME);
    }
  fp_things_list_sort (FP_THINGS_LIST (things), "standing-on");
  g_assert_cmpuint (row_of (things, help_altar_id (d)), ==, unsorted);
  gtk_window_destroy (GTK_WINDOW (window));
}

/* --- typing ------------------------------------------------------------------ */

static void
test_types_in_a_cell (void)
{
  g_autoptr (FpDocument) d = help_open_sample ("parish.footpace");
  GtkWidget *window, *things = open_list (d, &window), *cell, *entry;
  const char *altar = help_altar_id (d);

  WAIT_FOR ((cell = cell_of (things, altar, FP_COLUMN_HEIGHT)) != NULL);
  fp_thing_cell_type (FP_THING_CELL (cell));
  entry = help_find (cell, GTK_TYPE_ENTRY);
  g_assert_cmpstr (gtk_editable_get_text (GTK_EDITABLE (entry)), ==, "990");
  gtk_editable_set_text (GTK_EDITABLE (entry), "tall");
  g_signal_emit_by_name (entry, "activate");
  gtk_test_accessible_assert_state (entry, GTK_ACCESSIBLE_STATE_INVALID, GTK_ACCESSIBLE_INVALID_TRUE);
  g_assert_true (gtk_test_accessible_has_property (GTK_ACCESSIBLE (entry), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION));
  g_assert_cmpuint (fp_document_depth (d), ==, 0);
  gtk_editable_set_text (GTK_EDITABLE (entry), "105 cm");
  g_assert_false (gtk_widget_has_css_class (entry, "error"));
  g_signal_emit_by_name (entry, "activate");
  g_assert_false (fp_thing_cell_is_typing (FP_THING_CELL (cell)));
  g_assert_cmpfloat (fp_item_param (help_altar (d)->item, "height"), ==, 1050.0);
  g_assert_cmpstr (gtk_label_get_text (GTK_LABEL (help_find (cell, GTK_TYPE_LABEL))), ==, "1050");
  /* What follows from other things is not typed. */
  cell = cell_of (things, altar, FP_COLUMN_LEVEL);
  fp_thing_cell_type (FP_THING_CELL (cell));
  g_assert_false (fp_thing_cell_is_typing (FP_THING_CELL (cell)));
  gtk_window_destroy (GTK_WINDOW (window));
}

/* What is typed is taken when the focus goes elsewhere, by the pointer or by a key, and the field goes with it: the
 * toolkit, which is on its way from the one to the other, must not be left searching. */
static void
test_left_for_something_else (void)
{
  g_autoptr (FpDocument) d = help_open_sample ("parish.footpace");
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0), *things = fp_things_list_new (TRUE), *cell;
  GtkWidget *elsewhere = gtk_button_new_with_label ("Elsewhere"), *window;

  fp_things_list_set_document (FP_THINGS_LIST (things), d);
  gtk_widget_set_vexpand (things, TRUE);
  gtk_box_append (GTK_BOX (box), things);
  gtk_box_append (GTK_BOX (box), elsewhere);
  window = help_show (box);
  for (guint by_key = 0; by_key < 2; by_key++)
    {
      const double want = by_key ? 1060.0 : 1050.0;

      WAIT_FOR ((cell = cell_of (things, help_altar_id (d), FP_COLUMN_HEIGHT)) != NULL);
      fp_thing_cell_type (FP_THING_CELL (cell));
      gtk_editable_set_text (GTK_EDITABLE (help_find (cell, GTK_TYPE_ENTRY)), by_key ? "1060" : "1050");
      if (by_key)
        g_signal_emit_by_name (window, "move-focus", GTK_DIR_TAB_FORWARD);
      else
        g_assert_true (gtk_widget_grab_focus (elsewhere));
      g_assert_cmpfloat (fp_item_param (help_altar (d)->item, "height"), ==, want);
      g_assert_false (fp_thing_cell_is_typing (FP_THING_CELL (cell)));
      g_assert_true (by_key || gtk_root_get_focus (GTK_ROOT (window)) == elsewhere);
      g_assert_cmpuint (fp_document_depth (d), ==, by_key + 1);
    }
  gtk_window_destroy (GTK_WINDOW (window));
}

/* What is wrong with a thing is said of it by its name, once. */
static void
test_wrong_by_name (void)
{
  g_autoptr (FpDocument) d = help_open_sample ("parish.footpace");
  GtkWidget *window, *things = open_list (d, &window), *cell, *entry;
  g_autofree char *want = g_strconcat (fp_item_name (help_altar (d)->item),
                                       ": the text has a control character (U+202E) in it", NULL);

  g_assert_false (g_str_has_prefix (want, help_altar_id (d)));
  WAIT_FOR ((cell = cell_of (things, help_altar_id (d), FP_COLUMN_NAME)) != NULL);
  fp_thing_cell_type (FP_THING_CELL (cell));
  entry = help_find (cell, GTK_TYPE_ENTRY);
  gtk_editable_set_text (GTK_EDITABLE (entry), "Altar \u202e");
  g_signal_emit_by_name (entry, "activate");
  gtk_test_accessible_assert_property (entry, GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, want);
  gtk_window_destroy (GTK_WINDOW (window));
}

static void
press (GtkWidget *view, guint key)
{
  g_autoptr (GListModel) controllers = gtk_widget_observe_controllers (view);
  gboolean taken = FALSE;

  for (guint i = 0; i < g_list_model_get_n_items (controllers) && !taken; i++)
    {
      g_autoptr (GtkEventController) c = g_list_model_get_item (controllers, i);

      if (GTK_IS_EVENT_CONTROLLER_KEY (c) && gtk_event_controller_get_propagation_phase (c) == GTK_PHASE_CAPTURE)
        g_signal_emit_by_name (c, "key-pressed", key, 0u, (GdkModifierType) 0, &taken);
    }
  g_assert_true (taken);
}

/* A measure must not become a name because F2 opened another cell than the one that was clicked. */
static void
test_types_where_clicked (void)
{
  static const FpColumn columns[] = { FP_COLUMN_HEIGHT, FP_COLUMN_ALONG, FP_COLUMN_NAME, FP_COLUMN_SIZE, FP_COLUMN_LEVEL };
  g_autoptr (FpDocument) d = help_open_sample ("parish.footpace");
  GtkWidget *window, *things = open_list (d, &window), *view = help_find (things, GTK_TYPE_COLUMN_VIEW), *cell, *entry;
  const char *altar = help_altar_id (d);
  int from, to;

  WAIT_FOR (cell_of (things, altar, FP_COLUMN_HEIGHT) != NULL);
  for (guint i = 0; i < G_N_ELEMENTS (columns); i++)
    {
      gboolean can;

      fp_things_list_focus (FP_THINGS_LIST (things), altar);
      fp_things_list_set_column (FP_THINGS_LIST (things), columns[i]);
      cell = cell_of (things, altar, columns[i]);
      can = fp_thing_node_can_type (fp_thing_cell_node (FP_THING_CELL (cell)), columns[i]);
      g_assert_true (can == (columns[i] != FP_COLUMN_SIZE && columns[i] != FP_COLUMN_LEVEL));
      WAIT_FOR (gtk_widget_is_ancestor (cell, gtk_root_get_focus (GTK_ROOT (window)))
                && GTK_IS_LIST_VIEW (gtk_widget_get_parent (gtk_root_get_focus (GTK_ROOT (window)))));
      press (view, GDK_KEY_F2);
      g_assert_true (fp_thing_cell_is_typing (FP_THING_CELL (cell)) == can);
      g_assert_true (columns[i] == FP_COLUMN_NAME
                     || !fp_thing_cell_is_typing (FP_THING_CELL (cell_of (things, altar, FP_COLUMN_NAME))));
      if (!can)
        continue;
      entry = help_find (cell, GTK_TYPE_ENTRY);
      g_assert_true (gtk_editable_get_selection_bounds (GTK_EDITABLE (entry), &from, &to));
      g_assert_cmpint (from, ==, 0);
      g_assert_cmpint (to, ==, (int) g_utf8_strlen (gtk_editable_get_text (GTK_EDITABLE (entry)), -1));
      g_assert_cmpint (gtk_editable_get_width_chars (GTK_EDITABLE (entry)), >=, to);
      g_signal_emit_by_name (entry, "activate");
    }
  gtk_window_destroy (GTK_WINDOW (window));
}

static void
test_is_named (void)
{
  g_autoptr (FpDocument) d = help_open_sample ("parish.footpace");
  GtkWidget *window, *things = open_list (d, &window), *cell, *row;

  WAIT_FOR ((cell = cell_of (things, help_altar_id (d), FP_COLUMN_NAME)) != NULL);
  gtk_test_accessible_assert_property (cell, GTK_ACCESSIBLE_PROPERTY_LABEL, "Name: High altar");
  for (row = cell; !GTK_IS_LIST_VIEW (gtk_widget_get_parent (row)); row = gtk_widget_get_parent (row))
    ;
  g_assert_true (gtk_test_accessible_has_property (GTK_ACCESSIBLE (row), GTK_ACCESSIBLE_PROPERTY_LABEL));
  cell = cell_of (things, help_altar_id (d), FP_COLUMN_HEIGHT);
  gtk_test_accessible_assert_property (cell, GTK_ACCESSIBLE_PROPERTY_LABEL, "Height: 990");
  gtk_window_destroy (GTK_WINDOW (window));
}

/* --- as many as there may be --------------------------------------------------- */

static FpProject *
full_project (void)
{
  g_autoptr (FpDocument) sample = help_open_sample ("chapel.footpace");
  g_autoptr (FpProjectBuilder) builder = fp_project_builder_new ();
  g_autoptr (GError) error = NULL;
  FpProject *project;

  fp_project_builder_brief (builder, fp_project_brief (fp_document_project (sample)));
  for (guint i = 0; i < FP_ITEMS_MAX; i++)
    {
      g_autofree char *id = g_strdup_printf ("pier-%u", i + 1);
      const FpItemInit init = { .id = id, .kind = fp_kind_find ("pier"), .place = { 900.0 * (i % 50), 900.0 * (i / 50), 0 } };
      g_autoptr (FpItem) item = fp_item_new (&init, &error);

      g_assert_true (fp_project_builder_survey (builder, item, &error));
    }
  g_assert_true (fp_project_builder_alternative (builder, "a", "A", "", &error));
  project = fp_project_builder_end (builder, &error);
  g_assert_no_error (error);
  return project;
}

static void
test_two_thousand (void)
{
  g_autoptr (FpProject) project = full_project ();
  g_autoptr (FpDocument) d = fp_document_new (project, NULL, TRUE);
  GtkWidget *window, *things = open_list (d, &window);
  gint64 began;
  double edit, all;

  g_assert_cmpuint (n_things (things), ==, FP_ITEMS_MAX);
  began = g_get_monotonic_time ();
  fp_document_edit (d, fp_set_out_move (fp_document_scene (d), "pier-7", (FpVec3) { 10, 0, 0 }, NULL), "m", NULL);
  edit = (double) (g_get_monotonic_time () - began) / 1e6;
  began = g_get_monotonic_time ();
  gtk_selection_model_select_all (model_of (things));
  all = (double) (g_get_monotonic_time () - began) / 1e6;
  g_assert_cmpuint (fp_document_n_chosen (d), ==, FP_ITEMS_MAX);
  g_test_message ("with %d things: %.3f s for an edit, %.3f s to choose all", FP_ITEMS_MAX, edit, all);
  /* With sanitizers, on a busy machine; a list that grows with the square of the things takes many times as long. */
  g_assert_cmpfloat (edit, <, 3.0);
  g_assert_cmpfloat (all, <, 3.0);
  gtk_window_destroy (GTK_WINDOW (window));
}

int
main (int argc, char **argv)
{
  gtk_test_init (&argc, &argv, NULL);
  g_test_add_func ("/things-list/choice", test_choice_both_ways);
  g_test_add_func ("/things-list/folds", test_folds);
  g_test_add_func ("/things-list/sorted", test_sorted);
  g_test_add_func ("/things-list/types", test_types_in_a_cell);
  g_test_add_func ("/things-list/left", test_left_for_something_else);
  g_test_add_func ("/things-list/wrong", test_wrong_by_name);
  g_test_add_func ("/things-list/types-where-clicked", test_types_where_clicked);
  g_test_add_func ("/things-list/named", test_is_named);
  g_test_add_func ("/things-list/two-thousand", test_two_thousand);
  return g_test_run ();
}
