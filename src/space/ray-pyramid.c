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

/* The sides of the least upright rectangle, seen from the eye, that frames the rays. */
static void
add_sides (FpPyramid *self, const FpRayPicture *picture, const FpRayFrame *frame, double far)
{
  const FpVec3 f = picture->ahead, r = picture->right, u = picture->up;

  self->picture = *picture;
  add_plane (self, fp_vec3_sub (r, fp_vec3_scale (f, frame->u0)), 0);
  add_plane (self, fp_vec3_sub (fp_vec3_scale (f, frame->u1), r), 0);
  add_plane (self, fp_vec3_sub (u, fp_vec3_scale (f, frame->v0)), 0);
  add_plane (self, fp_vec3_sub (fp_vec3_scale (f, frame->v1), u), 0);
  add_plane (self, fp_vec3_scale (f, -1), far);
  for (guint i = 0; i < 4; i++)
    {
      const FpVec3 aside = fp_vec3_add (fp_vec3_scale (r, i % 2 ? frame->u1 : frame->u0),
                                        fp_vec3_scale (u, i / 2 ? frame->v1 : frame->v0));
      self->corner[i] = fp_vec3_add (self->eye, fp_vec3_scale (fp_vec3_add (f, aside), far));
    }
}

FpPyramid
fp_pyramid_make (FpRays *rays)
{
  FpPyramid self = { .eye = rays->eye, .box = fp_rays_box (rays) };
  const FpRayPicture picture = fp_rays_picture (rays);
  FpRayFrame frame;
  double far;

  /* A target around the looker fits no pyramid: the box has to do. */
  if (fp_rays_frame (rays, &picture, &frame, &far))
    add_sides (&self, &picture, &frame, far);
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
  const float (*const side[2])[FP_LANES] = { node->lo, node->hi };
  FpSlim lo[3], hi[3], x, y, z;
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
      fp_lanes_load (x, side[n[0] > 0][0]);
      fp_lanes_load (y, side[n[1] > 0][1]);
      fp_lanes_load (z, side[n[2] > 0][2]);
      truth &= x * n[0] + y * n[1] + z * n[2] + self->offset[i] >= 0;
    }
  fp_lanes_store (reached, truth);
  x = (lo[0] + hi[0]) * self->ahead[0] + (lo[1] + hi[1]) * self->ahead[1] + (lo[2] + hi[2]) * self->ahead[2];
  fp_lanes_store (ahead, x);
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

static FpSieve
sieve_for (const FpRayIndex *self, const FpRays *rays)
{
  FpRays own = *rays;
  const FpPyramid pyramid = fp_pyramid_make (&own);

  return fp_sieve_make (&pyramid, fp_rays_way (rays, 0), self->reach);
}

void
fp_ray_index_gather (const FpRayIndex *self, const FpRays *rays, FpRaySkip skip, GArray *candidates)
{
  const FpSieve sieve = sieve_for (self, rays);
  gint32 stack[FP_RAY_STACK_MAX], hit[FP_LANES];
  guint depth = 0;

  g_array_set_size (candidates, 0);
  if (self->node->len > 0)
    stack[depth++] = 0;
  while (depth > 0)
    {
      const gint32 at = stack[--depth];
      if (at >= 0)
        for (guint k = fp_sieve_node (&sieve, &g_array_index (self->node, FpRayNode, at), hit); k > 0; k--)
          stack[depth++] = hit[k - 1];
      else if (!fp_ray_skipped (&self->trait[~at], skip))
        {
          const FpRayCandidate candidate = fp_ray_candidate (self, (guint) ~at, rays->eye);
          g_array_append_val (candidates, candidate);
        }
    }
}

gboolean
fp_ray_index_reached (const FpRayIndex *self, const FpRays *rays)
{
  const FpSieve sieve = sieve_for (self, rays);
  gint32 stack[FP_RAY_STACK_MAX], hit[FP_LANES];
  guint depth = 0;

  if (self->node->len > 0)
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
