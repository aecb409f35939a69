/* SPDX-License-Identifier: GPL-3.0-or-later */
/* projection-solids.h - how each shape of solid enters a sketch */
#pragma once

#include "projection-private.h"

G_BEGIN_DECLS

/* --- projection-faces.c: faces and edges, cut off at the plane --- */
/* Where the line through both meets the plane. */
FpVec3 fp_sketch_at_plane  (FpVec3 a, FpVec3 b, double near);
/* Returns the index of the face, -1 when the viewer does not see its front. */
int    fp_sketch_add_face  (FpSketch *self, const FpVec3 *pt, guint n, const FpFace *like);
/* @left, @right: indices of the faces that it borders; -1 */
void   fp_sketch_add_edge  (FpSketch *self, FpVec3 a, FpVec3 b, int left, int right, const FpFace *like);
/* A sharp edge is seen with either face; an edge between facets of a curved surface only where it turns away. */
void   fp_sketch_add_edge_between (FpSketch *self, FpVec3 a, FpVec3 b, int left, int right, gboolean smooth,
                                   const FpFace *like);

/* --- projection-caps.c: what the cutting plane opens --- */
/* A face in the cutting plane: filled with a border of its own (@cut), or like any other. */
void   fp_sketch_add_cap        (FpSketch *self, const FpPoint *pt, guint n, const FpFace *like, gboolean cut);
void   fp_sketch_add_prism_caps (FpSketch *self, const FpVec3 *low, const FpVec3 *high, guint n, const FpFace *like,
                                 gboolean cut);
void   fp_sketch_add_round_cap  (FpSketch *self, const FpSolid *s, const FpFace *like, gboolean cut);

/* --- projection-rings.c: prisms and frusta --- */
void   fp_sketch_add_prism   (FpSketch *self, const FpSolid *s, const FpSketchHow *how, FpFace *like);
void   fp_sketch_add_frustum (FpSketch *self, const FpSolid *s, const FpSketchHow *how, FpFace *like);
guint  fp_corners_of_circle  (FpViewId view, double radius);

/* --- projection-ellipsoids.c --- */
void   fp_sketch_add_ellipsoid (FpSketch *self, const FpSolid *s, const FpSketchHow *how, FpFace *like);

G_END_DECLS
