/* SPDX-License-Identifier: GPL-3.0-or-later */
/* ray-seen.c - how many of the points of a target are seen from an eye
 *
 * The same answer as asking every solid for every ray.  But the nearest are
 * asked first, a ray that was stopped is not asked again, a prism is asked
 * once whether it lies apart from all of them, and rays are asked by groups of
 * eight neighbours: only those groups whose part of the picture, as one sees
 * it from the eye, a solid reaches into.
 */
#include "ray-index-private.h"

#define GROUPS (FP_SIGHT_RAYS / FP_LANES)
G_STATIC_ASSERT (FP_SIGHT_RAYS == 64 && FP_LANES == 8);

/* How far off a place in the picture may be reckoned: it lies within a field of view, so it is not much more than 1. */
#define PICTURE_SLACK 1e-9

typedef struct
{
  const FpRayIndex *index;
  FpRaySkip         skip;
  FpRays            rays;     /* closed up: so many groups of them              */
  FpPyramid         pyramid;  /* round the rays that were left when it was made */
  FpSieve           sieve;
  guint             framed;   /* how many those were                            */
  guint             n;        /* rays that nothing has stopped yet              */
  guint             groups;   /* with one of them at least                      */
  guint8            left[GROUPS];             /* of each group, the rays that are left: a bit each */
  FpRayFrame        frame[GROUPS];
  guint8            id[FP_SIGHT_RAYS];        /* which of those that were asked */
  gint64            stopped[FP_LANES];
} Look;

static guint
count_bits (guint64 bits)
{
  return (guint) __builtin_popcountll (bits);
}

/* --- rays in groups ------------------------------------------------------------- */

/* Where each is in the picture is known. */
static void
frame_group (Look *self, guint group)
{
  const double *u = self->rays.u + group * FP_LANES, *v = self->rays.v + group * FP_LANES;
  FpRayFrame frame = { u[0], u[0], v[0], v[0] };

  for (guint i = 1; i < FP_LANES; i++)
    {
      frame.u0 = MIN (frame.u0, u[i]);
      frame.u1 = MAX (frame.u1, u[i]);
      frame.v0 = MIN (frame.v0, v[i]);
      frame.v1 = MAX (frame.v1, v[i]);
    }
  self->frame[group] = (FpRayFrame) {
    frame.u0 - PICTURE_SLACK, frame.u1 + PICTURE_SLACK, frame.v0 - PICTURE_SLACK, frame.v1 + PICTURE_SLACK,
  };
}

/* What is left moves up, in order, so that neighbours stay together; what fills the last group are copies, which are
 * not asked for. */
static void
close_up (Look *self)
{
  FpRays *rays = &self->rays;
  guint n = 0;

  for (guint i = 0; i < self->groups * FP_LANES; i++)
    if (self->left[i / FP_LANES] & (1u << i % FP_LANES))
      {
        self->id[n] = self->id[i];
        rays->x[n] = rays->x[i];
        rays->y[n] = rays->y[i];
        rays->z[n] = rays->z[i];
        rays->u[n] = rays->u[i];
        rays->v[n] = rays->v[i];
        n++;
      }
  rays->n = self->n = n;
  fp_rays_pad (rays);
  self->groups = (n + FP_LANES - 1) / FP_LANES;
  for (guint group = 0; group < self->groups; group++)
    self->left[group] = (guint8) (group * FP_LANES + FP_LANES <= n ? 0xff : (1u << n % FP_LANES) - 1);
}

/* Rays have been closed up. */
static void
frame_rays (Look *self)
{
  self->pyramid = fp_pyramid_make (&self->rays);
  self->sieve = fp_sieve_make (&self->pyramid, fp_rays_way (&self->rays, 0), self->index->reach);
  self->framed = self->n;
}

static void
frame_groups (Look *self)
{
  for (guint group = 0; group < self->groups && self->pyramid.n_planes > 0; group++)
    frame_group (self, group);
}

/* Where in the picture a box lies; FALSE where part of it lies not ahead. */
FP_LANES_WIDEST static gboolean
frame_box (const FpPyramid *pyramid, const FpBox3 *box, FpRayFrame *frame)
{
  const FpVec3 lo = fp_vec3_sub (box->lo, pyramid->eye), hi = fp_vec3_sub (box->hi, pyramid->eye);
  const FpWide x = { lo.x, hi.x, lo.x, hi.x, lo.x, hi.x, lo.x, hi.x };
  const FpWide y = { lo.y, lo.y, hi.y, hi.y, lo.y, lo.y, hi.y, hi.y };
  const FpWide z = { lo.z, lo.z, lo.z, lo.z, hi.z, hi.z, hi.z, hi.z };
  const FpVec3 f = pyramid->picture.ahead, r = pyramid->picture.right, s = pyramid->picture.up;
  const FpWide depth = f.x * x + f.y * y + f.z * z;
  const FpWide u = (r.x * x + r.y * y + r.z * z) / depth, v = (s.x * x + s.y * y + s.z * z) / depth;
  double at[FP_LANES], across[FP_LANES], upright[FP_LANES];

  fp_lanes_store (at, depth);
  fp_lanes_store (across, u);
  fp_lanes_store (upright, v);
  *frame = (FpRayFrame) { across[0], across[0], upright[0], upright[0] };
  for (guint i = 0; i < FP_LANES; i++)
    {
      if (at[i] < 1)
        return FALSE;
      frame->u0 = MIN (frame->u0, across[i]);
      frame->u1 = MAX (frame->u1, across[i]);
      frame->v0 = MIN (frame->v0, upright[i]);
      frame->v1 = MAX (frame->v1, upright[i]);
    }
  return TRUE;
}

