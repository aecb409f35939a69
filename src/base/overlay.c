/* SPDX-License-Identifier: GPL-3.0-or-later */
/* overlay.c - what two outlines both cover, and what is left of it, by GEOS
 *
 * GEOS throws on an outline that crosses itself; its C interface turns that
 * into a NULL, which is answered by repairing both outlines and trying again.
 */
#include "footpace/geom.h"

#include <math.h>

#define GEOS_USE_ONLY_R_API
#include <geos_c.h>

static GEOSGeometry *
polygon_new (GEOSContextHandle_t geos, const FpPoint *pt, gsize n)
{
  GEOSCoordSequence *corners = GEOSCoordSeq_create_r (geos, (unsigned int) n + 1, 2);
  GEOSGeometry *ring;

  for (gsize i = 0; corners != NULL && i <= n; i++)
    GEOSCoordSeq_setXY_r (geos, corners, (unsigned int) i, pt[i % n].x, pt[i % n].y);
  ring = corners != NULL ? GEOSGeom_createLinearRing_r (geos, corners) : NULL; /* takes the corners */
  return ring != NULL ? GEOSGeom_createPolygon_r (geos, ring, NULL, 0) : NULL; /* takes the ring */
}

static double
area_of (GEOSContextHandle_t geos, const GEOSGeometry *shape)
{
  double area = 0;

  return shape != NULL && GEOSArea_r (geos, shape, &area) == 1 && isfinite (area) ? area : 0;
}

static GEOSGeometry *
common_repaired (GEOSContextHandle_t geos, const GEOSGeometry *a, const GEOSGeometry *b)
{
  GEOSGeometry *fair_a = GEOSMakeValid_r (geos, a), *fair_b = GEOSMakeValid_r (geos, b);
  GEOSGeometry *common = fair_a != NULL && fair_b != NULL ? GEOSIntersection_r (geos, fair_a, fair_b) : NULL;

  GEOSGeom_destroy_r (geos, fair_a);
  GEOSGeom_destroy_r (geos, fair_b);
  return common;
}

static double
common_area (GEOSContextHandle_t geos, const GEOSGeometry *a, const GEOSGeometry *b)
{
  const gboolean fair = GEOSisValid_r (geos, a) == 1 && GEOSisValid_r (geos, b) == 1;
  GEOSGeometry *common = fair ? GEOSIntersection_r (geos, a, b) : NULL;
  double area;

  if (common == NULL)
    common = common_repaired (geos, a, b);
  area = area_of (geos, common);
  GEOSGeom_destroy_r (geos, common);
  return area;
}

static gboolean
usable (const FpPoint *pt, gsize n)
{
  if (n < 3 || n > G_MAXINT)
    return FALSE;
  for (gsize i = 0; i < n; i++)
    if (!isfinite (pt[i].x) || !isfinite (pt[i].y))
      return FALSE;
  return TRUE;
}

double
fp_outlines_common_area (const FpPoint *a, gsize na, const FpPoint *b, gsize nb)
{
  GEOSContextHandle_t geos;
  GEOSGeometry *shape_a, *shape_b;
  FpBox box_a, box_b;
  double area = 0;

  if (!usable (a, na) || !usable (b, nb))
    return 0;
  box_a = fp_outline_box (a, na);
  box_b = fp_outline_box (b, nb);
  if (!fp_box_overlaps (&box_a, &box_b))
    return 0;

  /* A context of its own for each call: any thread may ask. */
  geos = GEOS_init_r ();
  shape_a = polygon_new (geos, a, na);
  shape_b = polygon_new (geos, b, nb);
  if (shape_a != NULL && shape_b != NULL)
    area = common_area (geos, shape_a, shape_b);
  GEOSGeom_destroy_r (geos, shape_a);
  GEOSGeom_destroy_r (geos, shape_b);
  GEOS_finish_r (geos);
  return area;
}

/* --- with others cut away ------------------------------------------------------ */

#define SLIVER 1000.0 /* mm2 */

static void
clear_ring (gpointer ring)
{
  g_free (((FpRing *) ring)->pt);
}

