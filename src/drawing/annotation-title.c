/* SPDX-License-Identifier: GPL-3.0-or-later */
/* annotation-title.c - the title of a view: where it stands, and how much room it and the rest take around the view */
#include "annotation-private.h"

#define TITLE_HEIGHT 3.5
#define SCALE_HEIGHT 2.5

/* From the outermost figure to the title, and from there to its scale, mm. */
#define TITLE_GAP 4.0
#define SCALE_GAP 4.0
#define TITLE_CLEAR 1.2
#define NORTH_POINT 18.0
#define TITLE_OWNER 300000

/* --- how wide it is ------------------------------------------------------------- */

static double
title_width (const FpAnnotation *self)
{
  return fp_lettering_width (self->title, TITLE_HEIGHT) + SCALE_GAP + fp_lettering_width (self->scale, SCALE_HEIGHT);
}

double
fp_view_title_width (FpViewId view, const FpCut cuts[FP_N_VIEWS], double scale)
{
  g_autofree char *text = fp_scale_text (scale), *title = fp_view_title (view, cuts);

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

/* --- where it stands ------------------------------------------------------------ */

FpBox
fp_box_shrunk (FpBox box, double times)
{
  if (fp_box_is_empty (&box))
    return box;
  return (FpBox) { box.x0 / times, box.y0 / times, box.x1 / times, box.y1 / times };
}

/* A title that has its place keeps it. */
void
fp_annotation_keep_title_free (FpAnnotation *self, double times)
{
  FpBox box;

  self->title = fp_view_title (self->view, self->layout.section);
  if (!self->around.has_title_at || self->around.has_no_title || !self->layout.labels)
    return;
  self->title_at = self->around.title_at;
  box = fp_box_shrunk (title_box (self), times);
  fp_cover_take_text (self->room, &box, TITLE_OWNER);
}

void
fp_annotation_set_title_at (FpAnnotation *self)
{
  const FpBox *outline = &self->sides.content;
  double above = FP_AXIS_OVERRUN;

  if (self->around.has_title_at)
    return;
  above = MAX (above, fp_tiers_reach (self->wanted, &self->sides, FP_SIDE_ABOVE));
  above = MAX (above, fp_annotation_covered (self).y1 - outline->y1);
  self->title_at = (FpPoint) { outline->x0, outline->y1 + above + TITLE_GAP };
}

void
fp_annotation_set_margins (FpAnnotation *self)
{
  const FpBox *outline = &self->sides.content;
  const FpBox box = fp_annotation_covered (self);
  const double title = self->layout.labels ? outline->x0 + title_width (self) : outline->x0;

  self->margins = (FpMargins) {
    .left = outline->x0 - box.x0,
    .below = MAX (outline->y0 - box.y0, FP_AXIS_OVERRUN),
    .right = MAX (box.x1, title) - outline->x1,
    .above = MAX (box.y1 - outline->y1, FP_AXIS_OVERRUN) + (self->layout.labels ? TITLE_GAP + TITLE_HEIGHT + 3 : 0),
  };
}

FpPoint
fp_annotation_after_title (const FpAnnotation *self, double gap)
{
  return (FpPoint) { self->title_at.x + title_width (self) + gap, self->title_at.y + TITLE_HEIGHT / 2 };
}

/* --- drawing -------------------------------------------------------------------- */

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

void
fp_annotation_draw_title (const FpAnnotation *self, FpDrawing *drawing)
{
  const double width = fp_lettering_width (self->title, TITLE_HEIGHT);

  fp_drawing_set_item (drawing, NULL, FP_STANDING_EXISTING, (int) self->view);
  draw_ground (self, drawing);
  fp_drawing_text (drawing, self->title_at, TITLE_HEIGHT, 0, FP_ALIGN_LEFT, self->title);
  fp_drawing_text (drawing, (FpPoint) { self->title_at.x + width + SCALE_GAP, self->title_at.y }, SCALE_HEIGHT, 0,
                   FP_ALIGN_LEFT, self->scale);
}
