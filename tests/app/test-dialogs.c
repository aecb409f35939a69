/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The window's dialogs: what was typed in them stays, and what they offer can be had. */
#include "brief-dialog.h"
#include "compat-4-8.h"
#include "new-church-dialog.h"
#include "setting-window.h"
#include "sheet-dialog.h"
#include "sheet-form.h"
#include "waiting.h"
#include "widget-help.h"

#include "footpace/new-church.h"

#include <glib/gstdio.h>

static GtkWindow *
find_window (const char *title)
{
  GListModel *windows = gtk_window_get_toplevels ();

  for (guint i = 0; i < g_list_model_get_n_items (windows); i++)
    {
      g_autoptr (GtkWindow) window = g_list_model_get_item (windows, i);

      if (g_strcmp0 (gtk_window_get_title (window), title) == 0 && gtk_widget_get_visible (GTK_WIDGET (window)))
        return window;
    }
  return NULL;
}

/* --- a new project -------------------------------------------------------- */

static void
take_project (FpProject *project, gpointer data)
{
  *(FpProject **) data = fp_project_ref (project);
}

static GtkWidget *
open_new_church (FpProject **made)
{
  fp_new_church_dialog_show (NULL, take_project, made);
  WAIT_FOR (find_window ("New Project") != NULL);
  return GTK_WIDGET (find_window ("New Project"));
}

static const char *
text_of (GtkWidget *dialog, const char *id)
{
  return gtk_editable_get_text (GTK_EDITABLE (help_find_called (dialog, id)));
}

/* Of what the room is one sees the shape, and whether it ends in an apse, without looking for them further down. */
static void
test_new_church_shows_apse (void)
{
  FpProject *made = NULL;
  GtkWidget *dialog = open_new_church (&made), *apse = help_find_called (dialog, "apse");
  GtkWidget *scrolled = gtk_widget_get_ancestor (apse, GTK_TYPE_SCROLLED_WINDOW);
  graphene_rect_t at;

  WAIT_FOR (gtk_widget_get_height (scrolled) > 100);
  g_assert_true (gtk_widget_compute_bounds (apse, scrolled, &at));
  g_assert_cmpfloat (at.origin.y + at.size.height, <=, gtk_widget_get_height (scrolled));
  g_signal_emit_by_name (help_find_called (dialog, "cancel"), "clicked");
  WAIT_FOR (find_window ("New Project") == NULL);
}

static void
fill_new_church (GtkWidget *dialog)
{
  gtk_editable_set_text (GTK_EDITABLE (help_find_called (dialog, "title")), "Saint Brendan");
  gtk_editable_set_text (GTK_EDITABLE (help_find_called (dialog, "nave-width")), "11350");
  gtk_editable_set_text (GTK_EDITABLE (help_find_called (dialog, "wall-height")), "as high as it is");
  gtk_drop_down_set_selected (GTK_DROP_DOWN (help_find_called (dialog, "shape")), 2);
}

static void
check_new_church_filled (GtkWidget *dialog)
{
  g_assert_cmpstr (text_of (dialog, "title"), ==, "Saint Brendan");
  g_assert_cmpstr (text_of (dialog, "nave-width"), ==, "11350");
  g_assert_cmpstr (text_of (dialog, "wall-height"), ==, "as high as it is");
  g_assert_cmpuint (gtk_drop_down_get_selected (GTK_DROP_DOWN (help_find_called (dialog, "shape"))), ==, 2);
}

/* However it is left: by Escape, as a window is closed, or by Cancel. */
static void
test_new_church_stays_filled (void)
{
  FpProject *made = NULL;
  GtkWidget *dialog = open_new_church (&made);

  fill_new_church (dialog);
  g_assert_true (gtk_widget_activate_action (dialog, "window.close", NULL));
  WAIT_FOR (find_window ("New Project") == NULL);
  dialog = open_new_church (&made);
  check_new_church_filled (dialog);
  g_signal_emit_by_name (help_find_called (dialog, "cancel"), "clicked");
  WAIT_FOR (find_window ("New Project") == NULL);
  dialog = open_new_church (&made);
  check_new_church_filled (dialog);
  g_assert_null (made);
  gtk_window_destroy (GTK_WINDOW (dialog));
}

