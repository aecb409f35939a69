/* SPDX-License-Identifier: GPL-3.0-or-later */
/* board.h - the three views on one surface that share their axes
 *
 * Paper mm, scaled and moved by whoever shows it.
 */
#pragma once

#include "footpace/view.h"

G_BEGIN_DECLS

/* Where the names and dimensions of a board stood. */
typedef struct _FpBoardMemory FpBoardMemory;

typedef struct
{
  FpViewLayout view[FP_N_VIEWS]; /* where each lies: for turning the pointer into mm */
  FpBox        frame[FP_N_VIEWS]; /* paper mm: what belongs to which view            */
  FpPoint      mitre_a, mitre_b;  /* the mitre line, paper mm                        */
  gboolean     alone;             /* one view has the whole surface: the frames of the others are empty, */
  FpViewId     only;              /* this one, and there is no mitre line            */
  FpBox        seen;              /* paper mm: titles stand within; empty: on the paper */
  FpBoardMemory *memory;          /* (nullable), borrowed: what stood somewhere when it was last drawn stays there
                                     while it still fits, and costs nothing its name */
  gboolean      in_hand;          /* more changes may follow at once: until all lies still a name may be missing for
                                     what stood somewhere */
  const char *const *chosen;      /* (nullable), borrowed: ids, ended by NULL: the plan tells from where they are set out,
                                     whatever else it leaves out */
} FpBoardLayout;

FpBoardMemory *fp_board_memory_new  (void);
void           fp_board_memory_free (FpBoardMemory *self);
FpBoardMemory *fp_board_memory_copy (const FpBoardMemory *self);
/* Whether a name is missing on the board drawn last that it may have room for when nothing is in hand. */
gboolean       fp_board_memory_lacks_name (const FpBoardMemory *self);
/* Takes what the other remembers of the views that both have drawn last at the same step of scale. */
void           fp_board_memory_recall (FpBoardMemory *self, const FpBoardMemory *other);

/**
 * fp_board_layout:
 * @across: (nullable): where placed, the section across the church has the place of the elevation, cut there; turned,
 *   it faces west, and x is mirrored in it (fp_layout_point())
 * @scale: 50 for 1:50; any number
 * @pan: paper mm by which the whole sheet is moved
 *
 * Elevation above plan, section to the right of the elevation, in first-angle
 * arrangement (ISO 5456-2): x, y and z are shared at every scale.
 */
void       fp_board_layout (const FpScene *scene, const FpCut *across, double scale, FpPoint pan, FpUnits units,
                            FpBoardLayout *out);
FpDrawing *fp_board_draw   (FpProjection *const projection[FP_N_VIEWS], const FpBoardLayout *layout,
                            double width, double height);
/* Scale and pan at which the sanctuary (or @whole church) fits width × height mm of paper. */
void       fp_board_fit    (const FpScene *scene, const FpCut *across, gboolean whole, double width, double height,
                            double *scale, FpPoint *pan);

/* One view on the whole surface; @pan: paper mm at which its origin lies. */
void       fp_board_layout_alone (const FpScene *scene, const FpCut *across, FpViewId view, double scale, FpPoint pan,
                                  FpUnits units, FpBoardLayout *out);
void       fp_board_fit_alone    (const FpScene *scene, const FpCut *across, FpViewId view, gboolean whole,
                                  double width, double height, double *scale, FpPoint *pan);

G_END_DECLS
