/* SPDX-License-Identifier: GPL-3.0-or-later */
/* ray-index.c - a tree of boxes over solids
 *
 * The tree is binary and flat: an inner node's first child follows it.  Boxes
 * only sift; a solid itself is asked before anything is said to block.
 */
#include "ray-index-private.h"

#include <math.h>

#define LEAF_MAX 4 /* solids in one leaf */

/* --- making --------------------------------------------------------------- */

static double
axis_of (FpVec3 v, int axis)
{
  return axis == 0 ? v.x : axis == 1 ? v.y : v.z;
}

static double
middle (const FpRayIndex *self, guint solid, int axis)
{
  return axis_of (self->box[solid].lo, axis) + axis_of (self->box[solid].hi, axis);
}

/* Orders so that what is before the middle of the span lies lower along the axis than what is after it. */
static void
halve (const FpRayIndex *self, guint *order, guint n, int axis)
{
  guint lo = 0, hi = n - 1, half = n / 2;
  while (lo < hi)
    {
      double pivot = middle (self, order[(lo + hi) / 2], axis);
      guint i = lo, k = hi;
      for (;;)
        {
          while (middle (self, order[i], axis) < pivot)
            i++;
          while (middle (self, order[k], axis) > pivot)
            k--;
          if (i >= k)
            break;
          guint swap = order[i];
          order[i++] = order[k];
          order[k--] = swap;
        }
      if (half <= k)
        hi = k;
      else
        lo = k + 1;
    }
}

static int
longest_axis (const FpBox3 *box)
{
  FpVec3 size = fp_vec3_sub (box->hi, box->lo);
  if (size.x >= size.y && size.x >= size.z)
    return 0;
  return size.y >= size.z ? 1 : 2;
}

static void
add_node (FpRayIndex *self, guint first, guint n)
{
  guint at = self->node->len;
  FpRayNode node = { .box = FP_BOX3_EMPTY };
  FpBox3 middles = FP_BOX3_EMPTY;

  for (guint i = first; i < first + n; i++)
    {
      const FpBox3 *box = &self->box[self->order[i]];
      fp_box3_add_box (&node.box, box);
      fp_box3_add_point (&middles, fp_vec3_add (box->lo, box->hi));
    }
  node.count = n <= LEAF_MAX ? n : 0;
  node.second = first;
  g_array_append_val (self->node, node);
  if (node.count > 0)
    return;
  halve (self, self->order + first, n, longest_axis (&middles));
  add_node (self, first, n / 2);
  g_array_index (self->node, FpRayNode, at).second = self->node->len;
  add_node (self, first + n / 2, n - n / 2);
}

static FpRaySphere
sphere_of (const FpSolid *s)
{
  double turn = s->turn * G_PI / 180;
  return (FpRaySphere) { s->cx, s->cy, s->cz, cos (turn), sin (turn), 1 / s->rx, 1 / s->ry, 1 / s->rz };
}

static gboolean
is_sided (const FpSolid *s)
{
  return s->shape == FP_SOLID_PRISM && s->n_outline <= FP_RAY_SIDES_MAX && fp_outline_is_convex (s->outline, s->n_outline);
}

FpRayIndex *
fp_ray_index_new (const FpSolids *solids)
{
  FpRayIndex *self = g_new0 (FpRayIndex, 1);

  self->solid = fp_solids_peek (solids, &self->n);
  self->box = g_new (FpBox3, self->n);
  self->sphere = g_new0 (FpRaySphere, self->n);
  self->sided = g_new0 (guint8, self->n);
  self->order = g_new (guint, self->n);
  self->node = g_array_new (FALSE, FALSE, sizeof (FpRayNode));
  for (guint i = 0; i < self->n; i++)
    {
      self->box[i] = fp_solid_box (&self->solid[i]);
      self->order[i] = i;
      if (self->solid[i].shape == FP_SOLID_ELLIPSOID)
        self->sphere[i] = sphere_of (&self->solid[i]);
      self->sided[i] = is_sided (&self->solid[i]) ? 1 : 0;
    }
  if (self->n > 0)
    add_node (self, 0, self->n);
  return self;
}

void
fp_ray_index_free (FpRayIndex *self)
{
  if (self == NULL)
    return;
  g_free (self->box);
  g_free (self->sphere);
  g_free (self->sided);
  g_free (self->order);
  g_array_unref (self->node);
  g_free (self);
}

const FpSolid *
fp_ray_index_solid (const FpRayIndex *self, guint i)
{
  return &self->solid[i];
}

/* --- one ray and one box or solid ----------------------------------------- */

FpRay
fp_ray_make (FpVec3 from, FpVec3 to)
{
  FpVec3 d = fp_vec3_sub (to, from);
  return (FpRay) { from, d, { 1 / d.x, 1 / d.y, 1 / d.z } };
}

