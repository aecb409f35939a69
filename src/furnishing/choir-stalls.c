/* SPDX-License-Identifier: GPL-3.0-or-later */
/* choir-stalls.c - one side of a choir: rows of stalls with desks before them, each row raised behind the other
 *
 * Origin: the middle of the whole block.  The stalls face -y, across the choir once the block stands at its wall.
 */
#include "kind-private.h"

enum { STALLS, ROWS, WIDTH, DEPTH, RISE, SEAT_HEIGHT, BACK_HEIGHT, DESK };

static const FpParam params[] = {
  [STALLS] = FP_COUNT ("stalls", "Stalls in a row", 1, 4, 40, FP_JUDGEMENT),
  [ROWS] = FP_COUNT ("rows", "Rows", 1, 1, 4, FP_JUDGEMENT),
  [WIDTH] = FP_LENGTH ("width", "Width of a stall", 450, 650, 1000, FP_JUDGEMENT),
  [DEPTH] = FP_LENGTH ("depth", "Depth of a row, with its desk", 800, 1150, 2000, FP_JUDGEMENT),
  [RISE] = FP_LENGTH ("rise", "Each next row is higher by", 0, 150, 500, FP_JUDGEMENT),
  [SEAT_HEIGHT] = FP_LENGTH ("seat-height", "Height of the seat", 300, 450, 700, FP_CUSTOM),
  [BACK_HEIGHT] = FP_LENGTH ("back-height", "Height of the last back", 500, 1300, 5000, FP_JUDGEMENT),
  [DESK] = FP_LENGTH ("desk", "Height of the desks", 500, 900, 1200, FP_JUDGEMENT),
  FP_NO_MORE_PARAMS
};

#define BOARD 40.0  /* design judgement, as all that follows */
#define SEAT  450.0 /* deep */
#define SHELF 280.0 /* the top of a desk */

static double
length (const FpForm *form)
{
  return form->param[STALLS] * form->param[WIDTH] + BOARD;
}

static FpBox
plan (const FpForm *form)
{
  return fp_centred_box (length (form), form->param[ROWS] * form->param[DEPTH]);
}

/* The level on which row @i stands, from the front. */
static double
floor_of (const FpForm *form, guint i)
{
  return i * form->param[RISE];
}

static void
extent (const FpForm *form, FpExtent *out)
{
  const double *p = form->param;
  const double last = floor_of (form, fp_form_count (form, ROWS) - 1);

  *out = fp_extent_bare (plan (form), last + MAX (p[BACK_HEIGHT], MAX (p[DESK], p[SEAT_HEIGHT] + 250)));
}

/* A front, and a sloping top that overhangs towards the stalls. */
static void
add_desk (const FpForm *form, double y, double z, FpSolids *out)
{
  const double half = length (form) / 2, top = z + form->param[DESK], slope = -0.25;
  const FpPoint shelf[4] = { { -half, y + BOARD }, { half, y + BOARD }, { half, y + SHELF }, { -half, y + SHELF } };

  fp_solids_add_box (out, FP_PART_DOOR, -half, y, z, half, y + BOARD, top);
  fp_solids_add_slanting (out, FP_PART_SHELF, shelf, 4, top - BOARD - slope * (y + BOARD), 0, slope, top - slope * (y + BOARD), 0, slope);
}

static void
add_row (const FpForm *form, guint row, FpSolids *out)
{
  const double *p = form->param;
  const FpBox box = plan (form);
  const double y0 = box.y0 + row * p[DEPTH], y1 = y0 + p[DEPTH], z = floor_of (form, row), half = length (form) / 2;
  const gboolean last = row + 1 == fp_form_count (form, ROWS);
  const double back = last ? MAX (p[BACK_HEIGHT], p[SEAT_HEIGHT] + 250) : p[SEAT_HEIGHT] + 250;

  if (z > 0)
    fp_solids_add_box (out, FP_PART_STEP, -half, y0, 0, half, y1, z);
  add_desk (form, y0, z, out);
  fp_solids_add_box (out, FP_PART_BACK, -half, y1 - BOARD, z, half, y1, z + back);
  for (guint i = 0; i <= fp_form_count (form, STALLS); i++)
    {
      const double x = -half + i * p[WIDTH];
      fp_solids_add_box (out, FP_PART_BODY, x, y1 - BOARD - SEAT - 60, z, x + BOARD, y1 - BOARD, z + p[SEAT_HEIGHT] + 250);
    }
  for (guint i = 0; i < fp_form_count (form, STALLS); i++)
    {
      const double x = -half + i * p[WIDTH] + BOARD;
      fp_solids_add_box (out, FP_PART_SEAT, x, y1 - BOARD - SEAT, z + p[SEAT_HEIGHT] - BOARD, x + p[WIDTH] - BOARD, y1 - BOARD,
                         z + p[SEAT_HEIGHT]);
    }
}

