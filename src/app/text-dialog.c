/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "text-dialog.h"

#include "compat-4-8.h"

void
fp_close_on_escape (GtkWindow *dialog)
{
  GtkEventController *controller = gtk_shortcut_controller_new ();
  GtkShortcut *shortcut = gtk_shortcut_new (gtk_keyval_trigger_new (GDK_KEY_Escape, 0),
                                            gtk_named_action_new ("window.close"));

  gtk_shortcut_controller_add_shortcut (GTK_SHORTCUT_CONTROLLER (controller), shortcut);
  gtk_widget_add_controller (GTK_WIDGET (dialog), controller);
}

typedef struct
{
  GtkWidget     *window, *name, *note, *error;
  FpTextAnswer   answer;
  gpointer       data;
  GDestroyNotify data_free;
} Dialog;

static void
dialog_free (gpointer data)
{
  Dialog *d = data;

  if (d->data_free != NULL)
    d->data_free (d->data);
  g_free (d);
}

static void
on_accept (Dialog *d)
{
  GtkTextBuffer *buffer = gtk_text_view_get_buffer (GTK_TEXT_VIEW (d->note));
  GtkTextIter from, to;
  g_autofree char *note = NULL, *wrong = NULL;

  gtk_text_buffer_get_bounds (buffer, &from, &to);
  note = gtk_text_buffer_get_text (buffer, &from, &to, FALSE);
  wrong = d->answer (gtk_editable_get_text (GTK_EDITABLE (d->name)), note, d->data);
  if (wrong == NULL)
    {
      gtk_window_destroy (GTK_WINDOW (d->window));
      return;
    }
  gtk_label_set_text (GTK_LABEL (d->error), wrong);
  gtk_widget_show (d->error);
}

void
fp_text_dialog_show (GtkWindow *parent, const char *title, const char *accept, const char *name, const char *note,
                     FpTextAnswer answer, gpointer data, GDestroyNotify data_free)
{
  g_autoptr (GtkBuilder) builder = gtk_builder_new_from_resource ("/org/footpace/Footpace/text-dialog.ui");
  GtkWidget *button = GTK_WIDGET (gtk_builder_get_object (builder, "accept"));
  Dialog *d = g_new (Dialog, 1);

  *d = (Dialog) {
    .window = GTK_WIDGET (gtk_builder_get_object (builder, "window")),
    .name = GTK_WIDGET (gtk_builder_get_object (builder, "name")),
    .note = GTK_WIDGET (gtk_builder_get_object (builder, "note")),
    .error = GTK_WIDGET (gtk_builder_get_object (builder, "error")),
    .answer = answer, .data = data, .data_free = data_free
  };
  gtk_window_set_title (GTK_WINDOW (d->window), title);
  gtk_window_set_transient_for (GTK_WINDOW (d->window), parent);
  gtk_button_set_label (GTK_BUTTON (button), accept);
  gtk_editable_set_text (GTK_EDITABLE (d->name), name);
  gtk_text_buffer_set_text (gtk_text_view_get_buffer (GTK_TEXT_VIEW (d->note)), note, -1);
  g_object_set_data_full (G_OBJECT (d->window), "dialog", d, dialog_free);
  g_signal_connect_swapped (button, "clicked", G_CALLBACK (on_accept), d);
  g_signal_connect_swapped (d->name, "activate", G_CALLBACK (on_accept), d);
  g_signal_connect_swapped (gtk_builder_get_object (builder, "cancel"), "clicked",
                            G_CALLBACK (gtk_window_destroy), d->window);
  fp_close_on_escape (GTK_WINDOW (d->window));
  fp_name_buttons (d->window);
  gtk_window_present (GTK_WINDOW (d->window));
  gtk_widget_grab_focus (d->name);
}
