/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "over-part.h"

void
fp_over_part_begin (FpOverPart *self, const FpScene *scene, FpViewId view, double beside, FpViewLayout *layout)
{
  const FpBox3 all = fp_scene_box (scene);
  const FpPoint a = fp_layout_point (layout, view, all.lo), b = fp_layout_point (layout, view, all.hi);
  const double x0 = MIN (a.x, b.x), y0 = MIN (a.y, b.y), x1 = MAX (a.x, b.x), y1 = MAX (a.y, b.y);

  layout->clip = FP_BOX_EMPTY;
  layout->origin = (FpPoint) { FP_OVER_EDGE - x0 / layout->scale, FP_OVER_EDGE - y0 / layout->scale };
  self->corner = (FpPoint) { x0 - FP_OVER_EDGE * layout->scale, y0 - FP_OVER_EDGE * layout->scale };
  self->drawing = fp_drawing_new ((x1 - x0) / layout->scale + 2 * FP_OVER_EDGE + beside,
                                  (y1 - y0) / layout->scale + 2 * FP_OVER_EDGE);
}

void
fp_over_part_clear (FpOverPart *self)
{
  g_clear_pointer (&self->drawing, fp_drawing_unref);
}
