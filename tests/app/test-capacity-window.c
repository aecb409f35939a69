/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The window of the capacity: what it tells, what is typed into it, and that it follows. */
#include "capacity-window.h"
#include "compat-4-8.h"
#include "waiting.h"
#include "widget-help.h"

#include <glib/gstdio.h>
#include <string.h>

static GtkWidget *
open_window (FpDocument *document)
{
  GtkWidget *window = fp_capacity_window_new (NULL, document);

  gtk_window_present (GTK_WINDOW (window));
  WAIT_FOR (gtk_widget_get_height (help_find_called (window, "sections")) > 0);
  return window;
}

static const FpReckoning *
reckoning_of (FpDocument *document)
{
  return fp_project_reckoning (fp_document_project (document));
}

/* --- finding ---------------------------------------------------------------------------- */

static gboolean
says (GtkWidget *widget, gconstpointer text)
{
  return GTK_IS_LABEL (widget) && strstr (gtk_label_get_text (GTK_LABEL (widget)), text) != NULL;
}

static gboolean
is_told (GtkWidget *window, const char *text)
{
  return help_find_that (help_find_called (window, "sections"), says, text) != NULL;
}

static gboolean
is_entry_for (GtkWidget *widget, gconstpointer about)
{
  const char *tip = GTK_IS_ENTRY (widget) ? gtk_widget_get_tooltip_text (widget) : NULL;

  return tip != NULL && g_str_has_prefix (tip, about);
}

static GtkWidget *
entry_for (GtkWidget *window, const char *about)
{
  GtkWidget *entry = help_find_that (window, is_entry_for, about);

  g_assert_nonnull (entry);
  return entry;
}

static void
type (GtkWidget *entry, const char *text)
{
  gtk_editable_set_text (GTK_EDITABLE (entry), text);
  g_signal_emit_by_name (entry, "activate");
}

/* --- tests ------------------------------------------------------------------------------ */

/* All four sections, each with its source and its caution. */
static void
test_tells (void)
{
  g_autoptr (FpDocument) document = help_open_sample ("parish.footpace");
  GtkWidget *window = open_window (document);

  g_assert_true (is_told (window, "Seats in all"));
  g_assert_true (is_told (window, "International Building Code 2015, 1004.4"));
  g_assert_true (is_told (window, "2010 ADA Standards, 221.2.1.1"));
  g_assert_true (is_told (window, "none is assumed"));
  g_assert_true (is_told (window, "People to leave"));
  g_assert_true (is_told (window, "The authority having jurisdiction decides"));
  g_assert_nonnull (strstr (gtk_label_get_text (GTK_LABEL (help_find_called (window, "caution"))), "approves nothing"));
  gtk_window_destroy (GTK_WINDOW (window));
}

/* Each is one edit, kept with the project, and undo takes it back; what cannot be is said at the field and changes nothing. */
static void
test_typed (void)
{
  g_autoptr (FpDocument) document = help_open_sample ("parish.footpace");
  GtkWidget *window = open_window (document), *each, *people, *lines, *step;
  guint depth;

  each = entry_for (window, "How long one communicant");
  people = entry_for (window, "How many people");
  lines = entry_for (window, "In how many lines");
  step = entry_for (window, "From one who has received to the next before");
  type (people, "60");
  type (lines, "2");
  type (step, "1 s");
  depth = fp_document_depth (document);
  type (each, "a while");
  g_assert_cmpuint (fp_document_depth (document), ==, depth);
  type (each, "601");
  g_assert_cmpuint (fp_document_depth (document), ==, depth);
  g_assert_nonnull (help_find_that (window, says, "it may be 0.1 to 600 seconds"));
  type (each, "4");
  g_assert_cmpuint (fp_document_depth (document), ==, depth + 1);
  g_assert_cmpfloat (reckoning_of (document)->each, ==, 4);
  g_assert_cmpuint (reckoning_of (document)->people, ==, 60);
  /* 30 in each of two lines: 30 times 4 s and 29 steps. */
  WAIT_FOR (is_told (window, "2 min 29 s"));
  type (each, "");
  g_assert_true (fp_reckoning_unsaid (reckoning_of (document), FP_RECKONING_EACH));
  g_assert_true (fp_document_undo (document));
  g_assert_cmpfloat (reckoning_of (document)->each, ==, 4);
  g_assert_cmpstr (gtk_editable_get_text (GTK_EDITABLE (each)), ==, "4");
  WAIT_FOR (is_told (window, "2 min 29 s"));
  gtk_window_destroy (GTK_WINDOW (window));
}

