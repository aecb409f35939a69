/* SPDX-License-Identifier: GPL-3.0-or-later */
/* ways-round.c - all the way round something
 *
 * Gaps are let in, the widest first.  A ray runs from what is walked round out
 * of the church; the first gap that closes a way on which the ray is crossed
 * an odd number of times closes a way round.
 */
#include "ways-private.h"

static const FpTriangle *
triangle (const FpWays *ways, guint i)
{
  return &g_array_index (ways->triangles, FpTriangle, i);
}

/* Those that touch what is walked round: what lies in the outline. */
static gboolean *
knots_about (const FpWays *ways, const FpPoint *within, guint n)
{
  gboolean *out = g_new0 (gboolean, ways->triangles->len + 1);
  const FpBox box = fp_outline_box (within, n);

  for (guint i = 0; i < ways->triangles->len; i++)
    for (guint k = 0; ways->is_free[i] && !out[i] && k < 3; k++)
      {
        const FpPoint p = g_array_index (ways->points, FpPoint, triangle (ways, i)->corner[k]);
        out[i] = p.x >= box.x0 && p.x <= box.x1 && p.y >= box.y0 && p.y <= box.y1 && fp_outline_contains (within, n, p);
      }
  return out;
}

/* Each knot's root, and whether the ray is crossed an odd number of times on the way there. */
typedef struct { guint *up; gboolean *odd; } Turned;

static guint
turned_root (const Turned *self, guint i, gboolean *odd)
{
  *odd = FALSE;
  for (; self->up[i] != i; i = self->up[i])
    *odd ^= self->odd[i];
  return i;
}

/* TRUE: the two hang together already, and this gap closes a way round. */
static gboolean
turn_together (Turned *self, guint *size, guint a, guint b, gboolean crosses)
{
  gboolean odd_a, odd_b;
  const guint p = turned_root (self, a, &odd_a), q = turned_root (self, b, &odd_b);
  const gboolean odd = odd_a ^ odd_b ^ crosses;

  if (p == q)
    return odd;
  if (size[p] < size[q])
    {
      self->up[p] = q;
      self->odd[p] = odd;
      size[q] += size[p];
    }
  else
    {
      self->up[q] = p;
      self->odd[q] = odd;
      size[p] += size[q];
    }
  return FALSE;
}

static const FpGap *
last_of_round (const FpWays *ways, const FpBar *ray, const gboolean *within)
{
  const guint n = ways->triangles->len;
  g_autofree guint *up = g_new (guint, n + 1), *size = g_new (guint, n + 1);
  g_autofree gboolean *odd = g_new0 (gboolean, n + 1);
  Turned turned = { up, odd };

  for (guint i = 0; i < n; i++)
    {
      up[i] = i;
      size[i] = 1;
    }
  for (guint i = 0; i < ways->gaps->len; i++)
    {
      const FpGap *gap = &g_array_index (ways->gaps, FpGap, i);
      const FpPoint a = triangle (ways, gap->from)->centre, b = triangle (ways, gap->to)->centre;

      if (within[gap->from] && within[gap->to]
          && turn_together (&turned, size, gap->from, gap->to, fp_bars_cross (ray, 1, a, b)))
        return gap;
    }
  return NULL;
}

#define BEYOND 1e7 /* mm: outside every church */

FpWay *
fp_way_round (const FpScene *scene, FpGait gait, FpPoint around, const FpPoint *within, guint n_within)
{
  const FpWays *ways = fp_scene_ways (scene, gait);
  const FpBar ray = { around, { around.x, around.y - BEYOND } };
  g_autofree gboolean *in = knots_about (ways, within, n_within);
  const FpGap *gap = last_of_round (ways, &ray, in);
  FpWay *way = g_new0 (FpWay, 1);

  way->owner[0] = way->owner[1] = -1;
  if (gap == NULL)
    return way;
  fp_way_tell_gap (scene, ways, gap, way);
  way->tolerance = fp_way_tolerance (way->width);
  fp_way_find_loop (ways, gap->from, gap->width, &ray, in, way);
  return way;
}
