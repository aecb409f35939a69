/* SPDX-License-Identifier: GPL-3.0-or-later */
/* stools.c - the stools of the servers, in a row */
#include "kind-private.h"

enum { COUNT, SPACING, WIDTH, HEIGHT };

static const FpParam params[] = {
  [COUNT] = FP_COUNT ("count", "Stools", 1, 2, 20, FP_CUSTOM),
  [SPACING] = FP_LENGTH ("spacing", "Spacing", 300, 600, 3000, FP_JUDGEMENT),
  [WIDTH] = FP_LENGTH ("width", "Width", 250, 400, 700, FP_JUDGEMENT),
  [HEIGHT] = FP_LENGTH ("height", "Height", 250, 450, 700, FP_CUSTOM),
  FP_NO_MORE_PARAMS
};

static const FpRole stands_on[] = { FP_ROLE_FLOOR, FP_ROLE_FOOTPACE, FP_ROLE_NONE };

#define BOARD 35.0 /* design judgement */
#define LEG   40.0

static FpRow
row_of (const FpForm *form)
{
  return (FpRow) { fp_form_count (form, COUNT), form->param[SPACING], form->param[WIDTH] };
}

static double
depth (const FpForm *form)
{
  return form->param[WIDTH] * 0.85;
}

static void
extent (const FpForm *form, FpExtent *out)
{
  const FpRow row = row_of (form);

  *out = fp_extent_bare (fp_row_box (&row, depth (form)), form->param[HEIGHT]);
}

static void
solids (const FpForm *form, FpSolids *out)
{
  const double *p = form->param;
  const FpRow row = row_of (form);
  const double half = p[WIDTH] / 2, deep = depth (form) / 2, under = p[HEIGHT] - BOARD;

  for (guint i = 0; i < fp_form_count (form, COUNT); i++)
    {
      const double x = fp_row_x (&row, i);
      for (guint leg = 0; leg < 4; leg++)
        {
          const double lx = leg % 2 == 0 ? x - half : x + half - LEG, ly = leg < 2 ? -deep : deep - LEG;
          fp_solids_add_box (out, FP_PART_BODY, lx, ly, 0, lx + LEG, ly + LEG, under);
        }
      fp_solids_add_box (out, FP_PART_SEAT, x - half, -deep, under, x + half, deep, p[HEIGHT]);
    }
}

static void
dims (const FpForm *form, GArray *out)
{
  const FpRow row = row_of (form);

  fp_row_dims (&row, SPACING, depth (form), 7, out);
  fp_dims_add_z (out, HEIGHT, (FpVec3) { fp_row_box (&row, 0).x1, 0, 0 }, form->param[HEIGHT], FP_IN_SECTION, 8);
}

static void
quantities (const FpForm *form, GArray *out)
{
  fp_quantities_add (out, "stools", FP_MATERIAL_WOOD, FP_AMOUNT_NUMBER, form->param[COUNT]);
  fp_quantities_add_part (out, &fp_kind_stools, form, FP_PART_SEAT, "stools, their seats", FP_MATERIAL_WOOD);
  fp_quantities_add_part (out, &fp_kind_stools, form, FP_PART_BODY, "stools, their legs", FP_MATERIAL_WOOD);
}

static char *
amiss (const FpForm *form)
{
  const FpRow row = row_of (form);

  return fp_row_amiss (&row, "stools");
}

const FpKind fp_kind_stools = {
  .id = "stools",
  .label = "Servers' stools",
  .tells = "Stools without backs for the servers, in a row.",
  .role = FP_ROLE_STOOLS,
  .anchor = FP_ANCHOR_BACK,
  .spot = FP_SPOT_EPISTLE_WALL,
  .clearance = 100,
  .stands_on = stands_on,
  .params = params,
  .extent = extent,
  .solids = solids,
  .dims = dims,
  .quantities = quantities,
  .amiss = amiss,
};
