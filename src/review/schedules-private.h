/* SPDX-License-Identifier: GPL-3.0-or-later */
/* schedules-private.h - the lines that are told, one after the other, for whoever sets them in columns
 *
 * Private to src/review.
 */
#pragma once

#include "footpace/schedules.h"

G_BEGIN_DECLS

typedef enum { FP_TOLD_WORK, FP_TOLD_HEADING, FP_TOLD_ROW, FP_TOLD_SUM } FpToldType;

/* A title over lines, a line, or their sum. */
typedef struct
{
  FpToldType type;
  char      *cell[FP_N_BILL_COLUMNS]; /* of a title only the first is set; NULL: empty */
} FpTold;

GArray *fp_told_new (void); /* (element-type FpTold); frees their cells */
/* (transfer full) (element-type FpTold): by work, under it by heading. */
GArray *fp_schedules_told (const FpBill *bill, const FpScheduleChoice *choice);
/* Which columns have anything in them: 1 << FpBillColumn. */
guint   fp_schedules_columns (const GArray *told);

G_END_DECLS
