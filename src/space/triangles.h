/* SPDX-License-Identifier: GPL-3.0-or-later */
/* triangles.h - points of the plan triangulated after Delaunay, by GEOS
 *
 * Private to src/space.
 */
#pragma once

#include "footpace/geom.h"

G_BEGIN_DECLS

typedef struct
{
  guint   corner[3]; /* indices of points                                           */
  int     beyond[3]; /* the triangle beyond the side from corner k to the next; -1  */
  FpPoint centre;    /* of the circle through its corners                           */
  double  radius;
} FpTriangle;

/* @pt: sorted by x, then by y, no two alike.  (element-type FpTriangle): none where all points lie on one line. */
GArray *fp_triangles_new (const FpPoint *pt, guint n);

/* By x, then by y. */
int     fp_point_order (gconstpointer a, gconstpointer b);

G_END_DECLS
