/* SPDX-License-Identifier: GPL-3.0-or-later */
/* outline.c - what can be asked of an outline */
#include "footpace/geom.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

double
fp_outline_area (const FpPoint *pt, gsize n)
{
  double twice = 0;

  /* Measure from the first corner, not from the origin: a small shape far
   * away would otherwise lose its area to cancellation. */
  for (gsize i = 1; i + 1 < n; i++)
    twice += (pt[i].x - pt[0].x) * (pt[i + 1].y - pt[0].y) - (pt[i + 1].x - pt[0].x) * (pt[i].y - pt[0].y);
  return twice / 2;
}

static FpPoint
mean_of_corners (const FpPoint *pt, gsize n)
{
  FpPoint sum = { 0, 0 };

  if (n == 0)
    return sum;
  for (gsize i = 0; i < n; i++)
    {
      sum.x += pt[i].x;
      sum.y += pt[i].y;
    }
  return (FpPoint) { sum.x / (double) n, sum.y / (double) n };
}

FpPoint
fp_outline_centroid (const FpPoint *pt, gsize n)
{
  double twice = 0, mx = 0, my = 0;

  for (gsize i = 1; i + 1 < n; i++)
    {
      const double ax = pt[i].x - pt[0].x, ay = pt[i].y - pt[0].y;
      const double bx = pt[i + 1].x - pt[0].x, by = pt[i + 1].y - pt[0].y;
      const double cross = ax * by - bx * ay;
      twice += cross;
      mx += cross * (ax + bx);
      my += cross * (ay + by);
    }
  if (twice == 0)
    return mean_of_corners (pt, n);
  return (FpPoint) { pt[0].x + mx / (3 * twice), pt[0].y + my / (3 * twice) };
}

FpBox
fp_outline_box (const FpPoint *pt, gsize n)
{
  FpBox box = FP_BOX_EMPTY;

  for (gsize i = 0; i < n; i++)
    fp_box_add_point (&box, pt[i]);
  return box;
}

gboolean
fp_outline_contains (const FpPoint *pt, gsize n, FpPoint p)
{
  gboolean inside = FALSE;

  for (gsize i = 0; n >= 3 && i < n; i++)
    {
      const FpPoint a = pt[i], b = pt[i + 1 == n ? 0 : i + 1];
      if ((a.y > p.y) != (b.y > p.y) && (fp_orient (a, b, p) > 0) == (b.y > a.y))
        inside = !inside;
    }
  return inside;
}

gboolean
fp_outline_is_convex (const FpPoint *pt, gsize n)
{
  int way = 0;
  double turned = 0;

  for (gsize i = 0; i < n; i++)
    {
      const FpPoint a = pt[i], b = pt[(i + 1) % n], c = pt[(i + 2) % n];
      const int turn = fp_orient (a, b, c);
      const double ux = b.x - a.x, uy = b.y - a.y, vx = c.x - b.x, vy = c.y - b.y;
      if (turn != 0 && way != 0 && turn != way)
        return FALSE;
      way = turn != 0 ? turn : way;
      turned += atan2 (ux * vy - uy * vx, ux * vx + uy * vy);
    }
  /* A star turns the same way throughout, but goes round more than once. */
  return n >= 3 && way != 0 && fabs (turned) < 3 * G_PI;
}

static gboolean
between (double a, double b, double v)
{
  return v >= MIN (a, b) && v <= MAX (a, b);
}

/* @p is known to be collinear with a-b. */
static gboolean
lies_on (FpPoint a, FpPoint b, FpPoint p)
{
  return between (a.x, b.x, p.x) && between (a.y, b.y, p.y);
}

static FpPoint
crossing_point (FpPoint a, FpPoint b, FpPoint c, FpPoint d)
{
  const double ux = b.x - a.x, uy = b.y - a.y, vx = d.x - c.x, vy = d.y - c.y;
  const double det = ux * vy - uy * vx;
  const double t = det != 0 ? CLAMP (((c.x - a.x) * vy - (c.y - a.y) * vx) / det, 0.0, 1.0) : 0.5;

  return (FpPoint) { a.x + t * ux, a.y + t * uy };
}

