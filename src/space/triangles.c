/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "triangles.h"

#include <math.h>
#include <stdlib.h>

#define GEOS_USE_ONLY_R_API
#include <geos_c.h>

int
fp_point_order (gconstpointer a, gconstpointer b)
{
  const FpPoint *p = a, *q = b;

  if (p->x != q->x)
    return p->x < q->x ? -1 : 1;
  return (p->y > q->y) - (p->y < q->y);
}

/* --- read from GEOS --------------------------------------------------------------- */

static GEOSGeometry *
triangulated (GEOSContextHandle_t geos, const FpPoint *pt, guint n)
{
  GEOSCoordSequence *all = GEOSCoordSeq_create_r (geos, n, 2);
  GEOSGeometry *line, *out;

  for (guint i = 0; all != NULL && i < n; i++)
    GEOSCoordSeq_setXY_r (geos, all, i, pt[i].x, pt[i].y);
  /* Only the corners of the line count. */
  line = all != NULL ? GEOSGeom_createLineString_r (geos, all) : NULL; /* takes them */
  out = line != NULL ? GEOSDelaunayTriangulation_r (geos, line, 0, 0) : NULL;
  GEOSGeom_destroy_r (geos, line);
  return out;
}

/* From one corner, so that large coordinates take nothing away. */
static gboolean
circle_through (FpPoint a, FpPoint b, FpPoint c, FpPoint *centre, double *radius)
{
  const double bx = b.x - a.x, by = b.y - a.y, cx = c.x - a.x, cy = c.y - a.y, d = 2 * (bx * cy - by * cx);
  const double bb = bx * bx + by * by, cc = cx * cx + cy * cy;
  const double x = (cy * bb - by * cc) / d, y = (bx * cc - cx * bb) / d;

  if (d == 0 || !isfinite (x) || !isfinite (y))
    return FALSE;
  *centre = (FpPoint) { a.x + x, a.y + y };
  *radius = hypot (x, y);
  return TRUE;
}

static gboolean
read_triangle (GEOSContextHandle_t geos, const GEOSGeometry *one, const FpPoint *pt, guint n, FpTriangle *out)
{
  const GEOSCoordSequence *ring = GEOSGeom_getCoordSeq_r (geos, GEOSGetExteriorRing_r (geos, one));
  FpPoint corner[3];

  for (guint k = 0; k < 3; k++)
    {
      const FpPoint *found;
      if (GEOSCoordSeq_getXY_r (geos, ring, k, &corner[k].x, &corner[k].y) != 1)
        return FALSE;
      found = bsearch (&corner[k], pt, n, sizeof *pt, fp_point_order);
      if (found == NULL)
        return FALSE;
      out->corner[k] = (guint) (found - pt);
      out->beyond[k] = -1;
    }
  return circle_through (corner[0], corner[1], corner[2], &out->centre, &out->radius);
}

/* --- which lies beside which -------------------------------------------------------- */

typedef struct { guint lo, hi, triangle, side; } Side;

static int
by_ends (gconstpointer a, gconstpointer b)
{
  const Side *x = a, *y = b;

  if (x->lo != y->lo)
    return x->lo < y->lo ? -1 : 1;
  return (x->hi > y->hi) - (x->hi < y->hi);
}

static void
find_neighbours (GArray *triangles)
{
  FpTriangle *t = (FpTriangle *) (gpointer) triangles->data;
  const guint n = triangles->len * 3;
  g_autofree Side *side = g_new (Side, n + 1);

  for (guint i = 0; i < n; i++)
    {
      const guint a = t[i / 3].corner[i % 3], b = t[i / 3].corner[(i + 1) % 3];
      side[i] = (Side) { MIN (a, b), MAX (a, b), i / 3, i % 3 };
    }
  qsort (side, n, sizeof *side, by_ends);
  for (guint i = 0; i + 1 < n; i++)
    if (by_ends (&side[i], &side[i + 1]) == 0)
      {
        t[side[i].triangle].beyond[side[i].side] = (int) side[i + 1].triangle;
        t[side[i + 1].triangle].beyond[side[i + 1].side] = (int) side[i].triangle;
      }
}

GArray *
fp_triangles_new (const FpPoint *pt, guint n)
{
  GArray *out = g_array_new (FALSE, FALSE, sizeof (FpTriangle));
  GEOSContextHandle_t geos;
  GEOSGeometry *all;
  int count;

  if (n < 3)
    return out;
  geos = GEOS_init_r ();
  all = triangulated (geos, pt, n);
  count = all != NULL ? GEOSGetNumGeometries_r (geos, all) : 0;
  for (int i = 0; i < count; i++)
    {
      FpTriangle one;
      if (read_triangle (geos, GEOSGetGeometryN_r (geos, all, i), pt, n, &one))
        g_array_append_val (out, one);
    }
  GEOSGeom_destroy_r (geos, all);
  GEOS_finish_r (geos);
  find_neighbours (out);
  return out;
}
