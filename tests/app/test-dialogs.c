/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The window's dialogs: what was typed in them stays, and what they offer can be had. */
#include "new-church-dialog.h"
#include "waiting.h"
#include "widget-help.h"

#include <string.h>

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

/* What the builder made under that id; NULL. */
static GtkWidget *
find_called (GtkWidget *top, const char *id)
{
  if (g_strcmp0 (gtk_buildable_get_buildable_id (GTK_BUILDABLE (top)), id) == 0)
    return top;
  for (GtkWidget *w = gtk_widget_get_first_child (top); w != NULL; w = gtk_widget_get_next_sibling (w))
    {
      GtkWidget *found = find_called (w, id);

      if (found != NULL)
        return found;
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
  return gtk_editable_get_text (GTK_EDITABLE (find_called (dialog, id)));
}

static void
fill_new_church (GtkWidget *dialog)
{
  gtk_editable_set_text (GTK_EDITABLE (find_called (dialog, "title")), "Saint Brendan");
  gtk_editable_set_text (GTK_EDITABLE (find_called (dialog, "nave-width")), "11350");
  gtk_editable_set_text (GTK_EDITABLE (find_called (dialog, "wall-height")), "as high as it is");
  gtk_drop_down_set_selected (GTK_DROP_DOWN (find_called (dialog, "shape")), 2);
}

static void
check_new_church_filled (GtkWidget *dialog)
{
  g_assert_cmpstr (text_of (dialog, "title"), ==, "Saint Brendan");
  g_assert_cmpstr (text_of (dialog, "nave-width"), ==, "11350");
  g_assert_cmpstr (text_of (dialog, "wall-height"), ==, "as high as it is");
  g_assert_cmpuint (gtk_drop_down_get_selected (GTK_DROP_DOWN (find_called (dialog, "shape"))), ==, 2);
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
  g_signal_emit_by_name (find_called (dialog, "cancel"), "clicked");
  WAIT_FOR (find_window ("New Project") == NULL);
  dialog = open_new_church (&made);
  check_new_church_filled (dialog);
  g_assert_null (made);
  gtk_window_destroy (GTK_WINDOW (dialog));
}

/* What was made is done with: the next one begins afresh. */
static void
test_new_church_begins_afresh (void)
{
  FpProject *made = NULL;
  GtkWidget *dialog = open_new_church (&made);

  gtk_editable_set_text (GTK_EDITABLE (find_called (dialog, "title")), "Saint Brendan");
  g_signal_emit_by_name (find_called (dialog, "accept"), "clicked");
  g_assert_nonnull (made);
  g_assert_cmpstr (fp_project_brief (made)->title, ==, "Saint Brendan");
  fp_project_unref (made);
  dialog = open_new_church (&made);
  g_assert_cmpstr (text_of (dialog, "title"), ==, "");
  gtk_window_destroy (GTK_WINDOW (dialog));
}

int
main (int argc, char **argv)
{
  gtk_test_init (&argc, &argv, NULL);
  g_test_add_func ("/new-church/stays", test_new_church_stays_filled);
  g_test_add_func ("/new-church/afresh", test_new_church_begins_afresh);
  return g_test_run ();
}