/* Whoever has measured how long the church is finds that length. */
static void
test_new_church_tells_its_length (void)
{
  FpProject *made = NULL;
  GtkWidget *dialog = open_new_church (&made), *length = help_find_called (dialog, "whole-length");
  g_autofree char *in_all = fp_length_format_unit (14200.0 + 5350.0, FP_UNITS_METRIC);

  gtk_drop_down_set_selected (GTK_DROP_DOWN (help_find_called (dialog, "shape")), FP_ROOM_RECTANGLE);
  gtk_editable_set_text (GTK_EDITABLE (help_find_called (dialog, "nave-length")), "14.2 m");
  gtk_editable_set_text (GTK_EDITABLE (help_find_called (dialog, "sanctuary-depth")), "5350");
  WAIT_FOR (g_str_equal (gtk_label_get_text (GTK_LABEL (length)), in_all));
  g_assert_true (gtk_widget_get_mapped (length));
  gtk_editable_set_text (GTK_EDITABLE (help_find_called (dialog, "sanctuary-depth")), "deep");
  WAIT_FOR (g_str_equal (gtk_label_get_text (GTK_LABEL (length)), ""));
  /* Of an outline that is walked only the part in the nave is asked; its doors are asked as of any other room. */
  gtk_drop_down_set_selected (GTK_DROP_DOWN (help_find_called (dialog, "shape")), FP_ROOM_WALKED);
  WAIT_FOR (!gtk_widget_get_mapped (length));
  g_assert_true (gtk_widget_get_mapped (help_find_called (dialog, "doors")));
  gtk_window_destroy (GTK_WINDOW (dialog));
}

static guint
check_no_tip_over_fields (GtkWidget *w)
{
  guint fields = 0;

  if (GTK_IS_ENTRY (w))
    {
      g_assert_null (gtk_widget_get_tooltip_text (w));
      fields++;
    }
  for (GtkWidget *c = gtk_widget_get_first_child (w); c != NULL; c = gtk_widget_get_next_sibling (c))
    fields += check_no_tip_over_fields (c);
  return fields;
}

/* It is the label that has a tip: over a field it would hang over the next ones while they are typed in. */
static void
test_no_tip_over_fields (void)
{
  FpProject *made = NULL;
  GtkWidget *dialog = open_new_church (&made);

  g_assert_cmpuint (check_no_tip_over_fields (gtk_widget_get_parent (help_find_called (dialog, "nave-width"))), >, 5);
  g_assert_nonnull (gtk_widget_get_tooltip_text (help_find_called (dialog, "nave-width-label")));
  g_assert_true (gtk_test_accessible_has_property (GTK_ACCESSIBLE (help_find_called (dialog, "nave-width")),
                                                   GTK_ACCESSIBLE_PROPERTY_DESCRIPTION));
  gtk_window_destroy (GTK_WINDOW (dialog));
}

/* What was made is done with: the next one begins afresh. */
static void
test_new_church_begins_afresh (void)
{
  FpProject *made = NULL;
  GtkWidget *dialog = open_new_church (&made);

  gtk_editable_set_text (GTK_EDITABLE (help_find_called (dialog, "title")), "Saint Brendan");
  g_signal_emit_by_name (help_find_called (dialog, "accept"), "clicked");
  g_assert_nonnull (made);
  g_assert_cmpstr (fp_project_brief (made)->title, ==, "Saint Brendan");
  fp_project_unref (made);
  dialog = open_new_church (&made);
  g_assert_cmpstr (text_of (dialog, "title"), ==, "");
  gtk_window_destroy (GTK_WINDOW (dialog));
}

/* --- the brief ------------------------------------------------------------ */

static GtkWidget *
open_brief (FpDocument *d)
{
  fp_brief_dialog_show (NULL, d);
  WAIT_FOR (find_window ("Brief") != NULL);
  return GTK_WIDGET (find_window ("Brief"));
}

static void
type_in (GtkWidget *dialog, const char *id, const char *text)
{
  gtk_editable_set_text (GTK_EDITABLE (help_find_called (dialog, id)), text);
}

static void
apply (GtkWidget *dialog)
{
  g_signal_emit_by_name (help_find_called (dialog, "accept"), "clicked");
}

