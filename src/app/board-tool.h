/* SPDX-License-Identifier: GPL-3.0-or-later */
/* board-tool.h - what the pointer does on the board
 *
 * A state machine in millimetres of paper (y upward) that knows no toolkit
 * and no project: it is told of presses and motion, and answers what that
 * means.  The caller does it.
 *
 *   idle --press--> pressed --past the threshold--> moving | framing | panning --release--> idle
 *                      `------------release------> idle (a click)
 *   moving --a value is typed--> typing --entered | given up--> idle
 *
 * A press that is cancelled waits for its release without another answer.
 * While a value is typed the pointer means nothing, pressed or released.
 */
#pragma once

#include "footpace/drawing.h"

G_BEGIN_DECLS

typedef enum { FP_TOOL_IDLE, FP_TOOL_PRESSED, FP_TOOL_MOVING, FP_TOOL_FRAMING, FP_TOOL_PANNING, FP_TOOL_TYPING,
               FP_TOOL_SPENT } FpToolState;

/* What lies under the pointer. */
typedef struct
{
  const char *item;      /* interned; NULL: paper                            */
  const char *param;     /* interned; of a dimension that can be typed over  */
  guint       dimension; /* likewise, of one that shows no single parameter: its number; 0: none */
  int         view;      /* FpViewId, -1: none                               */
  gboolean    movable;   /* may be taken hold of by a press                  */
  gboolean    turned;    /* the view is seen from the other side             */
  guint       ways;      /* 1: goes across only, 2: along only; 0: as the view shows */
  double      scale;     /* of the view                                      */
  guint       handle;    /* of the item: number from 1; 0: none              */
} FpToolHit;

typedef enum
{
  FP_TOOL_NOTHING,
  FP_TOOL_CHOOSE,        /* item (NULL: nothing is chosen any more)          */
  FP_TOOL_CHOOSE_ALSO,   /* item: besides the others, or no longer           */
  FP_TOOL_FRAME,         /* frame: what it holds would be chosen             */
  FP_TOOL_CHOOSE_WITHIN, /* frame, also: what lies wholly in it is chosen    */
  FP_TOOL_DROP_FRAME,    /* it was given up                                  */
  FP_TOOL_CHOOSE_HANDLE, /* handle of the item                               */
  FP_TOOL_TYPE_OVER,     /* item, param: the dimension was clicked           */
  FP_TOOL_TYPE_MEASURE,  /* item, dimension: likewise, of what lies between things */
  FP_TOOL_BEGIN,         /* item, handle: it was taken hold of               */
  FP_TOOL_MOVE,          /* item, by: how far from where it was, mm          */
  FP_TOOL_KEEP,          /* item, by: it was let go                          */
  FP_TOOL_PUT_BACK,      /* item: the move was cancelled                     */
  FP_TOOL_PAN,           /* pan: paper mm since the last answer              */
} FpToolDeed;

typedef struct
{
  FpToolDeed  deed;
  const char *item, *param;
  guint       handle, dimension;
  gboolean    also;
  FpVec3      by;
  FpPoint     pan;
  FpBox       frame;     /* paper mm                                         */
} FpToolAnswer;

typedef struct
{
  gboolean fine;         /* 1 mm instead of 10 mm, and nothing catches       */
  gboolean straight;     /* along one axis only                              */
} FpToolManner;

/* With what the button is pressed. */
typedef struct
{
  gboolean pan;          /* shifts the paper whatever lies under it (middle button, space held) */
  gboolean also;         /* chooses besides the others (Shift or Ctrl)       */
  gboolean frame;        /* from paper it draws a frame (Shift)              */
  gboolean add;          /* what the frame holds is chosen besides the others (Shift and Ctrl) */
} FpToolPress;

/**
 * FpToolCatch:
 * @by: (inout): how far the thing is moved, mm
 * @ways: 1: x may be caught, 2: y; 0: nothing may, and what was caught is let go
 * @scale: of the view, from which the reach follows
 *
 * Returns: which of them were
 */
typedef guint (*FpToolCatch) (FpVec3 *by, guint ways, double scale, gpointer data);

typedef struct
{
  FpToolState state;
  FpToolHit   hit;
  FpPoint     from, last; /* paper mm                                        */
  double      threshold;  /* paper mm                                        */
  FpToolPress how;
  FpVec3      by;
  FpToolCatch catch;      /* NULL: nothing catches                           */
  gpointer    catch_data;
} FpBoardTool;

#define FP_TOOL_STEP      10.0 /* mm, what a move is rounded to              */
#define FP_TOOL_STEP_FINE 1.0

void         fp_board_tool_init    (FpBoardTool *self, double threshold);
void         fp_board_tool_catch_by (FpBoardTool *self, FpToolCatch catch, gpointer data);
FpToolAnswer fp_board_tool_press   (FpBoardTool *self, FpPoint at, const FpToolHit *hit, FpToolPress how);
FpToolAnswer fp_board_tool_motion  (FpBoardTool *self, FpPoint at, FpToolManner manner);
FpToolAnswer fp_board_tool_release (FpBoardTool *self, FpPoint at);
/* Escape, a broken grab, or an edit from elsewhere. */
FpToolAnswer fp_board_tool_cancel  (FpBoardTool *self);

/* From now on values are typed; FALSE where nothing is being moved. */
gboolean     fp_board_tool_type    (FpBoardTool *self);
FpToolAnswer fp_board_tool_typed   (FpBoardTool *self, FpVec3 by); /* as far as has been typed */
FpToolAnswer fp_board_tool_enter   (FpBoardTool *self);            /* it stays there */

/* How far a movement over the paper moves a thing in a view: only along what the view shows. */
FpVec3       fp_board_tool_travel  (const FpBoardTool *self, FpPoint moved, FpToolManner manner);

G_END_DECLS
