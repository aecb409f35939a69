/* SPDX-License-Identifier: GPL-3.0-or-later */
/* window-file.c - opening, saving, closing, and the files of late */
#include "window-private.h"

#include "compat-4-8.h"
#include "file-names.h"
#include "new-church-dialog.h"
#include "recent.h"
#include "samples.h"
#include "start-page.h"

#include "footpace/store.h"

/* --- files of late -------------------------------------------------------- */

static void
on_recent (GtkListBox *list, GtkListBoxRow *row, FpWindow *self)
{
  g_autofree char *path = g_strdup (fp_recent_path (row));
  GtkWidget *popover = gtk_widget_get_ancestor (GTK_WIDGET (list), GTK_TYPE_POPOVER);

  if (popover != NULL)
    gtk_popover_popdown (GTK_POPOVER (popover));
  fp_window_open (self, path);
}

static void
on_recent_shown (FpWindow *self)
{
  fp_recent_fill (self->recent_list);
}

static void
fill_start (FpWindow *self)
{
  fp_start_page_fill (FP_START_PAGE (gtk_widget_get_first_child (self->start)));
}

/* Who opens a file from outside never sees the page: it is made when it is first shown. */
static void
on_start_shown (FpWindow *self)
{
  GtkWidget *page = gtk_widget_get_first_child (self->start);

  if (page == NULL)
    {
      page = fp_start_page_new ();
      gtk_box_append (GTK_BOX (self->start), page);
      g_signal_connect (fp_start_page_list (FP_START_PAGE (page)), "row-activated", G_CALLBACK (on_recent), self);
      g_signal_connect_object (gtk_recent_manager_get_default (), "changed", G_CALLBACK (fill_start), self, G_CONNECT_SWAPPED);
    }
  fill_start (self);
}

void
fp_window_add_recent (FpWindow *self)
{
  g_signal_connect (self->recent_list, "row-activated", G_CALLBACK (on_recent), self);
}

/* --- opening -------------------------------------------------------------- */

FpWindow *
fp_window_for_another (FpWindow *self)
{
  GtkWidget *window;

  if (self->document == NULL)
    return self;
  window = fp_window_new (gtk_window_get_application (GTK_WINDOW (self)));
  gtk_window_present (GTK_WINDOW (window));
  return FP_WINDOW (window);
}

static gboolean
has_file (gpointer window, GFile *sought)
{
  FpDocument *document = FP_IS_WINDOW (window) ? fp_window_document (window) : NULL;
  const char *path = document != NULL ? fp_document_path (document) : NULL;
  g_autoptr (GFile) file = path != NULL ? g_file_new_for_path (path) : NULL;

  return file != NULL && g_file_equal (file, sought);
}

FpWindow *
fp_window_with_file (const char *path)
{
  g_autoptr (GFile) sought = g_file_new_for_path (path);
  GListModel *windows = gtk_window_get_toplevels ();

  for (guint i = 0; i < g_list_model_get_n_items (windows); i++)
    {
      g_autoptr (GObject) window = g_list_model_get_item (windows, i);

      if (has_file (window, sought))
        return FP_WINDOW (window);
    }
  return NULL;
}

void
fp_window_open (FpWindow *self, const char *path)
{
  FpWindow *there = fp_window_with_file (path);
  g_autoptr (GError) error = NULL;
  g_autoptr (FpDocument) document = NULL;

  if (there != NULL)
    {
      gtk_window_present (GTK_WINDOW (there));
      return;
    }
  document = fp_document_load (path, &error);
  if (document == NULL)
    {
      fp_window_notice (self, error->message, TRUE);
      return;
    }
  fp_recent_remember (path);
  fp_window_set_document (fp_window_for_another (self), document);
}

static void
on_open_file (GFile *file, gpointer data)
{
  g_autoptr (FpWindow) self = data;
  g_autofree char *path = file != NULL ? g_file_get_path (file) : NULL;

  if (path != NULL)
    fp_window_open (self, path);
  else if (file != NULL)
    fp_window_notice (self, "Projects can only be opened from files on this computer.", TRUE);
}

static GFile *
folder_of (FpWindow *self)
{
  const char *path = self->document != NULL ? fp_document_path (self->document) : NULL;
  g_autofree char *dir = path != NULL ? g_path_get_dirname (path) : NULL;

  return dir != NULL ? g_file_new_for_path (dir) : NULL;
}

static void
open_file (GtkWidget *widget, const char *name, GVariant *parameter)
{
  FpWindow *self = FP_WINDOW (widget);
  g_autoptr (GFile) folder = folder_of (self);
  FpFileQuestion question = {
    .title = "Open Project", .accept = "_Open", .folder = folder,
    .filter_name = "Footpace projects", .filter_suffix = "footpace"
  };

  (void) name, (void) parameter;
  fp_ask_file (GTK_WINDOW (self), &question, on_open_file, g_object_ref (self));
}

/* A sample is opened as a new project, so that nobody saves over it unawares. */
static void
open_sample (GtkWidget *widget, const char *name, GVariant *parameter)
{
  FpWindow *self = FP_WINDOW (widget);
  g_autofree char *path = fp_sample_path ("parish.footpace");
  g_autoptr (GError) error = NULL;
  g_autoptr (FpProject) project = fp_store_load (path, &error);
  g_autoptr (FpDocument) document = NULL;

  (void) name, (void) parameter;
  if (project == NULL)
    {
      fp_window_notice (self, error->message, TRUE);
      return;
    }
  document = fp_document_new (project, NULL, TRUE);
  fp_window_set_document (fp_window_for_another (self), document);
}