/* Where the church is and when Mass is said, in one step that can be undone. */
static void
test_brief_keeps_masses (void)
{
  g_autoptr (FpDocument) d = help_open_sample ("chapel.footpace");
  GtkWidget *dialog = open_brief (d);
  const FpBrief *brief;

  g_assert_cmpstr (text_of (dialog, "latitude"), ==, "");
  type_in (dialog, "latitude", "52.25° N");
  type_in (dialog, "longitude", "0.75 W");
  type_in (dialog, "zone", "+01:00");
  type_in (dialog, "masses", "sunday 9:30, 18:00");
  apply (dialog);
  WAIT_FOR (find_window ("Brief") == NULL);
  brief = fp_project_brief (fp_document_project (d));
  g_assert_true (brief->site.known);
  g_assert_cmpfloat (brief->site.longitude, ==, -0.75);
  g_assert_cmpuint (brief->n_masses, ==, 2);
  dialog = open_brief (d);
  g_assert_cmpstr (text_of (dialog, "longitude"), ==, "-0.75");
  g_assert_cmpstr (text_of (dialog, "masses"), ==, "Sunday 09:30, 18:00");
  gtk_window_destroy (GTK_WINDOW (dialog));
  g_assert_true (fp_document_undo (d));
  g_assert_false (fp_project_brief (fp_document_project (d))->site.known);
}

/* Who the people are, likewise. */
static void
test_brief_keeps_people (void)
{
  g_autoptr (FpDocument) d = help_open_sample ("chapel.footpace");
  GtkWidget *dialog = open_brief (d);
  const FpBrief *brief;

  g_assert_cmpstr (text_of (dialog, "children"), ==, "");
  gtk_drop_down_set_selected (GTK_DROP_DOWN (help_find_called (dialog, "statures")), 1);
  type_in (dialog, "seed", "42");
  type_in (dialog, "children", "1001");
  apply (dialog);
  g_assert_true (gtk_widget_get_visible (help_find_called (dialog, "error")));
  g_assert_cmpuint (fp_document_depth (d), ==, 0);
  type_in (dialog, "children", "8");
  apply (dialog);
  WAIT_FOR (find_window ("Brief") == NULL);
  brief = fp_project_brief (fp_document_project (d));
  g_assert_true (brief->varied);
  g_assert_cmpuint (brief->seed, ==, 42);
  g_assert_cmpuint (brief->children, ==, 8);
  g_assert_true (fp_document_undo (d));
  brief = fp_project_brief (fp_document_project (d));
  g_assert_false (brief->varied);
  g_assert_cmpuint (brief->seed + brief->children, ==, 0);
}

/* The field that is wrong is marked and has the keyboard; what is wrong is said above all that scrolls. */
static void
check_refused (GtkWidget *dialog, const char *id, const char *says)
{
  GtkWidget *entry = help_find_called (dialog, id), *error = help_find_called (dialog, "error");

  apply (dialog);
  g_assert_true (gtk_widget_has_css_class (entry, "error"));
  g_assert_true (gtk_root_get_focus (GTK_ROOT (dialog)) == GTK_WIDGET (gtk_editable_get_delegate (GTK_EDITABLE (entry))));
  g_assert_true (gtk_widget_get_visible (error));
  g_assert_null (gtk_widget_get_ancestor (error, GTK_TYPE_SCROLLED_WINDOW));
  g_assert_true (g_str_has_prefix (gtk_label_get_text (GTK_LABEL (error)), says));
}

static void
test_brief_refuses_in_place (void)
{
  g_autoptr (FpDocument) d = help_open_sample ("chapel.footpace");
  GtkWidget *dialog = open_brief (d);

  type_in (dialog, "latitude", "52.25");
  check_refused (dialog, "longitude", "Longitude: it is asked with the others");
  type_in (dialog, "longitude", "190");
  type_in (dialog, "zone", "Nowhere/At-all");
  check_refused (dialog, "longitude", "Longitude: longitude is 190");
  type_in (dialog, "longitude", "0");
  check_refused (dialog, "zone", "Time zone: the time zone “Nowhere/At-all” is not known");
  g_assert_false (gtk_widget_has_css_class (help_find_called (dialog, "longitude"), "error"));
  type_in (dialog, "zone", "+00:00");
  type_in (dialog, "masses", "Sunday at nine");
  check_refused (dialog, "masses", "Mass times: “Sunday at nine”");
  g_assert_cmpuint (fp_document_depth (d), ==, 0);
  type_in (dialog, "masses", "");
  apply (dialog);
  WAIT_FOR (find_window ("Brief") == NULL);
  g_assert_cmpuint (fp_document_depth (d), ==, 1);
}

