/* SPDX-License-Identifier: GPL-3.0-or-later */
/* board-dimension.c - a dimension is typed over on the spot */
#include "board-view-private.h"
#include "typing.h"

#include <math.h>

typedef struct
{
  FpBoardView *board;
  GtkWidget   *popover, *entry, *error;
  char        *item, *param;
  gboolean     over;   /* entered or given up: what follows is only the closing */
} Typing;

static void
typing_free (gpointer data)
{
  Typing *t = data;

  g_free (t->item);
  g_free (t->param);
  g_free (t);
}

static gboolean
enter (Typing *t, GError **error)
{
  return fp_typing_enter (t->board->document, t->item, t->param, gtk_editable_get_text (GTK_EDITABLE (t->entry)), error);
}

static void
end (Typing *t)
{
  t->over = TRUE;
  gtk_popover_popdown (GTK_POPOVER (t->popover));
}

static void
on_activate (GtkEntry *entry, Typing *t)
{
  g_autoptr (GError) error = NULL;

  (void) entry;
  if (enter (t, &error))
    {
      end (t);
      return;
    }
  gtk_label_set_text (GTK_LABEL (t->error), error->message);
  gtk_widget_show (t->error);
  gtk_widget_add_css_class (t->entry, "error");
  gtk_accessible_update_state (GTK_ACCESSIBLE (t->entry), GTK_ACCESSIBLE_STATE_INVALID, GTK_ACCESSIBLE_INVALID_TRUE,
                               -1);
}

/* As in the fields beside the board: going elsewhere enters what was typed.  What cannot be read is dropped. */
static void
leave (Typing *t)
{
  if (t->over)
    return;
  t->over = TRUE;
  if (t->board->document != NULL)
    enter (t, NULL);
  gtk_popover_popdown (GTK_POPOVER (t->popover));
}

static void
on_focus_leave (GtkEventControllerFocus *focus, Typing *t)
{
  (void) focus;
  leave (t);
}

static gboolean
on_key (GtkEventControllerKey *keys, guint key, guint code, GdkModifierType state, Typing *t)
{
  (void) keys, (void) code, (void) state;
  if (key != GDK_KEY_Escape)
    return FALSE;
  end (t);
  return TRUE;
}

static void
on_changed (GtkEditable *editable, Typing *t)
{
  (void) editable;
  gtk_widget_hide (t->error);
  gtk_widget_remove_css_class (t->entry, "error");
  gtk_accessible_reset_state (GTK_ACCESSIBLE (t->entry), GTK_ACCESSIBLE_STATE_INVALID);
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
  GtkWidget *focus = gtk_root_get_focus (gtk_widget_get_root (GTK_WIDGET (self)));

  if (focus == NULL || gtk_widget_is_ancestor (focus, GTK_WIDGET (popover)))
    gtk_widget_grab_focus (GTK_WIDGET (self));
  g_idle_add_full (G_PRIORITY_DEFAULT, drop, g_object_ref (popover), g_object_unref);
}

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
entry_row (Typing *t, const FpParam *param, double value, FpUnits units)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  GtkEventController *focus = gtk_event_controller_focus_new (), *keys = gtk_event_controller_key_new ();
  g_autofree char *shown = fp_typing_show (param, value, units);

  t->entry = gtk_entry_new ();
  gtk_editable_set_text (GTK_EDITABLE (t->entry), shown);
  gtk_editable_set_width_chars (GTK_EDITABLE (t->entry), 14);
  gtk_widget_set_hexpand (t->entry, TRUE);
  gtk_accessible_update_property (GTK_ACCESSIBLE (t->entry), GTK_ACCESSIBLE_PROPERTY_LABEL, param->label, -1);
  g_signal_connect (t->entry, "activate", G_CALLBACK (on_activate), t);
  g_signal_connect (t->entry, "changed", G_CALLBACK (on_changed), t);
  g_signal_connect (focus, "leave", G_CALLBACK (on_focus_leave), t);
  gtk_widget_add_controller (t->entry, focus);
  gtk_event_controller_set_propagation_phase (keys, GTK_PHASE_CAPTURE);
  g_signal_connect (keys, "key-pressed", G_CALLBACK (on_key), t);
  gtk_widget_add_controller (t->entry, keys);
  gtk_box_append (GTK_BOX (row), t->entry);
  gtk_box_append (GTK_BOX (row), labelled (fp_typing_unit (param, units), "dim-label"));
  return row;
}

