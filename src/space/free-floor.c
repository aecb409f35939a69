/* SPDX-License-Identifier: GPL-3.0-or-later */
/* free-floor.c - the free floor, level by level, overlaid by GEOS
 *
 * From the highest downward: what lies above is cut from what lies below it,
 * then what stands there is cut from both.
 */
#include "free-floor-private.h"
#include "scene-private.h"

#include <math.h>
#include <string.h>

#define GEOS_USE_ONLY_R_API
#include <geos_c.h>

#define SAME_LEVEL 0.5    /* mm: floors that differ less are one                    */
#define SAME_SLOPE 1e-6
#define SLIVER     1000.0 /* mm2: what is left over by arithmetic, and by surveys   */

struct _FpFreeFloor
{
  GArray *levels; /* (element-type FpFreeLevel)  */
  GArray *joints; /* (element-type FpLevelJoint) */
};

/* A level while it is made. */
typedef struct
{
  FpWalked      plane;
  GEOSGeometry *area;
} Making;

typedef struct
{
  GEOSContextHandle_t geos;
  const FpScene      *scene;
  GArray             *making;  /* (element-type Making)                    */
  GEOSGeometry       *covered; /* by what lies higher; NULL: nothing yet   */
} Maker;

/* --- areas --------------------------------------------------------------------- */

static gboolean
is_finite_outline (const FpPoint *pt, guint n)
{
  for (guint i = 0; i < n; i++)
    if (!isfinite (pt[i].x) || !isfinite (pt[i].y))
      return FALSE;
  return n >= 3;
}

/* NULL where the outline bounds nothing. */
static GEOSGeometry *
area_new (GEOSContextHandle_t geos, const FpPoint *pt, guint n)
{
  GEOSCoordSequence *corners = is_finite_outline (pt, n) ? GEOSCoordSeq_create_r (geos, n + 1, 2) : NULL;
  GEOSGeometry *ring, *area, *fair;

  for (guint i = 0; corners != NULL && i <= n; i++)
    GEOSCoordSeq_setXY_r (geos, corners, i, pt[i % n].x, pt[i % n].y);
  ring = corners != NULL ? GEOSGeom_createLinearRing_r (geos, corners) : NULL; /* takes the corners */
  area = ring != NULL ? GEOSGeom_createPolygon_r (geos, ring, NULL, 0) : NULL; /* takes the ring    */
  if (area == NULL || GEOSisValid_r (geos, area) == 1)
    return area;
  fair = GEOSMakeValid_r (geos, area);
  GEOSGeom_destroy_r (geos, area);
  return fair;
}

typedef GEOSGeometry *(*Overlay) (GEOSContextHandle_t, const GEOSGeometry *, const GEOSGeometry *);

/* Takes @a; what cannot be overlaid leaves it as it was. */
static GEOSGeometry *
overlaid (const Maker *self, Overlay overlay, GEOSGeometry *a, const GEOSGeometry *b)
{
  GEOSGeometry *out;

  if (a == NULL || b == NULL)
    return a;
  out = overlay (self->geos, a, b);
  if (out == NULL)
    return a;
  GEOSGeom_destroy_r (self->geos, a);
  return out;
}

/* --- what is walked on ------------------------------------------------------------ */

static gboolean
is_one_plane (const FpWalked *a, const FpWalked *b)
{
  const FpPoint at = fp_outline_centroid (b->outline, b->n_outline);

  return fabs (a->gx - b->gx) < SAME_SLOPE && fabs (a->gy - b->gy) < SAME_SLOPE
         && fabs (a->z + a->gx * at.x + a->gy * at.y - b->z - b->gx * at.x - b->gy * at.y) < SAME_LEVEL;
}

/* Into the level that lies in the same plane and serves alike, or a new one; takes @area. */
static void
add_to_level (Maker *self, const FpWalked *walked, GEOSGeometry *area)
{
  for (guint i = 0; i < self->making->len; i++)
    {
      Making *making = &g_array_index (self->making, Making, i);
      if (!is_one_plane (&making->plane, walked)
          || (making->plane.use != walked->use && !walked->is_step))
        continue;
      making->area = overlaid (self, GEOSUnion_r, making->area, area);
      GEOSGeom_destroy_r (self->geos, area);
      return;
    }
  g_array_append_val (self->making, ((Making) { *walked, area }));
}

