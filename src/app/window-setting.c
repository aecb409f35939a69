/* SPDX-License-Identifier: GPL-3.0-or-later */
/* window-setting.c - for which celebration the board shows the church set, and the window where that is decided */
#include "window-private.h"

#include "setting-window.h"

static void
setting (GtkWidget *widget, const char *name, GVariant *parameter)
{
  FpWindow *self = FP_WINDOW (widget);

  (void) name, (void) parameter;
  if (self->setting == NULL)
    {
      self->setting = fp_setting_window_new (GTK_WINDOW (self), self->document);
      g_object_add_weak_pointer (G_OBJECT (self->setting), (gpointer *) &self->setting);
    }
  /* It would lie over the window that it opened. */
  gtk_menu_button_popdown (GTK_MENU_BUTTON (self->show_button));
  gtk_window_present (GTK_WINDOW (self->setting));
}

static void
on_celebration (FpWindow *self)
{
  if (self->document != NULL && !self->telling_celebration)
    fp_document_set_celebration (self->document,
                                 fp_celebration_chosen (gtk_drop_down_get_selected (GTK_DROP_DOWN (self->celebration))));
}

void
fp_window_tell_celebration (FpWindow *self)
{
  const guint now = self->document != NULL ? fp_document_celebration (self->document) : 0;

  if (now == self->told_celebration)
    return;
  self->told_celebration = now;
  fp_window_tell_shown (self);
  self->telling_celebration = TRUE;
  gtk_drop_down_set_selected (GTK_DROP_DOWN (self->celebration),
                              fp_celebration_choice (now));
  self->telling_celebration = FALSE;
}

void
fp_window_add_setting (FpWindow *self)
{
  g_autoptr (GtkStringList) choices = fp_celebration_choices ();

  self->telling_celebration = TRUE;
  gtk_drop_down_set_model (GTK_DROP_DOWN (self->celebration), G_LIST_MODEL (choices));
  self->telling_celebration = FALSE;
}

void
fp_window_class_add_setting (GtkWidgetClass *widget_class)
{
  gtk_widget_class_bind_template_child (widget_class, FpWindow, celebration);
  gtk_widget_class_bind_template_callback (widget_class, on_celebration);
  gtk_widget_class_install_action (widget_class, "win.setting", NULL, setting);
}
