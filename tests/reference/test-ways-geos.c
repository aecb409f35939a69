/* SPDX-License-Identifier: GPL-3.0-or-later */
/* How wide a body gets over random floors, against two other ways to find it:
 *  - floors eroded by GEOS (geos.osgeo.org): just above the width that was found two places lie apart, just below together;
 *  - a fine grid: each point as far from everything as it is, the widest path from point to neighbour by trying.
 * The floors are random piers, square and round, on a hall with a free strip at either end.
 */
#include "church.h"

#include "footpace/room-to-move.h"

#include <math.h>

#define GEOS_USE_ONLY_R_API
#include <geos_c.h>

#define FLOORS  300
#define LENGTH  6000.0
#define BREADTH 3600.0
#define STRIP   1000.0 /* free at either end */
#define CELL    60.0
#define QUARTER 64     /* pieces of a quarter circle: it lies within by 0.1 mm at 1 m */

static const FpPoint from = { STRIP / 2, BREADTH / 2 }, to = { LENGTH - STRIP / 2, BREADTH / 2 };

static FpProject *
random_floor (GRand *rand)
{
  FpProject *p = church_new (FP_FACING_EAST);
  const guint n = (guint) g_rand_int_range (rand, 1, 12);

  church_floor (&p, "floor", (FpBox) { 0, 0, LENGTH, BREADTH }, 0, 0, 0, 0);
  for (guint i = 0; i < n; i++)
    {
      g_autofree char *id = g_strdup_printf ("pier-%u", i);
      const double width = g_rand_double_range (rand, 80, 1100), reach = width * 0.75;
      const ChurchThing thing = { "pier", id, NULL,
                                  { g_rand_double_range (rand, STRIP + reach, LENGTH - STRIP - reach),
                                    g_rand_double_range (rand, 0, BREADTH), g_rand_double_range (rand, 0, 90) },
                                  NULL, 0, { { "shape", g_rand_int_range (rand, 0, 3) }, { "width", width } } };
      church_survey (&p, &thing);
    }
  return p;
}

/* --- GEOS --------------------------------------------------------------------------- */

static GEOSGeometry *
ring_of (GEOSContextHandle_t geos, const FpRing *ring)
{
  GEOSCoordSequence *s = GEOSCoordSeq_create_r (geos, ring->n + 1, 2);

  for (guint i = 0; i <= ring->n; i++)
    GEOSCoordSeq_setXY_r (geos, s, i, ring->pt[i % ring->n].x, ring->pt[i % ring->n].y);
  return GEOSGeom_createLinearRing_r (geos, s);
}

/* All that is free, as one area. */
static GEOSGeometry *
free_area (GEOSContextHandle_t geos, const FpScene *scene)
{
  guint n;
  const FpFreeLevel *level = fp_free_floor_levels (fp_scene_free_floor (scene), &n);
  g_autoptr (GPtrArray) areas = g_ptr_array_new ();

  g_assert_cmpuint (n, ==, 1);
  for (guint i = 0; i < level->rings->len;)
    {
      GEOSGeometry *outer = ring_of (geos, &g_array_index (level->rings, FpRing, i++));
      g_autoptr (GPtrArray) holes = g_ptr_array_new ();
      while (i < level->rings->len && g_array_index (level->rings, FpRing, i).hole)
        g_ptr_array_add (holes, ring_of (geos, &g_array_index (level->rings, FpRing, i++)));
      g_ptr_array_add (areas, GEOSGeom_createPolygon_r (geos, outer, (GEOSGeometry **) holes->pdata, holes->len));
    }
  return GEOSGeom_createCollection_r (geos, GEOS_MULTIPOLYGON, (GEOSGeometry **) areas->pdata, areas->len);
}

