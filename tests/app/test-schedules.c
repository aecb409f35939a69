/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The window of schedules: what it lists, rates and works that are typed, what it writes. */
#include "bill-line.h"
#include "compat-4-8.h"
#include "schedules-window.h"
#include "waiting.h"
#include "widget-help.h"

#include "footpace/works.h"

#include <glib/gstdio.h>
#include <math.h>
#include <string.h>

static GListModel *
lines_of (GtkWidget *window)
{
  return G_LIST_MODEL (gtk_column_view_get_model (GTK_COLUMN_VIEW (help_find_called (window, "list"))));
}

static GtkWidget *
open_window (FpDocument *document)
{
  GtkWidget *window;

  fp_document_set_alternative (document, 1);
  window = fp_schedules_window_new (NULL, document);
  gtk_window_present (GTK_WINDOW (window));
  WAIT_FOR (gtk_widget_get_height (help_find_called (window, "list")) > 0);
  return window;
}

static void
choose_line (GtkWidget *window, const char *what)
{
  GListModel *lines = lines_of (window);
  const guint n = g_list_model_get_n_items (lines);

  for (guint i = 0; i < n; i++)
    {
      g_autoptr (FpBillLine) line = g_list_model_get_item (lines, i);

      if (strcmp (fp_bill_line_row (line)->what, what) != 0)
        continue;
      gtk_single_selection_set_selected (GTK_SINGLE_SELECTION (lines), i);
      return;
    }
  g_assert_not_reached ();
}

static void
type (GtkWidget *entry, const char *text)
{
  gtk_editable_set_text (GTK_EDITABLE (entry), text);
  g_signal_emit_by_name (entry, "activate");
}

static const FpWorks *
works_of (FpDocument *document)
{
  return fp_project_works (fp_document_project (document));
}

/* What is kept is shown when it is asked for; a heading alone lists its lines alone. */
static void
test_lists (void)
{
  g_autoptr (FpDocument) document = help_open_sample ("parish.footpace");
  GtkWidget *window = open_window (document);
  const guint to_be_done = g_list_model_get_n_items (lines_of (window));

  g_assert_cmpuint (to_be_done, >, 20);
  gtk_drop_down_set_selected (GTK_DROP_DOWN (help_find_called (window, "work")), 5);
  g_assert_cmpuint (g_list_model_get_n_items (lines_of (window)), >, to_be_done);
  gtk_drop_down_set_selected (GTK_DROP_DOWN (help_find_called (window, "heading")), 1 + FP_HEADING_RAIL);
  for (guint i = 0; i < g_list_model_get_n_items (lines_of (window)); i++)
    {
      g_autoptr (FpBillLine) line = g_list_model_get_item (lines_of (window), i);
      g_assert_cmpint (fp_bill_line_row (line)->heading, ==, FP_HEADING_RAIL);
    }
  gtk_drop_down_set_selected (GTK_DROP_DOWN (help_find_called (window, "heading")), 1 + FP_N_HEADINGS);
  g_assert_nonnull (strstr (gtk_label_get_text (GTK_LABEL (help_find_called (window, "weights"))), "licensed engineer"));
  gtk_window_destroy (GTK_WINDOW (window));
}

/* A rate is one edit, which undo takes back; what cannot be read changes nothing and is said. */
static void
test_rate (void)
{
  g_autoptr (FpDocument) document = help_open_sample ("parish.footpace");
  GtkWidget *window = open_window (document), *rate = help_find_called (window, "rate");
  GtkWidget *state = help_find_called (window, "state");
  const guint depth = fp_document_depth (document), n = works_of (document)->n_rates;

  choose_line (window, "mensa");
  type (rate, "dear");
  g_assert_cmpuint (fp_document_depth (document), ==, depth);
  g_assert_cmpstr (gtk_label_get_text (GTK_LABEL (state)), !=, "");
  type (rate, "5300");
  g_assert_cmpuint (fp_document_depth (document), ==, depth + 1);
  g_assert_cmpfloat (fp_works_rate (works_of (document), "altar", "mensa", FP_AMOUNT_VOLUME)->rate, ==, 5300);
  g_assert_nonnull (strstr (gtk_label_get_text (GTK_LABEL (help_find_called (window, "closing"))), "In all"));
  g_assert_cmpstr (gtk_label_get_text (GTK_LABEL (state)), ==, "");
  g_assert_cmpstr (gtk_editable_get_text (GTK_EDITABLE (rate)), ==, "5300"); /* the line is chosen still */
  type (rate, "");
  g_assert_cmpuint (works_of (document)->n_rates, ==, n - 1);
  g_assert_true (fp_document_undo (document));
  g_assert_cmpuint (works_of (document)->n_rates, ==, n);
  WAIT_FOR (strcmp (gtk_editable_get_text (GTK_EDITABLE (rate)), "5300") == 0);
  gtk_window_destroy (GTK_WINDOW (window));
}

