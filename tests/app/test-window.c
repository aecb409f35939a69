/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The window as a whole: messages over the board, the side, the ways back to the board, adding by name, the report. */
#include "board-view.h"
#include "compat-4-8.h"
#include "drawing-view.h"
#include "findings-list.h"
#include "param-row.h"
#include "pew-window.h"
#include "remembered.h"
#include "report-window.h"
#include "samples.h"
#include "sight-bar.h"
#include "text-find.h"
#include "thing-cell.h"
#include "sun-bar.h"
#include "waiting.h"
#include "widget-help.h"
#include "window.h"

#include "footpace/review.h"
#include "footpace/setting-out.h"

#include <glib/gstdio.h>
#include <string.h>

static GtkWidget *
open_window (FpDocument *d)
{
  GtkWidget *window = fp_window_new (NULL);

  gtk_window_present (GTK_WINDOW (window));
  fp_window_set_document (FP_WINDOW (window), d);
  WAIT_FOR (fp_board_view_scale (FP_BOARD_VIEW (help_find (window, FP_TYPE_BOARD_VIEW))) > 0.0);
  return window;
}

static GtkWidget *
child_called (GtkWidget *top, const char *id)
{
  return GTK_WIDGET (gtk_widget_get_template_child (top, G_OBJECT_TYPE (top), id));
}

static const char *
page (GtkWidget *window)
{
  return gtk_stack_get_visible_child_name (GTK_STACK (child_called (window, "pages")));
}

static void
let_frames_go_by (GtkWidget *window)
{
  gint64 first = gdk_frame_clock_get_frame_counter (gtk_widget_get_frame_clock (window));

  gtk_widget_queue_resize (window);
  WAIT_FOR ((gtk_widget_queue_draw (window),
             gdk_frame_clock_get_frame_counter (gtk_widget_get_frame_clock (window)) > first + 3));
}

/* --- the beginning -------------------------------------------------------- */

/* The drawing first; what stands beside it and what is found come after it, of themselves. */
static void
test_begins_with_the_drawing (void)
{
  g_autofree char *path = fp_sample_path ("chapel.footpace");
  g_autoptr (FpAhead) ahead = fp_ahead_begin (path);
  GtkWidget *window = fp_window_new (NULL), *side, *list;
  int border;
  FpDocument *d;

  fp_window_begin (FP_WINDOW (window), ahead);
  d = fp_window_document (FP_WINDOW (window));
  g_assert_cmpstr (page (window), ==, "board");
  list = child_called (window, "things");
  g_assert_null (help_find (list, FP_TYPE_THING_CELL));
  WAIT_FOR (fp_board_view_scale (FP_BOARD_VIEW (child_called (window, "board"))) > 0.0);
  side = child_called (window, "side_paned");
  border = gtk_paned_get_position (GTK_PANED (side));
  WAIT_FOR (help_find (list, FP_TYPE_THING_CELL) != NULL);
  WAIT_FOR (!fp_document_is_checking (d));
  /* Nothing has jumped meanwhile. */
  g_assert_cmpint (gtk_paned_get_position (GTK_PANED (side)), ==, border);
  /* Nobody has looked at the first page: it was never made. */
  g_assert_null (gtk_widget_get_first_child (child_called (window, "start")));
  gtk_window_destroy (GTK_WINDOW (window));
}

/* Closed, or with another project in it, before the first frame is there. */
static void
test_beginning_given_up (void)
{
  g_autofree char *path = fp_sample_path ("chapel.footpace");
  g_autoptr (FpAhead) ahead = fp_ahead_begin (path), again = fp_ahead_begin (path);
  g_autoptr (FpDocument) other = help_open_sample ("parish.footpace");
  GtkWidget *window = fp_window_new (NULL);

  fp_window_begin (FP_WINDOW (window), ahead);
  fp_window_set_document (FP_WINDOW (window), other);
  g_assert_nonnull (help_find (child_called (window, "things"), FP_TYPE_THING_CELL));
  let_frames_go_by (window);
  gtk_window_destroy (GTK_WINDOW (window));
  window = fp_window_new (NULL);
  fp_window_begin (FP_WINDOW (window), again);
  gtk_window_destroy (GTK_WINDOW (window));
}

static void
test_begins_with_no_file (void)
{
  g_autoptr (FpAhead) ahead = fp_ahead_begin ("/nowhere/nothing.footpace");
  GtkWidget *window = fp_window_new (NULL);

  fp_window_begin (FP_WINDOW (window), ahead);
  g_assert_null (fp_window_document (FP_WINDOW (window)));
  g_assert_cmpstr (page (window), ==, "start");
  g_assert_nonnull (strstr (gtk_label_get_text (GTK_LABEL (child_called (window, "notice_text"))), "nothing.footpace"));
  gtk_window_destroy (GTK_WINDOW (window));
}

/* --- messages ------------------------------------------------------------- */

/* What is said must not shift what is being looked at. */
static void
test_notice_leaves_the_board_alone (void)
{
  g_autoptr (FpDocument) d = help_open_sample ("chapel.footpace");
  GtkWidget *window = open_window (d), *board = child_called (window, "board"), *box;
  int height;
  double scale;

  let_frames_go_by (window);
  height = gtk_widget_get_height (board);
  scale = fp_board_view_scale (FP_BOARD_VIEW (board));
  fp_window_notice (FP_WINDOW (window), "Something could not be done, and this is why", TRUE);
  let_frames_go_by (window);
  g_assert_cmpint (gtk_widget_get_height (board), ==, height);
  g_assert_cmpfloat (fp_board_view_scale (FP_BOARD_VIEW (board)), ==, scale);
  /* Spoken as it comes: an alert that has the message for its name. */
  box = child_called (window, "notice_box");
  gtk_test_accessible_assert_role (box, GTK_ACCESSIBLE_ROLE_ALERT);
  gtk_test_accessible_assert_property (box, GTK_ACCESSIBLE_PROPERTY_LABEL,
                                       "Something could not be done, and this is why");
  gtk_window_destroy (GTK_WINDOW (window));
}

