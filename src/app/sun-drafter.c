/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sun-drafter.h"

#include "footpace/sun-marks.h"

typedef struct
{
  const FpScene *scene;
  FpSunLook      look;
  FpViewLayout   view[FP_N_VIEWS];
} Request;

/* --- drawn ------------------------------------------------------------------------- */

static void
draw_part (FpSunDraft *self, FpViewId view, const FpViewLayout *lies, const GArray *patches)
{
  FpViewLayout layout = *lies;
  FpOverPart *part = &self->part[view];
  guint things;

  fp_scene_placed (self->scene, &things);
  if (!(layout.scale > 0) || things == 0)
    return;
  self->scale = layout.scale;
  fp_over_part_begin (part, self->scene, view, &layout);
  if (view == FP_VIEW_PLAN)
    fp_drawing_add_sun_floor (part->drawing, patches, &layout);
  fp_drawing_add_sun_shafts (part->drawing, patches, view, &layout);
  if (view == FP_VIEW_PLAN)
    {
      const FpBox key = fp_over_part_key (part);
      fp_sun_study_draw_eyes (self->study, part->drawing, &layout);
      fp_drawing_add_sun_key (part->drawing, &key);
    }
}

static void
study (FpSunDraft *self, GError **error)
{
  const FpBrief *brief = fp_project_brief (fp_scene_project (self->scene));
  g_autoptr (GDateTime) time = fp_sun_look_time (&self->look, brief, error);
  g_autoptr (FpPeople) people = NULL;

  if (time == NULL)
    return;
  people = fp_people_new (self->scene);
  self->study = fp_sun_study_new (people, time, brief->site.latitude, brief->site.longitude);
  self->year = fp_sun_year_text (people, self->look.mass, g_date_time_get_year (time), NULL, &self->worst);
}

FpSunDraft *
fp_sun_draft_new (const FpScene *scene, const FpSunLook *look, const FpViewLayout view[FP_N_VIEWS])
{
  FpSunDraft *self = g_new0 (FpSunDraft, 1);
  g_autoptr (GError) error = NULL;
  g_autoptr (GArray) patches = NULL;

  self->scene = fp_scene_ref (scene);
  self->look = *look;
  self->scale = view[FP_VIEW_PLAN].scale;
  study (self, &error);
  if (self->study == NULL)
    {
      self->sentence = g_strdup (error->message);
      self->windows = g_ptr_array_new ();
      return self;
    }
  patches = fp_sun_study_patches (self->study);
  draw_part (self, FP_VIEW_PLAN, &view[FP_VIEW_PLAN], patches);
  draw_part (self, FP_VIEW_SECTION, &view[FP_VIEW_SECTION], patches);
  self->sentence = fp_sun_study_sentence (self->study);
  self->windows = fp_sun_study_windows (self->study, TRUE);
  return self;
}

void
fp_sun_draft_free (FpSunDraft *self)
{
  if (self == NULL)
    return;
  for (int v = 0; v < FP_N_VIEWS; v++)
    fp_over_part_clear (&self->part[v]);
  fp_sun_study_free (self->study);
  g_free (self->sentence);
  g_free (self->year);
  g_ptr_array_unref (self->windows);
  fp_scene_unref (self->scene);
  g_free (self);
}

/* --- in the background ------------------------------------------------------------------- */

static void
request_free (gpointer request)
{
  Request *self = request;

  fp_scene_unref (self->scene);
  g_free (self);
}

static gpointer
make (gconstpointer request, GCancellable *cancel)
{
  const Request *asked = request;

  (void) cancel;
  return fp_sun_draft_new (asked->scene, &asked->look, asked->view);
}

static void
draft_free (gpointer draft)
{
  fp_sun_draft_free (draft);
}

const FpOverWork fp_sun_drafting = { "sun drawn", make, request_free, draft_free, FALSE };

gpointer
fp_sun_request_new (const FpScene *scene, const FpSunLook *look, const FpViewLayout view[FP_N_VIEWS])
{
  Request *request = g_new0 (Request, 1);

  request->scene = fp_scene_ref (scene);
  request->look = *look;
  for (int v = 0; v < FP_N_VIEWS; v++)
    request->view[v] = view[v];
  return request;
}
