/* SPDX-License-Identifier: GPL-3.0-or-later */
/* communion.h - how long Communion takes at the rail and in lines
 *
 * By the times that a parish measures (reckoning.h): no printed figure was found for any of them.
 */
#pragma once

#include "footpace/reckoning.h"

G_BEGIN_DECLS

#define FP_COMMUNION_PLACES_MAX 2000

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
