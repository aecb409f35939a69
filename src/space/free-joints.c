/* SPDX-License-Identifier: GPL-3.0-or-later */
/* free-joints.c - where two levels of the free floor meet, and by how much one rises above the other */
#include "free-floor-private.h"

#include <math.h>

/* Design judgement, mm: floors are surveyed in pieces, and this bridges the joint between them; less than so much of an edge
 * is none to step over. */
#define GAP      20.0
#define SHORTEST 10.0
#define ASLANT   1e-3 /* sine of the angle between two edges that are told to run along each other */

typedef struct
{
  FpPoint a, b;
  double  length, ux, uy;
  FpBox   box; /* grown by GAP */
  guint   level;
} Edge;

static void
add_edge (GArray *out, guint level, FpPoint a, FpPoint b)
{
  Edge edge = { .a = a, .b = b, .length = hypot (b.x - a.x, b.y - a.y), .level = level };

  if (edge.length < SHORTEST)
    return;
  edge.ux = (b.x - a.x) / edge.length;
  edge.uy = (b.y - a.y) / edge.length;
  edge.box = (FpBox) { MIN (a.x, b.x) - GAP, MIN (a.y, b.y) - GAP, MAX (a.x, b.x) + GAP, MAX (a.y, b.y) + GAP };
  g_array_append_val (out, edge);
}

static GArray *
edges_of (const FpFreeLevel *level, guint n_levels)
{
  GArray *out = g_array_new (FALSE, FALSE, sizeof (Edge));

  for (guint i = 0; i < n_levels; i++)
    for (guint k = 0; k < level[i].rings->len; k++)
      {
        const FpRing *ring = &g_array_index (level[i].rings, FpRing, k);
        for (guint c = 0; c < ring->n; c++)
          add_edge (out, i, ring->pt[c], ring->pt[(c + 1) % ring->n]);
      }
  return out;
}

static double
along (const Edge *edge, FpPoint p)
{
  return (p.x - edge->a.x) * edge->ux + (p.y - edge->a.y) * edge->uy;
}

static double
off (const Edge *edge, FpPoint p)
{
  return fabs ((p.y - edge->a.y) * edge->ux - (p.x - edge->a.x) * edge->uy);
}

static FpPoint
point_on (const Edge *edge, double s)
{
  return (FpPoint) { edge->a.x + s * edge->ux, edge->a.y + s * edge->uy };
}

static void
join (const FpFreeLevel *level, const Edge *e, const Edge *f, GArray *out)
{
  double s0, s1;
  FpLevelJoint joint = { .level = { e->level, f->level } };

  if (fabs (e->ux * f->uy - e->uy * f->ux) > ASLANT || off (e, f->a) > GAP || off (e, f->b) > GAP)
    return;
  s0 = MAX (0, MIN (along (e, f->a), along (e, f->b)));
  s1 = MIN (e->length, MAX (along (e, f->a), along (e, f->b)));
  if (s1 - s0 < SHORTEST)
    return;
  joint.a = point_on (e, s0);
  joint.b = point_on (e, s1);
  joint.rise_a = fp_free_level_height (&level[f->level], joint.a) - fp_free_level_height (&level[e->level], joint.a);
  joint.rise_b = fp_free_level_height (&level[f->level], joint.b) - fp_free_level_height (&level[e->level], joint.b);
  g_array_append_val (out, joint);
}

static int
by_left (gconstpointer a, gconstpointer b)
{
  const Edge *e = a, *f = b;

  if (e->box.x0 != f->box.x0)
    return e->box.x0 < f->box.x0 ? -1 : 1;
  return (e->level > f->level) - (e->level < f->level);
}

/* The lower number first, whichever lies farther left. */
static void
join_in_order (const FpFreeLevel *level, const Edge *e, const Edge *f, GArray *out)
{
  if (e->level < f->level)
    join (level, e, f, out);
  else
    join (level, f, e, out);
}

GArray *
fp_level_joints_new (const FpFreeLevel *level, guint n_levels)
{
  GArray *out = g_array_new (FALSE, FALSE, sizeof (FpLevelJoint));
  g_autoptr (GArray) edges = edges_of (level, n_levels);

  /* From the left: what begins farther right than an edge ends does not meet it. */
  g_array_sort (edges, by_left);
  for (guint i = 0; i < edges->len; i++)
    for (guint k = i + 1; k < edges->len; k++)
      {
        const Edge *e = &g_array_index (edges, Edge, i), *f = &g_array_index (edges, Edge, k);
        if (f->box.x0 >= e->box.x1)
          break;
        if (e->level != f->level && fp_box_overlaps (&e->box, &f->box))
          join_in_order (level, e, f, out);
      }
  return out;
}
