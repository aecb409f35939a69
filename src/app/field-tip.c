/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "field-tip.h"

static gboolean
is_typed_in (GtkWidget *field)
{
  GtkRoot *root = gtk_widget_get_root (field);
  GtkWidget *focus = root != NULL ? gtk_root_get_focus (root) : NULL;

  return GTK_IS_EDITABLE (focus);
}

static gboolean
on_query_tooltip (GtkWidget *field, int x, int y, gboolean by_keys, GtkTooltip *tooltip, gpointer data)
{
  (void) x, (void) y, (void) tooltip, (void) data;
  if (!by_keys && is_typed_in (field))
    g_signal_stop_emission_by_name (field, "query-tooltip");
  return FALSE;
}

void
fp_field_tip_hush (GtkWidget *widget)
{
  g_signal_connect (widget, "query-tooltip", G_CALLBACK (on_query_tooltip), NULL);
}

void
fp_field_tip (GtkWidget *field, const char *tip)
{
  gtk_widget_set_tooltip_text (field, tip);
  fp_field_tip_hush (field);
  gtk_accessible_update_property (GTK_ACCESSIBLE (field), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, tip, -1);
}