static void
test_notice_goes_away (void)
{
  g_autoptr (FpDocument) d = help_open_sample ("chapel.footpace");
  GtkWidget *window = open_window (d), *notice = child_called (window, "notice");
  gint64 began = g_get_monotonic_time ();

  fp_window_notice_file (FP_WINDOW (window), "Written: /tmp/a.pdf", "/tmp/a.pdf");
  g_assert_true (gtk_widget_get_visible (child_called (window, "notice_folder")));
  WAIT_FOR (!gtk_revealer_get_reveal_child (GTK_REVEALER (notice)));
  g_assert_cmpint ((g_get_monotonic_time () - began) / G_USEC_PER_SEC, >=, 4);
  /* Gone altogether: nothing unseen lies over the board and takes its clicks. */
  WAIT_FOR (!gtk_widget_get_visible (notice));
  /* What went wrong has no folder, and stays until it is put away. */
  fp_window_notice (FP_WINDOW (window), "Not saved", TRUE);
  g_assert_false (gtk_widget_get_visible (child_called (window, "notice_folder")));
  g_assert_true (gtk_widget_activate_action (window, "win.escape", NULL));
  g_assert_false (gtk_revealer_get_reveal_child (GTK_REVEALER (notice)));
  gtk_window_destroy (GTK_WINDOW (window));
}

/* --- questions ------------------------------------------------------------ */

static void
on_answer (int choice, gpointer data)
{
  *(int *) data = choice;
}

/* Whoever asked hears that nothing was answered, even when the window goes away over which was asked. */
static void
test_question_is_answered (void)
{
  static const char *const buttons[] = { "_No", "_Yes", NULL };
  GtkWidget *window = help_show (gtk_label_new ("x"));
  int answer = 7;

  fp_ask (GTK_WINDOW (window), "Is it so?", "", buttons, -1, on_answer, &answer);
  gtk_window_destroy (GTK_WINDOW (window));
  g_assert_cmpint (answer, ==, -1);
}

static void
close_parent (int choice, gpointer data)
{
  GtkWidget **window = data;

  (void) choice;
  gtk_window_destroy (GTK_WINDOW (*window));
  *window = NULL;
}

static GtkDialog *
dialog_over (GtkWidget *window)
{
  GListModel *windows = gtk_window_get_toplevels ();

  for (guint i = 0; i < g_list_model_get_n_items (windows); i++)
    {
      GtkWindow *one = g_list_model_get_item (windows, i); /* with a reference */

      if (gtk_window_get_transient_for (one) == GTK_WINDOW (window))
        return GTK_DIALOG (one);
      g_object_unref (one);
    }
  g_assert_not_reached ();
}

/* The answer closes the window over which was asked, while a key is still being handled in the question. */
static void
test_question_outlives_window (void)
{
  static const char *const buttons[] = { "_No", "_Yes", NULL };
  GtkWidget *window = help_show (gtk_label_new ("x"));
  GtkDialog *dialog;

  fp_ask (GTK_WINDOW (window), "Is it so?", "", buttons, -1, close_parent, &window);
  dialog = dialog_over (window);
  gtk_dialog_response (dialog, 1);
  g_assert_null (window);
  while (g_main_context_iteration (NULL, FALSE))
    ;
  g_object_unref (dialog);
}

/* --- ways back ------------------------------------------------------------ */

static void
test_escape_leaves_compare (void)
{
  g_autoptr (FpDocument) d = help_open_sample ("chapel.footpace");
  GtkWidget *window = open_window (d);

  g_assert_true (gtk_widget_activate_action (window, "win.compare", NULL));
  g_assert_cmpstr (page (window), ==, "compare");
  g_assert_true (gtk_toggle_button_get_active (GTK_TOGGLE_BUTTON (child_called (window, "compare_button"))));
  g_assert_true (gtk_widget_activate_action (window, "win.escape", NULL));
  g_assert_cmpstr (page (window), ==, "board");
  g_assert_false (gtk_toggle_button_get_active (GTK_TOGGLE_BUTTON (child_called (window, "compare_button"))));
  g_assert_true (gtk_window_get_focus (GTK_WINDOW (window)) == child_called (window, "board"));
  gtk_window_destroy (GTK_WINDOW (window));
}

static gboolean
says (GtkWidget *widget, gconstpointer part)
{
  return GTK_IS_LABEL (widget) && strstr (gtk_label_get_text (GTK_LABEL (widget)), part) != NULL;
}

static gboolean
has_text (GtkWidget *top, const char *part)
{
  return help_find_that (top, says, part) != NULL;
}

static void
test_compare_explains_its_mark (void)
{
  g_autoptr (FpDocument) d = help_open_sample ("chapel.footpace");
  GtkWidget *window = open_window (d);

  g_assert_true (gtk_widget_activate_action (window, "win.compare", NULL));
  g_assert_true (has_text (child_called (window, "compare"), "◆ required, ○ recommended, ▬ customary"));
  gtk_window_destroy (GTK_WINDOW (window));
}

/* --- adding by name ------------------------------------------------------- */

