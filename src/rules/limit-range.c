/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "footpace/limit-range.h"

#include <math.h>

#define SHARE_MOST 10.0 /* some shares are of what may be less: pews of a nave; ten times as much nobody asks */

char *
fp_limit_amiss (const FpMeasure *measure, const char *unit, double limit)
{
  if (isnan (limit))
    return NULL;
  if (measure->type == FP_MEASURE_YES && limit != 0 && limit != 1)
    return g_strdup_printf ("“%s” is yes or no: its limit is 1 or 0, not %g", measure->id, limit);
  if (measure->type == FP_MEASURE_SHARE && *unit == '\0' && limit > SHARE_MOST)
    return g_strdup_printf ("“%s” is a share, of which 1 is the whole: for %g per cent write the unit “%%”", measure->id, limit);
  return NULL;
}