/* --- a sheet -------------------------------------------------------------- */

static GtkWidget *
open_sheet (FpDocument *d)
{
  GtkWidget *dialog = fp_sheet_dialog_new (NULL, d, FP_SHEET_PLAN, NULL);

  gtk_window_present (GTK_WINDOW (dialog));
  return dialog;
}

static FpPageSetup
setup_of (GtkWidget *dialog)
{
  return fp_sheet_form_get (FP_SHEET_FORM (help_find (gtk_window_get_child (GTK_WINDOW (dialog)), FP_TYPE_SHEET_FORM)));
}

static void
choose_small_grey_plan (GtkWidget *dialog)
{
  gtk_drop_down_set_selected (GTK_DROP_DOWN (help_find_called (dialog, "sheet")), 1);
  gtk_drop_down_set_selected (GTK_DROP_DOWN (help_find_called (dialog, "paper")), FP_PAPER_A4);
  gtk_drop_down_set_selected (GTK_DROP_DOWN (help_find_called (dialog, "ink")), FP_INK_GREY);
  gtk_editable_set_text (GTK_EDITABLE (help_find_called (dialog, "number")), "HR-07");
}

static void
check_small_grey_plan (const FpPageSetup *page)
{
  g_assert_cmpuint (page->sheet, ==, FP_SHEET_PLAN);
  g_assert_cmpint (page->paper, ==, FP_PAPER_A4);
  g_assert_cmpint (page->ink, ==, FP_INK_GREY);
}

/* Who looks at a sheet changes nothing of the project, and finds it again as it was left. */
static void
test_sheet_comes_back_as_left (void)
{
  g_autoptr (FpDocument) d = help_open_sample ("chapel.footpace");
  GtkWidget *dialog = open_sheet (d);
  FpPageSetup page;

  gtk_window_close (GTK_WINDOW (dialog));
  g_assert_false (fp_document_is_modified (d));
  dialog = open_sheet (d);
  g_assert_cmpstr (text_of (dialog, "number"), ==, "");
  choose_small_grey_plan (dialog);
  gtk_window_close (GTK_WINDOW (dialog));
  g_assert_false (fp_document_is_modified (d));
  g_assert_cmpuint (fp_document_depth (d), ==, 0);
  dialog = open_sheet (d);
  page = setup_of (dialog);
  check_small_grey_plan (&page);
  g_assert_cmpstr (text_of (dialog, "number"), ==, "HR-07");
  gtk_window_destroy (GTK_WINDOW (dialog));
}

static FpPageSetup
setup_after (FpDocument *d, const FpSheetSeen *seen)
{
  GtkWidget *dialog = fp_sheet_dialog_new (NULL, d, FP_SHEET_PLAN, seen);
  FpPageSetup page;

  gtk_window_present (GTK_WINDOW (dialog));
  page = setup_of (dialog);
  gtk_window_close (GTK_WINDOW (dialog));
  return page;
}

/* What was changed on the board is offered; what was chosen for the sheet stays while the board stays as it is. */
static void
test_sheet_offers_what_the_board_shows (void)
{
  g_autoptr (FpDocument) d = help_open_sample ("chapel.footpace");
  FpSheetSeen seen = { .hidden = 1u << FP_SHOW_SEATS, .ink = FP_INK_SAFE, .along = { TRUE, 750.0, FALSE } };
  GtkWidget *dialog;
  FpPageSetup page = setup_after (d, &seen);

  g_assert_cmpuint (page.hidden, ==, 1u << FP_SHOW_SEATS);
  g_assert_cmpint (page.ink, ==, FP_INK_SAFE);
  g_assert_true (page.along.placed && page.along.at == 750.0);
  g_assert_false (page.across.placed);
  dialog = fp_sheet_dialog_new (NULL, d, FP_SHEET_PLAN, &seen);
  gtk_window_present (GTK_WINDOW (dialog));
  choose_small_grey_plan (dialog);
  gtk_window_close (GTK_WINDOW (dialog));
  page = setup_after (d, &seen);
  check_small_grey_plan (&page);
  /* Shown again on the board, and cut across: that is offered, and the rest is as it was chosen. */
  seen.hidden = 0;
  seen.across = (FpCut) { TRUE, -1200.0, TRUE };
  page = setup_after (d, &seen);
  check_small_grey_plan (&page);
  g_assert_cmpuint (page.hidden, ==, 0);
  g_assert_true (page.across.placed && page.across.turned && page.across.at == -1200.0);
  g_assert_false (fp_document_is_modified (d));
  /* Where the board has a section in the place of the elevation, so has the sheet, and the other way round. */
  dialog = fp_sheet_dialog_new (NULL, d, FP_SHEET_PLAN, &seen);
  gtk_window_present (GTK_WINDOW (dialog));
  gtk_drop_down_set_selected (GTK_DROP_DOWN (help_find_called (dialog, "sheet")), 0);
  gtk_window_close (GTK_WINDOW (dialog));
  seen.across.at = -600.0;
  page = setup_after (d, &seen);
  g_assert_cmpuint (page.sheet, ==, FP_SHEET_CROSS);
  seen.across.placed = FALSE;
  page = setup_after (d, &seen);
  g_assert_cmpuint (page.sheet, ==, FP_SHEET_ELEVATION);
}

