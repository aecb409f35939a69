/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "pew-block.h"

#include <math.h>

static double
param_of (const FpPlaced *placed, const char *id, double otherwise)
{
  const int i = fp_kind_param_index (fp_item_kind (placed->item), id);

  return i < 0 ? otherwise : placed->form.param[i];
}

FpPewBlock
fp_pew_block (const FpPlaced *pews)
{
  return (FpPewBlock) { pews, param_of (pews, "rows", 1), param_of (pews, "spacing", 0), param_of (pews, "depth", 0),
                        param_of (pews, "radius", 0), param_of (pews, "length", 0) };
}

double
fp_pew_block_behind (const FpPewBlock *self, FpPoint at)
{
  const FpPoint local = fp_place_unpoint (&self->placed->place, at);

  return self->radius > 0 ? hypot (local.x, local.y - self->radius) - self->radius : -local.y;
}

double
fp_pew_block_depth (const FpPewBlock *self)
{
  return (self->rows - 1) * self->spacing + self->depth;
}

gboolean
fp_pews_contain (const FpPlaced *pews, FpPoint at)
{
  const FpPewBlock b = fp_pew_block (pews);
  const FpPoint local = fp_place_unpoint (&pews->place, at);
  const double d = fp_pew_block_behind (&b, at);
  const double along = b.radius > 0 ? atan2 (local.x, b.radius - local.y) * (b.radius + d) : local.x;

  return d >= 0 && d <= fp_pew_block_depth (&b) && fabs (along) <= b.length / 2;
}

/* @behind the front of the first row, @along a row from its middle */
static FpPoint
point_of (const FpPewBlock *b, double behind, double along)
{
  const double r = b->radius + behind, turn = b->radius > 0 ? along / r : 0;
  const FpPoint local = b->radius > 0 ? (FpPoint) { r * sin (turn), b->radius - r * cos (turn) }
                                      : (FpPoint) { along, -behind };

  return fp_place_point (&b->placed->place, local);
}

/* Along the front, and back along the back. */
void
fp_pews_field (const FpPlaced *pews, FpPoint out[FP_PEWS_CORNERS])
{
  const guint each = FP_PEWS_CORNERS / 2;
  const FpPewBlock b = fp_pew_block (pews);

  for (guint i = 0; i < each; i++)
    {
      const double along = b.length * ((double) i / (each - 1) - 0.5);
      out[i] = point_of (&b, 0, along);
      out[each + i] = point_of (&b, fp_pew_block_depth (&b), -along);
    }
}
