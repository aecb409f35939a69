/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "walk-editor.h"

#include "field-tip.h"

#include "footpace/error.h"

#include <string.h>

struct _FpWalkEditor
{
  GtkWidget  parent_instance;
  GtkWidget *list;
  FpUnits    units;
  gboolean   filling;
};

typedef struct
{
  GtkWidget *number, *length, *turn;
  FpLeg      leg;    /* as it was shown, or was typed when the units changed  */
  gboolean   typed;  /* its length, by hand                                   */
} Row;

G_DEFINE_FINAL_TYPE (FpWalkEditor, fp_walk_editor, GTK_TYPE_WIDGET)

static guint changed;

static Row *
row_at (FpWalkEditor *self, guint i)
{
  GtkListBoxRow *row = gtk_list_box_get_row_at_index (GTK_LIST_BOX (self->list), (int) i);

  return row != NULL ? g_object_get_data (G_OBJECT (row), "row") : NULL;
}

static guint
n_rows (FpWalkEditor *self)
{
  guint n = 0;

  while (row_at (self, n) != NULL)
    n++;
  return n;
}

static void
tell_changed (FpWalkEditor *self)
{
  if (!self->filling)
    g_signal_emit (self, changed, 0);
}

static void
number_rows (FpWalkEditor *self)
{
  Row *row;

  for (guint i = 0; (row = row_at (self, i)) != NULL; i++)
    {
      g_autofree char *number = g_strdup_printf ("%u", i + 1), *length = g_strdup_printf ("Length of side %u", i + 1);
      g_autofree char *turn = g_strdup_printf ("Turn at the end of side %u", i + 1);

      gtk_label_set_text (GTK_LABEL (row->number), number);
      gtk_accessible_update_property (GTK_ACCESSIBLE (row->length), GTK_ACCESSIBLE_PROPERTY_LABEL, length, -1);
      gtk_accessible_update_property (GTK_ACCESSIBLE (row->turn), GTK_ACCESSIBLE_PROPERTY_LABEL, turn, -1);
    }
}

static void
on_take_away (GtkButton *button, FpWalkEditor *self)
{
  GtkWidget *row = gtk_widget_get_ancestor (GTK_WIDGET (button), GTK_TYPE_LIST_BOX_ROW);

  gtk_list_box_remove (GTK_LIST_BOX (self->list), row);
  number_rows (self);
  tell_changed (self);
}

static void
mark (GtkWidget *entry, gboolean wrong)
{
  if (wrong)
    gtk_widget_add_css_class (entry, "error");
  else
    gtk_widget_remove_css_class (entry, "error");
  gtk_accessible_update_state (GTK_ACCESSIBLE (entry), GTK_ACCESSIBLE_STATE_INVALID,
                               wrong ? GTK_ACCESSIBLE_INVALID_TRUE : GTK_ACCESSIBLE_INVALID_FALSE, -1);
}

/* What is still there as it was shown has not been rounded by that. */
static gboolean
read_length (const Row *row, FpUnits units, double *length, GError **error)
{
  const char *text = gtk_editable_get_text (GTK_EDITABLE (row->length));
  g_autofree char *shown = fp_length_format (row->leg.length, units);

  if (strcmp (text, shown) != 0)
    return fp_length_parse (text, units, length, error);
  *length = row->leg.length;
  return TRUE;
}

static gboolean
read_turn (const Row *row, double *turn, GError **error)
{
  const char *text = gtk_editable_get_text (GTK_EDITABLE (row->turn));
  g_autofree char *shown = fp_turn_format (row->leg.turn);

  if (strcmp (text, shown) != 0)
    return fp_turn_parse (text, turn, error);
  *turn = row->leg.turn;
  return TRUE;
}

static gboolean
read_row (Row *row, FpUnits units, FpLeg *leg, GError **error)
{
  g_autoptr (GError) of_length = NULL, of_turn = NULL;
  gboolean good_length = read_length (row, units, &leg->length, &of_length);
  const gboolean good_turn = read_turn (row, &leg->turn, &of_turn);

  if (good_length && !(leg->length > 0))
    {
      g_set_error (&of_length, FP_ERROR, FP_ERROR_RANGE, "a side must have a length");
      good_length = FALSE;
    }
  mark (row->length, !good_length);
  mark (row->turn, !good_turn);
  if (!good_length)
    g_propagate_error (error, g_steal_pointer (&of_length));
  else if (!good_turn)
    g_propagate_error (error, g_steal_pointer (&of_turn));
  return good_length && good_turn;
}

