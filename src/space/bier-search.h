/* SPDX-License-Identifier: GPL-3.0-or-later */
/* bier-search.h - from pose to pose of a bier in steps; private to src/space
 *
 * Poses are knots: places at steps, and turns at steps.  At each the bier stands aside by no more than half a step, in the
 * middle of what there is across it.  Of all ways from knot to knot that one counts whose tightest knot is the widest.
 */
#pragma once

#include "bier-room.h"

G_BEGIN_DECLS

typedef struct
{
  FpBierRoom      *room;
  const FpBierEnd *from, *to;
  double           most;  /* a wider one is not asked for, mm                            */
  double           step;  /* mm                                                          */
  guint            turns; /* in half a circle                                            */
  const GArray    *about; /* (nullable) (element-type FpBierPose): only so near to these: */
  double           near, near_turn; /* mm, radians                                       */
} FpBierAsk;

/* (element-type FpBierPose), from begin to end; empty where there is none, or where it would take too many knots. */
GArray *fp_bier_search (const FpBierAsk *ask);

/* Between directions of a thing that is the same turned by half a circle. */
double  fp_bier_turn_between (double a, double b);

G_END_DECLS
