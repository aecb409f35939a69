/* SPDX-License-Identifier: GPL-3.0-or-later */
/* made-pieces.h - the pieces of which a part of a thing consists, those of one size together
 *
 * Private to src/space.
 */
#pragma once

#include "footpace/scene.h"

G_BEGIN_DECLS

typedef struct { FpVec3 size; guint number; double volume; } FpPieces; /* mm, of each; mm3 in all */

/* To a twentieth of a millimetre. */
gboolean fp_sizes_are_alike (FpVec3 a, FpVec3 b);
/* (transfer full) (element-type FpPieces): of a quantity that is `of_part`. */
GArray  *fp_pieces_of       (const FpPlaced *placed, const FpQuantity *quantity);

G_END_DECLS
