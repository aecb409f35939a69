/* SPDX-License-Identifier: GPL-3.0-or-later */
/* paschal-candlestick.c - the great candlestick, by the ambo in Eastertide and by the font after that */
#include "kind-private.h"

enum { HEIGHT, CANDLE, DIAMETER };

#define UFC "UFC 4-730-02 (2004), p. 60: about 50 in high, candle about 2 in across"

static const FpParam params[] = {
  [HEIGHT] = FP_LENGTH ("height", "Height of the stick", 300, 1250, 4000, UFC),
  [CANDLE] = FP_LENGTH ("candle", "Height of the candle", 150, 900, 3000, FP_JUDGEMENT),
  [DIAMETER] = FP_LENGTH ("diameter", "Diameter of the candle", 25, 50, 200, UFC),
  FP_NO_MORE_PARAMS
};

static const FpRole stands_on[] = { FP_ROLE_FLOOR, FP_ROLE_FOOTPACE, FP_ROLE_NONE };

static double
foot_radius (const FpForm *form)
{
  return CLAMP (form->param[HEIGHT] * 0.15, MAX (60, form->param[DIAMETER]), 450);
}

static void
extent (const FpForm *form, FpExtent *out)
{
  const double wide = 2 * foot_radius (form);

  *out = fp_extent_bare (fp_centred_box (wide, wide), form->param[HEIGHT] + form->param[CANDLE]);
}

/* Two steps, a shaft with three knops, a pan; proportions: design judgement. */
static void
solids (const FpForm *form, FpSolids *out)
{
  const double h = form->param[HEIGHT], foot = foot_radius (form), r = form->param[DIAMETER] / 2;
  const double shaft = MAX (foot * 0.2, r * 0.9), knop = shaft * 1.7, knob = MIN (shaft, h * 0.04);

  fp_solids_add_round (out, FP_PART_STICK, 0, 0, 0, h * 0.05, foot, foot);
  fp_solids_add_round (out, FP_PART_STICK, 0, 0, h * 0.05, h * 0.1, foot * 0.75, foot * 0.75);
  fp_solids_add_round (out, FP_PART_STICK, 0, 0, h * 0.1, h * 0.16, foot * 0.6, shaft);
  for (guint i = 0; i < 3; i++)
    {
      const double z0 = h * (0.16 + i * 0.26), z1 = h * (0.16 + (i + 1) * 0.26);
      fp_solids_add_round (out, FP_PART_STICK, 0, 0, z0, z1 - 2 * knob, shaft, shaft);
      fp_solids_add_round (out, FP_PART_STICK, 0, 0, z1 - 2 * knob, z1 - knob, shaft, knop);
      fp_solids_add_round (out, FP_PART_STICK, 0, 0, z1 - knob, z1, knop, shaft);
    }
  fp_solids_add_round (out, FP_PART_STICK, 0, 0, h * 0.94, h, shaft, MIN (foot, shaft * 2.2));
  fp_solids_add_round (out, FP_PART_CANDLE, 0, 0, h, h + form->param[CANDLE], r, r);
}

static void
dims (const FpForm *form, GArray *out)
{
  const double *p = form->param;

  fp_dims_add_z (out, HEIGHT, (FpVec3) { foot_radius (form), 0, 0 }, p[HEIGHT], FP_IN_ELEVATION, 5);
  fp_dims_add_z (out, CANDLE, (FpVec3) { foot_radius (form), 0, p[HEIGHT] }, p[CANDLE], FP_IN_ELEVATION, 6);
}

static void
quantities (const FpForm *form, GArray *out)
{
  fp_quantities_add_metal (out, &fp_kind_paschal_candlestick, form, "paschal candlestick", FP_AMOUNT_NUMBER, 1);
  fp_quantities_add_part (out, &fp_kind_paschal_candlestick, form, FP_PART_CANDLE, "paschal candle", FP_MATERIAL_WAX);
}

const FpKind fp_kind_paschal_candlestick = {
  .id = "paschal-candlestick",
  .label = "Paschal candlestick",
  .tells = "The great candlestick with the candle that is blessed at the Easter Vigil.",
  .role = FP_ROLE_PASCHAL_CANDLE,
  .anchor = FP_ANCHOR_CENTRE,
  .spot = FP_SPOT_GOSPEL_FRONT,
  .clearance = 300,
  .stands_on = stands_on,
  .params = params,
  .extent = extent,
  .solids = solids,
  .dims = dims,
  .quantities = quantities,
};
