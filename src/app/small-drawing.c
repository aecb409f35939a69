/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "small-drawing.h"

#include "footpace/levels.h"

#include <math.h>

#define ROOM_BESIDE 600.0  /* mm round the sanctuary */
#define ROOM_ABOVE  900.0

/* Drawn large and shown small, so that the widths of lines shrink with it. */
#define PAPER_WIDTH      96.0
#define ELEVATION_HEIGHT 60.0
#define PLAN_HEIGHT      80.0

FpBox
fp_small_frame (const FpScene *scene, FpViewId view)
{
  FpBox3 box = fp_scene_sanctuary (scene);
  FpBox frame = FP_BOX_EMPTY;

  if (box.hi.x < box.lo.x) /* there is nothing yet */
    box = (FpBox3) { { 0.0, 0.0, 0.0 }, { 0.0, 0.0, 0.0 } };
  fp_box_add_point (&frame, fp_view_point (view, box.lo));
  fp_box_add_point (&frame, fp_view_point (view, box.hi));
  frame.x0 -= ROOM_BESIDE;
  frame.x1 += ROOM_BESIDE;
  frame.y0 -= view == FP_VIEW_PLAN ? ROOM_BESIDE : 200.0;
  frame.y1 += view == FP_VIEW_PLAN ? ROOM_BESIDE : ROOM_ABOVE;
  return frame;
}

FpDrawing *
fp_small_drawing (FpProjection *projection, const FpBox *frame, double width, double height)
{
  double w = MAX (frame->x1 - frame->x0, 1.0), h = MAX (frame->y1 - frame->y0, 1.0);
  double scale = MAX (w / width, h / height);
  double cx = (frame->x0 + frame->x1) / 2.0, cy = (frame->y0 + frame->y1) / 2.0;
  FpViewLayout layout = {
    .origin = { width / 2.0 - cx / scale, height / 2.0 - cy / scale },
    .scale = scale,
    /* What fills the paper, which is more than the frame on one of its sides. */
    .clip = { cx - width * scale / 2.0, cy - height * scale / 2.0,
              cx + width * scale / 2.0, cy + height * scale / 2.0 },
  };
  FpDrawing *drawing = fp_drawing_new (width, height);

  fp_drawing_add_view (drawing, projection, &layout);
  return drawing;
}

static char *
levels_text (const FpScene *scene)
{
  g_autoptr (FpPeople) people = fp_people_new (scene);
  FpLevels levels = fp_levels (people);
  g_autofree char *margin = NULL;

  if (!levels.has_altar)
    return g_strdup ("no altar");
  if (!levels.has_people)
    return g_strdup ("no places\nfor the people");
  margin = fp_length_format_unit (fabs (levels.margin), fp_project_brief (fp_scene_project (scene))->units);
  if (levels.margin > 0.0)
    return g_strdup_printf ("people below\nby %s", margin);
  return levels.margin < 0.0 ? g_strdup_printf ("people above\nby %s", margin) : g_strdup ("people\nnot below");
}

static FpDrawing *
draw_one (const FpScene *scene, FpViewId view, const FpBox *frame, double height)
{
  g_autoptr (FpProjection) projection = fp_projection_new (scene, view);

  return fp_small_drawing (projection, frame, PAPER_WIDTH, height);
}

static void
draw_all (FpOverview *self, const FpScene *const *scene, gboolean plans, GCancellable *cancel)
{
  FpBox elevation = FP_BOX_EMPTY, plan = FP_BOX_EMPTY;

  for (guint i = 0; i < self->n; i++)
    {
      FpBox e = fp_small_frame (scene[i], FP_VIEW_ELEVATION), p = fp_small_frame (scene[i], FP_VIEW_PLAN);

      fp_box_add_box (&elevation, &e);
      fp_box_add_box (&plan, &p);
    }
  for (guint i = 0; i < self->n && !g_cancellable_is_cancelled (cancel); i++)
    {
      self->elevation[i] = draw_one (scene[i], FP_VIEW_ELEVATION, &elevation, ELEVATION_HEIGHT);
      self->levels[i] = levels_text (scene[i]);
      if (plans)
        self->plan[i] = draw_one (scene[i], FP_VIEW_PLAN, &plan, PLAN_HEIGHT);
    }
}

FpOverview *
fp_overview_new (const FpProject *project, gboolean plans, GCancellable *cancel)
{
  FpOverview *self = g_new0 (FpOverview, 1);
  g_autofree const FpScene **scene = NULL;

  self->n = fp_project_n_alternatives (project);
  self->elevation = g_new0 (FpDrawing *, self->n);
  self->plan = plans ? g_new0 (FpDrawing *, self->n) : NULL;
  self->levels = g_new0 (char *, self->n);
  scene = g_new0 (const FpScene *, self->n);
  for (guint i = 0; i < self->n; i++)
    scene[i] = fp_scene_new (project, i);
  draw_all (self, scene, plans, cancel);
  for (guint i = 0; i < self->n; i++)
    fp_scene_unref (scene[i]);
  if (g_cancellable_is_cancelled (cancel))
    g_clear_pointer (&self, fp_overview_free);
  return self;
}

void
fp_overview_free (FpOverview *self)
{
  if (self == NULL)
    return;
  for (guint i = 0; i < self->n; i++)
    {
      g_clear_pointer (&self->elevation[i], fp_drawing_unref);
      if (self->plan != NULL)
        g_clear_pointer (&self->plan[i], fp_drawing_unref);
      g_free (self->levels[i]);
    }
  g_free (self->elevation);
  g_free (self->plan);
  g_free (self->levels);
  g_free (self);
}
