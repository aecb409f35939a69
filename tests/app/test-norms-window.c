/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The window of norms: books followed, rules held otherwise, one source gone by, books of the project's own. */
#include "compat-4-8.h"
#include "norm-row.h"
#include "norms-window.h"
#include "waiting.h"
#include "widget-help.h"

#include <glib/gstdio.h>
#include <math.h>
#include <string.h>

static const FpNorms *
norms_of (FpDocument *document)
{
  return fp_project_norms (fp_document_project (document));
}

static GtkWidget *
open_window (FpDocument *document)
{
  GtkWidget *window = fp_norms_window_new (NULL, document);

  gtk_window_present (GTK_WINDOW (window));
  WAIT_FOR (gtk_widget_get_height (help_find_called (window, "list")) > 0);
  return window;
}

static GtkListBoxRow *
row_of (GtkWidget *window, const char *title)
{
  GtkListBox *list = GTK_LIST_BOX (help_find_called (window, "list"));
  GtkListBoxRow *row;

  for (int i = 0; (row = gtk_list_box_get_row_at_index (list, i)) != NULL; i++)
    {
      GtkWidget *label = gtk_widget_get_last_child (gtk_list_box_row_get_child (row));

      if (g_str_has_prefix (gtk_label_get_text (GTK_LABEL (label)), title))
        return row;
    }
  return NULL;
}

static GtkWidget *
rule_row (GtkWidget *window, const char *rule)
{
  GtkWidget *rules = help_find_called (window, "rules");

  for (GtkWidget *row = gtk_widget_get_first_child (rules); row != NULL; row = gtk_widget_get_next_sibling (row))
    if (FP_IS_NORM_ROW (row) && strcmp (fp_norm_row_rule (FP_NORM_ROW (row)), rule) == 0)
      return row;
  return NULL;
}

/* Of the widgets within, the first of that type whose label is so. */
static GtkWidget *
find_labelled (GtkWidget *within, GType type, const char *label)
{
  for (GtkWidget *child = gtk_widget_get_first_child (within); child != NULL; child = gtk_widget_get_next_sibling (child))
    {
      GtkWidget *found;

      if (g_type_is_a (G_OBJECT_TYPE (child), type))
        {
          g_autofree char *text = NULL;

          g_object_get (child, "label", &text, NULL);
          if (text != NULL && strstr (text, label) != NULL)
            return child;
        }
      found = find_labelled (child, type, label);
      if (found != NULL)
        return found;
    }
  return NULL;
}

static void
find_entries (GtkWidget *within, GPtrArray *entries)
{
  for (GtkWidget *child = gtk_widget_get_first_child (within); child != NULL; child = gtk_widget_get_next_sibling (child))
    if (GTK_IS_ENTRY (child))
      g_ptr_array_add (entries, child);
    else
      find_entries (child, entries);
}

static void
press (GtkWidget *row, const char *button)
{
  GtkWidget *expander = find_labelled (row, GTK_TYPE_EXPANDER, "Hold otherwise");

  gtk_expander_set_expanded (GTK_EXPANDER (expander), TRUE);
  g_signal_emit_by_name (find_labelled (row, GTK_TYPE_BUTTON, button), "clicked");
}

static void
test_followed (void)
{
  g_autoptr (FpDocument) document = help_open_sample ("parish.footpace");
  GtkWidget *window = open_window (document);
  GtkWidget *check = gtk_widget_get_first_child (gtk_list_box_row_get_child (row_of (window, "Flame")));

  g_assert_true (gtk_check_button_get_active (GTK_CHECK_BUTTON (check)));
  gtk_check_button_set_active (GTK_CHECK_BUTTON (check), FALSE);
  g_assert_false (fp_norms_follow (norms_of (document), "flame"));
  g_assert_true (fp_document_undo (document));
  WAIT_FOR (gtk_check_button_get_active (GTK_CHECK_BUTTON (check)));
  g_assert_true (fp_norms_follow (norms_of (document), "flame"));
  gtk_drop_down_set_selected (GTK_DROP_DOWN (help_find_called (window, "law")), FP_JURISDICTION_UK);
  g_assert_cmpint (norms_of (document)->jurisdiction, ==, FP_JURISDICTION_UK);
  gtk_window_destroy (GTK_WINDOW (window));
}

