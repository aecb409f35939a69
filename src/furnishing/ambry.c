/* SPDX-License-Identifier: GPL-3.0-or-later */
/* ambry.c - the locked cupboard of the holy oils, at a wall
 *
 * Origin: on the floor, the middle of its back.
 */
#include "kind-private.h"

enum { WIDTH, HEIGHT, DEPTH, LEVEL };

static const FpParam params[] = {
  [WIDTH] = FP_LENGTH ("width", "Width", 150, 400, 1500, FP_JUDGEMENT),
  [HEIGHT] = FP_LENGTH ("height", "Height", 200, 550, 2500, FP_JUDGEMENT),
  [DEPTH] = FP_LENGTH ("depth", "Stands out from the wall by", 40, 200, 600, FP_JUDGEMENT),
  [LEVEL] = FP_LENGTH ("underside", "Underside above the floor", 0, 1150, 2500, FP_JUDGEMENT),
  FP_NO_MORE_PARAMS
};

static FpBox
plan (const FpForm *form)
{
  return (FpBox) { -form->param[WIDTH] / 2, -form->param[DEPTH], form->param[WIDTH] / 2, 0 };
}

static void
extent (const FpForm *form, FpExtent *out)
{
  *out = fp_extent_bare (plan (form), form->param[LEVEL] + form->param[HEIGHT]);
}

/* Case, door in its frame, and a low gable. */
static void
solids (const FpForm *form, FpSolids *out)
{
  const double *p = form->param;
  const FpBox box = plan (form);
  const double z = p[LEVEL], gable = MIN (p[HEIGHT] * 0.2, p[WIDTH] * 0.3), eaves = z + p[HEIGHT] - gable;
  const double front = MIN (30, p[DEPTH] * 0.3);
  const FpBox door = { box.x0, box.y0, box.x1, box.y0 + front };

  fp_solids_add_box (out, FP_PART_BODY, box.x0, box.y0 + front, z, box.x1, box.y1, eaves);
  fp_solids_add_framed (out, FP_PART_DOOR, &door, z, eaves);
  fp_solids_add_gable (out, FP_PART_BODY, &box, eaves, gable);
}

/* Oils are kept here: a cross. */
static void
strokes (const FpForm *form, GArray *out)
{
  const FpBox box = plan (form);
  const double y = (box.y0 + box.y1) / 2, arm = MIN (box.x1 - box.x0, box.y1 - box.y0) * 0.3;

  fp_strokes_add (out, (FpPoint) { -arm, y }, (FpPoint) { arm, y }, FALSE);
  fp_strokes_add (out, (FpPoint) { 0, y - arm }, (FpPoint) { 0, y + arm }, FALSE);
}

static void
dims (const FpForm *form, GArray *out)
{
  const double *p = form->param;

  fp_dims_add_x (out, WIDTH, (FpVec3) { -p[WIDTH] / 2, -p[DEPTH], p[LEVEL] }, p[WIDTH], FP_IN_PLAN, 7);
  fp_dims_add_z (out, LEVEL, (FpVec3) { p[WIDTH] / 2, -p[DEPTH], 0 }, p[LEVEL], FP_IN_ELEVATION | FP_IN_SECTION, 7);
}

static void
quantities (const FpForm *form, GArray *out)
{
  (void) form;
  fp_quantities_add (out, "ambry", FP_MATERIAL_WOOD, FP_AMOUNT_NUMBER, 1);
}

const FpKind fp_kind_ambry = {
  .id = "ambry",
  .label = "Ambry",
  .tells = "The locked cupboard in which the holy oils are kept, at a wall of the sanctuary or by the font.",
  .role = FP_ROLE_AMBRY,
  .anchor = FP_ANCHOR_BACK,
  .spot = FP_SPOT_GOSPEL_WALL,
  .clearance = 0,
  .params = params,
  .extent = extent,
  .solids = solids,
  .strokes = strokes,
  .dims = dims,
  .quantities = quantities,
};
