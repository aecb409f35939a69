/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "dimension-line.h"

#include <math.h>

/* All in paper mm. Gap and overrun are about 8 line widths (ISO 129-1, from memory). */
#define GAP       2.0
#define OVERRUN   1.5
#define STROKE    1.1 /* half an oblique stroke, along each axis              */
#define KEPT      0.5 /* about a figure                                       */
#define SAME      0.05
#define OVER_LINE 1.2 /* from the line to the foot of its figure              */

/* --- lettering ------------------------------------------------------------------- */

/* Most texts are level or upright: no sines for those. */
static FpPoint
turned (FpPoint at, double x, double y, double turn)
{
  if (turn == 0)
    return (FpPoint) { at.x + x, at.y + y };
  if (turn == 90)
    return (FpPoint) { at.x - y, at.y + x };
  return fp_place_point (&(FpPlace) { at.x, at.y, turn }, (FpPoint) { x, y });
}

FpBox
fp_lettering_box (FpPoint at, double width, double height, double turn, FpAlign align)
{
  const double x0 = align == FP_ALIGN_LEFT ? 0 : align == FP_ALIGN_MIDDLE ? -width / 2 : -width;
  FpBox box = FP_BOX_EMPTY;

  /* Most are level. */
  if (turn == 0)
    return (FpBox) { at.x + x0, at.y + -0.25 * height, at.x + (x0 + width), at.y + 1.05 * height };
  for (guint i = 0; i < 4; i++)
    fp_box_add_point (&box, turned (at, i % 2 ? x0 + width : x0, i / 2 ? 1.05 * height : -0.25 * height, turn));
  return box;
}

guint
fp_lettering_boxes (FpPoint at, double width, double height, double turn, FpBox out[FP_FIGURE_PARTS])
{
  const gboolean level = turn == 0 || turn == 90;
  const guint n = level ? 1 : (guint) CLAMP (ceil (width / height), 1, FP_FIGURE_PARTS);

  for (guint i = 0; i < n; i++)
    {
      const FpPoint middle = turned (at, width * ((i + 0.5) / n - 0.5), 0, turn);
      out[i] = fp_lettering_box (middle, width / n, height, turn, FP_ALIGN_MIDDLE);
    }
  return n;
}

/* --- where it lies ----------------------------------------------------------------- */

/* The measure's own directions: along it, and to its left. */
typedef struct { FpPoint u, n; } Frame;

static double
dot (FpPoint a, FpPoint b)
{
  return a.x * b.x + a.y * b.y;
}

static FpPoint
point_at (const Frame *f, double t, double c)
{
  return (FpPoint) { f->u.x * t + f->n.x * c, f->u.y * t + f->n.y * c };
}

FpPoint
fp_wanted_along (const FpWanted *w)
{
  const double x = w->b.x - w->a.x, y = w->b.y - w->a.y, length = hypot (x, y);

  if (!w->oblique)
    return w->upright ? (FpPoint) { 0, 1 } : (FpPoint) { 1, 0 };
  /* Upright ones are read from the right; of the others none stands on its head. */
  return x > 1e-9 || (fabs (x) <= 1e-9 && y > 0) ? (FpPoint) { x / length, y / length }
                                                 : (FpPoint) { -x / length, -y / length };
}

/* How far to the left of the paper's origin the dimension line lies. */
static double
line_across (const FpWanted *w, const FpTierSides *s, double from)
{
  const double tier = s == NULL ? 0 : s->first[w->side] + w->tier * FP_TIER_STEP;

  if (w->placed == FP_PLACED_NEAR)
    return from + w->base + w->offset;
  switch (w->side)
    {
    case FP_SIDE_BELOW: return s->content.y0 - tier;
    case FP_SIDE_ABOVE: return s->content.y1 + tier;
    case FP_SIDE_LEFT: return -(s->content.x0 - tier);
    case FP_SIDE_RIGHT: return -(s->content.x1 + tier);
    case FP_N_SIDES: break;
    }
  return from;
}

