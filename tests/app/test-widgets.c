/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The window's widgets on a real (virtual) screen, with a project in them. */
#include "alternatives-strip.h"
#include "compare-page.h"
#include "compat-4-8.h"
#include "findings-list.h"
#include "inspector.h"
#include "outline-edit.h"
#include "param-row.h"
#include "place-edit.h"
#include "print-preview.h"
#include "printing.h"
#include "sheet-dialog.h"
#include "sheet-form.h"
#include "show-list.h"
#include "small-drawing.h"
#include "sheets.h"
#include "waiting.h"
#include "widget-help.h"
#include "window.h"

#include "footpace/norms-edit.h"

#include <glib/gstdio.h>
#include <string.h>

static void
set_true (gboolean *what)
{
  *what = TRUE;
}

static void
count_up (guint *n)
{
  ++*n;
}

static gboolean
is_row_of (GtkWidget *widget, gconstpointer param)
{
  const FpParam *p = FP_IS_PARAM_ROW (widget) ? fp_param_row_param (FP_PARAM_ROW (widget)) : NULL;

  return p != NULL && g_strcmp0 (p->id, param) == 0;
}

static GtkWidget *
find_row (GtkWidget *top, const char *param)
{
  return help_find_that (top, is_row_of, param);
}

static void
type (GtkWidget *row, const char *text)
{
  GtkWidget *entry = help_find (row, GTK_TYPE_ENTRY);

  gtk_editable_set_text (GTK_EDITABLE (entry), text);
  g_signal_emit_by_name (entry, "activate");
}

static guint
n_rows (GtkWidget *list)
{
  guint n = 0;

  while (gtk_list_box_get_row_at_index (GTK_LIST_BOX (list), (int) n) != NULL)
    n++;
  return n;
}

/* --- the inspector -------------------------------------------------------- */

static void
test_inspector_types (void)
{
  g_autoptr (FpDocument) d = help_open_sample ("parish.footpace");
  GtkWidget *inspector = fp_inspector_new (), *window = help_show (inspector), *row;

  fp_inspector_set_document (FP_INSPECTOR (inspector), d);
  fp_document_choose (d, help_altar_id (d));
  row = find_row (inspector, "length");
  g_assert_nonnull (row);
  type (row, "2.55 m");
  g_assert_cmpfloat (fp_item_param (help_altar (d)->item, "length"), ==, 2550.0);
  g_assert_cmpstr (gtk_editable_get_text (GTK_EDITABLE (help_find (row, GTK_TYPE_ENTRY))), ==, "2550");
  /* An edit from elsewhere is shown. */
  fp_document_undo (d);
  g_assert_cmpstr (gtk_editable_get_text (GTK_EDITABLE (help_find (row, GTK_TYPE_ENTRY))), !=, "2550");
  gtk_window_destroy (GTK_WINDOW (window));
}

static void
test_inspector_says_what_is_wrong (void)
{
  g_autoptr (FpDocument) d = help_open_sample ("parish.footpace");
  GtkWidget *inspector = fp_inspector_new (), *window = help_show (inspector), *row, *entry;

  fp_inspector_set_document (FP_INSPECTOR (inspector), d);
  fp_document_choose (d, help_altar_id (d));
  row = find_row (inspector, "length");
  entry = help_find (row, GTK_TYPE_ENTRY);
  type (row, "as wide as can be");
  g_assert_true (gtk_widget_has_css_class (entry, "error"));
  g_assert_true (gtk_widget_get_visible (gtk_widget_get_last_child (row)));
  gtk_test_accessible_assert_state (entry, GTK_ACCESSIBLE_STATE_INVALID, GTK_ACCESSIBLE_INVALID_TRUE);
  g_assert_cmpuint (fp_document_depth (d), ==, 0);
  /* What was typed stays to be mended; typing on takes the message away. */
  g_assert_cmpstr (gtk_editable_get_text (GTK_EDITABLE (entry)), ==, "as wide as can be");
  type (row, "2400");
  g_assert_false (gtk_widget_has_css_class (entry, "error"));
  g_assert_false (gtk_widget_get_visible (gtk_widget_get_last_child (row)));
  gtk_window_destroy (GTK_WINDOW (window));
}

/* Another thing is chosen, by an alternative say, while something is typed: the field has gone, and what stood in it is
 * not entered for what is chosen now. */
