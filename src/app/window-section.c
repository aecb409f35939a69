/* SPDX-License-Identifier: GPL-3.0-or-later */
/* window-section.c - where the sections of the board are cut, typed or chosen
 *
 * The section across the church stands, while there is one, in the place of
 * the elevation.
 */
#include "window-private.h"

#include <math.h>

static FpBoardView *
board (FpWindow *self)
{
  return FP_BOARD_VIEW (self->board);
}

static FpUnits
units (FpWindow *self)
{
  return self->document != NULL ? fp_project_brief (fp_document_project (self->document))->units : FP_UNITS_METRIC;
}

/* --- told --------------------------------------------------------------------- */

static void
tell_cut (FpWindow *self, GtkWidget *entry, FpViewId view)
{
  const FpCut cut = fp_board_view_cut (board (self), view);
  g_autofree char *text = cut.placed ? fp_length_format (cut.at, units (self)) : g_strdup ("");

  gtk_editable_set_text (GTK_EDITABLE (entry), text);
  gtk_widget_remove_css_class (entry, "error");
  gtk_widget_set_tooltip_text (entry, NULL);
}

void
fp_window_tell_sections (FpWindow *self)
{
  const FpCut across = fp_board_view_cut (board (self), FP_VIEW_ELEVATION);
  GAction *action = g_action_map_lookup_action (G_ACTION_MAP (self), "section-across");
  GAction *west = g_action_map_lookup_action (G_ACTION_MAP (self), "section-west");

  tell_cut (self, self->section_at, FP_VIEW_SECTION);
  tell_cut (self, self->across_at, FP_VIEW_ELEVATION);
  g_simple_action_set_state (G_SIMPLE_ACTION (action), g_variant_new_boolean (across.placed));
  g_simple_action_set_state (G_SIMPLE_ACTION (west), g_variant_new_boolean (across.turned));
  g_simple_action_set_enabled (G_SIMPLE_ACTION (west), across.placed);
}

static void
cut (FpWindow *self, FpViewId view, gboolean placed, double at, gboolean turned)
{
  fp_board_view_set_cut (board (self), view, &(FpCut) { placed, at, turned });
  fp_window_tell_sections (self);
}

/* --- typed -------------------------------------------------------------------- */

/* FALSE where it is no length, or lies beyond the church. */
static gboolean
parse_cut (FpWindow *self, FpViewId view, const char *text, double *at, GError **error)
{
  double low, high;
  g_autofree char *from = NULL, *to = NULL;

  if (!fp_length_parse (text, units (self), at, error))
    return FALSE;
  if (!fp_board_view_cut_range (board (self), view, &low, &high) || (*at >= low && *at <= high))
    return TRUE;
  from = fp_length_format_unit (low, units (self));
  to = fp_length_format_unit (high, units (self));
  g_set_error (error, FP_ERROR, FP_ERROR_RANGE, "There is a church to be cut from %s to %s.", from, to);
  return FALSE;
}

/* Empty is the axis, or the elevation. */
static void
read_cut (FpWindow *self, GtkWidget *entry, FpViewId view)
{
  const char *text = gtk_editable_get_text (GTK_EDITABLE (entry));
  g_autoptr (GError) error = NULL;
  double at = 0.0;

  if (self->document != NULL && *text != '\0' && !parse_cut (self, view, text, &at, &error))
    {
      gtk_widget_add_css_class (entry, "error");
      gtk_widget_set_tooltip_text (entry, error->message);
      return;
    }
  cut (self, view, *text != '\0', at, fp_board_view_cut (board (self), view).turned);
}

static void
on_section_at (FpWindow *self)
{
  read_cut (self, self->section_at, FP_VIEW_SECTION);
}

static void
on_across_at (FpWindow *self)
{
  read_cut (self, self->across_at, FP_VIEW_ELEVATION);
}

static void
on_section_axis (FpWindow *self)
{
  cut (self, FP_VIEW_SECTION, FALSE, 0.0, FALSE);
}

/* --- chosen ------------------------------------------------------------------- */

static void
on_across (GSimpleAction *action, GVariant *value, gpointer data)
{
  FpWindow *self = data;

  (void) action;
  if (self->document == NULL)
    return;
  cut (self, FP_VIEW_ELEVATION, g_variant_get_boolean (value),
       round (fp_cut_across (fp_document_scene (self->document))), FALSE);
}

static void
on_west (GSimpleAction *action, GVariant *value, gpointer data)
{
  FpWindow *self = data;
  const FpCut across = fp_board_view_cut (board (self), FP_VIEW_ELEVATION);

  (void) action;
  cut (self, FP_VIEW_ELEVATION, across.placed, across.at, g_variant_get_boolean (value));
}

static void
add_switch (FpWindow *self, const char *name, GCallback changed)
{
  g_autoptr (GSimpleAction) action = g_simple_action_new_stateful (name, NULL, g_variant_new_boolean (FALSE));

  g_signal_connect_object (action, "change-state", changed, self, 0);
  g_action_map_add_action (G_ACTION_MAP (self), G_ACTION (action));
}

void
fp_window_add_sections (FpWindow *self)
{
  add_switch (self, "section-across", G_CALLBACK (on_across));
  add_switch (self, "section-west", G_CALLBACK (on_west));
  fp_window_tell_sections (self);
}

void
fp_window_class_bind_sections (GtkWidgetClass *widget_class)
{
  gtk_widget_class_bind_template_child (widget_class, FpWindow, section_at);
  gtk_widget_class_bind_template_child (widget_class, FpWindow, across_at);
  gtk_widget_class_bind_template_callback (widget_class, on_section_at);
  gtk_widget_class_bind_template_callback (widget_class, on_section_axis);
  gtk_widget_class_bind_template_callback (widget_class, on_across_at);
}