gboolean
fp_figure_fits_within (const FpWanted *w)
{
  return hypot (w->b.x - w->a.x, w->b.y - w->a.y) >= w->width + 2 * STROKE - 0.6;
}

/* What was set out within a view at a smaller scale stands where its middle has moved to. */
typedef struct { double over_line, beside; } FigureGaps;

static FigureGaps
gaps_of (const FpWanted *w)
{
  const double more = w->placed == FP_PLACED_NEAR && w->grown > 0 ? w->grown - 1 : 0;

  return (FigureGaps) { OVER_LINE + more * (OVER_LINE + FP_FIGURE_HEIGHT / 2),
                        FP_FIGURE_BESIDE + more * (FP_FIGURE_BESIDE + w->width / 2) };
}

static void
set_shelf (const FpWanted *w, const Frame *f, double t0, double t1, double c, FpDimensionLine *out)
{
  const gboolean before = w->figure == FP_FIGURE_BEFORE;
  const double beside = gaps_of (w).beside;

  out->has_shelf = w->figure != FP_FIGURE_WITHIN;
  out->shelf_a = before ? out->line_a : out->line_b;
  out->shelf_b = before ? point_at (f, t0 - beside - w->width, c) : point_at (f, t1 + beside + w->width, c);
}

static void
set_figure (const FpWanted *w, const Frame *f, double t0, double t1, double c, FpDimensionLine *out)
{
  const FigureGaps gaps = gaps_of (w);
  const double t = w->figure == FP_FIGURE_WITHIN  ? (t0 + t1) / 2
                   : w->figure == FP_FIGURE_AFTER ? t1 + gaps.beside + w->width / 2
                                                  : t0 - gaps.beside - w->width / 2;

  out->figure_at = point_at (f, t, c + gaps.over_line);
  out->turn = w->oblique ? atan2 (f->u.y, f->u.x) * 180 / G_PI : w->upright ? 90 : 0;
  out->n_figure = fp_lettering_boxes (out->figure_at, w->width, FP_FIGURE_HEIGHT, out->turn, out->figure);
}

/* Where an extension line begins, across the measure: @i, 0 at the end that is read first; @at, where that end itself
 * lies, @c, where the dimension line does. */
static double
begins_at (const FpWanted *w, guint i, double at, double c)
{
  const double border = w->placed == FP_PLACED_NEAR ? w->border[i][c < at ? 0 : 1] : 0;

  return fabs (c - at) > fabs (border) ? at + border : at;
}

static void
set_extension (const Frame *f, double t, double from, double c, double gap, FpPoint out[2])
{
  const double way = c < from ? -1 : 1;

  out[0] = point_at (f, t, from + way * MIN (gap, fabs (c - from)));
  out[1] = point_at (f, t, c + way * OVERRUN);
}

/* What is measured goes on across the measure: an extension line begins where it ends, and there is none where the dimension
 * line itself runs up to it; but the middle of a thing is marked by a line from its nearer edge.
 * @end: 0 at a; @at: across, of a */
static gboolean
set_extension_of_whereabouts (const FpWanted *w, guint end, const Frame *f, double t, double at, double c, double gap,
                              FpPoint out[2])
{
  const double from = CLAMP (c, at + w->span[end][0], at + w->span[end][1]);
  const gboolean meets = fabs (c - from) < SAME;

  set_extension (f, t, from, c, gap, out);
  if (!meets || w->upright || end != 0)
    return !meets;
  set_extension (f, t, at + w->span[end][c - at - w->span[end][0] < w->span[end][1] - (c - at) ? 0 : 1], c, 0, out);
  return TRUE;
}