static gboolean
is_check (GtkWidget *widget, gconstpointer data)
{
  (void) data;
  return GTK_IS_CHECK_BUTTON (widget);
}

static void
test_sprinklers (void)
{
  g_autoptr (FpDocument) document = help_open_sample ("parish.footpace");
  GtkWidget *window = open_window (document), *check = help_find_that (window, is_check, NULL);

  gtk_check_button_set_active (GTK_CHECK_BUTTON (check), !reckoning_of (document)->sprinklers);
  g_assert_true (fp_document_undo (document));
  g_assert_cmpint (gtk_check_button_get_active (GTK_CHECK_BUTTON (check)), ==, reckoning_of (document)->sprinklers);
  gtk_window_destroy (GTK_WINDOW (window));
}

static gboolean
is_thing (GtkWidget *widget, gconstpointer data)
{
  (void) data;
  return GTK_IS_BUTTON (widget) && gtk_widget_has_css_class (widget, "thing");
}

static void
add_places (FpDocument *document)
{
  const FpItemInit init = { .id = "places", .kind = fp_kind_find ("wheelchair-places"), .place = { -700, -2600, 0 } };
  FpItem *item = fp_item_new (&init, NULL);
  FpProject *next = fp_project_with_survey_item (fp_document_project (document), item, NULL);

  g_assert_true (fp_document_edit (document, next, "Places", NULL));
  fp_item_unref (item);
}

/* A name chooses its thing on the board; what is added is counted; what is seen from there is told once it is known. */
static void
test_follows (void)
{
  g_autoptr (FpDocument) document = help_open_sample ("parish.footpace");
  GtkWidget *window = open_window (document), *thing = help_find_that (window, is_thing, NULL);

  g_signal_emit_by_name (thing, "clicked");
  g_assert_nonnull (fp_document_chosen (document));
  g_assert_false (is_told (window, "Wheelchair places: place 1"));
  add_places (document);
  WAIT_FOR (is_told (window, "Wheelchair places: place 1"));
  WAIT_FOR (is_told (window, "sees of the raised Host"));
  fp_document_set_alternative (document, 1);
  WAIT_FOR (strcmp (gtk_label_get_text (GTK_LABEL (help_find_called (window, "subtitle"))),
                    fp_alternative_name (fp_project_alternative (fp_document_project (document), 1))) == 0);
  gtk_window_destroy (GTK_WINDOW (window));
}

static GFile *
answer (const FpFileQuestion *question, gpointer path)
{
  g_assert_true (g_str_has_suffix (path, question->filter_suffix));
  return g_file_new_for_path (path);
}

static void
test_writes (void)
{
  static const struct { const char *action, *name, *begins; } forms[] = {
    { "capacity.save-table", "capacity.csv", "section,what,item" },
    { "capacity.save-data", "capacity.json", "{\n  \"format\": \"footpace.capacity\"" },
    { "capacity.save-text", "capacity.txt", "Capacity\n" },
  };
  g_autoptr (FpDocument) document = help_open_sample ("parish.footpace");
  GtkWidget *window = open_window (document);
  g_autofree char *folder = g_dir_make_tmp ("footpace-XXXXXX", NULL);

  for (guint i = 0; i < G_N_ELEMENTS (forms); i++)
    {
      g_autofree char *path = g_build_filename (folder, forms[i].name, NULL), *text = NULL;

      fp_ask_files_of (answer, path);
      gtk_widget_activate_action (window, forms[i].action, NULL);
      WAIT_FOR (g_file_test (path, G_FILE_TEST_EXISTS));
      g_assert_true (g_file_get_contents (path, &text, NULL, NULL));
      g_assert_true (g_str_has_prefix (text, forms[i].begins));
      g_remove (path);
    }
  fp_ask_files_of (NULL, NULL);
  g_rmdir (folder);
  gtk_window_destroy (GTK_WINDOW (window));
}

int
main (int argc, char **argv)
{
  gtk_test_init (&argc, &argv, NULL);
  g_test_add_func ("/capacity-window/tells", test_tells);
  g_test_add_func ("/capacity-window/typed", test_typed);
  g_test_add_func ("/capacity-window/sprinklers", test_sprinklers);
  g_test_add_func ("/capacity-window/follows", test_follows);
  g_test_add_func ("/capacity-window/writes", test_writes);
  return g_test_run ();
}
