/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "length-over.h"

#include "dimension-line.h"

#include <math.h>

/* Paper mm. */
#define LETTERS 2.5
#define ABOVE   0.9 /* the figure stands so far above its line                        */
#define PATCH   0.6 /* of paper about the figure                                      */
#define TICK    1.3 /* half an oblique stroke at the end of a dimension line (ISO 129-1) */
#define BEYOND  2.0 /* a figure that is longer than its line stands so far beyond it  */
#define GAP     1.0 /* between what is measured and its extension line                */
#define PAST    1.5 /* an extension line goes so far past the dimension line          */
#define BESIDE  0.9 /* lines so near to each other are not told apart                 */

/* How far beside what is measured the line may be, paper mm. */
static const double off[] = { 0, 5, -5, 7, -7, 9, -9, 12, -12, 15, -15, 19, -19, 24, -24, 30, -30 };

/* What makes a place worse: design judgement.  The figure on lettering, which is rather left out, on a filled area, or over lines; a line that runs
 * along another or through something filled; every line crossed; every mm off; out of sight. */
#define ON_TEXT    200.0
#define ON_FILLED  9.0
#define OVER_LINE  1.5
#define RUNS_ALONG 8.0
#define PASSES     3.0
#define CROSSES    0.2
#define PER_MM     0.2
#define OUTSIDE    30.0
#define OFF_MIDDLE 1.0
#define WITHIN     5u /* places of a figure within its line */

typedef struct
{
  FpPoint a, b;       /* the dimension line, from its left or lower end       */
  FpPoint end[2];     /* of what is measured                                  */
  double  length, ux, uy, turn;
  double  by;         /* how far it lies beside what is measured, to the left */
  double  from, width; /* of the figure, along the line                       */
} Line;

static Line
line_between (FpPoint a, FpPoint b, double width)
{
  const gboolean swap = b.x < a.x - 1e-6 || (b.x < a.x + 1e-6 && b.y < a.y);
  Line self = { .end = { swap ? b : a, swap ? a : b }, .width = width };

  self.length = hypot (b.x - a.x, b.y - a.y);
  self.ux = self.length > 0 ? (self.end[1].x - self.end[0].x) / self.length : 1;
  self.uy = self.length > 0 ? (self.end[1].y - self.end[0].y) / self.length : 0;
  self.turn = atan2 (self.uy, self.ux) * 180 / G_PI;
  return self;
}

static FpPoint
beside (const Line *self, FpPoint p, double by)
{
  return (FpPoint) { p.x - by * self->uy, p.y + by * self->ux };
}

static FpPoint
along (const Line *self, double s, double above)
{
  return beside (self, (FpPoint) { self->a.x + s * self->ux, self->a.y + s * self->uy }, above);
}

static void
put_beside (Line *self, double by)
{
  self->by = by;
  self->a = beside (self, self->end[0], by);
  self->b = beside (self, self->end[1], by);
}

/* --- how well it stands ---------------------------------------------------------------- */

static guint
figure_boxes (const Line *self, FpBox out[FP_FIGURE_PARTS])
{
  const FpPoint from = along (self, self->from - PATCH, ABOVE - PATCH);
  const double level = fabs (self->uy) < 1e-6, upright = fabs (self->ux) < 1e-6;
  FpBox box = FP_BOX_EMPTY;

  if (!level && !upright)
    return fp_lettering_boxes (along (self, self->from + self->width / 2, ABOVE), self->width, LETTERS, self->turn, out);
  fp_box_add_point (&box, from);
  fp_box_add_point (&box, along (self, self->from + self->width + PATCH, ABOVE + LETTERS + PATCH));
  out[0] = box;
  return 1;
}

static double
figure_amiss (const Line *self, const FpCover *cover, const FpBox *within)
{
  FpBox box[FP_FIGURE_PARTS];
  const guint n = figure_boxes (self, box);
  double amiss = 0;

  for (guint i = 0; i < n; i++)
    {
      if (box[i].x0 < within->x0 || box[i].x1 > within->x1 || box[i].y0 < within->y0 || box[i].y1 > within->y1)
        amiss += OUTSIDE / n;
      if (!fp_cover_text_is_free (cover, &box[i], 0))
        amiss += ON_TEXT / n;
      if (fp_cover_is_on_filled (cover, &box[i]))
        amiss += ON_FILLED / n;
      amiss += OVER_LINE * fp_cover_lines_in (cover, &box[i]) / n;
    }
  return amiss;
}

