/* SPDX-License-Identifier: GPL-3.0-or-later */
/* window-sun.c - the sun at a Mass, on the board and in the bar below it */
#include "window-private.h"

#include "compat-4-8.h"
#include "sun-bar.h"

static FpBoardView *
board (FpWindow *self)
{
  return FP_BOARD_VIEW (self->board);
}

static void
on_look (FpWindow *self)
{
  const FpSunLook look = fp_sun_bar_look (FP_SUN_BAR (self->sun_bar));

  fp_board_view_set_sun (board (self), &look);
}

static void
on_told (FpWindow *self)
{
  const FpSunDraft *draft = fp_board_view_sun (board (self));

  if (draft != NULL && self->sun_bar != NULL)
    fp_sun_bar_tell (FP_SUN_BAR (self->sun_bar), draft);
}

/* Made when it is first wanted. */
static void
make_bar (FpWindow *self)
{
  self->sun_bar = g_object_new (FP_TYPE_SUN_BAR, NULL);
  gtk_box_append (GTK_BOX (self->sun_box), self->sun_bar);
  g_signal_connect_swapped (self->sun_bar, "look", G_CALLBACK (on_look), self);
  g_signal_connect_swapped (self->board, "sun-told", G_CALLBACK (on_told), self);
}

static void
show (FpWindow *self, gboolean shown)
{
  if (shown && self->sun_bar == NULL)
    make_bar (self);
  fp_show_or_hide (self->sun_box, shown, self->board);
  if (!shown)
    {
      fp_board_view_set_sun (board (self), NULL);
      return;
    }
  /* Dots and circles are about the same places. */
  gtk_toggle_button_set_active (GTK_TOGGLE_BUTTON (self->sight_button), FALSE);
  if (self->document != NULL)
    fp_sun_bar_set_brief (FP_SUN_BAR (self->sun_bar), fp_project_brief (fp_document_project (self->document)));
  on_look (self);
  fp_board_view_frame (board (self), TRUE); /* the people are what is looked at */
}

static void
on_sun_button (FpWindow *self)
{
  show (self, gtk_toggle_button_get_active (GTK_TOGGLE_BUTTON (self->sun_button)));
}

static void
sun (GtkWidget *widget, const char *name, GVariant *parameter)
{
  FpWindow *self = FP_WINDOW (widget);

  (void) name, (void) parameter;
  gtk_widget_activate_action (widget, "win.show-board", NULL);
  gtk_toggle_button_set_active (GTK_TOGGLE_BUTTON (self->sun_button),
                                !gtk_toggle_button_get_active (GTK_TOGGLE_BUTTON (self->sun_button)));
}

void
fp_window_class_add_sun (GtkWidgetClass *c)
{
  gtk_widget_class_bind_template_child (c, FpWindow, sun_box);
  gtk_widget_class_bind_template_child (c, FpWindow, sun_button);
  gtk_widget_class_bind_template_callback (c, on_sun_button);
  gtk_widget_class_install_action (c, "win.sun", NULL, sun);
}