static void
test_adds_by_typing (void)
{
  g_autoptr (FpDocument) d = help_open_sample ("chapel.footpace");
  GtkWidget *window = open_window (d), *find = child_called (window, "add_find");
  GtkListBox *list = GTK_LIST_BOX (child_called (window, "add_list"));
  GtkListBoxRow *row;
  guint shown = 0, all = 0;

  g_assert_true (gtk_widget_activate_action (window, "win.add-list", NULL));
  WAIT_FOR (gtk_widget_get_mapped (find));
  gtk_editable_set_text (GTK_EDITABLE (find), "sedil");
  WAIT_FOR (!gtk_widget_get_child_visible (GTK_WIDGET (gtk_list_box_get_row_at_index (list, 0))));
  for (; (row = gtk_list_box_get_row_at_index (list, (int) all)) != NULL; all++)
    shown += gtk_widget_get_child_visible (GTK_WIDGET (row)) ? 1 : 0;
  g_assert_cmpuint (shown, >=, 1);
  g_assert_cmpuint (shown, <, all / 2);
  g_signal_emit_by_name (find, "activate");
  g_assert_cmpstr (fp_item_kind (fp_document_chosen_placed (d)->item)->id, ==, "sedilia");
  gtk_window_destroy (GTK_WINDOW (window));
}

/* --- the side ------------------------------------------------------------- */

static void
test_findings_at_full_height (void)
{
  g_autoptr (FpDocument) d = help_open_sample ("chapel.footpace");
  GtkWidget *window = open_window (d), *upper = child_called (window, "things_or_thing");
  GtkWidget *findings = child_called (window, "findings");
  int height;

  let_frames_go_by (window);
  height = gtk_widget_get_height (findings);
  /* Findings are what is read: they have the larger part from the first. */
  g_assert_cmpint (height, >, gtk_widget_get_height (upper));
  fp_findings_list_set_full (FP_FINDINGS_LIST (findings), TRUE);
  let_frames_go_by (window);
  g_assert_false (gtk_widget_get_visible (upper));
  g_assert_cmpint (gtk_widget_get_height (findings), >, height);
  /* A thing that is chosen is shown all the same. */
  fp_document_choose (d, help_altar_id (d));
  g_assert_true (gtk_widget_get_visible (upper));
  fp_document_choose (d, NULL);
  g_assert_false (gtk_widget_get_visible (upper));
  fp_findings_list_set_full (FP_FINDINGS_LIST (findings), FALSE);
  g_assert_true (gtk_widget_get_visible (upper));
  gtk_window_destroy (GTK_WINDOW (window));
}

static void
test_side_is_remembered (void)
{
  g_autoptr (FpDocument) d = help_open_sample ("chapel.footpace");
  GtkWidget *window = open_window (d), *paned = child_called (window, "side_paned");
  int height, position;

  let_frames_go_by (window);
  height = gtk_widget_get_height (paned);
  position = height / 2 + 7;
  gtk_paned_set_position (GTK_PANED (paned), position);
  gtk_window_close (GTK_WINDOW (window));
  window = open_window (d);
  paned = child_called (window, "side_paned");
  let_frames_go_by (window);
  g_assert_cmpint (gtk_widget_get_height (paned), ==, height);
  g_assert_cmpint (ABS (gtk_paned_get_position (GTK_PANED (paned)) - position), <=, 1);
  gtk_window_destroy (GTK_WINDOW (window));
}

/* What of the looks of the board a program that ends without a word would have known the next time: nothing is closed here. */
static void
test_board_is_remembered (void)
{
  const FpCut aside = { TRUE, 1200.0, FALSE }, west = { TRUE, 2500.0, TRUE };
  g_autoptr (FpDocument) d = help_open_sample ("chapel.footpace"), other = help_open_sample ("parish.footpace");
  GtkWidget *window = open_window (d), *next;
  FpBoardView *board = FP_BOARD_VIEW (child_called (window, "board"));

  fp_board_view_set_hidden (board, 1u << FP_SHOW_SEATS);
  fp_board_view_set_cut (board, FP_VIEW_SECTION, &aside);
  fp_board_view_set_cut (board, FP_VIEW_ELEVATION, &west);
  g_action_group_change_action_state (G_ACTION_GROUP (window), "ground", g_variant_new_string ("dark"));
  g_action_group_change_action_state (G_ACTION_GROUP (window), "ink", g_variant_new_string ("safe"));
  WAIT_FOR (fp_remembered_load ().ground == 2 && fp_remembered_load ().ink == FP_INK_SAFE);
  next = open_window (d);
  board = FP_BOARD_VIEW (child_called (next, "board"));
  g_assert_cmpuint (fp_board_view_hidden (board), ==, 1u << FP_SHOW_SEATS);
  g_assert_cmpfloat (fp_board_view_cut (board, FP_VIEW_SECTION).at, ==, 1200.0);
  g_assert_cmpfloat (fp_board_view_cut (board, FP_VIEW_ELEVATION).at, ==, 2500.0);
  g_assert_true (fp_board_view_cut (board, FP_VIEW_ELEVATION).turned);
  gtk_window_destroy (GTK_WINDOW (next));
  /* Another project looks as usual. */
  next = open_window (other);
  board = FP_BOARD_VIEW (child_called (next, "board"));
  g_assert_cmpuint (fp_board_view_hidden (board), ==, 0);
  g_assert_false (fp_board_view_cut (board, FP_VIEW_SECTION).placed);
  g_action_group_change_action_state (G_ACTION_GROUP (next), "ground", g_variant_new_string ("system"));
  g_action_group_change_action_state (G_ACTION_GROUP (next), "ink", g_variant_new_string ("colour"));
  gtk_window_destroy (GTK_WINDOW (next));
  gtk_window_destroy (GTK_WINDOW (window));
}

