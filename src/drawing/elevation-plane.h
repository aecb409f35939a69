/* SPDX-License-Identifier: GPL-3.0-or-later */
/* elevation-plane.h - where the elevation is cut */
#pragma once

#include "footpace/scene.h"

G_BEGIN_DECLS

/**
 * fp_elevation_plane:
 *
 * Just before the rail, or the lowest step of the altar, or what stands a
 * little in front of them; before the floor steps at its foot.
 *
 * Returns: y of the plane, mm; -G_MAXDOUBLE where there is neither rail nor altar: the elevation shows everything
 */
double fp_elevation_plane (const FpScene *scene);

G_END_DECLS
