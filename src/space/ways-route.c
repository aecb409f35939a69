/* SPDX-License-Identifier: GPL-3.0-or-later */
/* ways-route.c - a way on which a body of a width gets along: the shortest of knots, then straightened */
#include "ways-private.h"

#include <math.h>

/* --- which is next: a heap ------------------------------------------------------- */

typedef struct { double far; guint knot; } Reached;

typedef struct { GArray *heap; } Queue;

static Reached *
at (const Queue *self, guint i)
{
  return &g_array_index (self->heap, Reached, i);
}

static void
swap (const Queue *self, guint i, guint k)
{
  const Reached one = *at (self, i);

  *at (self, i) = *at (self, k);
  *at (self, k) = one;
}

static void
push (Queue *self, double far, guint knot)
{
  const Reached one = { far, knot };
  guint i = self->heap->len;

  g_array_append_val (self->heap, one);
  for (; i > 0 && at (self, i)->far < at (self, (i - 1) / 2)->far; i = (i - 1) / 2)
    swap (self, i, (i - 1) / 2);
}

static Reached
pop (Queue *self)
{
  const Reached first = *at (self, 0);
  guint i = 0;

  swap (self, 0, self->heap->len - 1);
  g_array_set_size (self->heap, self->heap->len - 1);
  for (;;)
    {
      guint least = i;
      for (guint k = 2 * i + 1; k <= 2 * i + 2; k++)
        if (k < self->heap->len && at (self, k)->far < at (self, least)->far)
          least = k;
      if (least == i)
        return first;
      swap (self, i, least);
      i = least;
    }
}

/* --- the net as lists ---------------------------------------------------------------- */

typedef struct { guint to; double length; gboolean crosses; } Link;

/* Of the gaps that are wide enough: of each knot where its links begin, and of the end. */
typedef struct
{
  guint *first;
  Link  *link;
} Links;

static const FpTriangle *
triangle (const FpWays *ways, guint i)
{
  return &g_array_index (ways->triangles, FpTriangle, i);
}

static Links
links_new (const FpWays *ways, double width, const FpBar *bar, guint n_bars, gboolean bars_part, const gboolean *within)
{
  const guint n = ways->triangles->len;
  Links self = { g_new0 (guint, n + 2), NULL };
  g_autofree gboolean *taken = g_new0 (gboolean, ways->gaps->len + 1), *crosses = g_new0 (gboolean, ways->gaps->len + 1);

  for (guint i = 0; i < ways->gaps->len && g_array_index (ways->gaps, FpGap, i).width >= width; i++)
    {
      const FpGap *gap = &g_array_index (ways->gaps, FpGap, i);
      crosses[i] = fp_bars_cross (bar, n_bars, triangle (ways, gap->from)->centre, triangle (ways, gap->to)->centre);
      taken[i] = (!bars_part || !crosses[i]) && (within == NULL || (within[gap->from] && within[gap->to]));
      if (taken[i])
        {
          self.first[gap->from + 2]++;
          self.first[gap->to + 2]++;
        }
    }
  for (guint i = 0; i < n; i++)
    self.first[i + 2] += self.first[i + 1];
  self.link = g_new (Link, self.first[n + 1] + 1);
  for (guint i = 0; i < ways->gaps->len; i++)
    if (taken[i])
      {
        const FpGap *gap = &g_array_index (ways->gaps, FpGap, i);
        const FpPoint a = triangle (ways, gap->from)->centre, b = triangle (ways, gap->to)->centre;
        const double length = hypot (a.x - b.x, a.y - b.y);
        self.link[self.first[gap->from + 1]++] = (Link) { gap->to, length, crosses[i] };
        self.link[self.first[gap->to + 1]++] = (Link) { gap->from, length, crosses[i] };
      }
  return self;
}

static void
links_clear (Links *self)
{
  g_free (self->first);
  g_free (self->link);
}

/* --- the shortest ------------------------------------------------------------------------ */

/* Twice the knots where a loop is looked for: the second time with the ray crossed once more. */
typedef struct
{
  Links    links;
  guint    n;
  gboolean twice;
  double  *far;
  int     *before;
} Search;

