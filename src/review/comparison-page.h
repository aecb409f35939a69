/* SPDX-License-Identifier: GPL-3.0-or-later */
/* comparison-page.h - a part of a page in which the alternatives stand side by side; paper mm */
#pragma once

#include "comparison-arrange.h"
#include "comparison-private.h"

#include "footpace/sheet.h"

G_BEGIN_DECLS

typedef struct
{
  FpDrawing *drawing;
  FpBox      content;
  double     label;      /* width of the column of labels */
  guint      first, n;   /* columns of the comparison     */
} FpComparisonArea;

/* Width of one column, and the left edge of the @i-th. */
double fp_comparison_column_width (const FpComparisonArea *self);
double fp_comparison_column_x     (const FpComparisonArea *self, guint i);

/* The names of the alternatives at its upper edge, FP_COMPARISON_HEAD high. */
void   fp_comparison_draw_heads (const FpComparison *of, const FpComparisonArea *area);

/* A name at the left edge, on the base line @y. */
void   fp_comparison_draw_label (const FpComparisonArea *area, double y, const char *text);

/* --- comparison-table.c --- */

/* The table and what its marks mean, in its usual lettering. */
double fp_comparison_table_height (const FpComparison *of);
/* From @top down.  @fills: in larger lettering where all of it finds room; the labels of @area become as wide as it
 * needs them, so that names drawn afterwards stand over its columns. */
void   fp_comparison_draw_table   (const FpComparison *of, FpComparisonArea *area, double top, gboolean fills);

G_END_DECLS
