/* SPDX-License-Identifier: GPL-3.0-or-later */
/* board-keys.c - the board by keyboard: all that the pointer can do */
#include "board-view-private.h"

#define PAN_KEY_MM 10.0

static gboolean
arrow (FpBoardView *self, double right, double up, GdkModifierType state)
{
  double step = (state & GDK_SHIFT_MASK) != 0 ? 100.0 : (state & GDK_ALT_MASK) != 0 ? 1.0 : 10.0;

  if ((state & GDK_CONTROL_MASK) == 0 && fp_board_view_has_tape (self))
    fp_board_view_tape_shift (self, right * step, up * step);
  else if ((state & GDK_CONTROL_MASK) == 0 && self->handle != 0)
    fp_board_view_nudge_handle (self, right * step, up * step);
  else if ((state & GDK_CONTROL_MASK) != 0 || fp_document_chosen (self->document) == NULL)
    fp_board_view_pan_by (self, (FpPoint) { -right * PAN_KEY_MM, -up * PAN_KEY_MM });
  else
    fp_board_view_nudge (self, right * step, up * step);
  return TRUE;
}

static gboolean
escape (FpBoardView *self)
{
  if (fp_board_view_cancel (self) || fp_board_view_tape_escape (self))
    return TRUE;
  if (self->handle != 0)
    {
      fp_board_view_choose_handle (self, 0);
      return TRUE;
    }
  if (fp_document_chosen (self->document) == NULL && !self->marked)
    return FALSE;
  fp_board_view_mark (self, NULL);
  fp_document_choose (self->document, NULL);
  return TRUE;
}

/* Past either end the key goes on to the next widget. */
static gboolean
on_tab (FpBoardView *self, gboolean backward)
{
  return (self->handle != 0 && fp_board_view_next_handle (self, backward)) || fp_board_view_choose_next (self, backward);
}

static gboolean
with_control (FpBoardView *self, guint key)
{
  if (key != GDK_KEY_a && key != GDK_KEY_A)
    return FALSE;
  fp_board_view_choose_all (self);
  return TRUE;
}

/* One view alone; its key again leads back to all three. */
static void
show_only (FpBoardView *self, FpViewId view)
{
  fp_board_view_show_only (self, fp_board_view_only (self) == (int) view ? -1 : (int) view);
}

static gboolean
plain_key (FpBoardView *self, guint key)
{
  switch (key)
    {
    case GDK_KEY_plus:
    case GDK_KEY_equal:
    case GDK_KEY_KP_Add:
      fp_board_view_zoom (self, 1.25);
      return TRUE;
    case GDK_KEY_minus:
    case GDK_KEY_KP_Subtract:
      fp_board_view_zoom (self, 0.8);
      return TRUE;
    case GDK_KEY_1:
    case GDK_KEY_KP_1:
      show_only (self, FP_VIEW_ELEVATION);
      return TRUE;
    case GDK_KEY_2:
    case GDK_KEY_KP_2:
      show_only (self, FP_VIEW_SECTION);
      return TRUE;
    case GDK_KEY_3:
    case GDK_KEY_KP_3:
      show_only (self, FP_VIEW_PLAN);
      return TRUE;
    case GDK_KEY_4:
    case GDK_KEY_KP_4:
      fp_board_view_show_only (self, -1);
      return TRUE;
    case GDK_KEY_0:
    case GDK_KEY_KP_0:
      fp_board_view_frame (self, FALSE);
      return TRUE;
    case GDK_KEY_9:
    case GDK_KEY_KP_9:
      fp_board_view_frame (self, TRUE);
      return TRUE;
    case GDK_KEY_t:
    case GDK_KEY_T:
      fp_board_view_set_tape (self, !fp_board_view_has_tape (self));
      return TRUE;
    case GDK_KEY_v:
    case GDK_KEY_V:
      fp_board_view_tape_carry (self);
      return fp_board_view_has_tape (self);
    case GDK_KEY_d:
    case GDK_KEY_D:
      return fp_board_view_next_figure (self);
    case GDK_KEY_Return:
    case GDK_KEY_KP_Enter:
      if (!fp_board_view_has_tape (self))
        return fp_board_view_has_handles (self) && fp_board_view_next_handle (self, FALSE);
      fp_board_view_tape_enter (self);
      return TRUE;
    case GDK_KEY_Insert:
    case GDK_KEY_KP_Insert:
      return fp_board_view_insert_corner (self);
    case GDK_KEY_Delete:
    case GDK_KEY_KP_Delete:
    case GDK_KEY_BackSpace:
      if (!fp_board_view_remove_corner (self))
        fp_board_view_remove_chosen (self);
      return TRUE;
    default:
      return FALSE;
    }
}

static gboolean
on_key (GtkEventControllerKey *keys, guint key, guint code, GdkModifierType state, FpBoardView *self)
{
  (void) keys, (void) code;
  if (self->document == NULL || self->typing != NULL)
    return FALSE;
  if ((state & GDK_CONTROL_MASK) == 0 && fp_board_view_type_travel (self, gdk_keyval_to_unicode (key)))
    return TRUE;
  switch (key)
    {
    case GDK_KEY_Escape: return escape (self);
    case GDK_KEY_Left:   return arrow (self, -1.0, 0.0, state);
    case GDK_KEY_Right:  return arrow (self, 1.0, 0.0, state);
    case GDK_KEY_Up:     return arrow (self, 0.0, 1.0, state);
    case GDK_KEY_Down:   return arrow (self, 0.0, -1.0, state);
    case GDK_KEY_Tab:    return (state & GDK_CONTROL_MASK) == 0 && on_tab (self, (state & GDK_SHIFT_MASK) != 0);
    case GDK_KEY_ISO_Left_Tab: return (state & GDK_CONTROL_MASK) == 0 && on_tab (self, TRUE);
    case GDK_KEY_space:
      self->space = TRUE;
      fp_board_view_hover (self);
      return TRUE;
    default:
      if ((state & (GDK_CONTROL_MASK | GDK_ALT_MASK | GDK_SHIFT_MASK)) == GDK_CONTROL_MASK)
        return with_control (self, key);
      return (state & (GDK_CONTROL_MASK | GDK_ALT_MASK)) == 0 && plain_key (self, key);
    }
}

static void
on_key_released (GtkEventControllerKey *keys, guint key, guint code, GdkModifierType state, FpBoardView *self)
{
  (void) keys, (void) code, (void) state;
  if (key != GDK_KEY_space)
    return;
  self->space = FALSE;
  if (self->document != NULL)
    fp_board_view_hover (self);
}

static void
on_focus_leave (GtkEventControllerFocus *focus, FpBoardView *self)
{
  (void) focus;
  self->space = FALSE;
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

static void
on_focus_enter (GtkEventControllerFocus *focus, FpBoardView *self)
{
  (void) focus;
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

void
fp_board_view_add_keys (FpBoardView *self)
{
  GtkEventController *keys = gtk_event_controller_key_new ();
  GtkEventController *focus = gtk_event_controller_focus_new ();

  g_signal_connect (keys, "key-pressed", G_CALLBACK (on_key), self);
  g_signal_connect (keys, "key-released", G_CALLBACK (on_key_released), self);
  gtk_widget_add_controller (GTK_WIDGET (self), keys);
  g_signal_connect (focus, "enter", G_CALLBACK (on_focus_enter), self);
  g_signal_connect (focus, "leave", G_CALLBACK (on_focus_leave), self);
  gtk_widget_add_controller (GTK_WIDGET (self), focus);
}
