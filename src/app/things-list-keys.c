/* SPDX-License-Identifier: GPL-3.0-or-later */
/* things-list-keys.c - the list of things by hand: the row that has the focus, keys, clicks */
#include "things-list-private.h"

#include "compat-4-8.h"

#define ROW_WAIT 8 /* frames until a row that was scrolled to is there */

/* --- the row that has the focus ------------------------------------------- */

static FpThingCell *
cell_below (GtkWidget *top, FpThingNode *node, FpColumn column)
{
  if (FP_IS_THING_CELL (top))
    return fp_thing_cell_column (FP_THING_CELL (top)) == column && gtk_widget_get_mapped (top)
           && (node == NULL || fp_thing_cell_node (FP_THING_CELL (top)) == node) ? FP_THING_CELL (top) : NULL;
  for (GtkWidget *w = gtk_widget_get_first_child (top); w != NULL; w = gtk_widget_get_next_sibling (w))
    {
      FpThingCell *found = cell_below (w, node, column);

      if (found != NULL)
        return found;
    }
  return NULL;
}

static FpThingCell *
cell_of_focus (FpThingsList *self)
{
  GtkRoot *root = gtk_widget_get_root (GTK_WIDGET (self));
  GtkWidget *focus = root != NULL ? gtk_root_get_focus (root) : NULL;

  if (focus == NULL || !gtk_widget_is_ancestor (focus, self->view))
    return NULL;
  focus = fp_list_row_of (focus);
  return GTK_IS_LIST_VIEW (gtk_widget_get_parent (focus)) ? cell_below (focus, NULL, FP_COLUMN_NAME) : NULL;
}

static GtkWidget *
focus_now (FpThingsList *self)
{
  GtkRoot *root = gtk_widget_get_root (GTK_WIDGET (self));

  return root != NULL ? gtk_root_get_focus (root) : NULL;
}

/* Whoever went on meanwhile, with Enter to the fields, is not fetched back. */
static gboolean
has_gone_on (FpThingsList *self)
{
  GtkWidget *focus = focus_now (self);

  return focus != NULL && (gpointer) focus != self->wanted_from && focus != self->view
         && !gtk_widget_is_ancestor (focus, self->view);
}

static gboolean
focus_wanted (GtkWidget *widget, GdkFrameClock *clock, gpointer data)
{
  FpThingsList *self = FP_THINGS_LIST (widget);
  FpThingNode *node = fp_things_tree_find (self->tree, self->wanted);
  FpThingCell *cell = node != NULL ? cell_below (self->view, node, FP_COLUMN_NAME) : NULL;

  (void) clock, (void) data;
  if (cell == NULL && node != NULL && !has_gone_on (self) && self->wanted_frames-- > 0)
    return G_SOURCE_CONTINUE;
  if (!has_gone_on (self))
    gtk_widget_grab_focus (cell != NULL ? fp_list_row_of (GTK_WIDGET (cell)) : self->view);
  self->wanted_source = 0;
  return G_SOURCE_REMOVE;
}

void
fp_things_list_focus (FpThingsList *self, const char *id)
{
  FpThingNode *node = fp_things_tree_find (self->tree, id);

  g_free (self->wanted);
  self->wanted = g_strdup (id);
  self->wanted_frames = ROW_WAIT;
  fp_things_list_unfold_to (self, node);
  fp_column_view_scroll_to (self->view, node != NULL ? fp_things_list_find (self, node) : 0);
  if (self->wanted_source == 0)
    self->wanted_source = gtk_widget_add_tick_callback (GTK_WIDGET (self), focus_wanted, NULL, NULL);
  gtk_widget_grab_focus (self->view);
  self->wanted_from = focus_now (self);
}

/* --- keys and clicks ------------------------------------------------------ */

/* Right unfolds; Left folds, or goes to what the thing stands on. */
static gboolean
fold (FpThingsList *self, FpThingNode *node, gboolean unfolded)
{
  const guint at = fp_things_list_find (self, node);
  g_autoptr (GtkTreeListRow) row = at != GTK_INVALID_LIST_POSITION ? fp_things_list_row (self, at) : NULL;
  FpThingNode *parent = fp_things_tree_parent (self->tree, node);

  if (row == NULL)
    return FALSE;
  if (gtk_tree_list_row_is_expandable (row) && gtk_tree_list_row_get_expanded (row) != unfolded)
    gtk_tree_list_row_set_expanded (row, unfolded);
  else if (!unfolded && parent != NULL)
    {
      FpThingCell *cell = cell_below (self->view, parent, FP_COLUMN_NAME);

      if (cell != NULL)
        gtk_widget_grab_focus (fp_list_row_of (GTK_WIDGET (cell)));
    }
  return TRUE;
}

