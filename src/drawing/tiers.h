/* SPDX-License-Identifier: GPL-3.0-or-later */
/* tiers.h - dimension lines set out beside a view
 *
 * Dimension lines lie in tiers on the four sides of a view, the shorter
 * nearer.  First tier at least 10 mm from the outline, tiers 7.5 mm apart
 * (sources.md B.8).  Oblique strokes, figures above the line, readable from
 * below and from the right (ISO 129-1, from memory).  No line crosses another
 * dimension's line or figure.
 */
#pragma once

#include "cover.h"
#include "wanted.h"

G_BEGIN_DECLS

#define FP_TIER_FIRST 10.0
#define FP_TIER_STEP  7.5

typedef struct
{
  FpBox  content;              /* outline of the view, paper mm              */
  double first[FP_N_SIDES];    /* of the first tier, from the outline        */
  guint  tiers[FP_N_SIDES];    /* most tiers; 0: nothing may stand there     */
  gboolean full_only[FP_N_SIDES]; /* extension lines must begin at what is measured */
} FpTierSides;

/* All of it in paper mm. */
typedef struct
{
  FpPoint line_a, line_b;      /* the dimension line                         */
  gboolean has_shelf;          /* it is carried on under a figure beside it  */
  FpPoint shelf_a, shelf_b;
  FpPoint extension[2][2];
  FpPoint stroke[2][2];
  FpBox   figure;              /* room that the figure takes                 */
  FpPoint figure_at;           /* middle of its base line                    */
  double  turn;
} FpDimensionLine;

/* Sets side, tier and figure of every measure that finds room, and takes that room.
 * Returns: how many find none */
guint  fp_tiers_place (GArray *wanted, const FpTierSides *sides, FpCover *room);

void   fp_dimension_line (const FpWanted *wanted, const FpTierSides *sides, FpDimensionLine *out);

/* @number: of the last dimension of the drawing; counted on. */
void   fp_tiers_draw  (FpDrawing *drawing, const GArray *wanted, const FpTierSides *sides, FpViewId view,
                       guint *number);

/* How far the dimensions of a side reach from the outline, mm; 0 when there are none. */
double fp_tiers_reach (const GArray *wanted, const FpTierSides *sides, FpSide side);

/* A box for capitals of @height mm and what hangs below their base line, from the base line's two ends. */
FpBox  fp_lettering_box (FpPoint at, double width, double height, double turn, FpAlign align);

G_END_DECLS
