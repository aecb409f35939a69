/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "start-page.h"

#include "recent.h"

struct _FpStartPage
{
  GtkWidget  parent_instance;
  GtkWidget *recent, *recent_list;
};

G_DEFINE_FINAL_TYPE (FpStartPage, fp_start_page, GTK_TYPE_WIDGET)

void
fp_start_page_fill (FpStartPage *self)
{
  gtk_widget_set_visible (self->recent, fp_recent_fill (self->recent_list) > 0);
}

GtkWidget *
fp_start_page_list (FpStartPage *self)
{
  return self->recent_list;
}

static void
fp_start_page_dispose (GObject *object)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (object))) != NULL)
    gtk_widget_unparent (child);
  G_OBJECT_CLASS (fp_start_page_parent_class)->dispose (object);
}

static void
fp_start_page_class_init (FpStartPageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fp_start_page_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/footpace/Footpace/start-page.ui");
  gtk_widget_class_bind_template_child (widget_class, FpStartPage, recent);
  gtk_widget_class_bind_template_child (widget_class, FpStartPage, recent_list);
}

static void
fp_start_page_init (FpStartPage *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  gtk_widget_set_hexpand (GTK_WIDGET (self), TRUE);
}

GtkWidget *
fp_start_page_new (void)
{
  return g_object_new (FP_TYPE_START_PAGE, NULL);
}
