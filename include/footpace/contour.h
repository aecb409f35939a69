/* SPDX-License-Identifier: GPL-3.0-or-later */
/* contour.h - the outlines of where something holds on the plan
 *
 * It is asked at the nodes of a square grid; where two neighbours differ, the
 * border between them is searched for to a fraction of a millimetre, and runs
 * straight from there to the next.  A corner that this cuts off is put back
 * where both sides go on straight to it.  What is narrower than the grid may
 * be missed.
 */
#pragma once

#include "footpace/geom.h"

G_BEGIN_DECLS

typedef struct
{
  gboolean (*holds)    (FpPoint at, gpointer data); /* any thread, several at once; the same answer each time      */
  gboolean (*given_up) (gpointer data);             /* (nullable): nobody wants the answer any more; likewise      */
  gpointer  data;
} FpField;

/**
 * fp_contours:
 * @box: nothing holds outside of it; mm
 * @step: of the grid, mm; made wider where the box is so large that there would be more than half a million nodes
 * @least: mm2: smaller areas and holes are left out
 *
 * Returns: (transfer full) (nullable) (element-type FpRing): of each area its outer ring, counter-clockwise, then those of
 *   its holes; %NULL when it was given up
 */
GArray *fp_contours (const FpField *field, const FpBox *box, double step, double least);

/* Of rings as above: of the areas less their holes, mm2. */
double  fp_rings_area (const GArray *rings);
/* Whether the point lies in one of the areas, and in none of its holes. */
gboolean fp_rings_contain (const GArray *rings, FpPoint at);

G_END_DECLS
