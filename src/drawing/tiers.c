/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "tiers.h"

#include <math.h>

/* All in paper mm. Gap and overrun are about 8 line widths (ISO 129-1, from memory). */
#define GAP        1.5
#define OVERRUN    1.5
#define STROKE     1.1  /* half an oblique stroke, along each axis            */
#define OVER_LINE  1.2  /* from the line to the foot of its figure            */
#define BESIDE     1.8  /* from the end of the line to a figure beside it     */
#define CLEAR      1.3  /* between an end and another dimension's extension   */
#define NEXT       2.0  /* between two dimensions of one tier                 */
#define PARALLEL   0.7  /* nearer lines run together (ISO 128)                */
#define SAME       0.05
#define SHORT_FROM 2.0  /* where a short extension line begins, from the outline */
#define STUB       3.2  /* the shortest ones, before the dimension line          */
#define NEAR_FULL  12.0 /* and on a side where nothing else will do              */
#define CENTRAL    1.6  /* what lies at most so much farther from one side than from the other belongs to both */
#define STUB_RANK  1    /* only for measures of this rank or less                */
#define LONGEST    30.0 /* longer ones would cut the drawing to pieces (design judgement) */

/* --- one dimension line ------------------------------------------------------- */

/* @t along the side, @u outward from the outline. */
static FpPoint
side_point (const FpTierSides *s, FpSide side, double t, double u)
{
  switch (side)
    {
    case FP_SIDE_BELOW: return (FpPoint) { t, s->content.y0 - u };
    case FP_SIDE_ABOVE: return (FpPoint) { t, s->content.y1 + u };
    case FP_SIDE_LEFT: return (FpPoint) { s->content.x0 - u, t };
    case FP_SIDE_RIGHT: return (FpPoint) { s->content.x1 + u, t };
    case FP_N_SIDES: break;
    }
  return (FpPoint) { 0, 0 };
}

static double
outward (const FpTierSides *s, FpSide side, FpPoint p)
{
  switch (side)
    {
    case FP_SIDE_BELOW: return s->content.y0 - p.y;
    case FP_SIDE_ABOVE: return p.y - s->content.y1;
    case FP_SIDE_LEFT: return s->content.x0 - p.x;
    case FP_SIDE_RIGHT: return p.x - s->content.x1;
    case FP_N_SIDES: break;
    }
  return 0;
}

static gboolean
is_upright (FpSide side)
{
  return side == FP_SIDE_LEFT || side == FP_SIDE_RIGHT;
}

static double
tier_at (const FpTierSides *s, FpSide side, guint tier)
{
  return s->first[side] + tier * FP_TIER_STEP;
}

/* What a dimension takes of its tier, figure included. */
typedef struct { double lo, hi; } Span;

static Span
span_of (const FpWanted *w, FpFigure figure)
{
  Span span = { w->lo, w->hi };

  if (figure == FP_FIGURE_AFTER)
    span.hi += BESIDE + w->width;
  if (figure == FP_FIGURE_BEFORE)
    span.lo -= BESIDE + w->width;
  return span;
}

static gboolean
figure_fits (const FpWanted *w, FpFigure figure)
{
  return figure != FP_FIGURE_WITHIN || w->hi - w->lo >= w->width + 2 * STROKE - 0.6;
}

/* Where levels stand beside the view, short extension lines begin behind them. */
static double
short_from (const FpTierSides *s, FpSide side)
{
  return SHORT_FROM + (s->first[side] > FP_TIER_FIRST ? s->first[side] - FP_TIER_STEP : 0);
}

static double
extension_from (const FpWanted *w, const FpTierSides *s, FpPoint feature)
{
  switch (w->extension)
    {
    case FP_EXTENSION_FULL: return outward (s, w->side, feature) + GAP;
    case FP_EXTENSION_OUTLINE: return short_from (s, w->side);
    case FP_EXTENSION_TIER: return tier_at (s, w->side, w->tier) - STUB;
    }
  return SHORT_FROM;
}

