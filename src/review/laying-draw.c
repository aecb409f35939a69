/* SPDX-License-Identifier: GPL-3.0-or-later */
/* laying-draw.c - a panel on paper: slabs with their marks, what lies beneath in dashes, and how long and deep it is */
#include "laying-private.h"

#include "span.h"

#include <math.h>

/* Paper mm. */
#define BESIDE 14.0  /* room beside it: a dimension and marks outside     */
#define BELOW  11.0
#define OVER   7.0
#define PAD    0.5
#define NARROW 64.0  /* a title has so much at least                      */
#define OUTSIDE 1.2

typedef struct
{
  const FpPanel *panel;
  FpDrawing     *drawing;
  FpPoint        origin; /* of box.x0, box.y0 on paper                      */
  double         scale;
  FpUnits        units;
} Sketch;

static double
scale_of (const FpPanel *self, double scale)
{
  return self->scale > 0 ? self->scale : scale;
}

static GPtrArray *
title_lines (const FpPanel *self, double scale)
{
  const double wide = (self->box.x1 - self->box.x0) / scale_of (self, scale) + BESIDE;

  return fp_lettering_wrap (self->title, FP_LAYING_LETTERS, MAX (wide, NARROW));
}

void
fp_panel_size (const FpPanel *self, double scale, double *width, double *height)
{
  g_autoptr (GPtrArray) lines = title_lines (self, scale);

  *width = MAX ((self->box.x1 - self->box.x0) / scale_of (self, scale) + BESIDE, NARROW) + BESIDE / 2;
  *height = lines->len * FP_LAYING_LINE + OVER + (self->box.y1 - self->box.y0) / scale_of (self, scale) + BELOW;
}

/* --- slabs ------------------------------------------------------------------------- */

static FpBox
on_paper (const Sketch *s, const FpBox3 *box)
{
  const gboolean plan = s->panel->type == FP_PANEL_PLAN;
  const double x = s->origin.x - s->panel->box.x0 / s->scale, y = s->origin.y - s->panel->box.y0 / s->scale;

  return (FpBox) {
    x + box->lo.x / s->scale, y + (plan ? box->lo.y : box->lo.z) / s->scale, x + box->hi.x / s->scale,
    y + (plan ? box->hi.y : box->hi.z) / s->scale,
  };
}

static void
draw_box (const Sketch *s, FpPen pen, FpFill fill, const FpBox *box)
{
  const FpPoint corner[4] = { { box->x0, box->y0 }, { box->x1, box->y0 }, { box->x1, box->y1 }, { box->x0, box->y1 } };

  if (fill == FP_FILL_NONE)
    fp_drawing_run (s->drawing, pen, corner, 4, TRUE);
  else
    fp_drawing_area (s->drawing, pen, fill, 0, corner, 4);
}

/* As large as it may be to fit so much; 0 where it does not fit. */
static double
letters_for (const char *text, double length, double across)
{
  static const double sizes[] = { FP_LAYING_LETTERS, FP_LAYING_SMALL };

  for (guint i = 0; i < G_N_ELEMENTS (sizes); i++)
    if (fp_lettering_width (text, sizes[i]) + 2 * PAD <= length && sizes[i] + 2 * PAD <= across)
      return sizes[i];
  return 0;
}

