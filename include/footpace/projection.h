/* SPDX-License-Identifier: GPL-3.0-or-later */
/* projection.h - the church seen from one side, hidden lines taken away
 *
 * View coordinates (h to the right, v up, world mm): plan x, y; elevation x, z;
 * section -y, z (seen from the Gospel side, east on the left).  Seen from the other
 * side h is the opposite.  A section across the church is an elevation that is cut where it is told.
 */
#pragma once

#include "footpace/pens.h"
#include "footpace/scene.h"

#include <gio/gio.h>

G_BEGIN_DECLS

typedef struct _FpProjection FpProjection;

/**
 * fp_projection_new:
 *
 * The plan is cut 1.1 m above the floor on which each FP_KIND_CUT thing
 * stands, and shows what stands lower; what lies above the cut is dashed.  The elevation looks east
 * from just before the rail (or the lowest altar step); the section is cut on the axis, x = 0.
 */
FpProjection *fp_projection_new   (const FpScene *scene, FpViewId view);

/**
 * fp_projection_new_cut:
 * @cut: (nullable): where it is cut and from where it is seen; of a plan nothing counts
 * @hidden: what is left out; it hides nothing
 *
 * Dimensions, levels and names of a drawing made of it follow @hidden too.
 */
FpProjection *fp_projection_new_cut (const FpScene *scene, FpViewId view, const FpCut *cut, FpHidden hidden);

/**
 * fp_projection_again:
 * @last: (nullable): one of the same view, as it was before an edit; not kept
 * @cancel: (nullable): once it is cancelled this ends soon, and what it gives is of no use
 *
 * Gives exactly what fp_projection_new_cut() does, sooner: what looks as it did in @last is taken from there.
 */
FpProjection *fp_projection_again (const FpProjection *last, const FpScene *scene, FpViewId view, const FpCut *cut,
                                   FpHidden hidden, GCancellable *cancel);
FpCut         fp_projection_cut    (const FpProjection *self);
FpHidden      fp_projection_hidden (const FpProjection *self);

FpProjection *fp_projection_ref   (FpProjection *self);
void          fp_projection_unref (FpProjection *self);
const FpScene *fp_projection_scene (const FpProjection *self);
FpViewId      fp_projection_view  (const FpProjection *self);
FpBox         fp_projection_box   (const FpProjection *self); /* world mm    */

typedef struct { FpPoint a, b; guint owner; FpPen pen; } FpProjectedLine;
typedef struct { FpPoint *outline; guint n; guint owner; } FpProjectedCut;
/* By owner, then pen; each once, however many solids share it. */
const FpProjectedLine *fp_projection_lines (const FpProjection *self, guint *n);
/* Cut faces, to be filled without a border: their borders are among the lines, with FP_PEN_CUT.
 * A face with a hole is one outline with a slit, so fill it by the even-odd rule. */
const FpProjectedCut  *fp_projection_cuts  (const FpProjection *self, guint *n);

/* The placed thing nearest the viewer at a point of the view (world mm), -1 where there is none.
 * What is cut away does not answer; ghosts answer where otherwise only floor or wall does. */
int                    fp_projection_pick  (const FpProjection *self, FpPoint at);

FpPoint fp_view_point (FpViewId view, FpVec3 p); /* not turned */

/* --- where it is cut when nobody says ----------------------------------- */

/* Where a section across the church is cut when nobody says: through the middle of the altar. y, mm. */
double        fp_cut_across (const FpScene *scene);

/**
 * fp_elevation_plane:
 *
 * Just before the rail, or the lowest step of the altar, or what stands a
 * little in front of them, or in the sanctuary however far in front; before
 * the floor steps at its foot.
 *
 * Returns: y of the plane, mm; -G_MAXDOUBLE where there is neither rail nor altar: the elevation shows everything
 */
double fp_elevation_plane (const FpScene *scene);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FpProjection, fp_projection_unref)

G_END_DECLS