FpBox
fp_lettering_box (FpPoint at, double width, double height, double turn, FpAlign align)
{
  const double x0 = align == FP_ALIGN_LEFT ? 0 : align == FP_ALIGN_MIDDLE ? -width / 2 : -width;
  const FpPlace place = { at.x, at.y, turn };
  FpBox box = FP_BOX_EMPTY;

  fp_box_add_point (&box, fp_place_point (&place, (FpPoint) { x0, -0.25 * height }));
  fp_box_add_point (&box, fp_place_point (&place, (FpPoint) { x0 + width, 1.05 * height }));
  return box;
}

void
fp_dimension_line (const FpWanted *w, const FpTierSides *s, FpDimensionLine *out)
{
  const double u = tier_at (s, w->side, w->tier);
  const Span span = span_of (w, w->figure);
  const double ends[2] = { w->lo, w->hi };
  const gboolean a_first = w->upright ? w->a.y <= w->b.y : w->a.x <= w->b.x;
  const FpPoint feature[2] = { a_first ? w->a : w->b, a_first ? w->b : w->a };
  const double figure_t = w->figure == FP_FIGURE_WITHIN  ? (w->lo + w->hi) / 2
                          : w->figure == FP_FIGURE_AFTER ? w->hi + BESIDE + w->width / 2
                                                         : w->lo - BESIDE - w->width / 2;
  /* Oblique strokes lean to the right as one reads the figure. */
  const FpPoint lean = is_upright (w->side) ? (FpPoint) { -STROKE, STROKE } : (FpPoint) { STROKE, STROKE };

  out->line_a = side_point (s, w->side, w->lo, u);
  out->line_b = side_point (s, w->side, w->hi, u);
  out->has_shelf = w->figure != FP_FIGURE_WITHIN;
  out->shelf_a = w->figure == FP_FIGURE_BEFORE ? out->line_a : out->line_b;
  out->shelf_b = side_point (s, w->side, w->figure == FP_FIGURE_BEFORE ? span.lo : span.hi, u);
  for (guint i = 0; i < 2; i++)
    {
      const FpPoint end = side_point (s, w->side, ends[i], u);
      out->extension[i][0] = side_point (s, w->side, ends[i], extension_from (w, s, feature[i]));
      out->extension[i][1] = side_point (s, w->side, ends[i], u + OVERRUN);
      out->stroke[i][0] = (FpPoint) { end.x - lean.x, end.y - lean.y };
      out->stroke[i][1] = (FpPoint) { end.x + lean.x, end.y + lean.y };
    }
  out->figure_at = side_point (s, w->side, figure_t, u);
  if (is_upright (w->side))
    out->figure_at.x -= OVER_LINE;
  else
    out->figure_at.y += OVER_LINE;
  out->turn = is_upright (w->side) ? 90 : 0;
  out->figure = fp_lettering_box (out->figure_at, w->width, FP_FIGURE_HEIGHT, out->turn, FP_ALIGN_MIDDLE);
}

/* --- two dimensions of one side -------------------------------------------------- */

typedef struct { guint index, tier; FpFigure figure; } Setting;

static gboolean
same (double a, double b)
{
  return fabs (a - b) < SAME;
}

/* Whether an extension line of @far runs through a dimension that lies nearer; along its extension line it may. */
static gboolean
runs_through (const FpWanted *far, const FpWanted *near, Span span)
{
  const double ends[2] = { far->lo, far->hi };

  for (guint i = 0; i < 2 && far->extension != FP_EXTENSION_TIER; i++)
    if (!same (ends[i], near->lo) && !same (ends[i], near->hi) && ends[i] > span.lo - CLEAR
        && ends[i] < span.hi + CLEAR)
      return TRUE;
  return FALSE;
}

static gboolean
run_together (const FpWanted *p, const FpWanted *q)
{
  const double at_p[2] = { p->lo, p->hi }, at_q[2] = { q->lo, q->hi };

  for (guint i = 0; i < 2; i++)
    for (guint j = 0; j < 2; j++)
      if (!same (at_p[i], at_q[j]) && fabs (at_p[i] - at_q[j]) < PARALLEL)
        return TRUE;
  return FALSE;
}

