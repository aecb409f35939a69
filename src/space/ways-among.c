/* SPDX-License-Identifier: GPL-3.0-or-later */
/* ways-among.c - ways past somebody who stands there: a net of its own, of what lies about */
#include "ways-private.h"

#include <math.h>

#define ABOUT 4000.0 /* mm; a body goes no farther round (design judgement) */
#define AT_IT 0.5    /* mm: a point that lies nearer to an outline lies on it */

static void
add_run (GArray *out, FpPoint a, FpPoint b)
{
  const FpBar run = { a, b };

  if (hypot (b.x - a.x, b.y - a.y) > 1e-6)
    g_array_append_val (out, run);
}

static gboolean
reaches_into (const FpBox *box, const FpBar *edge)
{
  return MAX (edge->a.x, edge->b.x) >= box->x0 && MIN (edge->a.x, edge->b.x) <= box->x1 && MAX (edge->a.y, edge->b.y) >= box->y0
         && MIN (edge->a.y, edge->b.y) <= box->y1;
}

static FpBox
box_about (const FpWayEnd *from, const FpWayEnd *to, const FpPoint *stands, guint n_stands)
{
  FpBox box = FP_BOX_EMPTY;

  fp_box_add_point (&box, from->at);
  fp_box_add_point (&box, to->at);
  for (guint i = 0; i < n_stands; i++)
    fp_box_add_point (&box, stands[i]);
  return (FpBox) { box.x0 - ABOUT, box.y0 - ABOUT, box.x1 + ABOUT, box.y1 + ABOUT };
}

/* What is free lies on the left: round the body the other way about, and about the box as it comes. */
static void
add_ring (GArray *out, const FpPoint *pt, guint n, gboolean is_hole)
{
  const gboolean turns_left = fp_outline_area (pt, n) > 0;

  for (guint i = 0; i < n; i++)
    if (turns_left != is_hole)
      add_run (out, pt[i], pt[(i + 1) % n]);
    else
      add_run (out, pt[(i + 1) % n], pt[i]);
}

static gboolean
lies_on (const FpPoint *pt, guint n, FpPoint at)
{
  for (guint i = 0; i < n; i++)
    if (fp_segment_distance (pt[i], pt[(i + 1) % n], at) < AT_IT)
      return TRUE;
  return FALSE;
}

FpWay *
fp_way_among (const FpScene *scene, FpGait gait, const FpWayEnd *from, const FpWayEnd *to, const FpPoint *stands, guint n_stands,
              const FpBar *edges, guint n_edges, const FpBar *bar, guint n_bars)
{
  const GArray *all = fp_room_edges (scene, gait);
  const FpBox box = box_about (from, to, stands, n_stands);
  const FpPoint corner[4] = { { box.x0, box.y0 }, { box.x1, box.y0 }, { box.x1, box.y1 }, { box.x0, box.y1 } };
  GArray *near = g_array_new (FALSE, FALSE, sizeof (FpBar));
  FpWays *ways;
  FpWay *way;

  for (guint i = 0; i < all->len; i++)
    if (reaches_into (&box, &g_array_index (all, FpBar, i)))
      g_array_append_val (near, g_array_index (all, FpBar, i));
  add_ring (near, corner, 4, FALSE);
  add_ring (near, stands, n_stands, TRUE);
  for (guint i = 0; i < n_edges; i++)
    {
      add_run (near, edges[i].a, edges[i].b);
      add_run (near, edges[i].b, edges[i].a);
    }
  ways = fp_ways_new (near, fp_scene_free_floor (scene));
  way = fp_ways_widest (scene, ways, from, to, bar, n_bars);
  for (guint i = 0; way->narrows && i < 2; i++)
    if (lies_on (stands, n_stands, way->narrow[i]))
      way->beside[i] = FP_WAY_BY_BODY;
  way->outline = g_memdup2 (stands, n_stands * sizeof *stands);
  way->n_outline = n_stands;
  fp_ways_free (ways);
  return way;
}
