/* SPDX-License-Identifier: GPL-3.0-or-later */
/* ray-seen.c - how many of the points of a target are seen from an eye
 *
 * The same answer as asking every solid for every ray.  But the nearest are
 * asked first, a ray that was stopped is not asked again, and a prism is asked
 * once whether it lies apart from all of them.
 */
#include "ray-index-private.h"

typedef struct
{
  const FpRayIndex *index;
  FpRaySkip         skip;
  FpVec3            eye;
  FpPyramid           pyramid;  /* round the rays that were left when it was made */
  guint             framed;   /* how many those were                            */
  guint             n;        /* rays that nothing has stopped yet              */
  FpRay             ray[FP_SIGHT_RAYS];
  FpVec3            to[FP_SIGHT_RAYS];
} Look;

static void
frame_rays (Look *self)
{
  self->pyramid = fp_pyramid_make (self->eye, self->to, self->n);
  self->framed = self->n;
}

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

/* As fp_solid_ray(), at a fraction of the cost. */
static gboolean
meets_planes (const Planes *self, FpVec3 d)
{
  double a = 0, b = 1;

  for (guint i = 0; i < self->n; i++)
    {
      const double slope = fp_vec3_dot (self->normal[i], d), eye = self->eye[i];
      if (slope > 0)
        a = MAX (a, -eye / slope);
      else if (slope < 0)
        b = MIN (b, eye / -slope);
      else if (!(eye > 0))
        return FALSE;
      if (!(a < b))
        return FALSE;
    }
  return TRUE;
}

static void
stop_ray (Look *self, guint i)
{
  self->n--;
  self->ray[i] = self->ray[self->n];
  self->to[i] = self->to[self->n];
}

static void
stop_rays_at_prism (Look *self, guint solid)
{
  Planes planes;

  if (!planes_of (&planes, &self->index->solid[solid], &self->pyramid))
    return;
  for (guint i = 0; i < self->n;)
    if (meets_planes (&planes, self->ray[i].d))
      stop_ray (self, i);
    else
      i++;
}

static void
stop_rays_at_any (Look *self, guint solid)
{
  const FpRayCandidate candidate = fp_ray_candidate (self->index, solid, self->eye);

  for (guint i = 0; i < self->n;)
    if (fp_ray_index_candidate_blocks (self->index, &candidate, &self->ray[i]))
      stop_ray (self, i);
    else
      i++;
}

static void
stop_rays (Look *self, guint solid)
{
  if (self->index->sided[solid])
    stop_rays_at_prism (self, solid);
  else
    stop_rays_at_any (self, solid);
  /* Where the mensa is hidden and the raised Host is seen, only heads as high as that still matter. */
  if (self->n > 0 && self->n <= self->framed / 2)
    frame_rays (self);
}

static void
look_past_leaf (Look *self, const FpRayNode *node)
{
  for (guint i = node->second; i < node->second + node->count && self->n > 0; i++)
    {
      const guint solid = self->index->order[i];
      if (!fp_ray_skipped (&self->index->solid[solid], self->skip) && fp_pyramid_reaches (&self->pyramid, &self->index->box[solid]))
        stop_rays (self, solid);
    }
}

/* Whether what lies in the box of @a is, by and large, nearer to the eye than what lies in that of @b. */
static gboolean
is_nearer (const Look *self, guint a, guint b)
{
  const FpBox3 *p = &g_array_index (self->index->node, FpRayNode, a).box;
  const FpBox3 *q = &g_array_index (self->index->node, FpRayNode, b).box;
  const FpVec3 apart = fp_vec3_sub (fp_vec3_add (q->lo, q->hi), fp_vec3_add (p->lo, p->hi));

  return fp_vec3_dot (apart, self->ray[0].d) > 0;
}

/* The nearest first: in a full church most of what is hidden is hidden by the heads just in front. */
guint
fp_ray_index_seen (const FpRayIndex *index, FpVec3 eye, const FpVec3 to[FP_SIGHT_RAYS], FpRaySkip skip)
{
  Look self = { .index = index, .skip = skip, .eye = eye, .n = FP_SIGHT_RAYS };
  guint stack[FP_RAY_DEPTH_MAX], depth = 0;

  for (guint i = 0; i < FP_SIGHT_RAYS; i++)
    {
      self.to[i] = to[i];
      self.ray[i] = fp_ray_make (eye, to[i]);
    }
  frame_rays (&self);
  if (index->n > 0)
    stack[depth++] = 0;
  while (depth > 0 && self.n > 0)
    {
      const guint at = stack[--depth];
      const FpRayNode *node = &g_array_index (index->node, FpRayNode, at);
      if (!fp_pyramid_reaches (&self.pyramid, &node->box))
        continue;
      if (node->count > 0)
        {
          look_past_leaf (&self, node);
          continue;
        }
      const gboolean first_nearer = is_nearer (&self, at + 1, node->second);
      stack[depth++] = first_nearer ? node->second : at + 1;
      stack[depth++] = first_nearer ? at + 1 : node->second;
    }
  return self.n;
}