/* Dimensions that meet at one extension line may share a tier: a chain. */
static gboolean
collide_in_tier (const FpWanted *p, Span ps, const FpWanted *q, Span qs)
{
  if (same (ps.hi, qs.lo) && ps.hi == p->hi && qs.lo == q->lo)
    return FALSE;
  if (same (qs.hi, ps.lo) && qs.hi == q->hi && ps.lo == p->lo)
    return FALSE;
  return ps.lo < qs.hi + NEXT && qs.lo < ps.hi + NEXT;
}

static gboolean
collide (const FpWanted *p, Setting ps, const FpWanted *q, Setting qs)
{
  const Span p_span = span_of (p, ps.figure), q_span = span_of (q, qs.figure);

  const gboolean apart = p->extension == FP_EXTENSION_TIER || q->extension == FP_EXTENSION_TIER;

  if (!apart && run_together (p, q))
    return TRUE;
  if (ps.tier == qs.tier)
    return collide_in_tier (p, p_span, q, q_span);
  return ps.tier > qs.tier ? runs_through (p, q, q_span) : runs_through (q, p, p_span);
}

/* --- one side ---------------------------------------------------------------------- */

typedef struct
{
  GArray            *wanted;
  const FpTierSides *sides;
  FpCover            *room;   /* of the sheet                                     */
  FpCover            *inside; /* extension lines, from the feature to the outline */
  GArray            *on[FP_N_SIDES]; /* Setting, the shorter first               */
} Placer;

static FpWanted *
wanted_at (const Placer *p, guint index)
{
  return &g_array_index (p->wanted, FpWanted, index);
}

static gboolean
is_free (const Placer *p, Setting setting, const Setting *set, guint n)
{
  for (guint i = 0; i < n; i++)
    if (collide (wanted_at (p, setting.index), setting, wanted_at (p, set[i].index), set[i]))
      return FALSE;
  return TRUE;
}

/* The nearest tier that is free of those already set. */
static gboolean
set_one (const Placer *p, FpSide side, Setting *one, const Setting *set, guint n)
{
  for (one->tier = 0; one->tier < p->sides->tiers[side]; one->tier++)
    if (is_free (p, *one, set, n))
      return TRUE;
  return FALSE;
}

/* Sets all of a side anew with one more, the shorter ones first; nothing changes when not all find room. */
static gboolean
set_with (Placer *p, FpSide side, guint index, FpFigure figure)
{
  const GArray *old = p->on[side];
  GArray *next = g_array_sized_new (FALSE, FALSE, sizeof (Setting), old->len + 1);
  const FpWanted *added = wanted_at (p, index);
  Setting one = { index, 0, figure };
  guint i = 0;

  while (i < old->len
         && wanted_at (p, g_array_index (old, Setting, i).index)->length <= added->length)
    i++;
  g_array_append_vals (next, old->data, i);
  g_array_append_val (next, one);
  g_array_append_vals (next, (const Setting *) (gconstpointer) old->data + i, old->len - i);
  /* Those before the new one stay where they are. */
  for (; i < next->len; i++)
    if (!set_one (p, side, &g_array_index (next, Setting, i), (const Setting *) (gconstpointer) next->data, i))
      {
        g_array_unref (next);
        return FALSE;
      }
  g_array_unref (p->on[side]);
  p->on[side] = next;
  return TRUE;
}

/* --- between the sides ---------------------------------------------------------------- */

/* From the feature to where the first tier's room begins. */
static void
inside_line (const Placer *p, const FpWanted *w, guint end, FpPoint line[2])
{
  FpDimensionLine d;

  fp_dimension_line (w, p->sides, &d);
  line[0] = d.extension[end][0];
  line[1] = side_point (p->sides, w->side, end == 0 ? w->lo : w->hi, p->sides->first[w->side] - OVERRUN);
}

static gboolean
extensions_are_free (const Placer *p, const FpWanted *w)
{
  for (guint end = 0; end < 2; end++)
    {
      FpPoint line[2];
      inside_line (p, w, end, line);
      if (!fp_cover_line_is_free (p->inside, line[0], line[1], 0)
          || !fp_cover_line_is_free (p->room, line[0], line[1], 0))
        return FALSE;
    }
  return TRUE;
}

