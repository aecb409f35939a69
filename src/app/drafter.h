/* SPDX-License-Identifier: GPL-3.0-or-later */
/* drafter.h - the projections of the newest scene
 *
 * Taking hidden lines away is the costly part of a drawing.  Where it takes
 * less than a frame it is done at once; in a large church it is done in the
 * background, and the newest scene wins (see latest.h).
 */
#pragma once

#include "footpace/drawing.h"

G_BEGIN_DECLS

typedef struct _FpDrafter FpDrafter;
/* FP_N_VIEWS projections, borrowed. */
typedef void (*FpDrafterReceive) (FpProjection *const *projection, gpointer data);

FpDrafter *fp_drafter_new  (FpDrafterReceive receive, gpointer data);
void       fp_drafter_free (FpDrafter *self);
/* What is drawn of it: what is left out, and where sections are cut; the one across has the place of the elevation. */
typedef struct { FpHidden hidden; FpCut cut[FP_N_VIEWS]; } FpDraftHow;
/* May call the receiver before it returns. */
void       fp_drafter_draft (FpDrafter *self, const FpScene *scene, const FpDraftHow *how);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FpDrafter, fp_drafter_free)

G_END_DECLS
