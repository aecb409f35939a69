/* SPDX-License-Identifier: GPL-3.0-or-later */
/* comparison-private.h - what the parts of a comparison share */
#pragma once

#include "footpace/review.h"

G_BEGIN_DECLS

typedef struct
{
  char    *text;
  gboolean is_short, is_best;
  FpWeight weight; /* of the heaviest of those that it is short by */
} FpComparisonCell;

struct _FpComparison
{
  guint             columns, rows;
  FpFindings      **findings; /* one a column; owned             */
  char            **head;     /* names of the alternatives       */
  char            **label;    /* of the rows                     */
  gboolean         *heading;  /* likewise                        */
  FpComparisonCell *cell;     /* row by row                      */
  const char       *seen;     /* what "seen" means in it; static */
};

/* What "seen" means in a row. */
#define FP_COMPARISON_SEEN "share of the places, galleries apart, from which half or more is seen"

/* With heads, and no rows yet. */
FpComparison     *fp_comparison_begin   (FpFindings *const *findings, guint n);
/* Its cells are to be filled.  Returns: its number */
guint             fp_comparison_add_row (FpComparison *self, gboolean heading, const char *format, ...) G_GNUC_PRINTF (3, 4);
FpComparisonCell *fp_comparison_cell_of (const FpComparison *self, guint row, guint column);

guint       fp_comparison_n_row_kinds (const FpProject *project); /* (nullable) */
const char *fp_comparison_row_label   (guint row);
/* The cell of one alternative; its text is the caller's. */
void        fp_comparison_row_fill    (guint row, const FpFindings *findings, FpComparisonCell *cell);

G_END_DECLS
