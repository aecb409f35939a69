/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "footpace/way-drawing.h"

#include <math.h>

/* Paper mm. */
#define LETTERS 2.5
#define OVER    0.9  /* the figure stands so far above its line         */
#define PATCH   0.6  /* of paper about the figure                       */
#define TICK    1.3  /* half an oblique stroke at the end of a dimension line (ISO 129-1) */
#define BEYOND  2.0  /* a figure that is longer than its line stands so far beyond it */
#define DOT     0.7
#define EDGE    4.0

/* --- the narrowest place ------------------------------------------------------ */

/* A dimension line on paper, from its left end, or its lower one, to the other, and where its figure begins. */
typedef struct
{
  FpPoint a, b;
  double  length, ux, uy; /* along it                        */
  double  turn;           /* degrees, as it is read          */
  char   *figure;
  double  from, width;    /* of the figure, along the line   */
} Across;

static void
across_init (Across *self, const FpWay *way, const FpViewLayout *plan)
{
  const FpPoint p = fp_view_to_paper (plan, fp_layout_point (plan, FP_VIEW_PLAN, (FpVec3) { way->narrow[0].x, way->narrow[0].y, 0 }));
  const FpPoint q = fp_view_to_paper (plan, fp_layout_point (plan, FP_VIEW_PLAN, (FpVec3) { way->narrow[1].x, way->narrow[1].y, 0 }));
  const gboolean swap = q.x < p.x - 1e-6 || (q.x < p.x + 1e-6 && q.y < p.y);

  self->a = swap ? q : p;
  self->b = swap ? p : q;
  self->length = hypot (q.x - p.x, q.y - p.y);
  self->ux = self->length > 0 ? (self->b.x - self->a.x) / self->length : 1;
  self->uy = self->length > 0 ? (self->b.y - self->a.y) / self->length : 0;
  self->turn = atan2 (self->uy, self->ux) * 180 / G_PI;
  self->figure = fp_length_format (round (way->width), plan->units); /* it is known no better */
  self->width = fp_lettering_width (self->figure, LETTERS);
  self->from = self->width + 2 * TICK <= self->length ? (self->length - self->width) / 2 : self->length + BEYOND;
}

static FpPoint
along (const Across *self, double s, double above)
{
  return (FpPoint) { self->a.x + s * self->ux - above * self->uy, self->a.y + s * self->uy + above * self->ux };
}

static void
add_tick (FpDrawing *drawing, const Across *self, FpPoint at)
{
  const double dx = TICK * (self->ux - self->uy) * G_SQRT2 / 2, dy = TICK * (self->uy + self->ux) * G_SQRT2 / 2;

  fp_drawing_line (drawing, FP_PEN_OUTLINE, (FpPoint) { at.x - dx, at.y - dy }, (FpPoint) { at.x + dx, at.y + dy });
}

static void
add_figure (FpDrawing *drawing, const Across *self)
{
  const FpPoint patch[4] = { along (self, self->from - PATCH, OVER - PATCH), along (self, self->from + self->width + PATCH, OVER - PATCH),
                             along (self, self->from + self->width + PATCH, OVER + LETTERS + PATCH),
                             along (self, self->from - PATCH, OVER + LETTERS + PATCH) };

  fp_drawing_area (drawing, FP_PEN_HATCH, FP_FILL_PAPER, 0, patch, 4);
  fp_drawing_text (drawing, along (self, self->from, OVER), LETTERS, self->turn, FP_ALIGN_LEFT, self->figure);
}

static void
add_across (FpDrawing *drawing, const FpWay *way, const FpViewLayout *plan)
{
  Across self;

  across_init (&self, way, plan);
  if (self.length > 4 * TICK)
    fp_drawing_circle (drawing, FP_PEN_SIGHT, FP_FILL_NONE, along (&self, self.length / 2, 0), self.length / 2);
  add_figure (drawing, &self);
  fp_drawing_line (drawing, FP_PEN_OUTLINE, self.a, self.from > self.length ? along (&self, self.from + self.width, 0) : self.b);
  add_tick (drawing, &self, self.a);
  add_tick (drawing, &self, self.b);
  g_free (self.figure);
}

/* --- the route ------------------------------------------------------------------ */

static void
add_route (FpDrawing *drawing, const FpWay *way, const FpViewLayout *plan)
{
  g_autofree FpPoint *pt = g_new (FpPoint, way->n_route);

  for (guint i = 0; i < way->n_route; i++)
    pt[i] = fp_view_to_paper (plan, fp_layout_point (plan, FP_VIEW_PLAN, (FpVec3) { way->route[i].x, way->route[i].y, 0 }));
  fp_drawing_run (drawing, FP_PEN_SIGHT, pt, way->n_route, FALSE);
  if (hypot (pt[0].x - pt[way->n_route - 1].x, pt[0].y - pt[way->n_route - 1].y) < DOT)
    return; /* once round */
  fp_drawing_circle (drawing, FP_PEN_SIGHT, FP_FILL_INK, pt[0], DOT);
  fp_drawing_circle (drawing, FP_PEN_SIGHT, FP_FILL_INK, pt[way->n_route - 1], DOT);
}

void
fp_drawing_add_way (FpDrawing *self, const FpWay *way, const FpViewLayout *plan)
{
  fp_drawing_set_item (self, NULL, FP_STANDING_EXISTING, FP_VIEW_PLAN);
  if (way->n_route >= 2)
    add_route (self, way, plan);
  if (way->narrows)
    add_across (self, way, plan);
}

static void
grow (FpBox *box, FpPoint p, double by)
{
  fp_box_add_point (box, (FpPoint) { p.x - by, p.y - by });
  fp_box_add_point (box, (FpPoint) { p.x + by, p.y + by });
}

FpBox
fp_way_drawn_box (const FpWay *way, const FpViewLayout *plan)
{
  FpBox box = FP_BOX_EMPTY;

  for (guint i = 0; way->n_route >= 2 && i < way->n_route; i++)
    grow (&box, fp_view_to_paper (plan, fp_layout_point (plan, FP_VIEW_PLAN, (FpVec3) { way->route[i].x, way->route[i].y, 0 })), EDGE);
  if (way->narrows)
    {
      Across self;

      across_init (&self, way, plan);
      grow (&box, along (&self, self.length / 2, 0), self.length / 2 + EDGE);
      grow (&box, along (&self, self.from + self.width, OVER + LETTERS), EDGE);
      g_free (self.figure);
    }
  return box;
}
