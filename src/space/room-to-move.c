/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ways-private.h"

#include <math.h>

static const FpTriangle *
triangle (const FpWays *ways, guint i)
{
  return &g_array_index (ways->triangles, FpTriangle, i);
}

static FpPoint
site (const FpWays *ways, guint i)
{
  return g_array_index (ways->points, FpPoint, i);
}

/* --- bars --------------------------------------------------------------------------- */

gboolean
fp_bars_cross (const FpBar *bar, guint n_bars, FpPoint a, FpPoint b)
{
  for (guint i = 0; i < n_bars; i++)
    {
      const FpPoint p = bar[i].a, q = bar[i].b;
      /* A point on the bar counts as left of it, so that who passes through it crosses once. */
      const gboolean apart = (fp_orient (p, q, a) >= 0) == (fp_orient (p, q, b) >= 0);
      if (!apart && (fp_orient (a, b, p) >= 0) != (fp_orient (a, b, q) >= 0))
        return TRUE;
    }
  return FALSE;
}

/* --- ends of a way ---------------------------------------------------------------------- */

static gboolean
lies_in (const FpWays *ways, const FpTriangle *t, FpPoint at)
{
  const int a = fp_orient (site (ways, t->corner[0]), site (ways, t->corner[1]), at);
  const int b = fp_orient (site (ways, t->corner[1]), site (ways, t->corner[2]), at);
  const int c = fp_orient (site (ways, t->corner[2]), site (ways, t->corner[0]), at);

  return (a >= 0 && b >= 0 && c >= 0) || (a <= 0 && b <= 0 && c <= 0);
}

static int
knot_at (const FpWays *ways, FpPoint at)
{
  for (guint i = 0; i < ways->triangles->len; i++)
    if (ways->is_free[i] && lies_in (ways, triangle (ways, i), at))
      return (int) i;
  return -1;
}

/* The gaps are sorted by width; those of one triangle are its three sides. */
static gboolean
may_pass (const FpWays *ways, const FpTriangle *t, guint side)
{
  FpPoint near[2];

  return t->beyond[side] >= 0 && ways->is_free[t->beyond[side]]
         && fp_ways_gap (ways, t->corner[side], t->corner[(side + 1) % 3], near) > FP_WAY_LEAST;
}

/* A knot's middle may lie beyond a bar from where the way begins; unless all do, those are left out. */
static void
keep_this_side (const FpWays *ways, FpWaySet *set, const FpBar *bar, guint n_bars)
{
  guint kept = 0;

  for (guint i = 0; i < set->knots->len; i++)
    {
      const guint knot = g_array_index (set->knots, guint, i);
      if (!fp_bars_cross (bar, n_bars, set->at, triangle (ways, knot)->centre))
        g_array_index (set->knots, guint, kept++) = knot;
    }
  if (kept > 0)
    g_array_set_size (set->knots, kept);
}

/* The knot at the point, and those about it whose middle is within reach. */
FpWaySet *
fp_way_set_new (const FpWays *ways, const FpWayEnd *end, const FpBar *bar, guint n_bars)
{
  FpWaySet *self = g_new (FpWaySet, 1);
  const int first = knot_at (ways, end->at);
  g_autofree gboolean *seen = g_new0 (gboolean, ways->triangles->len + 1);

  *self = (FpWaySet) { g_array_new (FALSE, FALSE, sizeof (guint)), end->at };
  if (first < 0)
    return self;
  g_array_append_val (self->knots, first);
  seen[first] = TRUE;
  for (guint i = 0; i < self->knots->len; i++)
    {
      const FpTriangle *t = triangle (ways, g_array_index (self->knots, guint, i));
      for (guint k = 0; k < 3; k++)
        {
          const int next = t->beyond[k];
          if (next < 0 || seen[next] || !may_pass (ways, t, k))
            continue;
          seen[next] = TRUE;
          if (hypot (triangle (ways, (guint) next)->centre.x - end->at.x, triangle (ways, (guint) next)->centre.y - end->at.y)
              <= end->reach)
            g_array_append_val (self->knots, next);
        }
    }
  keep_this_side (ways, self, bar, n_bars);
  return self;
}

void
fp_way_set_free (FpWaySet *self)
{
  g_array_unref (self->knots);
  g_free (self);
}

/* --- together ------------------------------------------------------------------------------ */

static guint
root_of (guint *up, guint i)
{
  while (up[i] != i)
    i = up[i] = up[up[i]];
  return i;
}

static guint *
each_apart (guint n)
{
  guint *up = g_new (guint, n + 1);

  for (guint i = 0; i < n; i++)
    up[i] = i;
  return up;
}

static void
put_together (guint *up, const FpWaySet *set)
{
  for (guint i = 1; i < set->knots->len; i++)
    up[root_of (up, g_array_index (set->knots, guint, i))] = root_of (up, g_array_index (set->knots, guint, 0));
}

/* Of the knots that are in both; 0: none is. */
static double
widest_in_both (const FpWays *ways, const FpWaySet *a, const FpWaySet *b)
{
  g_autofree gboolean *in_a = g_new0 (gboolean, ways->triangles->len + 1);
  double most = 0;

  for (guint i = 0; i < a->knots->len; i++)
    in_a[g_array_index (a->knots, guint, i)] = TRUE;
  for (guint i = 0; i < b->knots->len; i++)
    if (in_a[g_array_index (b->knots, guint, i)])
      most = MAX (most, 2 * triangle (ways, g_array_index (b->knots, guint, i))->radius);
  return most;
}

