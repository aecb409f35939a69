/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "labels.h"

#include <math.h>

static void
draw_ground (FpDrawing *drawing, const FpLabel *label, guint line)
{
  const FpPlace place = { label->at[line].x, label->at[line].y, label->turn };
  const double half = fp_lettering_width (label->line[line], label->lettering) / 2 + 0.4;
  const double foot = -0.25 * label->lettering - 0.3, top = 1.05 * label->lettering + 0.3;
  const FpPoint corner[4] = {
    fp_place_point (&place, (FpPoint) { -half, foot }), fp_place_point (&place, (FpPoint) { half, foot }),
    fp_place_point (&place, (FpPoint) { half, top }), fp_place_point (&place, (FpPoint) { -half, top }),
  };

  fp_drawing_area (drawing, FP_PEN_HATCH, FP_FILL_PAPER, 0, corner, 4);
}

void
fp_labels_draw (FpDrawing *drawing, const GArray *labels, FpViewId view)
{
  for (guint i = 0; i < labels->len; i++)
    {
      const FpLabel *label = &g_array_index (labels, FpLabel, i);
      fp_drawing_set_item (drawing, label->item, label->standing, (int) view);
      for (guint k = 0; label->has_ground && k < label->n_lines; k++)
        draw_ground (drawing, label, k);
      if (label->has_leader)
        {
          fp_drawing_line (drawing, FP_PEN_DIMENSION, label->leader[0], label->leader[1]);
          if (hypot (label->shelf.x - label->leader[1].x, label->shelf.y - label->leader[1].y) > 0.05)
            fp_drawing_line (drawing, FP_PEN_DIMENSION, label->leader[1], label->shelf);
          fp_drawing_circle (drawing, FP_PEN_HATCH, FP_FILL_INK, label->leader[0], 0.45);
        }
      for (guint k = 0; k < label->n_lines; k++)
        fp_drawing_text (drawing, label->at[k], label->lettering, label->turn, FP_ALIGN_MIDDLE, label->line[k]);
    }
  fp_drawing_set_item (drawing, NULL, FP_STANDING_EXISTING, (int) view);
}
