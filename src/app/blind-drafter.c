/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "blind-drafter.h"

#include "latest.h"

/* Longer than from one frame of a drag to the next. */
#define LULL_MS 200

typedef struct
{
  FpFindings  *of;
  FpMoment     moment;
  FpFocus      focus;
  FpViewLayout plan;
} Request;

struct _FpBlindDrafter
{
  FpLatest             *latest;
  FpBlindDrafterReceive receive;
  gpointer              data;
};

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

/* In a box, out of which it may be taken. */
static void
box_free (gpointer box)
{
  FpBlindDraft **draft = box;

  fp_blind_draft_free (*draft);
  g_free (draft);
}

static void
run (FpLatestJob *job, gpointer request, gpointer data)
{
  const Request *asked = request;
  GCancellable *cancel = fp_latest_job_cancellable (job);
  const GArray *blind = fp_sight_blind (fp_findings_measuring (asked->of)->sight, asked->moment, asked->focus, cancel);
  FpBlindDraft **box;

  (void) data;
  if (g_cancellable_is_cancelled (cancel))
    return;
  box = g_new (FpBlindDraft *, 1);
  *box = draw (asked, blind);
  fp_latest_job_post (job, box);
}

static void
receive (gpointer result, gpointer data)
{
  FpBlindDrafter *self = data;
  FpBlindDraft **box = result;

  self->receive (g_steal_pointer (box), self->data);
}

static const FpLatestWork drafting = { run, receive, request_free, box_free, 0, LULL_MS };

FpBlindDrafter *
fp_blind_drafter_new (FpBlindDrafterReceive on_draft, gpointer data)
{
  FpBlindDrafter *self = g_new0 (FpBlindDrafter, 1);

  self->receive = on_draft;
  self->data = data;
  self->latest = fp_latest_new ("blind areas", &drafting, self);
  return self;
}

void
fp_blind_drafter_free (FpBlindDrafter *self)
{
  if (self == NULL)
    return;
  fp_latest_free (self->latest);
  g_free (self);
}

void
fp_blind_drafter_ask (FpBlindDrafter *self, FpFindings *of, FpMoment moment, FpFocus focus, const FpViewLayout *plan)
{
  Request *request = g_new (Request, 1);

  *request = (Request) { fp_findings_ref (of), moment, focus, *plan };
  fp_latest_ask (self->latest, request);
}
