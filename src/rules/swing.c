/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "swing.h"

#include <math.h>

/* The part of a side with a coordinate of at least @least; FALSE: none of it. */
static gboolean
clip (FpPoint *a, FpPoint *b, gboolean by_y, double least)
{
  const double u = (by_y ? a->y : a->x) - least, v = (by_y ? b->y : b->x) - least, t = u / (u - v);
  const FpPoint cut = { a->x + t * (b->x - a->x), a->y + t * (b->y - a->y) };

  if (u < 0 && v < 0)
    return FALSE;
  if (u < 0)
    *a = cut;
  else if (v < 0)
    *b = cut;
  return TRUE;
}

gboolean
fp_swing_note (FpSwing *self, FpPoint a, FpPoint b, double from)
{
  double far;

  if (!clip (&a, &b, FALSE, 0) || !clip (&a, &b, TRUE, from))
    return FALSE;
  {
    const double ex = b.x - a.x, ey = b.y - a.y, ee = ex * ex + ey * ey;
    const double t = ee > 0 ? CLAMP (-(a.x * ex + a.y * ey) / ee, 0, 1) : 0;
    a = (FpPoint) { a.x + t * ex, a.y + t * ey };
  }
  far = hypot (a.x, a.y);
  if (far >= self->nearest)
    return FALSE;
  self->nearest = far;
  self->at = a;
  return TRUE;
}

void
fp_swing_edge (const FpSwing *self, FpPoint edge[2])
{
  const double far = hypot (self->at.x, self->at.y);

  edge[0] = far > 0 ? self->at : (FpPoint) { 0, 0 };
  edge[1] = far > 0 ? (FpPoint) { self->at.x * self->leaf / far, self->at.y * self->leaf / far } : (FpPoint) { 0, self->leaf };
}

void
fp_swing_arc (double leaf, FpPoint arc[FP_SWING_ARC + 2])
{
  for (guint i = 0; i <= FP_SWING_ARC; i++)
    arc[i] = (FpPoint) { leaf * cos (G_PI / 2 * i / FP_SWING_ARC), leaf * sin (G_PI / 2 * i / FP_SWING_ARC) };
  arc[FP_SWING_ARC + 1] = (FpPoint) { 0, 0 };
}
