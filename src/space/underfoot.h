/* SPDX-License-Identifier: GPL-3.0-or-later */
/* underfoot.h - on what somebody stands who walks about the altar
 *
 * Private to src/space.
 */
#pragma once

#include "footpace/scene.h"

G_BEGIN_DECLS

/* The highest step or floor there that is not above @from; @from where there is none. */
double fp_level_underfoot (const FpScene *scene, FpPoint at, double from);

G_END_DECLS
