/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "blind-drafter.h"

typedef struct
{
  FpFindings  *of;
  FpMoment     moment;
  FpFocus      focus;
  FpViewLayout plan;
} Request;

void
fp_blind_draft_free (FpBlindDraft *self)
{
  if (self == NULL)
    return;
  fp_over_part_clear (&self->part);
  fp_findings_unref (self->of);
  g_free (self);
}

static FpBlindDraft *
draw (const Request *asked, const GArray *blind)
{
  const FpScene *scene = fp_findings_measuring (asked->of)->scene;
  FpBlindDraft *self = g_new0 (FpBlindDraft, 1);
  FpViewLayout plan = asked->plan;

  self->of = fp_findings_ref (asked->of);
  self->moment = asked->moment;
  self->focus = asked->focus;
  self->scale = plan.scale;
  if (blind == NULL)
    return self;
  fp_over_part_begin (&self->part, scene, FP_VIEW_PLAN, &plan);
  fp_drawing_add_blind (self->part.drawing, blind, &plan);
  FpBox key = fp_over_part_key (&self->part);
  key.y1 -= fp_drawing_add_sight_key (NULL, &key);
  fp_drawing_add_blind_key (self->part.drawing, blind, fp_project_brief (fp_scene_project (scene))->units, &key);
  return self;
}

/* --- in the background ------------------------------------------------------------------- */

static void
request_free (gpointer request)
{
  Request *self = request;

  fp_findings_unref (self->of);
  g_free (self);
}

static gpointer
make (gconstpointer request, GCancellable *cancel)
{
  const Request *asked = request;
  const GArray *blind = fp_sight_blind (fp_findings_measuring (asked->of)->sight, asked->moment, asked->focus, cancel);

  return g_cancellable_is_cancelled (cancel) ? NULL : draw (asked, blind);
}

static void
draft_free (gpointer draft)
{
  fp_blind_draft_free (draft);
}

const FpOverWork fp_blind_drafting = { "blind areas", make, request_free, draft_free, TRUE };

gpointer
fp_blind_request_new (FpFindings *of, FpMoment moment, FpFocus focus, const FpViewLayout *plan)
{
  Request *request = g_new (Request, 1);

  *request = (Request) { fp_findings_ref (of), moment, focus, *plan };
  return request;
}
