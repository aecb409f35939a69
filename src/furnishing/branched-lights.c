/* SPDX-License-Identifier: GPL-3.0-or-later */
/* branched-lights.c - candelabra: a stem with three, five or seven lights in one plane
 *
 * They do not count among the candles that the books prescribe for the altar.
 */
#include "kind-private.h"

enum { COUNT, GAP, SPACING, LIGHTS, HEIGHT, APART, STEP, CANDLE };

#define NOT_COUNTED "S.R.C. 16 Sept. 1865, through Catholic Encyclopedia I (1907), Altar Candlesticks: not counted among the " \
  "prescribed candles; the number is design judgement"

static const FpParam params[] = {
  [COUNT] = FP_COUNT ("count", "Candelabra", 1, 2, 12, NOT_COUNTED),
  [GAP] = FP_LENGTH ("gap", "Between the two middle ones", 100, 1100, 8000, FP_JUDGEMENT),
  [SPACING] = FP_LENGTH ("spacing", "Spacing of the others", 100, 800, 4000, FP_JUDGEMENT),
  [LIGHTS] = FP_COUNT ("lights", "Lights on each", 3, 5, 7, FP_CUSTOM ": three, five or seven"),
  [HEIGHT] = FP_LENGTH ("height", "Height of the middle light", 150, 600, 3000, FP_JUDGEMENT),
  [APART] = FP_LENGTH ("apart", "Between two lights", 30, 90, 400, FP_JUDGEMENT),
  [STEP] = FP_LENGTH ("step", "Each next outward is lower by", 0, 50, 300, FP_JUDGEMENT),
  [CANDLE] = FP_LENGTH ("candle", "Height of the candles", 30, 150, 800, FP_JUDGEMENT),
  FP_NO_MORE_PARAMS
};

static const FpRole stands_on[] = { FP_ROLE_GRADINE, FP_ROLE_ALTAR, FP_ROLE_FOOTPACE, FP_ROLE_FLOOR, FP_ROLE_NONE };

/* Proportions: design judgement. */
typedef struct
{
  guint  arms;       /* to either side                                      */
  double wick, pan, bar, foot, half;
} Parts;

static Parts
parts (const FpForm *form)
{
  const double *p = form->param;
  Parts of = { .arms = fp_form_count (form, LIGHTS) / 2 };

  of.pan = MIN (p[APART] * 0.42, 40);
  of.wick = MIN (of.pan * 0.5, 14);
  of.bar = MIN (of.pan * 0.3, 9);
  of.foot = CLAMP (p[HEIGHT] * 0.14, 40, 160);
  of.half = MAX (of.arms * p[APART] + of.pan, of.foot);
  return of;
}

/* Of light number @arm from the middle. */
static double
pan_level (const FpForm *form, guint arm)
{
  return MAX (form->param[HEIGHT] - arm * form->param[STEP], form->param[HEIGHT] * 0.45);
}

static void
extent (const FpForm *form, FpExtent *out)
{
  const double *p = form->param;
  const Parts of = parts (form);
  const double half = fp_pairs_reach (fp_form_count (form, COUNT), p[GAP], p[SPACING]) + of.half;

  *out = fp_extent_bare (fp_centred_box (2 * half, 2 * of.foot), p[HEIGHT] + p[CANDLE]);
}

static void
add_light (const FpForm *form, const Parts *of, double x, double z, FpSolids *out)
{
  fp_solids_add_round (out, FP_PART_STICK, x, 0, z - 12, z, of->pan * 0.4, of->pan);
  fp_solids_add_round (out, FP_PART_CANDLE, x, 0, z, z + form->param[CANDLE], of->wick, of->wick);
}

/* From the stem outward, each arm below the one inside it, and up to its pan. */
static void
add_arms (const FpForm *form, const Parts *of, double x, guint arm, FpSolids *out)
{
  const double *p = form->param;
  const double level = p[HEIGHT] * (0.42 - 0.06 * arm), reach = arm * p[APART], pan = pan_level (form, arm) - 12;

  for (int side = -1; side <= 1; side += 2)
    {
      const double outer = x + side * reach, inner = x + side * of->bar * 1.6;
      fp_solids_add_box (out, FP_PART_STICK, MIN (inner, outer - side * of->bar), -of->bar, level,
                         MAX (inner, outer - side * of->bar), of->bar, level + 2 * of->bar);
      fp_solids_add_round (out, FP_PART_STICK, outer, 0, level, pan, of->bar, of->bar);
      add_light (form, of, outer, pan + 12, out);
    }
}

static void
add_one (const FpForm *form, const Parts *of, double x, FpSolids *out)
{
  const double height = form->param[HEIGHT], stem = of->bar * 1.6;

  fp_solids_add_round (out, FP_PART_STICK, x, 0, 0, height * 0.05, of->foot, of->foot * 0.9);
  fp_solids_add_round (out, FP_PART_STICK, x, 0, height * 0.05, height * 0.12, of->foot * 0.8, stem);
  fp_solids_add_round (out, FP_PART_STICK, x, 0, height * 0.12, height - 12, stem, stem);
  add_light (form, of, x, height, out);
  for (guint arm = 1; arm <= of->arms; arm++)
    add_arms (form, of, x, arm, out);
}

static void
solids (const FpForm *form, FpSolids *out)
{
  const double *p = form->param;
  const Parts of = parts (form);
  const guint n = fp_form_count (form, COUNT);

  for (guint i = 0; i < n; i++)
    add_one (form, &of, fp_pair_x (i, n, p[GAP], p[SPACING]), out);
}

static void
dims (const FpForm *form, GArray *out)
{
  const double *p = form->param;
  const double outer = fp_pairs_reach (fp_form_count (form, COUNT), p[GAP], p[SPACING]);

  fp_dims_add_z (out, HEIGHT, (FpVec3) { outer, 0, 0 }, p[HEIGHT], FP_IN_ELEVATION, 7);
}

static void
quantities (const FpForm *form, GArray *out)
{
  const double *p = form->param;
  const double candles = p[COUNT] * (2 * parts (form).arms + 1);

  fp_quantities_add_metal (out, &fp_kind_branched_lights, form, "candelabra", FP_AMOUNT_NUMBER, p[COUNT]);
  fp_quantities_add (out, "candles of the candelabra", FP_MATERIAL_WAX, FP_AMOUNT_NUMBER, candles);
  fp_quantities_add (out, "candles of the candelabra, length in all", FP_MATERIAL_WAX, FP_AMOUNT_LENGTH,
                     candles * p[CANDLE]);
}

static char *
amiss (const FpForm *form)
{
  if (fp_form_count (form, LIGHTS) % 2 == 0)
    return g_strdup ("The lights of a candelabrum are three, five or seven.");
  return fp_pairs_amiss ("candelabra", fp_form_count (form, COUNT), form->param[GAP], form->param[SPACING],
                         2 * parts (form).half);
}

const FpKind fp_kind_branched_lights = {
  .id = "branched-lights",
  .label = "Candelabra",
  .tells = "Branched candlesticks with three, five or seven lights, in pairs about the altar.",
  .role = FP_ROLE_BRANCHED_LIGHTS,
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
