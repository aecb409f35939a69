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
  FpRays           *rays;     /* closed up: so many groups of them; borrowed    */
  FpPyramid         pyramid;  /* round the rays that were left when it was made */
  FpSieve           sieve;
  guint             framed;   /* how many those were                            */
  guint             n;        /* rays that nothing has stopped yet              */
  guint             groups;   /* with one of them at least                      */
  guint8            left[GROUPS];             /* of each group, the rays that are left: a bit each */
  double            u0[GROUPS], u1[GROUPS], v0[GROUPS], v1[GROUPS]; /* what frames each in the picture */
  guint8            id[FP_SIGHT_RAYS];        /* which of those that were asked */
} Look;

/* Of eight bits, how many are set. */
#define B2(n) n, n + 1, n + 1, n + 2
#define B4(n) B2 (n), B2 (n + 1), B2 (n + 1), B2 (n + 2)
#define B6(n) B4 (n), B4 (n + 1), B4 (n + 1), B4 (n + 2)
static const guint8 COUNT[256] = { B6 (0), B6 (1), B6 (1), B6 (2) };

/* --- rays in groups ------------------------------------------------------------- */

static inline FpRayFrame
frame_of (const double u[FP_LANES], const double v[FP_LANES])
{
  FpRayFrame frame = { u[0], u[0], v[0], v[0] };

  for (guint i = 1; i < FP_LANES; i++)
    {
      frame.u0 = MIN (frame.u0, u[i]);
      frame.u1 = MAX (frame.u1, u[i]);
      frame.v0 = MIN (frame.v0, v[i]);
      frame.v1 = MAX (frame.v1, v[i]);
    }
  return frame;
}

/* Where each is in the picture is known. */
static void
frame_group (Look *self, guint group)
{
  const FpRayFrame frame = frame_of (self->rays->u + group * FP_LANES, self->rays->v + group * FP_LANES);

  self->u0[group] = frame.u0 - PICTURE_SLACK;
  self->u1[group] = frame.u1 + PICTURE_SLACK;
  self->v0[group] = frame.v0 - PICTURE_SLACK;
  self->v1[group] = frame.v1 + PICTURE_SLACK;
}

/* What is left moves up, in order, so that neighbours stay together; what fills the last group are copies, which are
 * not asked for. */
static void
close_up (Look *self)
{
  FpRays *rays = self->rays;
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
  self->pyramid = fp_pyramid_make (self->rays);
  self->sieve = fp_sieve_make (&self->pyramid, fp_rays_way (self->rays, 0), self->index->reach);
  self->framed = self->n;
}

static void
frame_groups (Look *self)
{
  for (guint group = 0; group < self->groups && self->pyramid.n_planes > 0; group++)
    frame_group (self, group);
}

/* A bit for each lane that is true. */
#define BITS_OF(truth) ((truth) & (FpWideTruth) { 1, 2, 4, 8, 16, 32, 64, 128 })

static inline guint
gather_bits (const gint64 bits[FP_LANES])
{
  return (guint) (((bits[0] | bits[1]) | (bits[2] | bits[3])) | ((bits[4] | bits[5]) | (bits[6] | bits[7])));
}

/* The groups, a bit each, into whose part of the picture a box reaches: all, where part of it lies not ahead. */
FP_LANES_WIDEST static guint
groups_framed (const Look *look, const FpBox3 *box)
{
  const FpRayPicture *p = &look->pyramid.picture;
  const FpVec3 lo = fp_vec3_sub (box->lo, look->pyramid.eye), hi = fp_vec3_sub (box->hi, look->pyramid.eye);
  const FpWide x = { lo.x, hi.x, lo.x, hi.x, lo.x, hi.x, lo.x, hi.x };
  const FpWide y = { lo.y, lo.y, hi.y, hi.y, lo.y, lo.y, hi.y, hi.y };
  const FpWide z = { lo.z, lo.z, lo.z, lo.z, hi.z, hi.z, hi.z, hi.z };
  const FpWide depth = p->ahead.x * x + p->ahead.y * y + p->ahead.z * z;
  const FpWide right = (p->right.x * x + p->right.y * y + p->right.z * z) / depth;
  const FpWide up = (p->up.x * x + p->up.y * y + p->up.z * z) / depth;
  FpWideTruth truth = depth < 1;
  FpWide u0, u1, v0, v1;
  gint64 bits[FP_LANES];
  double u[FP_LANES], v[FP_LANES];

  fp_lanes_store (bits, truth);
  if (gather_bits (bits) != 0)
    return (1u << GROUPS) - 1;
  fp_lanes_store (u, right);
  fp_lanes_store (v, up);
  const FpRayFrame frame = frame_of (u, v);
  fp_lanes_load (u0, look->u0);
  fp_lanes_load (u1, look->u1);
  fp_lanes_load (v0, look->v0);
  fp_lanes_load (v1, look->v1);
  truth = BITS_OF ((u0 <= frame.u1) & (u1 >= frame.u0) & (v0 <= frame.v1) & (v1 >= frame.v0));
  fp_lanes_store (bits, truth);
  return gather_bits (bits);
}

