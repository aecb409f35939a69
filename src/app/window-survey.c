/* SPDX-License-Identifier: GPL-3.0-or-later */
/* window-survey.c - what only the survey asks for: outlines typed anew, what stands there already put into it, and what
 * was never there taken out */
#include "window-private.h"

#include "arrange-dialog.h"
#include "outline-dialog.h"
#include "outline-edit.h"

#include "footpace/arrange.h"

static const FpPlaced *
the_one (FpWindow *self)
{
  return self->document != NULL && fp_document_n_chosen (self->document) == 1
         ? fp_document_chosen_placed (self->document) : NULL;
}

/* Of what was removed nothing stands there. */
static gboolean
any_is_proposed (FpDocument *d)
{
  gboolean any = FALSE;

  for (const char *const *id = d != NULL ? fp_document_chosen_all (d) : NULL; id != NULL && *id != NULL; id++)
    {
      const FpPlaced *placed = fp_document_placed (d, *id);

      if (placed->ghost)
        return FALSE;
      any = any || !placed->in_survey;
    }
  return any;
}

void
fp_window_update_survey (FpWindow *self)
{
  const FpPlaced *placed = the_one (self);

  gtk_widget_action_set_enabled (GTK_WIDGET (self), "win.outline",
                                 placed != NULL && !placed->ghost && fp_outline_has (placed->item));
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "win.strike", placed != NULL && placed->in_survey);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "win.put-into-survey", any_is_proposed (self->document));
}

static void
outline (GtkWidget *widget, const char *name, GVariant *parameter)
{
  FpWindow *self = FP_WINDOW (widget);

  (void) name, (void) parameter;
  fp_board_view_cancel (FP_BOARD_VIEW (self->board));
  fp_outline_dialog_show (GTK_WINDOW (self), self->document, fp_document_chosen (self->document));
}

static void
put_into_survey (GtkWidget *widget, const char *name, GVariant *parameter)
{
  FpWindow *self = FP_WINDOW (widget);
  g_autofree char *what = fp_chosen_words (self->document), *label = g_strdup_printf ("Put %s into the survey", what);
  g_autofree char *said = g_strdup_printf ("Now in the survey, and existing in every alternative: %s.", what);
  g_autoptr (GError) error = NULL;
  g_auto (GStrv) made = NULL;
  FpProject *next;

  (void) name, (void) parameter;
  fp_board_view_cancel (FP_BOARD_VIEW (self->board));
  next = fp_arrange_existing (fp_document_base_scene (self->document), fp_document_chosen_all (self->document), &made,
                              &error);
  if (!fp_document_edit (self->document, next, label, NULL))
    {
      fp_window_notice (self, error->message, TRUE);
      return;
    }
  fp_document_choose_all (self->document, (const char *const *) made);
  fp_window_notice (self, said, FALSE);
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
  gtk_widget_class_install_action (c, "win.put-into-survey", NULL, put_into_survey);
}
