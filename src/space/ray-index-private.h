/* SPDX-License-Identifier: GPL-3.0-or-later */
/* ray-index-private.h - the tree, and the pyramid that is held against it
 *
 * Private to ray-*.c.
 */
#pragma once

#include "lanes.h"
#include "ray-index.h"

G_BEGIN_DECLS

#define FP_RAY_STACK_MAX 256 /* eight for each level of the tree, which has eleven at most: 8^11 is more than a guint */
#define FP_RAY_SIDES_MAX 8   /* of a prism, that are worth asking first  */
#define FP_RAY_SLACK 1e-6    /* mm: what only grazes a box is kept       */

/* Boxes of up to FP_LANES children, rounded outwards to single precision: they only sift. */
typedef struct
{
  float  lo[3][FP_LANES], hi[3][FP_LANES]; /* x, y, z                     */
  gint32 child[FP_LANES];                  /* >= 0: a node; < 0: ~ of a solid            */
  guint  n;
} FpRayNode;

typedef struct { double cx, cy, cz, cos, sin, ix, iy, iz; } FpRaySphere; /* what makes an ellipsoid the unit sphere */

/* What of a solid decides whether it is asked at all. */
typedef struct
{
  guint    owner;
  gboolean body;   /* head or trunk of a person                  */
  gboolean sided;  /* whether it is a convex prism of few sides  */
} FpRayTrait;

struct _FpRayIndex
{
  const FpSolid *solid;  /* borrowed                                    */
  guint          n;
  FpBox3        *box;    /* of each solid                               */
  FpRaySphere   *sphere;
  FpRayTrait    *trait;
  GArray        *node;   /* (element-type FpRayNode); the first is the root */
  double         reach;  /* mm: no coordinate is farther from 0         */
};

static inline gboolean
fp_ray_skipped (const FpRayTrait *trait, FpRaySkip skip)
{
  return trait->owner == skip.owner || (trait->owner == skip.minister && trait->body);
}

FpRayCandidate fp_ray_candidate (const FpRayIndex *self, guint solid, FpVec3 eye);

/* --- a pyramid from an eye round points ----------------------------------- */

/* A point p is within when normal . (p - eye) + offset >= 0 for all planes; where the points lie round the eye there
 * are none, and the box has to do. */
typedef struct
{
  FpVec3 eye;
  FpBox3 box;
  guint  n_planes;
  FpVec3 normal[5];
  double offset[5];
  FpVec3 corner[4]; /* of its far end, where there are planes */
  FpRayPicture picture; /* likewise: all points lie ahead in it */
} FpPyramid;

/* Sets where each ray is in the picture, too, where there are planes. */
FpPyramid fp_pyramid_make (FpRays *rays);

/* The same in single precision, slack enough for what that rounds off. */
typedef struct
{
  float lo[3], hi[3];
  guint n_planes;
  float normal[5][3], offset[5]; /* within: normal . p + offset >= 0 */
  float ahead[3];                /* to tell near from far            */
} FpSieve;

/* @ahead: the way that one looks */
FpSieve fp_sieve_make (const FpPyramid *pyramid, FpVec3 ahead, double reach);

/* Children of a node that reach into the pyramid, the nearest first, into @hit (room for FP_LANES); returns how many. */
guint fp_sieve_node (const FpSieve *self, const FpRayNode *node, gint32 *hit);

G_END_DECLS
