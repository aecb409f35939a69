/* SPDX-License-Identifier: GPL-3.0-or-later */
/* thin.h - lines that would run together are left out
 *
 * Between parallel lines ISO 128, as reported, wants never less than 0.7 mm of
 * paper.  Edges within a thing that lie nearer to another line of it are not drawn, and of
 * steps not all.  A block of pews whose rows come too near becomes its
 * outline, with a narrow line for every row, then for every second, every
 * fourth and so on.  Scales are taken by fourths of an octave, so that little
 * comes and goes while one zooms.
 */
#pragma once

#include "pew-block.h"

#include "footpace/projection.h"

G_BEGIN_DECLS

/* The next scale of a ladder of fourths of an octave that is as small or smaller: 1:53.8 for 1:50. */
double fp_thin_scale (double scale);

/* The lines to draw at 1:@scale, in the order of the projection; (element-type FpProjectedLine). */
GArray *fp_thinned_lines (FpProjection *projection, double scale);

/* Whether it is a block of pews of which no more than outline and rows are drawn. */
gboolean fp_is_crowded (const FpPlaced *pews, double scale);

G_END_DECLS
