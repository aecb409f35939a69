/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "annotation.h"

#include "dimension-line.h"
#include "near.h"
#include "thin.h"

#include <math.h>

#define TITLE_HEIGHT 3.5
#define SCALE_HEIGHT 2.5

/* From the outermost figure to the title, and from there to its scale, mm. */
#define TITLE_GAP 4.0
#define SCALE_GAP 4.0
#define TITLE_CLEAR 1.2
#define NORTH_POINT 18.0
#define TITLE_OWNER 300000

/* The axis stands out beyond the view by this much, and stays clear of the first tier, mm. */
#define AXIS_OVERRUN 4.0

/* Labels stay this far inside the outline, mm. */
#define INSET 1.0

/* What lies so near the edge of the view is dimensioned beside it, mm. */
#define AT_EDGE 4.0

/* Longer extension lines would cut the drawing to pieces (design judgement), mm. */
#define LONGEST            30.0
#define LONGEST_FROM_ABOVE 12.0

/* So much of what lies off the paper counts too: what is seen must not depend on where the paper ends, mm. */
#define UNSEEN 200.0

/* At smaller scales no slope can be seen. */
#define FALLS_SMALLEST 320.0

/* Measures of a greater rank come after the names. */
#define NAME_RANK 3u

/* Tiers beyond the usual for what must be told. */
#define MORE_TIERS 2u

/* Dimensions within the view may stand out by this much: nearer than the first tier, mm. */
#define STANDS_OUT 3.9

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
  .terse = TRUE,
  .levels_on = FP_SIDE_RIGHT,
};

/* --- what a scale has room for -------------------------------------------------- */

/* The smaller the scale, the fewer measures: those of a rank that would only be a heap of figures
 * are not even tried (design judgement). */
static guint
most_rank (double scale)
{
  return scale <= 30 ? 99 : scale <= 60 ? 9 : scale <= 120 ? 4 : scale <= 220 ? 1 : 0;
}

