/* SPDX-License-Identifier: GPL-3.0-or-later */
/* board-evidence.c - what was measured, over the views of the board, while a finding is marked */
#include "board-view-private.h"

#include "footpace/evidence-drawing.h"

struct _FpBoardEvidence
{
  FpEvidence *evidence;         /* owned */
  FpOverPart  part[FP_N_VIEWS];
  FpDrawing  *laid;             /* of the board, on which room was looked for; owned; NULL: not drawn yet */
  double      scale;
  FpUnits     units;
  FpBoardOver over;
};

static void
forget_drawing (FpBoardEvidence *self)
{
  for (guint v = 0; v < FP_N_VIEWS; v++)
    fp_over_part_clear (&self->part[v]);
  fp_board_over_forget (&self->over);
  g_clear_pointer (&self->laid, fp_drawing_unref);
}

void
fp_board_view_mark_evidence (FpBoardView *self, const FpEvidence *evidence)
{
  if (self->evidence != NULL)
    {
      forget_drawing (self->evidence);
      fp_evidence_free (self->evidence->evidence);
      g_clear_pointer (&self->evidence, g_free);
    }
  if (evidence != NULL && !fp_evidence_is_empty (evidence))
    {
      self->evidence = g_new0 (FpBoardEvidence, 1);
      self->evidence->evidence = fp_evidence_copy (evidence);
    }
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

const FpEvidence *
fp_board_view_marked_evidence (FpBoardView *self)
{
  return self->marked && self->evidence != NULL ? self->evidence->evidence : NULL;
}

/* What is seen of a view, paper mm. */
static FpBox
seen_of (FpBoardView *self, FpViewId view)
{
  const FpPoint low = fp_board_view_to_paper (self, 0, gtk_widget_get_height (GTK_WIDGET (self)));
  const FpPoint high = fp_board_view_to_paper (self, gtk_widget_get_width (GTK_WIDGET (self)), 0);
  const FpBox *frame = &self->layout.frame[view];

  return (FpBox) { MAX (frame->x0, low.x), MAX (frame->y0, low.y), MIN (frame->x1, high.x), MIN (frame->y1, high.y) };
}

static void
draw (FpBoardView *self, FpBoardEvidence *evidence)
{
  const FpLaid under = { self->drawing, { 0, 0 }, 1 };

  forget_drawing (evidence);
  evidence->laid = fp_drawing_ref (self->drawing);
  evidence->scale = self->layout.view[FP_VIEW_PLAN].scale;
  evidence->units = fp_board_view_units (self);
  for (FpViewId v = FP_VIEW_PLAN; v < FP_N_VIEWS; v++)
    {
      const FpBox seen = seen_of (self, v);
      FpViewLayout layout = self->layout.view[v];
      FpPoint corner;

      if (fp_box_is_empty (&self->layout.frame[v]))
        continue;
      layout.clip = FP_BOX_EMPTY;
      layout.units = evidence->units;
      evidence->part[v].drawing = fp_evidence_draw (evidence->evidence, v, self->projection[v], &layout, &under, 1, &seen, &corner);
      if (evidence->part[v].drawing != NULL)
        evidence->part[v].corner = fp_view_from_paper (&self->layout.view[v], corner);
    }
}

gboolean
fp_board_view_has_evidence (FpBoardView *self, FpViewId view)
{
  return self->marked && self->evidence != NULL && self->evidence->part[view].drawing != NULL;
}

void
fp_board_view_snapshot_evidence (FpBoardView *self, GtkSnapshot *snapshot, FpSurfaceLook look)
{
  FpBoardEvidence *evidence = self->evidence;

  if (!self->marked || evidence == NULL || self->drawing == NULL)
    return;
  if (evidence->laid != self->drawing || fp_board_over_is_outgrown (self, evidence->scale)
      || evidence->units != fp_board_view_units (self))
    draw (self, evidence);
  fp_board_over_snapshot (&evidence->over, self, snapshot, look, evidence->part, evidence->scale);
}
