/* SPDX-License-Identifier: GPL-3.0-or-later */
/* solid-ray.c - where a segment enters a solid
 *
 * Along a segment each bound of a solid is a polynomial in t, the share of
 * the way; the answer is the beginning of the first stretch of t on which
 * all of them hold.
 */
#include "footpace/solid.h"

#include <math.h>

typedef struct { double a, b; } Stretch; /* a < t < b; empty when a >= b */

/* Narrows the stretch to where f0 + t * slope > 0. */
static void
keep_positive (Stretch *in, double f0, double slope)
{
  if (slope > 0)
    in->a = MAX (in->a, -f0 / slope);
  else if (slope < 0)
    in->b = MIN (in->b, f0 / -slope);
  else if (!(f0 > 0))
    in->b = in->a;
}

/* Beginning of the first part of @in on which qa t^2 + 2 qb t + qc < 0; FALSE where there is none. */
static gboolean
first_negative (Stretch in, double qa, double qb, double qc, double *t)
{
  const double d = qb * qb - qa * qc;
  double r1, r2, q;

  if (qa == 0)
    {
      keep_positive (&in, -qc, -2 * qb);
      *t = in.a;
      return in.a < in.b;
    }
  *t = in.a;
  if (d <= 0)
    return qa < 0 && in.a < in.b;
  q = -(qb + copysign (sqrt (d), qb));
  r1 = MIN (q / qa, qc / q);
  r2 = MAX (q / qa, qc / q);
  if (qa > 0)
    {
      *t = MAX (in.a, r1);
      return *t < MIN (in.b, r2);
    }
  if (in.a < MIN (in.b, r1))
    return TRUE;
  *t = MAX (in.a, r2);
  return *t < in.b;
}

/* The stretch between foot and top of a prism. */
static Stretch
between_levels (const FpSolid *s, FpVec3 o, FpVec3 d)
{
  Stretch in = { 0, 1 };

  keep_positive (&in, o.z - fp_solid_foot_at (s, o.x, o.y), d.z - s->bx * d.x - s->by * d.y);
  keep_positive (&in, fp_solid_top_at (s, o.x, o.y) - o.z, s->gx * d.x + s->gy * d.y - d.z);
  return in;
}

/* Where the plan of the segment crosses the sides of the outline after in.a:
 * an odd number of crossings means that it is inside there already. */
static gboolean
enter_outline (const FpSolid *s, Stretch in, FpVec3 o, FpVec3 d, double *t)
{
  const FpPoint *pt = s->outline;
  gboolean inside = FALSE;
  double first = G_MAXDOUBLE;
  FpPoint a = pt[s->n_outline - 1];
  double side_a = d.x * (a.y - o.y) - d.y * (a.x - o.x);

  for (guint i = 0; i < s->n_outline; i++)
    {
      const FpPoint b = pt[i];
      const double side_b = d.x * (b.y - o.y) - d.y * (b.x - o.x);
      if ((side_a > 0) != (side_b > 0))
        {
          const double ux = b.x - a.x, uy = b.y - a.y;
          const double at = ((a.x - o.x) * uy - (a.y - o.y) * ux) / (d.x * uy - d.y * ux);
          if (at > in.a)
            {
              inside = !inside;
              first = MIN (first, at);
            }
        }
      a = b;
      side_a = side_b;
    }
  *t = inside ? in.a : first;
  return inside || first < in.b;
}

static gboolean
ray_prism (const FpSolid *s, FpVec3 o, FpVec3 d, double *t)
{
  const Stretch in = between_levels (s, o, d);

  if (!(in.a < in.b))
    return FALSE;
  if (d.x == 0 && d.y == 0)
    {
      *t = in.a;
      return fp_outline_contains (s->outline, s->n_outline, (FpPoint) { o.x, o.y });
    }
  return enter_outline (s, in, o, d, t);
}

static gboolean
ray_round (const FpSolid *s, FpVec3 o, FpVec3 d, double *t)
{
  Stretch in = { 0, 1 };
  const double slope = (s->r1 - s->r0) / (s->z1 - s->z0);
  const double x = o.x - s->cx, y = o.y - s->cy;
  const double r = s->r0 + slope * (o.z - s->z0), dr = slope * d.z;

  keep_positive (&in, o.z - s->z0, d.z);
  keep_positive (&in, s->z1 - o.z, -d.z);
  if (!(in.a < in.b))
    return FALSE;
  return first_negative (in, d.x * d.x + d.y * d.y - dr * dr, x * d.x + y * d.y - r * dr, x * x + y * y - r * r, t);
}

static gboolean
ray_ellipsoid (const FpSolid *s, FpVec3 o, FpVec3 d, double *t)
{
  const FpPlace at = { s->cx, s->cy, s->turn }, turn = { 0, 0, s->turn };
  const FpPoint po = fp_place_unpoint (&at, (FpPoint) { o.x, o.y });
  const FpPoint pd = fp_place_unpoint (&turn, (FpPoint) { d.x, d.y });
  /* Shrunk to the unit sphere. */
  const FpVec3 so = { po.x / s->rx, po.y / s->ry, (o.z - s->cz) / s->rz };
  const FpVec3 sd = { pd.x / s->rx, pd.y / s->ry, d.z / s->rz };

  return first_negative ((Stretch) { 0, 1 }, fp_vec3_dot (sd, sd), fp_vec3_dot (so, sd), fp_vec3_dot (so, so) - 1, t);
}

gboolean
fp_solid_ray (const FpSolid *s, FpVec3 from, FpVec3 to, double *t)
{
  const FpVec3 d = fp_vec3_sub (to, from);
  double enters = 0;
  gboolean meets = FALSE;

  switch (s->shape)
    {
    case FP_SOLID_PRISM: meets = ray_prism (s, from, d, &enters); break;
    case FP_SOLID_ROUND: meets = ray_round (s, from, d, &enters); break;
    case FP_SOLID_ELLIPSOID: meets = ray_ellipsoid (s, from, d, &enters); break;
    }
  if (meets && t != NULL)
    *t = enters;
  return meets;
}
