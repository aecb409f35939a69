/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "solid-overlap.h"

#include <math.h>
#include <string.h>

double
fp_box3_overlap (const FpBox3 *a, const FpBox3 *b)
{
  const double x = MIN (a->hi.x - b->lo.x, b->hi.x - a->lo.x), y = MIN (a->hi.y - b->lo.y, b->hi.y - a->lo.y);
  const double z = MIN (a->hi.z - b->lo.z, b->hi.z - a->lo.z);

  return MIN (MIN (x, y), z);
}

/* --- outlines in convex parts --------------------------------------------- */

/* Parts of as many corners each, one after the other. */
typedef struct
{
  const FpPoint *pt;
  guint          n_each, n_parts;
  FpPoint       *owned;
  FpPoint        ring[FP_OVERLAP_SIDES];
} Outline;

static gboolean
is_ear (const FpPoint *pt, const guint *left, guint n, guint i)
{
  const FpPoint tip[3] = { pt[left[(i + n - 1) % n]], pt[left[i]], pt[left[(i + 1) % n]] };

  if (fp_orient (tip[0], tip[1], tip[2]) <= 0)
    return FALSE;
  for (guint k = 2; k + 1 < n; k++)
    {
      const FpPoint p = pt[left[(i + k) % n]];
      if (fp_orient (tip[0], tip[1], p) >= 0 && fp_orient (tip[1], tip[2], p) >= 0
          && fp_orient (tip[2], tip[0], p) >= 0)
        return FALSE;
    }
  return TRUE;
}

/* Triangles of a simple outline that runs counter-clockwise, by cutting off its ears. */
static void
cut_into_triangles (Outline *self, const FpPoint *pt, guint n)
{
  g_autofree guint *left = g_new (guint, n);
  guint n_left = n;

  self->pt = self->owned = g_new (FpPoint, 3 * (gsize) n);
  self->n_each = 3;
  for (guint i = 0; i < n; i++)
    left[i] = i;
  for (guint i = 0, tried = 0; n_left > 2 && tried < n_left;)
    {
      const guint before = (i + n_left - 1) % n_left, after = (i + 1) % n_left;
      const gboolean flat = fp_orient (pt[left[before]], pt[left[i]], pt[left[after]]) == 0;
      if (!flat && !is_ear (pt, left, n_left, i))
        {
          i = after;
          tried++;
          continue;
        }
      if (!flat)
        {
          FpPoint *part = &self->owned[3 * self->n_parts++];
          part[0] = pt[left[before]];
          part[1] = pt[left[i]];
          part[2] = pt[left[after]];
        }
      n_left--;
      memmove (&left[i], &left[i + 1], (n_left - i) * sizeof *left);
      i %= n_left;
      tried = 0;
    }
}

static void
outline_of_prism (Outline *self, const FpSolid *s, gboolean whole)
{
  *self = (Outline) { .pt = s->outline, .n_each = s->n_outline, .n_parts = 1 };
  if (whole || fp_outline_is_convex (s->outline, s->n_outline))
    return;
  self->n_parts = 0;
  cut_into_triangles (self, s->outline, s->n_outline);
}

/* The widest that a round body is between two levels. */
static void
radii_between (const FpSolid *s, double lo, double hi, double *rx, double *ry)
{
  if (s->shape == FP_SOLID_ROUND)
    {
      const double slope = (s->r1 - s->r0) / (s->z1 - s->z0);
      *rx = *ry = MAX (s->r0 + slope * (MAX (lo, s->z0) - s->z0), s->r0 + slope * (MIN (hi, s->z1) - s->z0));
      return;
    }
  const double off = (CLAMP (s->cz, lo, hi) - s->cz) / s->rz, share = sqrt (MAX (1 - off * off, 0));
  *rx = s->rx * share;
  *ry = s->ry * share;
}

