/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "set-marks.h"

#include "footpace/order-marks.h"

FpBox
fp_set_word_box (const char *text, FpPoint middle)
{
  const double half = fp_lettering_width (text, FP_SET_WORD_HIGH) / 2 + FP_SET_AIR, high = FP_SET_WORD_HIGH / 2 + FP_SET_AIR;

  return (FpBox) { middle.x - half, middle.y - high, middle.x + half, middle.y + high };
}

/* The hatches by which engravers tell colours without ink (after S. Petra Sancta, 1638, from memory): white is plain, red
 * upright, green falls to the right, purple to the left, black is crossed.  Rose, which they have not, is told as red. */
static guint
hatches_of (FpColour colour, double turn[2])
{
  switch (colour)
    {
    case FP_COLOUR_RED:
    case FP_COLOUR_ROSE: turn[0] = 90; return 1;
    case FP_COLOUR_GREEN: turn[0] = 135; return 1;
    case FP_COLOUR_VIOLET: turn[0] = 45; return 1;
    case FP_COLOUR_BLACK: turn[0] = 90; turn[1] = 180; return 2;
    case FP_COLOUR_UNSAID:
    case FP_COLOUR_WHITE:
    case FP_N_COLOURS: break;
    }
  return 0;
}

static void
draw_veil (FpDrawing *drawing, const FpSetMark *mark)
{
  double turn[2];
  const guint n = hatches_of (mark->colour, turn);

  fp_drawing_run (drawing, FP_PEN_OUTLINE, mark->drape, mark->n_drape, TRUE);
  for (guint i = 0; i < n; i++)
    fp_drawing_area (drawing, FP_PEN_HATCH, FP_FILL_NONE, turn[i], mark->drape, mark->n_drape);
}

static void
draw_word (FpDrawing *drawing, const FpSetMark *mark, FpPoint at)
{
  const FpBox box = fp_set_word_box (mark->text, at);
  const FpPoint patch[] = { { box.x0, box.y0 }, { box.x1, box.y0 }, { box.x1, box.y1 }, { box.x0, box.y1 } };

  fp_drawing_area (drawing, FP_PEN_HATCH, FP_FILL_PAPER, 0, patch, G_N_ELEMENTS (patch));
  fp_drawing_text (drawing, (FpPoint) { at.x, at.y - FP_SET_WORD_HIGH / 2 }, FP_SET_WORD_HIGH, 0, FP_ALIGN_MIDDLE, mark->text);
}

static void
draw_number (FpDrawing *drawing, const FpSetMark *mark, FpPoint at)
{
  if (mark->first == mark->last)
    fp_draw_order_number (drawing, at, FP_SET_NUMBER_HIGH, mark->first);
  else
    fp_draw_order_range (drawing, at, FP_SET_NUMBER_HIGH, mark->first, mark->last);
}

void
fp_set_marks_draw (FpDrawing *drawing, const GArray *marks, FpViewId view)
{
  for (guint i = 0; i < marks->len; i++)
    {
      const FpSetMark *mark = &g_array_index (marks, FpSetMark, i);
      const FpPoint at = { mark->anchor.x + mark->by.x, mark->anchor.y + mark->by.y };

      fp_drawing_set_item (drawing, mark->item, mark->type == FP_SET_NUMBER ? FP_STANDING_EXISTING : mark->standing,
                           (int) view);
      switch (mark->type)
        {
        case FP_SET_VEIL: draw_veil (drawing, mark); break;
        case FP_SET_FLAME: fp_draw_flame (drawing, at, FP_SET_FLAME_HIGH); break;
        case FP_SET_NUMBER:
          draw_number (drawing, mark, at);
          break;
        case FP_SET_WORD: draw_word (drawing, mark, at); break;
        }
    }
  fp_drawing_set_item (drawing, NULL, FP_STANDING_EXISTING, (int) view);
}