/* A file that was spoilt costs comfort only. */
static void
test_remembered_nonsense (void)
{
  g_autofree char *folder = g_build_filename (g_get_user_config_dir (), "footpace", NULL);
  g_autofree char *path = g_build_filename (folder, "window.ini", NULL);
  FpRemembered r;

  g_mkdir_with_parents (folder, 0700);
  g_assert_true (g_file_set_contents (path, "[window]\nwidth=-4\nheight=999999999\nthings=nan\nthing=7\nfindings-full=x\n",
                                      -1, NULL));
  r = fp_remembered_load ();
  g_assert_cmpint (r.width, ==, 0);
  g_assert_cmpint (r.height, <=, 20000);
  g_assert_cmpfloat (r.things, ==, 0.0);
  g_assert_cmpfloat (r.thing, ==, 0.0);
  g_assert_false (r.findings_full);
  g_unlink (path);
}

/* --- alternatives --------------------------------------------------------- */

static void
test_new_alternative_comes_into_view (void)
{
  g_autoptr (FpDocument) d = help_open_sample ("chapel.footpace");
  GtkWidget *window = open_window (d), *strip = child_called (window, "alternatives");
  GtkWidget *scroller = child_called (strip, "scroller"), *card;
  GtkAdjustment *across = gtk_scrolled_window_get_hadjustment (GTK_SCROLLED_WINDOW (scroller));
  graphene_rect_t box;
  GtkPolicyType bar;

  while (fp_project_n_alternatives (fp_document_project (d)) < 6)
    {
      guint n = fp_project_n_alternatives (fp_document_project (d));
      g_autofree char *id = g_strdup_printf ("x%u", n);

      g_assert_true (fp_document_edit (d, fp_project_with_new_alternative (fp_document_project (d), 0, id,
                                                                           "The altar brought forward by two metres",
                                                                           NULL), "New", NULL));
      fp_document_set_alternative (d, n);
    }
  card = gtk_widget_get_last_child (gtk_widget_get_parent (help_find_styled (strip, "alternative")));
  WAIT_FOR (gtk_adjustment_get_value (across) > 0.0);
  let_frames_go_by (window);
  let_frames_go_by (window);
  g_assert_true (gtk_widget_compute_bounds (card, scroller, &box));
  g_assert_cmpfloat (box.origin.x, >=, -1.0);
  g_assert_cmpfloat (box.origin.x + box.size.width, <=, gtk_widget_get_width (scroller) + 1.0);
  /* That there is more is seen: the bar is there, and nothing of the card lies under it. */
  gtk_scrolled_window_get_policy (GTK_SCROLLED_WINDOW (scroller), &bar, NULL);
  g_assert_cmpint (bar, ==, GTK_POLICY_ALWAYS);
  g_assert_cmpfloat (box.origin.y + box.size.height, <=, gtk_widget_get_height (scroller)
                     - gtk_widget_get_height (gtk_scrolled_window_get_hscrollbar (GTK_SCROLLED_WINDOW (scroller))) + 1.0);
  g_assert_nonnull (strstr (gtk_widget_get_tooltip_text (card), "brought forward by two metres"));
  gtk_window_destroy (GTK_WINDOW (window));
}

/* Who changes the survey is told that he changes it in every alternative. */
static void
test_survey_is_told_of (void)
{
  g_autoptr (FpDocument) d = help_open_sample ("chapel.footpace");
  GtkWidget *window = open_window (d), *inspector = child_called (window, "inspector");
  GtkWidget *hint = child_called (inspector, "survey");
  guint n, in_survey = 0;
  const FpPlaced *placed = fp_scene_placed (fp_document_scene (d), &n);

  for (guint i = 0; i < n; i++)
    if (!placed[i].ghost)
      {
        fp_document_choose (d, fp_item_id (placed[i].item));
        g_assert_cmpint (gtk_widget_get_visible (hint), ==, placed[i].in_survey);
        if (placed[i].in_survey)
          g_assert_nonnull (strstr (gtk_label_get_text (GTK_LABEL (hint)), "in every alternative"));
        in_survey += placed[i].in_survey ? 1 : 0;
      }
  g_assert_cmpuint (in_survey, >, 0);
  g_assert_cmpuint (in_survey, <, n);
  gtk_window_destroy (GTK_WINDOW (window));
}

/* Who chose inks that can be told apart has them on every picture of the alternatives. */
static void
test_pictures_follow_the_inks (void)
{
  g_autoptr (FpDocument) d = help_open_sample ("chapel.footpace");
  GtkWidget *window = open_window (d), *picture;

  WAIT_FOR ((picture = help_find (child_called (window, "alternatives"), FP_TYPE_DRAWING_VIEW)) != NULL);
  g_action_group_change_action_state (G_ACTION_GROUP (window), "ink", g_variant_new_string ("colour"));
  g_assert_cmpint (fp_drawing_view_look (FP_DRAWING_VIEW (picture)), ==, fp_surface_look (FP_INK_COLOUR, FALSE));
  g_action_group_change_action_state (G_ACTION_GROUP (window), "ink", g_variant_new_string ("safe"));
  g_assert_cmpint (fp_drawing_view_look (FP_DRAWING_VIEW (picture)), ==, fp_surface_look (FP_INK_SAFE, FALSE));
  /* Those that are made afterwards too. */
  g_assert_true (gtk_widget_activate_action (window, "win.compare", NULL));
  WAIT_FOR ((picture = help_find (child_called (window, "compare"), FP_TYPE_DRAWING_VIEW)) != NULL);
  g_assert_cmpint (fp_drawing_view_look (FP_DRAWING_VIEW (picture)), ==, fp_surface_look (FP_INK_SAFE, FALSE));
  gtk_window_destroy (GTK_WINDOW (window));
}