/* Lengthwise within it; FALSE where there is no room. */
static gboolean
write_within (const Sketch *s, const FpBox *box, const char *mark, const char *size)
{
  const double width = box->x1 - box->x0, height = box->y1 - box->y0;
  const gboolean upright = height > width;
  const double length = MAX (width, height), across = MIN (width, height);
  const double letters = letters_for (mark, length, across);
  const double x = (box->x0 + box->x1) / 2, y = (box->y0 + box->y1) / 2;

  if (!(letters > 0))
    return FALSE;
  const gboolean both = across >= letters + FP_LAYING_SMALL + 4 * PAD
                        && fp_lettering_width (size, FP_LAYING_SMALL) + 2 * PAD <= length;
  const double up = both ? PAD : -letters / 2;
  fp_drawing_text (s->drawing, (FpPoint) { x - (upright ? up : 0), y + (upright ? 0 : up) }, letters, upright ? 90 : 0, FP_ALIGN_MIDDLE,
                   mark);
  if (both)
    fp_drawing_text (s->drawing, (FpPoint) { x + (upright ? PAD + FP_LAYING_SMALL : 0), y - (upright ? 0 : PAD + FP_LAYING_SMALL) },
                     FP_LAYING_SMALL, upright ? 90 : 0, FP_ALIGN_MIDDLE, size);
  return TRUE;
}

/* Of what is laid here, not of what is beneath. */
static FpBox
own_box (const Sketch *s)
{
  const FpPanel *panel = s->panel;
  FpBox box = FP_BOX_EMPTY;

  if (panel->type != FP_PANEL_PLAN)
    return panel->box;
  for (guint i = panel->first; i < panel->first + panel->n; i++)
    {
      const FpBox3 *slab = &g_array_index (panel->laid->stonework->slabs, FpSlab, i).box;

      fp_box_add_point (&box, (FpPoint) { slab->lo.x, slab->lo.y });
      fp_box_add_point (&box, (FpPoint) { slab->hi.x, slab->hi.y });
    }
  return box;
}

static FpPoint
point (const Sketch *s, double x, double y)
{
  return (FpPoint) { s->origin.x + (x - s->panel->box.x0) / s->scale, s->origin.y + (y - s->panel->box.y0) / s->scale };
}

/* Beside what is too narrow to be written on: behind its face, where the core is. */
static void
write_behind (const Sketch *s, const FpBox *box, const FpCourse *course, const char *mark)
{
  const FpBox own = own_box (s);
  const double corner = OUTSIDE + 2 * FP_LAYING_LETTERS + fp_lettering_width (mark, FP_LAYING_LETTERS) / 2;

  const FpPoint out = { -course->along.y, course->along.x };
  const double letters = FP_LAYING_LETTERS, x = (box->x0 + box->x1) / 2, y = (box->y0 + box->y1) / 2;

  if (fabs (out.y) > 0.5)
    fp_drawing_text (s->drawing, (FpPoint) { x, out.y < 0 ? box->y0 - OUTSIDE - letters : box->y1 + OUTSIDE }, letters, 0,
                     FP_ALIGN_MIDDLE, mark);
  else
    /* Clear of what is written behind the front and the back. */
    fp_drawing_text (s->drawing, (FpPoint) { out.x < 0 ? box->x0 - OUTSIDE : box->x1 + OUTSIDE + letters,
                                             CLAMP (y, point (s, 0, own.y0).y + corner, point (s, 0, own.y1).y - corner) }, letters, 90,
                     FP_ALIGN_MIDDLE, mark);
}

static char *
size_of (const Sketch *s, const FpSlab *slab)
{
  const gboolean metric = s->units == FP_UNITS_METRIC;
  g_autofree char *length = metric ? fp_number_format_rounded (slab->length, 1) : fp_length_format (slab->length, s->units);
  g_autofree char *width = metric ? fp_number_format_rounded (slab->width, 1) : fp_length_format (slab->width, s->units);

  return g_strdup_printf ("%s × %s", length, width);
}

static void
draw_slab (const Sketch *s, const FpSlab *slab)
{
  const FpLaid *laid = s->panel->laid;
  const FpCourse *course = &g_array_index (laid->stonework->courses, FpCourse, slab->course);
  const FpBox box = on_paper (s, &slab->box);
  g_autofree char *mark = fp_laying_mark (laid, slab), *size = size_of (s, slab);

  draw_box (s, FP_PEN_EDGE, FP_FILL_PAPER, &box);
  if (!write_within (s, &box, mark, size) && s->panel->type == FP_PANEL_PLAN)
    write_behind (s, &box, course, mark);
}

