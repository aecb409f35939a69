/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "footpace/order-marks.h"

#define CIRCLE  0.95 /* radius, in heights */
#define FIGURES 0.8

void
fp_draw_flame (FpDrawing *drawing, FpPoint wick, double height)
{
  const double h = height, w = h * 0.27;
  const FpPoint pt[] = { { wick.x, wick.y }, { wick.x + w, wick.y + h * 0.35 }, { wick.x + w * 0.6, wick.y + h * 0.65 },
                         { wick.x, wick.y + h }, { wick.x - w * 0.6, wick.y + h * 0.65 },
                         { wick.x - w, wick.y + h * 0.35 } };

  fp_drawing_area (drawing, FP_PEN_DIMENSION, FP_FILL_PAPER, 0, pt, G_N_ELEMENTS (pt));
}

void
fp_draw_order_number (FpDrawing *drawing, FpPoint at, double height, guint number)
{
  g_autofree char *text = g_strdup_printf ("%u", number);

  fp_drawing_circle (drawing, FP_PEN_OUTLINE, FP_FILL_PAPER, at, height * CIRCLE);
  fp_drawing_text (drawing, (FpPoint) { at.x, at.y - height * FIGURES / 2 }, height * FIGURES, 0, FP_ALIGN_MIDDLE, text);
}

static char *
range_text (guint first, guint last)
{
  return g_strdup_printf ("%u–%u", first, last);
}

double
fp_order_range_half (double height, guint first, guint last)
{
  g_autofree char *text = range_text (first, last);

  return fp_lettering_width (text, height * FIGURES) / 2 + height * FIGURES / 2;
}

void
fp_draw_order_range (FpDrawing *drawing, FpPoint at, double height, guint first, guint last)
{
  g_autofree char *text = range_text (first, last);
  const double h = height * FIGURES, half = fp_order_range_half (height, first, last);
  const FpPoint frame[] = { { at.x - half, at.y - h }, { at.x + half, at.y - h }, { at.x + half, at.y + h },
                            { at.x - half, at.y + h } };

  fp_drawing_area (drawing, FP_PEN_OUTLINE, FP_FILL_PAPER, 0, frame, G_N_ELEMENTS (frame));
  fp_drawing_text (drawing, (FpPoint) { at.x, at.y - h / 2 }, h, 0, FP_ALIGN_MIDDLE, text);
}
