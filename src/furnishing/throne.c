/* SPDX-License-Identifier: GPL-3.0-or-later */
/* throne.c - the bishop's throne, on its steps, with a canopy over it if it has one
 *
 * Origin: middle of the seat (width x depth); the steps go round its front and its sides.
 */
#include "kind-private.h"

enum { WIDTH, DEPTH, SEAT_HEIGHT, BACK_HEIGHT, STEPS, RISER, TREAD, FRONT, CANOPY };

#define CAER "Caeremoniale Episcoporum I, xiii, from memory"

static const FpParam params[] = {
  [WIDTH] = FP_LENGTH ("width", "Width", 600, 850, 2500, FP_JUDGEMENT),
  [DEPTH] = FP_LENGTH ("depth", "Depth", 450, 700, 1500, FP_JUDGEMENT),
  [SEAT_HEIGHT] = FP_LENGTH ("seat-height", "Height of the seat", 300, 480, 700, FP_CUSTOM),
  [BACK_HEIGHT] = FP_LENGTH ("back-height", "Height of the back", 600, 1700, 5000, FP_JUDGEMENT),
  [STEPS] = FP_COUNT ("steps", "Steps, with the platform", 0, 3, 7, CAER ": three"),
  [RISER] = FP_LENGTH ("riser", "Height of a step", 60, 150, 250, FP_JUDGEMENT),
  [TREAD] = FP_LENGTH ("tread", "Depth of a step", 200, 300, 600, FP_JUDGEMENT),
  [FRONT] = FP_LENGTH ("front", "Platform before the seat", 200, 800, 3000, FP_JUDGEMENT),
  [CANOPY] = FP_LENGTH ("canopy", "Canopy above the floor (0: none)", 0, 0, 9000, CAER ": over the throne of the bishop of the place"),
  FP_NO_MORE_PARAMS
};

#define BOARD 50.0  /* of the seat; design judgement */
#define SIDE  150.0 /* of the platform, beside it */

static double
platform_top (const FpForm *form)
{
  return form->param[STEPS] * form->param[RISER];
}

/* Of step @i, the lowest first; the last is the platform. */
static FpBox
step_box (const FpForm *form, guint i)
{
  const double *p = form->param;
  const double out = (p[STEPS] - 1 - i) * p[TREAD];

  return (FpBox) { -p[WIDTH] / 2 - SIDE - out, -p[DEPTH] / 2 - p[FRONT] - out, p[WIDTH] / 2 + SIDE + out, p[DEPTH] / 2 };
}

static gboolean
has_canopy (const FpForm *form)
{
  return form->param[CANOPY] > platform_top (form) + form->param[BACK_HEIGHT];
}

static void
extent (const FpForm *form, FpExtent *out)
{
  const double *p = form->param;
  const double top = platform_top (form) + p[BACK_HEIGHT];
  FpBox plan = fp_centred_box (p[WIDTH], p[DEPTH]);

  if (fp_form_count (form, STEPS) > 0)
    plan = step_box (form, 0);
  else if (has_canopy (form))
    plan.y0 -= p[FRONT] * 0.4;
  *out = fp_extent_bare (plan, has_canopy (form) ? p[CANOPY] + 250 : MAX (top, platform_top (form) + p[SEAT_HEIGHT] + 300));
}

/* Each the ring that the next leaves free, so that they stand beside each other. */
static void
add_step (const FpForm *form, guint i, FpSolids *out)
{
  const FpBox box = step_box (form, i);
  const double top = (i + 1) * form->param[RISER];
  const gboolean last = i + 1 == fp_form_count (form, STEPS);

  if (last)
    {
      fp_solids_add_box (out, FP_PART_FOOTPACE, box.x0, box.y0, 0, box.x1, box.y1, top);
      return;
    }
  {
    const FpBox in = step_box (form, i + 1);
    fp_solids_add_box (out, FP_PART_STEP, box.x0, box.y0, 0, box.x1, in.y0, top);
    fp_solids_add_box (out, FP_PART_STEP, box.x0, in.y0, 0, in.x0, box.y1, top);
    fp_solids_add_box (out, FP_PART_STEP, in.x1, in.y0, 0, box.x1, box.y1, top);
  }
}