/* Each sheet asks what concerns it, and what the board shows of sight and sun is offered. */
static void
test_sheet_of_the_sun (void)
{
  g_autoptr (FpDocument) d = help_open_sample ("parish.footpace");
  const FpSunLook sun = { .mass = 2, .day = FP_SUN_SEPTEMBER };
  const FpSightLook sight = { FP_MOMENT_READINGS, FP_FOCUS_AMBO, -1 };
  const FpSheetSeen seen = { .sun = &sun, .sight = &sight };
  GtkWidget *dialog = fp_sheet_dialog_new (NULL, d, FP_SHEET_SUN, &seen), *export;
  FpPageSetup page;

  gtk_window_present (GTK_WINDOW (dialog));
  page = setup_of (dialog);
  g_assert_cmpuint (page.sheet, ==, FP_SHEET_SUN);
  g_assert_false (page.findings);
  g_assert_true (gtk_widget_get_mapped (help_find_called (dialog, "sun")));
  g_assert_false (gtk_widget_get_mapped (help_find_called (dialog, "moment")));
  g_assert_cmpuint (gtk_drop_down_get_selected (GTK_DROP_DOWN (help_find_called (dialog, "mass"))), ==, 2);
  g_assert_cmpuint (gtk_drop_down_get_selected (GTK_DROP_DOWN (help_find_called (dialog, "day"))), ==, FP_SUN_SEPTEMBER);
  export = GTK_WIDGET (gtk_widget_get_template_child (dialog, FP_TYPE_SHEET_DIALOG, "export_button"));
  WAIT_FOR (gtk_widget_get_sensitive (export));
  /* In the order of the list: after the levels comes sight, before the sun. */
  gtk_drop_down_set_selected (GTK_DROP_DOWN (help_find_called (dialog, "sheet")), 8);
  g_assert_true (gtk_widget_get_mapped (help_find_called (dialog, "moment")));
  g_assert_false (gtk_widget_get_mapped (help_find_called (dialog, "sun")));
  g_assert_cmpuint (gtk_drop_down_get_selected (GTK_DROP_DOWN (help_find_called (dialog, "moment"))), ==, FP_MOMENT_READINGS);
  g_assert_false (gtk_widget_get_sensitive (export));
  WAIT_FOR (gtk_widget_get_sensitive (export));
  gtk_drop_down_set_selected (GTK_DROP_DOWN (help_find_called (dialog, "focus")), FP_FOCUS_HOST);
  g_assert_cmpuint (gtk_drop_down_get_selected (GTK_DROP_DOWN (help_find_called (dialog, "moment"))), ==, FP_MOMENT_ELEVATION);
  gtk_drop_down_set_selected (GTK_DROP_DOWN (help_find_called (dialog, "sheet")), 7);
  g_assert_false (gtk_widget_get_mapped (help_find_called (dialog, "moment")));
  WAIT_FOR (gtk_widget_get_sensitive (export));
  gtk_window_close (GTK_WINDOW (dialog));
  g_assert_false (fp_document_is_modified (d));
  /* Left so, and the board shows neither now: it is as it was. */
  dialog = fp_sheet_dialog_new (NULL, d, FP_SHEET_SIGHT, NULL);
  gtk_window_present (GTK_WINDOW (dialog));
  g_assert_cmpuint (gtk_drop_down_get_selected (GTK_DROP_DOWN (help_find_called (dialog, "focus"))), ==, FP_FOCUS_HOST);
  gtk_window_close (GTK_WINDOW (dialog));
}

