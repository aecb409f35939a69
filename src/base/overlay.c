/* SPDX-License-Identifier: GPL-3.0-or-later */
/* overlay.c - what two outlines both cover, by GEOS
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
