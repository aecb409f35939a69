/* SPDX-License-Identifier: GPL-3.0-or-later */
/* dimension-line.h - what one dimension puts on the paper, wherever it was placed
 *
 * Oblique strokes, figures above the line, readable from below and from the
 * right (ISO 129-1, from memory).
 */
#pragma once

#include "cover.h"
#include "tiers.h"

G_BEGIN_DECLS

/* A figure that is lettered obliquely covers a row of small boxes. */
#define FP_FIGURE_PARTS 12

/* All of it in paper mm. */
typedef struct
{
  FpPoint  line_a, line_b;     /* the dimension line                         */
  gboolean has_shelf;          /* it is carried on under a figure beside it  */
  FpPoint  shelf_a, shelf_b;
  gboolean has_extension[2];   /* one that touches what is measured has none */
  FpPoint  extension[2][2];    /* from what is measured outwards             */
  FpPoint  stroke[2][2];
  FpBox    figure[FP_FIGURE_PARTS]; /* room that the figure takes            */
  guint    n_figure;
  FpPoint  figure_at;          /* middle of its base line                    */
  double   turn;
} FpDimensionLine;

/* The room within which a figure stands, from the end of a short dimension line to its far end, mm. */
#define FP_FIGURE_BESIDE 1.8

/* @sides: for those that are placed beside the view */
void     fp_dimension_line (const FpWanted *wanted, const FpTierSides *sides, FpDimensionLine *out);

/* Whether the figure fits between the strokes. */
gboolean fp_figure_fits_within (const FpWanted *wanted);

/* Whether it meets no other dimension, level or text. @owner: see cover.h */
gboolean fp_dimension_line_is_free (const FpDimensionLine *self, const FpCover *room, guint owner);
void     fp_dimension_line_take    (const FpDimensionLine *self, FpCover *room, guint owner);
void     fp_dimension_line_add_box (const FpDimensionLine *self, FpBox *box);

/* Draws those that are placed. @seen: paper mm, empty: everything is; @number: of the last dimension of the drawing;
 * counted on. */
void     fp_dimensions_draw (FpDrawing *drawing, const GArray *wanted, const FpTierSides *sides, const FpBox *seen,
                             FpViewId view, guint *number);

/* A box for capitals of @height mm and what hangs below their base line, from the base line's two ends. */
FpBox    fp_lettering_box (FpPoint at, double width, double height, double turn, FpAlign align);

/* The same as a row of boxes that together cover little more than an oblique text; returns how many. */
guint    fp_lettering_boxes (FpPoint at, double width, double height, double turn, FpBox out[FP_FIGURE_PARTS]);

G_END_DECLS
