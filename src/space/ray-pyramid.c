/* SPDX-License-Identifier: GPL-3.0-or-later */
/* ray-pyramid.c - what reaches into the thin pyramid of all rays from one eye to one target */
#include "ray-index-private.h"

#include <math.h>

static void
add_plane (FpPyramid *self, FpVec3 normal, double offset)
{
  self->normal[self->n_planes] = normal;
  self->offset[self->n_planes++] = offset + FP_RAY_SLACK;
}

static FpVec3
middle_direction (const FpVec3 *d, guint n)
{
  FpVec3 sum = { 0, 0, 0 };
  for (guint i = 0; i < n; i++)
    sum = fp_vec3_add (sum, d[i]);
  double length = fp_vec3_length (sum);
  return length > 0 ? fp_vec3_scale (sum, 1 / length) : (FpVec3) { 0, 1, 0 };
}

/* The sides of the least upright rectangle, seen from the eye, that frames the points. */
static void
add_sides (FpPyramid *self, const FpVec3 *d, guint n, FpVec3 f)
{
  double level = hypot (f.x, f.y);
  FpVec3 r = level > 1e-3 ? (FpVec3) { f.y / level, -f.x / level, 0 } : (FpVec3) { 1, 0, 0 };
  FpVec3 u = fp_vec3_cross (r, f);
  double u0 = G_MAXDOUBLE, u1 = -G_MAXDOUBLE, v0 = G_MAXDOUBLE, v1 = -G_MAXDOUBLE, far = 0;

  for (guint i = 0; i < n; i++)
    {
      double depth = fp_vec3_dot (d[i], f);
      /* A target around the looker fits no pyramid: the box has to do. */
      if (depth < 1)
        return;
      double x = fp_vec3_dot (d[i], r) / depth, y = fp_vec3_dot (d[i], u) / depth;
      u0 = MIN (u0, x);
      u1 = MAX (u1, x);
      v0 = MIN (v0, y);
      v1 = MAX (v1, y);
      far = MAX (far, depth);
    }
  self->ahead = f;
  self->right = r;
  self->up = u;
  add_plane (self, fp_vec3_sub (r, fp_vec3_scale (f, u0)), 0);
  add_plane (self, fp_vec3_sub (fp_vec3_scale (f, u1), r), 0);
  add_plane (self, fp_vec3_sub (u, fp_vec3_scale (f, v0)), 0);
  add_plane (self, fp_vec3_sub (fp_vec3_scale (f, v1), u), 0);
  add_plane (self, fp_vec3_scale (f, -1), far);
  for (guint i = 0; i < 4; i++)
    {
      const FpVec3 aside = fp_vec3_add (fp_vec3_scale (r, i % 2 ? u1 : u0), fp_vec3_scale (u, i / 2 ? v1 : v0));
      self->corner[i] = fp_vec3_add (self->eye, fp_vec3_scale (fp_vec3_add (f, aside), far));
    }
}

FpPyramid
fp_pyramid_make (FpVec3 eye, const FpVec3 *d, guint n)
{
  FpPyramid self = { .eye = eye, .box = FP_BOX3_EMPTY };
  fp_box3_add_point (&self.box, eye);
  for (guint i = 0; i < n; i++)
    fp_box3_add_point (&self.box, fp_vec3_add (eye, d[i]));
  add_sides (&self, d, n, middle_direction (d, n));
  return self;
}

/* --- in single precision ----------------------------------------------------- */

/* Of all that a sum of three products of single precision and a fourth number can be off by, over its size: four
 * roundings of 2^-24 each, and as much again for what the numbers were rounded to before. */
#define SLIM_ERROR 1e-6

FpSieve
fp_sieve_make (const FpPyramid *pyramid, FpVec3 ahead, double reach)
{
  const FpVec3 eye = pyramid->eye;
  const double widest = MAX (reach, MAX (fabs (eye.x), MAX (fabs (eye.y), fabs (eye.z))));
  const double slack = widest * SLIM_ERROR + FP_RAY_SLACK;
  FpSieve self = {
    .lo = { (float) (pyramid->box.lo.x - slack), (float) (pyramid->box.lo.y - slack), (float) (pyramid->box.lo.z - slack) },
    .hi = { (float) (pyramid->box.hi.x + slack), (float) (pyramid->box.hi.y + slack), (float) (pyramid->box.hi.z + slack) },
    .n_planes = pyramid->n_planes,
    .ahead = { (float) ahead.x, (float) ahead.y, (float) ahead.z },
  };

  for (guint i = 0; i < self.n_planes; i++)
    {
      const FpVec3 n = pyramid->normal[i];
      const double size = fabs (n.x) + fabs (n.y) + fabs (n.z), offset = pyramid->offset[i] - fp_vec3_dot (n, eye);
      self.normal[i][0] = (float) n.x;
      self.normal[i][1] = (float) n.y;
      self.normal[i][2] = (float) n.z;
      self.offset[i] = (float) (offset + (size * widest + fabs (offset)) * SLIM_ERROR);
    }
  return self;
}

