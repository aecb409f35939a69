/* SPDX-License-Identifier: GPL-3.0-or-later */
/* levels.h - the people below the altar
 *
 * Floor against floor, not eye against eye: every place's floor and every
 * people's floor as an area, against the level of the footpace of the altar of
 * celebration (the floor where there is none) and of the sanctuary floor.
 */
#pragma once

#include "footpace/people.h"

G_BEGIN_DECLS

typedef struct
{
  gboolean has_altar;
  double   footpace;          /* level of the surface on which the altar stands    */
  double   sanctuary;         /* level of the ministers' floor under the altar's steps */
  gboolean has_people;        /* there are people's places or floors               */
  double   highest;           /* highest level of the people (galleries apart)     */
  FpVec3   highest_at;
  double   margin;            /* footpace - highest: negative when they stand above */
  guint    places;            /* compared (galleries and the rail apart)           */
  guint    not_below;         /* places whose floor is not below the footpace      */
  guint    not_below_sanctuary; /* places whose floor is above the sanctuary floor */
  double   area_not_below;    /* mm2 of people's floor not below the footpace      */
  double   area;              /* mm2 of people's floor in all                      */
  FpVec3   worst_at;          /* a place or corner that is not below, the highest  */
  guint    gallery_places;
  double   gallery;           /* highest gallery level                             */
} FpLevels;

FpLevels fp_levels (const FpPeople *people);
gboolean fp_levels_place_below (const FpLevels *levels, const FpPersonPlace *place);

G_END_DECLS
