/* SPDX-License-Identifier: GPL-3.0-or-later */
/* celebrant.h - at which altar Mass is celebrated, and on which side of it
 *
 * Private to src/space.
 */
#pragma once

#include "footpace/scene.h"

G_BEGIN_DECLS

/* See fp_scene_celebrated_altar(). @highest: the highest altar, -1 where there is none. */
int      fp_celebrated_altar (const FpPlaced *placed, guint n, int highest, FpFacing facing);

/* Whether the celebrant can stand behind this altar: it stands free, and no wall, pier or screen is in the way. */
gboolean fp_celebrant_fits_behind (const FpPlaced *placed, guint altar, const FpSolid *solid, guint n_solids);

G_END_DECLS