/* In the row of that thing. */
static GtkWidget *
cell_of (GtkWidget *window, const char *thing, int column)
{
  GtkGrid *grid = GTK_GRID (gtk_widget_get_template_child (window, FP_TYPE_SETTING_WINDOW, "grid"));

  for (int row = 1; row < 200; row += 2)
    {
      GtkWidget *name = gtk_grid_get_child_at (grid, 0, row);

      if (name != NULL && g_strcmp0 (gtk_label_get_text (GTK_LABEL (name)), thing) == 0)
        return gtk_grid_get_child_at (grid, column, row);
    }
  return NULL;
}

/* What is decided there is an edit, is seen there again, and is undone; the board follows. */
static void
test_setting (void)
{
  g_autoptr (FpDocument) d = help_open_sample ("parish.footpace");
  GtkWidget *window = fp_setting_window_new (NULL, d), *stands, *lit, *kept, *celebration;
  const guint at = fp_document_alternative (d);

  gtk_window_present (GTK_WINDOW (window));
  g_assert_cmpuint (fp_document_celebration (d), ==, FP_CELEBRATION_LOW); /* the first of the brief */
  celebration = GTK_WIDGET (gtk_widget_get_template_child (window, FP_TYPE_SETTING_WINDOW, "celebration"));
  gtk_drop_down_set_selected (GTK_DROP_DOWN (celebration), fp_celebration_choice (FP_CELEBRATION_SUNG));
  g_assert_cmpuint (fp_document_celebration (d), ==, FP_CELEBRATION_SUNG);
  lit = cell_of (window, "Six candlesticks", 3);
  g_assert_cmpint (gtk_spin_button_get_value_as_int (GTK_SPIN_BUTTON (lit)), ==, 6);
  gtk_spin_button_set_value (GTK_SPIN_BUTTON (lit), 5);
  gtk_spin_button_set_value (GTK_SPIN_BUTTON (lit), 4);
  g_assert_cmpint (fp_alternative_setting (fp_project_alternative (fp_document_project (d), at), FP_CELEBRATION_SUNG,
                                           "candlesticks").lit, ==, 4);
  g_assert_cmpuint (fp_document_depth (d), ==, 1); /* one step of the hand */
  stands = cell_of (window, "Crucifix", 1);
  g_assert_true (gtk_check_button_get_active (GTK_CHECK_BUTTON (stands)));
  gtk_check_button_set_active (GTK_CHECK_BUTTON (stands), FALSE);
  g_assert_cmpint (fp_scene_find (fp_document_scene (d), "crucifix"), <, 0);
  fp_document_undo (d);
  g_assert_true (gtk_check_button_get_active (GTK_CHECK_BUTTON (cell_of (window, "Crucifix", 1))));
  kept = cell_of (window, "Crucifix", 5);
  gtk_editable_set_text (GTK_EDITABLE (kept), "press on the left");
  g_signal_emit_by_name (kept, "activate");
  g_assert_cmpstr (fp_alternative_kept (fp_project_alternative (fp_document_project (d), at), "crucifix"), ==,
                   "press on the left");
  g_signal_emit_by_name (gtk_widget_get_template_child (window, FP_TYPE_SETTING_WINDOW, "usual"), "clicked");
  g_assert_cmpint (gtk_spin_button_get_value_as_int (GTK_SPIN_BUTTON (cell_of (window, "Six candlesticks", 3))), ==, 6);
  gtk_drop_down_set_selected (GTK_DROP_DOWN (celebration), 0);
  g_assert_cmpuint (fp_document_celebration (d), ==, 0);
  gtk_window_destroy (GTK_WINDOW (window));
}

