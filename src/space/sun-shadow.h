/* SPDX-License-Identifier: GPL-3.0-or-later */
/* sun-shadow.h - what a solid throws on a plane, by parallel rays */
#pragma once

#include "footpace/scene.h"

G_BEGIN_DECLS

/* Level at (x, y) is z + gx * x + gy * y; @towards: the sun, above it. */
typedef struct { double z, gx, gy; FpVec3 towards; } FpSunPlane;

double  fp_sun_plane_at (const FpSunPlane *self, double x, double y);
/* Where the ray through a point meets the plane. */
FpPoint fp_sun_plane_under (const FpSunPlane *self, FpVec3 p);

/* Appends (FpRing) outlines that together are the shadow of what of the solid stands above the plane, where they come
 * near @within.  What is round has so many sides that it is told to a hundredth of its radius. */
void    fp_sun_plane_shadow (const FpSunPlane *self, const FpSolid *solid, const FpBox *within, GArray *out);

G_END_DECLS
