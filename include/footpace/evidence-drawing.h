/* SPDX-License-Identifier: GPL-3.0-or-later */
/* evidence-drawing.h - what was measured, drawn over a view: lengths with their figures, lines, outlines, what was counted */
#pragma once

#include "footpace/evidence.h"
#include "footpace/sight-drawing.h"
#include "footpace/view.h"

G_BEGIN_DECLS

/**
 * fp_drawing_add_evidence:
 * @of: (nullable): what is drawn of the view: nothing is drawn of what lies behind its viewer; NULL: nothing does
 * @layout: how the view lies in the drawing; of what its clip leaves out nothing is drawn
 * @under: @n drawings that lie under it, and what is drawn in this one so far if it is among them
 * @within: paper mm: figures stay in it
 *
 * A length that the view shows truly has a dimension line with oblique strokes and its figure (ISO 129-1, from memory): between
 * its ends, or beside them with extension lines where it would run along something else; the figure stands where it covers
 * least, on a patch of paper.  One that the view shortens is a line without a figure.  Things have a line about them, and what
 * was counted a ring each; in elevation and section only where they are few.
 */
void  fp_drawing_add_evidence (FpDrawing *self, const FpEvidence *evidence, FpViewId view, const FpProjection *of,
                               const FpViewLayout *layout, const FpLaid *under, guint n, const FpBox *within);

/**
 * fp_evidence_draw:
 * @corner: (out): where the lower left corner of the result lies, paper mm
 *
 * The same in a drawing of its own that is no larger than what is drawn.
 *
 * Returns: (transfer full) (nullable): NULL where nothing is
 */
FpDrawing *fp_evidence_draw (const FpEvidence *evidence, FpViewId view, const FpProjection *of, const FpViewLayout *layout,
                             const FpLaid *under, guint n, const FpBox *within, FpPoint *corner);

/* Whether a piece lies before the viewer, so that it is drawn there; of lines, some of it. @pt: fp_evidence_points() */
gboolean   fp_evidence_is_before (const FpEvidencePiece *piece, const FpVec3 *pt, const FpProjection *of);
/* A piece that is a floor, by its size both ways: in elevation and section it is not drawn. */
gboolean   fp_evidence_is_floor  (const FpEvidencePiece *piece, const FpVec3 *pt);

G_END_DECLS
