/* SPDX-License-Identifier: GPL-3.0-or-later */
/* board-sight.c - over the board: what every place sees, and the line of sight of one */
#include "board-view-private.h"

struct _FpBoardSight
{
  FpOverDrafter  *drafter;
  FpSightLook     look;
  FpSightDraft   *draft;    /* NULL: none has come yet                        */
  FpOverDrafter  *blind_drafter;
  FpBlindDraft   *blind;    /* NULL: it is not shown, or has not come yet     */
  FpBoardOver     over, blind_over;
  FpBoardStop    *stop;
};

static void
forget_blind (FpBoardSight *sight)
{
  g_clear_pointer (&sight->blind, fp_blind_draft_free);
  fp_board_over_forget (&sight->blind_over);
  fp_board_stop_forget (sight->stop);
}

/* --- asked for ------------------------------------------------------------------------- */

/* What is shown stays while the paper grows; of another state of the church it would be wrong. */
static void
ask_blind (FpBoardView *self, FpFindings *of, const FpViewLayout *plan)
{
  FpBoardSight *sight = self->sight;
  const FpBlindDraft *blind = sight->blind;

  if (blind != NULL && (blind->of != of || blind->moment != sight->look.moment || blind->focus != sight->look.focus))
    forget_blind (sight);
  if (sight->look.blind && plan->scale > 0 && (sight->blind == NULL || fp_board_over_is_outgrown (self, sight->blind->scale)))
    fp_over_drafter_ask (sight->blind_drafter, fp_blind_request_new (of, sight->look.moment, sight->look.focus, plan));
}

static void
ask (FpBoardView *self)
{
  FpFindings *of = self->document != NULL ? fp_document_sighted (self->document) : NULL;
  FpViewLayout view[FP_N_VIEWS];

  if (self->sight == NULL || of == NULL || !fp_board_view_has_projections (self))
    return;
  fp_board_view_shown_views (self, view);
  fp_over_drafter_ask (self->sight->drafter, fp_sight_request_new (of, self->sight->look, view));
  ask_blind (self, of, &view[FP_VIEW_PLAN]);
}

static void
on_blind (gpointer result, gpointer data)
{
  FpBoardView *self = data;
  FpBlindDraft *draft = result;

  forget_blind (self->sight);
  if (self->sight->look.blind)
    self->sight->blind = draft;
  else
    fp_blind_draft_free (draft);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

static void
on_draft (gpointer result, gpointer data)
{
  FpBoardView *self = data;
  FpSightDraft *draft = result;

  fp_sight_draft_free (self->sight->draft);
  self->sight->draft = draft;
  self->sight->look.place = draft->look.place;
  fp_board_over_forget (&self->sight->over);
  fp_board_stop_forget (self->sight->stop);
  gtk_widget_queue_draw (GTK_WIDGET (self));
  g_signal_emit_by_name (self, "sight-told");
}

void
fp_board_view_sight_changed (FpBoardView *self)
{
  ask (self);
}

void
fp_board_view_forget_sight (FpBoardView *self)
{
  if (self->sight == NULL)
    return;
  g_clear_pointer (&self->sight->draft, fp_sight_draft_free);
  forget_blind (self->sight);
  self->sight->look.place = -1;
  fp_board_over_forget (&self->sight->over);
  fp_board_stop_forget (self->sight->stop);
}

void
fp_board_view_free_sight (FpBoardView *self)
{
  FpBoardSight *sight = g_steal_pointer (&self->sight);

  if (sight == NULL)
    return;
  fp_over_drafter_free (sight->drafter);
  fp_over_drafter_free (sight->blind_drafter);
  fp_sight_draft_free (sight->draft);
  forget_blind (sight);
  fp_board_over_forget (&sight->over);
  fp_board_stop_free (sight->stop);
  g_free (sight);
}

void
fp_board_view_set_sight (FpBoardView *self, const FpSightLook *look)
{
  const gboolean was_shown = self->sight != NULL;

  if (look == NULL)
    fp_board_view_free_sight (self);
  else
    {
      if (self->sight == NULL)
        {
          self->sight = g_new0 (FpBoardSight, 1);
          self->sight->drafter = fp_over_drafter_new (&fp_sight_drafting, on_draft, self);
          self->sight->stop = fp_board_stop_new ();
          self->sight->blind_drafter = fp_over_drafter_new (&fp_blind_drafting, on_blind, self);
        }
      self->sight->look = *look;
      if (!look->blind)
        forget_blind (self->sight);
      ask (self);
    }
  if (was_shown != (self->sight != NULL) && fp_board_view_has_projections (self))
    {
      fp_board_view_lay_out (self);
      fp_board_view_forget_drawing (self);
    }
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

const FpSightDraft *
fp_board_view_sight (FpBoardView *self)
{
  return self->sight != NULL ? self->sight->draft : NULL;
}

const FpBlindDraft *
fp_board_view_blind (FpBoardView *self)
{
  return self->sight != NULL ? self->sight->blind : NULL;
}

const FpOverPart *
fp_board_view_stop (FpBoardView *self, FpViewId view, double *scale)
{
  return fp_board_stop_part (self->sight->stop, self, view, scale);
}

/* --- painted ------------------------------------------------------------------------------ */

/* Under the circles. */
static void
snapshot_blind (FpBoardView *self, GtkSnapshot *snapshot, FpSurfaceLook look)
{
  FpBoardSight *sight = self->sight;

  if (sight->blind == NULL)
    return;
  const FpOverPart part[FP_N_VIEWS] = { [FP_VIEW_PLAN] = sight->blind->part };
  fp_board_over_snapshot (&sight->blind_over, self, snapshot, look, part, sight->blind->scale);
}

void
fp_board_view_snapshot_sight (FpBoardView *self, GtkSnapshot *snapshot, FpSurfaceLook look)
{
  FpBoardSight *sight = self->sight;

  if (sight == NULL || sight->draft == NULL)
    return;
  snapshot_blind (self, snapshot, look);
  fp_board_over_snapshot (&sight->over, self, snapshot, look, sight->draft->part, sight->draft->scale);
  fp_board_stop_snapshot (sight->stop, self, snapshot, look);
  if (fp_board_over_is_outgrown (self, sight->draft->scale) && !self->held)
    ask (self);
}
