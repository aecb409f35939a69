/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "annotation-private.h"

#include "dimension-line.h"
#include "thin.h"

const FpSurroundings FP_SURROUNDINGS_ALONE = {
  .outline = { 1, 1, -1, -1 },
  .seen = { 1, 1, -1, -1 },
  .tiers = { 6, 4, 6, 5 },
  .levels_on = FP_SIDE_RIGHT,
  .names_outside = TRUE,
};

const FpSurroundings FP_SURROUNDINGS_LEAN = {
  .outline = { 1, 1, -1, -1 },
  .seen = { 1, 1, -1, -1 },
  .tiers = { 3, 0, 4, 2 },
  .levels_on = FP_SIDE_RIGHT,
  .names_outside = TRUE,
};

const FpSurroundings FP_SURROUNDINGS_LEANEST = {
  .outline = { 1, 1, -1, -1 },
  .seen = { 1, 1, -1, -1 },
  .tiers = { 3, 0, 3, 0 },
  .terse = TRUE,
  .levels_on = FP_SIDE_RIGHT,
};

/* --- where the view lies -------------------------------------------------------- */

static FpBox
outline_on_paper (const FpAnnotation *self, FpProjection *projection)
{
  const FpBox *outline = &self->around.outline;

  return fp_box_is_empty (outline) ? fp_view_outline (projection, &self->layout) : fp_box_on_paper (&self->layout, outline);
}

static FpPoint
moved (FpPoint p, FpPoint by)
{
  return (FpPoint) { p.x + by.x, p.y + by.y };
}

static FpBox
moved_box (FpBox box, FpPoint by)
{
  if (fp_box_is_empty (&box))
    return box;
  return (FpBox) { box.x0 + by.x, box.y0 + by.y, box.x1 + by.x, box.y1 + by.y };
}

static void
keep_sections_free (FpAnnotation *self)
{
  FpSectionLine line[FP_N_VIEWS];
  const guint n = fp_annotation_section_lines (self, line);

  for (guint i = 0; i < n; i++)
    fp_section_line_cover (&line[i], self->room);
}

/* @times: how much larger the view is drawn than it is set out */
static void
set_out (FpAnnotation *self, FpProjection *projection, double times)
{
  self->sides.content = outline_on_paper (self, projection);
  self->shows = fp_annotation_find_shown (projection, &self->layout.clip);
  fp_annotation_keep_title_free (self, times);
  keep_sections_free (self);
  self->drawn = self->around.drawn != NULL ? g_array_ref (self->around.drawn)
                                           : fp_thinned_lines (projection, self->layout.scale);
  fp_annotation_place (self, projection);
}

/* The layout with what its projection says: where it is cut, and what is left out. */
static FpViewLayout
layout_of (const FpProjection *projection, const FpViewLayout *layout)
{
  const FpViewId view = fp_projection_view (projection);
  FpViewLayout own = *layout;

  own.hidden = fp_projection_hidden (projection);
  own.dimensions = layout->dimensions && fp_shows (own.hidden, FP_SHOW_DIMENSIONS);
  own.levels = layout->levels && fp_shows (own.hidden, FP_SHOW_LEVELS);
  if (view != FP_VIEW_PLAN)
    own.section[view] = fp_projection_cut (projection);
  return own;
}

/* The scale, and what a view that stands alone has to explain. */
static char *
scale_words (const FpAnnotation *self, FpProjection *projection, const FpViewLayout *layout, const FpSurroundings *around)
{
  const gboolean alone = !around->has_title_at && !around->terse;
  g_autofree char *scale = fp_view_scale_words (layout, self->view, alone);
  g_autofree char *set = alone && layout->labels && fp_shows (layout->hidden, FP_SHOW_NAMES)
                           ? fp_set_marks_words (fp_projection_scene (projection), layout, self->view) : NULL;

  return set != NULL ? g_strconcat (scale, ", ", set, NULL) : g_steal_pointer (&scale);
}

/* All is set out about (0, 0) and moved afterwards: where dimensions stand must not depend on the last
 * digit of where the view lies, or they would jump as the sheet is moved.
 *
 * What is zoomed is set out at the next smaller scale of a ladder and then grows about (0, 0), the lettering as it was:
 * what was clear of each other remains so, and between two steps of the ladder nothing comes, goes or jumps. */
FpAnnotation *
fp_annotation_new (FpProjection *projection, const FpViewLayout *asked, const FpSurroundings *around)
{
  FpAnnotation *self = g_new0 (FpAnnotation, 1);
  const FpViewLayout own = layout_of (projection, asked), *layout = &own;
  const FpPoint to = layout->origin, back = { -to.x, -to.y };
  const double scale = around->steady ? fp_thin_scale (layout->scale) : layout->scale, times = scale / layout->scale;

  self->view = fp_projection_view (projection);
  self->scale = scale_words (self, projection, layout, around);
  self->layout = *layout;
  self->layout.origin = (FpPoint) { 0, 0 };
  self->layout.scale = scale;
  self->around = *around;
  self->around.seen = fp_box_shrunk (moved_box (around->seen, back), times);
  self->around.title_at = moved (around->title_at, back);
  self->room = fp_cover_new ();
  set_out (self, projection, times);
  if (around->memory != NULL)
    fp_view_memory_set (around->memory, scale, self->labels, self->wanted);
  self->layout.scale = layout->scale;
  fp_annotation_grow (self, times);
  self->sides.content = outline_on_paper (self, projection);
  fp_annotation_set_title_at (self);
  fp_annotation_set_margins (self);
  fp_annotation_move (self, to);
  self->layout = *layout;
  self->around = *around;
  return self;
}

void
fp_annotation_free (FpAnnotation *self)
{
  if (self == NULL)
    return;
  g_array_unref (self->wanted);
  g_ptr_array_unref (self->untold);
  g_array_unref (self->levels);
  g_array_unref (self->labels);
  g_array_unref (self->falls);
  g_array_unref (self->set);
  fp_cover_free (self->room);
  g_array_unref (self->drawn);
  g_free (self->shows);
  g_free (self->title);
  g_free (self->scale);
  g_free (self);
}

/* --- drawing -------------------------------------------------------------------- */

void
fp_annotation_draw (const FpAnnotation *self, FpDrawing *drawing, guint *number)
{
  FpSectionLine line[FP_N_VIEWS];
  const guint n = fp_annotation_section_lines (self, line);

  fp_set_marks_draw (drawing, self->set, self->view);
  fp_levels_draw (drawing, self->levels, &self->sides.content, self->view, number);
  fp_dimensions_draw (drawing, self->wanted, &self->sides, &self->around.seen, self->view, number);
  fp_falls_draw (drawing, self->falls, self->view);
  fp_labels_draw (drawing, self->labels, self->view);
  for (guint i = 0; i < n; i++)
    fp_section_line_draw (&line[i], drawing);
  if (self->layout.labels && !self->around.has_no_title)
    fp_annotation_draw_title (self, drawing);
}

guint
fp_drawing_last_dimension (const FpDrawing *drawing)
{
  guint n, last = 0;
  const FpMark *mark = fp_drawing_marks (drawing, &n);

  for (guint i = 0; i < n; i++)
    last = MAX (last, mark[i].dimension);
  return last;
}
