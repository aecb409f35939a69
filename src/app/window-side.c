/* SPDX-License-Identifier: GPL-3.0-or-later */
/* window-side.c - how the window and the side beside the board are shared out, as a person left them */
#include "window-private.h"

#include "compat-4-8.h"
#include "remembered-board.h"

#include <math.h>

/* A list of things is looked up now and then, findings are read: they get the larger part.
 * What is chosen is worked on: over its first fields stands what it is and what can be done with all of it. */
#define THINGS_SHARE 0.32
#define THING_SHARE  0.62
#define BOARD_SHARE  0.6  /* over the list with all columns */
/* A window of its first size on a smaller screen would stand out over its edge. */
#define FIRST_WIDTH  1360
#define FIRST_HEIGHT 860
#define REMEMBER_AFTER 1000 /* ms after the first change */

/* --- the side ------------------------------------------------------------- */

static gboolean
shows_thing (FpWindow *self)
{
  return g_strcmp0 (gtk_stack_get_visible_child_name (GTK_STACK (self->things_or_thing)), "thing") == 0;
}

static double *
share_of_upper (FpWindow *self)
{
  return shows_thing (self) ? &self->remembered.thing : &self->remembered.things;
}

static void
set_border (FpWindow *self)
{
  int height = gtk_widget_get_height (self->side_paned);
  double share = *share_of_upper (self);

  if (height <= 0)
    return;
  if (share <= 0.0)
    share = shows_thing (self) ? THING_SHARE : THINGS_SHARE;
  self->arranged = FALSE;
  gtk_paned_set_position (GTK_PANED (self->side_paned), (int) round (height * share));
  self->arranged = TRUE;
}

/* The border moves by a hand, or in proportion with the window: its share is the same then. */
static void
on_border (FpWindow *self)
{
  int height = gtk_widget_get_height (self->side_paned);

  if (self->arranged && height > 0 && gtk_widget_get_visible (self->things_or_thing))
    *share_of_upper (self) = (double) gtk_paned_get_position (GTK_PANED (self->side_paned)) / height;
}

/* As soon as there is a height to be shared out, which is still in the first frame: the toolkit lays out once more. */
static void
on_laid_out (FpWindow *self)
{
  GdkFrameClock *clock = gtk_widget_get_frame_clock (self->side_paned);

  if (clock == NULL || gtk_widget_get_height (self->side_paned) <= 0)
    return;
  g_clear_signal_handler (&self->laid_out, clock);
  set_border (self);
}

static void
on_realized (FpWindow *self)
{
  if (!self->arranged)
    self->laid_out = g_signal_connect_object (gtk_widget_get_frame_clock (self->side_paned), "layout",
                                              G_CALLBACK (on_laid_out), self, G_CONNECT_SWAPPED | G_CONNECT_AFTER);
}

void
fp_window_show_thing (FpWindow *self, gboolean thing)
{
  gboolean was_arranged = self->arranged;

  self->arranged = FALSE;
  gtk_stack_set_visible_child_name (GTK_STACK (self->things_or_thing), thing ? "thing" : "things");
  fp_show_or_hide (self->things_or_thing,
                   thing || (!self->remembered.findings_full && !gtk_widget_get_visible (self->wide_list)), self->board);
  self->arranged = was_arranged;
  if (was_arranged)
    set_border (self);
}

static void
on_full (FpWindow *self)
{
  self->remembered.findings_full = fp_findings_list_is_full (FP_FINDINGS_LIST (self->findings));
  fp_window_show_thing (self, shows_thing (self));
  fp_window_remember_soon (self);
}

/* --- the lists -------------------------------------------------------------- */

void
fp_window_focus_list (FpWindow *self, const char *id)
{
  const gboolean wide = gtk_widget_get_visible (self->wide_list);

  fp_things_list_focus (FP_THINGS_LIST (wide ? self->wide_things : self->things), id);
}

/* Below the board, for as long as it is wanted; the one beside the board gives way to it. */
static void
list_wide (GtkWidget *widget, const char *name, GVariant *parameter)
{
  FpWindow *self = FP_WINDOW (widget);
  const gboolean shown = !gtk_widget_get_visible (self->wide_list);
  const int height = gtk_widget_get_height (self->board_paned);

  (void) name, (void) parameter;
  gtk_widget_activate_action (widget, "win.show-board", NULL);
  if (shown && height > 0)
    gtk_paned_set_position (GTK_PANED (self->board_paned), (int) round (height * BOARD_SHARE));
  fp_show_or_hide (self->wide_list, shown, self->board);
  fp_window_show_thing (self, shows_thing (self));
  fp_window_update_actions (self);
  if (shown)
    fp_window_focus_list (self, fp_document_chosen (self->document));
  else
    gtk_widget_grab_focus (self->board);
}

