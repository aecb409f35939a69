/* SPDX-License-Identifier: GPL-3.0-or-later */
/* catches.h - where a thing that is being moved may come to rest
 *
 * The axis, edges, corners and centres of what is there, gaps equal to
 * others, and what lies in line with it in another projection.  Plan
 * coordinates of the church, mm: x and y are caught apart, so that a corner
 * is caught by both at once.
 */
#pragma once

#include "footpace/scene.h"

G_BEGIN_DECLS

typedef enum
{
  FP_CATCH_NONE,
  FP_CATCH_AXIS,     /* its middle on the axis of the church                  */
  FP_CATCH_EDGE,     /* an edge against, or flush with, an edge of a neighbour */
  FP_CATCH_CENTRE,   /* its middle in line with the middle of another         */
  FP_CATCH_GAP,      /* as far from one neighbour as from the other, or as two others are apart */
  FP_CATCH_IN_LINE   /* an edge in line with one that is elsewhere in the church: seen so in the other projection */
} FpCatchSort;

typedef struct
{
  FpCatchSort sort;
  gboolean    along;    /* of y (along the church), else of x                 */
  double      at;       /* the coordinate that was caught                     */
  double      by;       /* how far the thing goes for it, mm                  */
  double      from, to; /* extent of the guide line in the other coordinate   */
  double      gap;      /* FP_CATCH_GAP: the clear gap, mm; else 0            */
  double      gap_at[2]; /* where the two equal gaps begin, in the coordinate that was caught */
  const char *id;       /* of what caught it, borrowed from the scene; NULL: the axis, or a gap */
} FpCatch;

/* In words: "on the axis", "in line with the middle of Rail"; owned by the caller. */
char *fp_catch_tells (const FpCatch *found, const FpScene *scene);

typedef struct _FpCatches FpCatches;

/* @moving: ids, ended by NULL; what goes with them catches nothing, nor does a footpace that is laid round one of them.
 * What stands on the floor is caught by what stands on the floor; what stands on a mensa, by that mensa and what else
 * stands on it.  What is @hidden catches nothing: nobody could see why.  Holds a reference to the scene. */
FpCatches *fp_catches_new  (const FpScene *scene, const char *const *moving, FpHidden hidden);
void       fp_catches_free (FpCatches *self);

/* The plan of all that moves, as it stands in the scene; empty where nothing does. */
FpBox      fp_catches_moving (const FpCatches *self);

/**
 * fp_catches_find:
 * @by: (inout): how far it is moved (z untouched); what caught it is added
 * @ways: 1: x may be caught, 2: y, 3: both
 * @reach: the greatest distance at which something catches, mm (a few pixels at the zoom that is shown)
 * @x, @y: (out) (optional): what caught it; of sort %FP_CATCH_NONE where nothing did
 *
 * The nearest catches; of equals the one that says most (axis, edge, centre, gap, in line).
 */
void       fp_catches_find (const FpCatches *self, FpVec3 *by, guint ways, double reach, FpCatch *x, FpCatch *y);

/* Likewise of a single point (a tape's end, a corner of an outline): edges, centres and the axis. */
void       fp_catches_find_point (const FpCatches *self, FpPoint *point, double reach, FpCatch *x, FpCatch *y);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FpCatches, fp_catches_free)

G_END_DECLS