/* --- a finding that is chosen --------------------------------------------- */

static GtkListBoxRow *
row_of (GtkWidget *findings, const FpDocument *d, const char *rule)
{
  GtkListBox *list = GTK_LIST_BOX (child_called (findings, "list"));
  g_autoptr (GArray) shown = fp_shown_new (fp_document_findings ((FpDocument *) d),
                                           fp_document_sighted ((FpDocument *) d));

  for (guint i = 0; i < shown->len; i++)
    if (strcmp (g_array_index (shown, FpShown, i).finding->rule->id, rule) == 0)
      return gtk_list_box_get_row_at_index (list, (int) i);
  return NULL;
}

/* Where it is, what it is about, and the field that settles it, in view; then settled by one press, and taken back. */
static void
test_finding_leads_to_its_field (void)
{
  g_autoptr (FpDocument) d = help_open_sample ("parish.footpace");
  GtkWidget *window, *findings, *inspector, *field, *view;
  GtkListBoxRow *row;
  graphene_rect_t box;
  FpVec3 at;

  fp_document_set_alternative (d, fp_project_n_alternatives (fp_document_project (d)) - 1);
  window = open_window (d);
  findings = child_called (window, "findings");
  inspector = child_called (window, "inspector");
  WAIT_FOR (!fp_document_is_checking (d));
  row = row_of (findings, d, "gate-access");
  g_assert_nonnull (row);
  gtk_list_box_select_row (GTK_LIST_BOX (child_called (findings, "list")), row);
  g_assert_cmpstr (fp_item_kind (fp_document_chosen_placed (d)->item)->id, ==, "rail");
  g_assert_true (fp_board_view_marked (FP_BOARD_VIEW (child_called (window, "board")), &at));
  WAIT_FOR ((field = help_find_styled (inspector, "pointed-out")) != NULL);
  g_assert_cmpstr (fp_param_row_param (FP_PARAM_ROW (field))->id, ==, "gate");
  let_frames_go_by (window);
  let_frames_go_by (window);
  view = gtk_widget_get_ancestor (field, GTK_TYPE_SCROLLED_WINDOW);
  g_assert_true (gtk_widget_compute_bounds (field, view, &box));
  g_assert_cmpfloat (box.origin.y, >=, -1.0);
  g_assert_cmpfloat (box.origin.y + box.size.height, <=, gtk_widget_get_height (view) + 1.0);
  g_signal_emit_by_name (findings, "followed");
  g_assert_true (gtk_widget_is_ancestor (gtk_window_get_focus (GTK_WINDOW (window)), field));
  /* ADA Standards (2010), 404.2.3, from memory: 32 in clear, which is 812.8 mm. */
  g_assert_true (has_text (GTK_WIDGET (row), "815 mm"));
  g_signal_emit_by_name (help_find_button (GTK_WIDGET (row), "Make This Change"), "clicked");
  g_assert_cmpfloat (fp_item_param (fp_document_chosen_placed (d)->item, "gate"), ==, 815.0);
  WAIT_FOR (!fp_document_is_checking (d) && row_of (findings, d, "gate-access") == NULL);
  /* Settled: nothing is ringed any more. */
  g_assert_false (fp_board_view_marked (FP_BOARD_VIEW (child_called (window, "board")), &at));
  g_assert_nonnull (strstr (fp_document_undo_label (d), "Settle"));
  /* Taken back: it is shown as it was, ringed and with what settles it. */
  g_assert_true (fp_document_undo (d));
  WAIT_FOR (fp_board_view_marked (FP_BOARD_VIEW (child_called (window, "board")), &at));
  row = row_of (findings, d, "gate-access");
  g_assert_true (gtk_list_box_row_is_selected (row));
  WAIT_FOR (gtk_widget_get_visible (help_find_styled (GTK_WIDGET (row), "offer")));
  g_assert_true (has_text (GTK_WIDGET (row), "815 mm"));
  /* Another thing is chosen: what is changed now marks nothing on the board, but what settles the finding is still told. */
  fp_document_choose (d, "altar");
  g_assert_true (fp_document_edit (d, fp_set_out_move (fp_document_scene (d), "altar", (FpVec3) { 0, -10, 0 }, NULL), "Moved", NULL));
  g_assert_false (gtk_widget_get_visible (help_find_styled (GTK_WIDGET (row), "offer")));
  WAIT_FOR (gtk_widget_get_visible (help_find_styled (GTK_WIDGET (row_of (findings, d, "gate-access")), "offer")));
  g_assert_false (fp_board_view_marked (FP_BOARD_VIEW (child_called (window, "board")), &at));
  g_assert_cmpstr (fp_document_chosen (d), ==, "altar");
  gtk_window_destroy (GTK_WINDOW (window));
}

static GtkWidget *
child_saying (GtkWidget *widget, const char *words)
{
  if (GTK_IS_BUTTON (widget) && gtk_widget_get_tooltip_text (widget) != NULL
      && strstr (gtk_widget_get_tooltip_text (widget), words) != NULL)
    return widget;
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL; child = gtk_widget_get_next_sibling (child))
    {
      GtkWidget *found = child_saying (child, words);
      if (found != NULL)
        return found;
    }
  return NULL;
}

