/* SPDX-License-Identifier: GPL-3.0-or-later */
/* window-begin.c - the first frame: the drawing is what was asked for, so it waits for nothing else */
#include "window-private.h"

#include "recent.h"

static void
when_painted (FpWindow *self, GCallback then)
{
  self->painted = g_signal_connect_swapped (self->first_clock, "after-paint", then, self);
}

/* --- after the second frame ------------------------------------------------ */

static void
on_all_painted (FpWindow *self)
{
  fp_window_end_beginning (self);
  fp_document_begin_checks (self->document);
}

/* --- after the first ------------------------------------------------------- */

static gboolean
show_rest (gpointer data)
{
  FpWindow *self = data;

  self->rest = 0;
  fp_window_set_beside (self);
  when_painted (self, G_CALLBACK (on_all_painted));
  gtk_widget_queue_draw (GTK_WIDGET (self));
  fp_recent_remember (fp_document_path (self->document));
  fp_window_offer_left (self);
  return G_SOURCE_REMOVE;
}

/* A church that takes longer to draw than the toolkit to start is waited for: all else would only hold it up. */
static void
on_painted (FpWindow *self)
{
  if (!fp_board_view_is_current (FP_BOARD_VIEW (self->board)))
    return;
  g_clear_signal_handler (&self->painted, self->first_clock);
  self->rest = g_idle_add_full (G_PRIORITY_DEFAULT, show_rest, self, NULL);
}

/* --- the beginning --------------------------------------------------------- */

void
fp_window_end_beginning (FpWindow *self)
{
  /* The clock of a window that is closed has let go of all that waits for it. */
  if (self->first_clock != NULL && g_signal_handler_is_connected (self->first_clock, self->painted))
    g_signal_handler_disconnect (self->first_clock, self->painted);
  self->painted = 0;
  g_clear_object (&self->first_clock);
  g_clear_handle_id (&self->rest, g_source_remove);
}

void
fp_window_begin (FpWindow *self, FpAhead *ahead)
{
  g_autoptr (GError) error = NULL;
  FpDraft *draft;
  g_autoptr (FpDocument) document = fp_ahead_end (ahead, &draft, &error);

  if (document == NULL)
    {
      gtk_window_present (GTK_WINDOW (self));
      fp_window_notice (self, error->message, TRUE);
      fp_window_offer_left (self);
      return;
    }
  fp_window_set_board (self, document, draft);
  gtk_window_present (GTK_WINDOW (self));
  self->first_clock = g_object_ref (gtk_widget_get_frame_clock (GTK_WIDGET (self)));
  when_painted (self, G_CALLBACK (on_painted));
}
