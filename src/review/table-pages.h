/* SPDX-License-Identifier: GPL-3.0-or-later */
/* table-pages.h - tables in columns, one after the other, over as many sheets as they take; each page says under which headings it goes on
 *
 * Private to src/review.
 */
#pragma once

#include "schedules-private.h"

G_BEGIN_DECLS

typedef struct
{
  const char *const *heads;   /* %FP_N_BILL_COLUMNS of them; NULL where a column is not used */
  guint              columns; /* 1 << column: those that are set                        */
  guint              words;   /* those that begin on the left, and go on in a second line where there is no room; numbers end on
                                 the right */
  const GArray      *told;    /* of FpTold                                              */
  const char        *closing; /* sentences below it                                     */
} FpTable;

/**
 * fp_table_pages:
 *
 * Returns: (transfer full) (element-type FpDrawing): NULL with %FP_ERROR_RANGE where the paper is too small for the numbers
 */
GPtrArray *fp_table_pages (const FpScene *scene, const FpSheetSpec *spec, const char *title, const char *code,
                           const FpTable *tables, guint n, GError **error);

G_END_DECLS
