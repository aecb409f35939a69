/* SPDX-License-Identifier: GPL-3.0-or-later */
/* window-show.c - what the board shows, where its section is cut, and on what ground it is drawn */
#include "window-private.h"

#include "show-list.h"

#include <math.h>
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

  gtk_menu_button_set_label (GTK_MENU_BUTTON (self->show_button), less ? "Show (not all)" : "Show");
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

/* --- the section ------------------------------------------------------------ */

static FpUnits
units (FpWindow *self)
{
  return self->document != NULL ? fp_project_brief (fp_document_project (self->document))->units : FP_UNITS_METRIC;
}

static void
tell_section (FpWindow *self)
{
  const FpCut cut = fp_board_view_section (board (self));
  g_autofree char *text = cut.placed ? fp_length_format (cut.at, units (self)) : g_strdup ("");

  gtk_editable_set_text (GTK_EDITABLE (self->section_at), text);
}

/* Empty is the axis. */
static void
on_section_at (FpWindow *self)
{
  const char *text = gtk_editable_get_text (GTK_EDITABLE (self->section_at));
  FpCut cut = { *text != '\0', 0, FALSE };
  g_autoptr (GError) error = NULL;

  if (cut.placed && !fp_length_parse (text, units (self), &cut.at, &error))
    {
      gtk_widget_add_css_class (self->section_at, "error");
      gtk_widget_set_tooltip_text (self->section_at, error->message);
      return;
    }
  gtk_widget_remove_css_class (self->section_at, "error");
  gtk_widget_set_tooltip_text (self->section_at, NULL);
  fp_board_view_set_section (board (self), &cut);
  tell_section (self);
}

static void
on_section_axis (FpWindow *self)
{
  gtk_editable_set_text (GTK_EDITABLE (self->section_at), "");
  on_section_at (self);
}

static void
on_show_opened (FpWindow *self)
{
  fp_show_list_set (FP_SHOW_LIST (self->show_list), fp_board_view_hidden (board (self)));
  tell_section (self);
}

/* --- ground and ink ------------------------------------------------------------ */

static const char *const grounds[] = { "system", "white", "dark" };

static void
look (FpWindow *self)
{
  fp_board_view_set_look (board (self), (FpGround) self->remembered.ground, (FpInkChoice) self->remembered.ink);
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
  gtk_widget_class_bind_template_child (widget_class, FpWindow, section_at);
  gtk_widget_class_bind_template_callback (widget_class, on_show_list);
  gtk_widget_class_bind_template_callback (widget_class, on_show_opened);
  gtk_widget_class_bind_template_callback (widget_class, on_section_at);
  gtk_widget_class_bind_template_callback (widget_class, on_section_axis);
  gtk_widget_class_install_action (widget_class, "win.show-toggle", "s", show_toggle);
  gtk_widget_class_install_action (widget_class, "win.show-list", NULL, show_list);
}
