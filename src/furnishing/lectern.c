/* SPDX-License-Identifier: GPL-3.0-or-later */
/* lectern.c - a desk on a stem, which can be moved: for the sung lessons, or the singers' book */
#include "kind-private.h"

#include <math.h>

enum { WIDTH, DEPTH, HEIGHT, SLOPE };

#define UFC "UFC 4-730-02 (2004), ch. 3, 2h(2), of a pulpit: desk about 22 x 15 in at about 20 degrees, its lower edge 39 to 45 in high"

static const FpParam params[] = {
  [WIDTH] = FP_LENGTH ("width", "Width of the desk", 250, 560, 1200, UFC),
  [DEPTH] = FP_LENGTH ("depth", "Depth of the desk", 200, 380, 900, UFC),
  [HEIGHT] = FP_LENGTH ("height", "Height of its lower edge", 600, 1070, 1800, UFC),
  [SLOPE] = FP_ANGLE ("slope", "Slope of the desk", 0, 20, 60, UFC),
  FP_NO_MORE_PARAMS
};

static const FpRole stands_on[] = { FP_ROLE_FLOOR, FP_ROLE_FOOTPACE, FP_ROLE_NONE };

#define BOARD 30.0 /* design judgement */

static double
rise (const FpForm *form)
{
  return tan (form->param[SLOPE] * G_PI / 180);
}

static double
foot_radius (const FpForm *form)
{
  return MIN (form->param[WIDTH], form->param[DEPTH]) * 0.5;
}

static void
extent (const FpForm *form, FpExtent *out)
{
  const double *p = form->param;

  *out = fp_extent_bare (fp_centred_box (p[WIDTH], p[DEPTH]), p[HEIGHT] + rise (form) * p[DEPTH] + BOARD * 1.5);
}

/* The head of the stem, square, cut to the slope of the desk that rests on it. */
static void
add_head (double half, double foot, double top, double slope, FpSolids *out)
{
  const FpBox box = fp_centred_box (2 * half, 2 * half);
  FpPoint corner[4];

  fp_box_corners (&box, corner);
  fp_solids_add_sloping (out, FP_PART_BODY, corner, 4, foot - half, top, 0, slope);
}

/* The reader stands at +y: the desk falls towards him. */
static void
solids (const FpForm *form, FpSolids *out)
{
  const double *p = form->param;
  const FpBox box = fp_centred_box (p[WIDTH], p[DEPTH]);
  const double r = foot_radius (form), slope = -rise (form), edge = p[HEIGHT] - slope * box.y1, stem = MIN (45, r * 0.4);
  const double straight = edge - BOARD + slope * stem; /* to where the desk lies on it first */
  FpPoint corner[4];

  fp_box_corners (&box, corner);
  fp_solids_add_round (out, FP_PART_BODY, 0, 0, 0, 40, r, r * 0.95);
  fp_solids_add_round (out, FP_PART_BODY, 0, 0, 40, 110, r * 0.8, stem);
  fp_solids_add_round (out, FP_PART_BODY, 0, 0, 110, straight - stem, stem, stem);
  add_head (stem, straight, edge - BOARD, slope, out);
  fp_solids_add_slanting (out, FP_PART_SHELF, corner, 4, edge - BOARD, 0, slope, edge, 0, slope);
  /* The ledge on which the book rests. */
  fp_solids_add_box (out, FP_PART_SHELF, box.x0, box.y1 - 15, p[HEIGHT] + 15 * -slope, box.x1, box.y1, p[HEIGHT] + 15 * -slope + BOARD);
}

/* A book lies on it. */
static void
strokes (const FpForm *form, GArray *out)
{
  const FpBox box = fp_centred_box (form->param[WIDTH] * 0.8, form->param[DEPTH] * 0.8);
  FpPoint corner[4];

  fp_box_corners (&box, corner);
  fp_strokes_add_outline (out, corner, 4, FALSE);
  fp_strokes_add (out, (FpPoint) { 0, box.y0 }, (FpPoint) { 0, box.y1 }, FALSE);
}

static void
dims (const FpForm *form, GArray *out)
{
  const double *p = form->param;

  fp_dims_add_x (out, WIDTH, (FpVec3) { -p[WIDTH] / 2, -p[DEPTH] / 2, p[HEIGHT] }, p[WIDTH], FP_IN_PLAN, 6);
  fp_dims_add_z (out, HEIGHT, (FpVec3) { p[WIDTH] / 2, p[DEPTH] / 2, 0 }, p[HEIGHT], FP_IN_ELEVATION | FP_IN_SECTION, 6);
}

static void
quantities (const FpForm *form, GArray *out)
{
  fp_quantities_add (out, "lecterns", FP_MATERIAL_NONE, FP_AMOUNT_NUMBER, 1);
  fp_quantities_add_part (out, &fp_kind_lectern, form, FP_PART_SHELF, "lectern, its desk", FP_MATERIAL_WOOD);
  fp_quantities_add_part (out, &fp_kind_lectern, form, FP_PART_BODY, "lectern, its stem", FP_MATERIAL_WOOD);
}

const FpKind fp_kind_lectern = {
  .id = "lectern",
  .label = "Lectern",
  .tells = "A desk on a stem that can be moved, for a book that is sung or read from; not the ambo.",
  .role = FP_ROLE_LECTERN,
  .anchor = FP_ANCHOR_CENTRE,
  .spot = FP_SPOT_GOSPEL_FRONT,
  .clearance = 600,
  .stands_on = stands_on,
  .params = params,
  .extent = extent,
  .solids = solids,
  .strokes = strokes,
  .dims = dims,
  .quantities = quantities,
};