static void
test_inspector_field_gone (void)
{
  static const char *const texts[] = { "2550", "as wide as can be" };
  g_autoptr (FpDocument) d = help_open_sample ("parish.footpace");
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0), *inspector = fp_inspector_new ();
  GtkWidget *elsewhere = gtk_button_new_with_label ("Elsewhere"), *window;

  gtk_box_append (GTK_BOX (box), inspector);
  gtk_box_append (GTK_BOX (box), elsewhere);
  window = help_show (box);
  fp_inspector_set_document (FP_INSPECTOR (inspector), d);
  for (guint i = 0; i < G_N_ELEMENTS (texts); i++)
    {
      GtkWidget *entry;

      fp_document_choose (d, help_altar_id (d));
      entry = help_find (find_row (inspector, "length"), GTK_TYPE_ENTRY);
      g_assert_true (gtk_widget_grab_focus (entry));
      gtk_editable_set_text (GTK_EDITABLE (entry), texts[i]);
      fp_document_choose (d, "credence");
      g_assert_true (gtk_widget_grab_focus (elsewhere));
      g_assert_cmpuint (fp_document_depth (d), ==, 0);
    }
  gtk_window_destroy (GTK_WINDOW (window));
}

static GtkWidget *
focus_in (GtkWidget *inspector)
{
  GtkWidget *focus = gtk_root_get_focus (gtk_widget_get_root (inspector));

  return focus != NULL && gtk_widget_is_ancestor (focus, inspector) ? focus : NULL;
}

static gboolean
is_called (GtkWidget *widget, gconstpointer name)
{
  return g_strcmp0 (gtk_widget_get_name (widget), name) == 0;
}

static void
focus_row (GtkWidget *inspector, const char *name)
{
  GtkWidget *row = help_find_that (inspector, is_called, name);

  g_assert_nonnull (row);
  g_assert_true (gtk_widget_child_focus (row, GTK_DIR_TAB_FORWARD));
}

/* The row that the keyboard is in; frames pass first, in which the toolkit looks after a focus that has gone. */
static void
check_focus_in_row (GtkWidget *inspector, const char *name)
{
  gboolean passed = FALSE;

  g_timeout_add_once (60, (GSourceOnceFunc) set_true, &passed);
  WAIT_FOR (passed);
  for (GtkWidget *w = focus_in (inspector); w != NULL; w = gtk_widget_get_parent (w))
    if (is_called (w, name))
      return;
  g_error ("the keyboard is not in the row %s", name);
}

/* What a thing may stand on is renamed, so its rows are made anew: who was in one of them still is. */
static void
test_inspector_keeps_the_keyboard (void)
{
  static const char *const rows[] = { "height", "across", "turn", "name", "support" };
  g_autoptr (FpDocument) d = help_open_sample ("parish.footpace");
  GtkWidget *inspector = fp_inspector_new (), *window = help_show (inspector);

  fp_inspector_set_document (FP_INSPECTOR (inspector), d);
  fp_document_set_alternative (d, 1);
  fp_document_choose (d, "crucifix");
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *name = g_strdup_printf ("Credence %u", i);
      GtkWidget *before;

      focus_row (inspector, rows[i]);
      before = g_object_ref (focus_in (inspector));
      g_assert_true (fp_name_enter (d, "credence", name, NULL));
      g_assert_true (focus_in (inspector) != before);
      check_focus_in_row (inspector, rows[i]);
      g_object_unref (before);
    }
  gtk_window_destroy (GTK_WINDOW (window));
}

/* A corner more: the rows of all of them are made anew. */
static void
test_inspector_keeps_the_corner (void)
{
  g_autoptr (FpDocument) d = help_open_sample ("parish.footpace");
  GtkWidget *inspector = fp_inspector_new (), *window = help_show (inspector);
  g_autofree FpPoint *corner = NULL;
  const FpPoint *was;
  guint n;

  fp_inspector_set_document (FP_INSPECTOR (inspector), d);
  fp_document_choose (d, "chancel-floor");
  was = fp_item_corners (fp_document_placed (d, "chancel-floor")->item, &n);
  g_assert_cmpuint (n, >, 2);
  corner = g_new (FpPoint, n + 1);
  memcpy (corner, was, sizeof *corner * n);
  corner[n] = (FpPoint) { (corner[0].x + corner[n - 1].x) / 2 + 10, (corner[0].y + corner[n - 1].y) / 2 + 10 };
  gtk_expander_set_expanded (GTK_EXPANDER (help_find (inspector, GTK_TYPE_EXPANDER)), TRUE);
  focus_row (inspector, "along 2");
  g_assert_true (fp_document_edit (d, fp_outline_make (d, "chancel-floor", corner, n + 1, NULL), "Corner", NULL));
  check_focus_in_row (inspector, "along 2");
  gtk_window_destroy (GTK_WINDOW (window));
}

/* Another thing: the same row of it, or where it has none, some other; nothing is entered there. */
static void
test_inspector_keeps_the_keyboard_of_another (void)
{
  g_autoptr (FpDocument) d = help_open_sample ("parish.footpace");
  GtkWidget *inspector = fp_inspector_new (), *window = help_show (inspector);

  fp_inspector_set_document (FP_INSPECTOR (inspector), d);
  fp_document_choose (d, "sedilia");
  focus_row (inspector, "across");
  gtk_editable_set_text (GTK_EDITABLE (help_find (find_row (inspector, "across"), GTK_TYPE_ENTRY)), "1234");
  fp_document_choose (d, "chair-1974");
  check_focus_in_row (inspector, "across");
  focus_row (inspector, "back-height");
  fp_document_choose (d, "walls");
  g_assert_nonnull (focus_in (inspector));
  g_assert_cmpuint (fp_document_depth (d), ==, 0);
  gtk_window_destroy (GTK_WINDOW (window));
}