/* At the smallest scales the church is a sign of itself. */
static gboolean
is_legible (double scale)
{
  return scale <= 1000;
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

/* Break lines take a strip as wide as their zigzags. */
static void
add_breaks (FpAnnotation *self, FpProjection *projection)
{
  FpSegment line[4];
  const guint n = fp_view_breaks (projection, &self->layout, line);

  for (guint i = 0; i < n; i++)
    {
      const double dx = line[i].a.x == line[i].b.x ? FP_BREAK_HALF : 0, dy = dx > 0 ? 0 : FP_BREAK_HALF;
      for (int k = -1; k <= 1; k++)
        fp_cover_add_object (self->room, (FpPoint) { line[i].a.x + k * dx, line[i].a.y + k * dy },
                             (FpPoint) { line[i].b.x + k * dx, line[i].b.y + k * dy }, 0);
    }
}

static void
add_objects (FpAnnotation *self, FpProjection *projection)
{
  const GArray *lines = self->drawn;
  guint n_cuts;
  const FpProjectedCut *cut = fp_projection_cuts (projection, &n_cuts);
  const FpBox within = fp_view_outline (projection, &self->layout);
  const FpBox *paper = &self->around.seen;
  const FpBox about = { paper->x0 - UNSEEN, paper->y0 - UNSEEN, paper->x1 + UNSEEN, paper->y1 + UNSEEN };
  const FpBox *seen = fp_box_is_empty (paper) ? &within : &about;

  for (guint i = 0; i < lines->len; i++)
    {
      const FpProjectedLine *line = &g_array_index (lines, FpProjectedLine, i);
      FpPoint a = fp_view_to_paper (&self->layout, line->a), b = fp_view_to_paper (&self->layout, line->b);
      if (fp_clip_segment (&a, &b, &within) && fp_clip_segment (&a, &b, seen))
        fp_cover_add_object (self->room, a, b, line->owner + 1);
    }
  add_breaks (self, projection);
  for (guint i = 0; i < n_cuts; i++)
    {
      g_autofree FpPoint *pt = g_new (FpPoint, MAX (cut[i].n, 1u));
      for (guint j = 0; j < cut[i].n; j++)
        pt[j] = fp_view_to_paper (&self->layout, cut[i].outline[j]);
      fp_cover_add_filled (self->room, pt, cut[i].n);
    }
}

/* --- title -------------------------------------------------------------------------------- */

static double
title_width (const FpAnnotation *self)
{
  return fp_lettering_width (self->title, TITLE_HEIGHT) + SCALE_GAP + fp_lettering_width (self->scale, SCALE_HEIGHT);
}

double
fp_view_title_width (FpViewId view, const FpCut *cut, double scale)
{
  g_autofree char *text = fp_scale_text (scale), *title = fp_view_title (view, cut);

  return fp_lettering_width (title, TITLE_HEIGHT) + SCALE_GAP
         + fp_lettering_width (text, SCALE_HEIGHT) + (view == FP_VIEW_PLAN ? NORTH_POINT : 0);
}

static FpBox
title_box (const FpAnnotation *self)
{
  const FpPoint at = self->title_at;
  const double width = title_width (self) + (self->view == FP_VIEW_PLAN ? NORTH_POINT : 0);

  return (FpBox) { at.x - TITLE_CLEAR, at.y - TITLE_CLEAR, at.x + width + TITLE_CLEAR, at.y + TITLE_HEIGHT + TITLE_CLEAR };
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

static FpBox
shrunk (FpBox box, double times)
{
  if (fp_box_is_empty (&box))
    return box;
  return (FpBox) { box.x0 / times, box.y0 / times, box.x1 / times, box.y1 / times };
}

/* A title that has its place keeps it. */
static void
keep_title_free (FpAnnotation *self, double times)
{
  FpBox box;

  self->title = fp_view_title (self->view, &self->layout.section[self->view]);
  if (!self->around.has_title_at || self->around.has_no_title || !self->layout.labels)
    return;
  self->title_at = self->around.title_at;
  box = shrunk (title_box (self), times);
  fp_cover_take_text (self->room, &box, TITLE_OWNER);
}

/* --- setting out ------------------------------------------------------------------------ */

static guint
section_lines (const FpAnnotation *self, FpSectionLine out[FP_N_VIEWS])
{
  return self->view == FP_VIEW_PLAN ? fp_section_lines (&self->layout, &self->sides.content, out) : 0;
}

static void
keep_sections_free (FpAnnotation *self)
{
  FpSectionLine line[FP_N_VIEWS];
  const guint n = section_lines (self, line);

  for (guint i = 0; i < n; i++)
    fp_section_line_cover (&line[i], self->room);
}

static void
set_sides (FpAnnotation *self)
{
  for (FpSide side = 0; side < FP_N_SIDES; side++)
    {
      const double levels = fp_levels_reach (self->levels, side);
      self->sides.first[side] = MAX (FP_TIER_FIRST, levels > 0 ? levels + 4 + FP_FIGURE_HEIGHT : 0);
      self->sides.tiers[side] = self->layout.dimensions ? self->around.tiers[side] : 0;
      self->sides.longest[side] = LONGEST;
    }
  self->sides.more = self->around.has_title_at || !self->layout.dimensions ? 0 : MORE_TIERS;
  /* From above the walls down to what stands on the floor nothing can be told. */
  if (self->view != FP_VIEW_PLAN)
    self->sides.longest[FP_SIDE_ABOVE] = LONGEST_FROM_ABOVE;
}

static void
set_levels (FpAnnotation *self, const FpScene *scene)
{
  const gboolean wanted = self->layout.levels && self->view != FP_VIEW_PLAN && is_legible (self->layout.scale);
  const guint rank = most_rank (self->layout.scale) + 2;

  self->levels = wanted ? fp_levels_gather (scene, &self->layout, self->view, self->shows, rank,
                                           !self->around.levels_only_there)
                        : g_array_new (FALSE, FALSE, sizeof (FpLevelMark));
  fp_levels_place (self->levels, &self->sides.content, self->around.levels_on,
                   self->around.levels_only_there, self->room);
}

static void
place_near (FpAnnotation *self, FpNearAmong among, guint rank_max)
{
  const FpBox *c = &self->sides.content;
  /* On a board the next view stands beside it. */
  const double aside = self->around.has_title_at ? 0 : STANDS_OUT;
  const FpBox within = { c->x0 - aside, c->y0 - STANDS_OUT, c->x1 + aside, c->y1 + STANDS_OUT };
  const double axis = self->view == FP_VIEW_SECTION ? NAN : self->layout.origin.x;
  const FpViewMemory *before = fp_view_memory_at (self->around.memory, self->layout.scale);

  fp_near_place (self->wanted, among, rank_max, before != NULL ? before->wanted : NULL, &within, axis, self->room);
}

/* What must be told comes before all else: where it stands well, and then wherever it can. */
static void
place_musts (FpAnnotation *self, FpTiers *tiers)
{
  fp_tiers_place (tiers, AT_EDGE, FP_TIERS_MUSTS);
  place_near (self, FP_NEAR_MUSTS, G_MAXUINT);
  fp_tiers_place (tiers, LONGEST, FP_TIERS_MUSTS);
  place_near (self, FP_NEAR_INSIST, G_MAXUINT);
  fp_tiers_place (tiers, LONGEST, FP_TIERS_INSIST);
  place_near (self, FP_NEAR_ANYHOW, G_MAXUINT);
}

/* First what lies at the edge of the view, beside it; then the foremost of what lies within, near where it stands. */
static void
place_foremost (FpAnnotation *self, FpTiers *tiers)
{
  fp_tiers_place (tiers, AT_EDGE, FP_TIERS_ALL);
  place_near (self, FP_NEAR_ALL, NAME_RANK);
}

/* Names come before measures of the lesser things; what then is left goes beside the view if extension lines can
 * reach it. */
static void
place_rest (FpAnnotation *self, FpTiers *tiers)
{
  place_near (self, FP_NEAR_ALL, G_MAXUINT);
  fp_tiers_place (tiers, LONGEST, FP_TIERS_ALL);
  fp_tiers_settle (tiers);
  fp_tiers_place_late (tiers);
  place_near (self, FP_NEAR_ANYHOW, G_MAXUINT);
  self->untold = g_ptr_array_new_with_free_func (g_free);
  fp_wanted_untold (self->wanted, self->around.shown, self->untold);
  fp_levels_untold (self->levels, self->untold);
  self->left_out = 0;
  for (guint i = 0; i < self->wanted->len; i++)
    self->left_out += g_array_index (self->wanted, FpWanted, i).placed == FP_PLACED_NOT ? 1 : 0;
}

/* What must be told is told in words where the church is a sign of itself. */
static void
keep_musts_alone (GArray *wanted)
{
  for (guint i = wanted->len; i-- > 0;)
    if (g_array_index (wanted, FpWanted, i).must == NULL)
      g_array_remove_index (wanted, i);
}

static void
gather_dimensions (FpAnnotation *self, const FpScene *scene)
{
  if (!self->layout.dimensions)
    {
      self->wanted = g_array_new (FALSE, FALSE, sizeof (FpWanted));
      return;
    }
  self->wanted = fp_wanted_gather (scene, &self->layout, self->view, self->shows, &self->sides.content,
                                   most_rank (self->layout.scale), self->around.shown);
  if (!is_legible (self->layout.scale))
    keep_musts_alone (self->wanted);
}

static void
set_labels (FpAnnotation *self, FpProjection *projection, FpLabelsAmong among)
{
  const FpBox outline = fp_view_outline (projection, &self->layout);
  const FpBox inside = { outline.x0 + INSET, outline.y0 + INSET, outline.x1 - INSET, outline.y1 - INSET };
  const FpViewMemory *before = fp_view_memory_at (self->around.memory, self->layout.scale);

  if (self->layout.labels && fp_shows (self->layout.hidden, FP_SHOW_NAMES) && self->view == FP_VIEW_PLAN && is_legible (self->layout.scale))
    fp_labels_place (projection, &self->layout, self->shows, self->drawn, &inside, among,
                     before != NULL ? before->labels : NULL, self->room, self->labels);
}

static void
set_falls (FpAnnotation *self, FpProjection *projection)
{
  if (self->layout.levels && self->layout.scale <= FALLS_SMALLEST)
    self->falls = fp_falls_place (projection, &self->layout, &self->sides.content, self->room);
  else
    self->falls = g_array_new (FALSE, FALSE, sizeof (FpFall));
}

static void
set_dimensions_and_labels (FpAnnotation *self, FpProjection *projection)
{
  g_autoptr (FpTiers) tiers = NULL;

  gather_dimensions (self, fp_projection_scene (projection));
  tiers = fp_tiers_new (self->wanted, &self->sides, self->room);
  self->labels = fp_labels_new ();
  set_labels (self, projection, FP_LABELS_ALTAR);
  place_musts (self, tiers);
  place_foremost (self, tiers);
  set_falls (self, projection);
  set_labels (self, projection, FP_LABELS_REST);
  place_rest (self, tiers);
  if (self->around.shown != NULL)
    fp_wanted_note (self->wanted, self->around.shown);
}

/* All that dimensions, levels and the title cover, paper mm. */
static FpBox
covered (const FpAnnotation *self)
{
  FpBox box = self->sides.content;
  FpSectionLine line[FP_N_VIEWS];
  const guint n = section_lines (self, line);

  for (guint i = 0; i < n; i++)
    fp_section_line_add_box (&line[i], &box);
  for (guint i = 0; i < self->wanted->len; i++)
    {
      const FpWanted *w = &g_array_index (self->wanted, FpWanted, i);
      FpDimensionLine d;
      if (w->placed == FP_PLACED_NOT)
        continue;
      fp_dimension_line (w, &self->sides, &d);
      fp_dimension_line_add_box (&d, &box);
    }
  fp_levels_add_boxes (self->levels, &self->sides.content, &box);
  for (guint i = 0; i < self->falls->len; i++)
    fp_box_add_point (&box, g_array_index (self->falls, FpFall, i).to);
  return box;
}

static void
set_title_at (FpAnnotation *self)
{
  const FpBox *outline = &self->sides.content;
  double above = AXIS_OVERRUN;

  if (self->around.has_title_at)
    return;
  above = MAX (above, fp_tiers_reach (self->wanted, &self->sides, FP_SIDE_ABOVE));
  above = MAX (above, covered (self).y1 - outline->y1);
  self->title_at = (FpPoint) { outline->x0, outline->y1 + above + TITLE_GAP };
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

/* --- where the view lies -------------------------------------------------------------------- */

static FpBox
outline_on_paper (const FpAnnotation *self, FpProjection *projection)
{
  const FpBox *outline = &self->around.outline;

  return fp_box_is_empty (outline) ? fp_view_outline (projection, &self->layout) : box_on_paper (&self->layout, outline);
}

/* @times: how much larger the view is drawn than it is set out */
static void
set_out (FpAnnotation *self, FpProjection *projection, double times)
{
  const FpScene *scene = fp_projection_scene (projection);

  self->sides.content = outline_on_paper (self, projection);
  self->shows = find_shown (projection, &self->layout.clip);
  keep_title_free (self, times);
  keep_sections_free (self);
  set_levels (self, scene);
  set_sides (self);
  self->drawn = fp_thinned_lines (projection, self->layout.scale);
  if (self->layout.dimensions || self->layout.labels)
    add_objects (self, projection);
  set_dimensions_and_labels (self, projection);
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
  self->scale = fp_view_scale_words (layout, self->view, !around->has_title_at && !around->terse);
  self->layout = *layout;
  self->layout.origin = (FpPoint) { 0, 0 };
  self->layout.scale = scale;
  self->around = *around;
  self->around.seen = shrunk (moved_box (around->seen, back), times);
  self->around.title_at = moved (around->title_at, back);
  self->room = fp_cover_new ();
  set_out (self, projection, times);
  if (around->memory != NULL)
    fp_view_memory_set (around->memory, scale, self->labels, self->wanted);
  self->layout.scale = layout->scale;
  fp_annotation_grow (self, times);
  self->sides.content = outline_on_paper (self, projection);
  set_title_at (self);
  set_margins (self);
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
  fp_cover_free (self->room);
  g_array_unref (self->drawn);
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
  FpSectionLine line[FP_N_VIEWS];
  const guint n = section_lines (self, line);

  fp_levels_draw (drawing, self->levels, &self->sides.content, self->view, number);
  fp_dimensions_draw (drawing, self->wanted, &self->sides, &self->around.seen, self->view, number);
  fp_falls_draw (drawing, self->falls, self->view);
  fp_labels_draw (drawing, self->labels, self->view);
  for (guint i = 0; i < n; i++)
    fp_section_line_draw (&line[i], drawing);
  if (self->layout.labels && !self->around.has_no_title)
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
