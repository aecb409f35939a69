/* SPDX-License-Identifier: GPL-3.0-or-later */
/* standing.h - what stands on what, and where that puts it
 *
 * Private to src/space.  Two arrangements are worked out for a scene: the
 * survey as it was measured, and the alternative.  Things of the survey have
 * the same number in both, so what was moved or removed is found by
 * comparing them.
 */
#pragma once

#include "floor-set.h"

G_BEGIN_DECLS

typedef struct
{
  const FpItem *item;
  gboolean      in_survey;
  FpFate        fate;
  gboolean      present;     /* stands in this arrangement                      */
  FpPlace       given;       /* its place in the terms of what it stands on     */
  int           on;          /* number of what it was put on; -1: the floor     */
  int           support;     /* likewise, where that is present                 */
  int           laid_round;  /* number of what it lies round, -1                */
  guint8        extent_state, place_state, level_state;
  FpPlace       place;
  double        level, floor;
  FpForm        form;
  FpExtent      extent;
  FpBox         plan;
  FpHole       *hole;       /* owned                                           */
  gpointer      ground;      /* owned                                           */
} FpStandingThing;

typedef struct _FpArrangement FpArrangement;
struct _FpArrangement
{
  GArray              *thing;     /* (element-type FpStandingThing)             */
  const FpArrangement *before;    /* the survey as measured; NULL for itself    */
  FpFloorSet          *floors;    /* of the survey, without galleries; borrowed */
};

/**
 * fp_arrangement_init:
 * @alternative: (nullable): %NULL for the survey as measured
 * @facing: of the celebrant
 * @before: (nullable): the survey as measured, for an alternative
 * @floors: an empty set; it is filled, and must outlive the grounds of the things
 * @away: (nullable): set of the items that do not stand, though the alternative has them
 */
void fp_arrangement_init  (FpArrangement *self, const FpProject *project, const FpAlternative *alternative,
                           FpFacing facing, const FpArrangement *before, FpFloorSet *floors, GHashTable *away);
void fp_arrangement_clear (FpArrangement *self);

static inline FpStandingThing *
fp_arrangement_get (const FpArrangement *self, guint i)
{
  return &g_array_index (self->thing, FpStandingThing, i);
}

/* What hangs takes its size from what it hangs over (FP_KIND_HUNG). */
void fp_form_hang_over (FpForm *form, const FpExtent *support);

/* Where the origin of a thing comes, in the coordinates of its support. */
FpPlace fp_place_on_bearing (const FpBox *bearing, FpAnchor anchor, const FpBox *plan, const FpPlace *given);
FpPlace fp_place_from_bearing (const FpBox *bearing, FpAnchor anchor, const FpBox *plan, const FpPlace *origin);

G_END_DECLS