static void
on_new_project (FpProject *project, gpointer data)
{
  g_autoptr (FpDocument) document = fp_document_new (project, NULL, FALSE);

  fp_window_set_document (fp_window_for_another (FP_WINDOW (data)), document);
}

static void
new_project (GtkWidget *widget, const char *name, GVariant *parameter)
{
  (void) name, (void) parameter;
  fp_new_church_dialog_show (GTK_WINDOW (widget), on_new_project, widget);
}

/* --- saving --------------------------------------------------------------- */

static gboolean
save_to (FpWindow *self, const char *path)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *text = NULL;

  if (fp_document_save (self->document, path, &error))
    {
      fp_recent_remember (path);
      return TRUE;
    }
  if (g_error_matches (error, FP_ERROR, FP_ERROR_CHANGED))
    {
      fp_window_ask_changed (self, TRUE);
      return FALSE;
    }
  text = g_strdup_printf ("Not saved: %s", error->message);
  fp_window_notice (self, text, TRUE);
  return FALSE;
}

typedef struct
{
  FpWindow *window;
  gboolean  then_close;
} SaveAs;

static void
close_for_good (FpWindow *self)
{
  self->closing = TRUE;
  gtk_window_close (GTK_WINDOW (self));
}

static void
on_save_file (GFile *file, gpointer data)
{
  SaveAs *ask = data;
  g_autoptr (FpWindow) self = ask->window;
  gboolean then_close = ask->then_close;
  g_autofree char *chosen = file != NULL ? g_file_get_path (file) : NULL, *path = NULL;
  g_autoptr (GError) error = NULL;

  g_free (ask);
  if (file != NULL && chosen == NULL)
    fp_window_notice (self, "Projects can only be saved to files on this computer.", TRUE);
  if (chosen == NULL)
    return;
  path = fp_file_with_suffix (chosen, "footpace", &error);
  if (path == NULL)
    fp_window_notice (self, error->message, TRUE);
  else if (save_to (self, path) && then_close)
    close_for_good (self);
}

static char *
proposed_name (FpWindow *self)
{
  g_autofree char *name = fp_document_name (self->document), *clean = fp_file_clean_name (name);

  return g_strconcat (clean, ".footpace", NULL);
}

static void
ask_where_to_save (FpWindow *self, gboolean then_close)
{
  g_autoptr (GFile) folder = folder_of (self);
  g_autofree char *name = proposed_name (self);
  FpFileQuestion question = {
    .title = "Save Project", .accept = "_Save", .save = TRUE, .name = name, .folder = folder,
    .filter_name = "Footpace projects", .filter_suffix = "footpace"
  };
  SaveAs *ask = g_new (SaveAs, 1);

  *ask = (SaveAs) { g_object_ref (self), then_close };
  fp_ask_file (GTK_WINDOW (self), &question, on_save_file, ask);
}

static void
save_or_ask (FpWindow *self, gboolean then_close)
{
  const char *path = fp_document_path (self->document);

  fp_board_view_cancel (FP_BOARD_VIEW (self->board));
  if (path == NULL)
    ask_where_to_save (self, then_close);
  else if (save_to (self, path) && then_close)
    close_for_good (self);
}

static void
save (GtkWidget *widget, const char *name, GVariant *parameter)
{
  (void) name, (void) parameter;
  save_or_ask (FP_WINDOW (widget), FALSE);
}

void
fp_window_save_as (FpWindow *self)
{
  ask_where_to_save (self, FALSE);
}

static void
save_as (GtkWidget *widget, const char *name, GVariant *parameter)
{
  (void) name, (void) parameter;
  ask_where_to_save (FP_WINDOW (widget), FALSE);
}

/* --- closing -------------------------------------------------------------- */

enum { CANCEL, DISCARD, SAVE };

static void
on_close_answer (int choice, gpointer data)
{
  g_autoptr (FpWindow) self = data;

  if (choice == SAVE)
    save_or_ask (self, TRUE);
  else if (choice == DISCARD)
    close_for_good (self);
}

gboolean
fp_window_may_close (FpWindow *self)
{
  static const char *const buttons[] = { "_Cancel", "Close _Without Saving", "_Save", NULL };
  g_autofree char *heading = NULL, *name = NULL;

  if (self->closing || self->document == NULL || !fp_document_is_modified (self->document))
    return TRUE;
  name = fp_document_name (self->document);
  heading = g_strdup_printf ("Save changes to “%s”?", name);
  fp_ask (GTK_WINDOW (self), heading, "What was changed since it was last saved is lost otherwise.", buttons, DISCARD,
          on_close_answer, g_object_ref (self));
  return FALSE;
}

void
fp_window_class_add_file_actions (GtkWidgetClass *c)
{
  gtk_widget_class_bind_template_child (c, FpWindow, start);
  gtk_widget_class_bind_template_child (c, FpWindow, recent_list);
  gtk_widget_class_bind_template_callback (c, on_recent_shown);
  gtk_widget_class_bind_template_callback (c, on_start_shown);
  gtk_widget_class_install_action (c, "win.new", NULL, new_project);
  gtk_widget_class_install_action (c, "win.open", NULL, open_file);
  gtk_widget_class_install_action (c, "win.open-sample", NULL, open_sample);
  gtk_widget_class_install_action (c, "win.save", NULL, save);
  gtk_widget_class_install_action (c, "win.save-as", NULL, save_as);
}