/* Without a reason nothing is held otherwise. */
static void
test_held (void)
{
  g_autoptr (FpDocument) document = help_open_sample ("parish.footpace");
  GtkWidget *window = open_window (document), *row;
  g_autoptr (GPtrArray) entries = g_ptr_array_new ();
  const guint depth = fp_document_depth (document);

  gtk_list_box_select_row (GTK_LIST_BOX (help_find_called (window, "list")), row_of (window, "Steps and falls"));
  row = rule_row (window, "riser-code");
  press (row, "Hold So");
  g_assert_cmpuint (fp_document_depth (document), ==, depth);
  find_entries (row, entries);
  g_assert_cmpuint (entries->len, ==, 3);
  gtk_editable_set_text (GTK_EDITABLE (entries->pdata[1]), "6");
  gtk_editable_set_text (GTK_EDITABLE (entries->pdata[2]), "So the elders wish");
  press (row, "Hold So");
  g_assert_cmpuint (fp_document_depth (document), ==, depth + 1);
  g_assert_cmpfloat (fp_norms_change (norms_of (document), "step-and-fall", "riser-code")->high, ==, 6);
  g_assert_true (isnan (fp_norms_change (norms_of (document), "step-and-fall", "riser-code")->low));
  WAIT_FOR (find_labelled (row, GTK_TYPE_LABEL, "So the elders wish") != NULL);
  press (row, "Set Aside");
  g_assert_true (fp_norms_change (norms_of (document), "step-and-fall", "riser-code")->aside);
  press (row, "As Printed");
  g_assert_null (fp_norms_change (norms_of (document), "step-and-fall", "riser-code"));
  gtk_window_destroy (GTK_WINDOW (window));
}

static void
test_gone_by (void)
{
  g_autoptr (FpDocument) document = help_open_sample ("parish.footpace");
  GtkWidget *window = open_window (document), *check;

  gtk_list_box_select_row (GTK_LIST_BOX (help_find_called (window, "list")), row_of (window, "Rail and gate"));
  check = find_labelled (rule_row (window, "rail-height-ufc"), GTK_TYPE_CHECK_BUTTON, "go by this one alone");
  g_assert_true (gtk_widget_get_visible (check));
  gtk_check_button_set_active (GTK_CHECK_BUTTON (check), TRUE);
  g_assert_cmpstr (fp_norms_choice (norms_of (document), "rail-height")->rule, ==, "rail-height-ufc");
  gtk_check_button_set_active (GTK_CHECK_BUTTON (check), FALSE);
  g_assert_null (fp_norms_choice (norms_of (document), "rail-height"));
  check = find_labelled (rule_row (window, "rail-top"), GTK_TYPE_CHECK_BUTTON, "go by this one alone");
  g_assert_false (gtk_widget_get_visible (check)); /* nobody disagrees */
  gtk_window_destroy (GTK_WINDOW (window));
}

/* --- a book of its own ------------------------------------------------------------------- */

static GFile *
answer (const FpFileQuestion *question, gpointer path)
{
  g_assert_false (question->save);
  return g_file_new_for_path (path);
}

#define BOOK(measure) \
  "<rulebook xmlns='urn:footpace:rulebook:1' id='diocese' title='Of the diocese' edition='2026'>\n" \
  "<rule id='long' measure='" measure "' test='at-least' low='20' unit='m' weight='required'>" \
  "<title>The altar is short</title><source>Of the diocese</source></rule></rulebook>\n"