static double
first_row_c (FpDocument *d)
{
  g_autoptr (FpPeople) people = fp_people_new (fp_document_scene (d));
  g_autoptr (GArray) rows = fp_row_c_values (people);

  return fp_row_c_first (rows)->c;
}

/* Three heights are offered for the first row; one press gives number and riser of the steps, and one undo takes both back. */
static void
test_first_row_is_raised (void)
{
  g_autoptr (FpDocument) d = help_open_sample ("parish.footpace");
  GtkWidget *window, *findings, *button;
  GtkListBoxRow *row;
  double before;

  fp_document_set_alternative (d, fp_project_n_alternatives (fp_document_project (d)) - 1);
  window = open_window (d);
  findings = child_called (window, "findings");
  WAIT_FOR (!fp_document_is_checking (d));
  before = first_row_c (d);
  g_assert_cmpfloat (before, <, 60);
  row = row_of (findings, d, "sight-over-heads");
  g_assert_nonnull (row);
  gtk_list_box_select_row (GTK_LIST_BOX (child_called (findings, "list")), row);
  WAIT_FOR ((button = child_saying (GTK_WIDGET (row), "C 90 mm for the first row")) != NULL);
  g_assert_nonnull (child_saying (GTK_WIDGET (row), "C 60 mm for the first row"));
  g_signal_emit_by_name (button, "clicked");
  g_assert_cmpfloat (first_row_c (d), >=, 90);
  g_assert_cmpstr (fp_document_undo_label (d), ==, "C 90 mm for the first row");
  WAIT_FOR (!fp_document_is_checking (d));
  g_assert_true (fp_document_undo (d));
  g_assert_cmpfloat (first_row_c (d), ==, before);
  g_assert_true (fp_document_redo (d));
  g_assert_cmpfloat (first_row_c (d), >=, 90);
  gtk_window_destroy (GTK_WINDOW (window));
}

/* What was found for the last finding, and comes late, is not offered for this one; nor is its field followed. */
static void
test_finding_is_not_mistaken (void)
{
  g_autoptr (FpDocument) d = help_open_sample ("parish.footpace");
  GtkWidget *window, *findings, *list, *inspector, *field;

  fp_document_set_alternative (d, fp_project_n_alternatives (fp_document_project (d)) - 1);
  window = open_window (d);
  findings = child_called (window, "findings");
  inspector = child_called (window, "inspector");
  list = child_called (findings, "list");
  WAIT_FOR (!fp_document_is_checking (d));
  for (guint i = 0; i < 8; i++)
    {
      gtk_list_box_select_row (GTK_LIST_BOX (list), row_of (findings, d, "even-risers"));
      g_usleep (5000 << i); /* found meanwhile, but not received: nothing of the window runs */
      gtk_list_box_select_row (GTK_LIST_BOX (list), row_of (findings, d, "gate-access"));
      g_signal_emit_by_name (findings, "followed");
      WAIT_FOR ((field = help_find_styled (inspector, "pointed-out")) != NULL);
      g_assert_cmpstr (fp_param_row_param (FP_PARAM_ROW (field))->id, ==, "gate");
      g_assert_true (gtk_widget_is_ancestor (gtk_window_get_focus (GTK_WINDOW (window)), field));
    }
  gtk_window_destroy (GTK_WINDOW (window));
}

/* Another thing is read from its name on, however far down the last one was. */
static void
test_inspector_begins_at_the_top (void)
{
  g_autoptr (FpDocument) d = help_open_sample ("parish.footpace");
  GtkWidget *window = open_window (d), *inspector = child_called (window, "inspector");
  GtkAdjustment *way;

  fp_document_set_alternative (d, 2);
  fp_document_choose (d, "altar");
  let_frames_go_by (window);
  way = gtk_scrolled_window_get_vadjustment (GTK_SCROLLED_WINDOW (gtk_widget_get_ancestor (inspector, GTK_TYPE_SCROLLED_WINDOW)));
  gtk_adjustment_set_value (way, G_MAXDOUBLE);
  g_assert_cmpfloat (gtk_adjustment_get_value (way), >, 0.0);
  fp_document_choose (d, "rail");
  WAIT_FOR ((let_frames_go_by (window), gtk_adjustment_get_value (way) < 30.0));
  gtk_window_destroy (GTK_WINDOW (window));
}

/* --- the report ----------------------------------------------------------- */

/* Every rule of every book stands in it, whatever became of the rule. */
static void
test_report_is_whole (void)
{
  g_autoptr (FpDocument) d = help_open_sample ("chapel.footpace");
  GtkWidget *report = fp_report_window_new (NULL, d), *text = child_called (report, "text");
  GtkTextBuffer *buffer = gtk_text_view_get_buffer (GTK_TEXT_VIEW (text));
  g_autofree char *all = NULL;
  GtkTextIter start, end;
  guint n;
  const FpFinding *finding;

  gtk_window_present (GTK_WINDOW (report));
  WAIT_FOR (!fp_document_is_checking (d) && gtk_text_buffer_get_char_count (buffer) > 0);
  gtk_text_buffer_get_bounds (buffer, &start, &end);
  all = gtk_text_buffer_get_text (buffer, &start, &end, TRUE);
  g_strdelimit (all, "\n", ' ');
  finding = fp_findings_get (fp_document_sighted (d), &n);
  g_assert_cmpuint (n, >, 50);
  for (guint i = 0; i < n; i++)
    {
      g_autofree char *tag = g_strdup_printf ("%s: *%s]", fp_rulebook_id (finding[i].book), finding[i].rule->id);

      if (!g_regex_match_simple (tag, all, 0, 0))
        g_error ("the report says nothing of %s", tag);
    }
  gtk_window_destroy (GTK_WINDOW (report));
}

