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
middle_direction (FpVec3 eye, const FpVec3 *to, guint n)
{
  FpVec3 sum = { 0, 0, 0 };
  for (guint i = 0; i < n; i++)
    sum = fp_vec3_add (sum, fp_vec3_sub (to[i], eye));
  double length = fp_vec3_length (sum);
  return length > 0 ? fp_vec3_scale (sum, 1 / length) : (FpVec3) { 0, 1, 0 };
}

/* The sides of the least upright rectangle, seen from the eye, that frames the points. */
static void
add_sides (FpPyramid *self, const FpVec3 *to, guint n, FpVec3 f)
{
  double level = hypot (f.x, f.y);
  FpVec3 r = level > 1e-3 ? (FpVec3) { f.y / level, -f.x / level, 0 } : (FpVec3) { 1, 0, 0 };
  FpVec3 u = fp_vec3_cross (r, f);
  double u0 = G_MAXDOUBLE, u1 = -G_MAXDOUBLE, v0 = G_MAXDOUBLE, v1 = -G_MAXDOUBLE, far = 0;

  for (guint i = 0; i < n; i++)
    {
      FpVec3 d = fp_vec3_sub (to[i], self->eye);
      double depth = fp_vec3_dot (d, f);
      /* A target around the looker fits no pyramid: the box has to do. */
      if (depth < 1)
        return;
      double x = fp_vec3_dot (d, r) / depth, y = fp_vec3_dot (d, u) / depth;
      u0 = fmin (u0, x);
      u1 = fmax (u1, x);
      v0 = fmin (v0, y);
      v1 = fmax (v1, y);
      far = fmax (far, depth);
    }
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
fp_pyramid_make (FpVec3 eye, const FpVec3 *to, guint n)
{
  FpPyramid self = { .eye = eye, .box = FP_BOX3_EMPTY };
  fp_box3_add_point (&self.box, eye);
  for (guint i = 0; i < n; i++)
    fp_box3_add_point (&self.box, to[i]);
  add_sides (&self, to, n, middle_direction (eye, to, n));
  return self;
}

static void
gather_leaf (const FpRayIndex *self, const FpRayNode *node, const FpPyramid *pyramid, FpRaySkip skip, GArray *candidates)
{
  for (guint i = node->second; i < node->second + node->count; i++)
    {
      guint solid = self->order[i];
      if (fp_ray_skipped (&self->solid[solid], skip) || !fp_pyramid_reaches (pyramid, &self->box[solid]))
        continue;
      FpRayCandidate candidate = fp_ray_candidate (self, solid, pyramid->eye);
      g_array_append_val (candidates, candidate);
    }
}

void
fp_ray_index_gather (const FpRayIndex *self, FpVec3 eye, const FpVec3 *to, guint n, FpRaySkip skip,
                     GArray *candidates)
{
  const FpPyramid pyramid = fp_pyramid_make (eye, to, n);
  guint stack[FP_RAY_DEPTH_MAX], depth = 0;

  g_array_set_size (candidates, 0);
  if (self->n > 0)
    stack[depth++] = 0;
  while (depth > 0)
    {
      guint at = stack[--depth];
      const FpRayNode *node = &g_array_index (self->node, FpRayNode, at);
      if (!fp_pyramid_reaches (&pyramid, &node->box))
        continue;
      if (node->count > 0)
        {
          gather_leaf (self, node, &pyramid, skip, candidates);
          continue;
        }
      stack[depth++] = node->second;
      stack[depth++] = at + 1;
    }
}