/* The boxes of a node against the planes and the box, and how far ahead each lies. */
FP_LANES_WIDEST static void
sift (const FpSieve *self, const FpRayNode *node, gint32 *reached, float *ahead)
{
  FpSlim lo[3], hi[3], far;
  FpSlimTruth truth;

  for (guint axis = 0; axis < 3; axis++)
    {
      fp_lanes_load (lo[axis], node->lo[axis]);
      fp_lanes_load (hi[axis], node->hi[axis]);
    }
  truth = (lo[0] <= self->hi[0]) & (hi[0] >= self->lo[0]) & (lo[1] <= self->hi[1]) & (hi[1] >= self->lo[1])
          & (lo[2] <= self->hi[2]) & (hi[2] >= self->lo[2]);
  for (guint i = 0; i < self->n_planes; i++)
    {
      const float *n = self->normal[i];
      far = (n[0] > 0 ? hi[0] : lo[0]) * n[0] + (n[1] > 0 ? hi[1] : lo[1]) * n[1] + (n[2] > 0 ? hi[2] : lo[2]) * n[2];
      truth &= far + self->offset[i] >= 0;
    }
  fp_lanes_store (reached, truth);
  far = (lo[0] + hi[0]) * self->ahead[0] + (lo[1] + hi[1]) * self->ahead[1] + (lo[2] + hi[2]) * self->ahead[2];
  fp_lanes_store (ahead, far);
}

guint
fp_sieve_node (const FpSieve *self, const FpRayNode *node, gint32 *hit)
{
  gint32 reached[FP_LANES];
  float ahead[FP_LANES], at[FP_LANES];
  guint n = 0;

  sift (self, node, reached, ahead);
  for (guint i = 0; i < node->n; i++)
    if (reached[i])
      {
        guint k = n++;
        for (; k > 0 && at[k - 1] > ahead[i]; k--)
          {
            at[k] = at[k - 1];
            hit[k] = hit[k - 1];
          }
        at[k] = ahead[i];
        hit[k] = node->child[i];
      }
  return n;
}

/* --- all that reaches into it --------------------------------------------------- */

void
fp_ray_index_gather (const FpRayIndex *self, FpVec3 eye, const FpVec3 *to, guint n, FpRaySkip skip,
                     GArray *candidates)
{
  g_autofree FpVec3 *d = g_new (FpVec3, n);
  gint32 stack[FP_RAY_STACK_MAX];
  guint depth = 0;

  for (guint i = 0; i < n; i++)
    d[i] = fp_vec3_sub (to[i], eye);
  const FpPyramid pyramid = fp_pyramid_make (eye, d, n);
  const FpSieve sieve = fp_sieve_make (&pyramid, d[0], self->reach);
  g_array_set_size (candidates, 0);
  if (self->n > 0)
    stack[depth++] = 0;
  while (depth > 0)
    {
      gint32 hit[FP_LANES];
      const gint32 at = stack[--depth];
      if (at >= 0)
        for (guint k = fp_sieve_node (&sieve, &g_array_index (self->node, FpRayNode, at), hit); k > 0; k--)
          stack[depth++] = hit[k - 1];
      else if (!fp_ray_skipped (&self->trait[~at], skip))
        {
          const FpRayCandidate candidate = fp_ray_candidate (self, (guint) ~at, eye);
          g_array_append_val (candidates, candidate);
        }
    }
}

gboolean
fp_ray_index_reached (const FpRayIndex *self, FpVec3 eye, const FpVec3 to[FP_SIGHT_RAYS])
{
  FpVec3 d[FP_SIGHT_RAYS];
  gint32 stack[FP_RAY_STACK_MAX], hit[FP_LANES];
  guint depth = 0;

  for (guint i = 0; i < FP_SIGHT_RAYS; i++)
    d[i] = fp_vec3_sub (to[i], eye);
  const FpPyramid pyramid = fp_pyramid_make (eye, d, FP_SIGHT_RAYS);
  const FpSieve sieve = fp_sieve_make (&pyramid, d[0], self->reach);
  if (self->n > 0)
    stack[depth++] = 0;
  while (depth > 0)
    {
      const FpRayNode *node = &g_array_index (self->node, FpRayNode, stack[--depth]);
      for (guint k = fp_sieve_node (&sieve, node, hit); k > 0; k--)
        {
          if (hit[k - 1] < 0)
            return TRUE;
          stack[depth++] = hit[k - 1];
        }
    }
  return FALSE;
}