double
fp_way_tolerance (double width)
{
  return width > 0 ? FP_WAY_PIECE * FP_WAY_PIECE / (8 * width) : 0;
}

/* The gap that is the last to be needed; NULL: there is no way. */
static const FpGap *
narrowest_of_widest (const FpWays *ways, const FpWaySet *from, const FpWaySet *to, const FpBar *bar, guint n_bars)
{
  g_autofree guint *up = each_apart (ways->triangles->len);
  const guint a = g_array_index (from->knots, guint, 0), b = g_array_index (to->knots, guint, 0);

  put_together (up, from);
  put_together (up, to);
  for (guint i = 0; i < ways->gaps->len; i++)
    {
      const FpGap *gap = &g_array_index (ways->gaps, FpGap, i);

      if (n_bars > 0 && fp_bars_cross (bar, n_bars, triangle (ways, gap->from)->centre, triangle (ways, gap->to)->centre))
        continue;
      up[root_of (up, gap->from)] = root_of (up, gap->to);
      if (root_of (up, a) == root_of (up, b))
        return gap;
    }
  return NULL;
}

FpWay *
fp_ways_widest (const FpScene *scene, const FpWays *ways, const FpWayEnd *from, const FpWayEnd *to, const FpBar *bar, guint n_bars)
{
  g_autoptr (FpWaySet) begin = fp_way_set_new (ways, from, bar, n_bars), end = fp_way_set_new (ways, to, bar, n_bars);
  FpWay *way = g_new0 (FpWay, 1);
  const FpGap *gap;

  way->owner[0] = way->owner[1] = -1;
  if (begin->knots->len == 0 || end->knots->len == 0)
    return way;
  way->width = widest_in_both (ways, begin, end);
  way->tolerance = fp_way_tolerance (way->width);
  if (way->width > 0)
    return way;
  gap = narrowest_of_widest (ways, begin, end, bar, n_bars);
  if (gap == NULL)
    return way;
  fp_way_tell_gap (scene, ways, gap, way);
  way->tolerance = fp_way_tolerance (way->width);
  fp_way_find_route (ways, begin, end, gap->width, bar, n_bars, way);
  return way;
}

FpWay *
fp_way_widest (const FpScene *scene, FpGait gait, const FpWayEnd *from, const FpWayEnd *to, const FpBar *bar, guint n_bars)
{
  return fp_ways_widest (scene, fp_scene_ways (scene, gait), from, to, bar, n_bars);
}

FpWay *
fp_way_copy (const FpWay *self)
{
  FpWay *copy = g_memdup2 (self, sizeof *self);

  if (copy == NULL)
    return NULL;
  copy->route = g_memdup2 (self->route, self->n_route * sizeof *self->route);
  copy->outline = g_memdup2 (self->outline, self->n_outline * sizeof *self->outline);
  return copy;
}

void
fp_way_free (FpWay *self)
{
  if (self == NULL)
    return;
  g_free (self->route);
  g_free (self->outline);
  g_free (self);
}

/* --- circles -------------------------------------------------------------------------------- */

/* Of the pieces of the three sites that the circle touches, the nearest. */
static double
true_radius (const FpWays *ways, const FpTriangle *t)
{
  double least = t->radius;

  for (guint k = 0; k < 3; k++)
    {
      const FpWaySite *s = &g_array_index (ways->sites, FpWaySite, t->corner[k]);
      for (guint i = 0; i < s->n_arms; i++)
        least = MIN (least, fp_segment_distance (site (ways, t->corner[k]), s->arm[i], t->centre));
    }
  return least;
}

double
fp_room_circle (const FpScene *scene, FpGait gait, const FpPoint *within, guint n_within, FpPoint *middle)
{
  const FpWays *ways = fp_scene_ways (scene, gait);
  double most = 0;

  for (guint i = 0; i < ways->triangles->len; i++)
    {
      const FpTriangle *t = triangle (ways, i);
      double radius;

      if (!ways->is_free[i] || t->radius <= most || !fp_outline_contains (within, n_within, t->centre))
        continue;
      radius = true_radius (ways, t);
      if (radius <= most)
        continue;
      most = radius;
      if (middle != NULL)
        *middle = t->centre;
    }
  return 2 * most;
}

const GArray *
fp_room_edges (const FpScene *scene, FpGait gait)
{
  return fp_scene_ways (scene, gait)->edges;
}

double
fp_room_ahead (const FpScene *scene, FpGait gait, FpPoint from, double dx, double dy, double far)
{
  const GArray *edges = fp_room_edges (scene, gait);

  for (guint i = 0; i < edges->len; i++)
    {
      const FpBar *edge = &g_array_index (edges, FpBar, i);
      far = fp_side_ahead (edge->a, edge->b, from, dx, dy, far);
    }
  return far;
}

double
fp_room_clear_about (const FpScene *scene, FpGait gait, FpPoint at)
{
  const GArray *edges = fp_room_edges (scene, gait);
  double least = G_MAXDOUBLE;

  if (fp_free_floor_level_at (fp_scene_free_floor (scene), at) < 0)
    return 0;
  for (guint i = 0; i < edges->len; i++)
    least = MIN (least, fp_segment_distance (g_array_index (edges, FpBar, i).a, g_array_index (edges, FpBar, i).b, at));
  return least;
}
