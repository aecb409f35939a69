/* SPDX-License-Identifier: GPL-3.0-or-later */
/* board-input.c - the pointer on the board: thin, what it means is decided by board-tool.c */
#include "board-view-private.h"

#include "compat-4-8.h"

#include "things.h"
#include "typing.h"

#include "footpace/retype.h"

#include <math.h>

#define PICK_PX      4.0
#define THRESHOLD_PX 5.0
#define WHEEL_STEP   1.15
#define PAN_WHEEL_MM 10.0

/* --- what lies under the pointer ------------------------------------------ */

/* A part of the building is taken hold of only when it was chosen before: floors and walls lie under
 * most of the paper, and who wants to shift the paper must not shift the church. */
static gboolean
may_be_moved (FpBoardView *self, const FpPlaced *placed)
{
  guint flags = fp_item_kind (placed->item)->flags;

  if (placed->ghost)
    return FALSE;
  return (flags & FP_KIND_SURVEY) == 0
         || fp_document_is_chosen (self->document, fp_item_id (placed->item));
}

static void
hit_thing (FpBoardView *self, FpToolHit *hit, const FpPlaced *placed, int view)
{
  hit->item = g_intern_string (fp_item_id (placed->item));
  hit->view = view;
  hit->scale = view >= 0 ? self->layout.view[view].scale : self->scale;
  hit->turned = view >= 0 && fp_board_view_is_turned (self, (FpViewId) view);
  hit->movable = may_be_moved (self, placed);
}

/* The lines of a dimension run across the drawing, and those of what is removed across what comes in its place; there,
 * what they cross is meant.  The figure is always meant, and on a footpace, which covers much, what was there before. */
static gboolean
crosses_a_face (FpBoardView *self, const FpMark *mark, FpPoint paper)
{
  const FpPlaced *face;
  int view;

  if (mark->type == FP_MARK_TEXT || (mark->dimension == 0 && mark->standing != FP_STANDING_REMOVED))
    return FALSE;
  face = fp_board_view_face_at (self, paper, &view);
  return face != NULL && (mark->dimension != 0 || fp_item_kind (face->item)->role != FP_ROLE_FOOTPACE);
}

/* A dimension that shows no single parameter, or a level: what it measures can be typed over all the same. */
static guint
measured_at (FpBoardView *self, const FpMark *mark, const FpPlaced *placed)
{
  const FpStretch *m = mark->dimension != 0 ? fp_drawing_stretch (self->drawing, mark->dimension) : NULL;

  return m != NULL && m->sort != FP_STRETCH_PARAM && !placed->ghost ? mark->dimension : 0;
}

FpToolHit
fp_board_view_hit (FpBoardView *self, double x, double y)
{
  FpToolHit hit = { .view = -1 };
  FpPoint paper = fp_board_view_to_paper (self, x, y);
  const FpMark *mark;
  const FpPlaced *placed;
  guint n;
  int i, view;

  fp_board_view_ensure (self);
  if (self->drawing == NULL)
    return hit;
  hit.handle = fp_board_view_handle_at (self, x, y);
  if (hit.handle != 0)
    {
      hit_thing (self, &hit, fp_document_chosen_placed (self->document), FP_VIEW_PLAN);
      return hit;
    }
  if (fp_board_view_hit_section_end (self, paper, &hit))
    return hit;
  i = fp_drawing_pick (self->drawing, paper, PICK_PX / PX_PER_MM);
  mark = i >= 0 ? &fp_drawing_marks (self->drawing, &n)[i] : NULL;
  placed = mark != NULL && !crosses_a_face (self, mark, paper) ? fp_document_placed (self->document, mark->item) : NULL;
  if (placed != NULL)
    {
      hit_thing (self, &hit, placed, mark->view);
      hit.param = fp_typing_param (placed, mark->param, NULL) != NULL && !placed->ghost ? mark->param : NULL;
      hit.dimension = measured_at (self, mark, placed);
      hit.movable = hit.movable && mark->dimension == 0 && mark->standing != FP_STANDING_REMOVED;
      return hit;
    }
  placed = fp_board_view_face_at (self, paper, &view);
  placed = placed != NULL ? fp_document_placed (self->document, fp_item_id (placed->item)) : NULL;
  if (placed != NULL)
    hit_thing (self, &hit, placed, view);
  if (!hit.movable)
    fp_board_view_hit_section_line (self, paper, &hit);
  return hit;
}

