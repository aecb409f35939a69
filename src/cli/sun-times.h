/* SPDX-License-Identifier: GPL-3.0-or-later */
/* sun-times.h - the times at which `footpace sun` looks */
#pragma once

#include "footpace/review.h"

G_BEGIN_DECLS

/* FALSE where no church could make a time of it: before the file is opened. */
gboolean   fp_sun_times_check (const char *at, GError **error);

/**
 * fp_sun_times_of:
 * @at: (nullable): a time, with hours before UTC or by the clock of the place; a day, for every Mass of the brief on the
 *   day of it that is nearest; %NULL: every Mass at the equinoxes and solstices of this year
 *
 * Returns: (transfer full) (element-type GDateTime): one at least; %NULL with an error, also where the brief lacks what
 *   that takes
 */
GPtrArray *fp_sun_times_of (const FpBrief *brief, const char *at, GError **error);

/* A sheet for each of @times, numbered: (transfer full) (element-type FpDrawing); %NULL with @error set. */
GPtrArray *fp_sun_sheets (const FpScene *scene, const GPtrArray *times, double latitude, double longitude,
                          const FpSheetSpec *spec, GError **error);

G_END_DECLS
