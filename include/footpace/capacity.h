/* SPDX-License-Identifier: GPL-3.0-or-later */
/* capacity.h - how many people there is room for, places for wheelchairs, and by which doors the people leave
 *
 * A count is not comfort, and not what a room may be used for: local code and
 * the fire authority say how many may be in it.
 */
#pragma once

#include "footpace/people.h"

G_BEGIN_DECLS

typedef enum { FP_PLACES_SEATED, FP_PLACES_WHEELCHAIR, FP_PLACES_STANDING, FP_PLACES_KNEELING, FP_N_PLACES } FpPlacesSort;
const char *fp_places_label (FpPlacesSort sort); /* "Seats" … */

/* Of one block of pews, of chairs, a rail, … */
typedef struct
{
  guint        owner;   /* placed thing                                       */
  FpPlacesSort sort;
  gboolean     gallery;
  guint        places;  /* as drawn: by the parish's own width of a seat      */
  gboolean     ruled;   /* whether the printed rule speaks of it: of straight benches without arms */
  guint        by_rule; /* then: one for each whole 18 in (457 mm) of each bench; otherwise as @places.  International Building
                           Code 2015, 1004.4; that a bench of 128 in counts seven, as reported (rounded down) */
} FpCapacityLine;

/* (element-type FpCapacityLine), in the order of the scene; owned by the caller. */
GArray *fp_capacity (const FpPeople *people);

/**
 * fp_occupant_load:
 *
 * Of how many people ways out are reckoned: all who sit, of straight benches by the printed rule, each place for a
 * wheelchair, and who has room to stand; galleries with them.  Nobody at the rail (they are the same people), and no minister.
 */
guint fp_occupant_load (const FpPeople *people);

/* --- places for wheelchairs --------------------------------------------------------------- */

/* 2010 ADA Standards, 221.2.1.1: how many among so many seats. */
guint fp_wheelchairs_wanted (guint seats);

/* Beside a place for a wheelchair, shoulder to shoulder: who sits no farther to the side and no farther before or behind, mm.
 * That there is a seat for a companion beside each: 2010 ADA Standards, 221.3 and 802.3 (from memory); how far, design
 * judgement: two half widths of places, and an end of a bench between them. */
#define FP_COMPANION_ASIDE 1200.0
#define FP_COMPANION_ALONG 500.0

typedef struct
{
  guint place;     /* for a wheelchair, of fp_people_places()                   */
  int   companion; /* the seat beside it that no other has; -1: there is none   */
} FpCompany;

/* (element-type FpCompany), one for each place for a wheelchair, so that as many as can be have a companion; the caller's. */
GArray *fp_companies (const FpPeople *people);

/* --- ways out ------------------------------------------------------------------------------- */

/* A door by which people leave: it opens on a floor of theirs, and on the other side no floor was surveyed.  Doors to the
 * sanctuary (of a sacristy), to a porch or to another room that is drawn are none; nor are gates and arches. */
typedef struct
{
  guint   opening; /* placed thing                                              */
  FpPoint at;      /* its middle, on the face within                            */
  FpPoint jamb[2]; /* likewise                                                  */
  double  clear;   /* mm between its jambs; a leaf that does not open flat takes of it */
} FpWayOut;

GArray *fp_ways_out (const FpScene *scene); /* (element-type FpWayOut), in the order of the scene; the caller's */

typedef struct
{
  guint  load;      /* fp_occupant_load()                                       */
  guint  ways;
  double clear;     /* mm: of all of them                                       */
  double widest;    /* mm: of the widest                                        */
  double apart;     /* mm between the middles of the two that lie farthest apart; 0 of fewer than two */
  double diagonal;  /* mm between the two corners of the people's floors that lie farthest apart */
} FpLeaving;

FpLeaving fp_leaving (const FpPeople *people);

/* International Building Code (2018 and 2021, from memory).  1006.2.1 and 1006.3: one way for up to 49 people, two up to 500,
 * three up to 1000, four for more. */
guint  fp_us_ways_wanted (guint load);
/* 1005.3.2: 0.2 in for each; 0.15 in where there are sprinklers and an alarm that speaks.  mm. */
double fp_us_width_wanted (guint load, gboolean sprinklers);
/* 1029.2 (1030.2 in 2021): where there are more than 300 people the main way takes half of them.  mm; 0 of fewer people. */
double fp_us_main_wanted  (guint load, gboolean sprinklers);
/* 1007.1.1: two of them lie half the diagonal apart at least, a third where there are sprinklers.  mm. */
double fp_us_apart_wanted (double diagonal, gboolean sprinklers);

/* Approved Document B, volume 2 (2019, from memory), section 2.  One way for up to 60 people, two up to 600, three for more. */
guint  fp_uk_ways_wanted (guint load);
/* How many leave by a way so wide: 60 by 750 mm, 110 by 850, 220 by 1050; of wider ones, one for each 5 mm; by narrower nobody. */
guint  fp_uk_way_holds (double clear);
/* How many leave by all but the one by which most would: it may be the one that cannot be used.  By a single one all do. */
guint  fp_uk_ways_hold (const GArray *ways);

G_END_DECLS