static double
depth_to (const Placer *p, const FpWanted *w, FpSide side)
{
  return -MIN (outward (p->sides, side, w->a), outward (p->sides, side, w->b));
}

/* Full extension lines where they are short enough and cross no other; otherwise those that the
 * side allows: on the farther side, short ones would tell nobody what is measured. */
static gboolean
choose_extension (const Placer *p, FpWanted *w, gboolean nearer, gboolean stub)
{
  const double longest = p->sides->full_only[w->side] ? NEAR_FULL : LONGEST;

  w->extension = FP_EXTENSION_FULL;
  if (!stub && depth_to (p, w, w->side) <= longest && extensions_are_free (p, w))
    return TRUE;
  if (!nearer || p->sides->full_only[w->side])
    return FALSE;
  w->extension = stub ? FP_EXTENSION_TIER : FP_EXTENSION_OUTLINE;
  return stub || extensions_are_free (p, w);
}

static void
take_inside (Placer *p, const FpWanted *w)
{
  for (guint end = 0; end < 2; end++)
    {
      FpPoint line[2];
      inside_line (p, w, end, line);
      fp_cover_take_line (p->inside, line[0], line[1], 1);
    }
}

/* A figure that fits between the strokes stands there; otherwise beside them, where there is room. */
static gboolean
set_with_figure (Placer *p, FpSide side, guint index)
{
  if (figure_fits (wanted_at (p, index), FP_FIGURE_WITHIN))
    return set_with (p, side, index, FP_FIGURE_WITHIN);
  return set_with (p, side, index, FP_FIGURE_AFTER) || set_with (p, side, index, FP_FIGURE_BEFORE);
}

static gboolean
place_on (Placer *p, guint index, FpSide side, gboolean nearer, gboolean stub)
{
  FpWanted *w = wanted_at (p, index);

  if (p->sides->tiers[side] == 0)
    return FALSE;
  w->side = side;
  w->tier = 0;
  w->figure = FP_FIGURE_WITHIN;
  if (!choose_extension (p, w, nearer, stub) || !set_with_figure (p, side, index))
    return FALSE;
  if (!stub)
    take_inside (p, w);
  return TRUE;
}

/* On the side to which it lies nearest, or on the other; a side that is closed does not count. */
static gboolean
place_one (Placer *p, guint index, gboolean stub)
{
  const FpWanted *w = wanted_at (p, index);
  const FpSide sides[2] = { w->upright ? FP_SIDE_LEFT : FP_SIDE_BELOW, w->upright ? FP_SIDE_RIGHT : FP_SIDE_ABOVE };
  const gboolean open[2] = { p->sides->tiers[sides[0]] > 0, p->sides->tiers[sides[1]] > 0 };
  const double depth[2] = { depth_to (p, w, sides[0]), depth_to (p, w, sides[1]) };
  const guint nearer = open[1] && (!open[0] || depth[1] + 1 < depth[0]) ? 1 : 0;
  const gboolean is_central = depth[1 - nearer] <= CENTRAL * depth[nearer];

  return place_on (p, index, sides[nearer], TRUE, stub) || place_on (p, index, sides[1 - nearer], is_central, stub);
}

static void
place_all (Placer *p)
{
  g_autofree gboolean *placed = g_new0 (gboolean, MAX (p->wanted->len, 1u));

  for (guint i = 0; i < p->wanted->len; i++)
    placed[i] = place_one (p, i, FALSE);
  for (guint i = 0; i < p->wanted->len; i++)
    if (!placed[i] && wanted_at (p, i)->rank <= STUB_RANK)
      place_one (p, i, TRUE);
}

static void
store_settings (Placer *p)
{
  for (FpSide side = 0; side < FP_N_SIDES; side++)
    for (guint i = 0; i < p->on[side]->len; i++)
      {
        const Setting *setting = &g_array_index (p->on[side], Setting, i);
        FpWanted *w = wanted_at (p, setting->index);
        w->placed = TRUE;
        w->side = side;
        w->tier = setting->tier;
        w->figure = setting->figure;
      }
}

