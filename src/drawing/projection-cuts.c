/* SPDX-License-Identifier: GPL-3.0-or-later */
/* projection-cuts.c - the cut faces of a thing made one, by GEOS (geos.osgeo.org) */
#include "projection-private.h"

#include <math.h>

#define GEOS_USE_ONLY_R_API
#include <geos_c.h>

typedef struct
{
  guint      owner;
  double     depth;
  FpSketch  *sketch; /* gets the borders as edges    */
  FpEdgeType type;
  GArray    *cuts;   /* gets the outlines; may be NULL */
} Joining;

static GEOSGeometry *
polygon_new (GEOSContextHandle_t geos, const FpCutPiece *piece)
{
  GEOSCoordSequence *corners = GEOSCoordSeq_create_r (geos, piece->n + 1, 2);
  GEOSGeometry *ring;

  for (guint i = 0; corners != NULL && i <= piece->n; i++)
    GEOSCoordSeq_setXY_r (geos, corners, i, piece->pt[i % piece->n].x, piece->pt[i % piece->n].y);
  ring = corners != NULL ? GEOSGeom_createLinearRing_r (geos, corners) : NULL; /* takes the corners */
  return ring != NULL ? GEOSGeom_createPolygon_r (geos, ring, NULL, 0) : NULL; /* takes the ring */
}

/* The corners of a ring, the first not repeated, without those on a straight line between their neighbours. */
static GArray *
ring_points_new (GEOSContextHandle_t geos, const GEOSGeometry *ring)
{
  const GEOSCoordSequence *corners = GEOSGeom_getCoordSeq_r (geos, ring);
  GArray *pt = g_array_new (FALSE, FALSE, sizeof (FpPoint));
  unsigned int n = 0;

  GEOSCoordSeq_getSize_r (geos, corners, &n);
  for (unsigned int i = 0; i + 1 < n; i++)
    {
      FpPoint before, p, after;
      GEOSCoordSeq_getXY_r (geos, corners, (i + n - 2) % (n - 1), &before.x, &before.y);
      GEOSCoordSeq_getXY_r (geos, corners, i, &p.x, &p.y);
      GEOSCoordSeq_getXY_r (geos, corners, i + 1, &after.x, &after.y);
      if (fp_segment_distance (before, after, p) > FP_CUT_GRID)
        g_array_append_val (pt, p);
    }
  return pt;
}

static const FpPoint *
points_of (const GArray *ring)
{
  return (const FpPoint *) (gconstpointer) ring->data;
}

static void
add_border (const Joining *j, FpPoint a, FpPoint b)
{
  const FpEdge edge = { { a.x, a.y, j->depth }, { b.x, b.y, j->depth }, j->owner, G_MAXUINT, FALSE, { -1, -1 },
                        j->type, FP_WEIGHT_WIDE, FP_PEN_CUT };

  g_array_append_val (j->sketch->edges, edge);
}

static void
add_borders (const Joining *j, const GArray *ring)
{
  for (guint i = 0; i < ring->len; i++)
    add_border (j, points_of (ring)[i], points_of (ring)[(i + 1) % ring->len]);
}

/* Outer rings run counter-clockwise, holes clockwise, so that areas add up. */
static void
append_ring (GArray *outline, const GArray *ring, gboolean counter_clockwise)
{
  const gboolean turn = (fp_outline_area (points_of (ring), ring->len) > 0) != counter_clockwise;

  for (guint i = 0; i < ring->len; i++)
    g_array_append_val (outline, points_of (ring)[turn ? (ring->len - i) % ring->len : i]);
}

/* A hole is reached and left by the same slit from the first corner. */
static void
append_hole (GArray *outline, const GArray *ring)
{
  const FpPoint first = points_of (outline)[0];

  g_array_append_val (outline, first);
  append_ring (outline, ring, FALSE);
  g_array_append_val (outline, points_of (ring)[0]);
}

static void
take_outline (const Joining *j, const GArray *outline)
{
  const FpProjectedCut cut = {
    .n = outline->len,
    .owner = j->owner,
    .outline = g_memdup2 (outline->data, outline->len * sizeof (FpPoint)),
  };

  g_array_append_val (j->cuts, cut);
}

static void
take_polygon (GEOSContextHandle_t geos, const GEOSGeometry *polygon, const Joining *j)
{
  g_autoptr (GArray) outer = ring_points_new (geos, GEOSGetExteriorRing_r (geos, polygon));
  g_autoptr (GArray) outline = g_array_new (FALSE, FALSE, sizeof (FpPoint));
  const int holes = GEOSGetNumInteriorRings_r (geos, polygon);

  if (outer->len < 3)
    return;
  add_borders (j, outer);
  append_ring (outline, outer, TRUE);
  for (int i = 0; i < holes; i++)
    {
      g_autoptr (GArray) hole = ring_points_new (geos, GEOSGetInteriorRingN_r (geos, polygon, i));
      if (hole->len < 3)
        continue;
      add_borders (j, hole);
      append_hole (outline, hole);
    }
  if (j->cuts != NULL)
    take_outline (j, outline);
}

/* Any mixture of geometries that a union may give: only areas count. */
static void
take_areas (GEOSContextHandle_t geos, const GEOSGeometry *shape, const Joining *j)
{
  const int n = shape != NULL ? GEOSGetNumGeometries_r (geos, shape) : 0;

  for (int i = 0; i < n; i++)
    {
      const GEOSGeometry *part = GEOSGetGeometryN_r (geos, shape, i);
      if (GEOSGeomTypeId_r (geos, part) == GEOS_POLYGON && GEOSisEmpty_r (geos, part) == 0)
        take_polygon (geos, part, j);
    }
}

