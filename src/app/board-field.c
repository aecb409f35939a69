/* SPDX-License-Identifier: GPL-3.0-or-later */
/* board-field.c - a small field that opens on the board, for a value that is typed on the spot */
#include "board-view-private.h"

#include "amiss.h"
#include "compat-4-8.h"
#include "typing.h"

typedef struct
{
  FpBoardView *board;
  FpBoardField field;  /* its texts are not kept                               */
  GtkWidget   *popover, *title, *entry, *sum, *error;
  gboolean     over;   /* entered or given up: what follows is only the closing */
} Open;

static void
open_free (gpointer data)
{
  Open *o = data;

  if (o->field.destroy != NULL)
    o->field.destroy (o->field.data);
  g_free (o);
}

static Open *
open_of (FpBoardView *self)
{
  return self->typing != NULL ? g_object_get_data (G_OBJECT (self->typing), "field") : NULL;
}

static const char *
text_of (Open *o)
{
  return gtk_editable_get_text (GTK_EDITABLE (o->entry));
}

static void
end (Open *o)
{
  o->over = TRUE;
  gtk_popover_popdown (GTK_POPOVER (o->popover));
}

static void
say_wrong (Open *o, const char *why)
{
  gtk_label_set_text (GTK_LABEL (o->error), why);
  gtk_widget_show (o->error);
  gtk_widget_add_css_class (o->entry, "error");
  gtk_accessible_update_state (GTK_ACCESSIBLE (o->entry), GTK_ACCESSIBLE_STATE_INVALID, GTK_ACCESSIBLE_INVALID_TRUE,
                               -1);
}

static void
on_activate (GtkEntry *entry, Open *o)
{
  g_autoptr (GError) error = NULL;

  (void) entry;
  if (o->over)
    return;
  o->over = TRUE; /* what entering does may take the focus away */
  if (o->field.enter (o->field.data, text_of (o), &error))
    end (o);
  else
    {
      o->over = FALSE;
      g_autofree char *said = fp_amiss_words (fp_document_scene (o->board->document), error->message);

      say_wrong (o, said);
    }
}

/* As in the fields beside the board: going elsewhere enters what was typed.  What cannot be read is dropped. */
static void
leave (gpointer data)
{
  Open *o = data;

  if (o->over)
    return;
  o->over = TRUE;
  if (o->board->document != NULL && !o->field.enter (o->field.data, text_of (o), NULL) && o->field.give_up != NULL)
    o->field.give_up (o->field.data);
  gtk_popover_popdown (GTK_POPOVER (o->popover));
}

static gboolean
on_key (GtkEventControllerKey *keys, guint key, guint code, GdkModifierType state, Open *o)
{
  (void) keys, (void) code, (void) state;
  if ((key == GDK_KEY_Tab || key == GDK_KEY_ISO_Left_Tab) && o->field.other != NULL)
    {
      o->field.other (o->field.data);
      return TRUE;
    }
  if (key != GDK_KEY_Escape)
    return FALSE;
  o->over = TRUE;
  if (o->field.give_up != NULL)
    o->field.give_up (o->field.data);
  end (o);
  return TRUE;
}

/* What is worked out can be seen before it is entered. */
static void
tell_sum (Open *o)
{
  g_autofree char *sum = o->field.is_length ? fp_typing_sum (text_of (o), fp_board_view_units (o->board)) : NULL;

  gtk_label_set_text (GTK_LABEL (o->sum), sum != NULL ? sum : "");
  gtk_widget_set_visible (o->sum, sum != NULL);
}

static void
on_changed (GtkEditable *editable, Open *o)
{
  (void) editable;
  tell_sum (o);
  gtk_widget_hide (o->error);
  gtk_widget_remove_css_class (o->entry, "error");
  gtk_accessible_reset_state (GTK_ACCESSIBLE (o->entry), GTK_ACCESSIBLE_STATE_INVALID);
  if (o->field.change != NULL && !o->over)
    o->field.change (o->field.data, text_of (o));
}

/* Unparenting within the signal would free what is being popped down. */
static gboolean
drop (gpointer data)
{
  GtkWidget *popover = data;
  GtkWidget *parent = gtk_widget_get_parent (popover);

  if (parent != NULL && FP_BOARD_VIEW (parent)->typing == popover)
    FP_BOARD_VIEW (parent)->typing = NULL;
  if (parent != NULL)
    gtk_widget_unparent (popover);
  return G_SOURCE_REMOVE;
}

static void
on_closed (GtkPopover *popover, FpBoardView *self)
{
  GtkRoot *root = gtk_widget_get_root (GTK_WIDGET (self)); /* NULL: the window is going */
  GtkWidget *focus = root != NULL ? gtk_root_get_focus (root) : NULL;

  if (root != NULL && (focus == NULL || gtk_widget_is_ancestor (focus, GTK_WIDGET (popover))))
    gtk_widget_grab_focus (GTK_WIDGET (self));
  g_idle_add_full (G_PRIORITY_DEFAULT, drop, g_object_ref (popover), g_object_unref);
}

/* --- how it looks ----------------------------------------------------------- */

