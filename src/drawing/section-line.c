/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "section-line.h"

#include <math.h>

/* All in mm: the thick end begins and ends so far from the outline; all of it stays within the first tier. */
#define FROM   1.0
#define TO     7.0
#define ARROW  7.0  /* its shaft and head                                    */
#define HEAD   3.0
#define SPREAD 0.8  /* half the width of the head: 30 degrees                */
#define LETTER 3.5  /* height                                                */
#define BESIDE 1.0  /* from the end of the shaft to the letter               */
/* Owners of dimensions are counted from 1; see annotation.c for others. */
#define OWNER  500000

static FpPoint
step (FpPoint from, FpPoint way, double by)
{
  return (FpPoint) { from.x + way.x * by, from.y + way.y * by };
}

static gboolean
set_line (const FpViewLayout *layout, FpViewId view, const FpBox *c, FpSectionLine *out)
{
  const FpCut *cut = &layout->section[view];
  const FpPoint at = fp_view_to_paper (layout, (FpPoint) { cut->at, cut->at });
  const double way = cut->turned ? -1 : 1;

  *out = (FpSectionLine) { .view = view, .letter = { fp_cut_letter (view), '\0' } };
  if (view == FP_VIEW_SECTION)
    {
      out->end[0] = (FpPoint) { at.x, c->y0 - TO };
      out->end[1] = (FpPoint) { at.x, c->y1 + TO };
      out->along = (FpPoint) { 0, 1 };
      out->looks = (FpPoint) { way, 0 };
      return at.x > c->x0 && at.x < c->x1;
    }
  out->end[0] = (FpPoint) { c->x0 - TO, at.y };
  out->end[1] = (FpPoint) { c->x1 + TO, at.y };
  out->along = (FpPoint) { 1, 0 };
  out->looks = (FpPoint) { 0, way };
  return at.y > c->y0 && at.y < c->y1;
}

guint
fp_section_lines (const FpViewLayout *layout, const FpBox *content, FpSectionLine out[FP_N_VIEWS])
{
  guint n = 0;

  for (FpViewId v = FP_VIEW_PLAN + 1; v < FP_N_VIEWS; v++)
    if (layout->section[v].placed && set_line (layout, v, content, &out[n]))
      n++;
  return n;
}

/* The middle of the letter at an end. */
static FpPoint
letter_at (const FpSectionLine *self, guint end)
{
  return step (self->end[end], self->looks, -ARROW - BESIDE - LETTER / 2);
}

static FpBox
letter_box (const FpSectionLine *self, guint end)
{
  const FpPoint at = letter_at (self, end);
  const double half = LETTER / 2 + BESIDE;

  return (FpBox) { at.x - half, at.y - half, at.x + half, at.y + half };
}

void
fp_section_line_cover (const FpSectionLine *self, FpCover *room)
{
  /* Dimension lines may pass over it, names may not lie on it. */
  fp_cover_add_object (room, self->end[0], self->end[1], 0);
  for (guint e = 0; e < 2; e++)
    {
      const FpBox box = letter_box (self, e);
      const FpPoint inner = step (self->end[e], self->along, e == 0 ? TO - FROM : FROM - TO);

      fp_cover_take_line (room, self->end[e], inner, OWNER + (guint) self->view);
      fp_cover_take_line (room, self->end[e], step (self->end[e], self->looks, -ARROW), OWNER + (guint) self->view);
      fp_cover_take_text (room, &box, OWNER + (guint) self->view);
    }
}

void
fp_section_line_add_box (const FpSectionLine *self, FpBox *box)
{
  for (guint e = 0; e < 2; e++)
    {
      const FpBox letter = letter_box (self, e);

      fp_box_add_box (box, &letter);
      fp_box_add_point (box, self->end[e]);
    }
}

static void
draw_end (const FpSectionLine *self, FpDrawing *drawing, guint e)
{
  const FpPoint end = self->end[e], neck = step (end, self->looks, -HEAD), at = letter_at (self, e);
  const FpPoint head[3] = { end, step (neck, self->along, SPREAD), step (neck, self->along, -SPREAD) };

  fp_drawing_line (drawing, FP_PEN_CUT, end, step (end, self->along, e == 0 ? TO - FROM : FROM - TO));
  fp_drawing_line (drawing, FP_PEN_OUTLINE, step (end, self->looks, -ARROW), neck);
  fp_drawing_area (drawing, FP_PEN_HATCH, FP_FILL_INK, 0, head, 3);
  fp_drawing_text (drawing, (FpPoint) { at.x, at.y - LETTER / 2 }, LETTER, 0, FP_ALIGN_MIDDLE, self->letter);
}

void
fp_section_line_draw (const FpSectionLine *self, FpDrawing *drawing)
{
  fp_drawing_set_item (drawing, NULL, FP_STANDING_EXISTING, FP_VIEW_PLAN);
  fp_drawing_line (drawing, FP_PEN_AXIS, self->end[0], self->end[1]);
  draw_end (self, drawing, 0);
  draw_end (self, drawing, 1);
}
