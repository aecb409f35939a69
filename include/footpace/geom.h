/* SPDX-License-Identifier: GPL-3.0-or-later */
/* geom.h - points, boxes and outlines
 *
 * Millimetres, square millimetres, radians unless a name says degrees.
 * x grows towards the Epistle side, y towards liturgical east, z upward from
 * the datum; the origin lies on the axis of the church where the nave meets
 * the sanctuary.  Only painting on a screen turns y over, so nothing here
 * knows of pixels.
 *
 * Nothing here fails.  Functions whose names end in _new allocate; the rest do not.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

typedef struct { double x, y; } FpPoint;
typedef struct { double x, y, z; } FpVec3;

/* Empty when x1 < x0 (or y1 < y0): FP_BOX_EMPTY grows to whatever is added. */
typedef struct { double x0, y0, x1, y1; } FpBox;
typedef struct { FpVec3 lo, hi; } FpBox3;

#define FP_BOX_EMPTY  ((FpBox) { G_MAXDOUBLE, G_MAXDOUBLE, -G_MAXDOUBLE, -G_MAXDOUBLE })
#define FP_BOX3_EMPTY ((FpBox3) { { G_MAXDOUBLE, G_MAXDOUBLE, G_MAXDOUBLE }, { -G_MAXDOUBLE, -G_MAXDOUBLE, -G_MAXDOUBLE } })

static inline FpVec3 fp_vec3_add (FpVec3 a, FpVec3 b) { return (FpVec3) { a.x + b.x, a.y + b.y, a.z + b.z }; }
static inline FpVec3 fp_vec3_sub (FpVec3 a, FpVec3 b) { return (FpVec3) { a.x - b.x, a.y - b.y, a.z - b.z }; }
static inline FpVec3 fp_vec3_scale (FpVec3 a, double s) { return (FpVec3) { a.x * s, a.y * s, a.z * s }; }
static inline double fp_vec3_dot (FpVec3 a, FpVec3 b) { return a.x * b.x + a.y * b.y + a.z * b.z; }
static inline FpVec3
fp_vec3_cross (FpVec3 a, FpVec3 b)
{
  return (FpVec3) { a.y * b.z - a.z * b.y, a.z * b.x - a.x * b.z, a.x * b.y - a.y * b.x };
}
double fp_vec3_length (FpVec3 a);

void     fp_box_add_point (FpBox *box, FpPoint p);
void     fp_box_add_box   (FpBox *box, const FpBox *other);
gboolean fp_box_is_empty  (const FpBox *box);
gboolean fp_box_overlaps  (const FpBox *a, const FpBox *b); /* touching edges do not overlap */
/* Whether a part of the segment a-b lies within it; touching its border is not enough. */
gboolean fp_box_is_crossed (const FpBox *box, FpPoint a, FpPoint b);
void     fp_box3_add_point (FpBox3 *box, FpVec3 p);
void     fp_box3_add_box   (FpBox3 *box, const FpBox3 *other);

/* +1 where a, b, c run counter-clockwise (c lies to the left of a-b), -1 where
 * clockwise, 0 where they lie on one line.  Exact for every finite input. */
int fp_orient (FpPoint a, FpPoint b, FpPoint c);

/* Signed area in mm2: positive for corners that run counter-clockwise seen
 * from above; 0 for fewer than three corners. */
double fp_outline_area (const FpPoint *pt, gsize n);

/* Centroid of the area; of the corners where the area is 0; the origin where n is 0. */
FpPoint fp_outline_centroid (const FpPoint *pt, gsize n);

FpBox fp_outline_box (const FpPoint *pt, gsize n);

/* Inside by the even-odd rule; on the edge may answer either way. */
gboolean fp_outline_contains (const FpPoint *pt, gsize n, FpPoint p);

/* TRUE when every turn goes the same way (collinear corners allowed). */
gboolean fp_outline_is_convex (const FpPoint *pt, gsize n);

/**
 * fp_outline_crosses_itself:
 * @where: (out) (optional): the point of the first crossing or touching found
 *
 * A simple outline has no two sides that meet except neighbours at their
 * common corner, and no side of length nothing.
 */
gboolean fp_outline_crosses_itself (const FpPoint *pt, gsize n, FpPoint *where);

/* The same of an open run of corners, whose last is not joined to its first. */
gboolean fp_run_crosses_itself (const FpPoint *pt, gsize n, FpPoint *where);

/* The convex hull of points, by the monotone chains of A. M. Andrew: puts its corners in their place, counter-clockwise,
 * none of them between two others.  Returns: how many; fewer than three where all points lie on one line. */
guint fp_hull (FpPoint *pt, guint n);

/* Distance from @p to the segment a-b, mm. */
double fp_segment_distance (FpPoint a, FpPoint b, FpPoint p);

/* A placing on the plan: turned by @turn degrees counter-clockwise about its own origin, then moved. */
typedef struct { double x, y, turn; } FpPlace;
FpPoint fp_place_point   (const FpPlace *place, FpPoint local);
FpPoint fp_place_unpoint (const FpPlace *place, FpPoint world); /* the inverse */
/* @inner is given relative to @outer; the result is where that is in the world. */
FpPlace fp_place_compose (const FpPlace *outer, const FpPlace *inner);

/**
 * fp_outlines_common_area:
 * @a, @b: two simple outlines, either direction
 *
 * Area of what both cover, mm2, by GEOS (geos.osgeo.org).  0 when either is degenerate.
 */
double fp_outlines_common_area (const FpPoint *a, gsize na, const FpPoint *b, gsize nb);

/* A closed run of corners round an area, or round a hole in the area of the ring before it. */
typedef struct { FpPoint *pt; guint n; gboolean hole; } FpRing;

GArray *fp_rings_new (void); /* (element-type FpRing); frees the corners */
void    fp_rings_add (GArray *rings, const FpPoint *pt, gsize n, gboolean hole);

/**
 * fp_outlines_common_less:
 * @a, @b: two simple outlines, either direction
 * @less: (element-type FpRing): simple outlines, which may overlap; their holes do not count
 *
 * What @a and @b both cover and none of @less does, by GEOS; slivers of less than 1000 mm2 are left out.
 *
 * Returns: (transfer full) (element-type FpRing): of each area its outer ring, then those of its holes
 */
GArray *fp_outlines_common_less (const FpPoint *a, gsize na, const FpPoint *b, gsize nb, const GArray *less);

G_END_DECLS
