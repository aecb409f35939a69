/* SPDX-License-Identifier: GPL-3.0-or-later */
/* capacity.h - how many people there is room for, and how long Communion takes
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

/* --- Communion ------------------------------------------------------------------------- */

#define FP_COMMUNION_PEOPLE_MAX 20000
#define FP_COMMUNION_PLACES_MAX 2000
#define FP_COMMUNION_MINISTERS_MAX 50
#define FP_COMMUNION_SECONDS_MAX 600.0

/* No printed figure was found for any of the times: a parish measures its own. */
typedef struct
{
  guint  people;     /* 1 to %FP_COMMUNION_PEOPLE_MAX                          */
  guint  ministers;  /* 1 to %FP_COMMUNION_MINISTERS_MAX                       */
  guint  places;     /* at the rail; 0: they come in lines, one to each minister */
  double each;       /* s that one communicant takes, above 0                  */
  double change;     /* s from one who has received to the next who is ready: at the rail while the minister goes on, in a line
                        while he waits; 0 or more                              */
  double back;       /* s in which a minister goes back to where his part of the rail begins; 0 or more */
} FpCommunion;

/* FALSE with %FP_ERROR_RANGE. */
gboolean fp_communion_check (const FpCommunion *self, GError **error);

/**
 * fp_communion_seconds:
 * @self: as it must be
 *
 * Lines: the people divide themselves evenly.  At the rail each minister has a part of its places, alike to within one, and
 * goes along it again and again; who has received rises, and the next kneels down there, as long as people are left; the
 * minister waits for a place that is being taken, and passes one that stays empty.
 *
 * Returns: s from the first communicant to the last
 */
double   fp_communion_seconds (const FpCommunion *self);

G_END_DECLS
