/* SPDX-License-Identifier: GPL-3.0-or-later */
/* ambo.c - the place of the readings: a desk between side walls, on a platform of its own
 *
 * Origin: middle of the desk's body (width x depth); the platform reaches
 * farther towards +y, so that the reader stands on it.  The desk slopes
 * down towards the reader; its height is that of the edge nearest to him, as
 * the source gives it.
 */
#include "kind-private.h"

#include <math.h>

enum { WIDTH, DEPTH, HEIGHT, STEP };

#define UFC "UFC 4-730-02 (2004), ch. 3, 2h(2)"

static const FpParam params[] = {
  [WIDTH] = FP_LENGTH ("width", "Width", 400, 900, 4000, UFC ": not over 36 in"),
  [DEPTH] = FP_LENGTH ("depth", "Depth", 300, 700, 3000, FP_JUDGEMENT),
  [HEIGHT] = FP_LENGTH ("height", "Height of the desk's edge, above its own floor", 700, 1050, 1500,
                        UFC ": lower edge 39 to 45 in above its floor"),
  [STEP] = FP_LENGTH ("step", "Height of its own platform (0: none)", 0, 150, 2500, FP_JUDGEMENT),
  FP_NO_MORE_PARAMS
};

#define DESK_DEPTH 381.0 /* 15 in, UFC                                      */
#define DESK_SLOPE 20.0  /* degrees, UFC                                    */
#define BOARD      40.0  /* design judgement                                */
#define STANDING   230.0 /* middle of the reader behind the desk; design judgement */

typedef struct
{
  FpBox  body;
  double desk0, desk1; /* y of the desk, people's edge and reader's         */
  double reader;       /* y where he stands                                 */
  double back;         /* y where the platform ends                         */
  double rise;         /* of the desk from the reader's edge to the people's */
} Parts;

static Parts
parts (const FpForm *form)
{
  Parts of = { .body = fp_centred_box (form->param[WIDTH], form->param[DEPTH]) };
  const double desk = MIN (DESK_DEPTH, form->param[DEPTH] - 2 * BOARD);

  of.desk0 = of.body.y0 + BOARD;
  of.desk1 = of.desk0 + desk;
  of.reader = of.desk1 + STANDING;
  of.back = MAX (of.body.y1, of.reader + 350);
  of.rise = desk * tan (DESK_SLOPE * G_PI / 180);
  return of;
}

static double
front_top (const FpForm *form, const Parts *of)
{
  return form->param[STEP] + form->param[HEIGHT] + of->rise;
}

static void
extent (const FpForm *form, FpExtent *out)
{
  const Parts of = parts (form);
  const FpBox plan = { of.body.x0, of.body.y0, of.body.x1, form->param[STEP] > 0 ? of.back : of.body.y1 };

  *out = fp_extent_bare (plan, front_top (form, &of));
}

static void
solids (const FpForm *form, FpSolids *out)
{
  const Parts of = parts (form);
  const FpBox *b = &of.body;
  const double step = form->param[STEP], edge = step + form->param[HEIGHT], slope = -of.rise / (of.desk1 - of.desk0);
  const double at_origin = edge - slope * of.desk1; /* height of the desk's plane over y = 0 */
  const FpPoint desk[4] = { { b->x0 + BOARD, of.desk0 }, { b->x1 - BOARD, of.desk0 }, { b->x1 - BOARD, of.desk1 },
                            { b->x0 + BOARD, of.desk1 } };
  const double cheek[2] = { b->x0, b->x1 - BOARD };

  fp_solids_add_box (out, FP_PART_BODY, b->x0, b->y0, 0, b->x1, of.back, step);
  fp_solids_add_framed (out, FP_PART_BODY, &(FpBox) { b->x0, b->y0, b->x1, of.desk0 }, step, front_top (form, &of));
  fp_solids_add_sloping (out, FP_PART_SHELF, desk, 4, edge - BOARD, at_origin, 0, slope);
  for (guint i = 0; i < 2; i++)
    {
      const FpPoint side[4] = { { cheek[i], of.desk0 }, { cheek[i] + BOARD, of.desk0 }, { cheek[i] + BOARD, of.desk1 },
                                { cheek[i], of.desk1 } };
      fp_solids_add_sloping (out, FP_PART_BODY, side, 4, step, at_origin, 0, slope);
      fp_solids_add_box (out, FP_PART_BODY, cheek[i], of.desk1, step, cheek[i] + BOARD, b->y1, edge);
    }
}

static void
dims (const FpForm *form, GArray *out)
{
  const double *p = form->param;
  const Parts of = parts (form);
  const double x = p[WIDTH] / 2;

  fp_dims_add_x (out, WIDTH, (FpVec3) { -x, of.body.y0, p[STEP] }, p[WIDTH], FP_IN_PLAN, 4);
  fp_dims_add_y (out, DEPTH, (FpVec3) { x, of.body.y0, p[STEP] }, p[DEPTH], FP_IN_PLAN, 5);
  fp_dims_add_z (out, HEIGHT, (FpVec3) { x, of.desk1, p[STEP] }, p[HEIGHT], FP_IN_SECTION, 4);
  fp_dims_add_z (out, STEP, (FpVec3) { x, of.body.y0, 0 }, p[STEP], FP_IN_ELEVATION, 4);
  fp_dims_add_z (out, -1, (FpVec3) { x, of.body.y0, 0 }, front_top (form, &of), FP_IN_ELEVATION, 5);
}

/* Shoulders to crown of a standing reader, before his body, so that he does not hide himself. */
static void
targets (const FpForm *form, GArray *out)
{
  const Parts of = parts (form);
  const double shoulders = 1300, crown = 1720, breadth = 450; /* design judgement, about the median of ANSUR II */

  fp_targets_add_person (out, FP_FOCUS_AMBO, (FpVec3) { 0, of.reader - 170, form->param[STEP] + shoulders }, breadth,
                         crown - shoulders);
}

static void
ministers (const FpForm *form, GArray *out)
{
  const Parts of = parts (form);
  const FpMinister reader = { .at = { 0, of.reader }, .z = form->param[STEP], .facing = 180 };

  g_array_append_val (out, reader);
}

static void
quantities (const FpForm *form, GArray *out)
{
  fp_quantities_add (out, "ambo", FP_MATERIAL_WOOD, FP_AMOUNT_NUMBER, 1);
  if (form->param[STEP] > 0)
    fp_quantities_add (out, "platform of the ambo", FP_MATERIAL_NONE, FP_AMOUNT_AREA,
                       form->param[WIDTH] * (parts (form).back - parts (form).body.y0));
}

const FpKind fp_kind_ambo = {
  .id = "ambo",
  .label = "Ambo",
  .tells = "The fixed place, lectern or pulpit, from which the readings are proclaimed.",
  .role = FP_ROLE_AMBO,
  .anchor = FP_ANCHOR_CENTRE,
  .spot = FP_SPOT_GOSPEL_FRONT,
  .clearance = 600,
  .params = params,
  .extent = extent,
  .solids = solids,
  .dims = dims,
  .targets = targets,
  .ministers = ministers,
  .quantities = quantities,
};