static void
test_own (void)
{
  g_autoptr (FpDocument) document = help_open_sample ("parish.footpace");
  GtkWidget *window = open_window (document), *state = help_find_called (window, "state");
  g_autofree char *folder = g_dir_make_tmp ("footpace-XXXXXX", NULL), *path = g_build_filename (folder, "diocese.xml", NULL);

  fp_ask_files_of (answer, path);
  g_assert_true (g_file_set_contents (path, BOOK ("mensa-breadth"), -1, NULL));
  gtk_widget_activate_action (window, "norms.add", NULL);
  WAIT_FOR (*gtk_label_get_text (GTK_LABEL (state)) != '\0');
  g_assert_nonnull (strstr (gtk_label_get_text (GTK_LABEL (state)), "diocese.xml:2: there is no measure “mensa-breadth”"));
  g_assert_cmpuint (norms_of (document)->n_own, ==, 0);

  g_assert_true (g_file_set_contents (path, BOOK ("mensa-length"), -1, NULL));
  gtk_widget_activate_action (window, "norms.add", NULL);
  WAIT_FOR (row_of (window, "Of the diocese") != NULL);
  g_assert_cmpuint (norms_of (document)->n_own, ==, 1);
  gtk_list_box_select_row (GTK_LIST_BOX (help_find_called (window, "list")), row_of (window, "Of the diocese"));
  WAIT_FOR (find_labelled (window, GTK_TYPE_LABEL, "which is short") != NULL);
  gtk_widget_activate_action (window, "norms.remove", NULL);
  g_assert_cmpuint (norms_of (document)->n_own, ==, 0);
  g_assert_null (row_of (window, "Of the diocese"));

  fp_ask_files_of (NULL, NULL);
  gtk_window_destroy (GTK_WINDOW (window));
  g_unlink (path);
  g_rmdir (folder);
}

#define EDITION(id, edition, low) \
  "<rulebook xmlns='urn:footpace:rulebook:1' id='" id "' title='Of the diocese' edition='" edition "'>\n" \
  "<rule id='long' measure='mensa-length' test='at-least' low='" low "' unit='m' weight='required'>" \
  "<title>The altar is short</title><source>Of the diocese</source></rule></rulebook>\n"

/* A newer edition, from another file, takes the place of the one that is kept, as one step; a built-in book none takes. */
static void
test_replaced (void)
{
  g_autoptr (FpDocument) document = help_open_sample ("parish.footpace");
  GtkWidget *window = open_window (document), *state = help_find_called (window, "state");
  g_autofree char *folder = g_dir_make_tmp ("footpace-XXXXXX", NULL), *old = g_build_filename (folder, "old.xml", NULL);
  g_autofree char *new = g_build_filename (folder, "new.xml", NULL);

  fp_ask_files_of (answer, old);
  g_assert_true (g_file_set_contents (old, EDITION ("diocese", "2019", "0.5"), -1, NULL));
  gtk_widget_activate_action (window, "norms.add", NULL);
  WAIT_FOR (norms_of (document)->n_own == 1);
  g_assert_cmpstr (gtk_label_get_text (GTK_LABEL (state)), ==, "");

  fp_ask_files_of (answer, new);
  g_assert_true (g_file_set_contents (new, EDITION ("diocese", "2026", "20"), -1, NULL));
  gtk_widget_activate_action (window, "norms.add", NULL);
  WAIT_FOR (*gtk_label_get_text (GTK_LABEL (state)) != '\0');
  g_assert_cmpstr (gtk_label_get_text (GTK_LABEL (state)), ==,
                   "“Of the diocese”, edition 2019 from “old.xml”, is replaced by edition 2026 from “new.xml”. Undo brings it back.");
  g_assert_cmpuint (norms_of (document)->n_own, ==, 1);
  g_assert_cmpstr (norms_of (document)->own[0].name, ==, "new.xml");
  fp_document_undo (document);
  g_assert_cmpuint (norms_of (document)->n_own, ==, 1);
  g_assert_cmpstr (norms_of (document)->own[0].name, ==, "old.xml");

  g_assert_true (g_file_set_contents (new, EDITION ("rail", "2026", "20"), -1, NULL));
  gtk_widget_activate_action (window, "norms.add", NULL);
  WAIT_FOR (strstr (gtk_label_get_text (GTK_LABEL (state)), "there is a book “rail” already") != NULL);
  g_assert_cmpuint (norms_of (document)->n_own, ==, 1);

  fp_ask_files_of (NULL, NULL);
  gtk_window_destroy (GTK_WINDOW (window));
  g_unlink (old);
  g_unlink (new);
  g_rmdir (folder);
}

int
main (int argc, char **argv)
{
  gtk_test_init (&argc, &argv, NULL);
  g_test_add_func ("/norms-window/followed", test_followed);
  g_test_add_func ("/norms-window/held", test_held);
  g_test_add_func ("/norms-window/gone-by", test_gone_by);
  g_test_add_func ("/norms-window/own", test_own);
  g_test_add_func ("/norms-window/replaced", test_replaced);
  return g_test_run ();
}