static void
outline_of_round (Outline *self, const FpSolid *s, double lo, double hi)
{
  const FpPlace place = { s->cx, s->cy, s->shape == FP_SOLID_ELLIPSOID ? s->turn : 0 };
  double rx, ry;

  *self = (Outline) { .n_each = FP_OVERLAP_SIDES, .n_parts = 1 };
  radii_between (s, lo, hi, &rx, &ry);
  for (guint i = 0; i < FP_OVERLAP_SIDES; i++)
    {
      const double turn = 2 * G_PI * i / FP_OVERLAP_SIDES;
      self->ring[i] = fp_place_point (&place, (FpPoint) { rx * cos (turn), ry * sin (turn) });
    }
  self->pt = self->ring;
}

/* --- two outlines ----------------------------------------------------------- */

static double
left_of (FpPoint p, FpPoint q, FpPoint at)
{
  return (q.x - p.x) * (at.y - p.y) - (q.y - p.y) * (at.x - p.x);
}

/* How far they reach into each other across that side of @a across which it is least; 0 or less: a line along it
 * parts them. */
static double
depth_along_sides (const FpPoint *a, guint na, const FpPoint *b, guint nb, double least, FpPoint *way)
{
  double depth = G_MAXDOUBLE;

  for (guint i = 0; i < na && depth > least; i++)
    {
      const FpPoint p = a[i], q = a[(i + 1) % na];
      const double length = hypot (q.x - p.x, q.y - p.y);
      double own = 0, other = -G_MAXDOUBLE;
      if (!(length > 0))
        continue;
      for (guint k = 0; k < na; k++)
        own = MIN (own, left_of (p, q, a[k]));
      for (guint k = 0; k < nb; k++)
        other = MAX (other, left_of (p, q, b[k]));
      if ((other - own) / length >= depth)
        continue;
      depth = (other - own) / length;
      *way = (FpPoint) { (p.y - q.y) / length, (q.x - p.x) / length };
    }
  return depth;
}

/* Exact for convex outlines; others may lie apart where this says that they do not. */
static double
level_depth (const FpPoint *a, guint na, const FpPoint *b, guint nb, double least, FpPoint *way)
{
  const double along_a = depth_along_sides (a, na, b, nb, least, way);
  FpPoint other;
  double along_b;

  if (!(along_a > least))
    return along_a;
  along_b = depth_along_sides (b, nb, a, na, least, &other);
  if (along_b < along_a)
    *way = other;
  return MIN (along_a, along_b);
}

/* Keeps of @pt what lies to the left of p-q. */
static guint
keep_left (const FpPoint *pt, guint n, FpPoint p, FpPoint q, FpPoint *out)
{
  guint m = 0;

  for (guint i = 0; i < n; i++)
    {
      const FpPoint a = pt[i], b = pt[(i + 1) % n];
      const double da = left_of (p, q, a), db = left_of (p, q, b), t = da / (da - db);
      if (da >= 0)
        out[m++] = a;
      if ((da > 0 && db < 0) || (da < 0 && db > 0))
        out[m++] = (FpPoint) { a.x + t * (b.x - a.x), a.y + t * (b.y - a.y) };
    }
  return m;
}

/* What two convex outlines both cover. */
static FpPoint *
common_outline (const FpPoint *a, guint na, const FpPoint *b, guint nb, guint *n)
{
  FpPoint *now = g_new (FpPoint, na + nb), *next = g_new (FpPoint, na + nb);

  memcpy (now, b, nb * sizeof *b);
  *n = nb;
  for (guint i = 0; i < na; i++)
    {
      FpPoint *swap = now;
      *n = keep_left (now, *n, a[i], a[(i + 1) % na], next);
      now = next;
      next = swap;
    }
  g_free (next);
  return now;
}

/* --- heights ---------------------------------------------------------------- */

static double
top_at (const FpSolid *s, FpPoint p)
{
  return s->shape == FP_SOLID_PRISM ? fp_solid_top_at (s, p.x, p.y) : s->z1;
}