/* Chosen things stay so: more are chosen besides them. */
static void
show_things (GtkWidget *widget, const char *name, GVariant *parameter)
{
  FpWindow *self = FP_WINDOW (widget);

  (void) name, (void) parameter;
  gtk_widget_activate_action (widget, "win.show-board", NULL);
  if (!gtk_widget_get_visible (self->wide_list))
    {
      fp_findings_list_set_full (FP_FINDINGS_LIST (self->findings), FALSE);
      fp_window_show_thing (self, FALSE);
    }
  fp_window_focus_list (self, fp_document_chosen (self->document));
}

static void
show_findings (GtkWidget *widget, const char *name, GVariant *parameter)
{
  (void) name, (void) parameter;
  gtk_widget_activate_action (widget, "win.show-board", NULL);
  if (!fp_findings_list_focus (FP_FINDINGS_LIST (FP_WINDOW (widget)->findings)))
    fp_window_notice (FP_WINDOW (widget), "Nothing is found short of a limit.", FALSE);
}

static void
list_order (GtkWidget *widget, const char *name, GVariant *parameter)
{
  FpWindow *self = FP_WINDOW (widget);

  (void) name;
  fp_things_list_sort (FP_THINGS_LIST (self->wide_things), g_variant_get_string (parameter, NULL));
  fp_window_focus_list (self, fp_document_chosen (self->document));
}

void
fp_window_class_add_list_actions (GtkWidgetClass *c)
{
  gtk_widget_class_install_action (c, "win.show-things", NULL, show_things);
  gtk_widget_class_install_action (c, "win.list-wide", NULL, list_wide);
  gtk_widget_class_install_action (c, "win.show-findings", NULL, show_findings);
  gtk_widget_class_install_action (c, "win.list-order", "s", list_order);
}

/* --- the window as a whole ------------------------------------------------ */

void
fp_window_arrange (FpWindow *self)
{
  FpRemembered *r = &self->remembered;

  *r = fp_remembered_load ();
  gtk_window_set_default_size (GTK_WINDOW (self), r->width > 0 ? r->width : FIRST_WIDTH,
                               r->height > 0 ? r->height : FIRST_HEIGHT);
  if (r->maximized)
    gtk_window_maximize (GTK_WINDOW (self));
  fp_findings_list_set_full (FP_FINDINGS_LIST (self->findings), r->findings_full);
  g_signal_connect_swapped (self->side_paned, "realize", G_CALLBACK (on_realized), self);
  g_signal_connect_swapped (self->side_paned, "notify::position", G_CALLBACK (on_border), self);
  g_signal_connect_swapped (self->findings, "full", G_CALLBACK (on_full), self);
  g_signal_connect_swapped (self->board, "shows", G_CALLBACK (fp_window_remember_soon), self);
}

static void
remember_board (FpWindow *self)
{
  FpBoardView *board = FP_BOARD_VIEW (self->board);
  FpCut cuts[FP_N_VIEWS];

  for (guint v = 0; v < FP_N_VIEWS; v++)
    cuts[v] = fp_board_view_cut (board, (FpViewId) v);
  fp_remembered_board_save (fp_document_path (self->document), fp_board_view_hidden (board), cuts);
}

/* What has no file yet looks like no other, unless it is the same that a crash has left. */
void
fp_window_recall_board (FpWindow *self, gboolean recovered)
{
  FpBoardView *board = FP_BOARD_VIEW (self->board);
  FpCut cuts[FP_N_VIEWS];
  FpHidden hidden;

  if (self->document == NULL || (fp_document_path (self->document) == NULL && !recovered)
      || !fp_remembered_board_load (fp_document_path (self->document), &hidden, cuts))
    return;
  fp_board_view_set_hidden (board, hidden);
  for (FpViewId v = FP_VIEW_PLAN + 1; v < FP_N_VIEWS; v++)
    if (cuts[v].placed || fp_board_view_cut (board, v).placed)
      fp_board_view_set_cut (board, v, &cuts[v]);
  fp_window_tell_shown (self);
}

void
fp_window_remember (FpWindow *self)
{
  FpRemembered *r = &self->remembered;

  r->maximized = gtk_window_is_maximized (GTK_WINDOW (self));
  gtk_window_get_default_size (GTK_WINDOW (self), &r->width, &r->height);
  fp_remembered_save (r);
  if (self->document != NULL)
    remember_board (self);
}

static gboolean
on_remember (gpointer data)
{
  FpWindow *self = data;

  self->remember = 0;
  fp_window_remember (self);
  return G_SOURCE_REMOVE;
}

void
fp_window_remember_soon (FpWindow *self)
{
  if (self->remember == 0)
    self->remember = g_timeout_add (REMEMBER_AFTER, on_remember, self);
}

void
fp_window_forget_soon (FpWindow *self)
{
  g_clear_handle_id (&self->remember, g_source_remove);
}
