/* SPDX-License-Identifier: GPL-3.0-or-later */
/* reckoning.h - by what a parish reckons its capacity: how many give Communion, how long each step of it takes, and whether
 * the building has sprinklers
 *
 * Values without a scene: a project keeps them.  No printed figure was found for any of the times: a parish measures its own,
 * and none is assumed.
 */
#pragma once

#include "footpace/error.h"

G_BEGIN_DECLS

#define FP_COMMUNION_PEOPLE_MAX 20000
#define FP_COMMUNION_MINISTERS_MAX 50
#define FP_COMMUNION_SECONDS_MAX 600.0
#define FP_COMMUNION_EACH_LEAST 0.1    /* s: fewer is no communicant                  */
#define FP_SECONDS_UNSAID (-1.0)

typedef struct
{
  guint    people;     /* who communicate, up to %FP_COMMUNION_PEOPLE_MAX; 0: all who sit           */
  guint    ministers;  /* at the rail, 1 to %FP_COMMUNION_MINISTERS_MAX                             */
  guint    lines;      /* when they come in lines, a minister at each; 0: as many as @ministers     */
  double   each;       /* s that one communicant takes, %FP_COMMUNION_EACH_LEAST to %FP_COMMUNION_SECONDS_MAX; or unsaid */
  double   change;     /* s from one to the next at a place of the rail, 0 to the same; or unsaid   */
  double   step;       /* s from one to the next in a line, likewise                                */
  double   back;       /* s of the way back along the rail, likewise                                */
  gboolean sprinklers; /* throughout, and an alarm that speaks: some codes then ask for less width  */
} FpReckoning;

/* Of a project in which nobody said anything. */
extern const FpReckoning fp_reckoning_usual;

typedef enum { FP_RECKONING_PEOPLE, FP_RECKONING_MINISTERS, FP_RECKONING_LINES, FP_RECKONING_EACH, FP_RECKONING_CHANGE,
               FP_RECKONING_STEP, FP_RECKONING_BACK, FP_N_RECKONINGS } FpReckoningPart;

const char *fp_reckoning_id     (FpReckoningPart part); /* "people": in files, and of options */
gboolean    fp_reckoning_unsaid (const FpReckoning *self, FpReckoningPart part); /* always FALSE of ministers */
double      fp_reckoning_get    (const FpReckoning *self, FpReckoningPart part);

/**
 * fp_reckoning_set:
 * @value: what is typed or read; NAN: nothing is said any more
 *
 * Returns: FALSE with %FP_ERROR_RANGE, which says what may be, and changes nothing
 */
gboolean    fp_reckoning_set    (FpReckoning *self, FpReckoningPart part, double value, GError **error);

/* FALSE with %FP_ERROR_RANGE where something is not as above. */
gboolean    fp_reckoning_check  (const FpReckoning *self, GError **error);
gboolean    fp_reckoning_equal  (const FpReckoning *a, const FpReckoning *b);

G_END_DECLS
