/* SPDX-License-Identifier: GPL-3.0-or-later */
/* pointed.h - a point that is pointed at on one of the views
 *
 * A view shows two coordinates; where the point rests on a corner of
 * something, the third is known too.  No toolkit.
 */
#pragma once

#include "footpace/catches.h"
#include "footpace/drawing.h"

G_BEGIN_DECLS

typedef enum
{
  FP_POINTED_FREE,
  FP_POINTED_AXIS,   /* of the church                                            */
  FP_POINTED_MIDDLE, /* in line with the middle of something, within its length  */
  FP_POINTED_EDGE,
  FP_POINTED_CORNER
} FpPointedSort;

typedef enum { FP_KNOWN_X = 1, FP_KNOWN_Y = 2, FP_KNOWN_Z = 4 } FpKnown;

typedef struct
{
  FpViewId    view;
  gboolean    turned;  /* the view is seen from the other side                */
  FpPoint     at;      /* in the coordinates of the view, mm                  */
  FpPointedSort  sort;
  const char *id;      /* interned; of what it rests on, NULL: nothing        */
  FpVec3      space;   /* as far as it is known                               */
  guint       known;   /* FpKnown                                             */
} FpPointed;

FpPointed fp_pointed_free (FpViewId view, gboolean turned, FpPoint at);

/**
 * fp_pointed_find:
 * @catches: (nullable): of the same scene, with nothing moving; for the plan
 * @reach: mm, how near something must be for the point to rest on it
 *
 * The nearest corner that the view shows; else on the plan the edges, middles and
 * the axis, each coordinate apart; else the nearest edge.
 */
FpPointed fp_pointed_find (FpProjection *projection, const FpCatches *catches, FpPoint at, double reach);

/**
 * fp_pointed_follow:
 * @was: the scene in which it was found
 * @projection: of the same view, of the scene that is now
 * @catches: (nullable): of that scene, as for fp_pointed_find()
 *
 * Takes the point along with what it rests on.  Where that is gone, or its edge
 * lies elsewhere now for another reason, the point stays and rests on nothing.
 */
void   fp_pointed_follow (FpPointed *self, const FpScene *was, FpProjection *projection, const FpCatches *catches);

/* Coordinates that are known from elsewhere, in place of those that are pointed at: 1: x, 2: y, 4: z. */
void   fp_pointed_hold  (FpPointed *self, FpVec3 space, guint known);
/* The same point seen in a view; FALSE where a coordinate that it shows is not known: it is taken as 0. */
gboolean fp_pointed_in  (const FpPointed *self, FpViewId view, gboolean turned, FpPoint *at);

/* "corner of High altar", "on the axis"; "" where it is free. Owned by the caller. */
char  *fp_pointed_tells (const FpPointed *self, const FpScene *scene);

G_END_DECLS
