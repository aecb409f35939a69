/* SPDX-License-Identifier: GPL-3.0-or-later */
/* board-tool.h - what the pointer does on the board
 *
 * A state machine in millimetres of paper (y upward) that knows no toolkit
 * and no project: it is told of presses and motion, and answers what that
 * means.  The caller does it.
 *
 *   idle --press--> pressed --past the threshold--> moving | panning --release--> idle
 *                      `------------release------> idle (a click)
 *
 * A press that is cancelled waits for its release without another answer.
 */
#pragma once

#include "footpace/drawing.h"

G_BEGIN_DECLS

typedef enum { FP_TOOL_IDLE, FP_TOOL_PRESSED, FP_TOOL_MOVING, FP_TOOL_PANNING, FP_TOOL_SPENT } FpToolState;

/* What lies under the pointer. */
typedef struct
{
  const char *item;      /* interned; NULL: paper                            */
  const char *param;     /* interned; of a dimension that can be typed over  */
  int         view;      /* FpViewId, -1: none                               */
  gboolean    movable;   /* may be taken hold of by a press                  */
  double      scale;     /* of the view                                      */
  FpPoint     origin;    /* where the thing stands on the plan, mm: what snaps to the axis */
} FpToolHit;

typedef enum
{
  FP_TOOL_NOTHING,
  FP_TOOL_CHOOSE,        /* item (NULL: nothing is chosen any more)          */
  FP_TOOL_TYPE_OVER,     /* item, param: the dimension was clicked           */
  FP_TOOL_BEGIN,         /* item: it was taken hold of                       */
  FP_TOOL_MOVE,          /* item, by: how far from where it was, mm          */
  FP_TOOL_KEEP,          /* item, by: it was let go                          */
  FP_TOOL_PUT_BACK,      /* item: the move was cancelled                     */
  FP_TOOL_PAN,           /* pan: paper mm since the last answer              */
} FpToolDeed;

typedef struct
{
  FpToolDeed  deed;
  const char *item, *param;
  FpVec3      by;
  FpPoint     pan;
} FpToolAnswer;

typedef struct
{
  gboolean fine;         /* 1 mm instead of 10 mm, and no snapping           */
  gboolean straight;     /* along one axis only                              */
} FpToolManner;

typedef struct
{
  FpToolState state;
  FpToolHit   hit;
  FpPoint     from, last; /* paper mm                                        */
  double      threshold;  /* paper mm                                        */
  FpVec3      by;
} FpBoardTool;

#define FP_TOOL_STEP      10.0 /* mm, what a move is rounded to              */
#define FP_TOOL_STEP_FINE 1.0
#define FP_TOOL_SNAP      1.5  /* mm of paper, within which a thing snaps to the axis of the church */

void         fp_board_tool_init   (FpBoardTool *self, double threshold);
/* @pan: the press pans whatever lies under it (middle button, space held). */
FpToolAnswer fp_board_tool_press   (FpBoardTool *self, FpPoint at, const FpToolHit *hit, gboolean pan);
FpToolAnswer fp_board_tool_motion  (FpBoardTool *self, FpPoint at, FpToolManner manner);
FpToolAnswer fp_board_tool_release (FpBoardTool *self, FpPoint at);
/* Escape, a broken grab, or an edit from elsewhere. */
FpToolAnswer fp_board_tool_cancel  (FpBoardTool *self);

/* How far a movement over the paper moves a thing in a view: only along what the view shows. */
FpVec3       fp_board_tool_travel  (const FpToolHit *hit, FpPoint moved, FpToolManner manner);

G_END_DECLS
