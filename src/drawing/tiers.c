/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "tiers.h"

#include "dimension-line.h"

#include <math.h>

/* All in paper mm. */
#define CLEAR      1.3  /* between an end and another dimension's extension   */
#define NEXT       2.0  /* between two dimensions of one tier                 */
#define PARALLEL   0.7  /* nearer lines run together (ISO 128, as reported)   */
#define SAME       0.05
#define OVERRUN    1.5
#define OVER_LINE  1.2
#define CENTRAL    1.6  /* what lies at most so much farther from one side than from the other belongs to both */
#define FOREMOST   1.5
#define CROSSINGS  5u   /* lines of the drawing that an extension line may cross */

/* --- sides --------------------------------------------------------------------- */

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
    span.hi += FP_FIGURE_BESIDE + w->width;
  if (figure == FP_FIGURE_BEFORE)
    span.lo -= FP_FIGURE_BESIDE + w->width;
  return span;
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

  for (guint i = 0; i < 2; i++)
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

  if (run_together (p, q))
    return TRUE;
  if (ps.tier == qs.tier)
    return collide_in_tier (p, p_span, q, q_span);
  return ps.tier > qs.tier ? runs_through (p, q, q_span) : runs_through (q, p, p_span);
}

/* --- one side ---------------------------------------------------------------------- */

struct _FpTiers
{
  GArray            *wanted;
  const FpTierSides *sides;
  FpCover           *room;   /* of the sheet                                     */
  FpCover           *inside; /* extension lines, from the feature to the outline */
  GArray            *on[FP_N_SIDES]; /* Setting, the shorter first               */
  guint              more;   /* tiers: those that had to be opened               */
  FpTiersAmong       among;  /* what is placed now                               */
};

static FpWanted *
wanted_at (const FpTiers *p, guint index)
{
  return &g_array_index (p->wanted, FpWanted, index);
}

static gboolean
is_free (const FpTiers *p, Setting setting, const Setting *set, guint n)
{
  for (guint i = 0; i < n; i++)
    if (collide (wanted_at (p, setting.index), setting, wanted_at (p, set[i].index), set[i]))
      return FALSE;
  return TRUE;
}

/* The nearest tier that is free of those already set. */
static gboolean
set_one (const FpTiers *p, FpSide side, Setting *one, const Setting *set, guint n)
{
  const guint n_tiers = p->sides->tiers[side] + p->more;

  for (one->tier = 0; one->tier < n_tiers; one->tier++)
    if (is_free (p, *one, set, n))
      return TRUE;
  return FALSE;
}

/* Sets all of a side anew with one more, the shorter ones first; nothing changes when not all find room. */
static gboolean
set_with (FpTiers *p, FpSide side, guint index, FpFigure figure)
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
inside_lines (const FpTiers *p, const FpWanted *w, FpPoint line[2][2])
{
  FpDimensionLine d;
  const double edge = p->sides->first[w->side] - OVERRUN;

  fp_dimension_line (w, p->sides, &d);
  for (guint end = 0; end < 2; end++)
    {
      FpPoint *to = &line[end][1];
      line[end][0] = d.extension[end][0];
      *to = d.extension[end][1];
      switch (w->side)
        {
        case FP_SIDE_BELOW: to->y = p->sides->content.y0 - edge; break;
        case FP_SIDE_ABOVE: to->y = p->sides->content.y1 + edge; break;
        case FP_SIDE_LEFT: to->x = p->sides->content.x0 - edge; break;
        case FP_SIDE_RIGHT: to->x = p->sides->content.x1 + edge; break;
        case FP_N_SIDES: break;
        }
    }
}

static gboolean
extensions_are_free (const FpTiers *p, const FpWanted *w)
{
  FpPoint line[2][2];

  inside_lines (p, w, line);
  for (guint end = 0; end < 2; end++)
    if (!fp_cover_line_is_free (p->inside, line[end][0], line[end][1], 0)
        || !fp_cover_line_is_free (p->room, line[end][0], line[end][1], 0)
        || (p->among != FP_TIERS_INSIST
            && fp_cover_crossings (p->room, line[end][0], line[end][1]) > (w->rank == 0 ? 3 * CROSSINGS : CROSSINGS)))
      return FALSE;
  return TRUE;
}

