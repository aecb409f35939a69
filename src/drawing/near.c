/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "near.h"

#include "dimension-line.h"

#include <math.h>

/* All in paper mm; design judgement where no standard is named. */
#define CLEAR     0.6  /* between a figure and what is drawn                  */
#define APART     1.2  /* between a figure and another text                   */
#define TOGETHER  0.9  /* nearer to a line of the drawing, a dimension line is lost on it (ISO 128: 0.7, as reported) */
#define LINES_APART 6.0 /* a dimension line from others and from extension lines beside it */
#define INSIDE    7.0  /* from the feature, where the line lies over its own thing */
#define SLIDES    12u  /* places that are tried between two faces             */
#define SLIDE_IN  1.2  /* from the ends of the faces                          */
#define SAME      0.05
#define LAST      1.5  /* of an edge, to tell that it goes on to its end */
#define LEAST_OFF 6.0  /* a chain is carried on only so far from the feature  */

/* What a place costs (design judgement): each mm of extension line, each line of the drawing that is crossed by the
 * dimension line or an extension line, a figure beside its line, a line over its own thing; and what it gains
 * by carrying on a chain.  More than MOST is worse than nothing, but for what everyone asks for. */
#define PER_MM     0.05
#define PER_MM_OFF 0.15 /* of departure from the best distance */
#define PER_LINE   1.0
#define PER_EXTEND 0.5
#define PER_WALL   2.0
#define BESIDE     0.9
#define OVER_OWN   2.5
#define ALONG_LINE 1.5
#define CLOSE_BY   1.2 /* another line that runs along the dimension line within CLOSE */
#define CLOSE      4.0
#define CHAIN      1.5
#define MOST       7.0
#define MOST_FOREMOST 12.0
#define MOST_LESSER 4.5
#define MOST_WHEREABOUTS 9.0 /* it is long, and runs over half of its own thing */
#define LESSER     3u
/* For what must be told: a figure on a patch of paper, each line that the patch interrupts, and how much it may be. */
#define ON_PATCH   2.0
#define PER_HIDDEN 0.8
#define MOST_INSISTS 16.0
#define MOST_ANYHOW 200.0
#define OVER_STEP  3.0 /* between the places over its own thing */
#define AT_FACE    0.1
#define FARTHEST   81.0
#define FROM_MIDDLE 1.0 /* from where a thing is set out, the line may begin in its middle */

/* Distances from the edge of the thing. */
static const double DISTANCES[] = { 10, 8, 12, 6.5, 14, 17.5, 25, 32, 40 };
#define USUAL_DISTANCES 7u

typedef struct
{
  GArray      *wanted;
  const FpBox *within;
  double       axis;
  FpCover     *room;
  FpNearAmong  among;
  guint        index;
  FpWanted    *w;       /* the one that is placed now     */
  FpWanted     best;
  double       cost;    /* of the best; G_MAXDOUBLE: none */
  double       most;    /* that it may cost               */
} Search;

/* --- one place ------------------------------------------------------------------------ */

static gboolean
lies_within (const FpBox *box, const FpBox *in)
{
  return box->x0 >= in->x0 && box->y0 >= in->y0 && box->x1 <= in->x1 && box->y1 <= in->y1;
}

static FpBox
grown (const FpBox *box, double by)
{
  return (FpBox) { box->x0 - by, box->y0 - by, box->x1 + by, box->y1 + by };
}

static gboolean
insists (const Search *s)
{
  return s->among == FP_NEAR_INSIST || s->among == FP_NEAR_ANYHOW || s->among == FP_NEAR_CHOSEN;
}

/* What it costs where the figure stands: nothing on blank paper; G_MAXDOUBLE where it cannot stand. */
static double
cost_of_figure (const Search *s, const FpDimensionLine *d)
{
  double cost = 0;

  for (guint i = 0; i < d->n_figure; i++)
    {
      const FpBox kept = grown (&d->figure[i], CLEAR), apart = grown (&d->figure[i], APART);
      const gboolean is_blank = fp_cover_is_blank (s->room, &kept, 0);
      if (!lies_within (&kept, s->within) || !fp_cover_text_is_free (s->room, &apart, s->index + 1)
          || (!is_blank && (!insists (s) || fp_cover_is_on_filled (s->room, &kept))))
        return G_MAXDOUBLE;
      cost += is_blank ? 0 : PER_HIDDEN * fp_cover_lines_in (s->room, &kept) + (cost == 0 ? ON_PATCH : 0);
    }
  return cost;
}

