/* SPDX-License-Identifier: GPL-3.0-or-later */
/* sight-private.h - what the files of sight share */
#pragma once

#include "ray-index.h"

G_BEGIN_DECLS

/* A ray ends this far before the point looked at: so the thing itself does not hide it. */
#define FP_SIGHT_SHORT 2.0 /* mm */

#define FP_SIGHT_NOT_LOOKED G_MAXUINT8

/* In how many parts places are asked. */
#define FP_SIGHT_PARTS 16

/* What hides most of a target from a place. */
typedef struct
{
  int      thing;          /* -1: people; -2: nothing */
  gboolean is_minister;
  int      place_in_front; /* -1: not a person        */
} FpSightVerdict;

/* What is different between two lists of obstacles. */
typedef struct _FpSightChange FpSightChange;

/* Solids in the way, ready for rays. */
typedef struct
{
  FpSolids   *solids;
  FpRayIndex *index;
} FpSightObstacles;

struct _FpSight
{
  gatomicrefcount  ref_count;
  const FpPeople  *people;                         /* owned reference                 */
  guint            n_places;
  int              target[FP_N_FOCUSES];           /* index of the placed thing, -1   */
  FpRayPoints      point[FP_N_FOCUSES];
  GCancellable    *cancel;                         /* owned reference; NULL: never        */
  GMutex           mutex;                          /* guards what follows while it is made; once made it stays */
  FpSight         *last;                           /* owned reference; NULL: there is nothing to take over, or no more */
  gboolean         like_last;                      /* the same eyes at the same places */
  /* Past all but the ministers: the same at all moments at which the people do the same. */
  FpSightObstacles others[FP_N_POSTURES];
  FpSightChange   *change[FP_N_POSTURES];          /* of them, since the last         */
  guint64         *past[FP_N_POSTURES][FP_N_FOCUSES]; /* of each place, the points seen, a bit each; NULL: not yet */
  FpSightObstacles ministers[FP_N_MOMENTS];
  guint8          *seen[FP_N_MOMENTS][FP_N_FOCUSES]; /* of each place, how many points; NULL: nobody has asked yet */
  GMutex           hides_mutex;                    /* guards this, likewise           */
  FpSightVerdict  *verdict[FP_N_MOMENTS][FP_N_FOCUSES];
  gint            *hides[FP_N_MOMENTS][FP_N_FOCUSES]; /* of each placed thing, whether it does; made with the verdicts */
  GMutex           blind_mutex;                    /* guards these                    */
  FpSightObstacles fixed;                          /* building and furnishings        */
  GArray          *blind[FP_N_POSTURES][FP_N_FOCUSES]; /* (element-type FpBlindFloor)  */
};

/* Points seen from each place, looked at now if nobody has asked before; NULL where there is no target, or it was
 * cancelled.  Any thread. */
const guint8 *fp_sight_seen (const FpSight *self, FpMoment moment, FpFocus focus);

/* Likewise what stands in the way: all but ministers, and they. */
void fp_sight_indexes (const FpSight *self, FpMoment moment, const FpRayIndex **others, const FpRayIndex **ministers);

/* Building and furnishings, which stand fast, owned by the placed things. */
void fp_sight_add_things (const FpPeople *people, FpSolids *out);

/* Rays from a place to the points of a focus; FALSE where nobody looks. */
gboolean fp_sight_rays (const FpSight *self, guint place, FpMoment moment, FpFocus focus, FpRays *rays);

/* --- since the last (sight-again.c) ----------------------------------------- */

/* Whether what was seen before may be taken over at all: every place has the eye that it had, at all moments. */
gboolean       fp_sight_same_eyes (const FpPeople *last, const FpPeople *now);
FpSightChange *fp_sight_change_new (const FpSolids *last, const FpSolids *now);
void           fp_sight_change_free (FpSightChange *self);
/* Whether something of it may stand, or have stood, in the way of one of them. */
gboolean       fp_sight_change_reaches (const FpSightChange *self, const FpRays *rays);

/* --- targets and what hides them --------------------------------------------- */

/* Index of the placed thing on which the point of focus is; -1. */
int fp_sight_target (const FpScene *scene, FpFocus focus);

/* Targets of a placed thing for a focus, in church coordinates (element-type FpTarget). */
void fp_sight_add_targets (const FpPlaced *placed, FpFocus focus, GArray *out);

/* What does not hide a focus from a place. */
FpRaySkip fp_sight_skip (const FpSight *self, guint place, FpFocus focus);

G_END_DECLS