static Row *insert_row (FpWalkEditor *self, const FpLeg *leg, int at);

/* One half goes on straight into the other. */
static void
on_divide (GtkButton *button, FpWalkEditor *self)
{
  GtkWidget *line = gtk_widget_get_ancestor (GTK_WIDGET (button), GTK_TYPE_LIST_BOX_ROW);
  const int at = gtk_list_box_row_get_index (GTK_LIST_BOX_ROW (line));
  Row *row = row_at (self, (guint) at), *next;
  FpLeg leg, half;
  g_autofree char *length = NULL, *turn = NULL;

  if (!read_row (row, self->units, &leg, NULL))
    return;
  half = (FpLeg) { leg.length / 2.0, leg.turn };
  self->filling = TRUE;
  next = insert_row (self, &half, at + 1);
  next->typed = row->typed;
  row->leg = (FpLeg) { half.length, 0.0 };
  length = fp_length_format (half.length, self->units);
  turn = fp_turn_format (0.0);
  gtk_editable_set_text (GTK_EDITABLE (row->length), length);
  gtk_editable_set_text (GTK_EDITABLE (row->turn), turn);
  self->filling = FALSE;
  gtk_widget_grab_focus (next->length);
  tell_changed (self);
}

static void
on_length_typed (GtkWidget *entry, FpWalkEditor *self)
{
  Row *row = g_object_get_data (G_OBJECT (entry), "row");

  if (!self->filling)
    row->typed = TRUE;
  tell_changed (self);
}

static GtkWidget *
entry_new (const char *text, int width, const char *tip)
{
  GtkWidget *entry = gtk_entry_new ();

  gtk_editable_set_text (GTK_EDITABLE (entry), text);
  gtk_editable_set_width_chars (GTK_EDITABLE (entry), width);
  gtk_entry_set_activates_default (GTK_ENTRY (entry), TRUE);
  gtk_widget_set_hexpand (entry, TRUE);
  fp_field_tip (entry, tip);
  return entry;
}

static GtkWidget *
small_button (const char *icon, const char *says, GCallback clicked, FpWalkEditor *self)
{
  GtkWidget *button = gtk_button_new_from_icon_name (icon);

  gtk_widget_set_tooltip_text (button, says);
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL, says, -1);
  gtk_widget_add_css_class (button, "flat");
  g_signal_connect (button, "clicked", clicked, self);
  return button;
}

/* @at: -1 for the end */
static Row *
insert_row (FpWalkEditor *self, const FpLeg *leg, int at)
{
  GtkWidget *line = gtk_list_box_row_new (), *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  g_autofree char *length = fp_length_format (leg->length, self->units), *turn = fp_turn_format (leg->turn);
  Row *row = g_new0 (Row, 1);

  row->leg = *leg;
  row->number = gtk_label_new (NULL);
  gtk_label_set_width_chars (GTK_LABEL (row->number), 2);
  row->length = entry_new (length, 9, "How long this side is, inside the walls");
  row->turn = entry_new (turn, 12, "The turn at its end into the next side: right 90, or 90 right; left 45");
  g_object_set_data (G_OBJECT (row->length), "row", row);
  g_signal_connect (row->length, "changed", G_CALLBACK (on_length_typed), self);
  g_signal_connect_swapped (row->turn, "changed", G_CALLBACK (tell_changed), self);
  gtk_box_append (GTK_BOX (box), row->number);
  gtk_box_append (GTK_BOX (box), row->length);
  gtk_box_append (GTK_BOX (box), row->turn);
  gtk_box_append (GTK_BOX (box), small_button ("list-add-symbolic", "Divide this side in two", G_CALLBACK (on_divide),
                                               self));
  gtk_box_append (GTK_BOX (box), small_button ("list-remove-symbolic", "Take this side away",
                                               G_CALLBACK (on_take_away), self));
  gtk_list_box_row_set_child (GTK_LIST_BOX_ROW (line), box);
  gtk_list_box_row_set_activatable (GTK_LIST_BOX_ROW (line), FALSE);
  gtk_widget_set_focusable (line, FALSE);
  g_object_set_data_full (G_OBJECT (line), "row", row, g_free);
  gtk_list_box_insert (GTK_LIST_BOX (self->list), line, at);
  number_rows (self);
  return row;
}