/* Those of them that have rays left. */
static guint
groups_met (const Look *self, const FpBox3 *box)
{
  const guint all = (1u << self->groups) - 1;

  return self->pyramid.n_planes > 0 ? groups_framed (self, box) & all : all;
}

/* --- prisms --------------------------------------------------------------------- */

#define PLANES_ROOM (2 * FP_LANES)
G_STATIC_ASSERT (FP_RAY_SIDES_MAX + 2 <= PLANES_ROOM);

/* A prism of few sides as planes: within it eye + normal . (p - from) is positive for all of them. */
typedef struct
{
  guint  n;
  double x[PLANES_ROOM], y[PLANES_ROOM], z[PLANES_ROOM]; /* the normal */
  double eye[PLANES_ROOM];
} Planes;

static inline void
add_prism_plane (Planes *self, double x, double y, double z, double eye)
{
  self->x[self->n] = x;
  self->y[self->n] = y;
  self->z[self->n] = z;
  self->eye[self->n++] = eye;
}

static void
planes_of (Planes *self, const FpSolid *s, FpVec3 eye)
{
  self->n = 0;
  add_prism_plane (self, s->gx, s->gy, -1, fp_solid_top_at (s, eye.x, eye.y) - eye.z);
  add_prism_plane (self, -s->bx, -s->by, 1, eye.z - fp_solid_foot_at (s, eye.x, eye.y));
  for (guint i = 0, k = s->n_outline - 1; i < s->n_outline; k = i++)
    {
      const FpPoint a = s->outline[k], b = s->outline[i];
      add_prism_plane (self, a.y - b.y, b.x - a.x, 0, (b.x - a.x) * (eye.y - a.y) - (b.y - a.y) * (eye.x - a.x));
    }
  for (guint i = self->n; i < PLANES_ROOM; i++) /* all of space lies within these */
    {
      self->x[i] = self->y[i] = self->z[i] = 0;
      self->eye[i] = 1;
    }
}

/* Of planes from @first, a bit each: @some, those with a part of the pyramid within; @whole, with all of it. */
FP_LANES_WIDEST static void
hold_against_pyramid (const Planes *planes, guint first, const FpPyramid *pyramid, guint *some, guint *whole)
{
  FpWide x, y, z, eye;
  FpWideTruth truth, any, every;
  gint64 bits[FP_LANES];

  fp_lanes_load (x, planes->x + first);
  fp_lanes_load (y, planes->y + first);
  fp_lanes_load (z, planes->z + first);
  fp_lanes_load (eye, planes->eye + first);
  any = every = eye > 0;
  for (guint i = 0; i < 4; i++)
    {
      const FpVec3 c = fp_vec3_sub (pyramid->corner[i], pyramid->eye);
      truth = eye + (x * c.x + y * c.y + z * c.z) > 0;
      any |= truth;
      every &= truth;
    }
  truth = BITS_OF (any);
  fp_lanes_store (bits, truth);
  *some = gather_bits (bits);
  truth = BITS_OF (every);
  fp_lanes_store (bits, truth);
  *whole = gather_bits (bits);
}

/* FALSE where a plane parts the prism from all of the pyramid: a row of pews that stands askew, or on a falling floor, is
 * far less than its box.  Planes that have all of the pyramid on their inner sides stop nothing, and are left out. */
static gboolean
keep_planes_across (Planes *self, const FpPyramid *pyramid)
{
  guint some[2], whole[2], kept = 0;

  if (pyramid->n_planes == 0)
    return TRUE;
  for (guint i = 0; i < 2; i++)
    hold_against_pyramid (self, i * FP_LANES, pyramid, &some[i], &whole[i]);
  if ((some[0] & some[1]) != 0xff)
    return FALSE;
  whole[0] |= whole[1] << FP_LANES;
  for (guint i = 0; i < self->n; i++)
    if (!(whole[0] & (1u << i)))
      {
        self->x[kept] = self->x[i];
        self->y[kept] = self->y[i];
        self->z[kept] = self->z[i];
        self->eye[kept++] = self->eye[i];
      }
  self->n = kept;
  return TRUE;
}