static void
add_seat (const FpForm *form, FpSolids *out)
{
  const double *p = form->param;
  const double z = platform_top (form), half = p[WIDTH] / 2, deep = p[DEPTH] / 2, arm = z + p[SEAT_HEIGHT] + 240;

  fp_solids_add_box (out, FP_PART_BACK, -half, deep - BOARD, z, half, deep, z + p[BACK_HEIGHT]);
  for (int side = -1; side <= 1; side += 2)
    {
      const double x0 = side < 0 ? -half : half - BOARD * 1.4;
      fp_solids_add_box (out, FP_PART_BODY, x0, -deep, z, x0 + BOARD * 1.4, deep - BOARD, MIN (arm, z + p[BACK_HEIGHT]));
    }
  fp_solids_add_box (out, FP_PART_SEAT, -half + BOARD * 1.4, -deep, z, half - BOARD * 1.4, deep - BOARD, z + p[SEAT_HEIGHT]);
}

static void
solids (const FpForm *form, FpSolids *out)
{
  const double *p = form->param;

  for (guint i = 0; i < fp_form_count (form, STEPS); i++)
    add_step (form, i, out);
  add_seat (form, out);
  if (has_canopy (form))
    fp_solids_add_box (out, FP_PART_BODY, -p[WIDTH] / 2, -p[DEPTH] / 2 - p[FRONT] * 0.4, p[CANOPY], p[WIDTH] / 2, p[DEPTH] / 2, p[CANOPY] + 250);
}

static void
dims (const FpForm *form, GArray *out)
{
  const double *p = form->param;
  const double x = p[WIDTH] / 2, y = -p[DEPTH] / 2, z = platform_top (form);

  fp_dims_add_x (out, WIDTH, (FpVec3) { -x, y, z }, p[WIDTH], FP_IN_PLAN, 5);
  fp_dims_add_y (out, FRONT, (FpVec3) { x, y - p[FRONT], z }, p[FRONT], FP_IN_PLAN, 6);
  fp_dims_add_z (out, SEAT_HEIGHT, (FpVec3) { x, y, z }, p[SEAT_HEIGHT], FP_IN_SECTION, 6);
  if (fp_form_count (form, STEPS) > 0)
    fp_dims_add (out, RISER, (FpVec3) { x, step_box (form, 0).y0, 0 }, (FpVec3) { x, step_box (form, 0).y0, z }, FP_IN_SECTION,
                 fp_form_count (form, STEPS), 6);
}

static void
quantities (const FpForm *form, GArray *out)
{
  fp_quantities_add (out, "throne", FP_MATERIAL_WOOD, FP_AMOUNT_NUMBER, 1);
  fp_quantities_add_part (out, &fp_kind_throne, form, FP_PART_FOOTPACE, "platform of the throne", FP_MATERIAL_WOOD);
  fp_quantities_add_part (out, &fp_kind_throne, form, FP_PART_STEP, "steps of the throne", FP_MATERIAL_WOOD);
}

static char *
amiss (const FpForm *form)
{
  if (form->param[BACK_HEIGHT] < form->param[SEAT_HEIGHT])
    return g_strdup ("The back is lower than the seat.");
  if (form->param[CANOPY] > 0 && !has_canopy (form))
    return g_strdup ("The canopy of the throne lies below the top of its back.");
  return NULL;
}

const FpKind fp_kind_throne = {
  .id = "throne",
  .label = "Throne",
  .tells = "The bishop's throne on its steps, on the Gospel side.",
  .role = FP_ROLE_THRONE,
  .anchor = FP_ANCHOR_BACK,
  .spot = FP_SPOT_GOSPEL_WALL,
  .clearance = 20,
  .params = params,
  .extent = extent,
  .solids = solids,
  .dims = dims,
  .quantities = quantities,
  .amiss = amiss,
};
