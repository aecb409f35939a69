/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "annotation.h"

#include <math.h>

#define TITLE_HEIGHT 3.5
#define SCALE_HEIGHT 2.5

/* From the outermost figure to the title, and from there to its scale, mm. */
#define TITLE_GAP 4.0
#define SCALE_GAP 4.0

/* The axis stands out beyond the view by this much, and stays clear of the first tier, mm. */
#define AXIS_OVERRUN 4.0

/* Labels stay this far inside the outline, mm. */
#define INSET 1.0

const FpSurroundings FP_SURROUNDINGS_ALONE = {
  .outline = { 1, 1, -1, -1 },
  .seen = { 1, 1, -1, -1 },
  .tiers = { 6, 4, 6, 5 },
  .levels_on = FP_SIDE_RIGHT,
};

const FpSurroundings FP_SURROUNDINGS_LEAN = {
  .outline = { 1, 1, -1, -1 },
  .seen = { 1, 1, -1, -1 },
  .tiers = { 3, 0, 4, 2 },
  .levels_on = FP_SIDE_RIGHT,
};

const FpSurroundings FP_SURROUNDINGS_LEANEST = {
  .outline = { 1, 1, -1, -1 },
  .seen = { 1, 1, -1, -1 },
  .tiers = { 3, 0, 3, 0 },
  .levels_on = FP_SIDE_RIGHT,
};

const char *
fp_view_title (FpViewId view)
{
  switch (view)
    {
    case FP_VIEW_PLAN: return "PLAN";
    case FP_VIEW_ELEVATION: return "ELEVATION, FACING EAST";
    case FP_VIEW_SECTION: return "SECTION ON THE AXIS";
    case FP_N_VIEWS: break;
    }
  return "";
}

char *
fp_scale_text (double scale)
{
  const double rounded = scale < 20 ? round (scale * 10) / 10 : round (scale);
  g_autofree char *number = fp_number_format (rounded);

  return g_strdup_printf ("1:%s", number);
}

/* --- what a scale has room for -------------------------------------------------- */

/* The smaller the scale, the fewer measures: those of a rank that would only be a heap of figures
 * are not even tried (design judgement). */
static guint
most_rank (double scale)
{
  return scale <= 30 ? 99 : scale <= 60 ? 9 : scale <= 120 ? 4 : scale <= 220 ? 1 : 0;
}

static gboolean
is_legible (double scale)
{
  return scale <= 320;
}

/* --- what the view shows ------------------------------------------------------------ */

static FpBox
box_on_paper (const FpViewLayout *layout, const FpBox *box)
{
  const FpPoint a = fp_view_to_paper (layout, (FpPoint) { box->x0, box->y0 });
  const FpPoint b = fp_view_to_paper (layout, (FpPoint) { box->x1, box->y1 });

  return (FpBox) { a.x, a.y, b.x, b.y };
}

FpBox
fp_view_outline (FpProjection *projection, const FpViewLayout *layout)
{
  FpBox box = fp_projection_box (projection);

  if (!fp_box_is_empty (&layout->clip))
    box = (FpBox) { MAX (box.x0, layout->clip.x0), MAX (box.y0, layout->clip.y0), MIN (box.x1, layout->clip.x1),
                    MIN (box.y1, layout->clip.y1) };
  if (fp_box_is_empty (&box))
    return (FpBox) { layout->origin.x, layout->origin.y, layout->origin.x, layout->origin.y };
  return box_on_paper (layout, &box);
}

static gboolean
is_within (const FpBox *clip, const FpProjectedLine *line)
{
  FpPoint a = line->a, b = line->b;

  return fp_clip_segment (&a, &b, clip);
}

/* A thing is shown when something of it that is not hidden is drawn. */
static gboolean *
find_shown (FpProjection *projection, const FpBox *clip)
{
  guint n, n_lines, n_cuts;
  const FpProjectedLine *line = fp_projection_lines (projection, &n_lines);
  const FpProjectedCut *cut = fp_projection_cuts (projection, &n_cuts);
  gboolean *shows;

  fp_scene_placed (fp_projection_scene (projection), &n);
  shows = g_new0 (gboolean, MAX (n, 1u));
  for (guint i = 0; i < n_lines; i++)
    if (line[i].owner < n && !shows[line[i].owner] && line[i].pen != FP_PEN_HIDDEN && is_within (clip, &line[i]))
      shows[line[i].owner] = TRUE;
  for (guint i = 0; i < n_cuts; i++)
    if (cut[i].owner < n)
      shows[cut[i].owner] = TRUE;
  return shows;
}

/* --- the room ------------------------------------------------------------------------- */

