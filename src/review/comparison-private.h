/* SPDX-License-Identifier: GPL-3.0-or-later */
/* comparison-private.h - what the parts of a comparison share */
#pragma once

#include "footpace/review.h"

G_BEGIN_DECLS

typedef struct
{
  char    *text;
  gboolean is_short;
} FpComparisonCell;

struct _FpComparison
{
  guint             columns, rows;
  FpFindings      **findings; /* one a column; owned             */
  char            **head;     /* names of the alternatives       */
  const char      **label;    /* of the rows                     */
  FpComparisonCell *cell;     /* row by row                      */
};

/* What "seen" means in a row. */
#define FP_COMPARISON_SEEN "share of the places, galleries apart, from which half or more is seen"

guint       fp_comparison_n_row_kinds (void);
const char *fp_comparison_row_label   (guint row);
/* The cell of one alternative; its text is the caller's. */
void        fp_comparison_row_fill    (guint row, const FpFindings *findings, FpComparisonCell *cell);

G_END_DECLS
