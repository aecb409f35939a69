/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The free floor of the parish sample, all ways over it on foot and on wheels, and the widest from the west door to the altar,
 * against finding that one width by eroding the same floor with GEOS (geos.osgeo.org) by halves until it is known to 1 mm.
 *
 * The aim is a ratio: all ways take no longer than two such widths.
 */
#include "footpace/room-to-move.h"
#include "footpace/store.h"

#include <stdlib.h>

#define GEOS_USE_ONLY_R_API
#include <geos_c.h>

#define TIMES 9
#define AIM   2.0

static const FpWayEnd west_door = { { 0, -24000 }, 800 }, altar = { { 0, 4000 }, 800 };

static GEOSGeometry *
ring_of (GEOSContextHandle_t geos, const FpRing *ring)
{
  GEOSCoordSequence *s = GEOSCoordSeq_create_r (geos, ring->n + 1, 2);

  for (guint i = 0; i <= ring->n; i++)
    GEOSCoordSeq_setXY_r (geos, s, i, ring->pt[i % ring->n].x, ring->pt[i % ring->n].y);
  return GEOSGeom_createLinearRing_r (geos, s);
}

static void
add_level (GEOSContextHandle_t geos, const FpFreeLevel *level, GPtrArray *areas)
{
  for (guint i = 0; i < level->rings->len;)
    {
      GEOSGeometry *outer = ring_of (geos, &g_array_index (level->rings, FpRing, i++));
      g_autoptr (GPtrArray) holes = g_ptr_array_new ();
      while (i < level->rings->len && g_array_index (level->rings, FpRing, i).hole)
        g_ptr_array_add (holes, ring_of (geos, &g_array_index (level->rings, FpRing, i++)));
      g_ptr_array_add (areas, GEOSGeom_createPolygon_r (geos, outer, (GEOSGeometry **) holes->pdata, holes->len));
    }
}

/* The levels together: steps are taken. */
static GEOSGeometry *
free_area (GEOSContextHandle_t geos, const FpScene *scene)
{
  guint n;
  const FpFreeLevel *level = fp_free_floor_levels (fp_scene_free_floor (scene), &n);
  g_autoptr (GPtrArray) areas = g_ptr_array_new ();
  GEOSGeometry *all, *out;

  for (guint i = 0; i < n; i++)
    add_level (geos, &level[i], areas);
  all = GEOSGeom_createCollection_r (geos, GEOS_GEOMETRYCOLLECTION, (GEOSGeometry **) areas->pdata, areas->len);
  out = GEOSUnaryUnion_r (geos, all);
  GEOSGeom_destroy_r (geos, all);
  return out;
}

static gboolean
gets_through (GEOSContextHandle_t geos, const GEOSGeometry *area, double width)
{
  GEOSGeometry *left = GEOSBuffer_r (geos, area, -width / 2, 8);
  GEOSGeometry *a = GEOSGeom_createPointFromXY_r (geos, west_door.at.x, west_door.at.y);
  GEOSGeometry *b = GEOSGeom_createPointFromXY_r (geos, altar.at.x, altar.at.y);
  gboolean found = FALSE;

  for (int i = 0; i < GEOSGetNumGeometries_r (geos, left) && !found; i++)
    {
      const GEOSGeometry *one = GEOSGetGeometryN_r (geos, left, i);
      found = GEOSContains_r (geos, one, a) == 1 && GEOSContains_r (geos, one, b) == 1;
    }
  GEOSGeom_destroy_r (geos, a);
  GEOSGeom_destroy_r (geos, b);
  GEOSGeom_destroy_r (geos, left);
  return found;
}

static double
by_halves (GEOSContextHandle_t geos, const FpScene *scene)
{
  GEOSGeometry *area = free_area (geos, scene);
  double lo = 0, hi = 4000;

  while (hi - lo > 1)
    *(gets_through (geos, area, (lo + hi) / 2) ? &lo : &hi) = (lo + hi) / 2;
  GEOSGeom_destroy_r (geos, area);
  return lo;
}

static int
by_time (const void *a, const void *b)
{
  const gint64 p = *(const gint64 *) a, q = *(const gint64 *) b;

  return (p > q) - (p < q);
}

static double
middle (gint64 *took)
{
  qsort (took, TIMES, sizeof *took, by_time);
  return (double) took[TIMES / 2] / 1e3;
}

int
main (int argc, char **argv)
{
  const char *path = argc == 2 ? argv[1] : "parish.footpace";
  g_autoptr (FpProject) project = fp_store_load (path, NULL);
  GEOSContextHandle_t geos = GEOS_init_r ();
  gint64 ours[TIMES], theirs[TIMES], floors[TIMES];
  double width = 0, halved = 0, ratio;

  if (project == NULL)
    g_error ("%s cannot be read", path);
  for (guint i = 0; i < TIMES; i++)
    {
      g_autoptr (FpScene) scene = fp_scene_new (project, fp_project_n_alternatives (project) - 1);
      const gint64 begun = g_get_monotonic_time ();
      gint64 between;

      fp_scene_free_floor (scene);
      floors[i] = g_get_monotonic_time () - begun;
      {
        g_autoptr (FpWay) way = fp_way_widest (scene, FP_GAIT_ON_FOOT, &west_door, &altar, NULL, 0);
        width = way->width;
      }
      between = g_get_monotonic_time ();
      ours[i] = between - begun;
      halved = by_halves (geos, scene);
      theirs[i] = g_get_monotonic_time () - between;
    }
  GEOS_finish_r (geos);
  ratio = middle (ours) / middle (theirs);
  g_print ("by halves: %.0f mm in %.1f ms\nall ways: %.1f mm in %.1f ms, of which the free floor %.1f ms; %.2f times as long; "
           "aim: at most %.2f%s\n", halved, middle (theirs), width, middle (ours), middle (floors), ratio, AIM,
           ratio <= AIM ? "" : " MISSED");
  return ratio <= AIM ? 0 : 1;
}
