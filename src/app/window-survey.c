/* SPDX-License-Identifier: GPL-3.0-or-later */
/* window-survey.c - what only the survey asks for: outlines typed anew, and what was never there taken out */
#include "window-private.h"

#include "outline-dialog.h"
#include "outline-edit.h"

static const FpPlaced *
the_one (FpWindow *self)
{
  return self->document != NULL && fp_document_n_chosen (self->document) == 1
         ? fp_document_chosen_placed (self->document) : NULL;
}

void
fp_window_update_survey (FpWindow *self)
{
  const FpPlaced *placed = the_one (self);

  gtk_widget_action_set_enabled (GTK_WIDGET (self), "win.outline",
                                 placed != NULL && !placed->ghost && fp_outline_has (placed->item));
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "win.strike", placed != NULL && placed->in_survey);
}

static void
outline (GtkWidget *widget, const char *name, GVariant *parameter)
{
  FpWindow *self = FP_WINDOW (widget);

  (void) name, (void) parameter;
  fp_board_view_cancel (FP_BOARD_VIEW (self->board));
  fp_outline_dialog_show (GTK_WINDOW (self), self->document, fp_document_chosen (self->document));
}

/* Removing marks it in this alternative; this is for what was measured amiss. */
static void
strike (GtkWidget *widget, const char *name, GVariant *parameter)
{
  FpWindow *self = FP_WINDOW (widget);
  const char *what = fp_item_name (the_one (self)->item);
  g_autofree char *label = g_strdup_printf ("Take %s out of the survey", what);
  g_autofree char *said = g_strdup_printf ("%s was taken out of the survey, in every alternative. Undo brings it back.",
                                           what);
  g_autoptr (GError) error = NULL;
  FpProject *next;

  (void) name, (void) parameter;
  fp_board_view_cancel (FP_BOARD_VIEW (self->board));
  next = fp_project_without_item (fp_document_project (self->document), fp_document_alternative (self->document),
                                  fp_document_chosen (self->document), &error);
  if (fp_document_edit (self->document, next, label, NULL))
    fp_window_notice (self, said, FALSE);
  else
    fp_window_tell_amiss (self, error);
}

void
fp_window_class_add_survey_actions (GtkWidgetClass *c)
{
  gtk_widget_class_install_action (c, "win.outline", NULL, outline);
  gtk_widget_class_install_action (c, "win.strike", NULL, strike);
}
