/* SPDX-License-Identifier: GPL-3.0-or-later */
/* ray-index.h - many rays from one eye
 *
 * Private to src/space.  Rays from one eye to one target pass through a thin
 * pyramid: what reaches into it is gathered once, then asked for each ray.
 */
#pragma once

#include "rays.h"

G_BEGIN_DECLS

/* Nobody, in place of an owner to be passed over. */
#define FP_RAY_SKIP_NOBODY G_MAXUINT

/* What does not hide: all of an owner, and head and trunk of the minister of a placed thing. */
typedef struct { guint owner, minister; } FpRaySkip;

typedef struct
{
  guint  solid;
  FpVec3 o;     /* of an ellipsoid: the eye, where that is the unit sphere */
  double c;     /* likewise: square of its distance from the sphere's centre, less 1 */
} FpRayCandidate;

typedef struct { FpVec3 from, d, inverse; } FpRay;

FpRay fp_ray_make (FpVec3 from, FpVec3 to);

FpRay fp_ray_along (FpVec3 from, FpVec3 way);

/* Empties @candidates (element-type FpRayCandidate), then fills it with what may block one of the rays; the order
 * depends on nothing but the index. */
void fp_ray_index_gather (const FpRayIndex *self, const FpRays *rays, FpRaySkip skip, GArray *candidates);

/* As fp_ray_index_new(), of solids in any order; the array is borrowed. */
FpRayIndex *fp_ray_index_of (const FpSolid *solid, guint n);

/* Whether anything there may block one of the rays. */
gboolean fp_ray_index_reached (const FpRayIndex *self, const FpRays *rays);

/* Whether one of them does. @ray starts at the eye for which it was gathered. */
gboolean fp_ray_index_candidate_blocks (const FpRayIndex *self, const FpRayCandidate *candidate, const FpRay *ray);

/* Of the rays of @asked, a bit each, those that nothing blocks but @skip; @rays are FP_SIGHT_RAYS, and
 * used up. */
guint64 fp_ray_index_seen (const FpRayIndex *self, FpRays *rays, FpRaySkip skip, guint64 asked);

const FpSolid *fp_ray_index_solid (const FpRayIndex *self, guint i);

G_END_DECLS
