/* SPDX-License-Identifier: GPL-3.0-or-later */
/* window-sight.c - what every place sees, on the board and in the bar below it */
#include "window-private.h"

#include "compat-4-8.h"
#include "sight-bar.h"

#define REACH 350.0 /* mm, from a click to the circle that is meant */

static FpBoardView *
board (FpWindow *self)
{
  return FP_BOARD_VIEW (self->board);
}

static void
on_look (FpWindow *self)
{
  const FpSightLook look = fp_sight_bar_look (FP_SIGHT_BAR (self->sight_bar));

  fp_board_view_set_sight (board (self), &look);
  fp_window_lead_pew (self, FALSE);
}

gboolean
fp_window_sight_look (FpWindow *self, FpSightLook *look, const FpPeople **people)
{
  const FpSightDraft *draft = fp_board_view_sight (board (self));

  if (draft == NULL || self->sight_bar == NULL)
    return FALSE;
  *look = fp_sight_bar_look (FP_SIGHT_BAR (self->sight_bar));
  *people = fp_findings_measuring (draft->of)->people;
  return TRUE;
}

static void
on_told (FpWindow *self)
{
  const FpSightDraft *draft = fp_board_view_sight (board (self));

  if (draft != NULL && self->sight_bar != NULL)
    fp_sight_bar_tell (FP_SIGHT_BAR (self->sight_bar), draft);
}

/* Made when it is first wanted. */
static void
make_bar (FpWindow *self)
{
  self->sight_bar = g_object_new (FP_TYPE_SIGHT_BAR, NULL);
  gtk_box_append (GTK_BOX (self->sight_box), self->sight_bar);
  g_signal_connect_swapped (self->sight_bar, "look", G_CALLBACK (on_look), self);
  g_signal_connect_swapped (self->board, "sight-told", G_CALLBACK (on_told), self);
}

static void
show (FpWindow *self, gboolean shown)
{
  if (shown && self->sight_bar == NULL)
    make_bar (self);
  fp_show_or_hide (self->sight_box, shown, self->board);
  if (shown)
    {
      gtk_toggle_button_set_active (GTK_TOGGLE_BUTTON (self->sun_button), FALSE);
      on_look (self);
      fp_board_view_frame (board (self), TRUE); /* the people are what is looked at */
    }
  else
    fp_board_view_set_sight (board (self), NULL);
}

static void
on_sight_button (FpWindow *self)
{
  show (self, gtk_toggle_button_get_active (GTK_TOGGLE_BUTTON (self->sight_button)));
}

static void
sight (GtkWidget *widget, const char *name, GVariant *parameter)
{
  FpWindow *self = FP_WINDOW (widget);

  (void) name, (void) parameter;
  gtk_widget_activate_action (widget, "win.show-board", NULL);
  gtk_toggle_button_set_active (GTK_TOGGLE_BUTTON (self->sight_button),
                                !gtk_toggle_button_get_active (GTK_TOGGLE_BUTTON (self->sight_button)));
}

/* The place at a point of the plan, whose line of sight is shown then. */
gboolean
fp_window_choose_sight_at (FpWindow *self, FpPoint at)
{
  const FpSightDraft *draft = fp_board_view_sight (board (self));

  if (draft == NULL || self->sight_bar == NULL)
    return FALSE;
  fp_sight_bar_set_place (FP_SIGHT_BAR (self->sight_bar),
                          fp_sight_place_at (fp_findings_measuring (draft->of)->sight, draft->look.moment, at, REACH));
  return TRUE;
}

/* Where it is said to be worst. */
static int
place_of (const FpShown *shown)
{
  const FpVec3 *at = &shown->finding->at;
  guint n;
  const FpPersonPlace *place = fp_people_places (fp_findings_measuring (shown->of)->people, &n);

  for (guint i = 0; i < n && shown->finding->has_at; i++)
    if (place[i].at.x == at->x && place[i].at.y == at->y && place[i].at.z == at->z)
      return (int) i;
  return -1;
}

gboolean
fp_window_show_finding_in_sight (FpWindow *self, const FpShown *shown)
{
  FpFocus focus;

  if (!fp_measure_focus (shown->finding->rule->measure, &focus))
    return FALSE;
  gtk_widget_activate_action (GTK_WIDGET (self), "win.show-board", NULL);
  gtk_toggle_button_set_active (GTK_TOGGLE_BUTTON (self->sight_button), TRUE);
  fp_sight_bar_set_focus (FP_SIGHT_BAR (self->sight_bar), focus, place_of (shown));
  return TRUE;
}

void
fp_window_class_add_sight (GtkWidgetClass *c)
{
  gtk_widget_class_bind_template_child (c, FpWindow, sight_box);
  gtk_widget_class_bind_template_child (c, FpWindow, sight_button);
  gtk_widget_class_bind_template_callback (c, on_sight_button);
  gtk_widget_class_install_action (c, "win.sight", NULL, sight);
}
