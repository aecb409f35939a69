/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sight-drafter.h"

#define WORST 20

typedef struct
{
  FpFindings  *of;
  FpSightLook  look;
  FpViewLayout view[FP_N_VIEWS];
} Request;

/* --- drawn ------------------------------------------------------------------------- */

static void
draw_part (FpSightDraft *self, const FpMeasuring *of, FpViewId view, const FpViewLayout *lies)
{
  FpViewLayout layout = *lies;
  FpOverPart *part = &self->part[view];

  if (!(layout.scale > 0) || (view != FP_VIEW_PLAN && self->look.place < 0))
    return;
  fp_over_part_begin (part, of->scene, view, &layout);
  self->scale = layout.scale;
  if (view == FP_VIEW_PLAN)
    {
      const FpBox key = fp_over_part_key (part);
      fp_drawing_add_sight_key (part->drawing, &key);
      fp_drawing_add_sight (part->drawing, of->sight, self->look.moment, self->look.focus, &layout);
    }
  if (self->look.place >= 0)
    fp_drawing_add_sight_line (part->drawing, of->sight, (guint) self->look.place, self->look.moment, self->look.focus, view,
                               &layout, FALSE);
}

/* --- told ---------------------------------------------------------------------------- */

static char *
words_of (const FpMeasuring *of, guint place, FpSightLook look)
{
  g_autofree char *name = fp_people_name (of->people, place);
  g_autofree char *seen = fp_sight_place_words (of, place, look.moment, look.focus);

  return g_strdup_printf ("%s: %s", name, seen);
}

static void
tell_stop (FpSightDraft *self, const FpMeasuring *of)
{
  FpSightLine line;

  if (!fp_sight_line (of->sight, (guint) self->look.place, self->look.moment, self->look.focus, &line) || !line.stopped)
    return;
  self->stop = line.stop;
  self->stop_words = fp_sight_line_words (of->sight, &line);
}

static void
tell (FpSightDraft *self, const FpMeasuring *of)
{
  self->sentence = fp_sight_sentence (of, self->look.moment, self->look.focus);
  self->worst = fp_sight_worst (of, self->look.moment, self->look.focus, WORST);
  self->worst_words = g_ptr_array_new_with_free_func (g_free);
  for (guint i = 0; i < self->worst->len; i++)
    g_ptr_array_add (self->worst_words, words_of (of, g_array_index (self->worst, guint, i), self->look));
  if (self->look.place < 0)
    return;
  self->place_words = words_of (of, (guint) self->look.place, self->look);
  tell_stop (self, of);
}

FpSightDraft *
fp_sight_draft_new (FpFindings *of, FpSightLook look, const FpViewLayout view[FP_N_VIEWS])
{
  FpSightDraft *self = g_new0 (FpSightDraft, 1);
  const FpMeasuring *measuring = fp_findings_measuring (of);
  guint n;

  fp_people_places (measuring->people, &n);
  self->of = fp_findings_ref (of);
  self->look = look;
  if (look.place >= (int) n)
    self->look.place = -1;
  for (int v = 0; v < FP_N_VIEWS; v++)
    draw_part (self, measuring, (FpViewId) v, &view[v]);
  tell (self, measuring);
  return self;
}

void
fp_sight_draft_free (FpSightDraft *self)
{
  if (self == NULL)
    return;
  for (int v = 0; v < FP_N_VIEWS; v++)
    fp_over_part_clear (&self->part[v]);
  g_free (self->sentence);
  g_free (self->place_words);
  g_free (self->stop_words);
  g_clear_pointer (&self->worst, g_array_unref);
  g_clear_pointer (&self->worst_words, g_ptr_array_unref);
  fp_findings_unref (self->of);
  g_free (self);
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

  (void) cancel;
  return fp_sight_draft_new (asked->of, asked->look, asked->view);
}

static void
draft_free (gpointer draft)
{
  fp_sight_draft_free (draft);
}

const FpOverWork fp_sight_drafting = { "sight drawn", make, request_free, draft_free, FALSE };

gpointer
fp_sight_request_new (FpFindings *of, FpSightLook look, const FpViewLayout view[FP_N_VIEWS])
{
  Request *request = g_new0 (Request, 1);

  request->of = fp_findings_ref (of);
  request->look = look;
  memcpy (request->view, view, sizeof request->view);
  return request;
}
