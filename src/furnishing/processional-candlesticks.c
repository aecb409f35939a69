/* SPDX-License-Identifier: GPL-3.0-or-later */
/* processional-candlesticks.c - the two of the acolytes, set down on either side of the altar's steps */
#include "kind-private.h"

enum { GAP, HEIGHT, CANDLE };

static const FpParam params[] = {
  [GAP] = FP_LENGTH ("gap", "Between the two", 200, 3000, 12000, FP_JUDGEMENT),
  [HEIGHT] = FP_LENGTH ("height", "Height of the stick", 150, 450, 2000, FP_JUDGEMENT),
  [CANDLE] = FP_LENGTH ("candle", "Height of the candle", 50, 350, 1500, FP_JUDGEMENT),
  FP_NO_MORE_PARAMS
};

static const FpRole stands_on[] = { FP_ROLE_FLOOR, FP_ROLE_FOOTPACE, FP_ROLE_CREDENCE, FP_ROLE_NONE };

static double
foot_radius (const FpForm *form)
{
  return CLAMP (form->param[HEIGHT] * 0.2, 40, 180);
}

static void
extent (const FpForm *form, FpExtent *out)
{
  const double foot = foot_radius (form);

  *out = fp_extent_bare (fp_centred_box (form->param[GAP] + 2 * foot, 2 * foot), form->param[HEIGHT] + form->param[CANDLE]);
}

static void
solids (const FpForm *form, FpSolids *out)
{
  const double *p = form->param;

  for (int side = -1; side <= 1; side += 2)
    fp_solids_add_candlestick (out, side * p[GAP] / 2, 0, 0, p[HEIGHT], foot_radius (form), p[CANDLE]);
}

static void
dims (const FpForm *form, GArray *out)
{
  fp_dims_add_z (out, HEIGHT, (FpVec3) { form->param[GAP] / 2 + foot_radius (form), 0, 0 }, form->param[HEIGHT],
                 FP_IN_ELEVATION, 7);
}

static void
quantities (const FpForm *form, GArray *out)
{
  fp_quantities_add_metal (out, &fp_kind_processional_candlesticks, form, "processional candlesticks", FP_AMOUNT_NUMBER, 2);
  fp_quantities_add (out, "processional candles, length in all", FP_MATERIAL_WAX, FP_AMOUNT_LENGTH, 2 * form->param[CANDLE]);
}

static char *
amiss (const FpForm *form)
{
  return fp_pairs_amiss ("candlesticks", 2, form->param[GAP], form->param[GAP], 2 * foot_radius (form));
}

const FpKind fp_kind_processional_candlesticks = {
  .id = "processional-candlesticks",
  .label = "Processional candlesticks",
  .tells = "The two candlesticks that the acolytes carry, set down on either side before the altar.",
  .role = FP_ROLE_PROCESSIONAL_CANDLES,
  .anchor = FP_ANCHOR_CENTRE,
  .spot = FP_SPOT_BEFORE_ALTAR,
  .clearance = 100,
  .stands_on = stands_on,
  .params = params,
  .extent = extent,
  .solids = solids,
  .dims = dims,
  .quantities = quantities,
  .amiss = amiss,
};
