/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What is chosen, arranged from the window: at once, and after a question. */
#include "application.h"
#include "arrange-dialog.h"
#include "waiting.h"
#include "widget-help.h"
#include "window.h"

#include "footpace/arrange.h"

#include <math.h>
#include <string.h>

static FpDocument *
open_parish (void)
{
  FpDocument *d = help_open_sample ("parish.footpace");

  fp_document_set_alternative (d, fp_project_n_alternatives (fp_document_project (d)) - 1);
  return d;
}

static GtkWidget *
open_window (FpDocument *d)
{
  GtkWidget *window = fp_window_new (NULL);

  fp_window_set_document (FP_WINDOW (window), d);
  gtk_window_present (GTK_WINDOW (window));
  return window;
}

static const FpPlaced *
of_role (FpDocument *d, FpRole role)
{
  const int i = fp_scene_role (fp_document_scene (d), role);

  g_assert_cmpint (i, >=, 0);
  return &fp_scene_placed (fp_document_scene (d), NULL)[i];
}

static void
choose (FpDocument *d, FpRole role)
{
  g_autofree char *id = g_strdup (fp_item_id (of_role (d, role)->item));

  fp_document_choose (d, id);
}

static guint
n_standing (FpDocument *d)
{
  guint n, standing = 0;
  const FpPlaced *placed = fp_scene_placed (fp_document_scene (d), &n);

  for (guint i = 0; i < n; i++)
    standing += placed[i].ghost ? 0 : 1;
  return standing;
}

static double
middle (const FpPlaced *placed)
{
  return (placed->plan.x0 + placed->plan.x1) / 2.0;
}

static gboolean
does (GtkWidget *window, const char *action)
{
  return gtk_widget_activate_action (window, action, NULL);
}

/* --- at once --------------------------------------------------------------- */

static void
test_centre (void)
{
  g_autoptr (FpDocument) d = open_parish ();
  GtkWidget *window = open_window (d);
  double was;

  choose (d, FP_ROLE_CREDENCE);
  was = middle (fp_document_chosen_placed (d));
  g_assert_cmpfloat (fabs (was), >, 1000.0);
  g_assert_true (does (window, "win.centre"));
  g_assert_cmpfloat_with_epsilon (middle (fp_document_chosen_placed (d)), 0.0, 1e-6);
  g_assert_cmpstr (fp_document_undo_label (d), ==, "Centre Credence");
  fp_document_undo (d);
  g_assert_cmpfloat (middle (fp_document_chosen_placed (d)), ==, was);
  gtk_window_destroy (GTK_WINDOW (window));
}

/* A copy stands on the other side and is what is chosen then, so that the next key moves it. */
static void
test_mirror_copy (void)
{
  g_autoptr (FpDocument) d = open_parish ();
  GtkWidget *window = open_window (d);
  g_autofree char *was = NULL;
  guint n = n_standing (d);
  double at;

  choose (d, FP_ROLE_CREDENCE);
  was = g_strdup (fp_document_chosen (d));
  at = middle (fp_document_chosen_placed (d));
  g_assert_true (does (window, "win.mirror-copy"));
  g_assert_cmpuint (n_standing (d), ==, n + 1);
  g_assert_cmpuint (fp_document_n_chosen (d), ==, 1);
  g_assert_cmpstr (fp_document_chosen (d), !=, was);
  g_assert_cmpfloat_with_epsilon (middle (fp_document_chosen_placed (d)), -at, 1e-6);
  g_assert_cmpuint (fp_document_depth (d), ==, 1);
  /* Where it stands: nothing more. */
  g_assert_true (does (window, "win.mirror"));
  g_assert_cmpfloat_with_epsilon (middle (fp_document_chosen_placed (d)), at, 1e-6);
  g_assert_cmpuint (n_standing (d), ==, n + 1);
  gtk_window_destroy (GTK_WINDOW (window));
}