static gboolean
segments_meet (FpPoint a, FpPoint b, FpPoint c, FpPoint d, FpPoint *where)
{
  int ac, ad, ca, cb;

  if (MAX (a.x, b.x) < MIN (c.x, d.x) || MAX (c.x, d.x) < MIN (a.x, b.x)
      || MAX (a.y, b.y) < MIN (c.y, d.y) || MAX (c.y, d.y) < MIN (a.y, b.y))
    return FALSE;
  ac = fp_orient (a, b, c);
  ad = fp_orient (a, b, d);
  ca = fp_orient (c, d, a);
  cb = fp_orient (c, d, b);
  if (ac == 0 && lies_on (a, b, c))
    *where = c;
  else if (ad == 0 && lies_on (a, b, d))
    *where = d;
  else if (ca == 0 && lies_on (c, d, a))
    *where = a;
  else if (cb == 0 && lies_on (c, d, b))
    *where = b;
  else if (ac * ad < 0 && ca * cb < 0)
    *where = crossing_point (a, b, c, d);
  else
    return FALSE;
  return TRUE;
}

/* Whether the side b-c runs back over a-b. */
static gboolean
folds_back (FpPoint a, FpPoint b, FpPoint c)
{
  return fp_orient (a, b, c) == 0 && (b.x - a.x) * (c.x - b.x) + (b.y - a.y) * (c.y - b.y) < 0;
}

/* A run of n corners has n sides when it is closed, n - 1 when it is open. */
static gboolean
find_crossing (const FpPoint *pt, gsize n, gboolean closed, FpPoint *where)
{
  const gsize sides = closed ? n : MAX (n, 1) - 1;

  for (gsize i = 0; i < sides; i++)
    {
      const FpPoint a = pt[i], b = pt[(i + 1) % n];
      *where = b;
      if ((a.x == b.x && a.y == b.y) || ((closed || i + 1 < sides) && folds_back (a, b, pt[(i + 2) % n])))
        return TRUE;
      for (gsize k = i + 2; k < sides; k++)
        if (!(closed && i == 0 && k == n - 1) && segments_meet (a, b, pt[k], pt[(k + 1) % n], where))
          return TRUE;
    }
  return FALSE;
}

gboolean
fp_outline_crosses_itself (const FpPoint *pt, gsize n, FpPoint *where)
{
  FpPoint at = { 0, 0 };
  const gboolean crosses = find_crossing (pt, n, TRUE, &at);

  if (crosses && where != NULL)
    *where = at;
  return crosses;
}

gboolean
fp_run_crosses_itself (const FpPoint *pt, gsize n, FpPoint *where)
{
  FpPoint at = { 0, 0 };
  const gboolean crosses = find_crossing (pt, n, FALSE, &at);

  if (crosses && where != NULL)
    *where = at;
  return crosses;
}

/* --- hulls ----------------------------------------------------------------- */

static int
by_place (gconstpointer a, gconstpointer b)
{
  const FpPoint *p = a, *q = b;

  return p->x != q->x ? (p->x > q->x) - (p->x < q->x) : (p->y > q->y) - (p->y < q->y);
}

/* Half a hull: the points as they come, less those at which it would not turn left. */
static guint
add_half (const FpPoint *pt, guint n_pt, gboolean back, FpPoint *hull, guint n)
{
  const guint first = n;

  for (guint i = 0; i < n_pt; i++)
    {
      const FpPoint p = pt[back ? n_pt - 1 - i : i];
      while (n >= first + 2 && fp_orient (hull[n - 2], hull[n - 1], p) <= 0)
        n--;
      hull[n++] = p;
    }
  return n - 1; /* the last begins the other half */
}

guint
fp_hull (FpPoint *pt, guint n)
{
  g_autofree FpPoint *hull = g_new (FpPoint, 2 * n + 2);
  guint corners;

  if (n == 0)
    return 0;
  qsort (pt, n, sizeof *pt, by_place);
  corners = add_half (pt, n, FALSE, hull, 0);
  corners = add_half (pt, n, TRUE, hull, corners);
  memcpy (pt, hull, corners * sizeof *pt);
  return corners;
}
