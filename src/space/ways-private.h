/* SPDX-License-Identifier: GPL-3.0-or-later */
/* ways-private.h - Private to src/space: what the search for a way is made of */
#pragma once

#include "ways.h"

G_BEGIN_DECLS

/* Of each triangle, whether a way may begin or end there. */
typedef struct
{
  GArray *knots; /* (element-type guint): triangles; none where the point is not free */
  FpPoint at;
} FpWaySet;

FpWaySet *fp_way_set_new  (const FpWays *ways, const FpWayEnd *end, const FpBar *bar, guint n_bars);
void      fp_way_set_free (FpWaySet *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FpWaySet, fp_way_set_free)

/* The shortest on gaps of at least @width, and straightened as far as such a body has room: fills route and length. */
void fp_way_find_route (const FpWays *ways, const FpWaySet *from, const FpWaySet *to, double width, const FpBar *bar, guint n_bars,
                        FpWay *way);
/* Likewise from a triangle once round and back to it; @ray: what is crossed once. */
void fp_way_find_loop  (const FpWays *ways, guint knot, double width, const FpBar *ray, const gboolean *within, FpWay *way);

/* Whether a body of that radius gets straight from @a to @b. */
gboolean fp_ways_have_room (const FpWays *ways, FpPoint a, FpPoint b, double radius);
/* Of a way by its knots (element-type FpPoint): fills route and length; past a bar only as the way itself is. */
void     fp_way_straighten (const FpWays *ways, const GArray *knots, double width, const FpBar *bar, guint n_bars, FpWay *way);

/* By how much a way may be told too wide. */
double fp_way_tolerance (double width);

/* Tells the narrowest place of a way: that gap's points, and what stands there. */
void fp_way_tell_gap    (const FpScene *scene, const FpWays *ways, const FpGap *gap, FpWay *way);
/* Likewise where its two points are known. */
void fp_way_tell_beside (const FpScene *scene, FpWay *way);

/* As fp_way_widest(), in that net. */
FpWay *fp_ways_widest   (const FpScene *scene, const FpWays *ways, const FpWayEnd *from, const FpWayEnd *to, const FpBar *bar,
                         guint n_bars);

G_END_DECLS