/* As fp_solid_ray(), at a fraction of the cost: where each ray of a group enters and leaves.  A bit for each it stops. */
FP_LANES_WIDEST static guint
stop_at_planes (const Planes *planes, const Look *look, guint group)
{
  FpWide x, y, z, enters = { 0 }, leaves = enters + 1;
  FpWideTruth stopped;
  gint64 bits[FP_LANES];

  fp_lanes_load (x, look->rays->x + group * FP_LANES);
  fp_lanes_load (y, look->rays->y + group * FP_LANES);
  fp_lanes_load (z, look->rays->z + group * FP_LANES);
  for (guint k = 0; k < planes->n; k++)
    {
      const double eye = planes->eye[k];
      const FpWide slope = planes->x[k] * x + planes->y[k] * y + planes->z[k] * z;
      const FpWide at = -eye / slope;
      enters = fp_wide_pick ((slope > 0) & (at > enters), at, enters);
      leaves = fp_wide_pick ((slope < 0) & (at < leaves), at, leaves);
      if (!(eye > 0))
        leaves = fp_wide_pick (slope == 0, enters, leaves);
    }
  stopped = BITS_OF (enters < leaves);
  fp_lanes_store (bits, stopped);
  return gather_bits (bits);
}

/* --- heads and trunks ------------------------------------------------------------- */

/* In the space where it is the unit sphere: as meets_sphere() of ray-index.c has it, to the bit. */
FP_LANES_WIDEST static guint
stop_at_sphere (const FpRaySphere *s, const FpRayCandidate *candidate, const Look *look, guint group)
{
  const FpVec3 o = candidate->o;
  const double c = candidate->c;
  FpWide x, y, z, b, root, end;
  FpWideTruth stopped;
  gint64 bits[FP_LANES];

  fp_lanes_load (x, look->rays->x + group * FP_LANES);
  fp_lanes_load (y, look->rays->y + group * FP_LANES);
  fp_lanes_load (z, look->rays->z + group * FP_LANES);
  const FpWide p = (s->cos * x + s->sin * y) * s->ix, q = (s->cos * y - s->sin * x) * s->iy, r = z * s->iz;
  b = o.x * p + o.y * q + o.z * r;
  root = b * b - (p * p + q * q + r * r) * c;
  end = b + c;
  stopped = BITS_OF ((b < 0) & (root > 0) & ((end < 0) | (end * end < root)));
  fp_lanes_store (bits, stopped);
  return gather_bits (bits);
}

/* --- all solids -------------------------------------------------------------------- */

static guint
stop_one_by_one (const FpRayCandidate *candidate, const Look *self, guint group)
{
  guint stopped = 0;

  for (guint i = 0; i < FP_LANES; i++)
    if (self->left[group] & (1u << i))
      {
        const FpRay ray = fp_ray_along (self->rays->eye, fp_rays_way (self->rays, group * FP_LANES + i));
        stopped |= (guint) fp_ray_index_candidate_blocks (self->index, candidate, &ray) << i;
      }
  return stopped;
}

/* @planes: of a prism of few sides */
static guint
stop_group (const Look *self, const FpRayCandidate *candidate, const Planes *planes, guint group)
{
  if (self->index->trait[candidate->solid].sided)
    return stop_at_planes (planes, self, group);
  if (self->index->solid[candidate->solid].shape != FP_SOLID_ELLIPSOID)
    return stop_one_by_one (candidate, self, group);
  if (candidate->c < 0) /* the eye lies within */
    return (1u << FP_LANES) - 1;
  return stop_at_sphere (&self->index->sphere[candidate->solid], candidate, self, group);
}

static void
stop_groups (Look *self, guint solid, guint met)
{
  FpRayCandidate candidate = { .solid = solid };
  Planes planes;

  if (!self->index->trait[solid].sided)
    candidate = fp_ray_candidate (self->index, solid, self->rays->eye);
  else
    {
      planes_of (&planes, &self->index->solid[solid], self->rays->eye);
      if (!keep_planes_across (&planes, &self->pyramid))
        return;
    }
  for (guint group = 0; group < self->groups; group++)
    if ((met & (1u << group)) && self->left[group] != 0)
      {
        const guint stopped = stop_group (self, &candidate, &planes, group) & self->left[group];
        self->n -= COUNT[stopped];
        self->left[group] ^= (guint8) stopped;
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
take_rays (Look *self, FpRays *rays, guint64 asked)
{
  self->rays = rays;
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
fp_ray_index_seen (const FpRayIndex *index, FpRays *rays, FpRaySkip skip, guint64 asked)
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
