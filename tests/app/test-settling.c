/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What would settle a finding is shown on the board before it is made; and all are settled in one step, of which is told. */
#include "board-view.h"
#include "findings-list.h"
#include "waiting.h"
#include "widget-help.h"
#include "window.h"

#include "footpace/remedy.h"

#include <string.h>

static GtkWidget *
child_called (GtkWidget *top, const char *id)
{
  return GTK_WIDGET (gtk_widget_get_template_child (top, G_OBJECT_TYPE (top), id));
}

/* On the last alternative of the sample, once all of it has been checked. */
static GtkWidget *
open_window (FpDocument *d)
{
  GtkWidget *window = fp_window_new (NULL);

  fp_document_set_alternative (d, fp_project_n_alternatives (fp_document_project (d)) - 1);
  gtk_window_present (GTK_WINDOW (window));
  fp_window_set_document (FP_WINDOW (window), d);
  WAIT_FOR (fp_board_view_scale (FP_BOARD_VIEW (help_find (window, FP_TYPE_BOARD_VIEW))) > 0.0);
  WAIT_FOR (!fp_document_is_checking (d));
  return window;
}

static GtkListBoxRow *
row_of (GtkWidget *findings, FpDocument *d, const char *rule)
{
  g_autoptr (GArray) shown = fp_shown_new (fp_document_findings (d), fp_document_sighted (d));

  for (guint i = 0; i < shown->len; i++)
    if (strcmp (g_array_index (shown, FpShown, i).finding->rule->id, rule) == 0)
      return gtk_list_box_get_row_at_index (GTK_LIST_BOX (child_called (findings, "list")), (int) i);
  return NULL;
}

static GtkWidget *
offered (GtkWidget *findings, FpDocument *d, const char *rule)
{
  GtkListBoxRow *row = row_of (findings, d, rule);
  GtkWidget *button;

  g_assert_nonnull (row);
  gtk_list_box_select_row (GTK_LIST_BOX (child_called (findings, "list")), row);
  WAIT_FOR ((button = help_find_button (GTK_WIDGET (row), "Make This Change")) != NULL
            && gtk_widget_get_mapped (button));
  return button;
}

/* --- on the board --------------------------------------------------------------- */

static void
test_preview (void)
{
  g_autoptr (FpDocument) d = help_open_sample ("parish.footpace");
  GtkWidget *window = open_window (d), *findings = child_called (window, "findings"), *button;
  FpBoardView *board = FP_BOARD_VIEW (child_called (window, "board"));
  const FpProject *before = fp_document_project (d);

  button = offered (findings, d, "gate-access");
  g_assert_null (fp_board_view_change (board));
  g_assert_true (gtk_widget_grab_focus (button));
  WAIT_FOR (fp_board_view_change (board) != NULL);
  /* ADA Standards (2010), 404.2.3, from memory: 32 in clear, which is 812.8 mm. */
  g_assert_cmpstr (fp_board_view_change (board), ==, "Gate: 815 mm");
  /* It is only shown. */
  g_assert_true (fp_document_project (d) == before);
  g_assert_false (fp_document_is_previewing (d));
  g_assert_true (gtk_widget_grab_focus (child_called (window, "board")));
  g_assert_null (fp_board_view_change (board));
  g_assert_true (gtk_widget_grab_focus (button));
  WAIT_FOR (fp_board_view_change (board) != NULL);
  g_signal_emit_by_name (button, "clicked");
  g_assert_cmpfloat (fp_item_param (fp_document_chosen_placed (d)->item, "gate"), ==, 815.0);
  /* It is so now: nothing is shown over it. */
  g_assert_null (fp_board_view_change (board));
  g_assert_cmpuint (fp_document_depth (d), ==, 1);
  WAIT_FOR (!fp_document_is_checking (d));
  gtk_window_destroy (GTK_WINDOW (window));
}

static gboolean
is_settled (const FpFindings *findings, const FpFinding *finding)
{
  FpRemedy remedy;

  return strcmp (finding->rule->measure, "row-c") == 0 || fp_remedy_find (findings, finding, NULL, &remedy, NULL);
}

/* What nothing settles says what stands in the way, and shows nothing on the board. */
static void
test_hindrance (void)
{
  g_autoptr (FpDocument) d = help_open_sample ("parish.footpace");
  GtkWidget *window = open_window (d), *findings = child_called (window, "findings"), *offer;
  GtkListBoxRow *row;
  guint n, i = 0;
  const FpFinding *finding = fp_findings_get (fp_document_findings (d), &n);

  while (i < n && is_settled (fp_document_findings (d), &finding[i]))
    i++;
  g_assert_cmpuint (i, <, n);
  g_assert_cmpint (finding[i].found, ==, FP_FOUND_SHORT);
  row = row_of (findings, d, finding[i].rule->id);
  gtk_list_box_select_row (GTK_LIST_BOX (child_called (findings, "list")), row);
  WAIT_FOR ((offer = help_find_styled (GTK_WIDGET (row), "offer")) != NULL && gtk_widget_get_visible (offer));
  g_assert_cmpstr (gtk_label_get_text (GTK_LABEL (help_find_styled (offer, "caption-heading"))), ==, "What stands in the way");
  g_assert_cmpstr (gtk_label_get_text (GTK_LABEL (help_find_styled (offer, "caption"))), !=, "");
  gtk_window_destroy (GTK_WINDOW (window));
}