static double
cost_of_extensions (const Search *s, const FpDimensionLine *d)
{
  double cost = 0;

  for (guint i = 0; i < 2; i++)
    if (d->has_extension[i])
      cost += PER_EXTEND * fp_cover_crossings (s->room, d->extension[i][0], d->extension[i][1])
            + (fp_cover_passes_filled (s->room, d->extension[i][0], d->extension[i][1]) ? PER_WALL : 0)
            + (fp_cover_runs_along (s->room, d->extension[i][0], d->extension[i][1], 0.3) ? ALONG_LINE : 0);
  return cost;
}

/* Among rows of seats a line is taken for one of them. */
static gboolean
runs_through_rows (const Search *s, const FpDimensionLine *d)
{
  return !s->w->of_rows && s->among != FP_NEAR_ANYHOW
         && (fp_cover_passes_rows (s->room, d->line_a, d->line_b)
             || (d->has_shelf && fp_cover_passes_rows (s->room, d->shelf_a, d->shelf_b)));
}

/* The extension lines of what is lesser keep out of there too. */
static gboolean
reaches_through_rows (const Search *s, const FpDimensionLine *d)
{
  for (guint i = 0; i < 2 && s->w->is_whereabouts; i++)
    if (d->has_extension[i] && fp_cover_passes_rows (s->room, d->extension[i][0], d->extension[i][1]))
      return TRUE;
  return FALSE;
}

/* A line from a wall to which a thing is set out only ends at it. */
static gboolean
passes_filled (const Search *s, const FpDimensionLine *d)
{
  const FpPoint a = d->line_a, b = d->line_b;
  const double t = s->w->is_whereabouts ? fmin (AT_FACE / hypot (b.x - a.x, b.y - a.y), 0.5) : 0;
  const FpPoint by = { t * (b.x - a.x), t * (b.y - a.y) };

  return fp_cover_passes_filled (s->room, (FpPoint) { a.x + by.x, a.y + by.y }, (FpPoint) { b.x - by.x, b.y - by.y });
}

static gboolean
is_lost (const Search *s, const FpDimensionLine *d)
{
  return fp_cover_runs_along (s->room, d->line_a, d->line_b, s->w->rank == 0 || insists (s) ? TOGETHER / 2 : TOGETHER)
         || fp_cover_line_has_company (s->room, d->line_a, d->line_b, LINES_APART, s->index + 1)
         || (d->has_shelf && (fp_cover_runs_along (s->room, d->shelf_a, d->shelf_b, TOGETHER)
                              || fp_cover_crossings (s->room, d->shelf_a, d->shelf_b) > 0))
         || passes_filled (s, d) || runs_through_rows (s, d) || reaches_through_rows (s, d);
}

/* The axis is no line of what is drawn, but looks like one. */
static gboolean
runs_along_axis (const Search *s, const FpDimensionLine *d)
{
  return fabs (d->line_a.x - d->line_b.x) < 1 && fabs (d->line_a.x - s->axis) < CLOSE;
}

static double
cost_of_company (const Search *s, const FpDimensionLine *d)
{
  return fp_cover_runs_along (s->room, d->line_a, d->line_b, CLOSE) || runs_along_axis (s, d) ? CLOSE_BY : 0;
}

/* @cost: of the place as such */
static void
try_figure (Search *s, FpFigure figure, double cost)
{
  FpWanted *w = s->w;
  FpDimensionLine d;
  double on_figure;

  w->figure = figure;
  cost += figure == FP_FIGURE_WITHIN ? 0 : BESIDE;
  if (cost >= MIN (s->cost, s->most))
    return;
  fp_dimension_line (w, NULL, &d);
  if (!lies_within (&(FpBox) { MIN (d.line_a.x, d.line_b.x), MIN (d.line_a.y, d.line_b.y), MAX (d.line_a.x, d.line_b.x),
                               MAX (d.line_a.y, d.line_b.y) }, s->within)
      || !fp_dimension_line_is_free (&d, s->room, s->index + 1) || is_lost (s, &d))
    return;
  on_figure = cost_of_figure (s, &d);
  if (on_figure == G_MAXDOUBLE)
    return;
  cost += on_figure + PER_LINE * fp_cover_crossings (s->room, d.line_a, d.line_b) + cost_of_extensions (s, &d)
          + cost_of_company (s, &d);
  if (cost >= MIN (s->cost, s->most))
    return;
  s->cost = cost;
  s->best = *w;
  s->best.has_ground = on_figure > 0;
}

static void
try_at (Search *s, double base, double offset, double cost)
{
  s->w->base = base;
  s->w->offset = offset;
  if (fp_figure_fits_within (s->w))
    try_figure (s, FP_FIGURE_WITHIN, cost);
  try_figure (s, FP_FIGURE_AFTER, cost);
  try_figure (s, FP_FIGURE_BEFORE, cost);
}

