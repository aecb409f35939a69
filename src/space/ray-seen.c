/* SPDX-License-Identifier: GPL-3.0-or-later */
/* ray-seen.c - how many of the points of a target are seen from an eye
 *
 * The same answer as asking every solid for every ray.  But the nearest are
 * asked first, a ray that was stopped is not asked again, and a prism is asked
 * once whether it lies apart from all of them.
 */
#include "ray-index-private.h"

#define ROOM ((FP_SIGHT_RAYS + FP_LANES - 1) / FP_LANES * FP_LANES)

typedef struct
{
  const FpRayIndex *index;
  FpRaySkip         skip;
  FpVec3            eye;
  FpPyramid         pyramid;  /* round the rays that were left when it was made */
  FpSieve           sieve;
  guint             framed;   /* how many those were                            */
  guint             n;        /* rays that nothing has stopped yet              */
  double            x[ROOM], y[ROOM], z[ROOM]; /* their ways: from the eye to the end */
  gint64            stopped[ROOM];
} Look;

static FpVec3
way_of (const Look *self, guint i)
{
  return (FpVec3) { self->x[i], self->y[i], self->z[i] };
}

static void
frame_rays (Look *self)
{
  FpVec3 way[FP_SIGHT_RAYS];

  for (guint i = 0; i < self->n; i++)
    way[i] = way_of (self, i);
  self->pyramid = fp_pyramid_make (self->eye, way, self->n);
  self->sieve = fp_sieve_make (&self->pyramid, way[0], self->index->reach);
  self->framed = self->n;
}

/* --- prisms --------------------------------------------------------------------- */

/* A prism of few sides as planes: within it eye + normal . (p - from) is positive for all of them. */
typedef struct
{
  guint  n;
  FpVec3 normal[FP_RAY_SIDES_MAX + 2];
  double eye[FP_RAY_SIDES_MAX + 2];
} Planes;

/* FALSE where the plane parts the prism from all of the pyramid.  One that has the whole pyramid on its inner side
 * stops nothing, and is left out. */
static gboolean
add_prism_plane (Planes *self, const FpPyramid *pyramid, FpVec3 normal, double eye)
{
  guint within = eye > 0;

  self->normal[self->n] = normal;
  self->eye[self->n] = eye;
  if (pyramid->n_planes == 0)
    {
      self->n++;
      return TRUE;
    }
  for (guint i = 0; i < 4; i++)
    within += eye + fp_vec3_dot (normal, fp_vec3_sub (pyramid->corner[i], pyramid->eye)) > 0;
  self->n += within < 5;
  return within > 0;
}

/* FALSE where the pyramid lies apart: a row of pews that stands askew, or on a falling floor, is far less than its
 * box. */
static gboolean
planes_of (Planes *self, const FpSolid *s, const FpPyramid *pyramid)
{
  const FpVec3 eye = pyramid->eye;

  self->n = 0;
  if (!add_prism_plane (self, pyramid, (FpVec3) { s->gx, s->gy, -1 }, fp_solid_top_at (s, eye.x, eye.y) - eye.z)
      || !add_prism_plane (self, pyramid, (FpVec3) { -s->bx, -s->by, 1 }, eye.z - fp_solid_foot_at (s, eye.x, eye.y)))
    return FALSE;
  for (guint i = 0, k = s->n_outline - 1; i < s->n_outline; k = i++)
    {
      const FpPoint a = s->outline[k], b = s->outline[i];
      if (!add_prism_plane (self, pyramid, (FpVec3) { a.y - b.y, b.x - a.x, 0 },
                            (b.x - a.x) * (eye.y - a.y) - (b.y - a.y) * (eye.x - a.x)))
        return FALSE;
    }
  return TRUE;
}

/* As fp_solid_ray(), at a fraction of the cost: where each ray enters and leaves. */
FP_LANES_WIDEST static void
stop_at_planes (const Planes *planes, Look *look)
{
  for (guint i = 0; i < look->n; i += FP_LANES)
    {
      FpWide x, y, z, enters = { 0 }, leaves = enters + 1;
      FpWideTruth stopped;

      fp_lanes_load (x, look->x + i);
      fp_lanes_load (y, look->y + i);
      fp_lanes_load (z, look->z + i);
      for (guint k = 0; k < planes->n; k++)
        {
          const double eye = planes->eye[k];
          const FpWide slope = planes->normal[k].x * x + planes->normal[k].y * y + planes->normal[k].z * z;
          const FpWide at = -eye / slope;
          enters = fp_wide_pick ((slope > 0) & (at > enters), at, enters);
          leaves = fp_wide_pick ((slope < 0) & (at < leaves), at, leaves);
          if (!(eye > 0))
            leaves = fp_wide_pick (slope == 0, enters, leaves);
        }
      stopped = enters < leaves;
      fp_lanes_store (look->stopped + i, stopped);
    }
}

