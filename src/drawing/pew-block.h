/* SPDX-License-Identifier: GPL-3.0-or-later */
/* pew-block.h - the rows of a block of pews, seen from above; world mm */
#pragma once

#include "footpace/scene.h"

G_BEGIN_DECLS

typedef struct
{
  const FpPlaced *placed;
  double          rows, spacing, depth;
  double          radius; /* of the front of the first row about the point that all face; 0: rows are straight */
  double          length; /* of a row: all are of one length */
} FpPewBlock;

FpPewBlock fp_pew_block        (const FpPlaced *pews);

/* How far a point of the plan lies behind the front of the first row. */
double     fp_pew_block_behind (const FpPewBlock *self, FpPoint at);

/* From the front of the first row to the back of the last. */
double     fp_pew_block_depth  (const FpPewBlock *self);

/* Whether a point of the plan lies among the rows. */
gboolean   fp_pews_contain     (const FpPlaced *pews, FpPoint at);

/* The field that the rows cover. */
#define FP_PEWS_CORNERS 34
void       fp_pews_field       (const FpPlaced *pews, FpPoint out[FP_PEWS_CORNERS]);

G_END_DECLS
