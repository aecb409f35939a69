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

/* For an FpOverDrafter: its drafts are FpBlindDraft. */
extern const FpOverWork fp_blind_drafting;
/* @of: with sight; @plan: how it lies on the board */
gpointer fp_blind_request_new (FpFindings *of, FpMoment moment, FpFocus focus, const FpViewLayout *plan);

G_END_DECLS