/* --- heads and trunks ------------------------------------------------------------- */

/* In the space where it is the unit sphere: as meets_sphere() of ray-index.c has it, to the bit. */
FP_LANES_WIDEST static void
stop_at_sphere (const FpRaySphere *s, const FpRayCandidate *candidate, Look *look)
{
  const FpVec3 o = candidate->o;
  const double c = candidate->c;

  for (guint i = 0; i < look->n; i += FP_LANES)
    {
      FpWide x, y, z, b, root, end;
      FpWideTruth stopped;

      fp_lanes_load (x, look->x + i);
      fp_lanes_load (y, look->y + i);
      fp_lanes_load (z, look->z + i);
      const FpWide p = (s->cos * x + s->sin * y) * s->ix, q = (s->cos * y - s->sin * x) * s->iy, r = z * s->iz;
      b = o.x * p + o.y * q + o.z * r;
      root = b * b - (p * p + q * q + r * r) * c;
      end = b + c;
      stopped = (b < 0) & (root > 0) & ((end < 0) | (end * end < root));
      fp_lanes_store (look->stopped + i, stopped);
    }
}

/* --- all solids -------------------------------------------------------------------- */

static void
stop_one_by_one (const FpRayCandidate *candidate, Look *self)
{
  for (guint i = 0; i < self->n; i++)
    {
      const FpRay ray = fp_ray_make (self->eye, fp_vec3_add (self->eye, way_of (self, i)));
      self->stopped[i] = fp_ray_index_candidate_blocks (self->index, candidate, &ray);
    }
}

/* Rays that are stopped are not asked again: the last ones take their places. */
static void
drop_stopped (Look *self)
{
  for (guint i = self->n; i-- > 0;)
    if (self->stopped[i])
      {
        self->n--;
        self->x[i] = self->x[self->n];
        self->y[i] = self->y[self->n];
        self->z[i] = self->z[self->n];
      }
}

static void
stop_rays (Look *self, guint solid)
{
  Planes planes;

  if (self->index->trait[solid].sided)
    {
      if (!planes_of (&planes, &self->index->solid[solid], &self->pyramid))
        return;
      stop_at_planes (&planes, self);
    }
  else
    {
      const FpRayCandidate candidate = fp_ray_candidate (self->index, solid, self->eye);
      if (self->index->solid[solid].shape != FP_SOLID_ELLIPSOID)
        stop_one_by_one (&candidate, self);
      else if (candidate.c < 0)
        memset (self->stopped, -1, sizeof self->stopped); /* the eye lies within */
      else
        stop_at_sphere (&self->index->sphere[solid], &candidate, self);
    }
  drop_stopped (self);
  /* Where the mensa is hidden and the raised Host is seen, only heads as high as that still matter. */
  if (self->n > 0 && self->n <= self->framed / 2)
    frame_rays (self);
}

/* The nearest first: in a full church most of what is hidden is hidden by the heads just in front. */
static void
look_past_all (Look *self)
{
  gint32 stack[FP_RAY_STACK_MAX];
  guint depth = 0;

  stack[depth++] = 0;
  while (depth > 0 && self->n > 0)
    {
      gint32 hit[FP_LANES];
      const gint32 at = stack[--depth];
      if (at >= 0)
        for (guint n = fp_sieve_node (&self->sieve, &g_array_index (self->index->node, FpRayNode, at), hit); n > 0; n--)
          stack[depth++] = hit[n - 1];
      else if (!fp_ray_skipped (&self->index->trait[~at], self->skip))
        stop_rays (self, (guint) ~at);
    }
}

guint
fp_ray_index_seen (const FpRayIndex *index, FpVec3 eye, const FpVec3 to[FP_SIGHT_RAYS], FpRaySkip skip)
{
  Look self = { .index = index, .skip = skip, .eye = eye, .n = FP_SIGHT_RAYS };

  if (index->n == 0)
    return FP_SIGHT_RAYS;
  for (guint i = 0; i < FP_SIGHT_RAYS; i++)
    {
      const FpVec3 way = fp_vec3_sub (to[i], eye);
      self.x[i] = way.x;
      self.y[i] = way.y;
      self.z[i] = way.z;
    }
  frame_rays (&self);
  look_past_all (&self);
  return self.n;
}