GArray *
fp_rings_new (void)
{
  GArray *rings = g_array_new (FALSE, FALSE, sizeof (FpRing));

  g_array_set_clear_func (rings, clear_ring);
  return rings;
}

void
fp_rings_add (GArray *rings, const FpPoint *pt, gsize n, gboolean hole)
{
  const FpRing ring = { g_memdup2 (pt, n * sizeof *pt), (guint) n, hole };

  g_array_append_val (rings, ring);
}

/* The first corner is not repeated at the end. */
static void
add_geos_ring (GEOSContextHandle_t geos, const GEOSGeometry *line, gboolean hole, GArray *out)
{
  const GEOSCoordSequence *corners = GEOSGeom_getCoordSeq_r (geos, line);
  unsigned int n = 0;

  if (corners == NULL || GEOSCoordSeq_getSize_r (geos, corners, &n) != 1 || n < 4)
    return;
  FpRing ring = { g_new0 (FpPoint, n - 1), n - 1, hole };
  for (unsigned int i = 0; i < ring.n; i++)
    GEOSCoordSeq_getXY_r (geos, corners, i, &ring.pt[i].x, &ring.pt[i].y);
  g_array_append_val (out, ring);
}

static void
add_polygons (GEOSContextHandle_t geos, const GEOSGeometry *shape, GArray *out)
{
  const int n = shape != NULL ? GEOSGetNumGeometries_r (geos, shape) : 0;

  for (int i = 0; i < n; i++)
    {
      const GEOSGeometry *one = GEOSGetGeometryN_r (geos, shape, i);
      if (GEOSGeomTypeId_r (geos, one) != GEOS_POLYGON || area_of (geos, one) < SLIVER)
        continue;
      add_geos_ring (geos, GEOSGetExteriorRing_r (geos, one), FALSE, out);
      for (int k = 0; k < GEOSGetNumInteriorRings_r (geos, one); k++)
        add_geos_ring (geos, GEOSGetInteriorRingN_r (geos, one, k), TRUE, out);
    }
}

/* Of all of them together; NULL where there are none. */
static GEOSGeometry *
union_of (GEOSContextHandle_t geos, const GArray *rings)
{
  g_autofree GEOSGeometry **each = g_new0 (GEOSGeometry *, rings->len + 1);
  GEOSGeometry *all, *joined;
  unsigned int n = 0;

  for (guint i = 0; i < rings->len; i++)
    {
      const FpRing *ring = &g_array_index (rings, FpRing, i);
      GEOSGeometry *shape = !ring->hole && usable (ring->pt, ring->n) ? polygon_new (geos, ring->pt, ring->n) : NULL;
      if (shape != NULL)
        each[n++] = shape;
    }
  if (n == 0)
    return NULL;
  all = GEOSGeom_createCollection_r (geos, GEOS_MULTIPOLYGON, each, n); /* takes them */
  joined = all != NULL ? GEOSUnaryUnion_r (geos, all) : NULL;
  GEOSGeom_destroy_r (geos, all);
  return joined;
}

GArray *
fp_outlines_common_less (const FpPoint *a, gsize na, const FpPoint *b, gsize nb, const GArray *less)
{
  GArray *out = fp_rings_new ();
  GEOSContextHandle_t geos;
  GEOSGeometry *shape_a, *shape_b, *common = NULL, *away, *left = NULL;

  if (!usable (a, na) || !usable (b, nb))
    return out;
  geos = GEOS_init_r ();
  shape_a = polygon_new (geos, a, na);
  shape_b = polygon_new (geos, b, nb);
  away = union_of (geos, less);
  if (shape_a != NULL && shape_b != NULL)
    common = common_repaired (geos, shape_a, shape_b);
  if (common != NULL && away != NULL)
    left = GEOSDifference_r (geos, common, away);
  add_polygons (geos, away != NULL ? left : common, out);
  GEOSGeom_destroy_r (geos, left);
  GEOSGeom_destroy_r (geos, away);
  GEOSGeom_destroy_r (geos, common);
  GEOSGeom_destroy_r (geos, shape_a);
  GEOSGeom_destroy_r (geos, shape_b);
  GEOS_finish_r (geos);
  return out;
}
