/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "rays.h"

#include "lanes.h"

#include <math.h>

#define fp_wide_least(a, b) fp_wide_pick ((a) < (b), a, b)
#define fp_wide_most(a, b)  fp_wide_pick ((a) > (b), a, b)

static guint
groups_of (const FpRays *self)
{
  return (self->n + FP_LANES - 1) / FP_LANES;
}

/* --- making --------------------------------------------------------------------- */

FpRayPoints
fp_ray_points (const FpVec3 point[FP_SIGHT_RAYS])
{
  FpRayPoints self;

  for (guint i = 0; i < FP_SIGHT_RAYS; i++)
    {
      self.x[i] = point[i].x;
      self.y[i] = point[i].y;
      self.z[i] = point[i].z;
    }
  return self;
}

/* The end is what is reckoned, and from it the way, as for a ray that is asked alone: fp_ray_make(). */
FP_LANES_WIDEST void
fp_rays_to_points (FpRays *restrict self, FpVec3 eye, const FpRayPoints *restrict point, double before)
{
  self->eye = eye;
  self->n = FP_SIGHT_RAYS;
  for (guint i = 0; i < FP_SIGHT_RAYS; i++)
    {
      const double x = point->x[i] - eye.x, y = point->y[i] - eye.y, z = point->z[i] - eye.z;
      const double length = sqrt (x * x + y * y + z * z);
      const double share = length > before ? 1 - before / length : 0;
      self->x[i] = eye.x + x * share - eye.x;
      self->y[i] = eye.y + y * share - eye.y;
      self->z[i] = eye.z + z * share - eye.z;
    }
}

void
fp_rays_pad (FpRays *self)
{
  for (guint i = self->n; i < groups_of (self) * FP_LANES; i++)
    {
      self->x[i] = self->x[self->n - 1];
      self->y[i] = self->y[self->n - 1];
      self->z[i] = self->z[self->n - 1];
      self->u[i] = self->u[self->n - 1];
      self->v[i] = self->v[self->n - 1];
    }
}

void
fp_rays_to (FpRays *self, FpVec3 eye, const FpVec3 *end, guint n)
{
  self->eye = eye;
  self->n = n;
  for (guint i = 0; i < n; i++)
    {
      const FpVec3 way = fp_vec3_sub (end[i], eye);
      self->x[i] = way.x;
      self->y[i] = way.y;
      self->z[i] = way.z;
      self->u[i] = self->v[i] = 0;
    }
  fp_rays_pad (self);
}

/* --- round them ------------------------------------------------------------------ */

typedef struct { double least, most; } Span;

static Span
span_of (const double least[FP_LANES], const double most[FP_LANES])
{
  Span span = { least[0], most[0] };

  for (guint i = 1; i < FP_LANES; i++)
    {
      span.least = MIN (span.least, least[i]);
      span.most = MAX (span.most, most[i]);
    }
  return span;
}

/* Of eye and ends, along one axis. */
FP_LANES_WIDEST static void
find_ends (const double *way, guint groups, double eye, double least_out[FP_LANES], double most_out[FP_LANES])
{
  FpWide least = { 0 }, most, at;

  least += eye;
  most = least;
  for (guint i = 0; i < groups; i++)
    {
      fp_lanes_load (at, way + i * FP_LANES);
      at += eye;
      least = fp_wide_least (at, least);
      most = fp_wide_most (at, most);
    }
  fp_lanes_store (least_out, least);
  fp_lanes_store (most_out, most);
}

static Span
ends_along (const FpRays *self, const double *way, double eye)
{
  double least[FP_LANES], most[FP_LANES];

  find_ends (way, groups_of (self), eye, least, most);
  return span_of (least, most);
}

FpBox3
fp_rays_box (const FpRays *self)
{
  const Span x = ends_along (self, self->x, self->eye.x), y = ends_along (self, self->y, self->eye.y),
             z = ends_along (self, self->z, self->eye.z);

  return (FpBox3) { { x.least, y.least, z.least }, { x.most, y.most, z.most } };
}

/* --- as seen from the eye --------------------------------------------------------- */

FpRayPicture
fp_rays_picture (const FpRays *self)
{
  FpVec3 sum = { 0, 0, 0 }, f, r;
  double length, level;

  for (guint i = 0; i < self->n; i++)
    sum = fp_vec3_add (sum, fp_rays_way (self, i));
  length = fp_vec3_length (sum);
  f = length > 0 ? fp_vec3_scale (sum, 1 / length) : (FpVec3) { 0, 1, 0 };
  level = hypot (f.x, f.y);
  r = level > 1e-3 ? (FpVec3) { f.y / level, -f.x / level, 0 } : (FpVec3) { 1, 0, 0 };
  return (FpRayPicture) { f, r, fp_vec3_cross (r, f) };
}

/* Into arrays of FP_LANES: least and most of u and v, the least and the farthest depth. */
FP_LANES_WIDEST static void
project (FpRays *self, const FpRayPicture *picture, guint groups, double out[6][FP_LANES])
{
  const FpVec3 f = picture->ahead, r = picture->right, s = picture->up;
  FpWide least[3] = { { 0 } }, most[3] = { { 0 } };

  for (guint axis = 0; axis < 3; axis++)
    {
      least[axis] += G_MAXDOUBLE;
      most[axis] -= G_MAXDOUBLE;
    }
  for (guint i = 0; i < groups * FP_LANES; i += FP_LANES)
    {
      FpWide x, y, z, at[3];
      fp_lanes_load (x, self->x + i);
      fp_lanes_load (y, self->y + i);
      fp_lanes_load (z, self->z + i);
      at[2] = f.x * x + f.y * y + f.z * z;
      at[0] = (r.x * x + r.y * y + r.z * z) / at[2];
      at[1] = (s.x * x + s.y * y + s.z * z) / at[2];
      fp_lanes_store (self->u + i, at[0]);
      fp_lanes_store (self->v + i, at[1]);
      for (guint axis = 0; axis < 3; axis++)
        {
          least[axis] = fp_wide_least (at[axis], least[axis]);
          most[axis] = fp_wide_most (at[axis], most[axis]);
        }
    }
  for (guint axis = 0; axis < 3; axis++)
    {
      fp_lanes_store (out[2 * axis], least[axis]);
      fp_lanes_store (out[2 * axis + 1], most[axis]);
    }
}

gboolean
fp_rays_frame (FpRays *self, const FpRayPicture *picture, FpRayFrame *frame, double *far)
{
  double out[6][FP_LANES];

  project (self, picture, groups_of (self), out);
  const Span u = span_of (out[0], out[1]), v = span_of (out[2], out[3]), depth = span_of (out[4], out[5]);
  *frame = (FpRayFrame) { u.least, u.most, v.least, v.most };
  *far = depth.most;
  return depth.least >= 1;
}
