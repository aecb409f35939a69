/* SPDX-License-Identifier: GPL-3.0-or-later */
/* over-part.h - a drawing that lies over one view of the board; knows no toolkit */
#pragma once

#include "footpace/drawing.h"

G_BEGIN_DECLS

/* Round what is drawn, for circles and names at its edge; paper mm. */
#define FP_OVER_EDGE 40.0

/* Its corner is where the lower left edge of the drawing lies, view coordinates. */
typedef struct
{
  FpDrawing *drawing; /* NULL: nothing is shown there */
  FpPoint    corner;
} FpOverPart;

/* An empty drawing on which all of the church lies, and so much more of paper on its right, mm.  @layout: (inout): how the view
 * lies on the board; moved to where it lies in the drawing */
void fp_over_part_begin (FpOverPart *self, const FpScene *scene, FpViewId view, double beside, FpViewLayout *layout);
void fp_over_part_clear (FpOverPart *self);

G_END_DECLS
