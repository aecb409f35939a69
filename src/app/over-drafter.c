/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "over-drafter.h"

#include "latest.h"

struct _FpOverDrafter
{
  FpLatest         *latest;
  const FpOverWork *work;
  FpOverReceive     receive;
  gpointer          data;
};

typedef struct { const FpOverWork *work; gpointer request; } Asked;
/* A result is only lent to the receiver: it is handed over in a box, out of which it may be taken. */
typedef struct { const FpOverWork *work; gpointer draft; } Box;

static void
asked_free (gpointer data)
{
  Asked *self = data;

  self->work->request_free (self->request);
  g_free (self);
}

static void
box_free (gpointer data)
{
  Box *self = data;

  if (self->draft != NULL)
    self->work->draft_free (self->draft);
  g_free (self);
}

static void
run (FpLatestJob *job, gpointer data, gpointer drafter)
{
  const Asked *asked = data;
  gpointer draft = asked->work->make (asked->request, fp_latest_job_cancellable (job));
  Box *box;

  (void) drafter;
  if (draft == NULL)
    return;
  box = g_new (Box, 1);
  *box = (Box) { asked->work, draft };
  fp_latest_job_post (job, box);
}

static void
receive (gpointer result, gpointer data)
{
  FpOverDrafter *self = data;
  Box *box = result;

  self->receive (g_steal_pointer (&box->draft), self->data);
}

/* What follows a drag ends well within this for a parish church. */
#define GRACE_MS 400
/* Longer than from one frame of a drag to the next. */
#define LULL_MS  200

static const FpLatestWork following = { run, receive, asked_free, box_free, GRACE_MS, 0 };
static const FpLatestWork at_rest = { run, receive, asked_free, box_free, 0, LULL_MS };

FpOverDrafter *
fp_over_drafter_new (const FpOverWork *work, FpOverReceive on_draft, gpointer data)
{
  FpOverDrafter *self = g_new0 (FpOverDrafter, 1);

  self->work = work;
  self->receive = on_draft;
  self->data = data;
  self->latest = fp_latest_new (work->name, work->at_rest ? &at_rest : &following, self);
  return self;
}

void
fp_over_drafter_free (FpOverDrafter *self)
{
  if (self == NULL)
    return;
  fp_latest_free (self->latest);
  g_free (self);
}

void
fp_over_drafter_ask (FpOverDrafter *self, gpointer request)
{
  Asked *asked = g_new (Asked, 1);

  *asked = (Asked) { self->work, request };
  fp_latest_ask (self->latest, asked);
}