static void
test_report_finds (void)
{
  GtkWidget *view = gtk_text_view_new (), *window = help_show (view);
  FpTextFind *find = fp_text_find_new (GTK_TEXT_VIEW (view));
  GtkTextBuffer *buffer = gtk_text_view_get_buffer (GTK_TEXT_VIEW (view));
  GtkTextIter start, end;
  g_autofree char *said = NULL, *none = NULL, *last = NULL, *selected = NULL;

  gtk_text_buffer_set_text (buffer, "The altar. An Altar rail. The step of the altar.", -1);
  gtk_text_buffer_get_start_iter (buffer, &start);
  gtk_text_buffer_place_cursor (buffer, &start);
  fp_text_find_look (find, "ALTAR");
  said = fp_text_find_said (find);
  g_assert_cmpstr (said, ==, "1 of 3");
  g_assert_true (gtk_text_buffer_get_selection_bounds (buffer, &start, &end));
  selected = gtk_text_buffer_get_text (buffer, &start, &end, FALSE);
  g_assert_cmpstr (selected, ==, "altar");
  fp_text_find_step (find, FALSE);
  last = fp_text_find_said (find);
  g_assert_cmpstr (last, ==, "3 of 3");
  fp_text_find_look (find, "baptistery");
  none = fp_text_find_said (find);
  g_assert_cmpstr (none, ==, "not found");
  fp_text_find_look (find, "");
  g_assert_cmpuint (fp_text_find_count (find), ==, 0);
  fp_text_find_free (find);
  gtk_window_destroy (GTK_WINDOW (window));
}

/* Sun and sight mark the same places: one takes the place of the other, and what is not shown is not made. */
static void
test_sun_or_sight (void)
{
  g_autoptr (FpDocument) d = help_open_sample ("parish.footpace");
  GtkWidget *window = open_window (d);
  FpBoardView *board = FP_BOARD_VIEW (help_find (window, FP_TYPE_BOARD_VIEW));
  FpBrief brief = *fp_project_brief (fp_document_project (d));
  GtkWidget *mass;

  g_assert_null (help_find (window, FP_TYPE_SUN_BAR));
  g_assert_true (gtk_widget_activate_action (window, "win.sun", NULL));
  WAIT_FOR (fp_board_view_sun (board) != NULL);
  g_assert_true (gtk_widget_get_mapped (help_find (window, FP_TYPE_SUN_BAR)));
  g_assert_true (gtk_widget_activate_action (window, "win.sight", NULL));
  g_assert_null (fp_board_view_sun (board));
  WAIT_FOR (fp_board_view_sight (board) != NULL);
  g_assert_false (gtk_widget_get_mapped (help_find (window, FP_TYPE_SUN_BAR)));
  g_assert_true (gtk_widget_activate_action (window, "win.sun", NULL));
  g_assert_null (fp_board_view_sight (board));
  WAIT_FOR (fp_board_view_sun (board) != NULL);
  /* A Mass more in the brief is offered as soon as it is there. */
  mass = help_find_called (help_find (window, FP_TYPE_SUN_BAR), "mass");
  g_assert_cmpuint (g_list_model_get_n_items (gtk_drop_down_get_model (GTK_DROP_DOWN (mass))), ==, brief.n_masses + 1);
  brief.mass[brief.n_masses++] = (FpMassTime) { .weekday = 3, .minute = 1140 };
  g_assert_true (fp_document_edit (d, fp_project_with_brief (fp_document_project (d), &brief, NULL), "The brief", NULL));
  WAIT_FOR (g_list_model_get_n_items (gtk_drop_down_get_model (GTK_DROP_DOWN (mass))) == brief.n_masses + 1);
  g_assert_true (gtk_widget_activate_action (window, "win.sun", NULL));
  g_assert_null (fp_board_view_sun (board));
  gtk_window_destroy (GTK_WINDOW (window));
}

static GtkWidget *
find_pew (void)
{
  g_autoptr (GList) tops = gtk_window_list_toplevels ();

  for (GList *l = tops; l != NULL; l = l->next)
    if (FP_IS_PEW_WINDOW (l->data))
      return l->data;
  return NULL;
}

/* A finding about what is seen is shown where it is seen: that point of focus, at its moment, from the worst place. */
static void
test_finding_leads_to_sight (void)
{
  g_autoptr (FpDocument) d = help_open_sample ("parish.footpace");
  GtkWidget *window = open_window (d), *findings = child_called (window, "findings");
  FpBoardView *board = FP_BOARD_VIEW (help_find (window, FP_TYPE_BOARD_VIEW));
  GtkListBox *list = GTK_LIST_BOX (child_called (findings, "list"));
  GtkListBoxRow *row;

  WAIT_FOR (fp_document_sighted (d) != NULL && !fp_document_is_checking (d));
  row = row_of (findings, d, "host-seen");
  g_assert_nonnull (row);
  gtk_list_box_select_row (list, row);
  g_assert_nonnull (help_find_button (GTK_WIDGET (row), "Show in Sight"));
  g_signal_emit_by_name (help_find_button (GTK_WIDGET (row), "Show in Sight"), "clicked");
  WAIT_FOR (fp_board_view_sight (board) != NULL && fp_board_view_sight (board)->look.place >= 0);
  const FpSightDraft *draft = fp_board_view_sight (board);
  g_assert_cmpint (draft->look.focus, ==, FP_FOCUS_HOST);
  g_assert_cmpint (draft->look.moment, ==, FP_MOMENT_ELEVATION);
  g_assert_cmpfloat (fp_sight_share (fp_findings_measuring (draft->of)->sight, (guint) draft->look.place, draft->look.moment,
                                     draft->look.focus), ==, 0);
  gtk_window_destroy (GTK_WINDOW (window));
}