/* Every thing of every sample can be looked at, and every field has a name.  How many fields are seen. */
static guint
check_fields_have_names (GtkWidget *w)
{
  guint fields = 0;

  if (GTK_IS_ENTRY (w) || GTK_IS_DROP_DOWN (w))
    {
      g_assert_true (gtk_test_accessible_has_property (GTK_ACCESSIBLE (w), GTK_ACCESSIBLE_PROPERTY_LABEL));
      fields += gtk_widget_get_mapped (w) ? 1 : 0;
    }
  for (GtkWidget *c = gtk_widget_get_first_child (w); c != NULL; c = gtk_widget_get_next_sibling (c))
    fields += check_fields_have_names (c);
  return fields;
}

/* Several of one kind: what they share is shown, what differs is called so, and what is typed is for all of them. */
static void
test_inspector_of_several (void)
{
  g_autoptr (FpDocument) d = help_open_sample ("parish.footpace");
  GtkWidget *inspector = fp_inspector_new (), *window = help_show (inspector), *row, *entry;
  g_autoptr (GPtrArray) ids = g_ptr_array_new ();
  guint n;
  const FpPlaced *placed = fp_scene_placed (fp_document_scene (d), &n);

  fp_inspector_set_document (FP_INSPECTOR (inspector), d);
  for (guint i = 0; i < n; i++)
    if (!placed[i].ghost && fp_item_kind (placed[i].item)->role == FP_ROLE_PEWS)
      g_ptr_array_add (ids, (gpointer) fp_item_id (placed[i].item));
  g_ptr_array_add (ids, NULL);
  fp_document_choose_all (d, (const char *const *) ids->pdata);
  g_assert_nonnull (strstr (gtk_label_get_text (GTK_LABEL (gtk_widget_get_template_child
                                                           (inspector, FP_TYPE_INSPECTOR, "title"))), "chosen: Pews"));
  row = find_row (inspector, "across");
  entry = help_find (row, GTK_TYPE_ENTRY);
  g_assert_cmpstr (gtk_editable_get_text (GTK_EDITABLE (entry)), ==, "");
  g_assert_cmpstr (gtk_entry_get_placeholder_text (GTK_ENTRY (entry)), ==, "mixed");
  row = find_row (inspector, "spacing");
  g_assert_cmpstr (gtk_editable_get_text (GTK_EDITABLE (help_find (row, GTK_TYPE_ENTRY))), !=, "");
  type (row, "930");
  g_assert_cmpuint (fp_document_depth (d), ==, 1);
  for (guint i = 0; i + 1 < ids->len; i++)
    g_assert_cmpfloat (fp_item_param (fp_document_placed (d, fp_document_chosen_all (d)[i])->item, "spacing"), ==, 930.0);
  g_assert_cmpuint (check_fields_have_names (inspector), >, 5);
  /* One alone again has a name. */
  fp_document_choose (d, help_altar_id (d));
  g_assert_nonnull (find_row (inspector, "length"));
  gtk_window_destroy (GTK_WINDOW (window));
}

static void
test_inspector_shows_everything (void)
{
  static const char *const names[] = { "chapel.footpace", "fan.footpace", "parish.footpace" };
  GtkWidget *inspector = fp_inspector_new (), *window = help_show (inspector);

  for (guint s = 0; s < G_N_ELEMENTS (names); s++)
    {
      g_autoptr (FpDocument) d = help_open_sample (names[s]);
      guint n;

      fp_inspector_set_document (FP_INSPECTOR (inspector), d);
      fp_scene_placed (fp_document_scene (d), &n);
      for (guint i = 0; i < n; i++)
        {
          const FpPlaced *placed = &fp_scene_placed (fp_document_scene (d), NULL)[i];
          guint fields;

          fp_document_choose (d, fp_item_id (placed->item));
          fields = check_fields_have_names (inspector);
          /* One for each measure, and for its name. */
          g_assert_cmpuint (fields, >, fp_kind_n_params (fp_item_kind (placed->item)));
        }
    }
  gtk_window_destroy (GTK_WINDOW (window));
}

/* --- lists ---------------------------------------------------------------- */

static void
count (GtkWidget *widget, guint *n)
{
  (void) widget;
  (*n)++;
}