/* --- all of them -------------------------------------------------------------------- */

static GtkWidget *
window_titled (const char *title)
{
  g_autoptr (GList) windows = gtk_window_list_toplevels ();

  for (GList *w = windows; w != NULL; w = w->next)
    if (g_strcmp0 (gtk_window_get_title (w->data), title) == 0)
      return w->data;
  return NULL;
}

static FpWeight
heaviest (FpDocument *d)
{
  FpWeight weight = FP_WEIGHT_REQUIRED;

  while (weight < FP_N_WEIGHTS && fp_findings_short (fp_document_findings (d), weight) == 0)
    weight++;
  return weight;
}

static guint
rows_with (GtkWidget *list, const char *icon)
{
  guint found = 0;

  for (int i = 0; gtk_list_box_get_row_at_index (GTK_LIST_BOX (list), i) != NULL; i++)
    {
      GtkWidget *image = help_find (GTK_WIDGET (gtk_list_box_get_row_at_index (GTK_LIST_BOX (list), i)), GTK_TYPE_IMAGE);

      found += g_strcmp0 (gtk_image_get_icon_name (GTK_IMAGE (image)), icon) == 0 ? 1 : 0;
    }
  return found;
}

static void
test_settle_all (void)
{
  g_autoptr (FpDocument) d = help_open_sample ("parish.footpace");
  GtkWidget *window = open_window (d), *told, *list;
  const FpProject *before = fp_document_project (d);
  const FpWeight weight = heaviest (d);
  guint was, settled, left;

  g_assert_cmpint (weight, <, FP_N_WEIGHTS);
  was = fp_findings_short (fp_document_findings (d), weight);
  g_signal_emit_by_name (child_called (child_called (window, "findings"), "settle"), "clicked");
  WAIT_WITHIN (120, (told = window_titled ("Settle All")) != NULL);
  list = help_find (told, GTK_TYPE_LIST_BOX);
  settled = rows_with (list, "object-select-symbolic");
  left = rows_with (list, "dialog-warning-symbolic");
  g_assert_cmpuint (settled, >, 0);
  g_assert_cmpuint (settled + left, ==, was);
  /* One step, which is checked anew: what was told is so. */
  g_assert_cmpuint (fp_document_depth (d), ==, 1);
  WAIT_FOR (!fp_document_is_checking (d));
  g_assert_cmpuint (fp_findings_short (fp_document_findings (d), weight), ==, left);
  g_signal_emit_by_name (help_find_button (told, "Undo All of It"), "clicked");
  g_assert_true (fp_document_project (d) == before);
  g_assert_null (window_titled ("Settle All"));
  WAIT_FOR (!fp_document_is_checking (d));
  g_assert_cmpuint (fp_findings_short (fp_document_findings (d), weight), ==, was);
  gtk_window_destroy (GTK_WINDOW (window));
}

/* What was changed meanwhile is not lost. */
static void
test_changed_meanwhile (void)
{
  g_autoptr (FpDocument) d = help_open_sample ("parish.footpace");
  GtkWidget *window = open_window (d), *button = child_called (child_called (window, "findings"), "settle");

  g_signal_emit_by_name (button, "clicked");
  g_assert_cmpstr (gtk_button_get_label (GTK_BUTTON (button)), ==, "Settling …");
  fp_document_set_alternative (d, 0);
  WAIT_WITHIN (120, g_strcmp0 (gtk_button_get_label (GTK_BUTTON (button)), "Settle All") == 0);
  g_assert_null (window_titled ("Settle All"));
  g_assert_cmpuint (fp_document_depth (d), ==, 0);
  WAIT_FOR (!fp_document_is_checking (d));
  gtk_window_destroy (GTK_WINDOW (window));
}

int
main (int argc, char **argv)
{
  gtk_test_init (&argc, &argv, NULL);
  g_test_add_func ("/settling/preview", test_preview);
  g_test_add_func ("/settling/hindrance", test_hindrance);
  g_test_add_func ("/settling/all", test_settle_all);
  g_test_add_func ("/settling/changed-meanwhile", test_changed_meanwhile);
  return g_test_run ();
}