static double
foot_at (const FpSolid *s, FpPoint p)
{
  return s->shape == FP_SOLID_PRISM ? fp_solid_foot_at (s, p.x, p.y) : s->z0;
}

/* How far one must be lifted or lowered over a point to be clear of the other; @z: the middle of what they share. */
static double
upright_depth (const FpSolid *a, const FpSolid *b, FpPoint p, double *z)
{
  const double top_a = top_at (a, p), top_b = top_at (b, p), foot_a = foot_at (a, p), foot_b = foot_at (b, p);

  *z = (MIN (top_a, top_b) + MAX (foot_a, foot_b)) / 2;
  return MIN (top_a - foot_b, top_b - foot_a);
}

/* The most of it over an outline: where nothing slopes it is the same everywhere. */
static double
upright_depth_over (const FpSolid *a, const FpSolid *b, const FpPoint *pt, guint n, FpVec3 *at)
{
  const FpPoint middle = fp_outline_centroid (pt, n);
  double most;

  *at = (FpVec3) { middle.x, middle.y, 0 };
  most = upright_depth (a, b, middle, &at->z);
  for (guint i = 0; i < n; i++)
    {
      double z, depth = upright_depth (a, b, pt[i], &z);
      if (depth > most)
        {
          most = depth;
          *at = (FpVec3) { pt[i].x, pt[i].y, z };
        }
    }
  return most;
}

/* --- two solids ------------------------------------------------------------- */

static double
part_overlap (const FpSolid *a, const FpPoint *pa, guint na, const FpSolid *b, const FpPoint *pb, guint nb,
              double least, FpVec3 *at, FpVec3 *way)
{
  FpPoint across = { 0, 0 };
  const double level = level_depth (pa, na, pb, nb, least, &across);
  g_autofree FpPoint *common = NULL;
  double upright;
  guint n = 0;

  if (!(level > least))
    return 0;
  common = common_outline (pa, na, pb, nb, &n);
  if (n < 3)
    return 0;
  upright = upright_depth_over (a, b, common, n, at);
  *way = upright < level ? (FpVec3) { 0, 0, 1 } : (FpVec3) { across.x, across.y, 0 };
  return MIN (level, upright);
}

static void
outline_of (Outline *self, const FpSolid *s, const FpBox3 *other, gboolean whole)
{
  if (s->shape == FP_SOLID_PRISM)
    outline_of_prism (self, s, whole);
  else
    outline_of_round (self, s, other->lo.z, other->hi.z);
}

static gboolean
may_overlap (const FpSolid *a, const FpBox3 *box_a, const FpSolid *b, const FpBox3 *box_b, double least)
{
  Outline of_a, of_b;
  FpPoint way;

  outline_of (&of_a, a, box_b, TRUE);
  outline_of (&of_b, b, box_a, TRUE);
  return level_depth (of_a.pt, of_a.n_each, of_b.pt, of_b.n_each, least, &way) > least;
}

double
fp_solid_overlap (const FpSolid *a, const FpSolid *b, double least, FpVec3 *at, FpVec3 *way)
{
  const FpBox3 box_a = fp_solid_box (a), box_b = fp_solid_box (b);
  double most = 0;
  Outline of_a, of_b;

  if (!(fp_box3_overlap (&box_a, &box_b) > least) || !may_overlap (a, &box_a, b, &box_b, least))
    return 0;
  outline_of (&of_a, a, &box_b, FALSE);
  outline_of (&of_b, b, &box_a, FALSE);
  for (guint i = 0; i < of_a.n_parts; i++)
    for (guint k = 0; k < of_b.n_parts; k++)
      {
        FpVec3 here, along;
        const double depth = part_overlap (a, of_a.pt + i * of_a.n_each, of_a.n_each, b, of_b.pt + k * of_b.n_each,
                                           of_b.n_each, least, &here, &along);
        if (depth > MAX (most, least))
          {
            most = depth;
            *at = here;
            *way = along;
          }
      }
  g_free (of_a.owned);
  g_free (of_b.owned);
  return most;
}
