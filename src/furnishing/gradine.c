/* SPDX-License-Identifier: GPL-3.0-or-later */
/* gradine.c - a shelf at the back of the mensa, for cross and candlesticks */
#include "kind-private.h"

enum { LENGTH, DEPTH, HEIGHT };

static const FpParam params[] = {
  [LENGTH] = FP_LENGTH ("length", "Length", 300, 2200, 8000, FP_JUDGEMENT),
  [DEPTH] = FP_LENGTH ("depth", "Depth", 60, 200, 800, FP_JUDGEMENT),
  [HEIGHT] = FP_LENGTH ("height", "Height", 20, 150, 800,
                        FP_JUDGEMENT "; P. Dearmer, The Parson's Handbook (2nd ed. 1899), p. 61, has 3 in"),
  FP_NO_MORE_PARAMS
};

static const FpRole stands_on[] = { FP_ROLE_ALTAR, FP_ROLE_NONE };

static FpBox
plan (const FpForm *form)
{
  return fp_centred_box (form->param[LENGTH], form->param[DEPTH]);
}

static void
extent (const FpForm *form, FpExtent *out)
{
  *out = fp_extent_bearing (plan (form), form->param[HEIGHT]);
}

static void
solids (const FpForm *form, FpSolids *out)
{
  const FpBox box = plan (form);

  fp_solids_add_box (out, FP_PART_SHELF, box.x0, box.y0, 0, box.x1, box.y1, form->param[HEIGHT]);
}

static void
dims (const FpForm *form, GArray *out)
{
  const double *p = form->param;
  const FpBox box = plan (form);

  fp_dims_add_x (out, LENGTH, (FpVec3) { box.x0, box.y0, p[HEIGHT] }, p[LENGTH], FP_IN_ELEVATION, 4);
  fp_dims_add_y (out, DEPTH, (FpVec3) { box.x1, box.y0, p[HEIGHT] }, p[DEPTH], FP_IN_SECTION, 4);
  fp_dims_add_z (out, HEIGHT, (FpVec3) { box.x1, box.y0, 0 }, p[HEIGHT], FP_IN_ELEVATION, 3);
}

static void
quantities (const FpForm *form, GArray *out)
{
  fp_quantities_add_part (out, &fp_kind_gradine, form, FP_PART_SHELF, "gradine", FP_MATERIAL_STONE);
}

const FpKind fp_kind_gradine = {
  .id = "gradine",
  .label = "Gradine",
  .tells = "A low shelf at the back of the altar, on which the cross and the candlesticks stand.",
  .role = FP_ROLE_GRADINE,
  .anchor = FP_ANCHOR_BACK,
  .spot = FP_SPOT_ON_SUPPORT,
  .stands_on = stands_on,
  .params = params,
  .extent = extent,
  .solids = solids,
  .dims = dims,
  .quantities = quantities,
};