static void
set_extensions (const FpWanted *w, const Frame *f, gboolean a_first, const double t[2], const double across[2], double c,
                FpDimensionLine *out)
{
  const double gap = GAP * (w->grown > 0 ? w->grown : 1), base = w->placed == FP_PLACED_NEAR ? w->base : 0;

  for (guint i = 0; i < 2; i++)
    {
      const double from = begins_at (w, i, across[i] + base, c);

      out->has_extension[i] = fabs (c - from) > gap;
      if (w->is_whereabouts)
        out->has_extension[i] = set_extension_of_whereabouts (w, (i == 0) == a_first ? 0 : 1, f, t[i], across[i], c, gap,
                                                              out->extension[i]);
      else
        set_extension (f, t[i], from, c, gap, out->extension[i]);
    }
  /* Otherwise both or none. */
  if (!w->is_whereabouts)
    out->has_extension[0] = out->has_extension[1] = out->has_extension[0] || out->has_extension[1];
}

void
fp_dimension_line (const FpWanted *w, const FpTierSides *s, FpDimensionLine *out)
{
  const FpPoint u = fp_wanted_along (w);
  const Frame f = { u, { -u.y, u.x } };
  const gboolean a_first = dot (w->a, u) <= dot (w->b, u);
  const FpPoint feature[2] = { a_first ? w->a : w->b, a_first ? w->b : w->a };
  const double t[2] = { dot (feature[0], u), dot (feature[1], u) };
  const double across[2] = { dot (feature[0], f.n), dot (feature[1], f.n) };
  const double c = line_across (w, s, across[0]);

  out->line_a = point_at (&f, t[0], c);
  out->line_b = point_at (&f, t[1], c);
  for (guint i = 0; i < 2; i++)
    {
      const FpPoint end = point_at (&f, t[i], c);
      /* Oblique strokes lean to the right as one reads the figure. */
      const FpPoint lean = { STROKE * (f.u.x + f.n.x), STROKE * (f.u.y + f.n.y) };

      out->stroke[i][0] = (FpPoint) { end.x - lean.x, end.y - lean.y };
      out->stroke[i][1] = (FpPoint) { end.x + lean.x, end.y + lean.y };
    }
  set_extensions (w, &f, a_first, t, across, c, out);
  set_shelf (w, &f, t[0], t[1], c, out);
  set_figure (w, &f, t[0], t[1], c, out);
}

/* --- the room that it takes ---------------------------------------------------------- */

gboolean
fp_dimension_line_is_free (const FpDimensionLine *d, const FpCover *room, guint owner)
{
  for (guint i = 0; i < d->n_figure; i++)
    if (!fp_cover_text_is_free (room, &d->figure[i], owner))
      return FALSE;
  for (guint i = 0; i < 2; i++)
    if (!fp_cover_tick_is_free (room, d->stroke[i][0], d->stroke[i][1], owner)
        || (d->has_extension[i] && !fp_cover_line_is_free (room, d->extension[i][0], d->extension[i][1], owner)))
      return FALSE;
  return fp_cover_line_is_free (room, d->line_a, d->line_b, owner)
         && (!d->has_shelf || fp_cover_line_is_free (room, d->shelf_a, d->shelf_b, owner));
}

void
fp_dimension_line_take (const FpDimensionLine *d, FpCover *room, guint owner)
{
  for (guint i = 0; i < d->n_figure; i++)
    {
      const FpBox *b = &d->figure[i];
      const FpBox taken = { b->x0 - KEPT, b->y0 - KEPT, b->x1 + KEPT, b->y1 + KEPT };
      fp_cover_take_text (room, &taken, owner);
    }
  for (guint i = 0; i < 2; i++)
    {
      fp_cover_take_tick (room, d->stroke[i][0], d->stroke[i][1], owner);
      if (d->has_extension[i])
        fp_cover_take_line (room, d->extension[i][0], d->extension[i][1], owner);
    }
  fp_cover_take_line (room, d->line_a, d->line_b, owner);
  if (d->has_shelf)
    fp_cover_take_line (room, d->shelf_a, d->shelf_b, owner);
}

