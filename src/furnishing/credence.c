/* SPDX-License-Identifier: GPL-3.0-or-later */
/* credence.c - the side table for vessels and cruets: a top, four legs, a shelf between */
#include "kind-private.h"

enum { LENGTH, DEPTH, HEIGHT };

#define UFC "UFC 4-730-02 (2004), credence table: 30 x 12 in, 30 in high, shelf between"

static const FpParam params[] = {
  [LENGTH] = FP_LENGTH ("length", "Length", 300, 762, 3000, UFC),
  [DEPTH] = FP_LENGTH ("depth", "Depth", 200, 305, 1200, UFC),
  [HEIGHT] = FP_LENGTH ("height", "Height", 500, 762, 1200, UFC),
  FP_NO_MORE_PARAMS
};

#define BOARD 30.0 /* design judgement */

static void
extent (const FpForm *form, FpExtent *out)
{
  *out = fp_extent_bearing (fp_centred_box (form->param[LENGTH], form->param[DEPTH]), form->param[HEIGHT]);
}

static void
solids (const FpForm *form, FpSolids *out)
{
  const double *p = form->param;
  const FpBox box = fp_centred_box (p[LENGTH], p[DEPTH]);
  const double inset = 20, leg = 50, under = p[HEIGHT] - BOARD, shelf = p[HEIGHT] * 0.3;

  for (guint i = 0; i < 4; i++)
    {
      const double x = i % 2 == 0 ? box.x0 + inset : box.x1 - inset - leg;
      const double y = i < 2 ? box.y0 + inset : box.y1 - inset - leg;
      fp_solids_add_box (out, FP_PART_BODY, x, y, 0, x + leg, y + leg, under);
    }
  fp_solids_add_box (out, FP_PART_SHELF, box.x0 + inset + leg, box.y0 + inset, shelf - BOARD, box.x1 - inset - leg,
                     box.y1 - inset, shelf);
  fp_solids_add_box (out, FP_PART_SHELF, box.x0, box.y0, under, box.x1, box.y1, p[HEIGHT]);
}

static void
dims (const FpForm *form, GArray *out)
{
  const double *p = form->param;
  const double x = p[LENGTH] / 2, y = p[DEPTH] / 2;

  fp_dims_add_x (out, LENGTH, (FpVec3) { -x, -y, p[HEIGHT] }, p[LENGTH], FP_IN_PLAN, 4);
  fp_dims_add_y (out, DEPTH, (FpVec3) { x, -y, p[HEIGHT] }, p[DEPTH], FP_IN_PLAN, 5);
  fp_dims_add_z (out, HEIGHT, (FpVec3) { x, -y, 0 }, p[HEIGHT], FP_IN_ELEVATION, 4);
}

static void
quantities (const FpForm *form, GArray *out)
{
  fp_quantities_add_part (out, &fp_kind_credence, form, FP_PART_SHELF, "credence, top and shelf", FP_MATERIAL_WOOD);
  fp_quantities_add_part (out, &fp_kind_credence, form, FP_PART_BODY, "credence, legs", FP_MATERIAL_WOOD);
}

const FpKind fp_kind_credence = {
  .id = "credence",
  .label = "Credence",
  .tells = "The small table on the Epistle side for the cruets, the vessels and what else is needed at Mass.",
  .role = FP_ROLE_CREDENCE,
  .anchor = FP_ANCHOR_BACK,
  .spot = FP_SPOT_EPISTLE_WALL,
  .clearance = 50,
  .params = params,
  .extent = extent,
  .solids = solids,
  .dims = dims,
  .quantities = quantities,
};
