/* SPDX-License-Identifier: GPL-3.0-or-later */
/* orient.c - on which side of a line a point lies, without error
 *
 * After J. R. Shewchuk, "Adaptive Precision Floating-Point Arithmetic and Fast
 * Robust Geometric Predicates", Discrete & Computational Geometry 18 (1997)
 * 305-363: a bound on the rounding error decides nearly always; where it
 * cannot, the determinant is summed as an expansion, exactly.
 */
#include "footpace/geom.h"

#include <float.h>
#include <math.h>

/* (3 + 16 u) u with u = 2^-53: Shewchuk's ccwerrboundA. */
#define UNIT (DBL_EPSILON / 2)
#define BOUND ((3.0 + 16.0 * UNIT) * UNIT)

/* A sum of doubles that do not overlap, smallest first, whose value is exact. */
typedef struct
{
  double part[16];
  guint  n;
} Expansion;

static void
expansion_add (Expansion *e, double b)
{
  double q = b;
  guint m = 0;

  for (guint i = 0; i < e->n; i++)
    {
      const double sum = q + e->part[i];
      const double bv = sum - q;
      const double rest = (q - (sum - bv)) + (e->part[i] - bv);
      if (rest != 0)
        e->part[m++] = rest;
      q = sum;
    }
  if (q != 0)
    e->part[m++] = q;
  e->n = m;
}

static void
expansion_add_product (Expansion *e, double a, double b)
{
  const double high = a * b;

  expansion_add (e, fma (a, b, -high));
  expansion_add (e, high);
}

static int
sign_of (double v)
{
  return (v > 0) - (v < 0);
}

static int
orient_exact (FpPoint a, FpPoint b, FpPoint c)
{
  Expansion e = { .n = 0 };

  expansion_add_product (&e, a.x, b.y);
  expansion_add_product (&e, -a.x, c.y);
  expansion_add_product (&e, -b.x, a.y);
  expansion_add_product (&e, b.x, c.y);
  expansion_add_product (&e, c.x, a.y);
  expansion_add_product (&e, -c.x, b.y);
  /* The largest part is last and outweighs all the others together. */
  return e.n > 0 ? sign_of (e.part[e.n - 1]) : 0;
}

int
fp_orient (FpPoint a, FpPoint b, FpPoint c)
{
  const double left = (a.x - c.x) * (b.y - c.y), right = (a.y - c.y) * (b.x - c.x);
  const double det = left - right;

  if (fabs (det) > BOUND * (fabs (left) + fabs (right)))
    return sign_of (det);
  return orient_exact (a, b, c);
}
