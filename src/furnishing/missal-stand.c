/* SPDX-License-Identifier: GPL-3.0-or-later */
/* missal-stand.c - a low desk on the altar, with the Missal open on it */
#include "kind-private.h"

enum { WIDTH, DEPTH, HEIGHT, BOOK };

static const FpParam params[] = {
  [WIDTH] = FP_LENGTH ("width", "Width", 200, 400, 700, FP_JUDGEMENT),
  [DEPTH] = FP_LENGTH ("depth", "Depth", 150, 300, 600, FP_JUDGEMENT),
  [HEIGHT] = FP_LENGTH ("height", "Height of the back", 60, 220, 600, FP_JUDGEMENT),
  [BOOK] = FP_LENGTH ("book", "Thickness of the Missal (0: none lies on it)", 0, 50, 120, FP_JUDGEMENT),
  FP_NO_MORE_PARAMS
};

static const FpRole stands_on[] = { FP_ROLE_ALTAR, FP_ROLE_CREDENCE, FP_ROLE_NONE };

#define MARGIN 0.05 /* of the width, beside the open book; design judgement */

typedef struct
{
  double front;      /* height of the desk at its front edge                */
  double slope;      /* of the desk, towards the back                       */
  double y0, y1;     /* of the desk itself, behind its ledge                */
  FpBox  book;
} Parts;

static Parts
parts (const FpForm *form)
{
  const double *p = form->param;
  Parts of = { .front = p[HEIGHT] * 0.3, .y0 = -p[DEPTH] / 2 + MIN (25, p[DEPTH] * 0.1), .y1 = p[DEPTH] / 2 };

  of.slope = (p[HEIGHT] - of.front) / (of.y1 - of.y0);
  of.book = (FpBox) { -p[WIDTH] * (0.5 - MARGIN), of.y0, p[WIDTH] * (0.5 - MARGIN), of.y1 - p[DEPTH] * 0.08 };
  return of;
}

static void
extent (const FpForm *form, FpExtent *out)
{
  *out = fp_extent_bare (fp_centred_box (form->param[WIDTH], form->param[DEPTH]),
                         form->param[HEIGHT] + form->param[BOOK]);
}

/* A piece of the desk, its top @above it. */
static void
add_piece (FpSolids *out, const Parts *of, FpPart part, double x0, double y0, double x1, double y1, double above, double tilt)
{
  const FpPoint corner[4] = { { x0, y0 }, { x1, y0 }, { x1, y1 }, { x0, y1 } };
  const double outer = tilt > 0 ? x0 : x1; /* where it is as thick as told */

  fp_solids_add_sloping (out, part, corner, 4, 0, of->front + above - of->slope * of->y0 + tilt * outer, -tilt, of->slope);
}

static void
solids (const FpForm *form, FpSolids *out)
{
  const double *p = form->param;
  const Parts of = parts (form);
  const FpBox *book = &of.book;
  const double half = p[WIDTH] / 2, page = book->x1, sag = p[BOOK] * 0.35 / page;

  fp_solids_add_box (out, FP_PART_BODY, -half, -p[DEPTH] / 2, 0, half, of.y0, of.front + MIN (30, p[HEIGHT] * 0.15));
  add_piece (out, &of, FP_PART_BODY, -half, of.y0, book->x0, book->y1, 0, 0);
  add_piece (out, &of, FP_PART_BODY, book->x1, of.y0, half, book->y1, 0, 0);
  add_piece (out, &of, FP_PART_BODY, -half, book->y1, half, of.y1, 0, 0);
  /* The two halves of the open book, each lower towards the fold. */
  add_piece (out, &of, FP_PART_SHELF, book->x0, book->y0, 0, book->y1, p[BOOK], p[BOOK] > 0 ? sag : 0);
  add_piece (out, &of, FP_PART_SHELF, 0, book->y0, book->x1, book->y1, p[BOOK], p[BOOK] > 0 ? -sag : 0);
}

/* The open book. */
static void
strokes (const FpForm *form, GArray *out)
{
  const FpBox book = parts (form).book;
  FpPoint corner[4];

  if (!(form->param[BOOK] > 0))
    return;
  fp_box_corners (&book, corner);
  fp_strokes_add_outline (out, corner, 4, FALSE);
  fp_strokes_add (out, (FpPoint) { 0, book.y0 }, (FpPoint) { 0, book.y1 }, FALSE);
}

static void
dims (const FpForm *form, GArray *out)
{
  const double *p = form->param;

  fp_dims_add_x (out, WIDTH, (FpVec3) { -p[WIDTH] / 2, -p[DEPTH] / 2, p[HEIGHT] }, p[WIDTH], FP_IN_ELEVATION, 7);
  fp_dims_add_z (out, HEIGHT, (FpVec3) { p[WIDTH] / 2, p[DEPTH] / 2, 0 }, p[HEIGHT], FP_IN_SECTION, 7);
}

static void
quantities (const FpForm *form, GArray *out)
{
  fp_quantities_add_part (out, &fp_kind_missal_stand, form, FP_PART_BODY, "missal stand", FP_MATERIAL_WOOD);
  fp_quantities_add (out, "missals", FP_MATERIAL_NONE, FP_AMOUNT_NUMBER, form->param[BOOK] > 0 ? 1 : 0);
}

const FpKind fp_kind_missal_stand = {
  .id = "missal-stand",
  .label = "Missal stand",
  .tells = "A low desk on the altar on which the Missal lies open; it begins on the Epistle side.",
  .role = FP_ROLE_MISSAL_STAND,
  .anchor = FP_ANCHOR_CENTRE,
  .spot = FP_SPOT_ON_SUPPORT,
  .stands_on = stands_on,
  .params = params,
  .extent = extent,
  .solids = solids,
  .strokes = strokes,
  .dims = dims,
  .quantities = quantities,
};