/* In the column that was clicked last.  A measure that follows from others is not typed, and no name is typed for it. */
static void
type_at (FpThingsList *self, FpThingCell *name)
{
  FpThingNode *node = fp_thing_cell_node (name);
  FpThingCell *cell = self->at == FP_COLUMN_STANDING ? name
                      : cell_below (fp_list_row_of (GTK_WIDGET (name)), node, self->at);

  if (cell != NULL && fp_thing_node_can_type (node, fp_thing_cell_column (cell)))
    fp_thing_cell_type (cell);
  else
    gtk_widget_error_bell (GTK_WIDGET (self));
}

static gboolean
on_key (GtkEventControllerKey *keys, guint key, guint code, GdkModifierType state, FpThingsList *self)
{
  FpThingCell *cell = cell_of_focus (self);
  GtkRoot *root = gtk_widget_get_root (GTK_WIDGET (self));

  (void) keys, (void) code;
  if (cell == NULL || (state & (GDK_CONTROL_MASK | GDK_ALT_MASK | GDK_SHIFT_MASK)) != 0
      || GTK_IS_TEXT (gtk_root_get_focus (root)))
    return FALSE;
  switch (key)
    {
    case GDK_KEY_F2:
      type_at (self, cell);
      return TRUE;
    case GDK_KEY_Left:
    case GDK_KEY_Right:
      return fold (self, fp_thing_cell_node (cell), key == GDK_KEY_Right);
    case GDK_KEY_Delete:
    case GDK_KEY_KP_Delete:
      return gtk_widget_activate_action (GTK_WIDGET (self), "win.remove", NULL);
    default:
      return FALSE;
    }
}

/* On to the next cell of the row that can be typed in. */
void
fp_things_list_cell_left (FpThingCell *cell, FpThingNode *node, int way, FpThingsList *self)
{
  int c = (int) fp_thing_cell_column (cell);

  for (c += way; way != 0 && c >= 0 && c < FP_N_COLUMNS; c += way)
    if (self->column[c] != NULL && fp_thing_node_can_type (node, (FpColumn) c))
      {
        FpThingCell *next = cell_below (self->view, node, (FpColumn) c);

        if (next != NULL)
          {
            fp_thing_cell_type (next);
            return;
          }
      }
  fp_things_list_focus (self, fp_thing_node_id (node));
}

static gboolean
activate_later (gpointer data)
{
  FpThingsList *self = data;

  if (self->document != NULL && fp_document_n_chosen (self->document) == 1)
    g_signal_emit (self, fp_things_list_activated, 0);
  return G_SOURCE_REMOVE;
}

void
fp_things_list_set_column (FpThingsList *self, FpColumn column)
{
  self->at = column;
}

static FpThingCell *
cell_under (GtkWidget *view, double x, double y)
{
  GtkNative *native = gtk_widget_get_native (view);
  GtkWidget *under;
  double sx, sy;

  gtk_native_get_surface_transform (native, &sx, &sy);
  if (!gtk_widget_translate_coordinates (GTK_WIDGET (native), view, x - sx, y - sy, &x, &y))
    return NULL;
  under = gtk_widget_pick (view, x, y, GTK_PICK_DEFAULT);
  if (under != NULL && !FP_IS_THING_CELL (under))
    under = gtk_widget_get_ancestor (under, FP_TYPE_THING_CELL);
  return under != NULL ? FP_THING_CELL (under) : NULL;
}

/* Seen before the rows see it, and left to them: they choose. */
static gboolean
on_event (GtkEventControllerLegacy *controller, GdkEvent *event, FpThingsList *self)
{
  GtkWidget *view = gtk_event_controller_get_widget (GTK_EVENT_CONTROLLER (controller));
  const GdkModifierType more = GDK_CONTROL_MASK | GDK_SHIFT_MASK;
  const GdkEventType type = gdk_event_get_event_type (event);
  FpThingCell *cell;
  double x, y;

  if ((type != GDK_BUTTON_PRESS && type != GDK_BUTTON_RELEASE) || gdk_button_event_get_button (event) != 1
      || !gdk_event_get_position (event, &x, &y))
    return FALSE;
  cell = cell_under (view, x, y);
  if (cell != NULL && type == GDK_BUTTON_PRESS)
    fp_things_list_set_column (self, fp_thing_cell_column (cell));
  else if (cell != NULL && !self->wide && (gdk_event_get_modifier_state (event) & more) == 0
           && fp_thing_node_id (fp_thing_cell_node (cell)) != NULL)
    g_idle_add_full (G_PRIORITY_DEFAULT_IDLE, activate_later, g_object_ref (self), g_object_unref);
  return FALSE;
}

void
fp_things_list_add_keys (FpThingsList *self)
{
  GtkEventController *keys = gtk_event_controller_key_new (), *events = gtk_event_controller_legacy_new ();

  gtk_event_controller_set_propagation_phase (keys, GTK_PHASE_CAPTURE);
  g_signal_connect (keys, "key-pressed", G_CALLBACK (on_key), self);
  gtk_widget_add_controller (self->view, keys);
  gtk_event_controller_set_propagation_phase (events, GTK_PHASE_CAPTURE);
  g_signal_connect (events, "event", G_CALLBACK (on_event), self);
  gtk_widget_add_controller (self->view, events);
}
