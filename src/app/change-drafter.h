/* SPDX-License-Identifier: GPL-3.0-or-later */
/* change-drafter.h - what a change would make of the church, drawn in the background over what is; knows no toolkit */
#pragma once

#include "over-drafter.h"
#include "over-part.h"

G_BEGIN_DECLS

typedef struct
{
  const FpScene *then;     /* owned reference                                */
  double         scale;
  FpOverPart     part[FP_N_VIEWS];
  FpViewId       view;     /* in which it is told best what is changed       */
  FpVec3         at;       /* beside which it is told, church coordinates    */
} FpChangeDraft;

void     fp_change_draft_free (FpChangeDraft *self);

/* For an FpOverDrafter: its drafts are FpChangeDraft. */
extern const FpOverWork fp_change_drafting;

/**
 * fp_change_request_new:
 * @projection: what the board shows now
 * @then: the project as it would be
 * @item: id of what is changed first
 * @view: how the views lie on the board, with no scale where they are not there
 */
gpointer fp_change_request_new (FpProjection *const projection[FP_N_VIEWS], const FpProject *then, const char *item,
                                const FpViewLayout view[FP_N_VIEWS]);

G_END_DECLS
