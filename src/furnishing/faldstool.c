/* SPDX-License-Identifier: GPL-3.0-or-later */
/* faldstool.c - the folding seat of a bishop who is not on his throne */
#include "kind-private.h"

enum { WIDTH, DEPTH, SEAT_HEIGHT, ARM_HEIGHT };

static const FpParam params[] = {
  [WIDTH] = FP_LENGTH ("width", "Width", 400, 650, 1200, FP_JUDGEMENT),
  [DEPTH] = FP_LENGTH ("depth", "Depth", 300, 500, 1000, FP_JUDGEMENT),
  [SEAT_HEIGHT] = FP_LENGTH ("seat-height", "Height of the seat", 300, 470, 700, FP_CUSTOM),
  [ARM_HEIGHT] = FP_LENGTH ("arm-height", "Height of the arms", 400, 720, 1200, FP_JUDGEMENT),
  FP_NO_MORE_PARAMS
};

static const FpRole stands_on[] = { FP_ROLE_FLOOR, FP_ROLE_FOOTPACE, FP_ROLE_NONE };

#define BAR     45.0 /* of its legs and arms; design judgement */
#define CUSHION 70.0

static void
extent (const FpForm *form, FpExtent *out)
{
  *out = fp_extent_bare (fp_centred_box (form->param[WIDTH], form->param[DEPTH]),
                         MAX (form->param[ARM_HEIGHT], form->param[SEAT_HEIGHT]));
}

/* A leg from one foot up to the arm on the other side. */
static void
add_leg (const FpForm *form, int side, double y, FpSolids *out)
{
  const double top = form->param[SEAT_HEIGHT] - CUSHION, half = form->param[WIDTH] / 2 - BAR / 2;
  const FpPoint corner[4] = { { -half, y }, { half, y }, { half, y + BAR }, { -half, y + BAR } };
  const double slope = side * (top - BAR) / (2 * half);

  fp_solids_add_slanting (out, FP_PART_BODY, corner, 4, (top - BAR) / 2, slope, 0, (top + BAR) / 2, slope, 0);
}

static void
solids (const FpForm *form, FpSolids *out)
{
  const double *p = form->param;
  const double half = p[WIDTH] / 2, deep = p[DEPTH] / 2, seat = p[SEAT_HEIGHT], under = seat - CUSHION, knob = BAR / 2;

  /* The two frames of a side, one behind the other. */
  add_leg (form, 1, -deep, out);
  add_leg (form, -1, -deep + BAR, out);
  add_leg (form, 1, deep - 2 * BAR, out);
  add_leg (form, -1, deep - BAR, out);
  fp_solids_add_box (out, FP_PART_SEAT, -half + BAR, -deep, under, half - BAR, deep, seat);
  for (int side = -1; side <= 1; side += 2)
    {
      const double x0 = side < 0 ? -half : half - BAR;
      fp_solids_add_box (out, FP_PART_BODY, x0, -deep, under, x0 + BAR, deep, under + BAR);
      for (int end = -1; end <= 1; end += 2)
        fp_solids_add_round (out, FP_PART_BODY, x0 + knob, end * (deep - knob), under + BAR, p[ARM_HEIGHT], knob * 0.7, knob);
    }
}

/* The crossed legs, as they are seen from the front. */
static void
strokes (const FpForm *form, GArray *out)
{
  const double half = form->param[WIDTH] / 2 - BAR, deep = form->param[DEPTH] / 2;

  fp_strokes_add (out, (FpPoint) { -half, -deep }, (FpPoint) { half, deep }, FALSE);
  fp_strokes_add (out, (FpPoint) { -half, deep }, (FpPoint) { half, -deep }, FALSE);
}

static void
dims (const FpForm *form, GArray *out)
{
  const double *p = form->param;

  fp_dims_add_x (out, WIDTH, (FpVec3) { -p[WIDTH] / 2, -p[DEPTH] / 2, 0 }, p[WIDTH], FP_IN_PLAN, 7);
  fp_dims_add_z (out, SEAT_HEIGHT, (FpVec3) { p[WIDTH] / 2, -p[DEPTH] / 2, 0 }, p[SEAT_HEIGHT], FP_IN_SECTION, 7);
}

static void
quantities (const FpForm *form, GArray *out)
{
  fp_quantities_add (out, "faldstool", FP_MATERIAL_NONE, FP_AMOUNT_NUMBER, 1);
  fp_quantities_add_part (out, &fp_kind_faldstool, form, FP_PART_BODY, "faldstool, its frame", FP_MATERIAL_METAL);
}

static char *
amiss (const FpForm *form)
{
  if (form->param[ARM_HEIGHT] < form->param[SEAT_HEIGHT])
    return g_strdup ("The arms are lower than the seat.");
  return NULL;
}

const FpKind fp_kind_faldstool = {
  .id = "faldstool",
  .label = "Faldstool",
  .tells = "The folding seat, without a back, of a bishop who does not sit on the throne.",
  .role = FP_ROLE_FALDSTOOL,
  .anchor = FP_ANCHOR_CENTRE,
  .spot = FP_SPOT_EPISTLE_WALL,
  .clearance = 400,
  .stands_on = stands_on,
  .params = params,
  .extent = extent,
  .solids = solids,
  .strokes = strokes,
  .dims = dims,
  .quantities = quantities,
  .amiss = amiss,
};
