/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "scene-private.h"
#include "ways.h"

#include "footpace/workers.h"

#include <math.h>
#include <stdlib.h>

/* --- gaps ------------------------------------------------------------------------ */

static FpPoint
nearest_on (FpPoint a, FpPoint b, FpPoint p)
{
  const double dx = b.x - a.x, dy = b.y - a.y, dd = dx * dx + dy * dy;
  const double t = dd > 0 ? CLAMP (((p.x - a.x) * dx + (p.y - a.y) * dy) / dd, 0, 1) : 0;

  return (FpPoint) { a.x + t * dx, a.y + t * dy };
}

static void
take_nearer (FpPoint p, FpPoint q, double *best, FpPoint near[2])
{
  const double d = hypot (p.x - q.x, p.y - q.y);

  if (d < *best)
    {
      *best = d;
      near[0] = p;
      near[1] = q;
    }
}

/* Edges do not cross, so two pieces are nearest at an end of one of them. */
double
fp_ways_gap (const FpWays *self, guint a, guint b, FpPoint near[2])
{
  const FpPoint p = g_array_index (self->points, FpPoint, a), q = g_array_index (self->points, FpPoint, b);
  const FpWaySite *s = &g_array_index (self->sites, FpWaySite, a), *t = &g_array_index (self->sites, FpWaySite, b);
  double best = G_MAXDOUBLE;

  take_nearer (p, q, &best, near);
  for (guint i = 0; i < s->n_arms; i++)
    for (guint k = 0; k < t->n_arms; k++)
      {
        take_nearer (p, nearest_on (q, t->arm[k], p), &best, near);
        take_nearer (s->arm[i], nearest_on (q, t->arm[k], s->arm[i]), &best, near);
        take_nearer (nearest_on (p, s->arm[i], q), q, &best, near);
        take_nearer (nearest_on (p, s->arm[i], t->arm[k]), t->arm[k], &best, near);
      }
  return best;
}

static int
widest_first (gconstpointer a, gconstpointer b)
{
  const FpGap *x = a, *y = b;

  if (x->width != y->width)
    return x->width > y->width ? -1 : 1;
  return x->from != y->from ? (x->from < y->from ? -1 : 1) : (x->to > y->to) - (x->to < y->to);
}

/* Most are: neighbours along an edge. */
static gboolean
too_near (const FpWays *self, guint a, guint b)
{
  const FpPoint p = g_array_index (self->points, FpPoint, a), q = g_array_index (self->points, FpPoint, b);

  return (p.x - q.x) * (p.x - q.x) + (p.y - q.y) * (p.y - q.y) <= FP_WAY_LEAST * FP_WAY_LEAST;
}

static void
gather_gaps (FpWays *self)
{
  for (guint i = 0; i < self->triangles->len; i++)
    for (guint k = 0; k < 3; k++)
      {
        const FpTriangle *t = &g_array_index (self->triangles, FpTriangle, i);
        FpGap gap = { .from = i, .to = (guint) t->beyond[k], .a = t->corner[k], .b = t->corner[(k + 1) % 3] };
        FpPoint near[2];

        if (t->beyond[k] < (int) i || too_near (self, gap.a, gap.b))
          continue;
        gap.width = fp_ways_gap (self, gap.a, gap.b, near);
        if (gap.width > FP_WAY_LEAST)
          g_array_append_val (self->gaps, gap);
      }
  g_array_sort (self->gaps, widest_first);
}

/* --- what is free ----------------------------------------------------------------- */

static guint
root_of (guint *up, guint i)
{
  while (up[i] != i)
    i = up[i] = up[up[i]];
  return i;
}

/* Of triangles that hang together one is asked, whose circle is the largest: its middle is far from every edge.  One that hangs
 * together with none leads nowhere. */
static void
find_free (FpWays *self, const FpFreeFloor *floor)
{
  const guint n = self->triangles->len;
  const FpTriangle *t = (const FpTriangle *) (gpointer) self->triangles->data;
  g_autofree guint *up = g_new (guint, n + 1), *best = g_new (guint, n + 1);

  g_autofree gboolean *has_gap = g_new0 (gboolean, n + 1);

  for (guint i = 0; i < n; i++)
    up[i] = best[i] = i;
  for (guint i = 0; i < self->gaps->len; i++)
    {
      const FpGap *gap = &g_array_index (self->gaps, FpGap, i);
      up[root_of (up, gap->from)] = root_of (up, gap->to);
      has_gap[gap->from] = has_gap[gap->to] = TRUE;
    }
  for (guint i = 0; i < n; i++)
    if (t[i].radius > t[best[root_of (up, i)]].radius)
      best[root_of (up, i)] = i;
  for (guint i = 0; i < n; i++)
    if (root_of (up, i) == i)
      self->is_free[i] = has_gap[i] && t[best[i]].radius > FP_WAY_LEAST / 2
                         && (floor == NULL || fp_free_floor_level_at (floor, t[best[i]].centre) >= 0);
  for (guint i = 0; i < n; i++)
    self->is_free[i] = self->is_free[root_of (up, i)];
}

static void
drop_gaps_not_free (FpWays *self)
{
  guint kept = 0;

  for (guint i = 0; i < self->gaps->len; i++)
    {
      const FpGap gap = g_array_index (self->gaps, FpGap, i);
      if (self->is_free[gap.from])
        g_array_index (self->gaps, FpGap, kept++) = gap;
    }
  g_array_set_size (self->gaps, kept);
}

/* --- life ---------------------------------------------------------------------------- */

FpWays *
fp_ways_new (GArray *edges, const FpFreeFloor *floor)
{
  FpWays *self = g_new0 (FpWays, 1);

  self->edges = edges;
  self->points = g_array_new (FALSE, FALSE, sizeof (FpPoint));
  self->sites = g_array_new (FALSE, FALSE, sizeof (FpWaySite));
  self->gaps = g_array_new (FALSE, FALSE, sizeof (FpGap));
  fp_way_sites_gather (edges, self->points, self->sites);
  self->triangles = fp_triangles_new ((const FpPoint *) (gpointer) self->points->data, self->points->len);
  self->is_free = g_new0 (gboolean, self->triangles->len + 1);
  gather_gaps (self);
  find_free (self, floor);
  drop_gaps_not_free (self);
  return self;
}

void
fp_ways_free (FpWays *self)
{
  g_array_unref (self->edges);
  g_array_unref (self->points);
  g_array_unref (self->sites);
  g_array_unref (self->triangles);
  g_array_unref (self->gaps);
  g_free (self->is_free);
  g_free (self);
}

typedef struct
{
  const FpScene *scene;
  FpWays        *of[FP_N_GAITS];
} AllWays;

static void
make_one (guint gait, gpointer data)
{
  AllWays *self = data;

  self->of[gait] = fp_ways_new (fp_way_edges_new (self->scene, (FpGait) gait), fp_scene_free_floor (self->scene));
}

/* Whoever checks asks for both: they are made side by side. */
static gpointer
make_all (const FpScene *scene)
{
  AllWays *self = g_new0 (AllWays, 1);

  self->scene = scene;
  fp_scene_free_floor (scene);
  fp_workers_do (FP_N_GAITS, make_one, self);
  return self;
}

static void
drop_all (gpointer data)
{
  AllWays *self = data;

  for (guint i = 0; i < FP_N_GAITS; i++)
    fp_ways_free (self->of[i]);
  g_free (self);
}

const FpWays *
fp_scene_ways (const FpScene *scene, FpGait gait)
{
  return ((const AllWays *) fp_scene_keep (scene, FP_KEPT_WAYS, make_all, drop_all))->of[gait];
}
