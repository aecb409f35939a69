/* SPDX-License-Identifier: GPL-3.0-or-later */
/* board-change.c - over the board: what a change that is offered would make of the church, and what it is */
#include "board-view-private.h"

#include "change-drafter.h"

#define BESIDE_PX 10.0

struct _FpBoardChange
{
  FpOverDrafter   *drafter;
  const FpProject *then;   /* owned reference: with the change made           */
  char            *item;   /* id of what is changed first                     */
  char            *words;
  FpChangeDraft   *draft;  /* NULL: none has come yet                         */
  FpBoardOver      over;
};

static void
ask (FpBoardView *self)
{
  FpViewLayout view[FP_N_VIEWS];

  if (!fp_board_view_has_projections (self))
    return;
  fp_board_view_shown_views (self, view);
  fp_over_drafter_ask (self->change->drafter, fp_change_request_new (self->projection, self->change->then, self->change->item, view));
}

static void
on_draft (gpointer draft, gpointer data)
{
  FpBoardView *self = data;

  fp_change_draft_free (self->change->draft);
  self->change->draft = draft;
  fp_board_over_forget (&self->change->over);
  fp_board_view_tell (self);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

void
fp_board_view_free_change (FpBoardView *self)
{
  FpBoardChange *change = g_steal_pointer (&self->change);

  if (change == NULL)
    return;
  fp_over_drafter_free (change->drafter);
  fp_change_draft_free (change->draft);
  fp_project_unref (change->then);
  fp_board_over_forget (&change->over);
  g_free (change->item);
  g_free (change->words);
  g_free (change);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

void
fp_board_view_show_change (FpBoardView *self, const FpProject *then, const char *item, const char *words)
{
  const gboolean was_shown = fp_board_view_change (self) != NULL;

  fp_board_view_free_change (self);
  if (was_shown && self->document != NULL)
    fp_board_view_tell (self);
  if (then == NULL)
    return;
  self->change = g_new0 (FpBoardChange, 1);
  self->change->drafter = fp_over_drafter_new (&fp_change_drafting, on_draft, self);
  self->change->then = fp_project_ref (then);
  self->change->item = g_strdup (item);
  self->change->words = g_strdup (words);
  ask (self);
}

const char *
fp_board_view_change (FpBoardView *self)
{
  return self->change != NULL && self->change->draft != NULL ? self->change->words : NULL;
}

/* --- painted ------------------------------------------------------------------------------ */

static void
push_frame (FpBoardView *self, GtkSnapshot *snapshot, guint view)
{
  const FpBox *frame = &self->layout.frame[view];
  const FpPoint a = fp_board_view_to_widget (self, (FpPoint) { frame->x0, frame->y1 });
  const FpPoint b = fp_board_view_to_widget (self, (FpPoint) { frame->x1, frame->y0 });

  gtk_snapshot_push_clip (snapshot, &GRAPHENE_RECT_INIT ((float) a.x, (float) a.y, (float) (b.x - a.x), (float) (b.y - a.y)));
}

static void
snapshot_words (FpBoardView *self, GtkSnapshot *snapshot)
{
  const FpChangeDraft *draft = self->change->draft;
  const FpPoint at = fp_board_view_on_widget (self, draft->view, draft->at);
  cairo_t *cr = gtk_snapshot_append_cairo (snapshot,
                                           &GRAPHENE_RECT_INIT (0, 0, (float) gtk_widget_get_width (GTK_WIDGET (self)),
                                                                (float) gtk_widget_get_height (GTK_WIDGET (self))));

  fp_board_view_draw_words (self, cr, self->change->words, at.x + BESIDE_PX, at.y - BESIDE_PX);
  cairo_destroy (cr);
}

/* Over all else, as what is chosen is marked too. */
void
fp_board_view_snapshot_change (FpBoardView *self, GtkSnapshot *snapshot, FpSurfaceLook look)
{
  const FpChangeDraft *draft = self->change != NULL ? self->change->draft : NULL;

  if (draft == NULL)
    return;
  for (guint v = 0; v < FP_N_VIEWS; v++)
    {
      FpOverPart part[FP_N_VIEWS] = { { NULL, { 0, 0 } } };

      if (draft->part[v].drawing == NULL || fp_box_is_empty (&self->layout.frame[v]))
        continue;
      part[v] = draft->part[v];
      push_frame (self, snapshot, v);
      fp_board_over_snapshot (&self->change->over, self, snapshot, look, part, draft->scale);
      gtk_snapshot_pop (snapshot);
    }
  snapshot_words (self, snapshot);
  if (fp_board_over_is_outgrown (self, draft->scale) && !self->held)
    ask (self);
}