static GtkWidget *
labelled (const char *text, const char *css)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0.0f);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_max_width_chars (GTK_LABEL (label), 30);
  if (css != NULL)
    gtk_widget_add_css_class (label, css);
  return label;
}

static GtkWidget *
entry_row (Open *o)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  GtkEventController *keys = gtk_event_controller_key_new ();

  o->entry = gtk_entry_new ();
  gtk_editable_set_text (GTK_EDITABLE (o->entry), o->field.text);
  gtk_editable_set_width_chars (GTK_EDITABLE (o->entry), 14);
  gtk_widget_set_hexpand (o->entry, TRUE);
  gtk_accessible_update_property (GTK_ACCESSIBLE (o->entry), GTK_ACCESSIBLE_PROPERTY_LABEL, o->field.label, -1);
  g_signal_connect (o->entry, "activate", G_CALLBACK (on_activate), o);
  g_signal_connect (o->entry, "changed", G_CALLBACK (on_changed), o);
  fp_when_focus_left (o->entry, leave, o);
  gtk_event_controller_set_propagation_phase (keys, GTK_PHASE_CAPTURE);
  g_signal_connect (keys, "key-pressed", G_CALLBACK (on_key), o);
  gtk_widget_add_controller (o->entry, keys);
  gtk_box_append (GTK_BOX (row), o->entry);
  gtk_box_append (GTK_BOX (row), labelled (o->field.unit, "dim-label"));
  return row;
}

static GtkWidget *
content (Open *o)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);

  o->title = labelled (o->field.title, "heading");
  gtk_box_append (GTK_BOX (box), o->title);
  gtk_box_append (GTK_BOX (box), entry_row (o));
  o->sum = labelled ("", "dim-label");
  gtk_widget_hide (o->sum);
  gtk_box_append (GTK_BOX (box), o->sum);
  o->error = labelled ("", "error");
  gtk_widget_hide (o->error);
  gtk_box_append (GTK_BOX (box), o->error);
  if (o->field.hint != NULL)
    gtk_box_append (GTK_BOX (box), labelled (o->field.hint, "dim-label"));
  return box;
}

/* --- what the board does with it ---------------------------------------------- */

void
fp_board_view_end_typing (FpBoardView *self)
{
  if (self->typing != NULL)
    leave (open_of (self));
}

void
fp_board_view_drop_typing (FpBoardView *self)
{
  if (self->typing == NULL)
    return;
  open_of (self)->over = TRUE;
  g_clear_pointer (&self->typing, gtk_widget_unparent);
}

/* The figure of a long dimension may be far out of sight, and where no monitor is the toolkit puts no popover: as near to it
 * as the board goes. */
static GdkRectangle
in_sight (FpBoardView *self, const GdkRectangle *where)
{
  const int w = MAX (gtk_widget_get_width (GTK_WIDGET (self)), 1), h = MAX (gtk_widget_get_height (GTK_WIDGET (self)), 1);
  const int x = CLAMP (where->x, 0, w - 1), y = CLAMP (where->y, 0, h - 1);

  return (GdkRectangle) { x, y, CLAMP (where->x + where->width, x + 1, w) - x,
                          CLAMP (where->y + where->height, y + 1, h) - y };
}

void
fp_board_view_open_field (FpBoardView *self, const FpBoardField *field, const GdkRectangle *where)
{
  const GdkRectangle at = in_sight (self, where);
  Open *o = g_new0 (Open, 1);

  fp_board_view_end_typing (self);
  fp_board_view_drop_typing (self);
  o->board = self;
  o->field = *field;
  o->popover = self->typing = gtk_popover_new ();
  g_object_set_data_full (G_OBJECT (o->popover), "field", o, open_free);
  gtk_widget_set_parent (o->popover, GTK_WIDGET (self));
  gtk_popover_set_child (GTK_POPOVER (o->popover), content (o));
  gtk_popover_set_pointing_to (GTK_POPOVER (o->popover), &at);
  gtk_popover_set_position (GTK_POPOVER (o->popover), GTK_POS_BOTTOM);
  /* Without a grab: one that closes by itself would swallow the first click on whatever comes next. */
  gtk_popover_set_autohide (GTK_POPOVER (o->popover), FALSE);
  g_signal_connect (o->popover, "closed", G_CALLBACK (on_closed), self);
  gtk_popover_popup (GTK_POPOVER (o->popover));
  gtk_widget_grab_focus (o->entry);
  gtk_widget_trigger_tooltip_query (GTK_WIDGET (self)); /* it would hang over what is typed */
  if (field->typed)
    gtk_editable_set_position (GTK_EDITABLE (o->entry), -1);
  else
    gtk_editable_select_region (GTK_EDITABLE (o->entry), 0, -1);
}

void
fp_board_view_renew_field (FpBoardView *self, const char *title, const char *label, const char *text)
{
  Open *o = open_of (self);

  g_return_if_fail (o != NULL);
  gtk_label_set_text (GTK_LABEL (o->title), title);
  gtk_accessible_update_property (GTK_ACCESSIBLE (o->entry), GTK_ACCESSIBLE_PROPERTY_LABEL, label, -1);
  gtk_editable_set_text (GTK_EDITABLE (o->entry), text);
  gtk_editable_select_region (GTK_EDITABLE (o->entry), 0, -1);
}
