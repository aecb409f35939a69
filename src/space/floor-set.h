/* SPDX-License-Identifier: GPL-3.0-or-later */
/* floor-set.h - walkable surfaces in church coordinates, asked for their level
 *
 * Private to src/space.  A set owns its outlines.
 */
#pragma once

#include "footpace/scene.h"

G_BEGIN_DECLS

typedef struct
{
  GArray *floor;  /* (element-type FpFloor)                             */
  GArray *box;    /* (element-type FpBox): of each floor's plan         */
  GArray *strips; /* of each floor: which sides to ask at a point       */
} FpFloorSet;

void fp_floor_set_init  (FpFloorSet *self);
void fp_floor_set_clear (FpFloorSet *self);

/* Adds every surface of a thing of @kind that stands at @place and @level. */
void fp_floor_set_add (FpFloorSet *self, const FpKind *kind, const FpForm *form, const FpPlace *place,
                       double level, guint owner);

/* Level of the highest floor at a point, its edge included; 0 and @found FALSE where there is none. */
double fp_floor_set_at (const FpFloorSet *self, FpPoint at, gboolean *found);

/* Whether every floor that reaches into @box is level and at @level. */
gboolean fp_floor_set_is_level (const FpFloorSet *self, const FpBox *box, double level);

double fp_floor_level (const FpFloor *floor, FpPoint at);

G_END_DECLS