/* Equal clear gaps, by what the scene says of the plans. */
static void
test_space (void)
{
  g_autoptr (FpDocument) d = open_parish ();
  GtkWidget *window = open_window (d);
  const FpVec3 by[] = { { 300, -2600, 0 }, { 2500, -2600, 0 } };
  g_autoptr (GPtrArray) ids = g_ptr_array_new_with_free_func (g_free);
  double lo[3], hi[3];

  choose (d, FP_ROLE_SEDILIA);
  g_ptr_array_add (ids, g_strdup (fp_document_chosen (d)));
  for (guint i = 0; i < 2; i++)
    {
      char **made = NULL;
      const char *const one[] = { g_ptr_array_index (ids, 0), NULL };

      g_assert_true (fp_document_edit (d, fp_arrange_repeat (fp_document_scene (d), one, by[i], 1, &made, NULL), "r",
                                       NULL));
      g_ptr_array_add (ids, g_strdup (made[0]));
      g_strfreev (made);
    }
  g_ptr_array_add (ids, NULL);
  fp_document_choose_all (d, (const char *const *) ids->pdata);
  g_assert_true (does (window, "win.space-across"));
  for (guint i = 0; i < 3; i++)
    {
      const FpPlaced *placed = fp_document_placed (d, g_ptr_array_index (ids, i));

      lo[i] = placed->plan.x0;
      hi[i] = placed->plan.x1;
    }
  g_assert_cmpfloat_with_epsilon (lo[1] - hi[0], lo[2] - hi[1], 1e-6);
  gtk_window_destroy (GTK_WINDOW (window));
}

/* --- only where it applies --------------------------------------------------- */

static void
test_only_where_it_applies (void)
{
  g_autoptr (FpDocument) d = open_parish ();
  GtkWidget *window = open_window (d);
  const guint depth = fp_document_depth (d);

  does (window, "win.centre");
  does (window, "win.mirror");
  does (window, "win.repeat");
  g_assert_cmpuint (fp_document_depth (d), ==, depth);
  choose (d, FP_ROLE_CREDENCE);
  does (window, "win.space-across"); /* one alone has no gaps */
  g_assert_cmpuint (fp_document_depth (d), ==, depth);
  g_assert_true (does (window, "win.remove"));
  does (window, "win.centre");
  g_assert_cmpuint (fp_document_depth (d), ==, depth + 1);
  gtk_window_destroy (GTK_WINDOW (window));
}

static void
test_choose_like (void)
{
  g_autoptr (FpDocument) d = open_parish ();
  GtkWidget *window = open_window (d);
  const FpKind *kind;

  choose (d, FP_ROLE_PEWS);
  kind = fp_item_kind (fp_document_chosen_placed (d)->item);
  g_assert_true (does (window, "win.choose-like"));
  g_assert_cmpuint (fp_document_n_chosen (d), >, 1);
  for (const char *const *id = fp_document_chosen_all (d); *id != NULL; id++)
    g_assert_true (fp_item_kind (fp_document_placed (d, *id)->item) == kind);
  g_assert_false (fp_document_chosen_like (d, NULL));
  gtk_window_destroy (GTK_WINDOW (window));
}

/* --- asked first -------------------------------------------------------------- */

static void
type (GtkWidget *dialog, guint nth, const char *text)
{
  GtkWidget *grid = help_find (dialog, GTK_TYPE_GRID), *entry = gtk_grid_get_child_at (GTK_GRID (grid), 1, (int) nth);

  gtk_editable_set_text (GTK_EDITABLE (entry), text);
}

static void
accept (GtkWidget *dialog)
{
  g_signal_emit_by_name (gtk_window_get_default_widget (GTK_WINDOW (dialog)), "clicked");
}

static void
test_repeat (void)
{
  g_autoptr (FpDocument) d = open_parish ();
  GtkWidget *window = open_window (d), *dialog, *error;
  const guint n = n_standing (d);
  const char *first;
  double at;

  choose (d, FP_ROLE_CREDENCE);
  at = fp_document_chosen_placed (d)->place.y;
  first = g_intern_string (fp_document_chosen (d));
  dialog = fp_repeat_dialog_show (GTK_WINDOW (window), d);
  type (dialog, 0, "2");
  type (dialog, 1, "0");
  type (dialog, 2, "-90 cm");
  /* Shown on the board while it is typed, and no step of the history. */
  WAIT_FOR (fp_document_is_previewing (d) && n_standing (d) == n + 2);
  g_assert_cmpuint (fp_document_depth (d), ==, 0);
  type (dialog, 0, "many");
  error = help_find_styled (dialog, "error");
  WAIT_FOR (gtk_widget_get_visible (error));
  g_assert_nonnull (strstr (gtk_label_get_text (GTK_LABEL (error)), "How many more"));
  g_assert_cmpuint (n_standing (d), ==, n);
  type (dialog, 0, "2");
  accept (dialog);
  g_assert_cmpuint (n_standing (d), ==, n + 2);
  g_assert_cmpuint (fp_document_depth (d), ==, 1);
  /* The first one and its copies: a row. */
  g_assert_cmpuint (fp_document_n_chosen (d), ==, 3);
  g_assert_true (g_strv_contains (fp_document_chosen_all (d), first));
  g_assert_cmpfloat_with_epsilon (fp_document_chosen_placed (d)->place.y, at - 1800.0, 1e-6);
  g_assert_cmpstr (fp_document_undo_label (d), ==, "Repeat Credence");
  gtk_window_destroy (GTK_WINDOW (window));
}

