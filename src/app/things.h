/* SPDX-License-Identifier: GPL-3.0-or-later */
/* things.h - all things of a scene in the order in which people list them
 *
 * What stands on something comes after it, one step in.  Furnishings first,
 * the building after them; in each, by the table of kinds, then as placed.
 * Where a thing stood before it was moved is not listed.
 */
#pragma once

#include "footpace/scene.h"

G_BEGIN_DECLS

typedef struct
{
  guint placed;   /* index in the scene */
  guint depth;    /* 0: on the floor    */
} FpThing;

GArray *fp_things_new (const FpScene *scene); /* (element-type FpThing), owned by the caller */

/* "existing", "proposed", "moved"; of ghosts "removed", "stood here before" */
const char *fp_thing_standing (const FpScene *scene, const FpPlaced *placed);
/* "on Footpace, +0.480": owned by the caller. */
char       *fp_thing_where (const FpScene *scene, const FpPlaced *placed, FpUnits units);

/* "120 mm west · 45 mm to the Gospel side · on the axis"; where nothing moved, "where it was". Owned by the caller. */
char       *fp_travel_words (FpVec3 by, FpUnits units, gboolean on_axis);

G_END_DECLS
