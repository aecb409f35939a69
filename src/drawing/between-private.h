/* SPDX-License-Identifier: GPL-3.0-or-later */
/* between-private.h - what the files that look for measures between things share; church coordinates, mm */
#pragma once

#include "wanted.h"

G_BEGIN_DECLS

typedef struct
{
  const FpScene  *scene;
  const FpPlaced *placed;
  guint           n_placed;
  const FpSolid  *solids;
  guint           n_solids;
  GArray         *building; /* walls and piers, each with its box */
  const FpCut    *cuts;     /* of each view                   */
  const FpPlaced *altar, *footpace, *rail; /* NULL: there is none */
  GArray         *out;      /* FpBetween                          */
} FpBetweenSearch;

/* Height above the floor at which walls are measured: above rails and seats, below most sills. */
#define FP_REACH_HEIGHT 1100.0

/* The face of the rail towards the altar, or that towards the people; returns do not count. */
double   fp_between_rail_face (const FpPlaced *rail, gboolean towards_altar);

/**
 * fp_between_face_ahead:
 * @from, @to: x through which it is looked for
 * @y, @z: from where
 * @face: (out): the stretch, from x0 to x1, on which the building lies square and ends at y0, the longest of those
 *
 * Looks along the church, towards liturgical east.
 *
 * Returns: FALSE where no face lies square, or none is met
 */
gboolean fp_between_face_ahead (const FpBetweenSearch *self, double from, double to, double y, double z, FpBox *face);

/* To the first of the walls and piers along x or y (@way of length 1); NAN where none is met. */
double   fp_between_reach (const FpBetweenSearch *self, FpVec3 from, FpVec3 way);

/* --- between-seen.c: of what was added to `out` since there were @since measures ---
 * What the section across, or the longitudinal one, does not show is not told there; what it cuts instead. */
void     fp_between_see_width (const FpBetweenSearch *self, guint since, const FpPlaced *about);
void     fp_between_see_depth (const FpBetweenSearch *self, guint since);

/* --- whereabouts.c --- */
void     fp_between_add_whereabouts (FpBetweenSearch *self);

G_END_DECLS
