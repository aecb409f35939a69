/* SPDX-License-Identifier: GPL-3.0-or-later */
/* blind-drafter.h - floor from which something is not seen, drawn in the background when all is at rest; knows no toolkit */
#pragma once

#include "sight-drafter.h"

G_BEGIN_DECLS

typedef struct
{
  FpFindings *of;     /* owned reference                                */
  FpMoment    moment;
  FpFocus     focus;
  double      scale;
  FpOverPart part;   /* of the plan; its drawing is NULL where there is nothing to see */
} FpBlindDraft;

void fp_blind_draft_free (FpBlindDraft *self);

/* It takes longer than a frame: so it is begun when nothing else has been asked for a moment, and given up as soon as
 * something is.  @draft is handed over. */
typedef struct _FpBlindDrafter FpBlindDrafter;
typedef void (*FpBlindDrafterReceive) (FpBlindDraft *draft, gpointer data);

FpBlindDrafter *fp_blind_drafter_new  (FpBlindDrafterReceive receive, gpointer data);
void            fp_blind_drafter_free (FpBlindDrafter *self);
/* @of: with sight; @plan: how it lies on the board */
void            fp_blind_drafter_ask  (FpBlindDrafter *self, FpFindings *of, FpMoment moment, FpFocus focus,
                                       const FpViewLayout *plan);

G_END_DECLS