/* A dimension line within what it measures is best: nothing else needs to be drawn. */
static double
line_amiss (const Line *self, const FpCover *cover)
{
  const FpPoint a = MIN (self->from, 0) < 0 ? along (self, self->from, 0) : self->a;
  const FpPoint b = self->from + self->width > self->length ? along (self, self->from + self->width, 0) : self->b;
  double amiss = PER_MM * fabs (self->by) + (self->by != 0 ? 1 : 0);

  if (fp_cover_runs_along (cover, a, b, BESIDE))
    amiss += RUNS_ALONG;
  if (self->by != 0 && fp_cover_passes_filled (cover, a, b))
    amiss += PASSES;
  amiss += CROSSES * fp_cover_crossings (cover, a, b);
  for (guint i = 0; i < 2 && self->by != 0; i++)
    {
      const double side = self->by > 0 ? 1 : -1;
      const FpPoint from = beside (self, self->end[i], side * GAP), to = beside (self, self->end[i], self->by + side * PAST);

      amiss += CROSSES * fp_cover_crossings (cover, from, to) / 2 + (fp_cover_passes_filled (cover, from, to) ? PASSES : 0);
    }
  return amiss;
}

static Line
best_of (FpPoint a, FpPoint b, double width, const FpCover *cover, const FpBox *within)
{
  Line line = line_between (a, b, width), best = line;
  const gboolean fits = width + 2 * TICK <= line.length;
  /* Within the line, best in its middle; of a long one, where it is seen. */
  const double spare = line.length - width;
  const double from[] = { spare / 2, spare / 4, spare * 3 / 4, spare / 10, spare * 9 / 10, line.length + BEYOND, -BEYOND - width };
  double least = G_MAXDOUBLE;

  for (guint i = 0; i < G_N_ELEMENTS (off); i++)
    for (guint k = fits ? 0 : WITHIN; k < (fits ? WITHIN : G_N_ELEMENTS (from)); k++)
      {
        double amiss;

        put_beside (&line, off[i]);
        line.from = from[k];
        amiss = line_amiss (&line, cover) + (k > 0 && k < WITHIN ? OFF_MIDDLE : 0);
        if (amiss < least)
          amiss += figure_amiss (&line, cover, within);
        if (amiss >= least)
          continue;
        least = amiss;
        best = line;
      }
  return best;
}

/* --- drawn --------------------------------------------------------------------------------- */

static void
draw_line (FpDrawing *drawing, FpCover *cover, FpPoint a, FpPoint b)
{
  fp_drawing_line (drawing, FP_PEN_SIGHT, a, b);
  fp_cover_add_object (cover, a, b, 0);
}

static void
draw_ends (FpDrawing *drawing, FpCover *cover, const Line *self)
{
  const double dx = TICK * (self->ux - self->uy) * G_SQRT2 / 2, dy = TICK * (self->uy + self->ux) * G_SQRT2 / 2;
  const double side = self->by > 0 ? 1 : -1;

  for (guint i = 0; i < 2; i++)
    {
      const FpPoint at = i == 0 ? self->a : self->b;

      fp_drawing_line (drawing, FP_PEN_SIGHT, (FpPoint) { at.x - dx, at.y - dy }, (FpPoint) { at.x + dx, at.y + dy });
      if (self->by != 0)
        draw_line (drawing, cover, beside (self, self->end[i], side * GAP), beside (self, at, side * PAST));
    }
}

static void
draw_figure (FpDrawing *drawing, FpCover *cover, const Line *self, const char *figure)
{
  const FpPoint patch[4] = { along (self, self->from - PATCH, ABOVE - PATCH), along (self, self->from + self->width + PATCH, ABOVE - PATCH),
                             along (self, self->from + self->width + PATCH, ABOVE + LETTERS + PATCH),
                             along (self, self->from - PATCH, ABOVE + LETTERS + PATCH) };

  fp_drawing_area (drawing, FP_PEN_HATCH, FP_FILL_PAPER, 0, patch, 4);
  fp_drawing_text (drawing, along (self, self->from, ABOVE), LETTERS, self->turn, FP_ALIGN_LEFT, figure);
  fp_cover_add_filled (cover, patch, 4);
  {
    FpBox box[FP_FIGURE_PARTS];
    const guint n = figure_boxes (self, box);

    for (guint i = 0; i < n; i++)
      fp_cover_take_text (cover, &box[i], 1);
  }
}

static gboolean
is_on_text (const Line *self, const FpCover *cover)
{
  FpBox box[FP_FIGURE_PARTS];
  const guint n = figure_boxes (self, box);

  for (guint i = 0; i < n; i++)
    if (!fp_cover_text_is_free (cover, &box[i], 0))
      return TRUE;
  return FALSE;
}

void
fp_length_over (FpDrawing *drawing, FpPoint a, FpPoint b, const char *figure, FpCover *cover, const FpBox *within)
{
  Line self = best_of (a, b, fp_lettering_width (figure, LETTERS), cover, within);

  if (is_on_text (&self, cover))
    self.from = self.width = 0;
  else
    draw_figure (drawing, cover, &self, figure);
  draw_ends (drawing, cover, &self);
  draw_line (drawing, cover, self.from < 0 ? along (&self, self.from, 0) : self.a,
             self.from + self.width > self.length ? along (&self, self.from + self.width, 0) : self.b);
}
