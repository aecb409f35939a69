/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "show-list.h"

struct _FpShowList
{
  GtkBox     parent_instance;
  GtkWidget *check[FP_N_SHOWS], *all;
  gboolean   setting;
};

G_DEFINE_FINAL_TYPE (FpShowList, fp_show_list, GTK_TYPE_BOX)

static guint changed_signal;

FpHidden
fp_show_list_get (FpShowList *self)
{
  FpHidden hidden = 0;

  for (guint i = 0; i < FP_N_SHOWS; i++)
    if (!gtk_check_button_get_active (GTK_CHECK_BUTTON (self->check[i])))
      hidden |= 1u << i;
  return hidden;
}

void
fp_show_list_set (FpShowList *self, FpHidden hidden)
{
  self->setting = TRUE;
  for (guint i = 0; i < FP_N_SHOWS; i++)
    gtk_check_button_set_active (GTK_CHECK_BUTTON (self->check[i]), fp_shows (hidden, (FpShow) i));
  self->setting = FALSE;
  gtk_widget_set_sensitive (self->all, hidden != 0);
}

static void
on_toggled (FpShowList *self)
{
  if (self->setting)
    return;
  gtk_widget_set_sensitive (self->all, fp_show_list_get (self) != 0);
  g_signal_emit (self, changed_signal, 0);
}

static void
on_all (FpShowList *self)
{
  fp_show_list_set (self, 0);
  g_signal_emit (self, changed_signal, 0);
}

static void
add_heading (FpShowList *self, const char *text)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0.0f);
  gtk_widget_add_css_class (label, "group-title");
  gtk_box_append (GTK_BOX (self), label);
}

static void
fp_show_list_init (FpShowList *self)
{
  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  for (guint i = 0; i < FP_N_SHOWS; i++)
    {
      if (i == FP_SHOW_BUILDING || i == FP_SHOW_EXISTING || i == FP_SHOW_DIMENSIONS)
        add_heading (self, i == FP_SHOW_BUILDING ? "Things" : i == FP_SHOW_EXISTING ? "Work" : "Lettering");
      self->check[i] = gtk_check_button_new_with_label (fp_show_label ((FpShow) i));
      gtk_check_button_set_active (GTK_CHECK_BUTTON (self->check[i]), TRUE);
      g_signal_connect_swapped (self->check[i], "toggled", G_CALLBACK (on_toggled), self);
      gtk_box_append (GTK_BOX (self), self->check[i]);
    }
  self->all = gtk_button_new_with_mnemonic ("Show _All");
  gtk_widget_set_margin_top (self->all, 6);
  gtk_widget_set_sensitive (self->all, FALSE);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->all), GTK_ACCESSIBLE_PROPERTY_LABEL, "Show all", -1);
  g_signal_connect_swapped (self->all, "clicked", G_CALLBACK (on_all), self);
  gtk_box_append (GTK_BOX (self), self->all);
}

static void
fp_show_list_class_init (FpShowListClass *klass)
{
  changed_signal = g_signal_new ("changed", FP_TYPE_SHOW_LIST, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  (void) klass;
}
