/* SPDX-License-Identifier: GPL-3.0-or-later */
/* way-drawing.h - a way drawn on the plan: its route, and its narrowest place with a dimension between what stands there */
#pragma once

#include "footpace/room-to-move.h"
#include "footpace/view.h"

G_BEGIN_DECLS

/**
 * fp_drawing_add_way:
 * @plan: how a plan lies in the drawing; of what its clip leaves out nothing is drawn
 *
 * The route is a thin line with a dot at either end; the narrowest place has a dimension line with its width, on a patch of
 * paper where it lies over other lines, and the circle of the widest body about it.  A bier is drawn where it is tightest, and
 * so is who stands beside the way.  What has none of it is not drawn.
 */
void  fp_drawing_add_way (FpDrawing *self, const FpWay *way, const FpViewLayout *plan);

/* What all of that covers, paper mm; empty where nothing is drawn. */
FpBox fp_way_drawn_box   (const FpWay *way, const FpViewLayout *plan);

G_END_DECLS
