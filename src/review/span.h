/* SPDX-License-Identifier: GPL-3.0-or-later */
/* span.h - a dimension on a sheet that is composed here
 *
 * Private to src/review.
 */
#pragma once

#include "footpace/marks.h"

G_BEGIN_DECLS

/* Level or upright, with ticks at its ends and the figure over its middle, or on its left; paper mm. */
void fp_draw_span (FpDrawing *drawing, FpPoint from, FpPoint to, double letters, const char *figure);

G_END_DECLS
