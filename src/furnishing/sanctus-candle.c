/* SPDX-License-Identifier: GPL-3.0-or-later */
/* sanctus-candle.c - the candle on the Epistle side that burns from the consecration to the Communion */
#include "kind-private.h"

enum { HEIGHT, CANDLE };

#define STICKS "Catholic Encyclopedia I (1907), Altar Candlesticks (Rubr. gen. XX), has the candle but no size; design judgement"

static const FpParam params[] = {
  [HEIGHT] = FP_LENGTH ("height", "Height of the stick", 40, 200, 1500, STICKS),
  [CANDLE] = FP_LENGTH ("candle", "Height of the candle", 30, 200, 1000, STICKS),
  FP_NO_MORE_PARAMS
};

static const FpRole stands_on[] = { FP_ROLE_ALTAR, FP_ROLE_GRADINE, FP_ROLE_CREDENCE, FP_ROLE_NONE };

static double
foot_radius (const FpForm *form)
{
  return CLAMP (form->param[HEIGHT] * 0.25, 30, 140);
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
  const double *p = form->param;

  fp_dims_add_z (out, HEIGHT, (FpVec3) { foot_radius (form), 0, 0 }, p[HEIGHT], FP_IN_ELEVATION, 7);
  fp_dims_add_z (out, CANDLE, (FpVec3) { foot_radius (form), 0, p[HEIGHT] }, p[CANDLE], FP_IN_ELEVATION, 8);
}

static void
quantities (const FpForm *form, GArray *out)
{
  fp_candle_quantities (out, &fp_kind_sanctus_candle, form, "Sanctus candlestick", "Sanctus candle", form->param[CANDLE]);
}

const FpKind fp_kind_sanctus_candle = {
  .id = "sanctus-candle",
  .label = "Sanctus candle",
  .tells = "A candle on the Epistle side, lit from the consecration to the Communion in the older form.",
  .role = FP_ROLE_SANCTUS_CANDLE,
  .anchor = FP_ANCHOR_CENTRE,
  .spot = FP_SPOT_ON_SUPPORT,
  .stands_on = stands_on,
  .params = params,
  .extent = extent,
  .solids = solids,
  .dims = dims,
  .quantities = quantities,
};