static void
go_on (Search *self, Queue *queue, guint from)
{
  const guint knot = from % self->n, side = from / self->n;

  for (guint i = self->links.first[knot]; i < self->links.first[knot + 1]; i++)
    {
      const Link *link = &self->links.link[i];
      const guint to = link->to + self->n * (self->twice && link->crosses ? 1 - side : side);
      const double far = self->far[from] + link->length;

      if (far >= self->far[to])
        continue;
      self->far[to] = far;
      self->before[to] = (int) from;
      push (queue, far, to);
    }
}

/* -1: none of them is reached. */
static int
search (Search *self, const GArray *from, const gboolean *is_goal)
{
  const guint all = self->n * (self->twice ? 2 : 1);
  Queue queue = { g_array_new (FALSE, FALSE, sizeof (Reached)) };
  int found = -1;

  for (guint i = 0; i < all; i++)
    {
      self->far[i] = G_MAXDOUBLE;
      self->before[i] = -1;
    }
  for (guint i = 0; i < from->len; i++)
    {
      const guint knot = g_array_index (from, guint, i);
      self->far[knot] = 0;
      push (&queue, 0, knot);
    }
  while (queue.heap->len > 0 && found < 0)
    {
      const Reached one = pop (&queue);
      if (one.far > self->far[one.knot])
        continue;
      if (is_goal[one.knot])
        found = (int) one.knot;
      else
        go_on (self, &queue, one.knot);
    }
  g_array_unref (queue.heap);
  return found;
}

static GArray *
knots_back (const Search *self, const FpWays *ways, int from)
{
  GArray *out = g_array_new (FALSE, FALSE, sizeof (FpPoint));

  for (int i = from; i >= 0; i = self->before[i])
    g_array_prepend_val (out, triangle (ways, (guint) i % self->n)->centre);
  return out;
}

static Search
search_new (const FpWays *ways, gboolean twice)
{
  const guint n = ways->triangles->len, all = n * (twice ? 2 : 1);

  return (Search) { .n = n, .twice = twice, .far = g_new (double, all + 1), .before = g_new (int, all + 1) };
}

static void
search_clear (Search *self)
{
  links_clear (&self->links);
  g_free (self->far);
  g_free (self->before);
}

/* --- with its ends -------------------------------------------------------------------------- */

/* Where such a body has room at the very point, the way begins and ends there. */
static void
add_ends (const FpWays *ways, const FpWaySet *from, const FpWaySet *to, double width, GArray *knots)
{
  if (fp_ways_have_room (ways, from->at, g_array_index (knots, FpPoint, 0), width / 2))
    g_array_prepend_val (knots, from->at);
  if (fp_ways_have_room (ways, to->at, g_array_index (knots, FpPoint, knots->len - 1), width / 2))
    g_array_append_val (knots, to->at);
}

void
fp_way_find_route (const FpWays *ways, const FpWaySet *from, const FpWaySet *to, double width, const FpBar *bar, guint n_bars,
                   FpWay *way)
{
  Search one = search_new (ways, FALSE);
  g_autofree gboolean *is_goal = g_new0 (gboolean, one.n + 1);
  int found;

  for (guint i = 0; i < to->knots->len; i++)
    is_goal[g_array_index (to->knots, guint, i)] = TRUE;
  one.links = links_new (ways, width, bar, n_bars, TRUE, NULL);
  found = search (&one, from->knots, is_goal);
  if (found >= 0)
    {
      g_autoptr (GArray) knots = knots_back (&one, ways, found);
      add_ends (ways, from, to, width, knots);
      fp_way_straighten (ways, knots, width, bar, n_bars, way);
    }
  search_clear (&one);
}

void
fp_way_find_loop (const FpWays *ways, guint knot, double width, const FpBar *ray, const gboolean *within, FpWay *way)
{
  Search one = search_new (ways, TRUE);
  g_autofree gboolean *is_goal = g_new0 (gboolean, 2 * one.n + 1);
  g_autoptr (GArray) from = g_array_new (FALSE, FALSE, sizeof (guint));
  int found;

  g_array_append_val (from, knot);
  is_goal[knot + one.n] = TRUE;
  one.links = links_new (ways, width, ray, 1, FALSE, within);
  found = search (&one, from, is_goal);
  if (found >= 0)
    {
      g_autoptr (GArray) knots = knots_back (&one, ways, found);
      fp_way_straighten (ways, knots, width, ray, 1, way);
    }
  search_clear (&one);
}