static void
draw_plan (const Sketch *s)
{
  const FpPanel *panel = s->panel;
  const GArray *slabs = panel->laid->stonework->slabs;

  for (guint i = panel->under; i < panel->under + panel->n_under; i++)
    {
      const FpBox box = on_paper (s, &g_array_index (slabs, FpSlab, i).box);
      draw_box (s, FP_PEN_HIDDEN, FP_FILL_NONE, &box);
    }
  for (guint i = panel->first; i < panel->first + panel->n; i++)
    draw_slab (s, &g_array_index (slabs, FpSlab, i));
}

/* What stands farther back is drawn first. */
static void
draw_front (const Sketch *s)
{
  const FpStonework *stonework = s->panel->laid->stonework;

  for (guint i = stonework->slabs->len; i-- > 0;)
    {
      const FpSlab *slab = &g_array_index (stonework->slabs, FpSlab, i);

      if (g_array_index (stonework->courses, FpCourse, slab->course).along.x > 0.5 && slab->row == 0)
        draw_slab (s, slab);
    }
}

static void
draw_measures (const Sketch *s)
{
  const FpBox box = own_box (s);
  const FpPoint low = point (s, box.x0, box.y0), high = point (s, box.x1, box.y1);
  g_autofree char *length = fp_length_format (round ((box.x1 - box.x0) * 10) / 10, s->units);
  g_autofree char *depth = fp_length_format (round ((box.y1 - box.y0) * 10) / 10, s->units);
  const double under = s->origin.y - 6.5, beside = s->origin.x - 5.5;

  fp_draw_span (s->drawing, (FpPoint) { low.x, under }, (FpPoint) { high.x, under }, FP_LAYING_LETTERS, length);
  if (high.y - low.y > fp_lettering_width (depth, FP_LAYING_LETTERS))
    fp_draw_span (s->drawing, (FpPoint) { beside, low.y }, (FpPoint) { beside, high.y }, FP_LAYING_LETTERS, depth);
}

/* Where the middle is, beyond what is written on. */
static void
draw_axis (const Sketch *s)
{
  const FpBox *box = &s->panel->box;
  const FpPoint low = point (s, 0, box->y0), high = point (s, 0, box->y1);

  if (!(box->x0 < 0 && box->x1 > 0))
    return;
  fp_drawing_line (s->drawing, FP_PEN_AXIS, (FpPoint) { low.x, low.y - 2.5 }, (FpPoint) { low.x, low.y - 0.4 });
  fp_drawing_line (s->drawing, FP_PEN_AXIS, (FpPoint) { high.x, high.y + 0.5 }, (FpPoint) { high.x, high.y + 3.5 });
}

void
fp_panel_draw (const FpPanel *self, FpDrawing *drawing, FpPoint at, double scale, const FpWorks *works, FpUnits units)
{
  g_autoptr (GPtrArray) lines = title_lines (self, scale);
  const double own = scale_of (self, scale);
  const double top = at.y - lines->len * FP_LAYING_LINE - OVER;
  const Sketch s = {
    .panel = self, .drawing = drawing, .scale = own, .units = units,
    .origin = { at.x + BESIDE - 2, top - (self->box.y1 - self->box.y0) / own },
  };

  for (guint i = 0; i < lines->len; i++)
    fp_drawing_text (drawing, (FpPoint) { at.x, at.y - (i + 1) * FP_LAYING_LINE }, FP_LAYING_LETTERS, 0, FP_ALIGN_LEFT,
                     g_ptr_array_index (lines, i));
  switch (self->type)
    {
    case FP_PANEL_PLAN: draw_plan (&s); break;
    case FP_PANEL_FRONT: draw_front (&s); break;
    case FP_PANEL_SECTION: fp_laying_section (self, drawing, s.origin, own, works, units); return;
    }
  draw_axis (&s);
  draw_measures (&s);
}
