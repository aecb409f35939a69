/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "span.h"

#define TICK 1.2

void
fp_draw_span (FpDrawing *drawing, FpPoint from, FpPoint to, double letters, const char *figure)
{
  const gboolean upright = from.x == to.x;
  const FpPoint middle = { (from.x + to.x) / 2 - (upright ? 1 : 0), (from.y + to.y) / 2 + (upright ? 0 : 1) };

  fp_drawing_line (drawing, FP_PEN_DIMENSION, from, to);
  for (guint i = 0; i < 2; i++)
    {
      const FpPoint p = i == 0 ? from : to;
      fp_drawing_line (drawing, FP_PEN_DIMENSION, (FpPoint) { p.x - TICK, p.y - TICK }, (FpPoint) { p.x + TICK, p.y + TICK });
    }
  fp_drawing_text (drawing, middle, letters, upright ? 90 : 0, FP_ALIGN_MIDDLE, figure);
}
