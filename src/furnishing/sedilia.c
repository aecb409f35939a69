/* SPDX-License-Identifier: GPL-3.0-or-later */
/* sedilia.c - the bench of the sacred ministers */
#include "kind-private.h"

enum { SEATS, SEAT_WIDTH, DEPTH, SEAT_HEIGHT, BACK_HEIGHT };

static const FpParam params[] = {
  [SEATS] = FP_COUNT ("seats", "Seats", 1, 3, 20, "Catholic Encyclopedia XIII (1912), Sedilia"),
  [SEAT_WIDTH] = FP_LENGTH ("seat-width", "Width of one seat", 400, 650, 1500, FP_JUDGEMENT),
  [DEPTH] = FP_LENGTH ("depth", "Depth", 350, 550, 1200, FP_JUDGEMENT),
  [SEAT_HEIGHT] = FP_LENGTH ("seat-height", "Height of the seat", 300, 450, 700, FP_CUSTOM),
  [BACK_HEIGHT] = FP_LENGTH ("back-height", "Height of the back", 300, 850, 3000, FP_JUDGEMENT),
  FP_NO_MORE_PARAMS
};

static FpBox
plan (const FpForm *form)
{
  return fp_centred_box (form->param[SEATS] * form->param[SEAT_WIDTH], form->param[DEPTH]);
}

static void
extent (const FpForm *form, FpExtent *out)
{
  *out = fp_extent_bare (plan (form), MAX (form->param[BACK_HEIGHT], form->param[SEAT_HEIGHT]));
}

static void
solids (const FpForm *form, FpSolids *out)
{
  const double *p = form->param;
  const FpBox box = plan (form);

  fp_solids_add_bench (out, &box, 0, p[SEAT_HEIGHT], p[BACK_HEIGHT], MIN (p[BACK_HEIGHT], p[SEAT_HEIGHT] + 200));
}

/* Where one seat ends and the next begins. */
static void
strokes (const FpForm *form, GArray *out)
{
  const FpBox box = plan (form);

  for (guint i = 1; i < fp_form_count (form, SEATS); i++)
    {
      const double x = box.x0 + i * form->param[SEAT_WIDTH];
      fp_strokes_add (out, (FpPoint) { x, box.y0 }, (FpPoint) { x, box.y1 }, FALSE);
    }
}

static void
dims (const FpForm *form, GArray *out)
{
  const double *p = form->param;
  const FpBox box = plan (form);

  fp_dims_add (out, SEAT_WIDTH, (FpVec3) { box.x0, box.y0, 0 }, (FpVec3) { box.x1, box.y0, 0 }, FP_IN_PLAN,
               fp_form_count (form, SEATS), 4);
  fp_dims_add_y (out, DEPTH, (FpVec3) { box.x1, box.y0, 0 }, p[DEPTH], FP_IN_PLAN, 5);
  fp_dims_add_z (out, SEAT_HEIGHT, (FpVec3) { box.x1, box.y0, 0 }, p[SEAT_HEIGHT], FP_IN_SECTION, 6);
  fp_dims_add_z (out, BACK_HEIGHT, (FpVec3) { box.x1, box.y1, 0 }, p[BACK_HEIGHT], FP_IN_SECTION, 5);
}

static void
quantities (const FpForm *form, GArray *out)
{
  fp_quantities_add (out, "bench for ministers", FP_MATERIAL_WOOD, FP_AMOUNT_LENGTH,
                     form->param[SEATS] * form->param[SEAT_WIDTH]);
  fp_quantities_add (out, "seats for ministers", FP_MATERIAL_NONE, FP_AMOUNT_NUMBER, form->param[SEATS]);
}

static char *
amiss (const FpForm *form)
{
  if (form->param[BACK_HEIGHT] < form->param[SEAT_HEIGHT])
    return g_strdup ("The back is lower than the seat.");
  return NULL;
}

const FpKind fp_kind_sedilia = {
  .id = "sedilia",
  .label = "Sedilia",
  .tells = "The bench on the Epistle side where celebrant, deacon and subdeacon sit.",
  .role = FP_ROLE_SEDILIA,
  .anchor = FP_ANCHOR_BACK,
  .spot = FP_SPOT_EPISTLE_WALL,
  .clearance = 50,
  .params = params,
  .extent = extent,
  .solids = solids,
  .strokes = strokes,
  .dims = dims,
  .quantities = quantities,
  .amiss = amiss,
};
