/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "board-tool.h"

#include <math.h>

static const FpToolAnswer nothing = { FP_TOOL_NOTHING };

void
fp_board_tool_init (FpBoardTool *self, double threshold)
{
  *self = (FpBoardTool) { .state = FP_TOOL_IDLE, .threshold = threshold };
}

void
fp_board_tool_catch_by (FpBoardTool *self, FpToolCatch catch, gpointer data)
{
  self->catch = catch;
  self->catch_data = data;
}

static double
rounded (double mm, double step)
{
  double r = round (mm / step) * step;

  return r == 0.0 ? 0.0 : r; /* no "-0" */
}

/* As the hand is, unrounded; and along which ways the view moves anything. */
static FpVec3
by_hand (const FpToolHit *hit, FpPoint moved, gboolean straight, guint *ways)
{
  const FpPoint d = { (hit->turned ? -moved.x : moved.x) * hit->scale, moved.y * hit->scale };

  switch ((FpViewId) hit->view)
    {
    case FP_VIEW_PLAN:
      *ways = hit->ways != 0 ? hit->ways : !straight ? 3 : fabs (d.x) < fabs (d.y) ? 2 : 1;
      return (FpVec3) { (*ways & 1) != 0 ? d.x : 0.0, (*ways & 2) != 0 ? d.y : 0.0, 0.0 };
    case FP_VIEW_ELEVATION:
      *ways = 1;
      return (FpVec3) { d.x, 0.0, 0.0 };
    case FP_VIEW_SECTION: /* east is on its left */
      *ways = 2;
      return (FpVec3) { 0.0, -d.x, 0.0 };
    case FP_N_VIEWS:
      break;
    }
  *ways = 0;
  return (FpVec3) { 0.0, 0.0, 0.0 };
}

FpVec3
fp_board_tool_travel (const FpBoardTool *self, FpPoint moved, FpToolManner manner)
{
  const double step = manner.fine ? FP_TOOL_STEP_FINE : FP_TOOL_STEP;
  guint ways, caught = 0;
  FpVec3 by = by_hand (&self->hit, moved, manner.straight, &ways);

  if (self->catch != NULL)
    caught = self->catch (&by, manner.fine ? 0 : ways, self->hit.scale, self->catch_data);
  if ((caught & 1) == 0)
    by.x = rounded (by.x, step);
  if ((caught & 2) == 0)
    by.y = rounded (by.y, step);
  return by;
}

FpToolAnswer
fp_board_tool_press (FpBoardTool *self, FpPoint at, const FpToolHit *hit, FpToolPress how)
{
  FpToolAnswer answer = nothing;

  if (self->state == FP_TOOL_MOVING)
    answer = fp_board_tool_cancel (self);
  else if (self->state == FP_TOOL_TYPING)
    answer = fp_board_tool_enter (self); /* as going elsewhere does with any field */
  self->from = self->last = at;
  self->hit = *hit;
  self->how = how;
  self->by = (FpVec3) { 0.0, 0.0, 0.0 };
  self->state = how.pan ? FP_TOOL_PANNING : FP_TOOL_PRESSED;
  return answer;
}

static FpToolAnswer
pan_to (FpBoardTool *self, FpPoint at)
{
  FpToolAnswer answer = { .deed = FP_TOOL_PAN, .pan = { at.x - self->last.x, at.y - self->last.y } };

  self->last = at;
  return answer;
}

static FpToolAnswer
move_to (FpBoardTool *self, FpPoint at, FpToolManner manner)
{
  FpPoint moved = { at.x - self->from.x, at.y - self->from.y };
  FpVec3 by = fp_board_tool_travel (self, moved, manner);

  if (by.x == self->by.x && by.y == self->by.y)
    return nothing;
  self->by = by;
  return (FpToolAnswer) { .deed = FP_TOOL_MOVE, .item = self->hit.item, .by = by };
}

static FpToolAnswer
frame_to (FpBoardTool *self, FpPoint at)
{
  self->last = at;
  return (FpToolAnswer) { .deed = FP_TOOL_FRAME,
                          .frame = { MIN (self->from.x, at.x), MIN (self->from.y, at.y), MAX (self->from.x, at.x),
                                     MAX (self->from.y, at.y) } };
}

