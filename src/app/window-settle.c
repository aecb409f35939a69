/* SPDX-License-Identifier: GPL-3.0-or-later */
/* window-settle.c - all findings of the greatest weight that is short are settled, in one step of the history */
#include "window-private.h"

#include "settled-window.h"

static FpFindings *
current (FpWindow *self)
{
  FpFindings *sighted = self->document != NULL ? fp_document_sighted (self->document) : NULL;

  return sighted != NULL && fp_findings_scene (sighted) == fp_document_scene (self->document) ? sighted : NULL;
}

/* The greatest that is short; FP_N_WEIGHTS: nothing is. */
static FpWeight
weight_of (const FpFindings *findings)
{
  for (guint w = 0; w < FP_N_WEIGHTS; w++)
    if (fp_findings_short (findings, (FpWeight) w) > 0)
      return (FpWeight) w;
  return FP_N_WEIGHTS;
}

/* --- in the background ---------------------------------------------------------- */

typedef struct
{
  FpFindings *of;   /* owned */
  FpSettling *done; /* owned; NULL: not yet */
} Settle;

static Settle *
settle_new (const FpFindings *of)
{
  Settle *self = g_new0 (Settle, 1);

  self->of = fp_findings_ref (of);
  return self;
}

static void
settle_free (gpointer data)
{
  Settle *self = data;

  fp_findings_unref (self->of);
  fp_settling_free (self->done);
  g_free (self);
}

static void
run (FpLatestJob *job, gpointer data, gpointer window)
{
  const Settle *asked = data;
  Settle *result = settle_new (asked->of);

  (void) window;
  result->done = fp_settle_all (result->of, weight_of (result->of), fp_latest_job_cancellable (job));
  fp_latest_job_post (job, result);
}

static void
end (FpWindow *self)
{
  self->is_settling = FALSE;
  fp_findings_list_set_settling (FP_FINDINGS_LIST (self->findings), FALSE);
  fp_window_update_settle (self);
}

static void
receive (gpointer result, gpointer data)
{
  FpWindow *self = data;
  const Settle *settle = result;
  const FpSettling *done = settle->done;
  g_autofree char *label = g_strdup_printf ("Settle all that is %s", fp_weight_label (weight_of (settle->of)));

  if (!self->is_settling)
    return;
  end (self);
  if (fp_findings_scene (settle->of) != fp_document_scene (self->document) || done->cut == FP_HINDRANCE_CANCELLED)
    {
      fp_window_notice (self, "Something was changed meanwhile: nothing was settled.", FALSE);
      return;
    }
  if (done->project != NULL)
    fp_document_edit (self->document, fp_project_ref (done->project), label, NULL);
  gtk_window_present (GTK_WINDOW (fp_settled_window_new (GTK_WINDOW (self), done)));
}

static const FpLatestWork settling = { run, receive, settle_free, settle_free, 0, 0 };

/* --- asked for --------------------------------------------------------------------- */

static void
settle_all (GtkWidget *widget, const char *name, GVariant *parameter)
{
  FpWindow *self = FP_WINDOW (widget);
  FpFindings *findings = current (self);

  (void) name, (void) parameter;
  if (findings == NULL || self->is_settling || weight_of (findings) == FP_N_WEIGHTS)
    return;
  fp_board_view_cancel (FP_BOARD_VIEW (self->board));
  if (self->settling == NULL)
    self->settling = fp_latest_new ("settle", &settling, self);
  self->is_settling = TRUE;
  fp_findings_list_set_settling (FP_FINDINGS_LIST (self->findings), TRUE);
  fp_window_update_settle (self);
  fp_latest_ask (self->settling, settle_new (findings));
}

void
fp_window_update_settle (FpWindow *self)
{
  const FpFindings *findings = current (self);

  gtk_widget_action_set_enabled (GTK_WIDGET (self), "win.settle-all",
                                 findings != NULL && !self->is_settling && weight_of (findings) != FP_N_WEIGHTS
                                   && !fp_document_is_previewing (self->document));
}

void
fp_window_drop_settling (FpWindow *self)
{
  if (self->is_settling && self->findings != NULL)
    fp_findings_list_set_settling (FP_FINDINGS_LIST (self->findings), FALSE);
  self->is_settling = FALSE;
  g_clear_pointer (&self->settling, fp_latest_free);
}

void
fp_window_class_add_settle (GtkWidgetClass *widget_class)
{
  gtk_widget_class_install_action (widget_class, "win.settle-all", NULL, settle_all);
}
