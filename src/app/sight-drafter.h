/* SPDX-License-Identifier: GPL-3.0-or-later */
/* sight-drafter.h - what every place sees, drawn and told in the background; knows no toolkit */
#pragma once

#include "over-drafter.h"
#include "over-part.h"

#include "footpace/rules.h"

G_BEGIN_DECLS

typedef struct
{
  FpFindings  *of;         /* owned reference: scene, people and sight           */
  FpSightLook  look;       /* its place is -1 where there is no such place any more */
  double       scale;
  FpOverPart   part[FP_N_VIEWS]; /* of the plan and the section                  */
  char        *sentence;
  char        *place_words; /* "Pews: row 3, seat 2: 31 %, past the pier"; NULL: of nobody */
  FpVec3       stop;       /* where something stands in the way of that one's line of sight */
  char        *stop_words; /* "pier": what; NULL: nothing does, or nobody looks  */
  GArray      *worst;      /* (element-type guint): places, the least first      */
  GPtrArray   *worst_words; /* (element-type utf8): likewise                     */
} FpSightDraft;

FpSightDraft *fp_sight_draft_new  (FpFindings *of, FpSightLook look, const FpViewLayout view[FP_N_VIEWS]);
void          fp_sight_draft_free (FpSightDraft *self);

/* For an FpOverDrafter: its drafts are FpSightDraft. */
extern const FpOverWork fp_sight_drafting;
/* @of: with sight; @view: how the views lie on the board */
gpointer      fp_sight_request_new (FpFindings *of, FpSightLook look, const FpViewLayout view[FP_N_VIEWS]);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FpSightDraft, fp_sight_draft_free)

G_END_DECLS
