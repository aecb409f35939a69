/* SPDX-License-Identifier: GPL-3.0-or-later */
/* ways.h - the net of all ways over the free floor, for one gait
 *
 * Its knots are the triangles between sites, which lie along everything that a
 * body may not cross; two knots are joined by the gap between the sites at the
 * ends of their common side.  A body that is no wider than every gap it
 * crosses can go from centre to centre: what is as far from two sites as from
 * nothing nearer (Voronoi) lies between the centres, and is nowhere nearer to
 * them than half their distance.
 *
 * Private to src/space.
 */
#pragma once

#include "footpace/room-to-move.h"
#include "triangles.h"

G_BEGIN_DECLS

#define FP_SITE_ARMS 4

/* A point of an edge, with the pieces for which it stands: each half-way to the next. */
typedef struct
{
  guint   n_arms;
  FpPoint arm[FP_SITE_ARMS];
} FpWaySite;

typedef struct
{
  double width;    /* of the widest body between the two sites */
  guint  from, to; /* triangles                                */
  guint  a, b;     /* sites                                    */
} FpGap;

typedef struct
{
  GArray   *edges;     /* (element-type FpBar): what is not crossed                         */
  GArray   *points;    /* (element-type FpPoint): of the sites, sorted by x                 */
  GArray   *sites;     /* (element-type FpWaySite)                                             */
  GArray   *triangles; /* (element-type FpTriangle)                                         */
  GArray   *gaps;      /* (element-type FpGap): between free triangles, the widest first    */
  gboolean *is_free;   /* of each triangle: its circle lies on the free floor               */
} FpWays;

/* Borrowed from the scene. */
const FpWays *fp_scene_ways (const FpScene *scene, FpGait gait);

/* Of the edges that a body of that gait may not cross: (element-type FpBar), each one run, what is free on its left. */
GArray *fp_way_edges_new (const FpScene *scene, FpGait gait);
/* Takes @edges; @floor (nullable) tells what is free. */
FpWays *fp_ways_new      (GArray *edges, const FpFreeFloor *floor);
void    fp_ways_free     (FpWays *self);
/* Appends to both, sorted by x, then by y. */
void    fp_way_sites_gather (const GArray *edges, GArray *points, GArray *sites);

/* The two points, one on each site's pieces, that are nearest to each other. */
double  fp_ways_gap      (const FpWays *self, guint a, guint b, FpPoint near[2]);

/* From what point to what point a segment may not be crossed. */
gboolean fp_bars_cross   (const FpBar *bar, guint n_bars, FpPoint a, FpPoint b);

G_END_DECLS
