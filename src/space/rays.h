/* SPDX-License-Identifier: GPL-3.0-or-later */
/* rays.h - rays from one eye, kept by coordinates, so that eight are reckoned with at once
 *
 * Private to src/space.
 */
#pragma once

#include "footpace/sight.h"

G_BEGIN_DECLS

/* Points to look at. */
typedef struct { double x[FP_SIGHT_RAYS], y[FP_SIGHT_RAYS], z[FP_SIGHT_RAYS]; } FpRayPoints;

/* After the last ray there are copies of it, up to a multiple of FP_LANES. */
typedef struct
{
  FpVec3 eye;
  guint  n;                                                       /* 1 .. FP_SIGHT_RAYS */
  double x[FP_SIGHT_RAYS], y[FP_SIGHT_RAYS], z[FP_SIGHT_RAYS];     /* the way, from the eye to the end */
  double u[FP_SIGHT_RAYS], v[FP_SIGHT_RAYS];                       /* where in the picture, once that was asked */
} FpRays;

/* A picture as one sees it from the eye: right and up, by how far ahead; each of length 1, across each other. */
typedef struct { FpVec3 ahead, right, up; } FpRayPicture;

/* A part of it. */
typedef struct { double u0, u1, v0, v1; } FpRayFrame;

FpRayPoints fp_ray_points (const FpVec3 point[FP_SIGHT_RAYS]);

/* To all points, ending so far before each; what is nearer than that ends at the eye. */
void fp_rays_to_points (FpRays *self, FpVec3 eye, const FpRayPoints *point, double before);
void fp_rays_to        (FpRays *self, FpVec3 eye, const FpVec3 *end, guint n);
/* After their number was changed. */
void fp_rays_pad       (FpRays *self);

static inline FpVec3
fp_rays_way (const FpRays *self, guint i)
{
  return (FpVec3) { self->x[i], self->y[i], self->z[i] };
}

/* Of eye and ends. */
FpBox3       fp_rays_box     (const FpRays *self);
/* One that looks about the middle of them. */
FpRayPicture fp_rays_picture (const FpRays *self);

/**
 * fp_rays_frame:
 * @frame: (out): the least that frames all of them
 * @far: (out): how far ahead the farthest ends, mm
 *
 * Sets where each is in the picture, too.
 *
 * Returns: FALSE where one ends less than 1 mm ahead: the points lie about the eye
 */
gboolean     fp_rays_frame   (FpRays *self, const FpRayPicture *picture, FpRayFrame *frame, double *far);

G_END_DECLS
