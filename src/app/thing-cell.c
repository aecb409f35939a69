/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "thing-cell.h"

#include "amiss.h"
#include "compat-4-8.h"

#define NAME_CHARS 16 /* however narrow the list: it scrolls then */
#define MOST_CHARS 30 /* for which a cell of the wide list is widened while one types */

struct _FpThingCell
{
  GtkWidget    parent_instance;
  FpColumn     column;
  FpDocument  *document;   /* borrowed: the list holds it as long as it is bound */
  FpThingNode *node;       /* owned; NULL: not bound                          */
  gulong       changed;
  GtkWidget   *label, *entry, *wrong, *message; /* the last three only while one types */
  gboolean     ending;
  gboolean     may_widen;
};

G_DEFINE_FINAL_TYPE (FpThingCell, fp_thing_cell, GTK_TYPE_WIDGET)

static guint leave_signal;

static gboolean
is_number (FpColumn column)
{
  return column != FP_COLUMN_NAME && column != FP_COLUMN_STANDING;
}

static void
show (FpThingCell *self)
{
  const char *text = fp_thing_node_text (self->node, self->column);
  g_autofree char *said = g_strdup_printf ("%s: %s", fp_column_title (self->column), text);
  const gboolean group = fp_thing_node_id (self->node) == NULL;

  gtk_label_set_text (GTK_LABEL (self->label), text);
  (fp_thing_node_is_gone (self->node) && self->column <= FP_COLUMN_STANDING
   ? gtk_widget_add_css_class : gtk_widget_remove_css_class) (self->label, "removed");
  (group ? gtk_widget_add_css_class : gtk_widget_remove_css_class) (self->label, "group-title");
  (is_number (self->column) && !fp_thing_node_can_type (self->node, self->column)
   ? gtk_widget_add_css_class : gtk_widget_remove_css_class) (self->label, "dim-label");
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, said, -1);
  if (self->column == FP_COLUMN_NAME)
    fp_name_list_row (GTK_WIDGET (self), fp_thing_node_speech (self->node));
}

/* --- typing --------------------------------------------------------------- */

static void
end_typing (FpThingCell *self)
{
  self->ending = TRUE;
  g_clear_pointer (&self->wrong, gtk_widget_unparent);
  g_clear_pointer (&self->entry, gtk_widget_unparent);
  self->message = NULL;
  gtk_widget_show (self->label);
  self->ending = FALSE;
}

static void
tell_wrong (FpThingCell *self, const char *message)
{
  if (self->wrong == NULL)
    {
      self->wrong = gtk_popover_new ();
      self->message = gtk_label_new (NULL);
      gtk_label_set_wrap (GTK_LABEL (self->message), TRUE);
      gtk_label_set_max_width_chars (GTK_LABEL (self->message), 36);
      gtk_widget_add_css_class (self->message, "error");
      gtk_popover_set_child (GTK_POPOVER (self->wrong), self->message);
      /* Without a grab: what is wrong is mended in the field beside it. */
      gtk_popover_set_autohide (GTK_POPOVER (self->wrong), FALSE);
      gtk_widget_set_can_focus (self->wrong, FALSE);
      gtk_widget_set_parent (self->wrong, GTK_WIDGET (self));
    }
  gtk_label_set_text (GTK_LABEL (self->message), message);
  gtk_popover_popup (GTK_POPOVER (self->wrong));
  gtk_widget_add_css_class (self->entry, "error");
  gtk_accessible_update_state (GTK_ACCESSIBLE (self->entry), GTK_ACCESSIBLE_STATE_INVALID, GTK_ACCESSIBLE_INVALID_TRUE,
                               -1);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->entry), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, message, -1);
}

static void
on_changed (FpThingCell *self)
{
  if (self->wrong == NULL)
    return;
  gtk_popover_popdown (GTK_POPOVER (self->wrong));
  gtk_widget_remove_css_class (self->entry, "error");
  gtk_accessible_reset_state (GTK_ACCESSIBLE (self->entry), GTK_ACCESSIBLE_STATE_INVALID);
  gtk_accessible_reset_property (GTK_ACCESSIBLE (self->entry), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION);
}