/* --- where it may stand ---------------------------------------------------------------- */

static void
try_beside_thing (Search *s)
{
  const FpBox *own = &s->w->own;
  const double edge[2] = { fp_box_is_empty (own) ? 0 : MIN (own->y0, 0), fp_box_is_empty (own) ? 0 : MAX (own->y1, 0) };

  for (guint side = 0; side < 2; side++)
    {
      const double way = side == 0 ? -1 : 1;
      for (guint i = 0; i < (insists (s) ? G_N_ELEMENTS (DISTANCES) : USUAL_DISTANCES); i++)
        {
          const double offset = edge[side] + way * DISTANCES[i];
          try_at (s, 0, offset, PER_MM * fabs (offset) + PER_MM_OFF * fabs (DISTANCES[i] - DISTANCES[0]));
        }
      if (fabs (edge[side]) > INSIDE + 3)
        try_at (s, 0, way * INSIDE, OVER_OWN + PER_MM * INSIDE);
      for (double over = OVER_STEP; insists (s) && over < fabs (edge[side]); over += OVER_STEP)
        try_at (s, 0, way * over, OVER_OWN + PER_MM * over);
    }
}

/* From the thing's very middle, over half of it. */
static void
try_from_middle (Search *s)
{
  const double lo = s->w->own.y0, hi = s->w->own.y1, step = OVER_STEP / 2;

  for (double at = lo + step; at < hi; at += step)
    try_at (s, 0, at, FROM_MIDDLE);
}

/* Straight from face to face, where nothing but the two strokes touches them. */
static void
try_between_faces (Search *s)
{
  const double lo = MIN (s->w->slide[0], s->w->slide[1]), hi = MAX (s->w->slide[0], s->w->slide[1]);

  if (hi - lo < 3 * SLIDE_IN)
    return;
  for (guint i = 0; i <= SLIDES; i++)
    {
      const double base = lo + SLIDE_IN + (hi - lo - 2 * SLIDE_IN) * i / SLIDES;
      try_at (s, base, 0, PER_MM * fabs (base) / 4);
    }
}

/* How far along the measure's direction its ends lie, and how far across its line does. */
typedef struct { double lo, hi, across; } Strip;

static Strip
strip_of (const FpWanted *w)
{
  const FpPoint u = fp_wanted_along (w);
  const double a = w->a.x * u.x + w->a.y * u.y, b = w->b.x * u.x + w->b.y * u.y;
  const double across = u.x * w->a.y - u.y * w->a.x;

  return (Strip) { MIN (a, b), MAX (a, b), across };
}

static gboolean
continues (const Strip *p, const Strip *q)
{
  return fabs (p->lo - q->hi) < SAME || fabs (p->hi - q->lo) < SAME;
}

/* On from the dimension that ends where this one begins. */
static void
try_chain (Search *s)
{
  const Strip own = strip_of (s->w);
  const FpPoint u = fp_wanted_along (s->w);

  for (guint i = 0; i < s->wanted->len; i++)
    {
      const FpWanted *o = &g_array_index (s->wanted, FpWanted, i);
      const FpPoint v = fp_wanted_along (o);
      const Strip other = strip_of (o);
      const double offset = other.across + o->base + o->offset - own.across;
      if (o->placed != FP_PLACED_NEAR || i == s->index || fabs (u.x * v.y - u.y * v.x) > 1e-6
          || !continues (&own, &other) || fabs (offset) < LEAST_OFF)
        continue;
      try_at (s, 0, offset, PER_MM * fabs (offset) - CHAIN);
    }
}

/* Where its thing goes on beside an end of the measure, as a table does beside its corner, the extension line
 * begins where that ends: along the thing's own edge it would not be seen. */
static void
find_borders (Search *s)
{
  FpWanted *w = s->w;
  const FpPoint u = fp_wanted_along (w), n = { -u.y, u.x };
  const gboolean a_first = w->a.x * u.x + w->a.y * u.y <= w->b.x * u.x + w->b.y * u.y;

  for (guint end = 0; end < 2; end++)
    for (guint side = 0; side < 2; side++)
      {
        const FpPoint from = (end == 0) == a_first ? w->a : w->b;
        const double edge = fp_box_is_empty (&w->own) ? 0 : side == 0 ? MIN (w->own.y0, 0) : MAX (w->own.y1, 0);
        const double last = edge - (edge < 0 ? -LAST : LAST);
        const FpPoint to = { from.x + edge * n.x, from.y + edge * n.y };
        const FpPoint before = { from.x + last * n.x, from.y + last * n.y };
        w->border[end][side] = fabs (edge) > LAST && fp_cover_runs_along (s->room, before, to, 0.15) ? edge : 0;
      }
}

