/* SPDX-License-Identifier: GPL-3.0-or-later */
/* swing.h - what lies in the quarter of a circle in which a leaf turns; private to src/rules */
#pragma once

#include "footpace/geom.h"

G_BEGIN_DECLS

/* The leaf turns about (0, 0) from (leaf, 0) to (0, leaf), in coordinates of its own. */
typedef struct
{
  double  leaf;
  double  nearest; /* of what lies in the quarter of a circle; the leaf where nothing does */
  FpPoint at;      /* of it                                                              */
} FpSwing;

#define FP_SWING(width) { .leaf = width, .nearest = width, .at = { 0, width } }

/* Notes what of the side from @a to @b lies at y of @from at least; TRUE: it is nearer than what was noted before. */
gboolean fp_swing_note (FpSwing *self, FpPoint a, FpPoint b, double from);

/* From what it strikes to where its edge would be. */
void     fp_swing_edge (const FpSwing *self, FpPoint edge[2]);

#define FP_SWING_ARC 12 /* sides of the quarter of a circle as it is drawn */
/* The quarter of a circle, from shut to open, and then the hinge. */
void     fp_swing_arc  (double leaf, FpPoint arc[FP_SWING_ARC + 2]);

G_END_DECLS
