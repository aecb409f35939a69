/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "corner-editor.h"

#include "field-tip.h"

#include "footpace/error.h"

struct _FpCornerEditor
{
  GtkWidget  parent_instance;
  GtkWidget *list;
  FpUnits    units;
  gboolean   closed, filling;
};

typedef struct
{
  GtkWidget *number, *entry[2]; /* across, along                              */
} Row;

G_DEFINE_FINAL_TYPE (FpCornerEditor, fp_corner_editor, GTK_TYPE_WIDGET)

static guint changed;

static const char *const ways[2] = { "across", "along" };

static Row *
row_at (FpCornerEditor *self, guint i)
{
  GtkListBoxRow *row = gtk_list_box_get_row_at_index (GTK_LIST_BOX (self->list), (int) i);

  return row != NULL ? g_object_get_data (G_OBJECT (row), "row") : NULL;
}

static void
tell_changed (FpCornerEditor *self)
{
  if (!self->filling)
    g_signal_emit (self, changed, 0);
}

static void
number_rows (FpCornerEditor *self)
{
  Row *row;

  for (guint i = 0; (row = row_at (self, i)) != NULL; i++)
    {
      g_autofree char *number = g_strdup_printf ("%u", i + 1);

      gtk_label_set_text (GTK_LABEL (row->number), number);
      for (guint k = 0; k < 2; k++)
        {
          g_autofree char *name = g_strdup_printf ("Corner %u %s", i + 1, ways[k]);

          gtk_accessible_update_property (GTK_ACCESSIBLE (row->entry[k]), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
        }
    }
}

/* --- reading -------------------------------------------------------------- */

static gboolean
read_entry (FpCornerEditor *self, GtkWidget *entry, double *mm, GError **error)
{
  const gboolean good = fp_length_parse (gtk_editable_get_text (GTK_EDITABLE (entry)), self->units, mm, error);

  (good ? gtk_widget_remove_css_class : gtk_widget_add_css_class) (entry, "error");
  gtk_accessible_update_state (GTK_ACCESSIBLE (entry), GTK_ACCESSIBLE_STATE_INVALID,
                               good ? GTK_ACCESSIBLE_INVALID_FALSE : GTK_ACCESSIBLE_INVALID_TRUE, -1);
  return good;
}

static gboolean
read_row (FpCornerEditor *self, Row *row, FpPoint *corner, GError **error)
{
  g_autoptr (GError) second = NULL;
  const gboolean across = read_entry (self, row->entry[0], &corner->x, error);
  const gboolean along = read_entry (self, row->entry[1], &corner->y, across ? error : &second);

  return across && along;
}

gboolean
fp_corner_editor_read (FpCornerEditor *self, GArray *out, GError **error)
{
  gboolean good = TRUE;
  Row *row;

  for (guint i = 0; (row = row_at (self, i)) != NULL; i++)
    {
      g_autoptr (GError) wrong = NULL;
      FpPoint corner = { 0, 0 };

      if (!read_row (self, row, &corner, &wrong))
        {
          g_prefix_error (&wrong, "Corner %u: ", i + 1);
          if (good)
            g_propagate_error (error, g_steal_pointer (&wrong));
          good = FALSE;
        }
      g_array_append_val (out, corner);
    }
  return good;
}

/* --- rows ----------------------------------------------------------------- */

static void insert_row (FpCornerEditor *self, FpPoint corner, int at);

static int
index_of (GtkButton *button)
{
  return gtk_list_box_row_get_index (GTK_LIST_BOX_ROW (gtk_widget_get_ancestor (GTK_WIDGET (button),
                                                                                GTK_TYPE_LIST_BOX_ROW)));
}

static void
on_take_away (GtkButton *button, FpCornerEditor *self)
{
  gtk_list_box_remove (GTK_LIST_BOX (self->list), gtk_widget_get_ancestor (GTK_WIDGET (button), GTK_TYPE_LIST_BOX_ROW));
  number_rows (self);
  tell_changed (self);
}

/* Half way to the next corner; at the end of an open run, as far again as the last side. */
static void
on_add_after (GtkButton *button, FpCornerEditor *self)
{
  const guint at = (guint) index_of (button);
  Row *here = row_at (self, at), *next = row_at (self, at + 1);
  FpPoint a, b;

  if (next == NULL && self->closed)
    next = row_at (self, 0);
  if (!read_row (self, here, &a, NULL))
    return;
  if (next != NULL && read_row (self, next, &b, NULL))
    b = (FpPoint) { (a.x + b.x) / 2.0, (a.y + b.y) / 2.0 };
  else if (at > 0 && read_row (self, row_at (self, at - 1), &b, NULL))
    b = (FpPoint) { 2.0 * a.x - b.x, 2.0 * a.y - b.y };
  else
    b = a;
  insert_row (self, b, (int) at + 1);
  gtk_widget_grab_focus (row_at (self, at + 1)->entry[0]);
  tell_changed (self);
}

static GtkWidget *
small_button (const char *icon, const char *says, GCallback clicked, FpCornerEditor *self)
{
  GtkWidget *button = gtk_button_new_from_icon_name (icon);

  gtk_widget_set_tooltip_text (button, says);
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL, says, -1);
  gtk_widget_add_css_class (button, "flat");
  g_signal_connect (button, "clicked", clicked, self);
  return button;
}