static void
test_findings_list (void)
{
  g_autoptr (FpDocument) d = help_open_sample ("parish.footpace");
  GtkWidget *findings = fp_findings_list_new (), *window = help_show (findings);
  GtkWidget *list = help_find (findings, GTK_TYPE_LIST_BOX);
  guint picked = 0, expected = 0;

  g_signal_connect (findings, "picked", G_CALLBACK (count), &picked);
  fp_findings_list_set_document (FP_FINDINGS_LIST (findings), d);
  WAIT_FOR (!fp_document_is_checking (d));
  for (guint w = 0; w < FP_N_WEIGHTS; w++)
    expected += fp_findings_short (fp_document_findings (d), (FpWeight) w);
  g_assert_cmpuint (expected, >, 0);
  g_assert_cmpuint (n_rows (list), ==, expected);
  g_assert_null (fp_findings_list_picked (FP_FINDINGS_LIST (findings)));
  gtk_list_box_select_row (GTK_LIST_BOX (list), gtk_list_box_get_row_at_index (GTK_LIST_BOX (list), 0));
  g_assert_cmpuint (picked, ==, 1);
  g_assert_nonnull (fp_findings_list_picked (FP_FINDINGS_LIST (findings)));
  for (guint i = 0; i < expected; i++)
    {
      GtkListBoxRow *row = gtk_list_box_get_row_at_index (GTK_LIST_BOX (list), (int) i);

      g_assert_true (gtk_test_accessible_has_property (GTK_ACCESSIBLE (row), GTK_ACCESSIBLE_PROPERTY_LABEL));
    }
  gtk_window_destroy (GTK_WINDOW (window));
}

/* Findings of a rulebook with a fault are not found, which is told over those that are. */
static void
test_findings_list_of_norms (void)
{
  g_autoptr (FpDocument) d = help_open_sample ("parish.footpace");
  GtkWidget *findings = fp_findings_list_new (), *window = help_show (findings), *amiss = help_find_called (findings, "amiss");

  fp_findings_list_set_document (FP_FINDINGS_LIST (findings), d);
  WAIT_FOR (!fp_document_is_checking (d));
  g_assert_false (gtk_widget_get_visible (amiss));
  g_assert_true (fp_document_edit (d, fp_norms_add_book (fp_document_project (d), "broken.xml", "<rulebook", NULL), "Add", NULL));
  WAIT_FOR (gtk_widget_get_visible (amiss));
  g_assert_cmpstr (gtk_label_get_text (GTK_LABEL (help_find_called (findings, "amiss_words"))), ==,
                   "1 rulebook is left out: see Norms");
  g_assert_cmpstr (gtk_actionable_get_action_name (GTK_ACTIONABLE (amiss)), ==, "win.norms");
  g_assert_nonnull (strstr (gtk_widget_get_tooltip_text (amiss), "“broken.xml” is left out: broken.xml:1"));
  fp_document_undo (d);
  WAIT_FOR (!gtk_widget_get_visible (amiss));
  gtk_window_destroy (GTK_WINDOW (window));
}

static void
test_alternatives_strip (void)
{
  g_autoptr (FpDocument) d = help_open_sample ("parish.footpace");
  GtkWidget *strip = fp_alternatives_strip_new (), *window = help_show (strip), *first;
  guint n = fp_project_n_alternatives (fp_document_project (d)), cards = 0;

  fp_alternatives_strip_set_document (FP_ALTERNATIVES_STRIP (strip), d);
  first = help_find_styled (strip, "alternative");
  for (GtkWidget *w = first; w != NULL; w = gtk_widget_get_next_sibling (w))
    cards++;
  g_assert_cmpuint (cards, ==, n);
  gtk_toggle_button_set_active (GTK_TOGGLE_BUTTON (first), TRUE);
  g_assert_cmpuint (fp_document_alternative (d), ==, 0);
  fp_document_set_alternative (d, n - 1);
  g_assert_false (gtk_toggle_button_get_active (GTK_TOGGLE_BUTTON (first)));

  /* Its menu turns the celebrant of this alternative alone, and back to what the brief asks. */
  g_assert_true (gtk_widget_activate_action (strip, "alternative.facing", "s", "people"));
  g_assert_cmpint (fp_project_facing (fp_document_project (d), n - 1), ==, FP_FACING_PEOPLE);
  g_assert_cmpint (fp_project_facing (fp_document_project (d), 0), ==, FP_FACING_EAST);
  g_assert_true (gtk_widget_activate_action (strip, "alternative.facing", "s", "brief"));
  g_assert_cmpint (fp_project_facing (fp_document_project (d), n - 1), ==, FP_FACING_EAST);
  gtk_window_destroy (GTK_WINDOW (window));
}

/* The row of the comparison that is headed so; -1. */
static int
row_headed (GtkWidget *grid, const char *text)
{
  for (int row = 0; row < 200; row++)
    {
      GtkWidget *head = gtk_grid_get_child_at (GTK_GRID (grid), 0, row);
      if (GTK_IS_LABEL (head) && g_str_equal (gtk_label_get_text (GTK_LABEL (head)), text))
        return row;
    }
  return -1;
}

