/* SPDX-License-Identifier: GPL-3.0-or-later */
/* measuring-ways.h - where ways begin and end, and how they are told; private to src/rules */
#pragma once

#include "measuring.h"

G_BEGIN_DECLS

/* A door by which people come in, and where they are then. */
typedef struct
{
  int      opening;   /* index                                                      */
  FpWayEnd inside;
  double   clear;     /* of the door itself                                         */
  double   threshold; /* by how much its sill lies above the floor inside; 0: not at all */
  FpPoint  jamb[2];
} FpDoorEnd;

/* (element-type FpDoorEnd): doors, and no arches, that open on a free floor of that use. */
GArray  *fp_measuring_doors     (const FpMeasuring *of, FpFloorUse use);
/* The widest door to the people's floor; FALSE where there is none. */
gboolean fp_measuring_main_door (const FpMeasuring *of, FpDoorEnd *door);

/* At the altar of celebration: where the celebrant stands, and before the lowest of its steps on the people's side. */
gboolean fp_measuring_at_altar      (const FpMeasuring *of, FpWayEnd *end);
gboolean fp_measuring_before_altar  (const FpMeasuring *of, FpWayEnd *end);
/* On its axis, on the people's floor, as near to the altar as the rail and the steps let them. */
gboolean fp_measuring_nave_head     (const FpMeasuring *of, FpWayEnd *end);

/* Adds its width, its narrowest place, and between what that lies; takes @way. @lead: "from the door to the altar". */
FpMeasured *fp_measured_add_way (GArray *out, const FpMeasuring *of, FpWay *way, int owner, FpPoint at, const char *lead);
/* Where the door is narrower than what lies behind it, the door is the narrowest place. */
void        fp_way_through_door (FpWay *way, const FpDoorEnd *door);
/* A stretch between two points alone, as a way without a route. */
FpWay      *fp_way_of_stretch   (FpPoint a, FpPoint b);
/* The height of the free floor there; of the datum where nothing is free. */
double      fp_measuring_floor  (const FpMeasuring *of, FpPoint at);

G_END_DECLS
