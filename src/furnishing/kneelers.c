/* SPDX-License-Identifier: GPL-3.0-or-later */
/* kneelers.c - prie-dieux: kneelers with a desk, in a row, which can be moved */
#include "kind-private.h"

enum { COUNT, SPACING, WIDTH, DEPTH, HEIGHT, KNEELER };

static const FpParam params[] = {
  [COUNT] = FP_COUNT ("count", "Kneelers", 1, 2, 40, FP_JUDGEMENT),
  [SPACING] = FP_LENGTH ("spacing", "Spacing", 350, 800, 4000, FP_JUDGEMENT),
  [WIDTH] = FP_LENGTH ("width", "Width", 350, 600, 3000, FP_JUDGEMENT ", as for a communicant at the rail"),
  [DEPTH] = FP_LENGTH ("depth", "Depth", 400, 620, 1200, FP_JUDGEMENT),
  [HEIGHT] = FP_LENGTH ("height", "Height of the desk", 500, 850, 1100, FP_JUDGEMENT),
  [KNEELER] = FP_LENGTH ("kneeler", "Height of the kneeling board", 50, 150, 300, FP_JUDGEMENT),
  FP_NO_MORE_PARAMS
};

static const FpRole stands_on[] = { FP_ROLE_FLOOR, FP_ROLE_FOOTPACE, FP_ROLE_NONE };

#define BOARD 30.0  /* design judgement */
#define DESK  260.0

static FpRow
row_of (const FpForm *form)
{
  return (FpRow) { fp_form_count (form, COUNT), form->param[SPACING], form->param[WIDTH] };
}

static void
extent (const FpForm *form, FpExtent *out)
{
  const FpRow row = row_of (form);

  *out = fp_extent_bare (fp_row_box (&row, form->param[DEPTH]), form->param[HEIGHT] + BOARD);
}

/* One kneels towards +y. */
static void
add_kneeler (const FpForm *form, double x, FpSolids *out)
{
  const double *p = form->param;
  const double half = p[WIDTH] / 2, y0 = -p[DEPTH] / 2, y1 = p[DEPTH] / 2, desk = MIN (DESK, p[DEPTH] / 2), slope = 0.2;
  const FpPoint top[4] = { { x - half, y1 - desk }, { x + half, y1 - desk }, { x + half, y1 }, { x - half, y1 } };
  const double edge = p[HEIGHT] - slope * desk;

  fp_solids_add_box (out, FP_PART_SEAT, x - half, y0, p[KNEELER] - BOARD, x + half, y1 - desk, p[KNEELER]);
  fp_solids_add_box (out, FP_PART_BODY, x - half, y0, 0, x - half + BOARD, y1 - desk, p[KNEELER] - BOARD);
  fp_solids_add_box (out, FP_PART_BODY, x + half - BOARD, y0, 0, x + half, y1 - desk, p[KNEELER] - BOARD);
  for (int side = -1; side <= 1; side += 2)
    {
      const double x0 = side < 0 ? x - half : x + half - BOARD;
      fp_solids_add_box (out, FP_PART_BODY, x0, y1 - desk, 0, x0 + BOARD, y1, edge - BOARD);
    }
  fp_solids_add_box (out, FP_PART_BODY, x - half + BOARD, y1 - BOARD, 0, x + half - BOARD, y1, edge - BOARD);
  fp_solids_add_slanting (out, FP_PART_SHELF, top, 4, edge - BOARD - slope * (y1 - desk), 0, slope, edge - slope * (y1 - desk), 0, slope);
}

static void
solids (const FpForm *form, FpSolids *out)
{
  const FpRow row = row_of (form);

  for (guint i = 0; i < row.count; i++)
    add_kneeler (form, fp_row_x (&row, i), out);
}

static void
dims (const FpForm *form, GArray *out)
{
  const double *p = form->param;
  const FpRow row = row_of (form);

  fp_row_dims (&row, SPACING, p[DEPTH], 7, out);
  fp_dims_add_z (out, HEIGHT, (FpVec3) { fp_row_box (&row, 0).x1, p[DEPTH] / 2, 0 }, p[HEIGHT], FP_IN_SECTION, 8);
}

static void
quantities (const FpForm *form, GArray *out)
{
  fp_quantities_add (out, "kneelers", FP_MATERIAL_WOOD, FP_AMOUNT_NUMBER, form->param[COUNT]);
  fp_quantities_add_part (out, &fp_kind_kneelers, form, FP_PART_SHELF, "kneelers, their desks", FP_MATERIAL_WOOD);
  fp_quantities_add_part (out, &fp_kind_kneelers, form, FP_PART_SEAT, "kneelers, their boards", FP_MATERIAL_WOOD);
  fp_quantities_add_part (out, &fp_kind_kneelers, form, FP_PART_BODY, "kneelers, their sides", FP_MATERIAL_WOOD);
}

static char *
amiss (const FpForm *form)
{
  const FpRow row = row_of (form);

  return fp_row_amiss (&row, "kneelers");
}

const FpKind fp_kind_kneelers = {
  .id = "kneelers",
  .label = "Kneelers",
  .tells = "Movable kneelers with a desk, for a bridal pair, for ministers or before the Blessed Sacrament.",
  .role = FP_ROLE_KNEELERS,
  .anchor = FP_ANCHOR_CENTRE,
  .spot = FP_SPOT_BEFORE_ALTAR,
  .clearance = 600,
  .stands_on = stands_on,
  .params = params,
  .extent = extent,
  .solids = solids,
  .dims = dims,
  .quantities = quantities,
  .amiss = amiss,
};