static void
lay_floors (Maker *self)
{
  g_autoptr (GArray) walked = fp_walked_new (self->scene);

  for (guint i = 0; i < walked->len; i++)
    {
      const FpWalked *one = &g_array_index (walked, FpWalked, i);
      GEOSGeometry *whole = area_new (self->geos, one->outline, one->n_outline);

      if (whole == NULL)
        continue;
      add_to_level (self, one, overlaid (self, GEOSDifference_r, GEOSGeom_clone_r (self->geos, whole), self->covered));
      if (self->covered == NULL)
        self->covered = GEOSGeom_clone_r (self->geos, whole);
      else
        self->covered = overlaid (self, GEOSUnion_r, self->covered, whole);
      GEOSGeom_destroy_r (self->geos, whole);
    }
}

/* --- what stands there -------------------------------------------------------------- */

static gboolean
stands_in_way (const Making *making, const FpSolid *solid, const FpBox3 *box)
{
  const FpPoint at = { (box->lo.x + box->hi.x) / 2, (box->lo.y + box->hi.y) / 2 };
  const double floor = making->plane.z + making->plane.gx * at.x + making->plane.gy * at.y;
  const gboolean slopes = solid->shape == FP_SOLID_PRISM && (solid->bx != 0 || solid->by != 0);
  const double foot = slopes ? fp_solid_foot_at (solid, at.x, at.y) : box->lo.z;

  return box->hi.z > floor + FP_FREE_UNEVEN && foot < floor + FP_FREE_HEAD;
}

static FpBox
box_of_area (const Maker *self, const GEOSGeometry *area)
{
  FpBox box = FP_BOX_EMPTY;

  if (GEOSGeom_getExtent_r (self->geos, area, &box.x0, &box.y0, &box.x1, &box.y1) != 1)
    return FP_BOX_EMPTY;
  return box;
}

/* Of all that stands on a level; NULL where nothing does. */
static GEOSGeometry *
standing_on (const Maker *self, const Making *making)
{
  guint n, n_solids;
  const FpSolid *solid = fp_scene_solids (self->scene, &n_solids);
  const FpBox level = box_of_area (self, making->area);
  g_autoptr (GPtrArray) each = g_ptr_array_new ();
  GEOSGeometry *all, *joined;

  for (guint i = 0; i < n_solids; i++)
    {
      const FpBox3 box = fp_solid_box (&solid[i]);
      const FpBox plan = { box.lo.x, box.lo.y, box.hi.x, box.hi.y };
      g_autofree FpPoint *pt = NULL;
      GEOSGeometry *area;

      if (!fp_box_overlaps (&plan, &level) || !fp_solid_is_in_the_way (self->scene, &solid[i])
          || !stands_in_way (making, &solid[i], &box))
        continue;
      pt = fp_solid_plan (&solid[i], &n);
      area = area_new (self->geos, pt, n);
      if (area != NULL)
        g_ptr_array_add (each, area);
    }
  if (each->len == 0)
    return NULL;
  all = GEOSGeom_createCollection_r (self->geos, GEOS_GEOMETRYCOLLECTION, (GEOSGeometry **) each->pdata, each->len);
  joined = all != NULL ? GEOSUnaryUnion_r (self->geos, all) : NULL;
  GEOSGeom_destroy_r (self->geos, all);
  return joined;
}

static void
take_away (Maker *self)
{
  for (guint i = 0; i < self->making->len; i++)
    {
      Making *making = &g_array_index (self->making, Making, i);
      GEOSGeometry *standing = standing_on (self, making);

      making->area = overlaid (self, GEOSDifference_r, making->area, standing);
      GEOSGeom_destroy_r (self->geos, standing);
    }
}

/* --- as rings -------------------------------------------------------------------------- */

static void
add_ring (GEOSContextHandle_t geos, const GEOSGeometry *line, gboolean hole, GArray *out)
{
  const GEOSCoordSequence *corners = line != NULL ? GEOSGeom_getCoordSeq_r (geos, line) : NULL;
  unsigned int n = 0;
  FpRing ring;

  if (corners == NULL || GEOSCoordSeq_getSize_r (geos, corners, &n) != 1 || n < 4)
    return;
  ring = (FpRing) { g_new0 (FpPoint, n - 1), n - 1, hole };
  for (unsigned int i = 0; i < ring.n; i++)
    GEOSCoordSeq_getXY_r (geos, corners, i, &ring.pt[i].x, &ring.pt[i].y);
  g_array_append_val (out, ring);
}