static gboolean
meets_axis (const Search *s, const FpWanted *w)
{
  FpDimensionLine d;

  fp_dimension_line (w, NULL, &d);
  for (guint i = 0; i < d.n_figure && !isnan (s->axis); i++)
    if (d.figure[i].x0 - CLEAR < s->axis && d.figure[i].x1 + CLEAR > s->axis)
      return TRUE;
  return FALSE;
}

/* Across the whole view. */
static void
try_far_off (Search *s)
{
  for (double at = -FARTHEST; at <= FARTHEST; at += OVER_STEP)
    try_at (s, 0, at, PER_MM * fabs (at));
}

static void
try_everywhere (Search *s)
{
  if (s->w->slide[0] != s->w->slide[1])
    try_between_faces (s);
  if (s->w->is_whereabouts && !s->w->upright)
    try_from_middle (s);
  try_chain (s);
  try_beside_thing (s);
  if (s->among == FP_NEAR_CHOSEN && s->cost == G_MAXDOUBLE)
    try_far_off (s);
}

static double
most_of (const Search *s)
{
  switch (s->among)
    {
    case FP_NEAR_INSIST: return MOST_INSISTS;
    case FP_NEAR_ANYHOW:
    case FP_NEAR_CHOSEN: return MOST_ANYHOW;
    case FP_NEAR_ALL:
    case FP_NEAR_MUSTS: break;
    }
  if (s->w->is_whereabouts)
    return MOST_WHEREABOUTS;
  return s->w->rank == 0 ? MOST_FOREMOST : s->w->rank > LESSER ? MOST_LESSER : MOST;
}

static gboolean
is_among (const Search *s)
{
  if (s->among == FP_NEAR_CHOSEN)
    return s->w->is_chosen;
  return s->among == FP_NEAR_ALL || (s->w->must != NULL && (s->among == FP_NEAR_MUSTS || s->w->insists));
}

/* Where the same measure stood; NULL: it stood nowhere within the view. */
static const FpWanted *
stood_before (const Search *s, const GArray *before)
{
  for (guint i = 0; before != NULL && i < before->len; i++)
    {
      const FpWanted *o = &g_array_index (before, FpWanted, i);
      if (o->placed == FP_PLACED_NEAR && o->item == s->w->item && o->param == s->w->param && o->axis == s->w->axis
          && o->is_whereabouts == s->w->is_whereabouts
          && (o->param != NULL || o->is_whereabouts || fabs (o->from - s->w->from) < 1))
        return o;
    }
  return NULL;
}

/* @as_before: only where it stood; NULL: where it stands best */
static void
place_one (Search *s, const FpWanted *as_before)
{
  FpWanted *w = s->w;
  FpDimensionLine d;

  s->cost = G_MAXDOUBLE;
  s->most = most_of (s);
  w->placed = FP_PLACED_NEAR;
  if (!w->is_whereabouts)
    find_borders (s);
  if (as_before != NULL)
    {
      w->base = as_before->base;
      w->offset = as_before->offset;
      if (as_before->figure != FP_FIGURE_WITHIN || fp_figure_fits_within (w))
        try_figure (s, as_before->figure, 0);
    }
  else
    try_everywhere (s);
  if (s->cost == G_MAXDOUBLE)
    {
      w->placed = FP_PLACED_NOT;
      return;
    }
  *w = s->best;
  w->has_ground |= meets_axis (s, w);
  fp_dimension_line (w, NULL, &d);
  fp_dimension_line_take (&d, s->room, s->index + 1);
}

void
fp_near_place (GArray *wanted, FpNearAmong among, guint rank_max, const GArray *before, const FpBox *within, double axis,
               FpCover *room)
{
  Search s = { .wanted = wanted, .among = among, .within = within, .axis = axis, .room = room };

  /* Each where it stood, and else where it stands best, but the foremost first: what is lesser keeps no place that a
   * foremost measure needs that was told elsewhere for a while. */
  for (s.index = 0; s.index < wanted->len; s.index++)
    {
      const FpWanted *as_before;

      s.w = &g_array_index (wanted, FpWanted, s.index);
      if (!fp_wanted_is_open (s.w) || s.w->overall || s.w->rank > rank_max || !is_among (&s))
        continue;
      as_before = stood_before (&s, before);
      if (as_before != NULL)
        place_one (&s, as_before);
      if (fp_wanted_is_open (s.w))
        place_one (&s, NULL);
    }
}