static gboolean
is_entry_with (GtkWidget *widget, gconstpointer text)
{
  return GTK_IS_ENTRY (widget) && strcmp (gtk_editable_get_text (GTK_EDITABLE (widget)), text) == 0;
}

static guint
step_pieces (GtkWidget *window)
{
  guint pieces = 0;

  for (guint i = 0; i < g_list_model_get_n_items (lines_of (window)); i++)
    {
      g_autoptr (FpBillLine) line = g_list_model_get_item (lines_of (window), i);
      pieces += fp_bill_line_row (line)->heading == FP_HEADING_STEPS ? fp_bill_line_row (line)->pieces : 0;
    }
  return pieces;
}

/* By what schedules are reckoned: a longer slab makes fewer of them. */
static void
test_works (void)
{
  g_autoptr (FpDocument) document = help_open_sample ("parish.footpace");
  GtkWidget *window = open_window (document);
  g_autofree char *shown = fp_length_format_unit (1500, FP_UNITS_METRIC);
  GtkWidget *longest = help_find_that (window, is_entry_with, shown);
  const guint before = step_pieces (window);

  g_assert_nonnull (longest);
  type (longest, "100");
  g_assert_cmpfloat (works_of (document)->longest, ==, 1500);
  type (longest, "3 m");
  g_assert_cmpfloat (works_of (document)->longest, ==, 3000);
  WAIT_FOR (step_pieces (window) < before); /* made anew after a lull */
  /* Others of the stone, each in its own field. */
  type (help_find_that (window, is_entry_with, "3 mm"), "5");
  g_assert_cmpfloat (works_of (document)->joint, ==, 5);
  type (help_find_that (window, is_entry_with, "5 mm"), "30");
  g_assert_cmpfloat (works_of (document)->joint, ==, 5); /* no joint is so wide */
  gtk_window_destroy (GTK_WINDOW (window));
}

static GFile *
answer (const FpFileQuestion *question, gpointer path)
{
  g_assert_cmpstr (question->filter_suffix, ==, "csv");
  /* The name that is offered tells of which alternative it is. */
  g_assert_nonnull (strstr (question->name, ", Freestanding altar on three steps, schedules.csv"));
  return g_file_new_for_path (path);
}

static void
test_writes (void)
{
  g_autoptr (FpDocument) document = help_open_sample ("parish.footpace");
  GtkWidget *window = open_window (document);
  g_autofree char *folder = g_dir_make_tmp ("footpace-XXXXXX", NULL), *path = g_build_filename (folder, "list.csv", NULL);
  g_autofree char *text = NULL;

  fp_ask_files_of (answer, path);
  gtk_widget_activate_action (window, "schedules.save-table", NULL);
  WAIT_FOR (g_file_test (path, G_FILE_TEST_EXISTS));
  g_assert_true (g_file_get_contents (path, &text, NULL, NULL));
  g_assert_true (g_str_has_prefix (text, "work,heading,id,thing,what"));
  g_assert_null (strstr (text, "\nkept,"));
  fp_ask_files_of (NULL, NULL);
  g_remove (path);
  g_rmdir (folder);
  gtk_window_destroy (GTK_WINDOW (window));
}

int
main (int argc, char **argv)
{
  gtk_test_init (&argc, &argv, NULL);
  g_test_add_func ("/schedules/lists", test_lists);
  g_test_add_func ("/schedules/rate", test_rate);
  g_test_add_func ("/schedules/works", test_works);
  g_test_add_func ("/schedules/writes", test_writes);
  return g_test_run ();
}
