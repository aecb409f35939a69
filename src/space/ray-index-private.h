/* SPDX-License-Identifier: GPL-3.0-or-later */
/* ray-index-private.h - the tree, and the pyramid that is held against it
 *
 * Private to ray-*.c.
 */
#pragma once

#include "ray-index.h"

G_BEGIN_DECLS

#define FP_RAY_DEPTH_MAX 64 /* more than any number of solids halves to */
#define FP_RAY_SIDES_MAX 8  /* of a prism, that are worth asking first  */
#define FP_RAY_SLACK 1e-6   /* mm: what only grazes a box is kept       */

typedef struct
{
  FpBox3 box;
  guint  second; /* inner: the second child; leaf: the first of its solids in `order` */
  guint  count;  /* 0: inner                                                          */
} FpRayNode;

typedef struct { double cx, cy, cz, cos, sin, ix, iy, iz; } FpRaySphere; /* what makes an ellipsoid the unit sphere */

struct _FpRayIndex
{
  const FpSolid *solid;  /* borrowed                                    */
  guint          n;
  FpBox3        *box;    /* of each solid                               */
  FpRaySphere   *sphere;
  guint8        *sided;  /* whether it is a convex prism of few sides   */
  guint         *order;  /* solids as the leaves hold them              */
  GArray        *node;   /* (element-type FpRayNode)                    */
};

static inline gboolean
fp_ray_skipped (const FpSolid *solid, FpRaySkip skip)
{
  return solid->owner == skip.owner
         || (solid->owner == skip.minister && (solid->part == FP_PART_HEAD || solid->part == FP_PART_TRUNK));
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
} FpPyramid;

FpPyramid fp_pyramid_make (FpVec3 eye, const FpVec3 *to, guint n);

static inline gboolean
boxes_meet (const FpBox3 *a, const FpBox3 *b)
{
  return a->lo.x <= b->hi.x + FP_RAY_SLACK && b->lo.x <= a->hi.x + FP_RAY_SLACK && a->lo.y <= b->hi.y + FP_RAY_SLACK
         && b->lo.y <= a->hi.y + FP_RAY_SLACK && a->lo.z <= b->hi.z + FP_RAY_SLACK && b->lo.z <= a->hi.z + FP_RAY_SLACK;
}

static inline gboolean
fp_pyramid_reaches (const FpPyramid *self, const FpBox3 *box)
{
  if (!boxes_meet (&self->box, box))
    return FALSE;
  for (guint i = 0; i < self->n_planes; i++)
    {
      const FpVec3 n = self->normal[i];
      const FpVec3 farthest = { n.x > 0 ? box->hi.x : box->lo.x, n.y > 0 ? box->hi.y : box->lo.y,
                                n.z > 0 ? box->hi.z : box->lo.z };
      if (fp_vec3_dot (n, fp_vec3_sub (farthest, self->eye)) + self->offset[i] < 0)
        return FALSE;
    }
  return TRUE;
}

G_END_DECLS