static void
update_cursor (FpBoardView *self, const FpToolHit *hit)
{
  const char *name = "default";

  if (self->space || self->tool.state == FP_TOOL_PANNING)
    name = "move";
  else if (fp_board_view_has_tape (self))
    name = "crosshair";
  else if (self->tool.state == FP_TOOL_MOVING)
    name = "grabbing";
  else if (self->tool.state == FP_TOOL_FRAMING)
    name = "crosshair";
  else if (hit->handle != 0)
    name = "crosshair";
  else if (hit->param != NULL || hit->dimension != 0)
    name = "text";
  else if (hit->item != NULL && hit->movable)
    name = "grab";
  else if (hit->item != NULL)
    name = "pointer";
  gtk_widget_set_cursor_from_name (GTK_WIDGET (self), name);
}

static void
hover (FpBoardView *self, const FpToolHit *hit)
{
  update_cursor (self, hit);
  if (g_strcmp0 (self->hover, hit->item) == 0)
    return;
  g_free (self->hover);
  self->hover = g_strdup (hit->item);
  g_clear_pointer (&self->hover_node, gsk_render_node_unref);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

void
fp_board_view_hover (FpBoardView *self)
{
  FpToolHit none = { .view = -1 };
  FpToolHit hit = self->pointer.x >= 0.0 && !fp_board_view_has_tape (self) ? fp_board_view_hit (self, self->pointer.x, self->pointer.y) : none;

  hover (self, &hit);
  fp_board_view_update_readout (self);
}

static gboolean
on_query_tooltip (GtkWidget *widget, int x, int y, gboolean keyboard, GtkTooltip *tooltip, gpointer data)
{
  FpBoardView *self = FP_BOARD_VIEW (widget);
  FpToolHit hit;
  const FpPlaced *placed;
  g_autofree char *text = NULL;

  (void) data;
  if (keyboard || self->document == NULL || self->tool.state != FP_TOOL_IDLE || self->typing != NULL
      || fp_board_view_has_tape (self))
    return FALSE;
  hit = fp_board_view_hit (self, x, y);
  placed = fp_document_placed (self->document, hit.item);
  if (fp_board_view_is_section (hit.item))
    {
      text = fp_board_view_section_words (self, fp_board_view_section_of (hit.item));
      gtk_tooltip_set_text (tooltip, text);
      return TRUE;
    }
  if (placed == NULL || (hit.param == NULL && hit.handle == 0 && hit.dimension == 0
                         && fp_document_is_chosen (self->document, hit.item)))
    return FALSE;
  if (hit.handle != 0)
    text = fp_board_view_handle_tells (self, hit.handle);
  else if (hit.dimension != 0)
    {
      g_autofree char *tells = fp_stretch_tells (fp_drawing_stretch (self->drawing, hit.dimension),
                                                  fp_document_scene (self->document));

      text = g_strdup_printf ("%s. Click to type over it.", tells);
    }
  else if (hit.param != NULL)
    text = g_strdup_printf ("%s: %s. Click to type over it.", fp_item_name (placed->item),
                            fp_typing_param (placed, hit.param, NULL)->label);
  else
    text = g_strdup_printf ("%s, %s", fp_item_name (placed->item),
                            fp_thing_standing (fp_document_scene (self->document), placed));
  gtk_tooltip_set_text (tooltip, text);
  return TRUE;
}

/* --- the pointer ---------------------------------------------------------- */

static FpToolManner
manner_of (GtkEventController *controller)
{
  GdkModifierType state = gtk_event_controller_get_current_event_state (controller);

  /* Some window managers keep Alt and the pointer for themselves. */
  return (FpToolManner) { (state & (GDK_ALT_MASK | GDK_CONTROL_MASK)) != 0, (state & GDK_SHIFT_MASK) != 0 };
}

/* Shift and Ctrl choose besides the others; Shift on paper draws a frame, with Ctrl besides the others. */
static FpToolPress
press_of (FpBoardView *self, GtkEventController *controller, gboolean middle)
{
  GdkModifierType state = gtk_event_controller_get_current_event_state (controller);
  gboolean shift = (state & GDK_SHIFT_MASK) != 0, ctrl = (state & GDK_CONTROL_MASK) != 0;

  return (FpToolPress) { self->space || middle, shift || ctrl, shift, shift && ctrl };
}

/* The tool works in mm of a paper that does not shift while it is panned: that of the widget. */
static FpPoint
steady (FpBoardView *self, double x, double y)
{
  return (FpPoint) { x / PX_PER_MM, (gtk_widget_get_height (GTK_WIDGET (self)) - y) / PX_PER_MM };
}

/* What happens in the popover of a dimension is none of the board's. */
static gboolean
is_elsewhere (FpBoardView *self, GtkEventController *controller)
{
  GdkEvent *event = gtk_event_controller_get_current_event (controller);

  return event != NULL
         && gdk_event_get_surface (event) != gtk_native_get_surface (gtk_widget_get_native (GTK_WIDGET (self)));
}

static void
on_drag_begin (GtkGestureDrag *drag, double x, double y, FpBoardView *self)
{
  guint button = gtk_gesture_single_get_current_button (GTK_GESTURE_SINGLE (drag));
  FpToolHit hit;
  FpToolAnswer answer;

  if (self->document == NULL || is_elsewhere (self, GTK_EVENT_CONTROLLER (drag)))
    {
      gtk_gesture_set_state (GTK_GESTURE (drag), GTK_EVENT_SEQUENCE_DENIED);
      return;
    }
  gtk_widget_grab_focus (GTK_WIDGET (self));
  if (fp_board_view_has_tape (self) && !self->space && button == GDK_BUTTON_PRIMARY)
    {
      self->taping = TRUE;
      fp_board_view_tape_press (self, x, y, manner_of (GTK_EVENT_CONTROLLER (drag)));
      return;
    }
  hit = fp_board_view_hit (self, x, y);
  fp_board_view_hold_measure (self, hit.dimension);
  answer = fp_board_tool_press (&self->tool, steady (self, x, y), &hit,
                                press_of (self, GTK_EVENT_CONTROLLER (drag), button == GDK_BUTTON_MIDDLE));
  fp_board_view_obey (self, &answer);
}

static void
on_drag_update (GtkGestureDrag *drag, double dx, double dy, FpBoardView *self)
{
  FpToolManner manner = manner_of (GTK_EVENT_CONTROLLER (drag));
  double x, y;
  FpPoint at;
  FpToolAnswer answer;

  if (self->document == NULL || !gtk_gesture_drag_get_start_point (drag, &x, &y))
    return;
  self->pointer = (FpPoint) { x + dx, y + dy };
  if (self->taping)
    {
      gtk_gesture_set_state (GTK_GESTURE (drag), GTK_EVENT_SEQUENCE_CLAIMED);
      fp_board_view_tape_motion (self, x + dx, y + dy, manner);
      fp_board_view_update_readout (self);
      return;
    }
  at = steady (self, x + dx, y + dy);
  answer = fp_board_tool_motion (&self->tool, at, manner);
  if (self->tool.state == FP_TOOL_TYPING)
    return;
  if (self->tool.state == FP_TOOL_MOVING || self->tool.state == FP_TOOL_PANNING || self->tool.state == FP_TOOL_FRAMING)
    gtk_gesture_set_state (GTK_GESTURE (drag), GTK_EVENT_SEQUENCE_CLAIMED);
  fp_board_view_obey (self, &answer);
  if (answer.deed == FP_TOOL_BEGIN)
    {
      /* The same motion also moves it: motions are compressed, and there may be no other for a while. */
      answer = fp_board_tool_motion (&self->tool, at, manner);
      fp_board_view_obey (self, &answer);
    }
  update_cursor (self, &self->tool.hit);
  fp_board_view_update_readout (self);
}

static void
on_drag_end (GtkGestureDrag *drag, double dx, double dy, FpBoardView *self)
{
  double x, y;
  FpToolAnswer answer;

  if (self->document == NULL || !gtk_gesture_drag_get_start_point (drag, &x, &y))
    return;
  if (self->taping)
    {
      self->taping = FALSE;
      fp_board_view_tape_release (self, hypot (dx, dy) < THRESHOLD_PX);
      return;
    }
  answer = fp_board_tool_release (&self->tool, steady (self, x + dx, y + dy));
  fp_board_view_obey (self, &answer);
  if (hypot (dx, dy) < THRESHOLD_PX)
    fp_board_view_tell_click (self, x, y);
  fp_board_view_hover (self);
}

/* A grab was broken or another gesture won: what was begun is put back. */
static void
on_drag_cancel (GtkGesture *drag, GdkEventSequence *sequence, FpBoardView *self)
{
  FpToolAnswer answer;
  double x, y;

  (void) sequence;
  if (fp_was_let_go (GTK_EVENT_CONTROLLER (drag)) && gtk_gesture_drag_get_offset (GTK_GESTURE_DRAG (drag), &x, &y))
    {
      on_drag_end (GTK_GESTURE_DRAG (drag), x, y, self);
      return;
    }
  if (self->taping)
    fp_board_view_tape_escape (self);
  self->taping = FALSE;
  if (self->document == NULL || self->tool.state == FP_TOOL_TYPING)
    return;
  answer = fp_board_tool_cancel (&self->tool);
  fp_board_view_obey (self, &answer);
  fp_board_tool_release (&self->tool, self->tool.last);
}

static void
on_motion (GtkEventControllerMotion *motion, double x, double y, FpBoardView *self)
{
  self->pointer = (FpPoint) { x, y };
  if (self->document == NULL || self->tool.state != FP_TOOL_IDLE)
    return;
  if (fp_board_view_has_tape (self))
    fp_board_view_tape_motion (self, x, y, manner_of (GTK_EVENT_CONTROLLER (motion)));
  fp_board_view_hover (self);
}

static void
on_leave (GtkEventControllerMotion *motion, FpBoardView *self)
{
  FpToolHit none = { .view = -1 };

  (void) motion;
  if (self->tool.state != FP_TOOL_IDLE)
    return;
  self->pointer = (FpPoint) { -1.0, -1.0 };
  hover (self, &none);
  fp_board_view_update_readout (self);
}

/* On an edge of what is chosen: another corner. */
static void
on_pressed (GtkGestureClick *click, int n, double x, double y, FpBoardView *self)
{
  if (n != 2 || self->document == NULL || fp_board_view_has_tape (self) || self->held
      || is_elsewhere (self, GTK_EVENT_CONTROLLER (click)))
    return;
  fp_board_view_insert_corner_at (self, x, y);
}

static gboolean
on_scroll (GtkEventControllerScroll *scroll, double dx, double dy, FpBoardView *self)
{
  GdkModifierType state = gtk_event_controller_get_current_event_state (GTK_EVENT_CONTROLLER (scroll));
  double x = self->pointer.x, y = self->pointer.y;

  if (self->document == NULL)
    return FALSE;
  if ((state & GDK_SHIFT_MASK) != 0)
    {
      fp_board_view_pan_by (self, (FpPoint) { -(dx + dy) * PAN_WHEEL_MM, 0.0 });
      return TRUE;
    }
  if (x < 0.0)
    {
      x = gtk_widget_get_width (GTK_WIDGET (self)) / 2.0;
      y = gtk_widget_get_height (GTK_WIDGET (self)) / 2.0;
    }
  fp_board_view_zoom_at (self, pow (WHEEL_STEP, -dy), x, y);
  fp_board_view_hover (self);
  return TRUE;
}

static void
on_pinch_begin (GtkGesture *zoom, GdkEventSequence *sequence, FpBoardView *self)
{
  (void) zoom, (void) sequence;
  self->pinch_scale = 1.0;
}

static void
on_pinch (GtkGestureZoom *zoom, double scale, FpBoardView *self)
{
  double x, y;

  if (self->document == NULL || self->pinch_scale <= 0.0
      || !gtk_gesture_get_bounding_box_center (GTK_GESTURE (zoom), &x, &y))
    return;
  fp_board_view_zoom_at (self, scale / self->pinch_scale, x, y);
  self->pinch_scale = scale;
}

/* --- controllers ---------------------------------------------------------- */

static void
add_drag (FpBoardView *self, guint button)
{
  GtkGesture *drag = gtk_gesture_drag_new ();

  gtk_gesture_single_set_button (GTK_GESTURE_SINGLE (drag), button);
  g_signal_connect (drag, "drag-begin", G_CALLBACK (on_drag_begin), self);
  g_signal_connect (drag, "drag-update", G_CALLBACK (on_drag_update), self);
  g_signal_connect (drag, "drag-end", G_CALLBACK (on_drag_end), self);
  g_signal_connect (drag, "cancel", G_CALLBACK (on_drag_cancel), self);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (drag));
}