static void
add_rings (GEOSContextHandle_t geos, const GEOSGeometry *area, GArray *out)
{
  const int n = area != NULL ? GEOSGetNumGeometries_r (geos, area) : 0;

  for (int i = 0; i < n; i++)
    {
      const GEOSGeometry *one = GEOSGetGeometryN_r (geos, area, i);
      double size = 0;

      if (GEOSGeomTypeId_r (geos, one) != GEOS_POLYGON || GEOSArea_r (geos, one, &size) != 1 || size < SLIVER)
        continue;
      add_ring (geos, GEOSGetExteriorRing_r (geos, one), FALSE, out);
      for (int k = 0; k < GEOSGetNumInteriorRings_r (geos, one); k++)
        add_ring (geos, GEOSGetInteriorRingN_r (geos, one, k), TRUE, out);
    }
}

static void
clear_level (gpointer level)
{
  g_array_unref (((FpFreeLevel *) level)->rings);
}

static void
read_levels (Maker *self, GArray *levels)
{
  for (guint i = 0; i < self->making->len; i++)
    {
      const Making *making = &g_array_index (self->making, Making, i);
      FpFreeLevel level = { making->plane.z, making->plane.gx, making->plane.gy, making->plane.use, making->plane.owner,
                            fp_rings_new () };

      add_rings (self->geos, making->area, level.rings);
      GEOSGeom_destroy_r (self->geos, making->area);
      if (level.rings->len > 0)
        g_array_append_val (levels, level);
      else
        g_array_unref (level.rings);
    }
}

/* --- made and kept ------------------------------------------------------------------------ */

static gpointer
free_floor_new (const FpScene *scene)
{
  FpFreeFloor *self = g_new0 (FpFreeFloor, 1);
  /* A context of its own: any thread may make one. */
  Maker maker = { .geos = GEOS_init_r (), .scene = scene, .making = g_array_new (FALSE, FALSE, sizeof (Making)) };

  self->levels = g_array_new (FALSE, FALSE, sizeof (FpFreeLevel));
  g_array_set_clear_func (self->levels, clear_level);
  lay_floors (&maker);
  take_away (&maker);
  read_levels (&maker, self->levels);
  self->joints = fp_level_joints_new ((const FpFreeLevel *) (gpointer) self->levels->data, self->levels->len);
  GEOSGeom_destroy_r (maker.geos, maker.covered);
  g_array_unref (maker.making);
  GEOS_finish_r (maker.geos);
  return self;
}

static void
free_floor_free (gpointer data)
{
  FpFreeFloor *self = data;

  g_array_unref (self->levels);
  g_array_unref (self->joints);
  g_free (self);
}

const FpFreeFloor *
fp_scene_free_floor (const FpScene *scene)
{
  return fp_scene_keep (scene, FP_KEPT_FREE_FLOOR, free_floor_new, free_floor_free);
}

const FpFreeLevel *
fp_free_floor_levels (const FpFreeFloor *self, guint *n)
{
  *n = self->levels->len;
  return (const FpFreeLevel *) (gpointer) self->levels->data;
}

const FpLevelJoint *
fp_free_floor_joints (const FpFreeFloor *self, guint *n)
{
  *n = self->joints->len;
  return (const FpLevelJoint *) (gpointer) self->joints->data;
}

int
fp_free_floor_level_at (const FpFreeFloor *self, FpPoint at)
{
  for (guint i = 0; i < self->levels->len; i++)
    {
      const FpFreeLevel *level = &g_array_index (self->levels, FpFreeLevel, i);
      gboolean inside = FALSE;

      for (guint k = 0; k < level->rings->len; k++)
        {
          const FpRing *ring = &g_array_index (level->rings, FpRing, k);
          inside ^= fp_outline_contains (ring->pt, ring->n, at);
        }
      if (inside)
        return (int) i;
    }
  return -1;
}
