/* SPDX-License-Identifier: GPL-3.0-or-later */
/* ways-straight.c - a way cut short where the body has room for it */
#include "ways-private.h"

#include <math.h>

#define HAIR 0.01 /* mm */

static guint
first_from (const FpWays *ways, double x)
{
  guint lo = 0, hi = ways->points->len;

  while (lo < hi)
    {
      const guint middle = (lo + hi) / 2;
      if (g_array_index (ways->points, FpPoint, middle).x < x)
        lo = middle + 1;
      else
        hi = middle;
    }
  return lo;
}

gboolean
fp_ways_have_room (const FpWays *ways, FpPoint a, FpPoint b, double radius)
{
  const double last = MAX (a.x, b.x) + radius, y0 = MIN (a.y, b.y) - radius, y1 = MAX (a.y, b.y) + radius;

  for (guint i = first_from (ways, MIN (a.x, b.x) - radius); i < ways->points->len; i++)
    {
      const FpPoint p = g_array_index (ways->points, FpPoint, i);
      if (p.x > last)
        break;
      if (p.y > y0 && p.y < y1 && fp_segment_distance (a, b, p) < radius - HAIR)
        return FALSE;
    }
  return TRUE;
}

/* Whether a bar has been crossed an odd number of times from the first point to each. */
static gboolean *
crossed_so_far (const FpPoint *pt, guint n, const FpBar *bar, guint n_bars)
{
  gboolean *odd = g_new0 (gboolean, n + 1);

  for (guint i = 1; i < n; i++)
    odd[i] = odd[i - 1] ^ fp_bars_cross (bar, n_bars, pt[i - 1], pt[i]);
  return odd;
}

/* Straight on to the farthest of some that are tried, the farthest first, past a bar only as the way itself is; to the next
 * there is room always. */
static guint
next_corner (const FpWays *ways, const GArray *knots, guint i, double width, const FpBar *bar, guint n_bars, const gboolean *odd)
{
  const FpPoint *pt = (const FpPoint *) (gpointer) knots->data;

  for (guint far = knots->len - 1 - i; far > 1; far -= MAX (far / 40, 1))
    if (fp_bars_cross (bar, n_bars, pt[i], pt[i + far]) == (odd[i] ^ odd[i + far])
        && fp_ways_have_room (ways, pt[i], pt[i + far], width / 2))
      return i + far;
  return i + 1;
}

static GArray *
straightened (const FpWays *ways, const GArray *knots, double width, const FpBar *bar, guint n_bars)
{
  const FpPoint *pt = (const FpPoint *) (gpointer) knots->data;
  g_autofree gboolean *odd = crossed_so_far (pt, knots->len, bar, n_bars);
  GArray *out = g_array_new (FALSE, FALSE, sizeof (FpPoint));

  for (guint i = 0; i < knots->len; i = next_corner (ways, knots, i, width, bar, n_bars, odd))
    g_array_append_val (out, pt[i]);
  return out;
}

/* No leg longer than that, so that corners are cut within it, too. */
#define LEG 400.0

static GArray *
divided (const GArray *corners)
{
  GArray *out = g_array_new (FALSE, FALSE, sizeof (FpPoint));

  for (guint i = 0; i < corners->len; i++)
    {
      const FpPoint a = g_array_index (corners, FpPoint, i), b = g_array_index (corners, FpPoint, MIN (i + 1, corners->len - 1));
      const guint n = (guint) CLAMP (ceil (hypot (b.x - a.x, b.y - a.y) / LEG), 1, 1000);

      for (guint k = 0; k < (i + 1 < corners->len ? n : 1); k++)
        {
          const FpPoint p = { a.x + (b.x - a.x) * k / n, a.y + (b.y - a.y) * k / n };
          g_array_append_val (out, p);
        }
    }
  return out;
}

void
fp_way_straighten (const FpWays *ways, const GArray *knots, double width, const FpBar *bar, guint n_bars, FpWay *way)
{
  g_autoptr (GArray) once = straightened (ways, knots, width, bar, n_bars), legs = divided (once);
  g_autoptr (GArray) out = straightened (ways, legs, width, bar, n_bars);

  way->n_route = out->len;
  way->route = g_memdup2 (out->data, out->len * sizeof (FpPoint));
  way->length = 0;
  for (guint i = 1; i < way->n_route; i++)
    way->length += hypot (way->route[i].x - way->route[i - 1].x, way->route[i].y - way->route[i - 1].y);
}