static GtkWidget *
entry_new (FpCornerEditor *self, double mm, const char *tip)
{
  GtkWidget *entry = gtk_entry_new ();
  g_autofree char *text = fp_length_format (mm, self->units);

  gtk_editable_set_text (GTK_EDITABLE (entry), text);
  gtk_editable_set_width_chars (GTK_EDITABLE (entry), 9);
  gtk_entry_set_activates_default (GTK_ENTRY (entry), TRUE);
  gtk_widget_set_hexpand (entry, TRUE);
  fp_field_tip (entry, tip);
  g_signal_connect_swapped (entry, "changed", G_CALLBACK (tell_changed), self);
  return entry;
}

static void
insert_row (FpCornerEditor *self, FpPoint corner, int at)
{
  GtkWidget *line = gtk_list_box_row_new (), *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  Row *row = g_new (Row, 1);

  row->number = gtk_label_new (NULL);
  gtk_label_set_width_chars (GTK_LABEL (row->number), 2);
  row->entry[0] = entry_new (self, corner.x, "Across, the Epistle side positive");
  row->entry[1] = entry_new (self, corner.y, "Along, east positive");
  gtk_box_append (GTK_BOX (box), row->number);
  gtk_box_append (GTK_BOX (box), row->entry[0]);
  gtk_box_append (GTK_BOX (box), row->entry[1]);
  gtk_box_append (GTK_BOX (box), small_button ("list-add-symbolic", "Add a corner after this one",
                                               G_CALLBACK (on_add_after), self));
  gtk_box_append (GTK_BOX (box), small_button ("list-remove-symbolic", "Take this corner away",
                                               G_CALLBACK (on_take_away), self));
  gtk_list_box_row_set_child (GTK_LIST_BOX_ROW (line), box);
  gtk_list_box_row_set_activatable (GTK_LIST_BOX_ROW (line), FALSE);
  gtk_widget_set_focusable (line, FALSE);
  g_object_set_data_full (G_OBJECT (line), "row", row, g_free);
  gtk_list_box_insert (GTK_LIST_BOX (self->list), line, at);
  number_rows (self);
}

void
fp_corner_editor_set (FpCornerEditor *self, const FpPoint *corner, guint n)
{
  GtkListBoxRow *old;

  self->filling = TRUE;
  while ((old = gtk_list_box_get_row_at_index (GTK_LIST_BOX (self->list), 0)) != NULL)
    gtk_list_box_remove (GTK_LIST_BOX (self->list), GTK_WIDGET (old));
  for (guint i = 0; i < n; i++)
    insert_row (self, corner[i], -1);
  self->filling = FALSE;
}

/* --- the widget ----------------------------------------------------------- */

static void
fp_corner_editor_dispose (GObject *object)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (object))) != NULL)
    gtk_widget_unparent (child);
  G_OBJECT_CLASS (fp_corner_editor_parent_class)->dispose (object);
}

static void
fp_corner_editor_class_init (FpCornerEditorClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = fp_corner_editor_dispose;
  changed = g_signal_new ("changed", FP_TYPE_CORNER_EDITOR, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);
}

static void
fp_corner_editor_init (FpCornerEditor *self)
{
  self->list = gtk_list_box_new ();
  gtk_list_box_set_selection_mode (GTK_LIST_BOX (self->list), GTK_SELECTION_NONE);
  gtk_widget_add_css_class (self->list, "plain");
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->list), GTK_ACCESSIBLE_PROPERTY_LABEL, "Corners of the outline",
                                  -1);
  gtk_widget_set_parent (self->list, GTK_WIDGET (self));
}

GtkWidget *
fp_corner_editor_new (FpUnits units, gboolean closed)
{
  FpCornerEditor *self = g_object_new (FP_TYPE_CORNER_EDITOR, NULL);

  self->units = units;
  self->closed = closed;
  return GTK_WIDGET (self);
}
