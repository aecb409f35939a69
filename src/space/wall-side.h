/* SPDX-License-Identifier: GPL-3.0-or-later */
/* wall-side.h - where in a side of its wall an opening has room beside the others
 *
 * Private to src/space.
 */
#pragma once

#include "room.h"

G_BEGIN_DECLS

/* How far the middle of an opening can go along its side of @length, between its neighbours. */
void   fp_wall_side_room    (const FpProject *project, const FpItem *opening, double length, double *least,
                             double *most);

/* Along a side of @length of its wall, perhaps another than that it is in: of where it is @wanted, the ends, and beside
 * each neighbour, what is free and nearest; as wanted where nothing is. */
double fp_wall_side_nearest (const FpProject *project, const FpItem *opening, guint side, double length,
                             double wanted);

G_END_DECLS
