/* SPDX-License-Identifier: GPL-3.0-or-later */
/* limit-range.h - what a limit of a measure can be at all
 *
 * Yes or no is 1 or 0; a share without a unit is no number of per cent; of the rest any number may be asked.
 */
#pragma once

#include "footpace/rules.h"

G_BEGIN_DECLS

/**
 * fp_limit_amiss:
 * @unit: in which it is printed; "" where it has none
 * @limit: may be NAN: nothing is limited
 *
 * Returns: (nullable): NULL where such a limit can be; else why not, half a sentence without a full stop, owned by the caller
 */
char *fp_limit_amiss (const FpMeasure *measure, const char *unit, double limit);

G_END_DECLS
