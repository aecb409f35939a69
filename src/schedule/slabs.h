/* SPDX-License-Identifier: GPL-3.0-or-later */
/* slabs.h - a run of steps or of their floor, divided into slabs
 *
 * Private to src/schedule.
 */
#pragma once

#include "footpace/works.h"

G_BEGIN_DECLS

/* So many alike, of one size, mm. */
typedef struct { guint number; double length, width, thickness; } FpSlabs;

/* Slabs of one length, as few as may be; number 0 where nothing is left of the run. */
FpSlabs fp_slabs_of  (const FpCourse *course, const FpWorks *works);
double  fp_slabs_volume (const FpSlabs *self);

G_END_DECLS
