/* SPDX-License-Identifier: GPL-3.0-or-later */
/* annotation-room.c - what a view shows, and what paper is covered by it */
#include "annotation-private.h"

#include "dimension-line.h"
#include "pew-block.h"

/* So much of what lies off the paper counts too: what is seen must not depend on where the paper ends, mm. */
#define UNSEEN 200.0

/* --- what the view shows -------------------------------------------------------- */

FpBox
fp_box_on_paper (const FpViewLayout *layout, const FpBox *box)
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
  return fp_box_on_paper (layout, &box);
}

static gboolean
is_within (const FpBox *clip, const FpProjectedLine *line)
{
  FpPoint a = line->a, b = line->b;

  return fp_clip_segment (&a, &b, clip);
}

static gboolean
is_cut_within (const FpBox *clip, const FpProjectedCut *cut)
{
  const FpBox box = fp_outline_box (cut->outline, cut->n);

  return fp_box_is_empty (clip) || fp_box_overlaps (clip, &box);
}

/* A thing is shown when something of it that is not hidden is drawn. */
gboolean *
fp_annotation_find_shown (FpProjection *projection, const FpBox *clip)
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
    if (cut[i].owner < n && is_cut_within (clip, &cut[i]))
      shows[cut[i].owner] = TRUE;
  return shows;
}

/* --- what is drawn covers paper ------------------------------------------------- */

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

/* What the plan shows of them; what is taken away gives way. */
static void
add_rows (FpAnnotation *self, const FpScene *scene)
{
  guint n;
  const FpPlaced *placed = fp_scene_placed (scene, &n);

  for (guint i = 0; i < n; i++)
    {
      FpPoint pt[FP_PEWS_CORNERS];
      if (!self->shows[i] || placed[i].ghost || fp_item_kind (placed[i].item)->role != FP_ROLE_PEWS)
        continue;
      fp_pews_field (&placed[i], pt);
      for (guint k = 0; k < FP_PEWS_CORNERS; k++)
        pt[k] = fp_view_to_paper (&self->layout, pt[k]);
      fp_cover_add_rows (self->room, pt, FP_PEWS_CORNERS);
    }
}

void
fp_annotation_cover_objects (FpAnnotation *self, FpProjection *projection)
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
  if (self->view == FP_VIEW_PLAN)
    add_rows (self, fp_projection_scene (projection));
  for (guint i = 0; i < n_cuts; i++)
    {
      g_autofree FpPoint *pt = g_new (FpPoint, MAX (cut[i].n, 1u));
      for (guint j = 0; j < cut[i].n; j++)
        pt[j] = fp_view_to_paper (&self->layout, cut[i].outline[j]);
      fp_cover_add_filled (self->room, pt, cut[i].n);
    }
}

/* --- what was set out covers paper ---------------------------------------------- */

guint
fp_annotation_section_lines (const FpAnnotation *self, FpSectionLine out[FP_N_VIEWS])
{
  return self->view == FP_VIEW_PLAN ? fp_section_lines (&self->layout, &self->sides.content, out) : 0;
}

/* All that dimensions, levels and the title cover, paper mm. */
FpBox
fp_annotation_covered (const FpAnnotation *self)
{
  FpBox box = self->sides.content;
  FpSectionLine line[FP_N_VIEWS];
  const guint n = fp_annotation_section_lines (self, line);

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
  fp_labels_add_boxes (self->labels, &box);
  for (guint i = 0; i < self->falls->len; i++)
    fp_box_add_point (&box, g_array_index (self->falls, FpFall, i).to);
  return box;
}
