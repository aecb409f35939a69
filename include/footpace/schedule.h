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

/* (element-type FpScheduleLine); existing, proposed and removed things: see placed->standing. Owned by the caller. */
GArray *fp_schedule_lines (const FpScene *scene);

/* Stone of what is proposed, mm3. */
double  fp_schedule_stone (const FpScene *scene);

/* What alternative keeps, adds, moves and removes, counted in things. */
typedef struct { guint kept, added, moved, removed; } FpScheduleCounts;
FpScheduleCounts fp_schedule_counts (const FpScene *scene);

/* "1.27 m³", "2.70 m", "3": owned by the caller. */
char   *fp_amount_format (FpAmountType type, double amount, FpUnits units);

G_END_DECLS