void
fp_dimension_line_add_box (const FpDimensionLine *d, FpBox *box)
{
  for (guint i = 0; i < d->n_figure; i++)
    fp_box_add_box (box, &d->figure[i]);
  for (guint i = 0; i < 2; i++)
    {
      if (d->has_extension[i])
        fp_box_add_point (box, d->extension[i][1]);
      fp_box_add_point (box, d->stroke[i][0]);
      fp_box_add_point (box, d->stroke[i][1]);
    }
}

/* --- drawing --------------------------------------------------------------------------------- */

/* Where a figure stands within the view, the axis gives way to it: nothing else is drawn there. */
static void
draw_ground (FpDrawing *drawing, const FpWanted *w, const FpTierSides *sides, FpViewId view)
{
  FpDimensionLine d;

  fp_dimension_line (w, sides, &d);
  fp_drawing_set_dimension (drawing, 0, NULL);
  fp_drawing_set_item (drawing, NULL, FP_STANDING_EXISTING, (int) view);
  for (guint i = 0; i < d.n_figure; i++)
    {
      const FpBox *b = &d.figure[i];
      const FpPoint corner[4] = { { b->x0, b->y0 }, { b->x1, b->y0 }, { b->x1, b->y1 }, { b->x0, b->y1 } };
      fp_drawing_area (drawing, FP_PEN_HATCH, FP_FILL_PAPER, 0, corner, 4);
    }
}

static void
draw_one (FpDrawing *drawing, const FpWanted *w, const FpTierSides *sides)
{
  FpDimensionLine d;

  fp_dimension_line (w, sides, &d);
  fp_drawing_line (drawing, FP_PEN_DIMENSION, d.line_a, d.line_b);
  if (d.has_shelf)
    fp_drawing_line (drawing, FP_PEN_DIMENSION, d.shelf_a, d.shelf_b);
  for (guint i = 0; i < 2; i++)
    {
      if (d.has_extension[i])
        fp_drawing_line (drawing, FP_PEN_DIMENSION, d.extension[i][0], d.extension[i][1]);
      fp_drawing_line (drawing, FP_PEN_OUTLINE, d.stroke[i][0], d.stroke[i][1]);
    }
  fp_drawing_text (drawing, d.figure_at, FP_FIGURE_HEIGHT, d.turn, FP_ALIGN_MIDDLE, w->text);
}

/* A line whose figure lies off the paper tells nothing. */
static gboolean
figure_is_seen (const FpWanted *w, const FpTierSides *sides, const FpBox *seen)
{
  FpDimensionLine d;

  if (fp_box_is_empty (seen))
    return TRUE;
  fp_dimension_line (w, sides, &d);
  return d.figure_at.x >= seen->x0 && d.figure_at.x <= seen->x1 && d.figure_at.y >= seen->y0 && d.figure_at.y <= seen->y1;
}

void
fp_dimensions_draw (FpDrawing *drawing, const GArray *wanted, const FpTierSides *sides, const FpBox *seen, FpViewId view,
                    guint *number)
{
  for (guint i = 0; i < wanted->len; i++)
    {
      const FpWanted *w = &g_array_index (wanted, FpWanted, i);
      if (w->placed == FP_PLACED_NOT || !figure_is_seen (w, sides, seen))
        continue;
      if (w->has_ground)
        draw_ground (drawing, w, sides, view);
      fp_drawing_set_item (drawing, w->item, FP_STANDING_EXISTING, (int) view);
      fp_drawing_set_dimension (drawing, ++*number, w->param);
      fp_drawing_set_stretch (drawing, *number, &w->measured);
      draw_one (drawing, w, sides);
    }
  fp_drawing_set_dimension (drawing, 0, NULL);
  fp_drawing_set_item (drawing, NULL, FP_STANDING_EXISTING, (int) view);
}
