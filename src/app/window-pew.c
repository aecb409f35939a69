/* SPDX-License-Identifier: GPL-3.0-or-later */
/* window-pew.c - the view from the pew beside the board: opened from there, and led by clicks on its plan */
#include "window-private.h"

#include "compat-4-8.h"
#include "file-names.h"
#include "pew-strip.h"
#include "pew-window.h"

/* --- its window -------------------------------------------------------------------- */

static void
on_plan_clicked (FpWindow *self, double x, double y)
{
  self->clicked = (FpPoint) { x, y };
  self->was_clicked = TRUE;
  /* Who kneels has his eyes elsewhere than who sits: where Sight is shown its circles are what is clicked. */
  if (fp_window_choose_sight_at (self, (FpPoint) { x, y }))
    {
      fp_window_lead_pew (self, TRUE);
      return;
    }
  if (self->pew != NULL)
    fp_pew_window_choose_at (FP_PEW_WINDOW (self->pew), (FpPoint) { x, y });
  fp_board_view_set_pew_at (FP_BOARD_VIEW (self->board), (FpPoint) { x, y });
}

void
fp_window_lead_pew (FpWindow *self, gboolean anew)
{
  const FpPeople *people;
  FpSightLook look;

  if (self->pew == NULL || !fp_window_sight_look (self, &look, &people))
    return;
  fp_pew_window_look_at (FP_PEW_WINDOW (self->pew), look.moment, look.focus);
  if (look.place >= 0 && (anew || look.place != self->led))
    fp_pew_window_choose_as (FP_PEW_WINDOW (self->pew), people, (guint) look.place);
  self->led = look.place;
}

/* In the empty quarter of the board. */
static void
on_pew_check (FpWindow *self)
{
  fp_board_view_set_pew (FP_BOARD_VIEW (self->board), gtk_check_button_get_active (GTK_CHECK_BUTTON (self->pew_check)));
}

static void
pew (GtkWidget *widget, const char *name, GVariant *parameter)
{
  FpWindow *self = FP_WINDOW (widget);

  (void) name, (void) parameter;
  if (self->pew == NULL)
    {
      self->pew = fp_pew_window_new (GTK_WINDOW (self), self->document, (FpInkChoice) self->remembered.ink);
      g_object_add_weak_pointer (G_OBJECT (self->pew), (gpointer *) &self->pew);
      if (self->was_clicked)
        fp_pew_window_choose_at (FP_PEW_WINDOW (self->pew), self->clicked);
      fp_window_lead_pew (self, TRUE);
    }
  gtk_window_present (GTK_WINDOW (self->pew));
}

/* --- a sheet of them ------------------------------------------------------------- */

typedef struct
{
  const FpProject *project; /* owned */
  FpInkChoice      ink;
  char            *path;
} Order;

static void
order_free (gpointer data)
{
  Order *self = data;

  fp_project_unref (self->project);
  g_free (self->path);
  g_free (self);
}

static void
write_strip (GTask *task, gpointer source, gpointer data, GCancellable *cancel)
{
  const Order *order = data;
  GError *error = NULL;

  (void) source, (void) cancel;
  if (fp_pew_strip_write (order->project, order->ink, order->path, &error))
    g_task_return_boolean (task, TRUE);
  else
    g_task_return_error (task, error);
}

static void
on_strip_written (GObject *source, GAsyncResult *result, gpointer data)
{
  FpWindow *self = FP_WINDOW (source);
  const Order *order = g_task_get_task_data (G_TASK (result));
  g_autoptr (GError) error = NULL;
  g_autofree char *said = g_strdup_printf ("Written: %s", order->path);

  (void) data;
  if (g_task_propagate_boolean (G_TASK (result), &error))
    fp_window_notice_file (self, said, order->path);
  else
    fp_window_notice (self, error->message, TRUE);
}

static void
on_strip_file (GFile *file, gpointer data)
{
  g_autoptr (FpWindow) self = data;
  g_autofree char *chosen = file != NULL ? g_file_get_path (file) : NULL, *path = NULL;
  g_autoptr (GError) error = NULL;
  g_autoptr (GTask) task = NULL;
  Order *order;

  if (chosen == NULL || self->document == NULL)
    return;
  path = fp_file_with_suffix (chosen, "pdf", &error);
  if (path == NULL)
    {
      fp_window_notice (self, error->message, TRUE);
      return;
    }
  order = g_new (Order, 1);
  *order = (Order) { fp_project_ref (fp_document_project (self->document)), (FpInkChoice) self->remembered.ink,
                     g_steal_pointer (&path) };
  task = g_task_new (self, NULL, on_strip_written, NULL);
  g_task_set_task_data (task, order, order_free);
  g_task_run_in_thread (task, write_strip);
}

static void
sheet_pews (GtkWidget *widget, const char *action, GVariant *parameter)
{
  FpWindow *self = FP_WINDOW (widget);
  const char *path = fp_document_path (self->document);
  g_autofree char *title = fp_document_name (self->document), *clean = fp_file_clean_name (title);
  g_autofree char *name = g_strdup_printf ("%s, views from the pew.pdf", clean);
  g_autoptr (GFile) file = path != NULL ? g_file_new_for_path (path) : NULL;
  g_autoptr (GFile) folder = file != NULL ? g_file_get_parent (file) : NULL;
  const FpFileQuestion question = {
    .title = "Export Views from the Pew", .accept = "_Export", .save = TRUE, .name = name, .folder = folder,
    .filter_name = "PDF", .filter_suffix = "pdf",
  };

  (void) action, (void) parameter;
  fp_ask_file (GTK_WINDOW (self), &question, on_strip_file, g_object_ref (self));
}

/* --- the window of the project ------------------------------------------------------- */

void
fp_window_add_pew (FpWindow *self)
{
  g_signal_connect_swapped (self->board, "plan-clicked", G_CALLBACK (on_plan_clicked), self);
}

void
fp_window_class_add_pew_action (GtkWidgetClass *c)
{
  gtk_widget_class_bind_template_child (c, FpWindow, pew_check);
  gtk_widget_class_bind_template_callback (c, on_pew_check);
  gtk_widget_class_install_action (c, "win.pew", NULL, pew);
  gtk_widget_class_install_action (c, "win.sheet-pews", NULL, sheet_pews);
}
