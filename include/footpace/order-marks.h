/* SPDX-License-Identifier: GPL-3.0-or-later */
/* order-marks.h - how flames, and the numbers of the order of lighting, look on paper
 *
 * Paper mm.
 */
#pragma once

#include "footpace/marks.h"

G_BEGIN_DECLS

/* A flame so high, from its wick up. */
void   fp_draw_flame        (FpDrawing *drawing, FpPoint wick, double height);
/* A number in a circle about @at; @height: two fifths of the circle, in which the figures are four fifths of it. */
void   fp_draw_order_number (FpDrawing *drawing, FpPoint at, double height, guint number);
/* "3–7" in a frame about @at, of what is lit one after the other. */
void   fp_draw_order_range  (FpDrawing *drawing, FpPoint at, double height, guint first, guint last);
/* Half the width of that frame. */
double fp_order_range_half  (double height, guint first, guint last);

G_END_DECLS
