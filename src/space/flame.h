/* SPDX-License-Identifier: GPL-3.0-or-later */
/* flame.h - what a flame may set alight
 *
 * Private to src/space.
 */
#pragma once

#include "footpace/order.h"

G_BEGIN_DECLS

/* The nearest thing that may burn and rises to the flame, or hangs over it lower than FP_FLAME_ABOVE; -1. @by: (out): level
 * distance, mm */
int fp_flame_nearest (const FpScene *scene, FpVec3 flame, double *by);

G_END_DECLS
