/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "footpace/way-drawing.h"

#include "blank-near.h"

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

/* A figure that is longer than its line stands where nothing is drawn so far, with a leader. */
static gboolean
add_figure_aside (FpDrawing *drawing, const Across *self)
{
  const FpBox all = { PATCH, PATCH, fp_drawing_width (drawing) - PATCH, fp_drawing_height (drawing) - PATCH };
  const FpLaid laid = { drawing, { 0, 0 }, 1 };
  const FpPoint middle = along (self, self->length / 2, 0);
  FpPoint at = { NAN, NAN }, end;

  if (!fp_blank_near (&laid, 1, &all, middle, self->width, LETTERS, &at))
    return FALSE;
  end = (FpPoint) { middle.x < at.x ? at.x - PATCH : MIN (middle.x, at.x + self->width + PATCH),
                    middle.y < at.y ? at.y - PATCH : MIN (middle.y, at.y + LETTERS + PATCH) };
  fp_drawing_line (drawing, FP_PEN_DIMENSION, middle, end);
  fp_drawing_text (drawing, at, LETTERS, 0, FP_ALIGN_LEFT, self->figure);
  return TRUE;
}

static void
add_across (FpDrawing *drawing, const FpWay *way, const FpViewLayout *plan)
{
  Across self;

  across_init (&self, way, plan);
  if (self.length > 4 * TICK)
    fp_drawing_circle (drawing, FP_PEN_SIGHT, FP_FILL_NONE, along (&self, self.length / 2, 0), self.length / 2);
  add_tick (drawing, &self, self.a);
  add_tick (drawing, &self, self.b);
  fp_drawing_line (drawing, FP_PEN_OUTLINE, self.a, self.b);
  if (self.from < self.length)
    add_figure (drawing, &self);
  else if (!add_figure_aside (drawing, &self))
    {
      add_figure (drawing, &self);
      fp_drawing_line (drawing, FP_PEN_OUTLINE, self.b, along (&self, self.from + self.width, 0));
    }
  g_free (self.figure);
}

/* --- the route ------------------------------------------------------------------ */

/* The part of a leg that lies in the box; FALSE: none does. */
static gboolean
clip_leg (const FpBox *box, FpPoint *a, FpPoint *b)
{
  const double dx = b->x - a->x, dy = b->y - a->y;
  const double by[4] = { -dx, dx, -dy, dy }, room[4] = { a->x - box->x0, box->x1 - a->x, a->y - box->y0, box->y1 - a->y };
  double from = 0, to = 1;

  for (guint i = 0; i < 4; i++)
    if (by[i] < 0)
      from = MAX (from, room[i] / by[i]);
    else if (by[i] > 0)
      to = MIN (to, room[i] / by[i]);
    else if (room[i] < 0)
      return FALSE;
  *b = (FpPoint) { a->x + to * dx, a->y + to * dy };
  *a = (FpPoint) { a->x + from * dx, a->y + from * dy };
  return from < to;
}

/* As far as the plan shows it, where that is no more than a part of the church. */
static void
add_leg (FpDrawing *drawing, FpPoint from, FpPoint to, const FpViewLayout *plan)
{
  FpPoint a = fp_layout_point (plan, FP_VIEW_PLAN, (FpVec3) { from.x, from.y, 0 });
  FpPoint b = fp_layout_point (plan, FP_VIEW_PLAN, (FpVec3) { to.x, to.y, 0 });

  if (fp_box_is_empty (&plan->clip) || clip_leg (&plan->clip, &a, &b))
    fp_drawing_line (drawing, FP_PEN_SIGHT, fp_view_to_paper (plan, a), fp_view_to_paper (plan, b));
}

static void
add_clipped (FpDrawing *drawing, const FpWay *way, const FpViewLayout *plan)
{
  for (guint i = 1; i < way->n_route; i++)
    add_leg (drawing, way->route[i - 1], way->route[i], plan);
}

/* Of a bier, or of who stands there. */
static void
add_outline (FpDrawing *drawing, const FpWay *way, const FpViewLayout *plan)
{
  for (guint i = 0; i < way->n_outline; i++)
    add_leg (drawing, way->outline[i], way->outline[(i + 1) % way->n_outline], plan);
}

static void
add_route (FpDrawing *drawing, const FpWay *way, const FpViewLayout *plan)
{
  g_autofree FpPoint *pt = g_new (FpPoint, way->n_route);

  if (!fp_box_is_empty (&plan->clip))
    {
      add_clipped (drawing, way, plan);
      return;
    }
  for (guint i = 0; i < way->n_route; i++)
    pt[i] = fp_view_to_paper (plan, fp_layout_point (plan, FP_VIEW_PLAN, (FpVec3) { way->route[i].x, way->route[i].y, 0 }));
  fp_drawing_run (drawing, FP_PEN_SIGHT, pt, way->n_route, FALSE);
  if (hypot (pt[0].x - pt[way->n_route - 1].x, pt[0].y - pt[way->n_route - 1].y) < DOT)
    return; /* once round */
  fp_drawing_circle (drawing, FP_PEN_SIGHT, FP_FILL_INK, pt[0], DOT);
  fp_drawing_circle (drawing, FP_PEN_SIGHT, FP_FILL_INK, pt[way->n_route - 1], DOT);
}

/* With both its ends. */
static gboolean
is_shown (const FpWay *way, const FpViewLayout *plan)
{
  for (guint i = 0; i < 2; i++)
    {
      const FpPoint p = fp_layout_point (plan, FP_VIEW_PLAN, (FpVec3) { way->narrow[i].x, way->narrow[i].y, 0 });
      if (!fp_box_is_empty (&plan->clip)
          && (p.x < plan->clip.x0 || p.x > plan->clip.x1 || p.y < plan->clip.y0 || p.y > plan->clip.y1))
        return FALSE;
    }
  return TRUE;
}

void
fp_drawing_add_way (FpDrawing *self, const FpWay *way, const FpViewLayout *plan)
{
  fp_drawing_set_item (self, NULL, FP_STANDING_EXISTING, FP_VIEW_PLAN);
  if (way->n_route >= 2)
    add_route (self, way, plan);
  add_outline (self, way, plan);
  if (way->narrows && is_shown (way, plan))
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
  for (guint i = 0; i < way->n_outline; i++)
    grow (&box, fp_view_to_paper (plan, fp_layout_point (plan, FP_VIEW_PLAN, (FpVec3) { way->outline[i].x, way->outline[i].y, 0 })), EDGE);
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
