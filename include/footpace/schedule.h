/* SPDX-License-Identifier: GPL-3.0-or-later */
/* schedule.h - what an alternative does, counted in things, and how amounts are read */
#pragma once

#include "footpace/scene.h"

G_BEGIN_DECLS

/* What the alternative keeps, adds, moves and removes, counted in things; walls, openings, piers, floors,
 * galleries and standing room that stay are not counted as kept. */
typedef struct { guint kept, added, moved, removed; } FpScheduleCounts;
FpScheduleCounts fp_schedule_counts (const FpScene *scene);

/* "1.27 m³", "2.70 m", "3" (with a no-break space); feet and inches, square and cubic feet: owned by the caller. */
char   *fp_amount_format (FpAmountType type, double amount, FpUnits units);

G_END_DECLS