static void
on_add (FpWalkEditor *self)
{
  static const FpLeg side = { 3000.0, -90.0 };

  insert_row (self, &side, -1);
  gtk_widget_grab_focus (row_at (self, n_rows (self) - 1)->length);
  tell_changed (self);
}

static void
fp_walk_editor_dispose (GObject *object)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (object))) != NULL)
    gtk_widget_unparent (child);
  G_OBJECT_CLASS (fp_walk_editor_parent_class)->dispose (object);
}

static void
fp_walk_editor_class_init (FpWalkEditorClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = fp_walk_editor_dispose;
  changed = g_signal_new ("changed", FP_TYPE_WALK_EDITOR, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BOX_LAYOUT);
}

static void
fp_walk_editor_init (FpWalkEditor *self)
{
  GtkWidget *add = gtk_button_new_with_mnemonic ("A_dd Side");

  gtk_orientable_set_orientation (GTK_ORIENTABLE (gtk_widget_get_layout_manager (GTK_WIDGET (self))),
                                  GTK_ORIENTATION_VERTICAL);
  self->list = gtk_list_box_new ();
  gtk_list_box_set_selection_mode (GTK_LIST_BOX (self->list), GTK_SELECTION_NONE);
  gtk_widget_add_css_class (self->list, "plain");
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->list), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  "Sides of the outline, walked clockwise", -1);
  gtk_widget_set_parent (self->list, GTK_WIDGET (self));
  gtk_widget_set_halign (add, GTK_ALIGN_START);
  g_signal_connect_swapped (add, "clicked", G_CALLBACK (on_add), self);
  gtk_widget_set_parent (add, GTK_WIDGET (self));
}

GtkWidget *
fp_walk_editor_new (FpUnits units)
{
  FpWalkEditor *self = g_object_new (FP_TYPE_WALK_EDITOR, NULL);

  self->units = units;
  return GTK_WIDGET (self);
}

void
fp_walk_editor_set (FpWalkEditor *self, const FpLeg *leg, guint n)
{
  GtkListBoxRow *old;

  self->filling = TRUE;
  while ((old = gtk_list_box_get_row_at_index (GTK_LIST_BOX (self->list), 0)) != NULL)
    gtk_list_box_remove (GTK_LIST_BOX (self->list), GTK_WIDGET (old));
  for (guint i = 0; i < n; i++)
    insert_row (self, &leg[i], -1);
  self->filling = FALSE;
  tell_changed (self);
}

void
fp_walk_editor_set_units (FpWalkEditor *self, FpUnits units)
{
  Row *row;

  self->filling = TRUE;
  for (guint i = 0; (row = row_at (self, i)) != NULL; i++)
    {
      g_autofree char *shown = NULL;

      /* Text that is no length is left. */
      if (!read_length (row, self->units, &row->leg.length, NULL))
        continue;
      shown = fp_length_format (row->leg.length, units);
      gtk_editable_set_text (GTK_EDITABLE (row->length), shown);
    }
  self->units = units;
  self->filling = FALSE;
  tell_changed (self);
}

gboolean
fp_walk_editor_read (FpWalkEditor *self, GArray *out, GArray *typed, GError **error)
{
  gboolean good = TRUE;
  Row *row;

  for (guint i = 0; (row = row_at (self, i)) != NULL; i++)
    {
      g_autoptr (GError) wrong = NULL;
      FpLeg leg = { 0, 0 };

      if (!read_row (row, self->units, &leg, &wrong))
        {
          g_prefix_error (&wrong, "Side %u: ", i + 1);
          if (good)
            g_propagate_error (error, g_steal_pointer (&wrong));
          good = FALSE;
        }
      g_array_append_val (out, leg);
      if (typed != NULL)
        g_array_append_val (typed, row->typed);
    }
  return good;
}
