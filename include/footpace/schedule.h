/* SPDX-License-Identifier: GPL-3.0-or-later */
/* schedule.h - what an alternative does, counted in things, and how amounts are read */
#pragma once

#include "footpace/scene.h"

G_BEGIN_DECLS

/* What the alternative keeps, adds, moves and removes, counted in things; walls, openings, piers, floors,
 * galleries and standing room that stay are not counted as kept. */
typedef struct { guint kept, added, moved, removed; } FpScheduleCounts;
FpScheduleCounts fp_schedule_counts (const FpScene *scene);

/* As it is printed in those units, and priced: two decimals, three of a volume, four of what is less than a tenth; feet and inches
 * as fp_length_format() rounds them.  In one, mm, mm2, mm3. */
guint   fp_amount_decimals (FpAmountType type, double shown);
double  fp_amount_billed   (FpAmountType type, double amount, FpUnits units);

/* "1.27 m³", "2.70 m", "3" (with a no-break space); feet and inches, square and cubic feet: owned by the caller. */
char   *fp_amount_format (FpAmountType type, double amount, FpUnits units);

G_END_DECLS