static double
depth_to (const FpTiers *p, const FpWanted *w, FpSide side)
{
  return -MIN (outward (p->sides, side, w->a), outward (p->sides, side, w->b));
}

static void
take_inside (FpTiers *p, const FpWanted *w, guint owner)
{
  FpPoint line[2][2];

  inside_lines (p, w, line);
  for (guint end = 0; end < 2; end++)
    {
      fp_cover_take_line (p->inside, line[end][0], line[end][1], 1);
      fp_cover_take_line (p->room, line[end][0], line[end][1], owner);
    }
}

/* A figure that fits between the strokes stands there; otherwise beside them, where there is room. */
static gboolean
set_with_figure (FpTiers *p, FpSide side, guint index)
{
  if (fp_figure_fits_within (wanted_at (p, index)))
    return set_with (p, side, index, FP_FIGURE_WITHIN);
  return set_with (p, side, index, FP_FIGURE_AFTER) || set_with (p, side, index, FP_FIGURE_BEFORE);
}

static gboolean
place_on (FpTiers *p, guint index, FpSide side, double depth)
{
  FpWanted *w = wanted_at (p, index);
  const double most = MIN (depth, p->sides->longest[side]);
  /* What everyone asks for may reach farther in than the rest. */
  const double longest = w->overall || p->among == FP_TIERS_INSIST ? G_MAXDOUBLE : w->rank == 0 ? FOREMOST * most : most;

  if (p->sides->tiers[side] == 0 || depth_to (p, w, side) > longest)
    return FALSE;
  w->placed = FP_PLACED_BESIDE;
  w->side = side;
  w->tier = 0;
  w->figure = FP_FIGURE_WITHIN;
  if (!extensions_are_free (p, w) || !set_with_figure (p, side, index))
    {
      w->placed = FP_PLACED_NOT;
      return FALSE;
    }
  take_inside (p, w, index + 1);
  return TRUE;
}

/* On the side to which it lies nearest, or on the other; a side that is closed does not count. */
static void
place_one (FpTiers *p, guint index, double depth_most)
{
  const FpWanted *w = wanted_at (p, index);
  const FpSide sides[2] = { w->upright ? FP_SIDE_LEFT : FP_SIDE_BELOW, w->upright ? FP_SIDE_RIGHT : FP_SIDE_ABOVE };
  const gboolean open[2] = { p->sides->tiers[sides[0]] > 0, p->sides->tiers[sides[1]] > 0 };
  const double depth[2] = { depth_to (p, w, sides[0]), depth_to (p, w, sides[1]) };
  const guint nearer = open[1] && (!open[0] || depth[1] + 1 < depth[0]) ? 1 : 0;
  const gboolean is_central = w->overall || depth[1 - nearer] <= CENTRAL * depth[nearer];

  if (w->oblique || place_on (p, index, sides[nearer], depth_most) || !is_central)
    return;
  place_on (p, index, sides[1 - nearer], depth_most);
}

FpTiers *
fp_tiers_new (GArray *wanted, const FpTierSides *sides, FpCover *room)
{
  FpTiers *self = g_new0 (FpTiers, 1);

  self->wanted = wanted;
  self->sides = sides;
  self->room = room;
  self->inside = fp_cover_new ();
  for (FpSide side = 0; side < FP_N_SIDES; side++)
    self->on[side] = g_array_new (FALSE, FALSE, sizeof (Setting));
  return self;
}

void
fp_tiers_free (FpTiers *self)
{
  if (self == NULL)
    return;
  for (FpSide side = 0; side < FP_N_SIDES; side++)
    g_array_unref (self->on[side]);
  fp_cover_free (self->inside);
  g_free (self);
}

static gboolean
is_among (const FpWanted *w, FpTiersAmong among)
{
  return among == FP_TIERS_ALL || (w->must != NULL && (among == FP_TIERS_MUSTS || w->insists));
}

void
fp_tiers_place (FpTiers *self, double depth, FpTiersAmong among)
{
  self->among = among;
  if (among == FP_TIERS_INSIST)
    self->more = self->sides->more;
  for (guint i = 0; i < self->wanted->len; i++)
    if (fp_wanted_is_open (wanted_at (self, i)) && is_among (wanted_at (self, i), among))
      place_one (self, i, depth);
}