static void
test_compare_page (void)
{
  g_autoptr (FpDocument) d = help_open_sample ("chapel.footpace");
  GtkWidget *page = fp_compare_page_new (), *window = help_show (page);
  GtkWidget *stack = help_find (page, GTK_TYPE_STACK), *grid;
  guint n = fp_project_n_alternatives (fp_document_project (d));

  fp_compare_page_set_document (FP_COMPARE_PAGE (page), d);
  fp_compare_page_set_shown (FP_COMPARE_PAGE (page), TRUE);
  WAIT_FOR (g_strcmp0 (gtk_stack_get_visible_child_name (GTK_STACK (stack)), "table") == 0);
  grid = help_find (page, GTK_TYPE_GRID);
  for (guint i = 0; i < n; i++)
    {
      const char *name = fp_alternative_name (fp_project_alternative (fp_document_project (d), i));
      GtkWidget *head = gtk_grid_get_child_at (GTK_GRID (grid), (int) i + 1, 0);
      GtkWidget *elevation = gtk_grid_get_child_at (GTK_GRID (grid), (int) i + 1, 1);

      g_assert_cmpstr (gtk_label_get_text (GTK_LABEL (head)), ==, name);
      gtk_test_accessible_assert_role (elevation, GTK_ACCESSIBLE_ROLE_IMG);
      g_assert_nonnull (gtk_grid_get_child_at (GTK_GRID (grid), (int) i + 1, 5));
    }
  for (guint i = 0; i < n; i++)
    {
      const int row = row_headed (grid, "At the back"), moments = row_headed (grid, "From how many places all of it is seen");
      GtkWidget *seen = gtk_grid_get_child_at (GTK_GRID (grid), (int) i + 1, row);

      g_assert_cmpint (row, >, 5);
      g_assert_cmpint (moments, >, 5);
      g_assert_cmpint (moments, <, row);
      g_assert_null (gtk_grid_get_child_at (GTK_GRID (grid), (int) i + 1, moments + 1)); /* a heading: its moment */
      g_assert_nonnull (gtk_grid_get_child_at (GTK_GRID (grid), (int) i + 1, moments + 2));
      gtk_test_accessible_assert_role (seen, GTK_ACCESSIBLE_ROLE_IMG);
      g_assert_nonnull (strstr (gtk_widget_get_tooltip_text (seen), "Seen: mensa"));
    }
  g_assert_cmpint (row_headed (grid, "On the gallery"), <, 0);
  gtk_window_destroy (GTK_WINDOW (window));
}

/* --- the page set-up -------------------------------------------------------- */

/* What is set is what it says again, for every sheet. */
static void
test_sheet_form (void)
{
  for (guint sheet = 0; sheet < FP_N_ALL_SHEETS; sheet++)
    {
      GtkWidget *form = g_object_ref_sink (g_object_new (FP_TYPE_SHEET_FORM, NULL));
      const FpPageSetup page = {
        .sheet = sheet, .paper = FP_PAPER_A2, .scale = sheet % 2 ? 75 : 50, .whole = TRUE,
        .findings = sheet < FP_N_SHEETS, .ink = FP_INK_SAFE, .hidden = 1u << FP_SHOW_NAMES | 1u << FP_SHOW_REMOVED,
        .tiled = TRUE, .tile = FP_PAPER_LETTER, .along = { TRUE, 1200, TRUE }, .across = { TRUE, -2500.25, TRUE },
      };
      FpPageSetup again;

      fp_sheet_form_set (FP_SHEET_FORM (form), &page, FP_UNITS_METRIC);
      again = fp_sheet_form_get (FP_SHEET_FORM (form));
      g_assert_true (fp_page_setup_equal (&page, &again));
      g_object_unref (form);
    }
}

static void
test_show_list (void)
{
  GtkWidget *list = g_object_ref_sink (g_object_new (FP_TYPE_SHOW_LIST, NULL)), *first;
  guint changes = 0;

  g_signal_connect_swapped (list, "changed", G_CALLBACK (count_up), &changes);
  fp_show_list_set (FP_SHOW_LIST (list), 1u << FP_SHOW_LIGHTS);
  g_assert_cmpuint (fp_show_list_get (FP_SHOW_LIST (list)), ==, 1u << FP_SHOW_LIGHTS);
  g_assert_cmpuint (changes, ==, 0); /* no hand has changed it */
  first = help_find (list, GTK_TYPE_CHECK_BUTTON);
  gtk_check_button_set_active (GTK_CHECK_BUTTON (first), FALSE);
  g_assert_cmpuint (changes, ==, 1);
  g_assert_cmpuint (fp_show_list_get (FP_SHOW_LIST (list)), ==, 1u << FP_SHOW_LIGHTS | 1u << FP_SHOW_BUILDING);
  g_object_unref (list);
}