static void
solids (const FpForm *form, FpSolids *out)
{
  for (guint row = 0; row < fp_form_count (form, ROWS); row++)
    add_row (form, row, out);
}

/* The platform of each row that is raised. */
static void
surfaces (const FpForm *form, GArray *out)
{
  const FpBox box = plan (form);
  const double half = length (form) / 2;

  for (guint row = 0; row < fp_form_count (form, ROWS); row++)
    {
      const double y0 = box.y0 + row * form->param[DEPTH], y1 = y0 + form->param[DEPTH];
      const FpPoint floor[4] = { { -half, y0 }, { half, y0 }, { half, y1 }, { -half, y1 } };

      if (floor_of (form, row) > 0)
        fp_surfaces_add (out, FP_FLOOR_WAY, floor, 4, floor_of (form, row), 0, 0);
    }
}

static void
dims (const FpForm *form, GArray *out)
{
  const double *p = form->param;
  const FpBox box = plan (form);

  fp_dims_add (out, WIDTH, (FpVec3) { box.x0, box.y0, 0 }, (FpVec3) { box.x1 - BOARD, box.y0, 0 }, FP_IN_PLAN,
               fp_form_count (form, STALLS), 5);
  fp_dims_add (out, DEPTH, (FpVec3) { box.x1, box.y0, 0 }, (FpVec3) { box.x1, box.y1, 0 }, FP_IN_PLAN, fp_form_count (form, ROWS), 6);
  fp_dims_add_z (out, DESK, (FpVec3) { box.x1, box.y0, 0 }, p[DESK], FP_IN_SECTION, 7);
}

static void
quantities (const FpForm *form, GArray *out)
{
  fp_quantities_add (out, "choir stalls", FP_MATERIAL_WOOD, FP_AMOUNT_NUMBER, form->param[STALLS] * form->param[ROWS]);
  fp_quantities_add_part (out, &fp_kind_choir_stalls, form, FP_PART_BACK, "stalls, their backs", FP_MATERIAL_WOOD);
  fp_quantities_add_part (out, &fp_kind_choir_stalls, form, FP_PART_SEAT, "stalls, their seats", FP_MATERIAL_WOOD);
  fp_quantities_add_part (out, &fp_kind_choir_stalls, form, FP_PART_BODY, "stalls, their sides", FP_MATERIAL_WOOD);
  fp_quantities_add_part (out, &fp_kind_choir_stalls, form, FP_PART_DOOR, "desks, their fronts", FP_MATERIAL_WOOD);
  fp_quantities_add_part (out, &fp_kind_choir_stalls, form, FP_PART_SHELF, "desks, their tops", FP_MATERIAL_WOOD);
  fp_quantities_add_part (out, &fp_kind_choir_stalls, form, FP_PART_STEP, "platform of the stalls", FP_MATERIAL_WOOD);
}

const FpKind fp_kind_choir_stalls = {
  .id = "choir-stalls",
  .label = "Choir stalls",
  .tells = "Stalls with desks before them, at one side of the choir; another block goes to the other side.",
  .role = FP_ROLE_CHOIR_STALLS,
  .anchor = FP_ANCHOR_BACK,
  .spot = FP_SPOT_GOSPEL_WALL,
  .clearance = 0,
  .params = params,
  .extent = extent,
  .solids = solids,
  .surfaces = surfaces,
  .dims = dims,
  .quantities = quantities,
};
