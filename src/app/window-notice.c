/* SPDX-License-Identifier: GPL-3.0-or-later */
/* window-notice.c - messages that lie over the page */
#include "window-private.h"

#include "amiss.h"

#define NOTICE_SECONDS 6

gboolean
fp_window_put_notice_away (FpWindow *self)
{
  g_clear_handle_id (&self->notice_over, g_source_remove);
  g_clear_pointer (&self->notice_path, g_free);
  if (self->notice == NULL || !gtk_revealer_get_reveal_child (GTK_REVEALER (self->notice)))
    return FALSE;
  gtk_revealer_set_reveal_child (GTK_REVEALER (self->notice), FALSE);
  return TRUE;
}

/* What cannot be seen must not catch clicks, nor be reached by Tab. */
static void
on_notice_revealed (FpWindow *self)
{
  GtkRevealer *notice = GTK_REVEALER (self->notice);

  if (!gtk_revealer_get_child_revealed (notice) && !gtk_revealer_get_reveal_child (notice))
    gtk_widget_hide (self->notice);
}

/* Who is reading it, or is about to press its button, is not hurried. */
static gboolean
is_being_read (FpWindow *self)
{
  GtkWidget *focus = gtk_root_get_focus (GTK_ROOT (self));

  return (gtk_widget_get_state_flags (self->notice_box) & GTK_STATE_FLAG_PRELIGHT) != 0
         || (focus != NULL && gtk_widget_is_ancestor (focus, self->notice_box));
}

static gboolean
on_notice_over (gpointer data)
{
  FpWindow *self = data;

  if (is_being_read (self))
    return G_SOURCE_CONTINUE;
  self->notice_over = 0;
  fp_window_put_notice_away (self);
  return G_SOURCE_REMOVE;
}

static void
say (FpWindow *self, const char *text, const char *icon)
{
  gtk_label_set_text (GTK_LABEL (self->notice_text), text);
  gtk_image_set_from_icon_name (GTK_IMAGE (self->notice_icon), icon);
  /* The box is an alert: a screen reader speaks its name as it appears. */
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->notice_box), GTK_ACCESSIBLE_PROPERTY_LABEL, text, -1);
  gtk_widget_show (self->notice);
  gtk_revealer_set_reveal_child (GTK_REVEALER (self->notice), TRUE);
}

void
fp_window_notice (FpWindow *self, const char *text, gboolean wrong)
{
  fp_window_put_notice_away (self);
  gtk_widget_hide (self->notice_folder);
  say (self, text, wrong ? "dialog-warning-symbolic" : "dialog-information-symbolic");
  /* What went wrong stays until it was read. */
  if (!wrong)
    self->notice_over = g_timeout_add_seconds (NOTICE_SECONDS, on_notice_over, self);
}

void
fp_window_tell_amiss (FpWindow *self, const GError *error)
{
  g_autofree char *said = fp_amiss_words (fp_document_scene (self->document), error->message);

  fp_window_notice (self, said, TRUE);
}

void
fp_window_notice_file (FpWindow *self, const char *text, const char *path)
{
  fp_window_notice (self, text, FALSE);
  self->notice_path = g_strdup (path);
  gtk_widget_show (self->notice_folder);
}

static void
on_folder_shown (GObject *window, GAsyncResult *result, gpointer data)
{
  g_autoptr (GError) error = NULL;

  (void) data;
  if (!gtk_show_uri_full_finish (GTK_WINDOW (window), result, &error))
    fp_window_notice (FP_WINDOW (window), error->message, TRUE);
}

static void
on_notice_folder (FpWindow *self)
{
  g_autofree char *folder = g_path_get_dirname (self->notice_path);
  g_autofree char *uri = g_filename_to_uri (folder, NULL, NULL);

  fp_window_put_notice_away (self);
  if (uri != NULL)
    gtk_show_uri_full (GTK_WINDOW (self), uri, GDK_CURRENT_TIME, NULL, on_folder_shown, NULL);
}

static void
on_notice_close (FpWindow *self)
{
  fp_window_put_notice_away (self);
}

static void
on_board_notice (FpBoardView *board, const char *text, FpWindow *self)
{
  (void) board;
  fp_window_notice (self, text, TRUE);
}

void
fp_window_class_bind_notice (GtkWidgetClass *widget_class)
{
  gtk_widget_class_bind_template_callback (widget_class, on_notice_close);
  gtk_widget_class_bind_template_callback (widget_class, on_notice_folder);
  gtk_widget_class_bind_template_callback (widget_class, on_notice_revealed);
  gtk_widget_class_bind_template_callback (widget_class, on_board_notice);
}
