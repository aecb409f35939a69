/* SPDX-License-Identifier: GPL-3.0-or-later */
/* things.h - all things of a scene in the order in which people list them
 *
 * What stands on something comes after it, one step in.  Furnishings first,
 * the building after them; in each, by the table of kinds, then as placed.
 * Where a thing stood before it was moved is not listed.
 */
#pragma once

#include "footpace/drawing.h"

G_BEGIN_DECLS

typedef struct
{
  guint placed;   /* index in the scene */
  guint depth;    /* 0: on the floor    */
} FpThing;

GArray *fp_things_new (const FpScene *scene); /* (element-type FpThing), owned by the caller */

/* Ids of all furnishings that stand and are shown, in that order, ended by NULL; owned by the caller (g_strfreev). */
char  **fp_things_furnishings (const FpScene *scene, FpHidden hidden);

/**
 * fp_things_within:
 * @frame: of a view, in its coordinates, not turned (fp_view_point)
 *
 * Ids of the furnishings that lie wholly in it, shown or not, as fp_things_furnishings().
 */
char  **fp_things_within (const FpScene *scene, FpViewId view, const FpBox *frame);

/* "existing", "proposed", "moved"; of ghosts "removed", "stood here before" */
const char *fp_thing_standing (const FpScene *scene, const FpPlaced *placed);
/* "on Footpace, +0.480": owned by the caller. */
char       *fp_thing_where (const FpScene *scene, const FpPlaced *placed, FpUnits units);

/* "120 mm west · 45 mm to the Gospel side"; where nothing moved, "where it was". Owned by the caller. */
char       *fp_travel_words (FpVec3 by, FpUnits units);

G_END_DECLS
