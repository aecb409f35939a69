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

/* --- what they are drawn of --------------------------------------------------- */

/* Of the alternatives that there were, two views each; NULL: not drawn. */
struct _FpOverviewMemory
{
  GPtrArray *projections;
};

static void
forget (gpointer projection)
{
  fp_projection_unref (projection);
}

FpOverviewMemory *
fp_overview_memory_new (void)
{
  FpOverviewMemory *self = g_new (FpOverviewMemory, 1);

  self->projections = g_ptr_array_new_with_free_func (forget);
  return self;
}

void
fp_overview_memory_free (FpOverviewMemory *self)
{
  if (self == NULL)
    return;
  g_ptr_array_unref (self->projections);
  g_free (self);
}

/* Where the view of an alternative is kept. */
static FpProjection **
place_in (FpOverviewMemory *self, guint alternative, FpViewId view)
{
  return (FpProjection **) &self->projections->pdata[2 * alternative + (view == FP_VIEW_PLAN ? 1 : 0)];
}

/* --- all of them -------------------------------------------------------------- */

typedef struct
{
  FpOverview           *overview;
  const FpScene *const *scene;
  FpOverviewMemory     *memory;
  GCancellable         *cancel;
} Overview;

static FpDrawing *
draw_one (const Overview *of, guint i, FpViewId view, const FpBox *frame, double height)
{
  FpProjection **place = place_in (of->memory, i, view);
  FpProjection *projection = fp_projection_again (*place, of->scene[i], view, NULL, 0, of->cancel);
  FpDrawing *drawing = fp_small_drawing (projection, frame, PAPER_WIDTH, height);

  if (g_cancellable_is_cancelled (of->cancel)) /* of no use */
    fp_projection_unref (projection);
  else
    {
      fp_projection_unref (*place);
      *place = projection;
    }
  return drawing;
}

static void
draw_all (const Overview *of, gboolean plans)
{
  FpOverview *self = of->overview;
  FpBox elevation = FP_BOX_EMPTY, plan = FP_BOX_EMPTY;

  for (guint i = 0; i < self->n; i++)
    {
      FpBox e = fp_small_frame (of->scene[i], FP_VIEW_ELEVATION), p = fp_small_frame (of->scene[i], FP_VIEW_PLAN);

      fp_box_add_box (&elevation, &e);
      fp_box_add_box (&plan, &p);
    }
  for (guint i = 0; i < self->n && !g_cancellable_is_cancelled (of->cancel); i++)
    {
      self->elevation[i] = draw_one (of, i, FP_VIEW_ELEVATION, &elevation, ELEVATION_HEIGHT);
      self->levels[i] = levels_text (of->scene[i]);
      if (plans)
        self->plan[i] = draw_one (of, i, FP_VIEW_PLAN, &plan, PLAN_HEIGHT);
    }
}

FpOverview *
fp_overview_new (const FpProject *project, gboolean plans, FpOverviewMemory *memory, GCancellable *cancel)
{
  FpOverviewMemory *own = memory == NULL ? fp_overview_memory_new () : NULL, *kept = memory != NULL ? memory : own;
  FpOverview *self = g_new0 (FpOverview, 1);
  g_autofree const FpScene **scene = NULL;

  self->n = fp_project_n_alternatives (project);
  self->elevation = g_new0 (FpDrawing *, self->n);
  self->plan = plans ? g_new0 (FpDrawing *, self->n) : NULL;
  self->levels = g_new0 (char *, self->n);
  scene = g_new0 (const FpScene *, self->n);
  for (guint i = 0; i < self->n; i++)
    scene[i] = fp_scene_new (project, i);
  g_ptr_array_set_size (kept->projections, (int) (2 * self->n));
  draw_all (&(Overview) { self, scene, kept, cancel }, plans);
  fp_overview_memory_free (own);
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
