/* SPDX-License-Identifier: GPL-3.0-or-later */
/* board-stop.c - what stands in the line of sight, named over the board where that has room for it
 *
 * Only here is it known what the board has drawn there, and what lies over it.  Where there is no room it is not named: the
 * words below the board tell it too.
 */
#include "board-view-private.h"

#include <math.h>

#define PAD 1.0 /* paper mm, round the words */

struct _FpBoardStop
{
  FpOverPart  part[FP_N_VIEWS];
  double      scale;
  FpBoardOver over;
  FpPoint     aside[FP_N_VIEWS]; /* of the words from the cross, paper mm; NAN: nowhere */
  FpDrawing  *laid;             /* of the board, on which room was looked for; owned; NULL: it is to be looked for */
};

void
fp_board_stop_forget (FpBoardStop *self)
{
  for (guint v = 0; v < FP_N_VIEWS; v++)
    fp_over_part_clear (&self->part[v]);
  fp_board_over_forget (&self->over);
  g_clear_pointer (&self->laid, fp_drawing_unref);
}

FpBoardStop *
fp_board_stop_new (void)
{
  FpBoardStop *self = g_new0 (FpBoardStop, 1);

  for (guint v = 0; v < FP_N_VIEWS; v++)
    self->aside[v] = (FpPoint) { NAN, NAN };
  return self;
}

void
fp_board_stop_free (FpBoardStop *self)
{
  if (self == NULL)
    return;
  fp_board_stop_forget (self);
  g_free (self);
}

/* --- room --------------------------------------------------------------------------------- */

static FpLaid
laid_over (FpBoardView *self, FpViewId view, const FpOverPart *part, double scale)
{
  const FpViewLayout *layout = &self->layout.view[view];

  return (FpLaid) { part->drawing, fp_view_to_paper (layout, part->corner), scale / layout->scale };
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

static gboolean
find_room (FpBoardView *self, FpViewId view, FpPoint cross, FpPoint *at)
{
  const FpSightDraft *draft = fp_board_view_sight (self);
  const FpBlindDraft *blind = fp_board_view_blind (self);
  const FpBox seen = seen_of (self, view);
  FpLaid laid[3] = { { self->drawing, { 0, 0 }, 1 } };
  guint n = 1;

  if (draft->part[view].drawing == NULL)
    return FALSE;
  laid[n++] = laid_over (self, view, &draft->part[view], draft->scale);
  if (view == FP_VIEW_PLAN && blind != NULL && blind->part.drawing != NULL)
    laid[n++] = laid_over (self, view, &blind->part, blind->scale);
  return fp_sight_stop_room (laid, n, &seen, cross, draft->stop_words, at);
}

/* Cross and words, in a drawing of their own that is no larger than both. */
static void
draw_words (FpBoardView *self, FpBoardStop *stop, FpViewId view, FpPoint cross, FpPoint at, const char *words)
{
  const double height = FP_SIGHT_KEY_LETTERS, width = fp_lettering_width (words, height);
  const FpBox box = { MIN (at.x, cross.x) - PAD, MIN (at.y, cross.y) - PAD, MAX (at.x + width, cross.x) + PAD,
                      MAX (at.y + height, cross.y) + PAD };
  FpOverPart *part = &stop->part[view];

  part->drawing = fp_drawing_new (box.x1 - box.x0, box.y1 - box.y0);
  part->corner = fp_view_from_paper (&self->layout.view[view], (FpPoint) { box.x0, box.y0 });
  fp_drawing_add_sight_stop (part->drawing, (FpPoint) { cross.x - box.x0, cross.y - box.y0 },
                             (FpPoint) { at.x - box.x0, at.y - box.y0 }, words);
}

/* As far from the cross as they stood, so that they do not jump while one zooms. */
static void
name_in (FpBoardView *self, FpBoardStop *stop, FpViewId view, const FpSightDraft *draft)
{
  const FpViewLayout *layout = &self->layout.view[view];
  FpPoint cross, at;

  if (fp_box_is_empty (&self->layout.frame[view]))
    return;
  cross = fp_view_to_paper (layout, fp_layout_point (layout, view, draft->stop));
  at = (FpPoint) { cross.x + stop->aside[view].x, cross.y + stop->aside[view].y };
  stop->aside[view] = (FpPoint) { NAN, NAN };
  if (!find_room (self, view, cross, &at))
    return;
  stop->aside[view] = (FpPoint) { at.x - cross.x, at.y - cross.y };
  draw_words (self, stop, view, cross, at, draft->stop_words);
}

static void
lay (FpBoardView *self, FpBoardStop *stop)
{
  const FpSightDraft *draft = fp_board_view_sight (self);

  fp_board_stop_forget (stop);
  stop->laid = fp_drawing_ref (self->drawing);
  stop->scale = self->layout.view[FP_VIEW_PLAN].scale;
  for (guint v = 0; v < FP_N_VIEWS && draft->stop_words != NULL; v++)
    name_in (self, stop, (FpViewId) v, draft);
}

void
fp_board_stop_snapshot (FpBoardStop *self, FpBoardView *board, GtkSnapshot *snapshot, FpSurfaceLook look)
{
  if (self->laid != board->drawing)
    lay (board, self);
  fp_board_over_snapshot (&self->over, board, snapshot, look, self->part, self->scale);
}

const FpOverPart *
fp_board_stop_part (const FpBoardStop *self, FpBoardView *board, FpViewId view, double *scale)
{
  *scale = self->scale;
  return self->laid != NULL && self->laid == board->drawing ? &self->part[view] : NULL;
}