/* The cards of the celebration that the board shows are offered, and it asks for whom they are. */
static void
test_sheet_of_cards (void)
{
  g_autoptr (FpDocument) d = help_open_sample ("parish.footpace");
  const FpSheetSeen seen = { 0 };
  GtkWidget *dialog, *export;

  fp_document_set_celebration (d, FP_CELEBRATION_REQUIEM);
  dialog = fp_sheet_dialog_new (NULL, d, FP_SHEET_CARD, &seen);
  gtk_window_present (GTK_WINDOW (dialog));
  g_assert_cmpuint (gtk_drop_down_get_selected (GTK_DROP_DOWN (help_find_called (dialog, "celebration"))), ==,
                    fp_celebration_choice (FP_CELEBRATION_REQUIEM));
  g_assert_true (gtk_widget_get_mapped (help_find_called (dialog, "servers")));
  export = GTK_WIDGET (gtk_widget_get_template_child (dialog, FP_TYPE_SHEET_DIALOG, "export_button"));
  WAIT_FOR (gtk_widget_get_sensitive (export));
  gtk_drop_down_set_selected (GTK_DROP_DOWN (help_find_called (dialog, "sheet")), 0);
  g_assert_false (gtk_widget_get_mapped (help_find_called (dialog, "servers")));
  WAIT_FOR (gtk_widget_get_sensitive (export));
  gtk_window_close (GTK_WINDOW (dialog));
}

static GFile *
answer_file (const FpFileQuestion *question, gpointer path)
{
  (void) question;
  return g_file_new_for_path (path);
}

static void
export_sheet (GtkWidget *dialog, char *path)
{
  GtkWidget *button = GTK_WIDGET (gtk_widget_get_template_child (dialog, FP_TYPE_SHEET_DIALOG, "export_button"));

  WAIT_FOR (gtk_widget_get_sensitive (button));
  fp_ask_files_of (answer_file, path);
  g_signal_emit_by_name (button, "clicked");
  WAIT_FOR (g_file_test (path, G_FILE_TEST_EXISTS));
  fp_ask_files_of (NULL, NULL);
}

/* What was exported is kept with the project, and what was undone before can still be done again. */
static void
test_export_leaves_redo (void)
{
  g_autoptr (FpDocument) d = help_open_sample ("chapel.footpace");
  g_autofree char *dir = g_dir_make_tmp ("footpace-XXXXXX", NULL), *path = g_build_filename (dir, "plan.pdf", NULL);
  GtkWidget *dialog;

  fp_document_edit (d, fp_project_with_alternative_text (fp_document_project (d), 0, "Renamed", "", NULL), "Rename",
                    NULL);
  g_assert_true (fp_document_undo (d));
  dialog = open_sheet (d);
  choose_small_grey_plan (dialog);
  export_sheet (dialog, path);
  check_small_grey_plan (fp_project_page (fp_document_project (d)));
  g_assert_true (fp_document_is_modified (d));
  g_assert_null (fp_document_undo_label (d));
  g_assert_cmpstr (fp_document_redo_label (d), ==, "Rename");
  g_assert_true (fp_document_redo (d));
  g_assert_cmpstr (fp_alternative_name (fp_project_alternative (fp_document_project (d), 0)), ==, "Renamed");
  check_small_grey_plan (fp_project_page (fp_document_project (d)));
  g_unlink (path);
  g_rmdir (dir);
}

int
main (int argc, char **argv)
{
  gtk_test_init (&argc, &argv, NULL);
  g_test_add_func ("/dialogs/new-church/shows-apse", test_new_church_shows_apse);
  g_test_add_func ("/new-church/stays", test_new_church_stays_filled);
  g_test_add_func ("/new-church/afresh", test_new_church_begins_afresh);
  g_test_add_func ("/new-church/length", test_new_church_tells_its_length);
  g_test_add_func ("/new-church/tips", test_no_tip_over_fields);
  g_test_add_func ("/brief/masses", test_brief_keeps_masses);
  g_test_add_func ("/brief/people", test_brief_keeps_people);
  g_test_add_func ("/brief/refuses", test_brief_refuses_in_place);
  g_test_add_func ("/sheet/as-left", test_sheet_comes_back_as_left);
  g_test_add_func ("/dialogs/sheet/as-the-board", test_sheet_offers_what_the_board_shows);
  g_test_add_func ("/dialogs/sheet/sun", test_sheet_of_the_sun);
  g_test_add_func ("/dialogs/sheet/cards", test_sheet_of_cards);
  g_test_add_func ("/dialogs/setting", test_setting);
  g_test_add_func ("/sheet/redo", test_export_leaves_redo);
  return g_test_run ();
}
