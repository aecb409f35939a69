/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "change-drafter.h"

#define APART 1.0 /* mm: less is not seen from above */

typedef struct
{
  FpProjection    *now[FP_N_VIEWS];
  const FpProject *then;
  char            *item;
  FpViewLayout     view[FP_N_VIEWS];
} Request;

/* The church as it would be, set as that which is shown. */
static FpScene *
scene_then (const Request *asked)
{
  const FpScene *now = fp_projection_scene (asked->now[0]);
  const FpSetting *setting = fp_scene_setting (now);
  g_autoptr (FpScene) whole = fp_scene_new (asked->then, fp_scene_alternative (now));

  return setting != NULL ? fp_scene_new_set (whole, fp_setting_celebration (setting)) : g_steal_pointer (&whole);
}

/* What only rises is told where heights are seen. */
static FpViewId
view_of (const Request *asked, const FpPlaced *now, const FpPlaced *then)
{
  const gboolean same = now != NULL && ABS (now->plan.x0 - then->plan.x0) < APART && ABS (now->plan.x1 - then->plan.x1) < APART
                        && ABS (now->plan.y0 - then->plan.y0) < APART && ABS (now->plan.y1 - then->plan.y1) < APART;
  const FpViewId wanted = same ? FP_VIEW_ELEVATION : FP_VIEW_PLAN;

  for (guint v = 0; v < FP_N_VIEWS; v++)
    if (!(asked->view[wanted].scale > 0) && asked->view[v].scale > 0)
      return (FpViewId) v;
  return wanted;
}

static void
tell_where (FpChangeDraft *self, const Request *asked)
{
  const FpScene *scene = fp_projection_scene (asked->now[0]);
  const int i = fp_scene_find (self->then, asked->item), before = fp_scene_find (scene, asked->item);

  if (i < 0)
    return;
  const FpPlaced *then = &fp_scene_placed (self->then, NULL)[i];
  self->view = view_of (asked, before >= 0 ? &fp_scene_placed (scene, NULL)[before] : NULL, then);
  self->at = (FpVec3) { then->plan.x1, then->plan.y1, then->level + then->extent.height };
}

static gpointer
make (gconstpointer request, GCancellable *cancel)
{
  const Request *asked = request;
  FpChangeDraft *self = g_new0 (FpChangeDraft, 1);
  g_autoptr (GArray) changed = NULL;

  self->then = scene_then (asked);
  changed = fp_changed_things (fp_projection_scene (asked->now[0]), self->then);
  for (guint v = 0; v < FP_N_VIEWS; v++)
    {
      const FpCut cut = fp_projection_cut (asked->now[v]);
      FpViewLayout layout = asked->view[v];
      g_autoptr (FpProjection) then = NULL;

      if (!(layout.scale > 0))
        continue;
      then = fp_projection_again (asked->now[v], self->then, (FpViewId) v, &cut, fp_projection_hidden (asked->now[v]), cancel);
      if (g_cancellable_is_cancelled (cancel))
        {
          fp_change_draft_free (self);
          return NULL;
        }
      self->scale = layout.scale;
      fp_over_part_begin (&self->part[v], self->then, (FpViewId) v, &layout);
      fp_drawing_add_change (self->part[v].drawing, then, changed, &layout);
    }
  tell_where (self, asked);
  return self;
}

void
fp_change_draft_free (FpChangeDraft *self)
{
  if (self == NULL)
    return;
  for (guint v = 0; v < FP_N_VIEWS; v++)
    fp_over_part_clear (&self->part[v]);
  fp_scene_unref (self->then);
  g_free (self);
}

static void
request_free (gpointer request)
{
  Request *self = request;

  for (guint v = 0; v < FP_N_VIEWS; v++)
    fp_projection_unref (self->now[v]);
  fp_project_unref (self->then);
  g_free (self->item);
  g_free (self);
}

static void
draft_free (gpointer draft)
{
  fp_change_draft_free (draft);
}

const FpOverWork fp_change_drafting = { "change drawn", make, request_free, draft_free, FALSE };

gpointer
fp_change_request_new (FpProjection *const projection[FP_N_VIEWS], const FpProject *then, const char *item,
                       const FpViewLayout view[FP_N_VIEWS])
{
  Request *request = g_new0 (Request, 1);

  for (guint v = 0; v < FP_N_VIEWS; v++)
    {
      request->now[v] = fp_projection_ref (projection[v]);
      request->view[v] = view[v];
    }
  request->then = fp_project_ref (then);
  request->item = g_strdup (item);
  return request;
}
