/* SPDX-License-Identifier: GPL-3.0-or-later */
/* wall-spot.h - where in a wall an opening is
 *
 * Private to src/placing.
 */
#pragma once

#include "footpace/scene.h"

G_BEGIN_DECLS

/* The side of the wall (from 1) nearest to @church, and how far along it, kept within the side for that @width. */
void wall_spot (const FpPlaced *wall, FpPoint church, double width, double *side, double *along);

G_END_DECLS
