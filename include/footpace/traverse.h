/* SPDX-License-Identifier: GPL-3.0-or-later */
/* traverse.h - an outline walked side by side with tape and angles
 *
 * A traverse in the surveyor's sense: lengths of sides and the turns between
 * them.  Measured ones never quite come back to where they began; the gap is
 * the closing error.  Millimetres; angles in degrees, counter-clockwise
 * (a turn to the left) positive; direction 0 is liturgical east.
 */
#pragma once

#include "footpace/geom.h"

G_BEGIN_DECLS

typedef struct
{
  double length;
  double turn;   /* at its end, into the next side; of the last: into the first */
} FpLeg;

typedef struct
{
  FpPoint gap;       /* from the end of the last side to the first corner     */
  double  distance;  /* of the gap                                            */
  double  walked;    /* all lengths together                                  */
  double  angle;     /* by which the turns together exceed once round; negative: fall short */
} FpClosure;

/* Fills @corner with n + 1 points, the first being @start, the last where the walk ends. */
void      fp_traverse_corners (const FpLeg *leg, guint n, FpPoint start, double direction, FpPoint *corner);

FpClosure fp_traverse_closure (const FpLeg *leg, guint n, double direction);

/* The part of the way walked that a gap may be at most to be shared out: a greater one is a mistake, not a measuring
 * error.  Common practice, no source. */
#define FP_CLOSES_WITHIN 0.01
double    fp_closure_limit    (const FpClosure *closure); /* mm */
gboolean  fp_closure_is_small (const FpClosure *closure);

/**
 * fp_traverse_can_keep:
 * @kept: (array length=n): the sides that are to stay as they were measured
 *
 * Returns: whether there are any, and the others are long enough to take the whole gap
 */
gboolean  fp_traverse_can_keep (const FpLeg *leg, guint n, const gboolean *kept, const FpClosure *closure);

/**
 * fp_traverse_adjust:
 * @corner: n + 1 points of a walk
 * @kept: (array length=n) (nullable): sides that keep their length and direction; not all of them
 *
 * Closes it by the compass rule (N. Bowditch, 1808; in every handbook of
 * surveying): each corner is shifted by the share of the gap that the way
 * walked up to it has in the whole, where sides that are kept count for
 * nothing.  Afterwards the last point is the first.
 */
void      fp_traverse_adjust (FpPoint *corner, guint n, const gboolean *kept);

/* The legs of a closed outline, to begin from: n of them, with the direction of the first. */
void      fp_traverse_from_outline (const FpPoint *corner, guint n, FpLeg *leg, double *direction);

G_END_DECLS
