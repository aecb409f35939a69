/* SPDX-License-Identifier: GPL-3.0-or-later */
/* seventh-candle.c - the candlestick that is added in the middle when the bishop of the diocese celebrates */
#include "kind-private.h"

enum { HEIGHT, CANDLE };

#define SEVENTH "Catholic Encyclopedia I (1907), Altar Candles, p. 348: a little higher than the six; the number is design judgement"

static const FpParam params[] = {
  [HEIGHT] = FP_LENGTH ("height", "Height of the stick", 60, 680, 3500, SEVENTH),
  [CANDLE] = FP_LENGTH ("candle", "Height of the candle", 30, 300, 2000, FP_JUDGEMENT),
  FP_NO_MORE_PARAMS
};

static const FpRole stands_on[] = { FP_ROLE_GRADINE, FP_ROLE_ALTAR, FP_ROLE_FOOTPACE, FP_ROLE_NONE };

/* As the six of candlesticks.c. */
static double
foot_radius (const FpForm *form)
{
  return CLAMP (form->param[HEIGHT] * 0.09, 25, 160);
}

static void
extent (const FpForm *form, FpExtent *out)
{
  *out = fp_candle_extent (form->param[HEIGHT], foot_radius (form), form->param[CANDLE]);
}

static void
solids (const FpForm *form, FpSolids *out)
{
  fp_solids_add_candlestick (out, 0, 0, 0, form->param[HEIGHT], foot_radius (form), form->param[CANDLE]);
}

static void
dims (const FpForm *form, GArray *out)
{
  fp_dims_add_z (out, HEIGHT, (FpVec3) { foot_radius (form), 0, 0 }, form->param[HEIGHT], FP_IN_ELEVATION, 6);
}

static void
quantities (const FpForm *form, GArray *out)
{
  fp_candle_quantities (out, &fp_kind_seventh_candle, form, "seventh candlestick", "seventh candle", form->param[CANDLE]);
}

const FpKind fp_kind_seventh_candle = {
  .id = "seventh-candle",
  .label = "Seventh candlestick",
  .tells = "A candlestick that is set in the middle, behind the cross, when the bishop of the diocese celebrates.",
  .role = FP_ROLE_SEVENTH_CANDLE,
  .anchor = FP_ANCHOR_CENTRE,
  .spot = FP_SPOT_ON_SUPPORT,
  .stands_on = stands_on,
  .params = params,
  .extent = extent,
  .solids = solids,
  .dims = dims,
  .quantities = quantities,
};