/* Past the threshold: a thing is taken hold of, a frame is drawn, the paper is shifted. */
static FpToolAnswer
set_out (FpBoardTool *self, FpPoint at)
{
  if (hypot (at.x - self->from.x, at.y - self->from.y) < self->threshold)
    return nothing;
  if (self->hit.item != NULL && self->hit.movable && self->hit.view >= 0)
    {
      self->state = FP_TOOL_MOVING;
      return (FpToolAnswer) { .deed = FP_TOOL_BEGIN, .item = self->hit.item, .handle = self->hit.handle };
    }
  if (self->how.frame)
    {
      self->state = FP_TOOL_FRAMING;
      return frame_to (self, at);
    }
  self->state = FP_TOOL_PANNING;
  return pan_to (self, at);
}

FpToolAnswer
fp_board_tool_motion (FpBoardTool *self, FpPoint at, FpToolManner manner)
{
  switch (self->state)
    {
    case FP_TOOL_PRESSED: return set_out (self, at);
    case FP_TOOL_MOVING:  return move_to (self, at, manner);
    case FP_TOOL_FRAMING: return frame_to (self, at);
    case FP_TOOL_PANNING: return pan_to (self, at);
    case FP_TOOL_TYPING:
    case FP_TOOL_IDLE:
    case FP_TOOL_SPENT:
      break;
    }
  return nothing;
}

static FpToolAnswer
click (const FpToolHit *hit, gboolean also)
{
  if (also)
    return hit->item != NULL ? (FpToolAnswer) { .deed = FP_TOOL_CHOOSE_ALSO, .item = hit->item } : nothing;
  if (hit->handle != 0)
    return (FpToolAnswer) { .deed = FP_TOOL_CHOOSE_HANDLE, .item = hit->item, .handle = hit->handle };
  if (hit->dimension != 0)
    return (FpToolAnswer) { .deed = FP_TOOL_TYPE_MEASURE, .item = hit->item, .dimension = hit->dimension };
  if (hit->param != NULL)
    return (FpToolAnswer) { .deed = FP_TOOL_TYPE_OVER, .item = hit->item, .param = hit->param };
  return (FpToolAnswer) { .deed = FP_TOOL_CHOOSE, .item = hit->item };
}

FpToolAnswer
fp_board_tool_release (FpBoardTool *self, FpPoint at)
{
  FpToolState was = self->state;
  FpToolAnswer answer;

  (void) at; /* the last motion counts: a release is where the pointer was */
  if (was == FP_TOOL_TYPING)
    return nothing;
  self->state = FP_TOOL_IDLE;
  if (was == FP_TOOL_PRESSED)
    return click (&self->hit, self->how.also);
  if (was == FP_TOOL_MOVING)
    return (FpToolAnswer) { .deed = FP_TOOL_KEEP, .item = self->hit.item, .by = self->by };
  if (was == FP_TOOL_FRAMING)
    {
      answer = frame_to (self, self->last);
      answer.deed = FP_TOOL_CHOOSE_WITHIN;
      answer.also = self->how.add;
      return answer;
    }
  return nothing;
}

FpToolAnswer
fp_board_tool_cancel (FpBoardTool *self)
{
  FpToolState was = self->state;

  if (was == FP_TOOL_IDLE)
    return nothing;
  self->state = was == FP_TOOL_TYPING ? FP_TOOL_IDLE : FP_TOOL_SPENT;
  if (was == FP_TOOL_MOVING || was == FP_TOOL_TYPING)
    return (FpToolAnswer) { .deed = FP_TOOL_PUT_BACK, .item = self->hit.item };
  if (was == FP_TOOL_FRAMING)
    return (FpToolAnswer) { .deed = FP_TOOL_DROP_FRAME };
  return nothing;
}

/* --- typed values --------------------------------------------------------- */

gboolean
fp_board_tool_type (FpBoardTool *self)
{
  if (self->state != FP_TOOL_MOVING)
    return FALSE;
  self->state = FP_TOOL_TYPING;
  return TRUE;
}

FpToolAnswer
fp_board_tool_typed (FpBoardTool *self, FpVec3 by)
{
  if (self->state != FP_TOOL_TYPING)
    return nothing;
  self->by = by;
  return (FpToolAnswer) { .deed = FP_TOOL_MOVE, .item = self->hit.item, .by = by };
}

FpToolAnswer
fp_board_tool_enter (FpBoardTool *self)
{
  if (self->state != FP_TOOL_TYPING)
    return nothing;
  self->state = FP_TOOL_IDLE;
  return (FpToolAnswer) { .deed = FP_TOOL_KEEP, .item = self->hit.item, .by = self->by };
}
