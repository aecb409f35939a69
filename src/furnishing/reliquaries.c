/* SPDX-License-Identifier: GPL-3.0-or-later */
/* reliquaries.c - reliquaries between the candlesticks, in pairs about the cross */
#include "kind-private.h"

enum { COUNT, GAP, SPACING, HEIGHT, WIDTH, SHAPE };
enum { OSTENSORY, CASKET };

static const FpChoice shapes[] = {
  { "ostensory", "On a foot, with a glass" }, { "casket", "Casket, shaped like a house" }, { NULL, NULL },
};

static const FpParam params[] = {
  [COUNT] = FP_COUNT ("count", "Number", 1, 2, 12, FP_CUSTOM),
  [GAP] = FP_LENGTH ("gap", "Between the two middle ones", 60, 850, 8000, FP_JUDGEMENT),
  [SPACING] = FP_LENGTH ("spacing", "Spacing of the others", 60, 400, 4000, FP_JUDGEMENT),
  [HEIGHT] = FP_LENGTH ("height", "Height", 100, 360, 1500, FP_JUDGEMENT),
  [WIDTH] = FP_LENGTH ("width", "Width", 50, 150, 1000, FP_JUDGEMENT),
  [SHAPE] = FP_CHOICE ("shape", "Shape", shapes, OSTENSORY, FP_JUDGEMENT),
  FP_NO_MORE_PARAMS
};

static const FpRole stands_on[] = { FP_ROLE_GRADINE, FP_ROLE_ALTAR, FP_ROLE_NONE };

static double
depth (const FpForm *form)
{
  return form->param[WIDTH] * 0.6;
}

static void
extent (const FpForm *form, FpExtent *out)
{
  const double *p = form->param;
  const double half = fp_pairs_reach (fp_form_count (form, COUNT), p[GAP], p[SPACING]) + p[WIDTH] / 2;

  *out = fp_extent_bare (fp_centred_box (2 * half, depth (form)), p[HEIGHT]);
}

/* Foot, stem, the glass in its frame, and a cross on top. */
static void
add_ostensory (const FpForm *form, double x, FpSolids *out)
{
  const double *p = form->param;
  const double foot = depth (form) / 2, head = MIN (p[WIDTH], p[HEIGHT] * 0.5), z = p[HEIGHT] * 0.42;
  const FpBox glass = { x - head / 2, -depth (form) * 0.2, x + head / 2, depth (form) * 0.2 };
  const double crown = MIN (z + head, p[HEIGHT] * 0.9), arm = head * 0.1, bar = head * 0.03;

  fp_solids_add_round (out, FP_PART_BODY, x, 0, 0, z * 0.2, foot, foot * 0.7);
  fp_solids_add_round (out, FP_PART_BODY, x, 0, z * 0.2, z, foot * 0.22, foot * 0.22);
  fp_solids_add_framed (out, FP_PART_BODY, &glass, z, crown);
  fp_solids_add_box (out, FP_PART_CROSS, x - bar, -bar, crown, x + bar, bar, p[HEIGHT]);
  for (int side = -1; side <= 1; side += 2)
    fp_solids_add_box (out, FP_PART_CROSS, side < 0 ? x - arm : x + bar, -bar, crown + (p[HEIGHT] - crown) * 0.5,
                       side < 0 ? x - bar : x + arm, bar, crown + (p[HEIGHT] - crown) * 0.5 + 2 * bar);
}

/* Four feet, a chest, and a roof with its ridge along it. */
static void
add_casket (const FpForm *form, double x, FpSolids *out)
{
  const double *p = form->param;
  const double half = p[WIDTH] / 2, deep = depth (form) / 2, foot = half * 0.2, z = p[HEIGHT] * 0.1, eaves = p[HEIGHT] * 0.6;
  const FpPoint front[4] = { { x - half, -deep }, { x + half, -deep }, { x + half, 0 }, { x - half, 0 } };
  const FpPoint back[4] = { { x - half, 0 }, { x + half, 0 }, { x + half, deep }, { x - half, deep } };
  const double slope = (p[HEIGHT] - eaves) / deep;

  for (guint i = 0; i < 4; i++)
    {
      const double fx = i % 2 == 0 ? x - half : x + half - foot, fy = i < 2 ? -deep : deep - foot;
      fp_solids_add_box (out, FP_PART_BODY, fx, fy, 0, fx + foot, fy + foot, z);
    }
  fp_solids_add_box (out, FP_PART_BODY, x - half, -deep, z, x + half, deep, eaves);
  fp_solids_add_sloping (out, FP_PART_BODY, front, 4, eaves, p[HEIGHT], 0, slope);
  fp_solids_add_sloping (out, FP_PART_BODY, back, 4, eaves, p[HEIGHT], 0, -slope);
}

static void
solids (const FpForm *form, FpSolids *out)
{
  const double *p = form->param;
  const guint n = fp_form_count (form, COUNT);

  for (guint i = 0; i < n; i++)
    if (fp_form_is (form, SHAPE, CASKET))
      add_casket (form, fp_pair_x (i, n, p[GAP], p[SPACING]), out);
    else
      add_ostensory (form, fp_pair_x (i, n, p[GAP], p[SPACING]), out);
}

static void
dims (const FpForm *form, GArray *out)
{
  const double *p = form->param;
  const double outer = fp_pairs_reach (fp_form_count (form, COUNT), p[GAP], p[SPACING]) + p[WIDTH] / 2;

  fp_dims_add_z (out, HEIGHT, (FpVec3) { outer, 0, 0 }, p[HEIGHT], FP_IN_ELEVATION, 7);
}

static void
quantities (const FpForm *form, GArray *out)
{
  fp_quantities_add_metal (out, &fp_kind_reliquaries, form, "reliquaries", FP_AMOUNT_NUMBER, form->param[COUNT]);
}

static char *
amiss (const FpForm *form)
{
  return fp_pairs_amiss ("reliquaries", fp_form_count (form, COUNT), form->param[GAP], form->param[SPACING],
                         form->param[WIDTH]);
}

const FpKind fp_kind_reliquaries = {
  .id = "reliquaries",
  .label = "Reliquaries",
  .tells = "Vessels with relics of saints, set between the candlesticks on high days in the older form.",
  .role = FP_ROLE_RELIQUARIES,
  .anchor = FP_ANCHOR_CENTRE,
  .spot = FP_SPOT_ON_SUPPORT,
  .stands_on = stands_on,
  .params = params,
  .extent = extent,
  .solids = solids,
  .dims = dims,
  .quantities = quantities,
  .amiss = amiss,
};