/* The view from the pew opens at the place and the moment of Sight and follows both, until a moment is chosen there. */
static void
test_pew_follows_sight (void)
{
  g_autoptr (FpDocument) d = help_open_sample ("parish.footpace");
  GtkWidget *window = open_window (d), *bar;
  FpBoardView *board = FP_BOARD_VIEW (help_find (window, FP_TYPE_BOARD_VIEW));
  FpPewWindow *pew;

  g_assert_true (gtk_widget_activate_action (window, "win.sight", NULL));
  WAIT_FOR (fp_board_view_sight (board) != NULL);
  bar = help_find (window, FP_TYPE_SIGHT_BAR);
  fp_sight_bar_set_place (FP_SIGHT_BAR (bar), 40);
  g_assert_true (gtk_widget_activate_action (window, "win.pew", NULL));
  pew = FP_PEW_WINDOW (find_pew ());
  g_assert_cmpuint (fp_pew_window_place (pew), ==, 40);
  g_assert_cmpint (fp_pew_window_moment (pew), ==, FP_MOMENT_ELEVATION);
  gtk_drop_down_set_selected (GTK_DROP_DOWN (help_find_called (bar, "focus")), FP_FOCUS_AMBO);
  g_assert_cmpint (fp_pew_window_moment (pew), ==, FP_MOMENT_READINGS);
  fp_sight_bar_set_place (FP_SIGHT_BAR (bar), 41);
  g_assert_cmpuint (fp_pew_window_place (pew), ==, 41);

  /* Where circles are close, the one that is clicked is meant by both, kneeling or not. */
  gtk_drop_down_set_selected (GTK_DROP_DOWN (help_find_called (bar, "focus")), FP_FOCUS_HOST);
  WAIT_FOR (fp_board_view_sight (board)->look.focus == FP_FOCUS_HOST);
  const FpMeasuring *of = fp_findings_measuring (fp_board_view_sight (board)->of);
  const FpVec3 eye = fp_people_eye (of->people, 90, FP_POSTURE_KNEELING);
  g_signal_emit_by_name (board, "plan-clicked", eye.x, eye.y);
  g_assert_cmpint (fp_sight_bar_look (FP_SIGHT_BAR (bar)).place, ==, 90);
  g_assert_cmpuint (fp_pew_window_place (pew), ==, 90);

  gtk_drop_down_set_selected (GTK_DROP_DOWN (help_find_called (GTK_WIDGET (pew), "moment")), FP_MOMENT_GOSPEL);
  gtk_drop_down_set_selected (GTK_DROP_DOWN (help_find_called (bar, "focus")), FP_FOCUS_CHAIR);
  g_assert_cmpint (fp_pew_window_moment (pew), ==, FP_MOMENT_GOSPEL);
  gtk_window_destroy (GTK_WINDOW (window));
}

int
main (int argc, char **argv)
{
  gtk_test_init (&argc, &argv, NULL);
  g_test_add_func ("/window/begins", test_begins_with_the_drawing);
  g_test_add_func ("/window/begins/given-up", test_beginning_given_up);
  g_test_add_func ("/window/begins/no-file", test_begins_with_no_file);
  g_test_add_func ("/window/notice/board", test_notice_leaves_the_board_alone);
  g_test_add_func ("/window/notice/goes", test_notice_goes_away);
  g_test_add_func ("/window/question", test_question_is_answered);
  g_test_add_func ("/window/question-outlives-window", test_question_outlives_window);
  g_test_add_func ("/window/escape", test_escape_leaves_compare);
  g_test_add_func ("/window/compare-mark", test_compare_explains_its_mark);
  g_test_add_func ("/window/add-by-name", test_adds_by_typing);
  g_test_add_func ("/window/side/full", test_findings_at_full_height);
  g_test_add_func ("/window/side/remembered", test_side_is_remembered);
  g_test_add_func ("/window/board-is-remembered", test_board_is_remembered);
  g_test_add_func ("/window/side/nonsense", test_remembered_nonsense);
  g_test_add_func ("/window/alternatives", test_new_alternative_comes_into_view);
  g_test_add_func ("/window/survey", test_survey_is_told_of);
  g_test_add_func ("/window/inks", test_pictures_follow_the_inks);
  g_test_add_func ("/window/finding", test_finding_leads_to_its_field);
  g_test_add_func ("/window/finding-leads-to-sight", test_finding_leads_to_sight);
  g_test_add_func ("/window/pew-follows-sight", test_pew_follows_sight);
  g_test_add_func ("/window/first-row-is-raised", test_first_row_is_raised);
  g_test_add_func ("/window/finding/not-mistaken", test_finding_is_not_mistaken);
  g_test_add_func ("/window/thing-from-the-top", test_inspector_begins_at_the_top);
  g_test_add_func ("/report/whole", test_report_is_whole);
  g_test_add_func ("/report/find", test_report_finds);
  g_test_add_func ("/window/sun-or-sight", test_sun_or_sight);
  return g_test_run ();
}
