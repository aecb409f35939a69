/* SPDX-License-Identifier: GPL-3.0-or-later */
/* window-show.c - what the board shows, and on what ground it is drawn */
#include "window-private.h"

#include "drawing-view.h"
#include "show-list.h"

#include <string.h>

static FpBoardView *
board (FpWindow *self)
{
  return FP_BOARD_VIEW (self->board);
}

/* The button says that something is left out: what is missing must not be taken for what is not there. */
static void
tell (FpWindow *self)
{
  const gboolean less = fp_board_view_hidden (board (self)) != 0;
  const guint celebration = self->document != NULL ? fp_document_celebration (self->document) : 0;
  g_autofree char *set = celebration == 0 ? NULL
                         : g_strdup_printf ("Show (%s%s)", fp_celebration_label ((FpCelebration) celebration), less ? ", not all" : "");

  gtk_menu_button_set_label (GTK_MENU_BUTTON (self->show_button), set != NULL ? set : less ? "Show (not all)" : "Show");
}

void
fp_window_tell_shown (FpWindow *self)
{
  fp_show_list_set (FP_SHOW_LIST (self->show_list), fp_board_view_hidden (board (self)));
  tell (self);
  fp_window_tell_sections (self);
}

static void
on_show_list (FpWindow *self)
{
  fp_board_view_set_hidden (board (self), fp_show_list_get (FP_SHOW_LIST (self->show_list)));
  tell (self);
}

static void
show_toggle (GtkWidget *widget, const char *name, GVariant *parameter)
{
  FpWindow *self = FP_WINDOW (widget);
  FpShow show;

  (void) name;
  if (!fp_show_find (g_variant_get_string (parameter, NULL), &show))
    return;
  fp_board_view_set_hidden (board (self), fp_board_view_hidden (board (self)) ^ (1u << show));
  fp_show_list_set (FP_SHOW_LIST (self->show_list), fp_board_view_hidden (board (self)));
  tell (self);
}

static void
show_list (GtkWidget *widget, const char *name, GVariant *parameter)
{
  (void) name, (void) parameter;
  gtk_menu_button_popup (GTK_MENU_BUTTON (FP_WINDOW (widget)->show_button));
}

static void
on_show_opened (FpWindow *self)
{
  fp_show_list_set (FP_SHOW_LIST (self->show_list), fp_board_view_hidden (board (self)));
  fp_window_tell_sections (self);
}

/* --- ground and ink ------------------------------------------------------------ */

static const char *const grounds[] = { "system", "white", "dark" };

static void
look (FpWindow *self)
{
  const FpInkChoice ink = (FpInkChoice) self->remembered.ink;

  fp_board_view_set_look (board (self), (FpGround) self->remembered.ground, ink);
  fp_drawing_view_set_ink_within (self->alternatives, ink);
  fp_drawing_view_set_ink_within (self->compare, ink);
}

static void
on_ground (GSimpleAction *action, GVariant *value, gpointer data)
{
  FpWindow *self = data;

  for (guint i = 0; i < G_N_ELEMENTS (grounds); i++)
    if (strcmp (g_variant_get_string (value, NULL), grounds[i]) == 0)
      {
        self->remembered.ground = i;
        g_simple_action_set_state (action, value);
        fp_window_remember_soon (self);
      }
  look (self);
}

static void
on_ink (GSimpleAction *action, GVariant *value, gpointer data)
{
  FpWindow *self = data;
  FpInkChoice ink;

  if (!fp_ink_find (g_variant_get_string (value, NULL), &ink))
    return;
  self->remembered.ink = ink;
  fp_window_remember_soon (self);
  g_simple_action_set_state (action, value);
  look (self);
}

static void
add_choice (FpWindow *self, const char *name, const char *state, GCallback changed)
{
  g_autoptr (GSimpleAction) action = g_simple_action_new_stateful (name, G_VARIANT_TYPE_STRING,
                                                                   g_variant_new_string (state));

  g_signal_connect_object (action, "change-state", changed, self, 0);
  g_action_map_add_action (G_ACTION_MAP (self), G_ACTION (action));
}

void
fp_window_add_show (FpWindow *self)
{
  add_choice (self, "ground", grounds[MIN (self->remembered.ground, G_N_ELEMENTS (grounds) - 1)], G_CALLBACK (on_ground));
  add_choice (self, "ink", fp_ink_id ((FpInkChoice) self->remembered.ink), G_CALLBACK (on_ink));
  look (self);
  tell (self);
}

void
fp_window_class_bind_show (GtkWidgetClass *widget_class)
{
  gtk_widget_class_bind_template_child (widget_class, FpWindow, show_button);
  gtk_widget_class_bind_template_child (widget_class, FpWindow, show_list);
  gtk_widget_class_bind_template_callback (widget_class, on_show_list);
  gtk_widget_class_bind_template_callback (widget_class, on_show_opened);
  gtk_widget_class_install_action (widget_class, "win.show-toggle", "s", show_toggle);
  gtk_widget_class_install_action (widget_class, "win.show-list", NULL, show_list);
}