static void
test_given_up (void)
{
  g_autoptr (FpDocument) d = open_parish ();
  GtkWidget *window = open_window (d), *dialog;
  const guint n = n_standing (d);

  choose (d, FP_ROLE_CREDENCE);
  dialog = fp_repeat_dialog_show (GTK_WINDOW (window), d);
  WAIT_FOR (n_standing (d) == n + 1);
  gtk_window_close (GTK_WINDOW (dialog));
  WAIT_FOR (!fp_document_is_previewing (d));
  g_assert_cmpuint (n_standing (d), ==, n);
  g_assert_cmpuint (fp_document_depth (d), ==, 0);
  gtk_window_destroy (GTK_WINDOW (window));
}

/* Enter on a list that is shut, as the toolkit's key controllers have it. */
static gboolean
press_enter (GtkWidget *list)
{
  g_autoptr (GListModel) all = gtk_widget_observe_controllers (list);
  gboolean done = FALSE;

  for (guint i = 0; !done && i < g_list_model_get_n_items (all); i++)
    {
      g_autoptr (GtkEventController) keys = g_list_model_get_item (all, i);

      if (GTK_IS_EVENT_CONTROLLER_KEY (keys))
        g_signal_emit_by_name (keys, "key-pressed", GDK_KEY_Return, 0u, (GdkModifierType) 0, &done);
    }
  return done;
}

static void
test_level (void)
{
  g_autoptr (FpDocument) d = open_parish ();
  GtkWidget *window = open_window (d), *dialog, *list;
  GListModel *names;
  const FpPlaced *other = of_role (d, FP_ROLE_GRADINE), *rail = of_role (d, FP_ROLE_RAIL);
  const double top = rail->level + rail->extent.height;
  g_autofree char *name = g_strdup (fp_item_name (rail->item)), *high = g_strdup (fp_item_name (other->item));
  guint i = 0;

  choose (d, FP_ROLE_CREDENCE);
  dialog = fp_level_dialog_show (GTK_WINDOW (window), d);
  list = help_find (dialog, GTK_TYPE_DROP_DOWN);
  names = gtk_drop_down_get_model (GTK_DROP_DOWN (list));
  /* So high no credence may be: it is not offered. */
  g_assert_cmpuint (g_list_model_get_n_items (names), >, 0);
  for (guint k = 0; k < g_list_model_get_n_items (names); k++)
    g_assert_false (g_str_has_prefix (gtk_string_list_get_string (GTK_STRING_LIST (names), k), high));
  for (; i < g_list_model_get_n_items (names); i++)
    if (g_str_has_prefix (gtk_string_list_get_string (GTK_STRING_LIST (names), i), name))
      break;
  gtk_drop_down_set_selected (GTK_DROP_DOWN (list), i);
  accept (dialog);
  choose (d, FP_ROLE_CREDENCE);
  g_assert_cmpfloat_with_epsilon (fp_document_chosen_placed (d)->level + fp_document_chosen_placed (d)->extent.top, top,
                                  1e-6);
  gtk_window_destroy (GTK_WINDOW (window));
}

/* It opens on what can be done: Enter does it. */
static void
test_level_by_enter (void)
{
  g_autoptr (FpDocument) d = open_parish ();
  GtkWidget *window = open_window (d), *dialog;

  choose (d, FP_ROLE_CREDENCE);
  dialog = fp_level_dialog_show (GTK_WINDOW (window), d);
  g_assert_true (press_enter (help_find (dialog, GTK_TYPE_DROP_DOWN)));
  g_assert_cmpstr (fp_document_undo_label (d), ==, "Level of Credence");
  gtk_window_destroy (GTK_WINDOW (window));
}

/* A footpace is as high as its steps: there is nothing to choose, and it is said why, by its name and once. */
static void
test_no_level (void)
{
  g_autoptr (FpDocument) d = open_parish ();
  GtkWidget *window = open_window (d), *dialog, *list, *error;
  g_autofree char *begins = NULL;

  choose (d, FP_ROLE_FOOTPACE);
  begins = g_strconcat (fp_item_name (fp_document_chosen_placed (d)->item), " has no height of its own", NULL);
  dialog = fp_level_dialog_show (GTK_WINDOW (window), d);
  list = help_find (dialog, GTK_TYPE_DROP_DOWN);
  error = help_find_styled (dialog, "error");
  WAIT_FOR (gtk_widget_get_visible (error));
  g_assert_false (gtk_widget_get_sensitive (list));
  g_assert_true (g_str_has_prefix (gtk_label_get_text (GTK_LABEL (error)), begins));
  press_enter (list);
  g_assert_cmpuint (fp_document_depth (d), ==, 0);
  gtk_window_destroy (GTK_WINDOW (window));
}

