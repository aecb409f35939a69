/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "capacity-table.h"

#include "compat-4-8.h"

#define ITEM "fp-item" /* of a button: the id of the thing, owned */

static void
on_thing (GtkButton *button, gpointer document)
{
  fp_document_choose (document, g_object_get_data (G_OBJECT (button), ITEM));
}

static gboolean
is_number (guint column)
{
  return column == FP_CAPACITY_FOUND || column == FP_CAPACITY_ASKED;
}

static GtkWidget *
new_label (const char *text, guint column)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), is_number (column) ? 1 : 0);
  gtk_widget_set_valign (label, GTK_ALIGN_BASELINE);
  gtk_label_set_wrap (GTK_LABEL (label), !is_number (column));
  if (column == FP_CAPACITY_NOTE)
    {
      gtk_widget_set_hexpand (label, TRUE);
      gtk_label_set_width_chars (GTK_LABEL (label), 24);
    }
  if (column == FP_CAPACITY_WHAT)
    gtk_label_set_width_chars (GTK_LABEL (label), 22);
  return label;
}

static GtkWidget *
new_thing (const FpCapacityRow *row, FpDocument *document)
{
  GtkWidget *button = gtk_button_new (), *label = new_label (row->cell[FP_CAPACITY_WHAT], FP_CAPACITY_WHAT);

  gtk_button_set_child (GTK_BUTTON (button), label);
  gtk_widget_add_css_class (button, "flat");
  gtk_widget_add_css_class (button, "thing");
  gtk_widget_set_halign (button, GTK_ALIGN_START);
  gtk_widget_set_valign (button, GTK_ALIGN_BASELINE);
  gtk_widget_set_tooltip_text (button, "Choose it on the board");
  g_object_set_data_full (G_OBJECT (button), ITEM, g_strdup (row->item), g_free);
  g_signal_connect_object (button, "clicked", G_CALLBACK (on_thing), document, 0);
  return button;
}

static void
attach_row (GtkGrid *grid, const FpCapacityRow *row, FpDocument *document, int line)
{
  for (guint k = 0; k < FP_N_CAPACITY_CELLS; k++)
    {
      const gboolean thing = k == FP_CAPACITY_WHAT && row->item != NULL;
      const gboolean says_short = row->lacking && k == FP_CAPACITY_NOTE;
      g_autofree char *text = g_strconcat (says_short ? "Short" : "", says_short && *row->cell[k] != '\0' ? ": " : "",
                                           row->cell[k], NULL);
      GtkWidget *cell = thing ? new_thing (row, document) : new_label (text, k);

      if (row->sum && k != FP_CAPACITY_NOTE)
        gtk_widget_add_css_class (cell, "heading");
      if (row->lacking && k != FP_CAPACITY_WHAT)
        gtk_widget_add_css_class (cell, "error");
      gtk_grid_attach (grid, cell, (int) k, line, 1, 1);
    }
}

static GtkWidget *
new_grid (const FpCapacitySection *section, FpDocument *document)
{
  GtkWidget *grid = gtk_grid_new ();

  gtk_grid_set_row_spacing (GTK_GRID (grid), 3);
  gtk_grid_set_column_spacing (GTK_GRID (grid), 18);
  gtk_accessible_update_property (GTK_ACCESSIBLE (grid), GTK_ACCESSIBLE_PROPERTY_LABEL, section->title, -1);
  for (guint k = 0; k < FP_N_CAPACITY_CELLS; k++)
    {
      GtkWidget *head = new_label (section->head[k], k);

      gtk_widget_add_css_class (head, "dim-label");
      gtk_grid_attach (GTK_GRID (grid), head, (int) k, 0, 1, 1);
    }
  for (guint i = 0; i < section->rows->len; i++)
    attach_row (GTK_GRID (grid), &g_array_index (section->rows, FpCapacityRow, i), document, (int) i + 1);
  return grid;
}

GtkWidget *
fp_capacity_table_new (const FpCapacitySection *section, FpDocument *document)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6), *title = gtk_label_new (section->title);
  GtkWidget *closing = gtk_label_new (section->closing);

  gtk_label_set_xalign (GTK_LABEL (title), 0);
  gtk_widget_add_css_class (title, "section-title");
  gtk_label_set_xalign (GTK_LABEL (closing), 0);
  gtk_label_set_wrap (GTK_LABEL (closing), TRUE);
  gtk_label_set_selectable (GTK_LABEL (closing), TRUE);
  gtk_widget_add_css_class (closing, "caption");
  gtk_box_append (GTK_BOX (box), title);
  gtk_box_append (GTK_BOX (box), new_grid (section, document));
  gtk_box_append (GTK_BOX (box), closing);
  return box;
}
