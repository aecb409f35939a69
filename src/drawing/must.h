/* SPDX-License-Identifier: GPL-3.0-or-later */
/* must.h - the measures that nobody would leave out
 *
 * Whoever builds the altar asks for them first: length, depth and height of
 * the mensa, risers, treads and footpace, the rail and its gate, the way from
 * there to the lowest step (design judgement, no source).  What finds no room
 * on a sheet is told in words on it.
 */
#pragma once

#include "footpace/scene.h"

G_BEGIN_DECLS

/* What such a measure is called: "mensa length"; NULL: it may be left out.
 * @param: index of the parameter, -1: it follows from others; @axis: of the church: 0 x, 1 y, 2 z */
const char *fp_must_be_told (const FpScene *scene, const FpPlaced *of, int param, guint axis);

/* "Not dimensioned here: mensa length 2700, rail height 762."  @untold: (element-type utf8). NULL when that is empty. */
char       *fp_untold_words (const GPtrArray *untold);

G_END_DECLS
