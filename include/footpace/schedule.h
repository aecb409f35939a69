/* SPDX-License-Identifier: GPL-3.0-or-later */
/* schedule.h - quantities from which people order and build
 *
 * Net as fixed in position, no waste and no prices.
 */
#pragma once

#include "footpace/scene.h"

G_BEGIN_DECLS

typedef struct
{
  const FpPlaced *placed;   /* what it belongs to; borrowed from the scene  */
  FpQuantity      quantity;
} FpScheduleLine;

/* (element-type FpScheduleLine); existing, proposed and removed things: see placed->standing.  A moved thing is
 * listed once, where it stands now.  Owned by the caller. */
GArray *fp_schedule_lines (const FpScene *scene);

/* Stone of what is proposed, mm3.  What is only moved needs none. */
double  fp_schedule_stone (const FpScene *scene);

/* What the alternative keeps, adds, moves and removes, counted in things; walls, openings, piers, floors,
 * galleries and standing room that stay are not counted as kept. */
typedef struct { guint kept, added, moved, removed; } FpScheduleCounts;
FpScheduleCounts fp_schedule_counts (const FpScene *scene);

/* "1.27 m³", "2.70 m", "3" (with a no-break space); feet and inches, square and cubic feet: owned by the caller. */
char   *fp_amount_format (FpAmountType type, double amount, FpUnits units);

G_END_DECLS
