/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "two-lines.h"

static GtkWidget *
line (GtkWidget *box, const char *text)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0.0f);
  gtk_box_append (GTK_BOX (box), label);
  return label;
}

GtkWidget *
fp_two_lines_new (const char *name, const char *second, GtkLabel **tells)
{
  GtkWidget *row = gtk_list_box_row_new (), *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 1), *label;

  line (box, name);
  label = line (box, second);
  gtk_widget_add_css_class (label, "dim-label");
  gtk_widget_add_css_class (label, "caption");
  gtk_list_box_row_set_child (GTK_LIST_BOX_ROW (row), box);
  gtk_accessible_update_property (GTK_ACCESSIBLE (row), GTK_ACCESSIBLE_PROPERTY_LABEL, name,
                                  GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, second, -1);
  if (tells != NULL)
    *tells = GTK_LABEL (label);
  return row;
}