/* The groups, a bit each, into whose part of the picture a box reaches. */
static guint
groups_met (const Look *self, const FpBox3 *box)
{
  guint met = 0;
  FpRayFrame frame;

  if (self->pyramid.n_planes == 0 || !frame_box (&self->pyramid, box, &frame))
    return (1u << self->groups) - 1;
  for (guint group = 0; group < self->groups; group++)
    {
      const FpRayFrame *own = &self->frame[group];
      met |= (guint) (own->u0 <= frame.u1 && own->u1 >= frame.u0 && own->v0 <= frame.v1 && own->v1 >= frame.v0) << group;
    }
  return met;
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

/* As fp_solid_ray(), at a fraction of the cost: where each ray of a group enters and leaves. */
FP_LANES_WIDEST static void
stop_at_planes (const Planes *planes, Look *look, guint group)
{
  FpWide x, y, z, enters = { 0 }, leaves = enters + 1;
  FpWideTruth stopped;

  fp_lanes_load (x, look->rays.x + group * FP_LANES);
  fp_lanes_load (y, look->rays.y + group * FP_LANES);
  fp_lanes_load (z, look->rays.z + group * FP_LANES);
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
  fp_lanes_store (look->stopped, stopped);
}

/* --- heads and trunks ------------------------------------------------------------- */

/* In the space where it is the unit sphere: as meets_sphere() of ray-index.c has it, to the bit. */
FP_LANES_WIDEST static void
stop_at_sphere (const FpRaySphere *s, const FpRayCandidate *candidate, Look *look, guint group)
{
  const FpVec3 o = candidate->o;
  const double c = candidate->c;
  FpWide x, y, z, b, root, end;
  FpWideTruth stopped;

  fp_lanes_load (x, look->rays.x + group * FP_LANES);
  fp_lanes_load (y, look->rays.y + group * FP_LANES);
  fp_lanes_load (z, look->rays.z + group * FP_LANES);
  const FpWide p = (s->cos * x + s->sin * y) * s->ix, q = (s->cos * y - s->sin * x) * s->iy, r = z * s->iz;
  b = o.x * p + o.y * q + o.z * r;
  root = b * b - (p * p + q * q + r * r) * c;
  end = b + c;
  stopped = (b < 0) & (root > 0) & ((end < 0) | (end * end < root));
  fp_lanes_store (look->stopped, stopped);
}

/* --- all solids -------------------------------------------------------------------- */

static void
stop_one_by_one (const FpRayCandidate *candidate, Look *self, guint group)
{
  for (guint i = 0; i < FP_LANES; i++)
    if (self->left[group] & (1u << i))
      {
        const FpRay ray = fp_ray_along (self->rays.eye, fp_rays_way (&self->rays, group * FP_LANES + i));
        self->stopped[i] = fp_ray_index_candidate_blocks (self->index, candidate, &ray);
      }
}

static void
drop_stopped (Look *self, guint group)
{
  guint8 left = self->left[group];

  for (guint i = 0; i < FP_LANES; i++)
    left &= (guint8) ~((self->stopped[i] != 0) << i);
  self->n -= count_bits (self->left[group] ^ left);
  self->left[group] = left;
}

static void
stop_groups (Look *self, guint solid, guint met)
{
  const FpSolid *s = &self->index->solid[solid];
  FpRayCandidate candidate = { .solid = solid };
  Planes planes;

  if (!self->index->trait[solid].sided)
    candidate = fp_ray_candidate (self->index, solid, self->rays.eye);
  else if (!planes_of (&planes, s, &self->pyramid))
    return;
  for (guint group = 0; group < self->groups; group++)
    if ((met & (1u << group)) && self->left[group] != 0)
      {
        if (self->index->trait[solid].sided)
          stop_at_planes (&planes, self, group);
        else if (s->shape != FP_SOLID_ELLIPSOID)
          stop_one_by_one (&candidate, self, group);
        else if (candidate.c < 0)
          memset (self->stopped, -1, sizeof self->stopped); /* the eye lies within */
        else
          stop_at_sphere (&self->index->sphere[solid], &candidate, self, group);
        drop_stopped (self, group);
      }
}

static void
stop_rays (Look *self, guint solid)
{
  const guint met = groups_met (self, &self->index->box[solid]);

  if (met == 0)
    return;
  stop_groups (self, solid, met);
  if (self->n == 0 || self->n > (self->groups - 1) * FP_LANES)
    return;
  close_up (self);
  /* Where the mensa is hidden and the raised Host is seen, only heads as high as that still matter. */
  if (self->n <= self->framed / 2)
    frame_rays (self);
  frame_groups (self);
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

static void
take_rays (Look *self, const FpRays *rays, guint64 asked)
{
  self->rays = *rays;
  self->n = FP_SIGHT_RAYS;
  self->groups = GROUPS;
  for (guint i = 0; i < FP_SIGHT_RAYS; i++)
    self->id[i] = (guint8) i;
  for (guint group = 0; group < GROUPS; group++)
    self->left[group] = (guint8) (asked >> (group * FP_LANES));
  if (asked != FP_SIGHT_ALL)
    close_up (self);
}

static guint64
points_left (const Look *self)
{
  guint64 points = 0;

  for (guint i = 0; i < self->groups * FP_LANES; i++)
    if (self->left[i / FP_LANES] & (1u << i % FP_LANES))
      points |= G_GUINT64_CONSTANT (1) << self->id[i];
  return points;
}

guint64
fp_ray_index_seen (const FpRayIndex *index, const FpRays *rays, FpRaySkip skip, guint64 asked)
{
  Look self;

  if (index->n == 0 || asked == 0)
    return asked;
  self.index = index;
  self.skip = skip;
  take_rays (&self, rays, asked);
  frame_rays (&self);
  frame_groups (&self);
  look_past_all (&self);
  return self.n > 0 ? points_left (&self) : 0;
}
