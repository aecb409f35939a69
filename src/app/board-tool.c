/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "board-tool.h"

#include <math.h>

static const FpToolAnswer nothing = { FP_TOOL_NOTHING };

void
fp_board_tool_init (FpBoardTool *self, double threshold)
{
  *self = (FpBoardTool) { .state = FP_TOOL_IDLE, .threshold = threshold };
}

static double
rounded (double mm, double step)
{
  double r = round (mm / step) * step;

  return r == 0.0 ? 0.0 : r; /* no "-0" */
}

/* The axis is where most things of a sanctuary belong, and the hand is not that steady. */
static double
snapped_to_axis (const FpToolHit *hit, double dx, FpToolManner manner)
{
  double reach = FP_TOOL_SNAP * hit->scale;

  if (!manner.fine && fabs (hit->origin.x + dx) < reach && fabs (dx) > 0.0)
    return hit->origin.x == 0.0 ? 0.0 : -hit->origin.x;
  return rounded (dx, manner.fine ? FP_TOOL_STEP_FINE : FP_TOOL_STEP);
}

FpVec3
fp_board_tool_travel (const FpToolHit *hit, FpPoint moved, FpToolManner manner)
{
  double step = manner.fine ? FP_TOOL_STEP_FINE : FP_TOOL_STEP;
  FpPoint d = { moved.x * hit->scale, moved.y * hit->scale };
  FpVec3 by = { 0.0, 0.0, 0.0 };

  switch ((FpViewId) hit->view)
    {
    case FP_VIEW_PLAN:
      if (manner.straight)
        *(fabs (d.x) < fabs (d.y) ? &d.x : &d.y) = 0.0;
      by.x = snapped_to_axis (hit, d.x, manner);
      by.y = rounded (d.y, step);
      break;
    case FP_VIEW_ELEVATION:
      by.x = snapped_to_axis (hit, d.x, manner);
      break;
    case FP_VIEW_SECTION: /* east is on its left */
      by.y = rounded (-d.x, step);
      break;
    case FP_N_VIEWS:
      break;
    }
  return by;
}

FpToolAnswer
fp_board_tool_press (FpBoardTool *self, FpPoint at, const FpToolHit *hit, gboolean pan)
{
  FpToolAnswer answer = nothing;

  if (self->state == FP_TOOL_MOVING)
    answer = fp_board_tool_cancel (self);
  self->from = self->last = at;
  self->hit = *hit;
  self->by = (FpVec3) { 0.0, 0.0, 0.0 };
  self->state = pan ? FP_TOOL_PANNING : FP_TOOL_PRESSED;
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
  FpVec3 by = fp_board_tool_travel (&self->hit, moved, manner);

  if (by.x == self->by.x && by.y == self->by.y)
    return nothing;
  self->by = by;
  return (FpToolAnswer) { .deed = FP_TOOL_MOVE, .item = self->hit.item, .by = by };
}

/* Past the threshold: a thing is taken hold of, the paper is shifted. */
static FpToolAnswer
set_out (FpBoardTool *self, FpPoint at)
{
  if (hypot (at.x - self->from.x, at.y - self->from.y) < self->threshold)
    return nothing;
  if (self->hit.item != NULL && self->hit.movable && self->hit.view >= 0)
    {
      self->state = FP_TOOL_MOVING;
      return (FpToolAnswer) { .deed = FP_TOOL_BEGIN, .item = self->hit.item };
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
    case FP_TOOL_PANNING: return pan_to (self, at);
    case FP_TOOL_IDLE:
    case FP_TOOL_SPENT:
      break;
    }
  return nothing;
}

static FpToolAnswer
click (const FpToolHit *hit)
{
  if (hit->param != NULL)
    return (FpToolAnswer) { .deed = FP_TOOL_TYPE_OVER, .item = hit->item, .param = hit->param };
  return (FpToolAnswer) { .deed = FP_TOOL_CHOOSE, .item = hit->item };
}

FpToolAnswer
fp_board_tool_release (FpBoardTool *self, FpPoint at)
{
  FpToolState was = self->state;

  (void) at; /* the last motion counts: a release is where the pointer was */
  self->state = FP_TOOL_IDLE;
  if (was == FP_TOOL_PRESSED)
    return click (&self->hit);
  if (was == FP_TOOL_MOVING)
    return (FpToolAnswer) { .deed = FP_TOOL_KEEP, .item = self->hit.item, .by = self->by };
  return nothing;
}

FpToolAnswer
fp_board_tool_cancel (FpBoardTool *self)
{
  FpToolState was = self->state;

  if (was == FP_TOOL_IDLE)
    return nothing;
  self->state = FP_TOOL_SPENT;
  if (was == FP_TOOL_MOVING)
    return (FpToolAnswer) { .deed = FP_TOOL_PUT_BACK, .item = self->hit.item };
  return nothing;
}
