/* SPDX-License-Identifier: GPL-3.0-or-later */
/* kind-alike.c - what kinds that are set out alike share: so many in a row, and one candlestick on its own */
#include "kind-private.h"

/* --- so many alike in a row ---------------------------------------------------- */

double
fp_row_x (const FpRow *row, guint i)
{
  return (i - (row->count - 1) / 2.0) * row->spacing;
}

FpBox
fp_row_box (const FpRow *row, double depth)
{
  return fp_centred_box ((row->count - 1) * row->spacing + row->width, depth);
}

void
fp_row_dims (const FpRow *row, int param, double depth, guint rank, GArray *out)
{
  const double last = fp_row_x (row, row->count - 1);

  if (row->count > 1)
    fp_dims_add (out, param, (FpVec3) { -last, -depth / 2, 0 }, (FpVec3) { last, -depth / 2, 0 }, FP_IN_PLAN,
                 row->count - 1, rank);
}

char *
fp_row_amiss (const FpRow *row, const char *what)
{
  return row->count > 1 && row->spacing < row->width ? g_strdup_printf ("The %s stand in each other.", what) : NULL;
}

/* --- one candlestick ------------------------------------------------------------- */

FpExtent
fp_candle_extent (double height, double foot, double candle)
{
  return fp_extent_bare (fp_centred_box (2 * foot, 2 * foot), height + candle);
}

void
fp_candle_quantities (GArray *out, const FpKind *kind, const FpForm *form, const char *stick, const char *candle, double length)
{
  fp_quantities_add_metal (out, kind, form, stick, FP_AMOUNT_NUMBER, 1);
  fp_quantities_add (out, candle, FP_MATERIAL_WAX, FP_AMOUNT_LENGTH, length);
}
