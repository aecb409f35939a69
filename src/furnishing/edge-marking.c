/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "edge-marking.h"

#include <math.h>

void
fp_strokes_add_edge_marking (GArray *out, const FpForm *form, guint at, FpPoint a, FpPoint b)
{
  const double width = form->param[at + 1], length = hypot (b.x - a.x, b.y - a.y);
  const FpPoint in = { -(b.y - a.y) / length * width, (b.x - a.x) / length * width };

  if (!fp_form_is (form, at, FP_EDGE_MARKED) || !(width > 0) || !(length > 0))
    return;
  fp_strokes_add (out, (FpPoint) { a.x + in.x, a.y + in.y }, (FpPoint) { b.x + in.x, b.y + in.y }, FALSE);
}