static GtkWidget *
content (Typing *t, const FpPlaced *placed, const FpParam *param, double value, FpUnits units)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  g_autofree char *title = g_strdup_printf ("%s: %s", fp_item_name (placed->item), param->label);

  gtk_box_append (GTK_BOX (box), labelled (title, "heading"));
  gtk_box_append (GTK_BOX (box), entry_row (t, param, value, units));
  t->error = labelled ("", "error");
  gtk_widget_hide (t->error);
  gtk_box_append (GTK_BOX (box), t->error);
  return box;
}

/* The figure of the dimension nearest the pointer, in widget px. */
static GdkRectangle
figure_at (FpBoardView *self, const char *item, const char *param)
{
  guint n;
  const FpMark *mark = fp_drawing_marks (self->drawing, &n), *best = NULL;
  double nearest = G_MAXDOUBLE;

  for (guint i = 0; i < n; i++)
    if (mark[i].item == item && mark[i].param == param && mark[i].type == FP_MARK_TEXT)
      {
        FpPoint at = fp_board_view_to_widget (self, mark[i].at);
        double d = hypot (at.x - self->pointer.x, at.y - self->pointer.y);

        if (d < nearest)
          {
            nearest = d;
            best = &mark[i];
          }
      }
  if (best == NULL)
    return (GdkRectangle) { (int) self->pointer.x, (int) self->pointer.y, 1, 1 };

  FpPoint at = fp_board_view_to_widget (self, best->at);
  int h = (int) ceil (best->height * PX_PER_MM);

  return (GdkRectangle) { (int) at.x - h, (int) at.y - h, 2 * h, h };
}

void
fp_board_view_end_typing (FpBoardView *self)
{
  if (self->typing != NULL)
    leave (g_object_get_data (G_OBJECT (self->typing), "typing"));
}

void
fp_board_view_drop_typing (FpBoardView *self)
{
  if (self->typing == NULL)
    return;
  ((Typing *) g_object_get_data (G_OBJECT (self->typing), "typing"))->over = TRUE;
  g_clear_pointer (&self->typing, gtk_widget_unparent);
}

void
fp_board_view_type_over (FpBoardView *self, const char *item, const char *param_id)
{
  const FpPlaced *placed = fp_document_placed (self->document, item);
  double value;
  const FpParam *param = fp_typing_param (placed, param_id, &value);
  GdkRectangle where;
  Typing *t;

  if (param == NULL || param->type == FP_PARAM_CHOICE)
    return;
  where = figure_at (self, item, param_id);
  fp_board_view_end_typing (self);
  fp_board_view_drop_typing (self);
  t = g_new0 (Typing, 1);
  t->board = self;
  t->item = g_strdup (item);
  t->param = g_strdup (param_id);
  t->popover = self->typing = gtk_popover_new ();
  g_object_set_data_full (G_OBJECT (t->popover), "typing", t, typing_free);
  gtk_widget_set_parent (t->popover, GTK_WIDGET (self));
  gtk_popover_set_child (GTK_POPOVER (t->popover), content (t, placed, param, value, fp_board_view_units (self)));
  gtk_popover_set_pointing_to (GTK_POPOVER (t->popover), &where);
  gtk_popover_set_position (GTK_POPOVER (t->popover), GTK_POS_BOTTOM);
  /* Without a grab: one that closes by itself would swallow the first click on whatever comes next. */
  gtk_popover_set_autohide (GTK_POPOVER (t->popover), FALSE);
  g_signal_connect (t->popover, "closed", G_CALLBACK (on_closed), self);
  gtk_popover_popup (GTK_POPOVER (t->popover));
  gtk_widget_grab_focus (t->entry);
  gtk_widget_trigger_tooltip_query (GTK_WIDGET (self)); /* it would hang over what is typed */
  gtk_editable_select_region (GTK_EDITABLE (t->entry), 0, -1);
}
