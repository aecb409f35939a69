/* SPDX-License-Identifier: GPL-3.0-or-later */
/* setting-pews.h - blocks of pews that belong together
 *
 * Private to src/space.
 */
#pragma once

#include "setting-spot.h"

G_BEGIN_DECLS

/**
 * fp_lay_pews:
 * @block: (out): up to two
 *
 * The block that is wanting beside one that is there, else two about a middle
 * aisle in the longest free stretch of the nave, Gospel side first.
 *
 * Returns: how many; 0 where there is no room for them
 */
guint fp_lay_pews (const FpRoom *room, const FpKind *kind, FpDraft block[2]);

/* One block, as near to the axis and the altar as there is room in the nave. */
void  fp_spot_pews (FpDraft *self);

G_END_DECLS