static void
add_pinch (FpBoardView *self)
{
  GtkGesture *zoom = gtk_gesture_zoom_new ();

  g_signal_connect (zoom, "begin", G_CALLBACK (on_pinch_begin), self);
  g_signal_connect (zoom, "scale-changed", G_CALLBACK (on_pinch), self);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (zoom));
}

static void
add_motion_and_scroll (FpBoardView *self)
{
  GtkEventController *motion = gtk_event_controller_motion_new ();
  GtkEventController *scroll = gtk_event_controller_scroll_new (GTK_EVENT_CONTROLLER_SCROLL_BOTH_AXES);

  g_signal_connect (motion, "motion", G_CALLBACK (on_motion), self);
  g_signal_connect (motion, "leave", G_CALLBACK (on_leave), self);
  gtk_widget_add_controller (GTK_WIDGET (self), motion);
  g_signal_connect (scroll, "scroll", G_CALLBACK (on_scroll), self);
  gtk_widget_add_controller (GTK_WIDGET (self), scroll);
}

static void
add_click (FpBoardView *self)
{
  GtkGesture *click = gtk_gesture_click_new ();

  g_signal_connect (click, "pressed", G_CALLBACK (on_pressed), self);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (click));
}

void
fp_board_view_add_controllers (FpBoardView *self)
{
  fp_board_tool_init (&self->tool, THRESHOLD_PX / PX_PER_MM);
  add_drag (self, GDK_BUTTON_PRIMARY);
  add_drag (self, GDK_BUTTON_MIDDLE);
  add_click (self);
  add_pinch (self);
  add_motion_and_scroll (self);
  fp_board_view_add_keys (self);
  gtk_widget_set_has_tooltip (GTK_WIDGET (self), TRUE);
  g_signal_connect (self, "query-tooltip", G_CALLBACK (on_query_tooltip), NULL);
}