/* The page is as the project was printed last. */
static void
test_sheet_dialog_begins_as_printed_last (void)
{
  g_autoptr (FpDocument) d = help_open_sample ("chapel.footpace");
  const FpPageSetup page = { .sheet = FP_SHEET_SECTION, .paper = FP_PAPER_A4, .scale = 100, .ink = FP_INK_GREY };
  GtkWidget *dialog, *form;
  FpPageSetup shown;

  g_assert_true (fp_document_edit (d, fp_project_with_page (fp_document_project (d), &page, NULL), "Page set-up", NULL));
  dialog = fp_sheet_dialog_new (NULL, d, FP_SHEET_PLAN, NULL);
  form = help_find (gtk_window_get_child (GTK_WINDOW (dialog)), FP_TYPE_SHEET_FORM);
  shown = fp_sheet_form_get (FP_SHEET_FORM (form));
  g_assert_true (fp_page_setup_equal (&page, &shown));
  gtk_window_destroy (GTK_WINDOW (dialog));
}

static GtkWindow *
find_window (const char *title)
{
  GListModel *windows = gtk_window_get_toplevels ();

  for (guint i = 0; i < g_list_model_get_n_items (windows); i++)
    {
      g_autoptr (GtkWindow) window = g_list_model_get_item (windows, i);

      if (g_strcmp0 (gtk_window_get_title (window), title) == 0)
        return window;
    }
  return NULL;
}

static void
count_pictures (GtkWidget *top, guint *n, int *wide, int *high)
{
  if (GTK_IS_PICTURE (top))
    {
      GdkPaintable *page = gtk_picture_get_paintable (GTK_PICTURE (top));

      ++*n;
      *wide = gdk_paintable_get_intrinsic_width (page);
      *high = gdk_paintable_get_intrinsic_height (page);
    }
  for (GtkWidget *w = gtk_widget_get_first_child (top); w != NULL; w = gtk_widget_get_next_sibling (w))
    count_pictures (w, n, wide, high);
}

/* Every page, in the proportions of its paper (A3, ISO 216), and no other program is asked. */
static void
test_print_preview (void)
{
  g_autoptr (GPtrArray) pages = g_ptr_array_new_with_free_func ((GDestroyNotify) fp_drawing_unref);
  g_autoptr (GtkPrintOperation) operation = NULL;
  g_autoptr (GError) error = NULL;
  GtkWindow *window;
  guint n = 0;
  int wide = 0, high = 0;

  for (guint i = 0; i < 2; i++)
    g_ptr_array_add (pages, fp_drawing_new (420, 297));
  operation = fp_print_operation_new (pages, "test");
  gtk_print_operation_set_allow_async (operation, TRUE);
  gtk_print_operation_run (operation, GTK_PRINT_OPERATION_ACTION_PREVIEW, NULL, &error);
  g_assert_no_error (error);
  WAIT_FOR (find_window ("Print Preview") != NULL && gtk_widget_get_mapped (GTK_WIDGET (find_window ("Print Preview"))));
  window = find_window ("Print Preview");
  count_pictures (GTK_WIDGET (window), &n, &wide, &high);
  g_assert_cmpuint (n, ==, 2);
  g_assert_cmpfloat_with_epsilon ((double) wide / high, 420.0 / 297.0, 0.01);
  g_assert_true (fp_print_was_previewed (operation));
  gtk_window_destroy (window);
}

static void
test_sheet_dialog (void)
{
  g_autoptr (FpDocument) d = help_open_sample ("chapel.footpace");
  GtkWidget *dialog = fp_sheet_dialog_new (NULL, d, FP_SHEET_PLAN, NULL), *button;

  gtk_window_present (GTK_WINDOW (dialog));
  button = help_find (gtk_window_get_titlebar (GTK_WINDOW (dialog)), GTK_TYPE_BUTTON);
  g_assert_nonnull (button);
  g_assert_false (gtk_widget_get_sensitive (button)); /* there is nothing to print yet */
  WAIT_FOR (gtk_widget_get_sensitive (button));
  gtk_window_destroy (GTK_WINDOW (dialog));
}

/* --- the window ----------------------------------------------------------- */

static gboolean
can_do (GtkWidget *widget, gconstpointer action)
{
  return GTK_IS_ACTIONABLE (widget) && gtk_widget_is_sensitive (widget)
         && g_strcmp0 (gtk_actionable_get_action_name (GTK_ACTIONABLE (widget)), action) == 0;
}

/* A button that does it can be pressed. */
static gboolean
offers (GtkWidget *top, const char *action)
{
  return help_find_that (top, can_do, action) != NULL;
}

