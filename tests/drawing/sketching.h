/* SPDX-License-Identifier: GPL-3.0-or-later */
/* sketching.h - sketches of solids, without a church */
#pragma once

#include "projection-private.h"

G_BEGIN_DECLS

/* Of each solid the owner is its own. @cut_face: where the plane @near cuts them they are filled. */
FpSketch *sketching_new (const FpSolids *solids, FpViewId view, double near, gboolean cut_face);

/* Seen from the other side, nothing cut away. */
FpSketch *sketching_new_turned (const FpSolids *solids, FpViewId view);

/* What is seen: (element-type FpProjectedLine), the caller's. */
GArray *sketching_lines (FpSketch *sketch);

/* Gives the solid that was added last to a thing. */
void sketching_own_last (FpSolids *solids, guint owner);

void sketching_add_box (FpSolids *solids, guint owner, double x0, double y0, double z0, double x1, double y1, double z1);

G_END_DECLS
