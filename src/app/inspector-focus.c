/* SPDX-License-Identifier: GPL-3.0-or-later */
/* inspector-focus.c - the place of the keyboard among rows that are made anew
 *
 * A row that is taken away takes the focus with it, and then the next key goes nowhere.  So it is carried to the row that
 * stands for the same.
 */
#include "inspector-private.h"

#include "param-row.h"

static GtkWidget *
focus_of (FpInspector *self)
{
  GtkRoot *root = gtk_widget_get_root (GTK_WIDGET (self));
  GtkWidget *focus = root != NULL ? gtk_root_get_focus (root) : NULL;

  return focus != NULL && gtk_widget_is_ancestor (focus, GTK_WIDGET (self)) ? focus : NULL;
}

FpInspectorSpot
fp_inspector_spot (FpInspector *self)
{
  GtkWidget *const boxes[] = { self->measures, self->place, self->corner_rows };

  for (GtkWidget *row = focus_of (self); row != NULL; row = gtk_widget_get_parent (row))
    for (guint i = 0; i < G_N_ELEMENTS (boxes); i++)
      if (gtk_widget_get_parent (row) == boxes[i])
        return (FpInspectorSpot) { boxes[i], g_strdup (gtk_widget_get_name (row)) };
  return (FpInspectorSpot) { NULL, NULL };
}

static GtkWidget *
row_called (GtkWidget *box, const char *name)
{
  GtkWidget *row = gtk_widget_get_first_child (box);

  while (row != NULL && g_strcmp0 (gtk_widget_get_name (row), name) != 0)
    row = gtk_widget_get_next_sibling (row);
  return row;
}

void
fp_inspector_return_to (FpInspector *self, FpInspectorSpot spot)
{
  GtkWidget *row = spot.box != NULL && focus_of (self) == NULL ? row_called (spot.box, spot.row) : NULL;

  if (FP_IS_PARAM_ROW (row))
    fp_param_row_focus (FP_PARAM_ROW (row));
  else if (row != NULL)
    gtk_widget_child_focus (row, GTK_DIR_TAB_FORWARD);
  /* What stands there now has no such row, or one that takes nothing. */
  if (spot.box != NULL && focus_of (self) == NULL)
    gtk_widget_child_focus (GTK_WIDGET (self), GTK_DIR_TAB_FORWARD);
  g_free (spot.row);
}