static void
test_window (void)
{
  g_autoptr (FpDocument) d = help_open_sample ("chapel.footpace");
  GtkWidget *window = fp_window_new (NULL);
  const char *id = help_altar_id (d);

  gtk_window_present (GTK_WINDOW (window));
  g_assert_false (offers (window, "win.undo"));
  g_assert_false (offers (window, "win.save"));
  g_assert_true (offers (window, "win.open-sample"));
  fp_window_set_document (FP_WINDOW (window), d);
  g_assert_true (offers (window, "win.save"));
  g_assert_false (offers (window, "win.undo"));
  fp_document_choose (d, id);
  g_assert_true (offers (window, "win.remove"));
  g_assert_true (gtk_widget_activate_action (window, "win.remove", NULL));
  g_assert_cmpint (fp_scene_find (fp_document_scene (d), id), ==, -1);
  g_assert_true (offers (window, "win.undo"));
  g_assert_true (gtk_widget_activate_action (window, "win.undo", NULL));
  g_assert_cmpint (fp_scene_find (fp_document_scene (d), id), >=, 0);
  g_assert_true (offers (window, "win.redo"));
  g_assert_true (gtk_widget_activate_action (window, "win.redo", NULL));
  gtk_window_destroy (GTK_WINDOW (window));
}

/* Each furnishing of the table can be added from the list, and is then chosen. */
static void
test_window_adds_every_kind (void)
{
  guint n;
  const FpKind *const *kind = fp_kinds (&n);

  g_assert_cmpuint (n, >=, 20);
  for (guint i = 0; i < n; i++)
    {
      g_autoptr (FpDocument) d = help_open_sample ("chapel.footpace");
      GtkWidget *window = fp_window_new (NULL), *notice;

      fp_window_set_document (FP_WINDOW (window), d);
      g_assert_true (gtk_widget_activate_action (window, "win.add", "s", kind[i]->id));
      notice = help_find (window, GTK_TYPE_REVEALER);
      g_assert_false (gtk_revealer_get_reveal_child (GTK_REVEALER (notice)));
      g_assert_cmpuint (fp_document_depth (d), ==, 1);
      g_assert_true (fp_item_kind (fp_document_chosen_placed (d)->item) == kind[i]);
      gtk_window_destroy (GTK_WINDOW (window));
    }
}

static gboolean
has_dialog_over (GtkWidget *window)
{
  g_autoptr (GList) all = gtk_window_list_toplevels ();

  for (GList *l = all; l != NULL; l = l->next)
    if (gtk_window_get_transient_for (l->data) == GTK_WINDOW (window))
      return TRUE;
  return FALSE;
}

static void
test_window_asks_before_it_closes (void)
{
  g_autoptr (FpDocument) d = help_open_sample ("chapel.footpace");
  GtkWidget *window = fp_window_new (NULL);

  fp_window_set_document (FP_WINDOW (window), d);
  gtk_window_present (GTK_WINDOW (window));
  fp_document_edit (d, fp_project_with_alternative_text (fp_document_project (d), 0, "Renamed", "", NULL), "Rename",
                    NULL);
  gtk_window_close (GTK_WINDOW (window));
  WAIT_FOR (has_dialog_over (window));
  g_assert_true (gtk_widget_get_visible (window));
  gtk_window_destroy (GTK_WINDOW (window));
}

/* A file that cannot be read is told of, and what is open stays open. */
static void
test_window_bad_file (void)
{
  GtkWidget *window = fp_window_new (NULL), *notice = NULL;
  g_autofree char *dir = g_dir_make_tmp ("footpace-XXXXXX", NULL);
  g_autofree char *path = g_build_filename (dir, "bad.footpace", NULL);
  g_autoptr (FpDocument) d = help_open_sample ("chapel.footpace");

  fp_window_set_document (FP_WINDOW (window), d);
  g_assert_true (g_file_set_contents (path, "<project", -1, NULL));
  notice = help_find (window, GTK_TYPE_REVEALER);
  g_assert_false (gtk_revealer_get_reveal_child (GTK_REVEALER (notice)));
  fp_window_open (FP_WINDOW (window), path);
  g_assert_true (gtk_revealer_get_reveal_child (GTK_REVEALER (notice)));
  g_assert_nonnull (strstr (gtk_label_get_text (GTK_LABEL (help_find (notice, GTK_TYPE_LABEL))), "bad.footpace"));
  g_assert_true (fp_window_document (FP_WINDOW (window)) == d);
  gtk_window_destroy (GTK_WINDOW (window));
  g_unlink (path);
  g_rmdir (dir);
}

/* How many buttons that show but an icon are seen. */
static guint
check_buttons_have_names (GtkWidget *w)
{
  guint buttons = 0;

  if (GTK_IS_BUTTON (w) && gtk_button_get_icon_name (GTK_BUTTON (w)) != NULL)
    {
      g_assert_true (gtk_test_accessible_has_property (GTK_ACCESSIBLE (w), GTK_ACCESSIBLE_PROPERTY_LABEL)
                     || gtk_widget_get_tooltip_text (w) != NULL);
      buttons++;
    }
  for (GtkWidget *c = gtk_widget_get_first_child (w); c != NULL; c = gtk_widget_get_next_sibling (c))
    buttons += check_buttons_have_names (c);
  return buttons;
}