/* A convex piece that stands alone needs no union. */
static gboolean
take_alone (const FpCutPiece *piece, guint n, const Joining *j)
{
  g_autoptr (GArray) ring = NULL, outline = NULL;

  if (n != 1 || !fp_outline_is_convex (piece->pt, piece->n))
    return FALSE;
  ring = g_array_new (FALSE, FALSE, sizeof (FpPoint));
  outline = g_array_new (FALSE, FALSE, sizeof (FpPoint));
  g_array_append_vals (ring, piece->pt, piece->n);
  append_ring (outline, ring, TRUE);
  add_borders (j, outline);
  if (j->cuts != NULL)
    take_outline (j, outline);
  return TRUE;
}

static GEOSGeometry *
union_new (GEOSContextHandle_t geos, const FpCutPiece *piece, guint n)
{
  g_autofree GEOSGeometry **part = g_new (GEOSGeometry *, n);
  GEOSGeometry *all, *joined;
  guint made = 0;

  for (guint i = 0; i < n; i++)
    if ((part[made] = polygon_new (geos, &piece[i])) != NULL)
      made++;
  all = GEOSGeom_createCollection_r (geos, GEOS_MULTIPOLYGON, part, made); /* takes the parts */
  if (all == NULL)
    return NULL;
  joined = GEOSUnaryUnionPrec_r (geos, all, FP_CUT_GRID);
  if (joined == NULL)
    {
      /* An outline that is not simple: better in pieces than not at all. */
      joined = GEOSMakeValid_r (geos, all);
    }
  GEOSGeom_destroy_r (geos, all);
  return joined;
}

static void
take_union (GEOSContextHandle_t geos, const FpCutPiece *piece, guint n, const Joining *j)
{
  GEOSGeometry *joined = union_new (geos, piece, n);

  take_areas (geos, joined, j);
  GEOSGeom_destroy_r (geos, joined);
}

static void
clear_piece (gpointer data)
{
  FpCutPiece *piece = data;

  g_free (piece->pt);
}

/* Of one thing. */
static int
compare_pieces (gconstpointer pa, gconstpointer pb)
{
  const FpCutPiece *a = pa, *b = pb;

  if (a->fabric != b->fabric)
    return a->fabric < b->fabric ? -1 : 1;
  return (a->depth > b->depth) - (a->depth < b->depth);
}

/* The pieces of one thing, as entered: copies are joined, so that the next projection can see what these were. */
static GArray *
copies_new (const FpCutPiece *piece, guint n)
{
  GArray *copies = g_array_sized_new (FALSE, FALSE, sizeof (FpCutPiece), n);

  g_array_set_clear_func (copies, clear_piece);
  for (guint i = 0; i < n; i++)
    {
      FpCutPiece copy = piece[i];
      copy.pt = g_memdup2 (piece[i].pt, piece[i].n * sizeof (FpPoint));
      g_array_append_val (copies, copy);
    }
  return copies;
}

/* Of one fabric after the other. */
static void
join_thing (GEOSContextHandle_t geos, const FpCutPiece *own, guint n, Joining *j)
{
  g_autoptr (GArray) pieces = copies_new (own, n);
  const FpCutPiece *piece;
  guint i = 0;

  fp_cut_strips_join (pieces);
  g_array_sort (pieces, compare_pieces);
  piece = (const FpCutPiece *) (gconstpointer) pieces->data;
  j->owner = piece->owner;
  while (i < pieces->len)
    {
      guint k = i + 1;
      while (k < pieces->len && piece[k].fabric == piece[i].fabric)
        k++;
      j->depth = piece[k - 1].depth;
      if (!take_alone (piece + i, k - i, j))
        take_union (geos, piece + i, k - i, j);
      i = k;
    }
}

static void
join_or_take (GEOSContextHandle_t geos, const FpCutPiece *piece, FpJoined *joined, Joining *j, FpAgain *again)
{
  joined->edge = j->sketch->edges->len;
  joined->cut = j->cuts != NULL ? j->cuts->len : 0;
  if (again == NULL || !fp_again_take_joined (again, j->sketch, joined, j->cuts == NULL, j->cuts))
    {
      join_thing (geos, piece, joined->n_pieces, j);
      if (again != NULL)
        fp_again_note_edges (again, j->sketch);
    }
  joined->n_edges = j->sketch->edges->len - joined->edge;
  joined->n_cuts = j->cuts != NULL ? j->cuts->len - joined->cut : 0;
}

/* Solids come thing by thing, and so do the pieces. */
static void
join_all (GEOSContextHandle_t geos, const GArray *pieces, GArray *out, Joining *j, FpAgain *again)
{
  const FpCutPiece *piece = (const FpCutPiece *) (gconstpointer) pieces->data;
  guint i = 0;

  while (i < pieces->len)
    {
      FpJoined joined = { .owner = piece[i].owner, .piece = i };
      while (i < pieces->len && piece[i].owner == joined.owner)
        i++;
      joined.n_pieces = i - joined.piece;
      join_or_take (geos, piece + joined.piece, &joined, j, again);
      g_array_append_val (out, joined);
    }
}

void
fp_sketch_join_cuts (FpSketch *self, GArray *cuts, FpAgain *again)
{
  /* A context of its own for each call: any thread may ask. */
  GEOSContextHandle_t geos = GEOS_init_r ();
  Joining j = { .sketch = self, .type = FP_EDGE_CUT, .cuts = cuts };

  join_all (geos, self->cuts, self->joined, &j, again);
  j.type = FP_EDGE_OVERHEAD;
  j.cuts = NULL;
  join_all (geos, self->overhead, self->joined_overhead, &j, again);
  GEOS_finish_r (geos);
}
