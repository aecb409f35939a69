/* SPDX-License-Identifier: GPL-3.0-or-later */
/* ray-index.c - a tree of boxes over solids
 *
 * A node has eight children, whose boxes are asked at once.  Boxes only sift;
 * a solid itself is asked before anything is said to block.
 */
#include "ray-index-private.h"

#include <math.h>

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

/* Orders so that what is before @half of the span lies lower along the axis than what is after it. */
static void
part (const FpRayIndex *self, guint *order, guint n, guint half, int axis)
{
  guint lo = 0, hi = n - 1;
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

/* A run of the solids in `order`. */
typedef struct { guint first, n; } Run;

static FpBox3
box_of_run (const FpRayIndex *self, const guint *order, Run run)
{
  FpBox3 box = FP_BOX3_EMPTY;

  for (guint i = run.first; i < run.first + run.n; i++)
    fp_box3_add_box (&box, &self->box[order[i]]);
  return box;
}

static FpBox3
middles_of_run (const FpRayIndex *self, const guint *order, Run run)
{
  FpBox3 box = FP_BOX3_EMPTY;

  for (guint i = run.first; i < run.first + run.n; i++)
    fp_box3_add_point (&box, fp_vec3_add (self->box[order[i]].lo, self->box[order[i]].hi));
  return box;
}

/* How many solids a child of a node over @n has, so that all nodes below it are full: 1, 8, 64, … */
static guint
share_of (guint n)
{
  guint share = 1;

  while (share < n / FP_LANES + (n % FP_LANES > 0 ? 1 : 0)) /* not share * FP_LANES, which may be more than a guint */
    share *= FP_LANES;
  return share;
}

/* Parts a run into at most FP_LANES, halving the longest first; returns how many. */
static guint
part_run (const FpRayIndex *self, guint *order, Run whole, Run *run)
{
  const guint share = share_of (whole.n), wanted = (whole.n + share - 1) / share;

  run[0] = whole;
  for (guint n = 1; n < wanted; n++)
    {
      guint longest = 0, half;
      FpBox3 middles;
      for (guint i = 1; i < n; i++)
        if (run[i].n > run[longest].n)
          longest = i;
      half = (run[longest].n + share - 1) / share / 2 * share;
      middles = middles_of_run (self, order, run[longest]);
      part (self, order + run[longest].first, run[longest].n, half, longest_axis (&middles));
      run[n] = (Run) { run[longest].first + half, run[longest].n - half };
      run[longest].n = half;
    }
  return wanted;
}

static void
set_child_box (FpRayNode *node, guint i, const FpBox3 *box)
{
  const double lo[] = { box->lo.x, box->lo.y, box->lo.z }, hi[] = { box->hi.x, box->hi.y, box->hi.z };

  for (guint axis = 0; axis < 3; axis++)
    {
      node->lo[axis][i] = nextafterf ((float) lo[axis], -INFINITY);
      node->hi[axis][i] = nextafterf ((float) hi[axis], INFINITY);
    }
}

static const FpRayNode *
node_of (const FpRayIndex *self, guint i)
{
  return &g_array_index (self->node, FpRayNode, i);
}

static gint32
add_node (FpRayIndex *self, guint *order, Run whole)
{
  const guint at = self->node->len;
  FpRayNode node = { .n = 0 };
  Run run[FP_LANES];

  g_array_append_val (self->node, node); /* its place; children come after it */
  node.n = part_run (self, order, whole, run);
  for (guint i = 0; i < node.n; i++)
    {
      const FpBox3 box = box_of_run (self, order, run[i]);
      set_child_box (&node, i, &box);
      node.child[i] = run[i].n == 1 ? ~(gint32) order[run[i].first] : add_node (self, order, run[i]);
    }
  g_array_index (self->node, FpRayNode, at) = node;
  return (gint32) at;
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

static double
farthest (const FpBox3 *box)
{
  return MAX (MAX (MAX (fabs (box->lo.x), fabs (box->hi.x)), MAX (fabs (box->lo.y), fabs (box->hi.y))),
              MAX (fabs (box->lo.z), fabs (box->hi.z)));
}

static void
take_solid (FpRayIndex *self, guint i)
{
  const FpSolid *s = &self->solid[i];

  self->box[i] = fp_solid_box (s);
  self->reach = MAX (self->reach, farthest (&self->box[i]));
  if (s->shape == FP_SOLID_ELLIPSOID)
    self->sphere[i] = sphere_of (s);
  self->trait[i] = (FpRayTrait) { s->owner, s->part == FP_PART_HEAD || s->part == FP_PART_TRUNK, is_sided (s) };
}

FpRayIndex *
fp_ray_index_of (const FpSolid *solid, guint n)
{
  FpRayIndex *self = g_new0 (FpRayIndex, 1);
  g_autofree guint *order = NULL;
  guint n_solid = 0;

  self->solid = solid;
  self->n = n;
  self->box = g_new (FpBox3, self->n);
  self->sphere = g_new0 (FpRaySphere, self->n);
  self->trait = g_new (FpRayTrait, self->n);
  self->node = g_array_new (FALSE, FALSE, sizeof (FpRayNode));
  order = g_new (guint, self->n);
  for (guint i = 0; i < self->n; i++)
    {
      take_solid (self, i);
      /* A cloth that hangs against a thing is seen in its place; of cards nothing is hidden that is looked at during Mass. */
      if (solid[i].part != FP_PART_CLOTH && solid[i].part != FP_PART_CARD)
        order[n_solid++] = i;
    }
  if (n_solid > 0)
    add_node (self, order, (Run) { 0, n_solid });
  return self;
}

FpRayIndex *
fp_ray_index_new (const FpSolids *solids)
{
  guint n;
  const FpSolid *solid = fp_solids_peek (solids, &n);

  return fp_ray_index_of (solid, n);
}

void
fp_ray_index_free (FpRayIndex *self)
{
  if (self == NULL)
    return;
  g_free (self->box);
  g_free (self->sphere);
  g_free (self->trait);
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
fp_ray_along (FpVec3 from, FpVec3 way)
{
  return (FpRay) { from, way, { 1 / way.x, 1 / way.y, 1 / way.z } };
}

FpRay
fp_ray_make (FpVec3 from, FpVec3 to)
{
  return fp_ray_along (from, fp_vec3_sub (to, from));
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

/* Whether |o + t d| < 1 for some 0 < t < 1, where c is |o|^2 - 1: as stop_at_sphere() of ray-seen.c has it, to the bit. */
static inline gboolean
meets_sphere (FpVec3 o, double c, FpVec3 d)
{
  if (c < 0)
    return TRUE;
  double b = fp_vec3_dot (o, d);
  if (b >= 0)
    return FALSE;
  double root = b * b - fp_vec3_dot (d, d) * c, end = b + c;
  return root > 0 && (end < 0 || end * end < root);
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

static gboolean
blocks (const FpRayIndex *self, guint solid, const FpRay *ray, FpRaySkip skip)
{
  if (fp_ray_skipped (&self->trait[solid], skip))
    return FALSE;
  const FpRayCandidate candidate = fp_ray_candidate (self, solid, ray->from);
  return fp_ray_index_candidate_blocks (self, &candidate, ray);
}

int
fp_ray_index_blocked (const FpRayIndex *self, FpVec3 from, FpVec3 to, guint skip_owner)
{
  const FpRay ray = fp_ray_make (from, to);
  const FpRaySkip skip = { skip_owner, FP_RAY_SKIP_NOBODY };
  FpRays rays;
  fp_rays_to (&rays, from, &to, 1);
  const FpPyramid pyramid = fp_pyramid_make (&rays);
  const FpSieve sieve = fp_sieve_make (&pyramid, ray.d, self->reach);
  gint32 stack[FP_RAY_STACK_MAX];
  guint depth = 0;

  if (self->node->len > 0)
    stack[depth++] = 0;
  while (depth > 0)
    {
      gint32 hit[FP_LANES];
      const gint32 at = stack[--depth];
      if (at < 0 && blocks (self, (guint) ~at, &ray, skip))
        return ~at;
      if (at < 0)
        continue;
      for (guint n = fp_sieve_node (&sieve, node_of (self, (guint) at), hit); n > 0; n--)
        stack[depth++] = hit[n - 1];
    }
  return -1;
}
