/* SPDX-License-Identifier: GPL-3.0-or-later */
/* outline-edit.h - the outline of an existing thing as corners, and as sides and turns
 *
 * In the thing's own coordinates.  A closed outline has a side from its last
 * corner to its first; an open run (a wall that ends) has not.
 */
#pragma once

#include "document.h"

#include "footpace/traverse.h"

G_BEGIN_DECLS

/* Whether the thing is given by its corners at all. */
gboolean fp_outline_has    (const FpItem *item);
gboolean fp_outline_closed (const FpItem *item);
guint    fp_outline_least  (gboolean closed); /* corners that it takes */

/* (element-type FpLeg): the sides; the turn at the end of an open run is 0.  @direction: (out): of the first side. */
GArray  *fp_outline_legs (const FpPoint *corner, guint n, gboolean closed, double *direction);

/**
 * fp_outline_walk:
 * @kept: (array length=n) (nullable): sides that stay as they were typed, where the others can take what is amiss
 * @start, @direction: of the first side
 * @closing: (out) (optional): of a closed outline that could be walked
 * @corners: (element-type FpPoint): set to the corners
 *
 * Small closing errors are shared out by the compass rule; an error says so
 * where there are too few sides.  Whether the closing error is small is for the
 * caller to see: fp_closure_is_small().
 */
gboolean fp_outline_walk (const FpLeg *leg, guint n, const gboolean *kept, gboolean closed, FpPoint start,
                          double direction, FpClosure *closing, GArray *corners, GError **error);

/* The next project with these corners; NULL with an error that can be shown. */
FpProject *fp_outline_make (FpDocument *document, const char *id, const FpPoint *corner, guint n, GError **error);

G_END_DECLS
