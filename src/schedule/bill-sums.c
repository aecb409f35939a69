/* SPDX-License-Identifier: GPL-3.0-or-later */
/* bill-sums.c - what the lines of a bill come to */
#include "footpace/bill.h"

#include <math.h>

double
fp_bill_cost (const FpBill *self, FpWork work)
{
  const GArray *rows = fp_bill_rows (self);
  double cost = NAN;

  for (guint i = 0; i < rows->len; i++)
    {
      const FpBillRow *row = &g_array_index (rows, FpBillRow, i);

      if (!isnan (row->cost) && (work == FP_N_WORKS || row->work == work))
        cost = (isnan (cost) ? 0 : cost) + row->cost;
    }
  return cost;
}

guint
fp_bill_unpriced (const FpBill *self, FpWork work)
{
  const GArray *rows = fp_bill_rows (self);
  guint n = 0;

  if (isnan (fp_bill_cost (self, FP_N_WORKS)))
    return 0;
  for (guint i = 0; i < rows->len; i++)
    {
      const FpBillRow *row = &g_array_index (rows, FpBillRow, i);

      if (row->unpriced && (work == FP_N_WORKS || row->work == work))
        n++;
    }
  return n;
}

double
fp_bill_stone (const FpBill *self)
{
  const GArray *rows = fp_bill_rows (self);
  double stone = 0;

  for (guint i = 0; i < rows->len; i++)
    {
      const FpBillRow *row = &g_array_index (rows, FpBillRow, i);

      if (row->work == FP_WORK_NEW && row->material == FP_MATERIAL_STONE && !isnan (row->volume))
        stone += row->volume;
    }
  return stone;
}

/* Of two as heavy the one that is listed first. */
const FpBillRow *
fp_bill_heaviest (const FpBill *self, guint works, guint headings)
{
  const GArray *rows = fp_bill_rows (self);
  const FpBillRow *heaviest = NULL;
  double most = 0;

  for (guint i = 0; i < rows->len; i++)
    {
      const FpBillRow *row = &g_array_index (rows, FpBillRow, i);
      const double each = fp_bill_row_each (row);

      if (row->work == FP_WORK_KEPT || (works != 0 && (works & 1u << row->work) == 0)
          || (headings != 0 && (headings & 1u << row->heading) == 0) || !(each > most))
        continue;
      heaviest = row;
      most = each;
    }
  return heaviest;
}

double
fp_bill_row_each (const FpBillRow *row)
{
  return row->pieces > 0 ? row->mass / row->pieces : NAN;
}