/* Whether the middle of a body so wide gets there: both lie in one piece of what is left. */
static gboolean
gets_through (GEOSContextHandle_t geos, const GEOSGeometry *area, double width)
{
  GEOSGeometry *left = GEOSBuffer_r (geos, area, -width / 2, QUARTER);
  GEOSGeometry *a = GEOSGeom_createPointFromXY_r (geos, from.x, from.y), *b = GEOSGeom_createPointFromXY_r (geos, to.x, to.y);
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

/* --- a grid --------------------------------------------------------------------------- */

#define NX ((guint) (LENGTH / CELL) + 1)
#define NY ((guint) (BREADTH / CELL) + 1)

static FpPoint
grid_point (guint i)
{
  return (FpPoint) { (i % NX) * CELL, (i / NX) * CELL };
}

static guint
root_of (guint *up, guint i)
{
  while (up[i] != i)
    i = up[i] = up[up[i]];
  return i;
}

typedef struct { double clear; guint at; } Cell;

static int
clearest_first (gconstpointer a, gconstpointer b)
{
  const Cell *x = a, *y = b;

  return (x->clear < y->clear) - (x->clear > y->clear);
}

static double
clear_at (const FpFreeFloor *floor, FpPoint at)
{
  guint n;
  const FpFreeLevel *level = fp_free_floor_levels (floor, &n);
  double least = G_MAXDOUBLE;

  if (fp_free_floor_level_at (floor, at) < 0)
    return 0;
  for (guint i = 0; i < level->rings->len; i++)
    {
      const FpRing *ring = &g_array_index (level->rings, FpRing, i);
      for (guint k = 0; k < ring->n; k++)
        least = MIN (least, fp_segment_distance (ring->pt[k], ring->pt[(k + 1) % ring->n], at));
    }
  return least;
}

/* Points are let in, the clearest first, until begin and end hang together. */
static double
grid_width (const FpScene *scene)
{
  const guint n = NX * NY, a = (guint) round (from.x / CELL) + NX * (guint) round (from.y / CELL);
  const guint b = (guint) round (to.x / CELL) + NX * (guint) round (to.y / CELL);
  g_autofree Cell *cell = g_new (Cell, n);
  g_autofree guint *up = g_new (guint, n);
  g_autofree gboolean *in = g_new0 (gboolean, n);

  for (guint i = 0; i < n; i++)
    {
      cell[i] = (Cell) { clear_at (fp_scene_free_floor (scene), grid_point (i)), i };
      up[i] = i;
    }
  qsort (cell, n, sizeof *cell, clearest_first);
  for (guint k = 0; k < n && cell[k].clear > 0; k++)
    {
      const guint at = cell[k].at, x = at % NX, y = at / NX;

      in[at] = TRUE;
      for (guint i = x > 0 ? x - 1 : 0; i <= MIN (x + 1, NX - 1); i++)
        for (guint j = y > 0 ? y - 1 : 0; j <= MIN (y + 1, NY - 1); j++)
          if (in[i + NX * j])
            up[root_of (up, at)] = root_of (up, i + NX * j);
      if (root_of (up, a) == root_of (up, b))
        return 2 * cell[k].clear;
    }
  return 0;
}

/* --- held against each other -------------------------------------------------------------- */

/* A way between two points of the grid may pass a corner nearer than either, but by no more than half the step of it. */
#define GRID_MORE (CELL * G_SQRT2 / 2)

static void
hold_against_grid (const FpScene *scene, const FpWay *way)
{
  const double on_grid = grid_width (scene);

  /* Each point of a way has one of the grid within half a cell's diagonal; where it begins, no more than the strip is free. */
  g_assert_cmpfloat (MIN (way->width, STRIP), <=, on_grid + CELL * G_SQRT2 + way->tolerance + 0.01);
  if (on_grid > FP_WAY_LEAST + 2 * GRID_MORE)
    g_assert_cmpfloat (way->width, >=, MIN (on_grid, STRIP) - 2 * GRID_MORE * GRID_MORE / on_grid - 0.01);
}

static void
hold_against_geos (GEOSContextHandle_t geos, const FpScene *scene, const FpWay *way)
{
  GEOSGeometry *area = free_area (geos, scene);

  if (way->width == 0)
    g_assert_false (gets_through (geos, area, FP_WAY_LEAST + 0.5));
  else if (way->width < STRIP - 1)
    {
      g_assert_false (gets_through (geos, area, way->width + 0.5));
      g_assert_true (gets_through (geos, area, way->width - way->tolerance - 0.1));
    }
  GEOSGeom_destroy_r (geos, area);
}

/* The route has room for the body all along. */
static void
hold_route (const FpScene *scene, const FpWay *way)
{
  for (guint i = 1; i < way->n_route; i++)
    for (guint k = 0; k <= 20; k++)
      {
        const FpPoint a = way->route[i - 1], b = way->route[i];
        const FpPoint at = { a.x + (b.x - a.x) * k / 20.0, a.y + (b.y - a.y) * k / 20.0 };
        const double clear = 2 * clear_at (fp_scene_free_floor (scene), at);
        g_assert_cmpfloat (clear, >=, way->width - 2 * FP_WAY_PIECE * FP_WAY_PIECE / (4 * way->width) - 0.1);
      }
}

static void
test_random (void)
{
  GRand *rand = g_rand_new_with_seed (20260301);
  GEOSContextHandle_t geos = GEOS_init_r ();
  guint through = 0;

  for (guint i = 0; i < FLOORS; i++)
    {
      FpProject *p = random_floor (rand);
      g_autoptr (FpScene) scene = fp_scene_new (p, 0);
      const FpWayEnd a = { from, 10 }, b = { to, 10 };
      g_autoptr (FpWay) way = fp_way_widest (scene, FP_GAIT_ON_WHEELS, &a, &b, NULL, 0);

      g_test_message ("floor %u: %g", i, way->width);
      hold_against_geos (geos, scene, way);
      hold_against_grid (scene, way);
      hold_route (scene, way);
      through += way->width > 0 ? 1 : 0;
      fp_project_unref (p);
    }
  g_assert_cmpuint (through, >, FLOORS / 2); /* the floors are worth trying */
  g_assert_cmpuint (through, <, FLOORS);
  GEOS_finish_r (geos);
  g_rand_free (rand);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/ways/random-floors", test_random);
  return g_test_run ();
}
