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

/* --- row by row ------------------------------------------------------------- */

typedef struct
{
  guint    owner, row;
  guint    places, not_below;
  guint    highest;       /* index of a place on the highest floor of the row */
  FpVec3   at;            /* where that one is, on its floor                 */
  double   margin;        /* footpace - at.z: negative when they stand above; 0 without an altar */
  double   eye;           /* level of the highest eyes: sitting, or standing of those who do not sit; all of the brief's percentile */
  double   low, high;     /* levels of the lowest and the highest eyes of those who are there, so; as they differ in the brief */
  double   west, east;    /* y between which its places lie                  */
} FpRowLevel;

/* Every row of places, in the order of the places, galleries and the rail apart: (element-type FpRowLevel), owned by the
 * caller. */
GArray *fp_row_levels (const FpPeople *people, const FpLevels *levels);

/* The row whose margin is least, of equals the one nearest to the altar; NULL where there is none. */
const FpRowLevel *fp_row_levels_tightest (const GArray *rows);

/* A stretch of ground along the nave: from (y0, z0) east to (y1, z1), mm; of something existing or proposed. */
typedef struct { double y0, z0, y1, z1; FpStanding standing; } FpGroundPart;

/**
 * fp_ground_along_nave:
 * @rows: of fp_row_levels()
 *
 * The ground as seen from the side: of all floors of people and ministers, flights between floors, the altar's own
 * steps and the steps of raised rows, at each y what is highest.  Galleries and the steps of other altars apart.
 *
 * Returns: from west to east, none overlapping another, and gaps where there is no floor; (element-type FpGroundPart), owned
 *   by the caller
 */
GArray *fp_ground_along_nave (const FpScene *scene, const GArray *rows);

/* --- how high the altar must stand -------------------------------------------- */

/* The lowest footpace below which all the people are by @margin, mm above the datum: the highest floor of theirs and so
 * much more. */
double fp_levels_footpace_wanted (const FpLevels *levels, double margin);

/* From the least to the greatest that is allowed, mm; @low more than @high: none is. */
typedef struct { double low, high; } FpRisers;

typedef struct
{
  guint  steps;           /* 0: nothing to climb, or no riser is allowed     */
  double riser;           /* the least allowed one with which so many steps are enough, mm */
} FpFlight;

/**
 * fp_flight_for:
 * @rise: to be climbed at least, mm
 *
 * The fewest steps of an allowed height: n = ceil (rise / high), each of rise / n, or of the least that is allowed where
 * that is more.
 */
FpFlight fp_flight_for (double rise, FpRisers allowed);

G_END_DECLS
