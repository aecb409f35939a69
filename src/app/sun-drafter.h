/* SPDX-License-Identifier: GPL-3.0-or-later */
/* sun-drafter.h - the sun at a time, drawn and told in the background; knows no toolkit */
#pragma once

#include "over-drafter.h"
#include "over-part.h"
#include "sun-look.h"

#include "footpace/review.h"

G_BEGIN_DECLS

typedef struct
{
  const FpScene *scene;    /* owned reference                                */
  FpSunLook    look;
  double       scale;
  FpOverPart   part[FP_N_VIEWS]; /* of the plan and the section              */
  FpSunStudy  *study;      /* NULL: nothing could be reckoned, of which the sentence tells why */
  char        *sentence;
  char        *year;       /* the same Mass through the year; NULL: it is not every week */
  GDate        worst;      /* the day of those on which it is in most eyes; not valid: there is none */
  GPtrArray   *windows;    /* (element-type utf8): through which it is in whose eyes */
} FpSunDraft;

/* @view: how the views lie on the board, with no scale where they are not there */
FpSunDraft *fp_sun_draft_new  (const FpScene *scene, const FpSunLook *look, const FpViewLayout view[FP_N_VIEWS]);
void        fp_sun_draft_free (FpSunDraft *self);

/* For an FpOverDrafter: its drafts are FpSunDraft. */
extern const FpOverWork fp_sun_drafting;
gpointer    fp_sun_request_new (const FpScene *scene, const FpSunLook *look, const FpViewLayout view[FP_N_VIEWS]);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FpSunDraft, fp_sun_draft_free)

G_END_DECLS