static void
test_copy_to (void)
{
  g_autoptr (FpDocument) d = open_parish ();
  GtkWidget *window = open_window (d), *dialog;
  const guint here = fp_document_alternative (d);
  const FpProject *project = fp_document_project (d);
  const guint before = fp_alternative_n_items (fp_project_alternative (project, 0));

  g_assert_cmpuint (here, >, 0);
  choose (d, FP_ROLE_CREDENCE);
  dialog = fp_copy_to_dialog_show (GTK_WINDOW (window), d);
  g_assert_true (press_enter (help_find (dialog, GTK_TYPE_DROP_DOWN))); /* the first of the others */
  project = fp_document_project (d);
  g_assert_cmpuint (fp_alternative_n_items (fp_project_alternative (project, 0)), ==, before + 1);
  g_assert_cmpuint (fp_document_alternative (d), ==, here);
  gtk_window_destroy (GTK_WINDOW (window));
}

/* --- keys --------------------------------------------------------------------- */

static void
test_keys_do_one_thing (void)
{
  g_autoptr (GtkApplication) app = fp_application_new ();
  g_autoptr (GHashTable) seen = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, g_free);
  g_auto (GStrv) actions = NULL;

  g_assert_true (g_application_register (G_APPLICATION (app), NULL, NULL));
  actions = gtk_application_list_action_descriptions (app);
  for (guint i = 0; actions[i] != NULL; i++)
    {
      g_auto (GStrv) keys = gtk_application_get_accels_for_action (app, actions[i]);

      for (guint k = 0; keys[k] != NULL; k++)
        {
          if (g_hash_table_contains (seen, keys[k]))
            g_error ("%s does %s and %s", keys[k], actions[i], (char *) g_hash_table_lookup (seen, keys[k]));
          g_hash_table_insert (seen, g_strdup (keys[k]), g_strdup (actions[i]));
        }
    }
  g_assert_cmpuint (g_hash_table_size (seen), >, 25);
}

/* What is in the menu by a key is told of in the window of shortcuts. */
static void
test_keys_are_told (void)
{
  static const char *const deeds[] = {
    "win.centre", "win.mirror", "win.mirror-copy", "win.repeat", "win.space-across", "win.space-along", "win.match-level",
    "win.choose-like", "win.copy-to", "win.put-into-survey"
  };
  g_autoptr (GtkApplication) app = fp_application_new ();
  g_autoptr (GBytes) ui = g_resources_lookup_data ("/org/footpace/Footpace/shortcuts.ui", 0, NULL);
  const char *text = g_bytes_get_data (ui, NULL);

  g_assert_true (g_application_register (G_APPLICATION (app), NULL, NULL));
  for (guint i = 0; i < G_N_ELEMENTS (deeds); i++)
    {
      g_auto (GStrv) keys = gtk_application_get_accels_for_action (app, deeds[i]);
      g_autofree char *key = NULL, *escaped = NULL;
      guint value;
      GdkModifierType state;

      g_assert_nonnull (keys[0]);
      g_assert_true (gtk_accelerator_parse (keys[0], &value, &state));
      key = g_strdup_printf ("<Ctrl>%s%s", state & GDK_SHIFT_MASK ? "<Shift>" : "", gdk_keyval_name (value));
      escaped = g_markup_escape_text (key, -1);
      if (g_strstr_len (text, (gssize) g_bytes_get_size (ui), escaped) == NULL)
        g_error ("%s, by which %s is done, is not told of", key, deeds[i]);
    }
}

int
main (int argc, char **argv)
{
  gtk_test_init (&argc, &argv, NULL);
  g_test_add_func ("/arranging/centre", test_centre);
  g_test_add_func ("/arranging/mirror", test_mirror_copy);
  g_test_add_func ("/arranging/space", test_space);
  g_test_add_func ("/arranging/applies", test_only_where_it_applies);
  g_test_add_func ("/arranging/like", test_choose_like);
  g_test_add_func ("/arranging/repeat", test_repeat);
  g_test_add_func ("/arranging/given-up", test_given_up);
  g_test_add_func ("/arranging/level", test_level);
  g_test_add_func ("/arranging/level/enter", test_level_by_enter);
  g_test_add_func ("/arranging/level/none", test_no_level);
  g_test_add_func ("/arranging/copy-to", test_copy_to);
  g_test_add_func ("/arranging/keys/told", test_keys_are_told);
  g_test_add_func ("/arranging/keys", test_keys_do_one_thing);
  return g_test_run ();
}