/* --- proof ------------------------------------------------------------------------------- */

static gboolean
line_is_free (const FpCover *room, const FpDimensionLine *d, guint owner)
{
  return fp_cover_text_is_free (room, &d->figure, owner) && fp_cover_line_is_free (room, d->line_a, d->line_b, owner)
         && fp_cover_line_is_free (room, d->extension[0][0], d->extension[0][1], owner)
         && fp_cover_line_is_free (room, d->extension[1][0], d->extension[1][1], owner)
         && (!d->has_shelf || fp_cover_line_is_free (room, d->shelf_a, d->shelf_b, owner));
}

static void
take_line (FpCover *room, const FpDimensionLine *d, guint owner)
{
  fp_cover_take_text (room, &d->figure, owner);
  fp_cover_take_line (room, d->line_a, d->line_b, owner);
  fp_cover_take_line (room, d->extension[0][0], d->extension[0][1], owner);
  fp_cover_take_line (room, d->extension[1][0], d->extension[1][1], owner);
  if (d->has_shelf)
    fp_cover_take_line (room, d->shelf_a, d->shelf_b, owner);
}

/* Sides were set out one by one; whatever still meets something at a corner is left out. */
static guint
prove (GArray *wanted, const FpTierSides *sides, FpCover *room)
{
  guint left_out = 0;

  for (guint i = 0; i < wanted->len; i++)
    {
      FpWanted *w = &g_array_index (wanted, FpWanted, i);
      FpDimensionLine d;
      if (w->placed)
        fp_dimension_line (w, sides, &d);
      if (w->placed && line_is_free (room, &d, i + 1))
        take_line (room, &d, i + 1);
      else
        w->placed = FALSE;
      left_out += w->placed ? 0 : 1;
    }
  return left_out;
}

guint
fp_tiers_place (GArray *wanted, const FpTierSides *sides, FpCover *room)
{
  Placer p = { .wanted = wanted, .sides = sides, .room = room, .inside = fp_cover_new () };

  for (FpSide side = 0; side < FP_N_SIDES; side++)
    p.on[side] = g_array_new (FALSE, FALSE, sizeof (Setting));
  place_all (&p);
  store_settings (&p);
  for (FpSide side = 0; side < FP_N_SIDES; side++)
    g_array_unref (p.on[side]);
  fp_cover_free (p.inside);
  return prove (wanted, sides, room);
}

/* --- drawing --------------------------------------------------------------------------------- */

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
      fp_drawing_line (drawing, FP_PEN_DIMENSION, d.extension[i][0], d.extension[i][1]);
      fp_drawing_line (drawing, FP_PEN_OUTLINE, d.stroke[i][0], d.stroke[i][1]);
    }
  fp_drawing_text (drawing, d.figure_at, FP_FIGURE_HEIGHT, d.turn, FP_ALIGN_MIDDLE, w->text);
}

void
fp_tiers_draw (FpDrawing *drawing, const GArray *wanted, const FpTierSides *sides, FpViewId view, guint *number)
{
  for (guint i = 0; i < wanted->len; i++)
    {
      const FpWanted *w = &g_array_index (wanted, FpWanted, i);
      if (!w->placed)
        continue;
      fp_drawing_set_item (drawing, w->item, FP_STANDING_EXISTING, (int) view);
      fp_drawing_set_dimension (drawing, ++*number, w->param);
      draw_one (drawing, w, sides);
    }
  fp_drawing_set_dimension (drawing, 0, NULL);
  fp_drawing_set_item (drawing, NULL, FP_STANDING_EXISTING, (int) view);
}

double
fp_tiers_reach (const GArray *wanted, const FpTierSides *sides, FpSide side)
{
  double reach = 0;

  for (guint i = 0; i < wanted->len; i++)
    {
      const FpWanted *w = &g_array_index (wanted, FpWanted, i);
      if (w->placed && w->side == side)
        reach = MAX (reach, tier_at (sides, side, w->tier) + OVER_LINE + FP_FIGURE_HEIGHT);
    }
  return reach;
}