/* Lines are kept only for the labels, which stand on the plan alone. */
static void
add_objects (FpAnnotation *self, FpProjection *projection)
{
  guint n_lines, n_cuts;
  const FpProjectedLine *line = fp_projection_lines (projection, &n_lines);
  const FpProjectedCut *cut = fp_projection_cuts (projection, &n_cuts);
  const FpBox within = fp_view_outline (projection, &self->layout);
  const FpBox *seen = fp_box_is_empty (&self->around.seen) ? &within : &self->around.seen;

  for (guint i = 0; i < n_lines; i++)
    {
      FpPoint a = fp_view_to_paper (&self->layout, line[i].a), b = fp_view_to_paper (&self->layout, line[i].b);
      if (fp_clip_segment (&a, &b, &within) && fp_clip_segment (&a, &b, seen))
        fp_cover_add_object (self->room, a, b);
    }
  for (guint i = 0; i < n_cuts; i++)
    {
      g_autofree FpPoint *pt = g_new (FpPoint, MAX (cut[i].n, 1u));
      for (guint j = 0; j < cut[i].n; j++)
        pt[j] = fp_view_to_paper (&self->layout, cut[i].outline[j]);
      fp_cover_add_filled (self->room, pt, cut[i].n);
    }
}

/* --- setting out ------------------------------------------------------------------------ */

static void
set_sides (FpAnnotation *self)
{
  for (FpSide side = 0; side < FP_N_SIDES; side++)
    {
      const double levels = fp_levels_reach (self->levels, side);
      self->sides.first[side] = MAX (FP_TIER_FIRST, levels > 0 ? levels + 4 + FP_FIGURE_HEIGHT : 0);
      self->sides.tiers[side] = self->layout.dimensions ? self->around.tiers[side] : 0;
    }
  /* From above the walls down to what stands on the floor nothing can be told. */
  self->sides.full_only[FP_SIDE_ABOVE] = self->view != FP_VIEW_PLAN;
}

static void
set_levels (FpAnnotation *self, const FpScene *scene)
{
  const gboolean wanted = self->layout.levels && self->view != FP_VIEW_PLAN && is_legible (self->layout.scale);
  const guint rank = most_rank (self->layout.scale) + 2;

  self->levels = wanted ? fp_levels_gather (scene, &self->layout, self->view, self->shows, rank)
                        : g_array_new (FALSE, FALSE, sizeof (FpLevelMark));
  fp_levels_place (self->levels, &self->sides.content, self->around.levels_on,
                   self->around.levels_only_there, self->room);
}

static void
set_dimensions (FpAnnotation *self, const FpScene *scene)
{
  if (self->layout.dimensions && is_legible (self->layout.scale))
    self->wanted = fp_wanted_gather (scene, &self->layout, self->view, self->shows, &self->sides.content,
                                     most_rank (self->layout.scale), self->around.shown);
  else
    self->wanted = g_array_new (FALSE, FALSE, sizeof (FpWanted));
  self->left_out = fp_tiers_place (self->wanted, &self->sides, self->room);
  if (self->around.shown != NULL)
    fp_wanted_note (self->wanted, self->around.shown);
}

static void
set_title (FpAnnotation *self)
{
  const FpBox *outline = &self->sides.content;
  const double above = MAX (fp_tiers_reach (self->wanted, &self->sides, FP_SIDE_ABOVE), AXIS_OVERRUN);

  self->title = g_strdup (fp_view_title (self->view));
  self->scale = fp_scale_text (self->layout.scale);
  self->title_at = self->around.has_title_at ? self->around.title_at
                                             : (FpPoint) { outline->x0, outline->y1 + above + TITLE_GAP };
}

static double
title_width (const FpAnnotation *self)
{
  return fp_lettering_width (self->title, TITLE_HEIGHT) + SCALE_GAP + fp_lettering_width (self->scale, SCALE_HEIGHT);
}

/* All that dimensions, levels and the title cover, paper mm. */
static FpBox
covered (const FpAnnotation *self)
{
  FpBox box = self->sides.content;

  for (guint i = 0; i < self->wanted->len; i++)
    {
      const FpWanted *w = &g_array_index (self->wanted, FpWanted, i);
      FpDimensionLine d;
      if (!w->placed)
        continue;
      fp_dimension_line (w, &self->sides, &d);
      fp_box_add_box (&box, &d.figure);
      for (guint e = 0; e < 2; e++)
        {
          fp_box_add_point (&box, d.extension[e][1]);
          fp_box_add_point (&box, d.stroke[e][0]);
          fp_box_add_point (&box, d.stroke[e][1]);
        }
    }
  fp_levels_add_boxes (self->levels, &self->sides.content, &box);
  return box;
}

static void
set_margins (FpAnnotation *self)
{
  const FpBox *outline = &self->sides.content;
  const FpBox box = covered (self);
  const double title = self->layout.labels ? outline->x0 + title_width (self) : outline->x0;

  self->margins = (FpMargins) {
    .left = outline->x0 - box.x0,
    .below = MAX (outline->y0 - box.y0, AXIS_OVERRUN),
    .right = MAX (box.x1, title) - outline->x1,
    .above = MAX (box.y1 - outline->y1, AXIS_OVERRUN) + (self->layout.labels ? TITLE_GAP + TITLE_HEIGHT + 3 : 0),
  };
}

