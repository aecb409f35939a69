/* SPDX-License-Identifier: GPL-3.0-or-later */
/* solid-overlap.h - how far two solids reach into each other
 *
 * Private to src/rules.
 */
#pragma once

#include "footpace/solid.h"

G_BEGIN_DECLS

/* How far one of two boxes would have to be moved, along one axis, to be clear of the other; 0 or less: it is. */
double fp_box3_overlap (const FpBox3 *a, const FpBox3 *b);

/**
 * fp_solid_overlap:
 * @least: what is not more than this is no overlap, mm
 * @at: (out): the middle of the room that they share
 * @way: (out): of length 1, on the level or upright: the direction of that least way
 *
 * By true outlines: the least way, on the level or upright, by which one would
 * have to be moved to be clear of the other.  Of outlines that are not
 * convex, the most that any two of their parts reach into each other, which
 * is never more than that.  Round bodies are taken as @FP_OVERLAP_SIDES-sided.
 *
 * Returns: mm; 0 where they share no room, or less than @least
 */
double fp_solid_overlap (const FpSolid *a, const FpSolid *b, double least, FpVec3 *at, FpVec3 *way);

#define FP_OVERLAP_SIDES 16

G_END_DECLS
