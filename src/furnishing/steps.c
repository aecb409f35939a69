/* SPDX-License-Identifier: GPL-3.0-or-later */
/* steps.c - a flight between two floors
 *
 * Origin: middle of the lowest riser; it ascends towards +y.  The uppermost
 * step is flush with the floor above and reaches one tread into it, as its stone does.
 */
#include "edge-marking.h"

enum { WIDTH, COUNT, RISER, TREAD, EDGE };

static const FpParam params[] = {
  [WIDTH] = FP_LENGTH ("width", "Width", 300, 3000, 40000, FP_SURVEYED),
  [COUNT] = FP_COUNT ("count", "Risers", 1, 2, 40, FP_SURVEYED),
  [RISER] = FP_LENGTH ("riser", "Riser", 20, 150, 300, "UFC 4-730-02 (2004), 2g: 6 in, printed as 150 mm"),
  [TREAD] = FP_LENGTH ("tread", "Tread", 150, 300, 3000, FP_JUDGEMENT),
  FP_EDGE_PARAMS,
  FP_NO_MORE_PARAMS
};

static double
rise (const FpForm *form)
{
  return form->param[COUNT] * form->param[RISER];
}

static FpBox
plan (const FpForm *form)
{
  const double half = form->param[WIDTH] / 2;

  return (FpBox) { -half, 0, half, form->param[COUNT] * form->param[TREAD] };
}

static void
extent (const FpForm *form, FpExtent *out)
{
  *out = fp_extent_bare (plan (form), rise (form));
}

static void
solids (const FpForm *form, FpSolids *out)
{
  const double half = form->param[WIDTH] / 2, tread = form->param[TREAD];

  for (guint i = 0; i < fp_form_count (form, COUNT); i++)
    fp_solids_add_box (out, FP_PART_STEP, -half, i * tread, 0, half, (i + 1) * tread, (i + 1) * form->param[RISER]);
}

static void
strokes (const FpForm *form, GArray *out)
{
  const double x = form->param[WIDTH] / 4; /* beside the axis, which is a line of its own */
  const double half = form->param[WIDTH] / 2, tread = form->param[TREAD];

  for (guint i = 0; i < fp_form_count (form, COUNT); i++)
    fp_strokes_add_edge_marking (out, form, EDGE, (FpPoint) { -half, i * tread }, (FpPoint) { half, i * tread });
  fp_strokes_add_arrow (out, (FpPoint) { x, 0 }, (FpPoint) { x, (form->param[COUNT] - 0.5) * form->param[TREAD] });
}

static void
dims (const FpForm *form, GArray *out)
{
  const double *p = form->param;
  const guint n = fp_form_count (form, COUNT);
  const double half = p[WIDTH] / 2;

  fp_dims_add_x (out, WIDTH, (FpVec3) { -half, 0, 0 }, p[WIDTH], FP_IN_PLAN, 3);
  fp_dims_add (out, RISER, (FpVec3) { half, 0, 0 }, (FpVec3) { half, 0, rise (form) }, FP_IN_SECTION, n, 2);
  if (n > 1)
    fp_dims_add (out, TREAD, (FpVec3) { half, 0, 0 }, (FpVec3) { half, (n - 1) * p[TREAD], 0 }, FP_IN_SECTION, n - 1,
                 2);
}

static void
quantities (const FpForm *form, GArray *out)
{
  fp_quantities_add (out, "steps", FP_MATERIAL_STONE, FP_AMOUNT_NUMBER, form->param[COUNT]);
  fp_quantities_add (out, "edges of steps", FP_MATERIAL_STONE, FP_AMOUNT_LENGTH,
                     form->param[COUNT] * form->param[WIDTH]);
  fp_quantities_add_part (out, &fp_kind_steps, form, FP_PART_STEP, "steps, solid", FP_MATERIAL_STONE);
}

const FpKind fp_kind_steps = {
  .id = "steps",
  .label = "Steps",
  .tells = "A flight of steps between two floors, as it was measured.",
  .role = FP_ROLE_STEPS,
  .flags = FP_KIND_SURVEY,
  .spot = FP_SPOT_OPENING,
  .params = params,
  .extent = extent,
  .solids = solids,
  .strokes = strokes,
  .dims = dims,
  .quantities = quantities,
};