static void
set_labels (FpAnnotation *self, FpProjection *projection)
{
  const FpBox outline = fp_view_outline (projection, &self->layout);
  const FpBox inside = { outline.x0 + INSET, outline.y0 + INSET, outline.x1 - INSET, outline.y1 - INSET };

  if (self->layout.labels && self->view == FP_VIEW_PLAN && is_legible (self->layout.scale))
    {
      add_objects (self, projection);
      self->labels = fp_labels_place (projection, &self->layout, self->shows, &inside, self->room);
    }
  else
    self->labels = g_array_new (FALSE, FALSE, sizeof (FpLabel));
}

/* --- where the view lies -------------------------------------------------------------------- */

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
move_label (FpLabel *label, FpPoint by)
{
  label->at = moved (label->at, by);
  label->ground = moved_box (label->ground, by);
  label->leader[0] = moved (label->leader[0], by);
  label->leader[1] = moved (label->leader[1], by);
}

static void
move_by (FpAnnotation *self, FpPoint by)
{
  self->sides.content = moved_box (self->sides.content, by);
  self->title_at = moved (self->title_at, by);
  for (guint i = 0; i < self->wanted->len; i++)
    {
      FpWanted *w = &g_array_index (self->wanted, FpWanted, i);
      w->a = moved (w->a, by);
      w->b = moved (w->b, by);
      w->lo += w->upright ? by.y : by.x;
      w->hi += w->upright ? by.y : by.x;
    }
  for (guint i = 0; i < self->levels->len; i++)
    g_array_index (self->levels, FpLevelMark, i).v += by.y;
  for (guint i = 0; i < self->labels->len; i++)
    move_label (&g_array_index (self->labels, FpLabel, i), by);
}

/* All is set out about (0, 0) and moved afterwards: where dimensions stand must not depend on the last
 * digit of where the view lies, or they would jump as the sheet is moved. */
FpAnnotation *
fp_annotation_new (FpProjection *projection, const FpViewLayout *layout, const FpSurroundings *around)
{
  FpAnnotation *self = g_new0 (FpAnnotation, 1);
  const FpScene *scene = fp_projection_scene (projection);
  const FpPoint to = layout->origin, back = { -to.x, -to.y };

  self->view = fp_projection_view (projection);
  self->layout = *layout;
  self->layout.origin = (FpPoint) { 0, 0 };
  self->around = *around;
  self->around.seen = moved_box (around->seen, back);
  self->around.title_at = moved (around->title_at, back);
  self->room = fp_cover_new ();
  self->sides.content = fp_box_is_empty (&around->outline) ? fp_view_outline (projection, &self->layout)
                                                           : box_on_paper (&self->layout, &around->outline);
  self->shows = find_shown (projection, &layout->clip);
  set_levels (self, scene);
  set_sides (self);
  set_dimensions (self, scene);
  set_title (self);
  set_margins (self);
  set_labels (self, projection);
  move_by (self, to);
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
  g_array_unref (self->levels);
  g_array_unref (self->labels);
  fp_cover_free (self->room);
  g_free (self->shows);
  g_free (self->title);
  g_free (self->scale);
  g_free (self);
}

/* --- drawing -------------------------------------------------------------------------------- */

/* On a board the title may have to stand before a high wall: then the wall gives way. */
static void
draw_ground (const FpAnnotation *self, FpDrawing *drawing)
{
  const FpPoint at = self->title_at;
  const FpBox box = { at.x - 1.5, at.y - 1.5, at.x + title_width (self) + 1.5, at.y + TITLE_HEIGHT + 1.5 };
  const FpPoint corner[4] = { { box.x0, box.y0 }, { box.x1, box.y0 }, { box.x1, box.y1 }, { box.x0, box.y1 } };

  if (self->around.has_title_at && fp_box_overlaps (&box, &self->sides.content))
    fp_drawing_area (drawing, FP_PEN_HATCH, FP_FILL_PAPER, 0, corner, 4);
}

static void
draw_title (const FpAnnotation *self, FpDrawing *drawing)
{
  const double width = fp_lettering_width (self->title, TITLE_HEIGHT);

  fp_drawing_set_item (drawing, NULL, FP_STANDING_EXISTING, (int) self->view);
  draw_ground (self, drawing);
  fp_drawing_text (drawing, self->title_at, TITLE_HEIGHT, 0, FP_ALIGN_LEFT, self->title);
  fp_drawing_text (drawing, (FpPoint) { self->title_at.x + width + SCALE_GAP, self->title_at.y }, SCALE_HEIGHT, 0,
                   FP_ALIGN_LEFT, self->scale);
}

FpPoint
fp_annotation_after_title (const FpAnnotation *self, double gap)
{
  return (FpPoint) { self->title_at.x + title_width (self) + gap, self->title_at.y + TITLE_HEIGHT / 2 };
}

void
fp_annotation_draw (const FpAnnotation *self, FpDrawing *drawing, guint *number)
{
  fp_levels_draw (drawing, self->levels, &self->sides.content, self->view, number);
  fp_tiers_draw (drawing, self->wanted, &self->sides, self->view, number);
  fp_labels_draw (drawing, self->labels, self->view);
  if (self->layout.labels)
    draw_title (self, drawing);
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