static void
store_settings (FpTiers *p)
{
  for (FpSide side = 0; side < FP_N_SIDES; side++)
    for (guint i = 0; i < p->on[side]->len; i++)
      {
        const Setting *setting = &g_array_index (p->on[side], Setting, i);
        FpWanted *w = wanted_at (p, setting->index);
        w->tier = setting->tier;
        w->figure = setting->figure;
      }
}

/* Sides were set out one by one; whatever still meets something at a corner is left out. */
void
fp_tiers_settle (FpTiers *self)
{
  store_settings (self);
  for (guint i = 0; i < self->wanted->len; i++)
    {
      FpWanted *w = wanted_at (self, i);
      FpDimensionLine d;
      if (w->placed != FP_PLACED_BESIDE)
        continue;
      fp_dimension_line (w, self->sides, &d);
      if (fp_dimension_line_is_free (&d, self->room, i + 1))
        fp_dimension_line_take (&d, self->room, i + 1);
      else
        w->placed = FP_PLACED_NOT;
    }
}

/* --- once all is settled -------------------------------------------------------------- */

static gboolean
runs_beside_another (const FpTiers *p, const FpWanted *w)
{
  for (guint i = 0; i < p->wanted->len; i++)
    {
      const FpWanted *o = wanted_at (p, i);
      if (o != w && o->placed == FP_PLACED_BESIDE && o->side == w->side && run_together (o, w))
        return TRUE;
    }
  return FALSE;
}

static gboolean
take_line (FpTiers *p, FpWanted *w, FpFigure figure, guint owner)
{
  FpDimensionLine d;

  w->figure = figure;
  fp_dimension_line (w, p->sides, &d);
  if (fp_cover_line_has_company (p->room, d.line_a, d.line_b, FP_TIER_STEP - 1, owner)
      || (d.has_shelf && fp_cover_line_has_company (p->room, d.shelf_a, d.shelf_b, FP_TIER_STEP - 1, owner))
      || !fp_dimension_line_is_free (&d, p->room, owner))
    return FALSE;
  fp_dimension_line_take (&d, p->room, owner);
  return TRUE;
}

static gboolean
place_late_on (FpTiers *p, FpWanted *w, FpSide side, guint owner)
{
  const guint n = p->sides->tiers[side] == 0 ? 0 : p->sides->tiers[side] + p->sides->more;

  w->placed = FP_PLACED_BESIDE;
  w->side = side;
  if (runs_beside_another (p, w))
    return FALSE;
  for (w->tier = 0; w->tier < n; w->tier++)
    if (fp_figure_fits_within (w) ? take_line (p, w, FP_FIGURE_WITHIN, owner)
                                  : take_line (p, w, FP_FIGURE_AFTER, owner) || take_line (p, w, FP_FIGURE_BEFORE, owner))
      return TRUE;
  return FALSE;
}

static void
place_late (FpTiers *p, FpWanted *w, guint owner)
{
  const FpSide sides[2] = { w->upright ? FP_SIDE_LEFT : FP_SIDE_BELOW, w->upright ? FP_SIDE_RIGHT : FP_SIDE_ABOVE };
  const guint nearer = depth_to (p, w, sides[1]) + 1 < depth_to (p, w, sides[0]) ? 1 : 0;

  if (!place_late_on (p, w, sides[nearer], owner) && !place_late_on (p, w, sides[1 - nearer], owner))
    w->placed = FP_PLACED_NOT;
}

void
fp_tiers_place_late (FpTiers *self)
{
  for (guint i = 0; i < self->wanted->len; i++)
    {
      FpWanted *w = wanted_at (self, i);
      if (fp_wanted_is_open (w) && w->insists && !w->oblique)
        place_late (self, w, i + 1);
    }
}

double
fp_tiers_reach (const GArray *wanted, const FpTierSides *sides, FpSide side)
{
  double reach = 0;

  for (guint i = 0; i < wanted->len; i++)
    {
      const FpWanted *w = &g_array_index (wanted, FpWanted, i);
      if (w->placed == FP_PLACED_BESIDE && w->side == side)
        reach = MAX (reach, tier_at (sides, side, w->tier) + OVER_LINE + FP_FIGURE_HEIGHT);
    }
  return reach;
}
