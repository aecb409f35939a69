/* SPDX-License-Identifier: GPL-3.0-or-later */
/* window-pew.c - the view from the pew beside the board: opened from there, and led by clicks on its plan */
#include "window-private.h"

#include "pew-window.h"

static void
on_plan_clicked (FpWindow *self, double x, double y)
{
  if (self->pew != NULL)
    fp_pew_window_choose_at (FP_PEW_WINDOW (self->pew), (FpPoint) { x, y });
}

static void
pew (GtkWidget *widget, const char *name, GVariant *parameter)
{
  FpWindow *self = FP_WINDOW (widget);

  (void) name, (void) parameter;
  if (self->pew == NULL)
    {
      self->pew = fp_pew_window_new (GTK_WINDOW (self), self->document, (FpInkChoice) self->remembered.ink);
      g_object_add_weak_pointer (G_OBJECT (self->pew), (gpointer *) &self->pew);
    }
  gtk_window_present (GTK_WINDOW (self->pew));
}

void
fp_window_add_pew (FpWindow *self)
{
  g_signal_connect_swapped (self->board, "plan-clicked", G_CALLBACK (on_plan_clicked), self);
}

void
fp_window_class_add_pew_action (GtkWidgetClass *c)
{
  gtk_widget_class_install_action (c, "win.pew", NULL, pew);
}