static void
test_window_is_named (void)
{
  guint buttons;
  g_autoptr (FpDocument) d = help_open_sample ("parish.footpace");
  GtkWidget *window = fp_window_new (NULL);

  fp_window_set_document (FP_WINDOW (window), d);
  gtk_window_present (GTK_WINDOW (window));
  fp_document_choose (d, help_altar_id (d));
  buttons = check_buttons_have_names (window);
  g_assert_cmpuint (buttons, >, 5);
  g_assert_nonnull (strstr (gtk_window_get_title (GTK_WINDOW (window)), "Holy Rood"));
  gtk_window_destroy (GTK_WINDOW (window));
}

/* All is taken out of a project: its alternatives are small sheets of paper with nothing on them. */
static void
test_overview_of_nothing (void)
{
  const FpBrief brief = { .title = (char *) "Nothing yet", .ministers = 1, .percentile = 50 };
  g_autoptr (FpProject) project = fp_project_new (&brief);
  FpOverview *overview = fp_overview_new (project, TRUE, NULL, NULL);

  g_assert_cmpuint (overview->n, ==, 1);
  g_assert_nonnull (overview->elevation[0]);
  g_assert_nonnull (overview->plan[0]);
  g_assert_cmpstr (overview->levels[0], ==, "no altar");
  fp_overview_free (overview);
}

/* --- what is hidden --------------------------------------------------------- */

/* A window goes before its next frame, and what was hidden in it twice with the focus in it goes too. */
static void
test_hidden_twice (void)
{
  GtkWidget *window = gtk_window_new (), *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GtkWidget *pane = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0), *entry = gtk_entry_new (), *other = gtk_entry_new ();
  gpointer kept = pane;

  gtk_window_set_child (GTK_WINDOW (window), box);
  gtk_box_append (GTK_BOX (box), pane);
  gtk_box_append (GTK_BOX (box), other);
  gtk_box_append (GTK_BOX (pane), entry);
  gtk_window_present (GTK_WINDOW (window));
  WAIT_FOR (gtk_widget_get_height (entry) > 0);
  gtk_widget_grab_focus (entry);
  g_object_add_weak_pointer (G_OBJECT (pane), &kept);
  for (guint i = 0; i < 2; i++)
    {
      fp_show_or_hide (pane, TRUE, other);
      fp_show_or_hide (pane, FALSE, other);
      g_assert_true (gtk_widget_is_ancestor (gtk_root_get_focus (GTK_ROOT (window)), other));
      gtk_widget_show (pane);
      gtk_widget_grab_focus (entry);
    }
  fp_show_or_hide (pane, FALSE, other);
  gtk_window_destroy (GTK_WINDOW (window));
  g_assert_null (kept);
}

int
main (int argc, char **argv)
{
  gtk_test_init (&argc, &argv, NULL);
  g_test_add_func ("/hidden-twice", test_hidden_twice);
  g_test_add_func ("/inspector/types", test_inspector_types);
  g_test_add_func ("/inspector/wrong", test_inspector_says_what_is_wrong);
  g_test_add_func ("/inspector/field-gone", test_inspector_field_gone);
  g_test_add_func ("/inspector/keeps-the-keyboard", test_inspector_keeps_the_keyboard);
  g_test_add_func ("/inspector/keeps-the-corner", test_inspector_keeps_the_corner);
  g_test_add_func ("/inspector/keyboard-in-another", test_inspector_keeps_the_keyboard_of_another);
  g_test_add_func ("/inspector/several", test_inspector_of_several);
  g_test_add_func ("/inspector/everything", test_inspector_shows_everything);
  g_test_add_func ("/findings-list", test_findings_list);
  g_test_add_func ("/findings-list/of-norms", test_findings_list_of_norms);
  g_test_add_func ("/alternatives-strip", test_alternatives_strip);
  g_test_add_func ("/overview/of-nothing", test_overview_of_nothing);
  g_test_add_func ("/compare-page", test_compare_page);
  g_test_add_func ("/print-preview", test_print_preview);
  g_test_add_func ("/sheet-form", test_sheet_form);
  g_test_add_func ("/show-list", test_show_list);
  g_test_add_func ("/sheet-dialog/as-last", test_sheet_dialog_begins_as_printed_last);
  g_test_add_func ("/sheet-dialog", test_sheet_dialog);
  g_test_add_func ("/window/actions", test_window);
  g_test_add_func ("/window/adds", test_window_adds_every_kind);
  g_test_add_func ("/window/asks", test_window_asks_before_it_closes);
  g_test_add_func ("/window/bad-file", test_window_bad_file);
  g_test_add_func ("/window/named", test_window_is_named);
  return g_test_run ();
}
