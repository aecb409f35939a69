/* SPDX-License-Identifier: GPL-3.0-or-later */
/* sight-private.h - what the files of sight share */
#pragma once

#include "ray-index.h"

G_BEGIN_DECLS

/* A ray ends this far before the point looked at: so the thing itself does not hide it. */
#define FP_SIGHT_SHORT 2.0 /* mm */

#define FP_SIGHT_NOT_LOOKED G_MAXUINT8

struct _FpSight
{
  gatomicrefcount  ref_count;
  const FpPeople  *people;                         /* owned reference                 */
  guint            n_places;
  int              target[FP_N_FOCUSES];           /* index of the placed thing, -1   */
  FpVec3           point[FP_N_FOCUSES][FP_SIGHT_RAYS];
  FpSolids        *obstacles[FP_N_POSTURES];
  FpRayIndex      *index[FP_N_POSTURES];
  guint8          *seen;                           /* [posture][focus][place]: points seen */
};

static inline guint8 *
fp_sight_cell (const FpSight *self, FpPosture posture, FpFocus focus, guint place)
{
  return &self->seen[((gsize) posture * FP_N_FOCUSES + focus) * self->n_places + place];
}

/* Index of the placed thing on which the point of focus is; -1. */
int fp_sight_target (const FpScene *scene, FpFocus focus);

/* Targets of a placed thing for a focus, in church coordinates (element-type FpTarget). */
void fp_sight_add_targets (const FpPlaced *placed, FpFocus focus, GArray *out);

/* What does not hide a focus from a place. */
FpRaySkip fp_sight_skip (const FpSight *self, guint place, FpFocus focus);

/* The points of a focus, as far as rays from @eye go. */
void fp_sight_ends (const FpSight *self, FpFocus focus, FpVec3 eye, FpVec3 ends[FP_SIGHT_RAYS]);

G_END_DECLS