/* The edit may bind this cell to another thing, or to none. */
static gboolean
take (FpThingCell *self)
{
  g_autofree char *text = g_strdup (gtk_editable_get_text (GTK_EDITABLE (self->entry)));
  g_autofree char *id = g_strdup (fp_thing_node_id (self->node)), *said = NULL;
  g_autoptr (GError) error = NULL;

  self->ending = TRUE;
  if (fp_column_enter (self->document, id, self->column, text, &error))
    {
      if (self->entry != NULL)
        end_typing (self);
      self->ending = FALSE;
      return TRUE;
    }
  self->ending = FALSE;
  said = fp_amiss_words (fp_document_base_scene (self->document), error->message);
  tell_wrong (self, said);
  return FALSE;
}

static void
finish (FpThingCell *self, int forward)
{
  g_autoptr (GtkWidget) alive = g_object_ref (GTK_WIDGET (self));
  g_autoptr (FpThingNode) node = g_object_ref (self->node);

  if (take (self))
    g_signal_emit (self, leave_signal, 0, node, forward);
}

static void
on_activate (FpThingCell *self)
{
  finish (self, 0);
}

static gboolean
on_key (GtkEventControllerKey *keys, guint key, guint code, GdkModifierType state, FpThingCell *self)
{
  g_autoptr (FpThingNode) node = g_object_ref (self->node);

  (void) keys, (void) code;
  if (key == GDK_KEY_Escape)
    {
      end_typing (self);
      g_signal_emit (self, leave_signal, 0, node, 0);
      return TRUE;
    }
  if ((state & (GDK_CONTROL_MASK | GDK_ALT_MASK)) != 0 || (key != GDK_KEY_Tab && key != GDK_KEY_ISO_Left_Tab))
    return FALSE;
  finish (self, key == GDK_KEY_ISO_Left_Tab || (state & GDK_SHIFT_MASK) != 0 ? -1 : 1);
  return TRUE;
}

/* What was typed is taken; what is wrong is left to be mended. */
static void
on_focus_left (gpointer data)
{
  FpThingCell *self = data;
  g_autoptr (GtkWidget) alive = g_object_ref (GTK_WIDGET (self));

  if (!self->ending && self->entry != NULL)
    take (self);
}

/* The column keeps its width, but for what would be cut off. */
static int
chars_for (FpThingCell *self, const char *text)
{
  return self->may_widen ? (int) CLAMP (g_utf8_strlen (text, -1) + 1, 4, MOST_CHARS) : 4;
}

static void
add_entry (FpThingCell *self, const char *text)
{
  GtkEventController *keys = gtk_event_controller_key_new ();
  g_autofree char *name = g_strdup_printf ("%s of %s", fp_column_title (self->column),
                                           fp_thing_node_text (self->node, FP_COLUMN_NAME));

  self->entry = gtk_entry_new ();
  gtk_entry_set_has_frame (GTK_ENTRY (self->entry), FALSE);
  gtk_editable_set_width_chars (GTK_EDITABLE (self->entry), chars_for (self, text));
  gtk_editable_set_max_width_chars (GTK_EDITABLE (self->entry), chars_for (self, text));
  gtk_editable_set_alignment (GTK_EDITABLE (self->entry), is_number (self->column) ? 1.0f : 0.0f);
  gtk_widget_set_hexpand (self->entry, TRUE);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->entry), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
  gtk_event_controller_set_propagation_phase (keys, GTK_PHASE_CAPTURE);
  g_signal_connect_swapped (self->entry, "activate", G_CALLBACK (on_activate), self);
  g_signal_connect_swapped (self->entry, "changed", G_CALLBACK (on_changed), self);
  g_signal_connect (keys, "key-pressed", G_CALLBACK (on_key), self);
  fp_when_focus_left (self->entry, on_focus_left, self);
  gtk_widget_add_controller (self->entry, keys);
  gtk_widget_set_parent (self->entry, GTK_WIDGET (self));
}

void
fp_thing_cell_type (FpThingCell *self)
{
  g_autofree char *text = NULL;

  if (self->node == NULL || self->entry != NULL || !fp_thing_node_can_type (self->node, self->column))
    return;
  text = fp_column_typed (self->document, fp_thing_node_id (self->node), self->column);
  gtk_widget_hide (self->label);
  add_entry (self, text);
  gtk_editable_set_text (GTK_EDITABLE (self->entry), text);
  gtk_widget_grab_focus (self->entry);
  /* All of it, with the caret before it: what is too long is cut off at its end, not at its beginning. */
  gtk_editable_select_region (GTK_EDITABLE (self->entry), -1, 0);
}

