/* SPDX-License-Identifier: GPL-3.0-or-later */
/* bill-private.h - what the files of a bill share
 *
 * Private to src/schedule.
 */
#pragma once

#include "footpace/bill.h"

G_BEGIN_DECLS

FpWork    fp_work_of    (const FpPlaced *placed);
/* Of a line of that material and measure. */
FpHeading fp_heading_of (const FpPlaced *placed, FpMaterial material, FpAmountType type);

G_END_DECLS
