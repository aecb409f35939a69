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

/* What is drawn of it: what is left out, and where sections are cut; the one across has the place of the elevation. */
typedef struct { FpHidden hidden; FpCut cut[FP_N_VIEWS]; } FpDraftHow;

/* A draft that was begun before there is a drafter to receive it, on a thread of its own. */
typedef struct _FpDraft FpDraft;
FpDraft   *fp_draft_begin (const FpScene *scene, const FpDraftHow *how);
gboolean   fp_draft_is_done (FpDraft *self);
void       fp_draft_free  (FpDraft *self); /* cancels it, and waits for its thread to see that */

typedef struct _FpDrafter FpDrafter;
/* FP_N_VIEWS projections, borrowed. */
typedef void (*FpDrafterReceive) (FpProjection *const *projection, gpointer data);

FpDrafter *fp_drafter_new  (FpDrafterReceive receive, gpointer data);
void       fp_drafter_free (FpDrafter *self);
/* The first draft that is asked for is answered by @begun, at once where that is done, if it is the same.  Takes @begun. */
void       fp_drafter_take_begun (FpDrafter *self, FpDraft *begun);
/* May call the receiver before it returns. */
void       fp_drafter_draft (FpDrafter *self, const FpScene *scene, const FpDraftHow *how);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FpDraft, fp_draft_free)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FpDrafter, fp_drafter_free)

G_END_DECLS