gboolean
fp_thing_cell_is_typing (FpThingCell *self)
{
  return self->entry != NULL;
}

/* The row's own gesture would take two clicks for Enter. */
static void
on_pressed (GtkGestureClick *click, int n, double x, double y, FpThingCell *self)
{
  (void) x, (void) y;
  if (n != 2 || self->node == NULL || !fp_thing_node_can_type (self->node, self->column))
    return;
  gtk_gesture_set_state (GTK_GESTURE (click), GTK_EVENT_SEQUENCE_CLAIMED);
  fp_thing_cell_type (self);
}

/* --- the widget ----------------------------------------------------------- */

FpThingNode *
fp_thing_cell_node (FpThingCell *self)
{
  return self->node;
}

FpColumn
fp_thing_cell_column (FpThingCell *self)
{
  return self->column;
}

void
fp_thing_cell_bind (FpThingCell *self, FpDocument *document, FpThingNode *node)
{
  if (self->node != NULL)
    g_signal_handler_disconnect (self->node, self->changed);
  if (node != self->node && self->entry != NULL)
    end_typing (self);
  g_set_object (&self->node, node);
  self->document = document;
  if (node == NULL)
    return;
  self->changed = g_signal_connect_swapped (node, "changed", G_CALLBACK (show), self);
  show (self);
}

static void
fp_thing_cell_dispose (GObject *object)
{
  FpThingCell *self = FP_THING_CELL (object);

  fp_thing_cell_bind (self, NULL, NULL);
  g_clear_pointer (&self->label, gtk_widget_unparent);
  G_OBJECT_CLASS (fp_thing_cell_parent_class)->dispose (object);
}

/* Made when it is asked for: it tells where the thing stands, and to set it anew with every move has its price (see tip.h). */
static gboolean
fp_thing_cell_query_tooltip (GtkWidget *widget, int x, int y, gboolean by_keyboard, GtkTooltip *tooltip)
{
  FpThingCell *self = FP_THING_CELL (widget);

  (void) x, (void) y, (void) by_keyboard;
  if (self->node == NULL || self->entry != NULL)
    return FALSE;
  gtk_tooltip_set_text (tooltip, fp_thing_node_speech (self->node));
  return TRUE;
}

static void
fp_thing_cell_class_init (FpThingCellClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fp_thing_cell_dispose;
  widget_class->query_tooltip = fp_thing_cell_query_tooltip;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BOX_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "thingcell");
  leave_signal = g_signal_new ("leave", FP_TYPE_THING_CELL, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 2,
                               FP_TYPE_THING_NODE, G_TYPE_INT);
}

static void
fp_thing_cell_init (FpThingCell *self)
{
  self->label = gtk_label_new (NULL);
  gtk_label_set_ellipsize (GTK_LABEL (self->label), PANGO_ELLIPSIZE_END);
  gtk_widget_set_hexpand (self->label, TRUE);
  gtk_widget_set_parent (self->label, GTK_WIDGET (self));
}

GtkWidget *
fp_thing_cell_new (FpColumn column, gboolean by_pointer)
{
  FpThingCell *self = g_object_new (FP_TYPE_THING_CELL, NULL);
  GtkGesture *click;

  self->column = column;
  self->may_widen = by_pointer;
  gtk_widget_set_has_tooltip (GTK_WIDGET (self), column == FP_COLUMN_NAME);
  gtk_label_set_xalign (GTK_LABEL (self->label), is_number (column) ? 1.0f : 0.0f);
  if (is_number (column))
    gtk_widget_add_css_class (GTK_WIDGET (self), "number");
  if (by_pointer && column == FP_COLUMN_NAME)
    gtk_label_set_width_chars (GTK_LABEL (self->label), NAME_CHARS);
  if (by_pointer)
    {
      click = gtk_gesture_click_new ();
      g_signal_connect (click, "pressed", G_CALLBACK (on_pressed), self);
      gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (click));
    }
  return GTK_WIDGET (self);
}
