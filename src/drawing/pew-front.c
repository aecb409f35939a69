/* SPDX-License-Identifier: GPL-3.0-or-later */
/* pew-front.c - which of two pieces stands before the other
 *
 * A plane that has one on either side tells: what lies on the eye's side of
 * it cannot be hidden by what lies beyond.  Of upright things with level
 * tops one of their own faces is always such a plane; for ellipsoids one is
 * sought by reflection (K. Chung, W. Wang, "Quick collision detection of
 * polytopes in virtual environments", VRST 1996, from memory).
 */
#include "pew-private.h"

#include <math.h>

#define OFF 1e-9 /* of the picture plane: a millionth of a dot */
#define SEARCH_MOST 24 /* steps; bodies that are some way apart need two or three */

/* Along some direction the first ends at @a, and the second begins at @b, which is not less; the eye is at 0. */
static FpFront
by_side (double a, double b)
{
  if (a <= FP_PEW_TOUCH && b >= -FP_PEW_TOUCH)
    return FP_FRONT_NEITHER;
  return b < 0 ? FP_FRONT_SECOND : FP_FRONT_FIRST;
}

static FpFront
swapped (FpFront front)
{
  return front == FP_FRONT_FIRST ? FP_FRONT_SECOND : front == FP_FRONT_SECOND ? FP_FRONT_FIRST : front;
}

static gboolean
by_axis (double a0, double a1, double b0, double b1, FpFront *front)
{
  if (a1 <= b0 + FP_PEW_TOUCH)
    *front = by_side (a1, b0);
  else if (b1 <= a0 + FP_PEW_TOUCH)
    *front = swapped (by_side (b1, a0));
  else
    return FALSE;
  return TRUE;
}

static gboolean
by_boxes (const FpBox3 *a, const FpBox3 *b, FpFront *front)
{
  return by_axis (a->lo.y, a->hi.y, b->lo.y, b->hi.y, front) || by_axis (a->lo.z, a->hi.z, b->lo.z, b->hi.z, front)
         || by_axis (a->lo.x, a->hi.x, b->lo.x, b->hi.x, front);
}

/* By a face of the first. */
static gboolean
by_facets (const FpConvex *first, const FpConvex *second, FpFront *front)
{
  for (guint i = 0; i < first->n_facets; i++)
    {
      const FpFacet *facet = &first->facet[i];
      const double least = fp_convex_least (second, facet->n);
      if (least < facet->d - FP_PEW_TOUCH)
        continue;
      *front = by_side (facet->d, least);
      return TRUE;
    }
  return FALSE;
}

/* --- ellipsoids ------------------------------------------------------------------- */

static FpVec3
farthest (const FpConvex *self, FpVec3 n)
{
  FpVec3 p = self->centre;
  guint best = 0;
  double most = -G_MAXDOUBLE, length = 0;

  if (self->round)
    {
      for (guint i = 0; i < 3; i++)
        length += fp_vec3_dot (n, self->axis[i]) * fp_vec3_dot (n, self->axis[i]);
      for (guint i = 0; i < 3 && length > 0; i++)
        p = fp_vec3_add (p, fp_vec3_scale (self->axis[i], fp_vec3_dot (n, self->axis[i]) / sqrt (length)));
      return p;
    }
  for (guint i = 0; i < self->n_vertices; i++)
    if (fp_vec3_dot (n, self->vertex[i]) > most)
      {
        most = fp_vec3_dot (n, self->vertex[i]);
        best = i;
      }
  return self->vertex[best];
}

static FpVec3
middle (const FpConvex *self)
{
  return self->round ? self->centre : fp_vec3_scale (fp_vec3_add (self->box.lo, self->box.hi), 0.5);
}

static gboolean
by_search (const FpConvex *first, const FpConvex *second, FpFront *front)
{
  FpVec3 n = fp_vec3_sub (middle (second), middle (first));

  for (guint i = 0; i < SEARCH_MOST; i++)
    {
      const double length = fp_vec3_length (n);
      FpVec3 r;
      if (!(length > 0))
        return FALSE;
      n = fp_vec3_scale (n, 1 / length);
      const FpVec3 p = farthest (first, n), q = farthest (second, fp_vec3_scale (n, -1));
      if (fp_vec3_dot (n, fp_vec3_sub (q, p)) >= -FP_PEW_TOUCH)
        {
          *front = by_side (fp_vec3_dot (n, p), fp_vec3_dot (n, q));
          return TRUE;
        }
      r = fp_vec3_sub (q, p);
      r = fp_vec3_scale (r, 1 / fp_vec3_length (r));
      n = fp_vec3_sub (n, fp_vec3_scale (r, 2 * fp_vec3_dot (n, r)));
    }
  return FALSE;
}

FpFront
fp_convex_front (const FpConvex *first, const FpConvex *second)
{
  FpFront front;

  if (by_boxes (&first->box, &second->box, &front) || by_facets (first, second, &front))
    return front;
  if (by_facets (second, first, &front))
    return swapped (front);
  if ((first->round || second->round) && by_search (first, second, &front))
    return front;
  return FP_FRONT_MEET;
}

/* --- in the picture ------------------------------------------------------------------ */

/* Whether a side of @a has all of @b beyond it. */
static gboolean
is_parted (const FpConvex *a, const FpConvex *b)
{
  for (guint i = 0; i < a->n_outline; i++)
    {
      const FpPoint p = a->outline[i], q = a->outline[(i + 1) % a->n_outline];
      const double x = q.x - p.x, y = q.y - p.y, length = hypot (x, y);
      guint k = 0;
      /* The shortest sides point nowhere. */
      while (length > OFF && k < b->n_outline
             && x * (b->outline[k].y - p.y) - y * (b->outline[k].x - p.x) <= OFF * length)
        k++;
      if (length > OFF && k == b->n_outline)
        return TRUE;
    }
  return FALSE;
}

gboolean
fp_outlines_overlap (const FpConvex *a, const FpConvex *b)
{
  return !is_parted (a, b) && !is_parted (b, a);
}
