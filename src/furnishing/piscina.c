/* SPDX-License-Identifier: GPL-3.0-or-later */
/* piscina.c - the basin with a drain to the earth, under a small arch at the wall on the Epistle side
 *
 * Origin: on the floor, the middle of its back.
 */
#include "kind-private.h"

#include <math.h>

enum { WIDTH, DEPTH, HEIGHT, HEAD };

#define IRISH "Suggestions on the Arrangement of Parish Churches (Ireland, 1850s), p. 25: in the south wall toward the east; the size is " FP_JUDGEMENT

static const FpParam params[] = {
  [WIDTH] = FP_LENGTH ("width", "Width", 250, 500, 1500, IRISH),
  [DEPTH] = FP_LENGTH ("depth", "Depth", 150, 350, 900, IRISH),
  [HEIGHT] = FP_LENGTH ("height", "Height of the basin", 500, 950, 1300, FP_JUDGEMENT),
  [HEAD] = FP_LENGTH ("head", "Height of the niche above it (0: none)", 0, 700, 2500, FP_JUDGEMENT),
  FP_NO_MORE_PARAMS
};

#define BASIN   130.0 /* deep; design judgement, as all that follows */
#define DRAIN   18.0
#define PIECES  16

static FpBox
plan (const FpForm *form)
{
  return (FpBox) { -form->param[WIDTH] / 2, -form->param[DEPTH], form->param[WIDTH] / 2, 0 };
}

/* The middle and the radius of the basin. */
static double
basin (const FpForm *form, FpPoint *middle)
{
  *middle = (FpPoint) { 0, -form->param[DEPTH] / 2 };
  return MIN (form->param[WIDTH], form->param[DEPTH]) * 0.36;
}

static void
extent (const FpForm *form, FpExtent *out)
{
  *out = fp_extent_bare (plan (form), form->param[HEIGHT] + form->param[HEAD]);
}

/* The block about the basin: between the rim and the sides of the block, as far as its next corner. */
static void
add_rim (const FpForm *form, double z0, double z1, FpSolids *out)
{
  const FpBox box = plan (form);
  FpPoint middle, corner[4];
  const double r = basin (form, &middle);

  fp_box_corners (&box, corner);
  for (guint side = 0; side < 4; side++)
    for (guint i = 0; i < PIECES / 4; i++)
      {
        const FpPoint a = corner[side], b = corner[(side + 1) % 4];
        FpPoint piece[4];
        for (guint k = 0; k < 2; k++)
          {
            const double t = (i + k) / (PIECES / 4.0), turn = -3 * G_PI / 4 + (side + t) * G_PI / 2;
            piece[k] = (FpPoint) { a.x + t * (b.x - a.x), a.y + t * (b.y - a.y) };
            piece[3 - k] = (FpPoint) { middle.x + r * cos (turn), middle.y + r * sin (turn) };
          }
        fp_solids_add_prism (out, FP_PART_BODY, piece, 4, z0, z1);
      }
}

/* A corbel, the basin, and a niche with a gable. */
static void
solids (const FpForm *form, FpSolids *out)
{
  const double *p = form->param;
  const FpBox box = plan (form);
  const double foot = MAX (p[HEIGHT] - 2.2 * BASIN, 0), bottom = p[HEIGHT] - BASIN * 0.8, jamb = p[WIDTH] * 0.1;
  const FpBox corbel = { box.x0 * 0.6, box.y0 * 0.6, box.x1 * 0.6, 0 };

  fp_solids_add_box (out, FP_PART_BODY, corbel.x0, corbel.y0, foot, corbel.x1, corbel.y1, bottom - BASIN * 0.4);
  fp_solids_add_box (out, FP_PART_BODY, box.x0, box.y0, bottom - BASIN * 0.4, box.x1, box.y1, bottom);
  add_rim (form, bottom, p[HEIGHT], out);
  if (p[HEAD] > 0)
    {
      const double gable = MIN (p[HEAD] * 0.35, p[WIDTH] * 0.5), eaves = p[HEIGHT] + p[HEAD] - gable;
      const FpBox roof = { box.x0, -MIN (p[DEPTH], 120), box.x1, 0 };
      fp_solids_add_box (out, FP_PART_BODY, box.x0, roof.y0, p[HEIGHT], box.x0 + jamb, 0, eaves);
      fp_solids_add_box (out, FP_PART_BODY, box.x1 - jamb, roof.y0, p[HEIGHT], box.x1, 0, eaves);
      fp_solids_add_gable (out, FP_PART_BODY, &roof, eaves, gable);
    }
}

/* The drain. */
static void
strokes (const FpForm *form, GArray *out)
{
  FpPoint middle;

  basin (form, &middle);
  fp_strokes_add (out, (FpPoint) { middle.x - DRAIN, middle.y }, (FpPoint) { middle.x + DRAIN, middle.y }, FALSE);
  fp_strokes_add (out, (FpPoint) { middle.x, middle.y - DRAIN }, (FpPoint) { middle.x, middle.y + DRAIN }, FALSE);
}

static void
dims (const FpForm *form, GArray *out)
{
  const double *p = form->param;

  fp_dims_add_x (out, WIDTH, (FpVec3) { -p[WIDTH] / 2, -p[DEPTH], p[HEIGHT] }, p[WIDTH], FP_IN_PLAN, 7);
  fp_dims_add_z (out, HEIGHT, (FpVec3) { p[WIDTH] / 2, -p[DEPTH], 0 }, p[HEIGHT], FP_IN_ELEVATION | FP_IN_SECTION, 7);
}

static void
quantities (const FpForm *form, GArray *out)
{
  fp_quantities_add_part (out, &fp_kind_piscina, form, FP_PART_BODY, "piscina", FP_MATERIAL_STONE);
  fp_quantities_add (out, "drains to the earth", FP_MATERIAL_NONE, FP_AMOUNT_NUMBER, 1);
}

const FpKind fp_kind_piscina = {
  .id = "piscina",
  .label = "Piscina",
  .tells = "A basin whose drain leads into the earth, for water that has been used at the altar.",
  .role = FP_ROLE_PISCINA,
  .anchor = FP_ANCHOR_BACK,
  .spot = FP_SPOT_EPISTLE_WALL,
  .clearance = 0,
  .params = params,
  .extent = extent,
  .solids = solids,
  .strokes = strokes,
  .dims = dims,
  .quantities = quantities,
};
