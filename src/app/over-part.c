/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "over-part.h"

/* Round what is drawn, for circles and names at its edge; paper mm. */
#define EDGE 40.0
/* The key stands right of the plan, clear of its dimensions, under the section: where the board has room. */
#define KEY_APART 26.0
#define KEY_WIDTH 70.0

void
fp_over_part_begin (FpOverPart *self, const FpScene *scene, FpViewId view, FpViewLayout *layout)
{
  const FpBox3 all = fp_scene_box (scene);
  const FpPoint a = fp_layout_point (layout, view, all.lo), b = fp_layout_point (layout, view, all.hi);
  const double x0 = MIN (a.x, b.x), y0 = MIN (a.y, b.y), x1 = MAX (a.x, b.x), y1 = MAX (a.y, b.y);

  layout->clip = FP_BOX_EMPTY;
  layout->origin = (FpPoint) { EDGE - x0 / layout->scale, EDGE - y0 / layout->scale };
  self->corner = (FpPoint) { x0 - EDGE * layout->scale, y0 - EDGE * layout->scale };
  self->drawing = fp_drawing_new ((x1 - x0) / layout->scale + 2 * EDGE + KEY_WIDTH,
                                  (y1 - y0) / layout->scale + 2 * EDGE);
}

void
fp_over_part_clear (FpOverPart *self)
{
  g_clear_pointer (&self->drawing, fp_drawing_unref);
}

FpBox
fp_over_part_key (const FpOverPart *self)
{
  const double x = fp_drawing_width (self->drawing) - EDGE - KEY_WIDTH + KEY_APART;

  return (FpBox) { x, 0, x + KEY_WIDTH, fp_drawing_height (self->drawing) - EDGE };
}
