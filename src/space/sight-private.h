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

struct _FpSight
{
  gatomicrefcount  ref_count;
  const FpPeople  *people;                         /* owned reference                 */
  guint            n_places;
  int              target[FP_N_FOCUSES];           /* index of the placed thing, -1   */
  FpVec3           point[FP_N_FOCUSES][FP_SIGHT_RAYS];
  GCancellable    *cancel;                         /* owned reference; NULL: never        */
  GMutex           mutex;                          /* guards what follows while it is made; once made it stays */
  FpSolids        *obstacles[FP_N_POSTURES];
  FpRayIndex      *index[FP_N_POSTURES];
  guint8          *seen[FP_N_POSTURES][FP_N_FOCUSES]; /* of each place, the points seen; NULL: nobody has asked yet */
  GMutex           hides_mutex;                    /* guards this, likewise               */
  FpSightVerdict  *verdict[FP_N_POSTURES][FP_N_FOCUSES];
};

/* Points seen from each place, looked at now if nobody has asked before; NULL where there is no target, or it was
 * cancelled.  Any thread. */
const guint8 *fp_sight_seen (const FpSight *self, FpPosture posture, FpFocus focus);

/* Likewise what stands in the way. */
const FpRayIndex *fp_sight_index (const FpSight *self, FpPosture posture);

/* Index of the placed thing on which the point of focus is; -1. */
int fp_sight_target (const FpScene *scene, FpFocus focus);

/* Targets of a placed thing for a focus, in church coordinates (element-type FpTarget). */
void fp_sight_add_targets (const FpPlaced *placed, FpFocus focus, GArray *out);

/* What does not hide a focus from a place. */
FpRaySkip fp_sight_skip (const FpSight *self, guint place, FpFocus focus);

/* The points of a focus, as far as rays from @eye go. */
void fp_sight_ends (const FpSight *self, FpFocus focus, FpVec3 eye, FpVec3 ends[FP_SIGHT_RAYS]);

G_END_DECLS
