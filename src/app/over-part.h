/* SPDX-License-Identifier: GPL-3.0-or-later */
/* over-part.h - a drawing that lies over one view of the board; knows no toolkit */
#pragma once

#include "footpace/drawing.h"

G_BEGIN_DECLS

/* Its corner is where the lower left edge of the drawing lies, view coordinates. */
typedef struct
{
  FpDrawing *drawing; /* NULL: nothing is shown there */
  FpPoint    corner;
} FpOverPart;

/* An empty drawing on which all of the church lies, with room for a key on its right.  @layout: (inout): how the view lies on
 * the board; moved to where it lies in the drawing */
void  fp_over_part_begin (FpOverPart *self, const FpScene *scene, FpViewId view, FpViewLayout *layout);
void  fp_over_part_clear (FpOverPart *self);
/* Where the key of the plan begins, from the top down: paper mm. */
FpBox fp_over_part_key   (const FpOverPart *self);

G_END_DECLS
