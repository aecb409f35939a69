/* SPDX-License-Identifier: GPL-3.0-or-later */
/* candlesticks.c - a group of candlesticks, symmetrical about the cross
 *
 * Pairs are numbered from the inside.  With an odd count one stands in the
 * middle and the pairs stay where they are, so that the seventh of a pontifical
 * Mass shifts none of the six.
 */
#include "kind-private.h"

enum { COUNT, SPACING, GAP, HEIGHT, GRADING, STEP, CANDLE };
enum { EQUAL, GRADED };

static const FpChoice gradings[] = {
  { "equal", "All equal" }, { "graded", "Higher towards the cross" }, { NULL, NULL },
};

static const FpParam params[] = {
  [COUNT] = FP_COUNT ("count", "Number", 1, 6, 40,
                       "Catholic Encyclopedia I (1907), Altar Candles, p. 348: solemn Mass"),
  [SPACING] = FP_LENGTH ("spacing", "Spacing", 60, 250, 4000, FP_JUDGEMENT),
  [GAP] = FP_LENGTH ("gap", "Between the two middle ones", 60, 600, 8000, FP_JUDGEMENT),
  [HEIGHT] = FP_LENGTH ("height", "Height of the outermost stick", 60, 500, 3000, FP_JUDGEMENT),
  [GRADING] = FP_CHOICE ("grading", "Heights", gradings, EQUAL,
                         "S.R.C. 21 July 1855, through Catholic Encyclopedia I (1907), Altar Candlesticks: tolerated"),
  [STEP] = FP_LENGTH ("step", "Each next inward is higher by", 0, 60, 500, FP_JUDGEMENT),
  [CANDLE] = FP_LENGTH ("candle", "Height of the candles", 30, 300, 2000, FP_JUDGEMENT),
  FP_NO_MORE_PARAMS
};

static const FpRole stands_on[] = { FP_ROLE_GRADINE, FP_ROLE_ALTAR, FP_ROLE_FOOTPACE, FP_ROLE_NONE };

static guint
n_pairs (const FpForm *form)
{
  return fp_form_count (form, COUNT) / 2;
}

static gboolean
has_middle (const FpForm *form)
{
  return fp_form_count (form, COUNT) % 2 == 1;
}

static double
pair_x (const FpForm *form, guint pair)
{
  return form->param[GAP] / 2 + pair * form->param[SPACING];
}

/* Pair 0 is the innermost; the one in the middle counts as pair -1. */
static double
stick_height (const FpForm *form, int pair)
{
  const int inward = (int) n_pairs (form) - 1 - pair;

  return form->param[HEIGHT] + (fp_form_is (form, GRADING, GRADED) ? inward * form->param[STEP] : 0);
}

static double
highest_stick (const FpForm *form)
{
  return stick_height (form, has_middle (form) ? -1 : 0);
}

/* Sticks of one group share a foot, whatever their heights. */
static double
foot_radius (const FpForm *form)
{
  return CLAMP (form->param[HEIGHT] * 0.12, 25, 160);
}

static void
extent (const FpForm *form, FpExtent *out)
{
  const double r = foot_radius (form), x = n_pairs (form) > 0 ? pair_x (form, n_pairs (form) - 1) : 0;

  *out = fp_extent_bare (fp_centred_box (2 * (x + r), 2 * r), highest_stick (form) + form->param[CANDLE]);
}

static void
solids (const FpForm *form, FpSolids *out)
{
  const double foot = foot_radius (form), candle = form->param[CANDLE];

  for (guint pair = 0; pair < n_pairs (form); pair++)
    {
      const double x = pair_x (form, pair), height = stick_height (form, (int) pair);
      fp_solids_add_candlestick (out, -x, 0, 0, height, foot, candle);
      fp_solids_add_candlestick (out, x, 0, 0, height, foot, candle);
    }
  if (has_middle (form))
    fp_solids_add_candlestick (out, 0, 0, 0, stick_height (form, -1), foot, candle);
}

static void
dims (const FpForm *form, GArray *out)
{
  const double *p = form->param;
  const guint n = n_pairs (form);
  const double low = stick_height (form, (int) n - 1), outer = n > 0 ? pair_x (form, n - 1) : 0;

  fp_dims_add_z (out, HEIGHT, (FpVec3) { outer, 0, 0 }, n > 0 ? p[HEIGHT] : 0, FP_IN_ELEVATION, 3);
  fp_dims_add_z (out, -1, (FpVec3) { has_middle (form) ? 0 : pair_x (form, 0), 0, 0 }, highest_stick (form) + p[CANDLE],
                 FP_IN_ELEVATION, 3);
  if (n > 0)
    fp_dims_add_x (out, GAP, (FpVec3) { -p[GAP] / 2, 0, 0 }, p[GAP], FP_IN_ELEVATION, 5);
  if (n > 1)
    {
      fp_dims_add (out, SPACING, (FpVec3) { p[GAP] / 2, 0, 0 }, (FpVec3) { outer, 0, 0 }, FP_IN_ELEVATION, n - 1, 5);
      if (fp_form_is (form, GRADING, GRADED))
        fp_dims_add_z (out, STEP, (FpVec3) { outer, 0, low }, p[STEP], FP_IN_ELEVATION, 7);
    }
}

static void
quantities (const FpForm *form, GArray *out)
{
  fp_quantities_add_metal (out, &fp_kind_candlesticks, form, "candlesticks", FP_AMOUNT_NUMBER, form->param[COUNT]);
  const double thick = 2 * fp_candle_radius (foot_radius (form));

  fp_quantities_add_sized (out, "candles", FP_MATERIAL_WAX, form->param[COUNT], (FpVec3) { thick, thick, form->param[CANDLE] });
  fp_quantities_add (out, "candles, length in all", FP_MATERIAL_WAX, FP_AMOUNT_LENGTH,
                     form->param[COUNT] * form->param[CANDLE]);
}

static char *
amiss (const FpForm *form)
{
  const double across = 2 * foot_radius (form);

  if (n_pairs (form) > 1 && form->param[SPACING] < across)
    return g_strdup_printf ("The candlesticks stand in each other: their feet are %.0f mm across.", across);
  if (n_pairs (form) > 0 && form->param[GAP] < (has_middle (form) ? 2 : 1) * across)
    return g_strdup_printf ("The middle candlesticks stand in each other: their feet are %.0f mm across.", across);
  return NULL;
}

const FpKind fp_kind_candlesticks = {
  .id = "candlesticks",
  .label = "Candlesticks",
  .tells = "The candlesticks of the altar with their candles, as many on one side of the cross as on the other.",
  .role = FP_ROLE_CANDLES,
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
