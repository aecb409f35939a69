/* SPDX-License-Identifier: GPL-3.0-or-later */
/* chair.c - the celebrant's chair, on a platform of its own
 *
 * Origin: middle of the chair (width x depth); the platform ends at its back
 * and reaches farther to the front and the sides.
 */
#include "kind-private.h"

enum { WIDTH, DEPTH, SEAT_HEIGHT, BACK_HEIGHT, STEP };

static const FpParam params[] = {
  [WIDTH] = FP_LENGTH ("width", "Width", 450, 750, 2000, FP_JUDGEMENT),
  [DEPTH] = FP_LENGTH ("depth", "Depth", 400, 650, 1500, FP_JUDGEMENT),
  [SEAT_HEIGHT] = FP_LENGTH ("seat-height", "Height of the seat", 300, 450, 700, FP_CUSTOM),
  [BACK_HEIGHT] = FP_LENGTH ("back-height", "Height of the back", 400, 1200, 4000, FP_JUDGEMENT),
  [STEP] = FP_LENGTH ("step", "Height of its own platform (0: none)", 0, 150, 2000, FP_JUDGEMENT),
  FP_NO_MORE_PARAMS
};

/* Room on the platform before and beside the chair, and the middle of a seated body before the back: design
 * judgement. */
#define BEFORE 500.0
#define BESIDE 150.0
#define BODY   200.0

static FpBox
plan (const FpForm *form)
{
  FpBox box = fp_centred_box (form->param[WIDTH], form->param[DEPTH]);

  if (form->param[STEP] > 0)
    {
      box.x0 -= BESIDE;
      box.x1 += BESIDE;
      box.y0 -= BEFORE;
    }
  return box;
}

static void
extent (const FpForm *form, FpExtent *out)
{
  *out = fp_extent_bare (plan (form), form->param[STEP] + MAX (form->param[BACK_HEIGHT], form->param[SEAT_HEIGHT]));
}

static void
solids (const FpForm *form, FpSolids *out)
{
  const double *p = form->param;
  const FpBox platform = plan (form), chair = fp_centred_box (p[WIDTH], p[DEPTH]);

  fp_solids_add_box (out, FP_PART_BODY, platform.x0, platform.y0, 0, platform.x1, platform.y1, p[STEP]);
  fp_solids_add_bench (out, &chair, p[STEP], p[SEAT_HEIGHT], p[BACK_HEIGHT],
                       MIN (p[BACK_HEIGHT], p[SEAT_HEIGHT] + 230));
}

static void
dims (const FpForm *form, GArray *out)
{
  const double *p = form->param;
  const double x = p[WIDTH] / 2, y = p[DEPTH] / 2;

  fp_dims_add_x (out, WIDTH, (FpVec3) { -x, -y, p[STEP] }, p[WIDTH], FP_IN_PLAN, 4);
  fp_dims_add_y (out, DEPTH, (FpVec3) { x, -y, p[STEP] }, p[DEPTH], FP_IN_PLAN, 5);
  fp_dims_add_z (out, SEAT_HEIGHT, (FpVec3) { x, -y, p[STEP] }, p[SEAT_HEIGHT], FP_IN_SECTION, 5);
  fp_dims_add_z (out, BACK_HEIGHT, (FpVec3) { x, y, p[STEP] }, p[BACK_HEIGHT], FP_IN_ELEVATION, 4);
  fp_dims_add_z (out, STEP, (FpVec3) { plan (form).x1, plan (form).y0, 0 }, p[STEP], FP_IN_ELEVATION, 4);
}

static double
body_y (const FpForm *form)
{
  return form->param[DEPTH] / 2 - BODY;
}

/* Trunk and head of the celebrant seated, before his body, so that he does not hide himself. */
static void
targets (const FpForm *form, GArray *out)
{
  const double seat = form->param[STEP] + form->param[SEAT_HEIGHT];
  const double foot = 200, crown = 880, breadth = 450; /* design judgement, about the median of ANSUR II */

  fp_targets_add_person (out, FP_FOCUS_CHAIR, (FpVec3) { 0, body_y (form) - 170, seat + foot }, breadth, crown - foot);
}

static void
ministers (const FpForm *form, GArray *out)
{
  const FpMinister celebrant = {
    .at = { 0, body_y (form) }, .z = form->param[STEP], .facing = 180, .seated = TRUE, .seat = form->param[SEAT_HEIGHT],
  };

  g_array_append_val (out, celebrant);
}

static void
quantities (const FpForm *form, GArray *out)
{
  const FpBox platform = plan (form);

  fp_quantities_add (out, "celebrant’s chair", FP_MATERIAL_WOOD, FP_AMOUNT_NUMBER, 1);
  if (form->param[STEP] > 0)
    fp_quantities_add (out, "platform of the chair", FP_MATERIAL_NONE, FP_AMOUNT_AREA, fp_box_area (&platform));
}

static char *
amiss (const FpForm *form)
{
  if (form->param[BACK_HEIGHT] < form->param[SEAT_HEIGHT])
    return g_strdup ("The back is lower than the seat.");
  return NULL;
}

const FpKind fp_kind_chair = {
  .id = "chair",
  .label = "Celebrant's chair",
  .tells = "The seat from which the celebrant presides, facing the people.",
  .role = FP_ROLE_CHAIR,
  .anchor = FP_ANCHOR_BACK,
  .spot = FP_SPOT_BEHIND_ALTAR,
  .clearance = 1000,
  .params = params,
  .extent = extent,
  .solids = solids,
  .dims = dims,
  .targets = targets,
  .ministers = ministers,
  .quantities = quantities,
  .amiss = amiss,
};