/* Narrows [a, b] to where the segment lies between two planes across an axis.
 * A segment along them has an infinite inverse: it lies between, or nowhere. */
static inline void
between (double o, double inverse, double lo, double hi, double *a, double *b)
{
  if (isinf (inverse))
    {
      if (o < lo - FP_RAY_SLACK || o > hi + FP_RAY_SLACK)
        *b = -1;
      return;
    }
  double t0 = (lo - FP_RAY_SLACK - o) * inverse, t1 = (hi + FP_RAY_SLACK - o) * inverse;
  /* Not fmin and fmax: they are calls, and no NaN comes here. */
  *a = MAX (*a, MIN (t0, t1));
  *b = MIN (*b, MAX (t0, t1));
}

static inline gboolean
meets_box (const FpRay *ray, const FpBox3 *box)
{
  double a = 0, b = 1;
  between (ray->from.x, ray->inverse.x, box->lo.x, box->hi.x, &a, &b);
  between (ray->from.y, ray->inverse.y, box->lo.y, box->hi.y, &a, &b);
  between (ray->from.z, ray->inverse.z, box->lo.z, box->hi.z, &a, &b);
  return a <= b;
}

static inline FpVec3
to_sphere (const FpRaySphere *s, FpVec3 v)
{
  return (FpVec3) { (s->cos * v.x + s->sin * v.y) * s->ix, (s->cos * v.y - s->sin * v.x) * s->iy, v.z * s->iz };
}

static FpVec3
eye_in_sphere (const FpRaySphere *s, FpVec3 eye)
{
  return to_sphere (s, fp_vec3_sub (eye, (FpVec3) { s->cx, s->cy, s->cz }));
}

/* Whether |o + t d| < 1 for some 0 < t < 1, where c is |o|^2 - 1. */
static inline gboolean
meets_sphere (FpVec3 o, double c, FpVec3 d)
{
  if (c < 0)
    return TRUE;
  double b = fp_vec3_dot (o, d);
  if (b >= 0)
    return FALSE;
  double root = b * b - fp_vec3_dot (d, d) * c;
  return root > 0 && c < sqrt (root) - b;
}

FpRayCandidate
fp_ray_candidate (const FpRayIndex *self, guint solid, FpVec3 eye)
{
  FpRayCandidate candidate = { .solid = solid };
  if (self->solid[solid].shape == FP_SOLID_ELLIPSOID)
    {
      candidate.o = eye_in_sphere (&self->sphere[solid], eye);
      candidate.c = fp_vec3_dot (candidate.o, candidate.o) - 1;
    }
  return candidate;
}

gboolean
fp_ray_index_candidate_blocks (const FpRayIndex *self, const FpRayCandidate *candidate, const FpRay *ray)
{
  const FpSolid *solid = &self->solid[candidate->solid];
  if (solid->shape == FP_SOLID_ELLIPSOID)
    return meets_sphere (candidate->o, candidate->c, to_sphere (&self->sphere[candidate->solid], ray->d));
  return meets_box (ray, &self->box[candidate->solid])
         && fp_solid_ray (solid, ray->from, fp_vec3_add (ray->from, ray->d), NULL);
}

/* --- one ray and all of it ------------------------------------------------ */

static int
blocker_in_leaf (const FpRayIndex *self, const FpRayNode *node, const FpRay *ray, FpRaySkip skip)
{
  for (guint i = node->second; i < node->second + node->count; i++)
    {
      guint solid = self->order[i];
      if (fp_ray_skipped (&self->solid[solid], skip))
        continue;
      FpRayCandidate candidate = fp_ray_candidate (self, solid, ray->from);
      if (fp_ray_index_candidate_blocks (self, &candidate, ray))
        return (int) solid;
    }
  return -1;
}

int
fp_ray_index_blocked (const FpRayIndex *self, FpVec3 from, FpVec3 to, guint skip_owner)
{
  const FpRay ray = fp_ray_make (from, to);
  const FpRaySkip skip = { skip_owner, FP_RAY_SKIP_NOBODY };
  guint stack[FP_RAY_DEPTH_MAX], depth = 0;

  if (self->n > 0)
    stack[depth++] = 0;
  while (depth > 0)
    {
      guint at = stack[--depth];
      const FpRayNode *node = &g_array_index (self->node, FpRayNode, at);
      if (!meets_box (&ray, &node->box))
        continue;
      if (node->count == 0)
        {
          stack[depth++] = node->second;
          stack[depth++] = at + 1;
          continue;
        }
      int blocker = blocker_in_leaf (self, node, &ray, skip);
      if (blocker >= 0)
        return blocker;
    }
  return -1;
}
