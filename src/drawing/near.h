/* SPDX-License-Identifier: GPL-3.0-or-later */
/* near.h - dimensions within a view, beside what they measure
 *
 * What lies deep in a view is dimensioned where it stands: the dimension line
 * as near to the thing as ISO 129-1 lets it (8 to 10 mm from its outline), its
 * figure on blank paper, or, between two faces, straight from one to the
 * other.  It crosses no other dimension, and few lines of the drawing.
 */
#pragma once

#include "cover.h"
#include "wanted.h"

G_BEGIN_DECLS

/* What is placed now. */
typedef enum
{
  FP_NEAR_ALL,
  FP_NEAR_MUSTS,  /* only what must be told                                                     */
  FP_NEAR_INSIST, /* what must be told here, on a patch of paper where nothing is blank         */
  FP_NEAR_ANYHOW, /* the same at whatever cost                                                  */
  FP_NEAR_CHOSEN, /* from where what is chosen is set out, at whatever cost but among rows of seats */
} FpNearAmong;

/**
 * fp_near_place:
 * @rank_max: measures of a greater rank are not placed now
 * @before: (nullable) (element-type FpWanted): where they stood, and stay where they still fit
 * @within: paper mm; nothing stands outside
 * @axis: x of the axis of the church; NAN where the view has none
 *
 * Finds room for what is not yet placed, the foremost first, and takes it.
 */
void fp_near_place (GArray *wanted, FpNearAmong among, guint rank_max, const GArray *before, const FpBox *within, double axis,
                    FpCover *room);

G_END_DECLS
