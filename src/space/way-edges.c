/* SPDX-License-Identifier: GPL-3.0-or-later */
/* way-edges.c - what a body may not cross: the edges of the free floor, less where it steps from one level to the next */
#include "ways.h"

#include <math.h>
#include <stdlib.h>

/* As where levels are joined (free-joints.c), mm. */
#define GAP    20.0
#define ASLANT 1e-3

typedef struct { double from, to; } Stretch;

/* The part of a joint over which one steps, as shares of it; FALSE: none. */
static gboolean
taken_part (const FpLevelJoint *joint, double climb, Stretch *part)
{
  const double d = joint->rise_b - joint->rise_a;

  *part = (Stretch) { 0, 1 };
  if (fabs (d) > 1e-9)
    {
      const double s = (-climb - joint->rise_a) / d, t = (climb - joint->rise_a) / d;
      part->from = MAX (0, MIN (s, t));
      part->to = MIN (1, MAX (s, t));
    }
  else if (fabs (joint->rise_a) > climb)
    return FALSE;
  return part->to > part->from;
}

static double
steepness (const FpFreeLevel *level)
{
  return hypot (level->gx, level->gy);
}

/* A ramp of 1 in 12 in truth, too, whatever the last digit says. */
static gboolean
is_for (const FpFreeLevel *level, FpGait gait)
{
  return gait == FP_GAIT_ON_FOOT || steepness (level) <= FP_RAMP_STEEPEST * 1.001;
}

/* Where along the edge from @a the joint may be stepped over; FALSE: it lies elsewhere. */
static gboolean
stretch_on (FpPoint a, double ux, double uy, double length, const FpLevelJoint *joint, double climb, Stretch *out)
{
  const double jx = joint->b.x - joint->a.x, jy = joint->b.y - joint->a.y, jl = hypot (jx, jy);
  const double off_a = (joint->a.y - a.y) * ux - (joint->a.x - a.x) * uy, off_b = (joint->b.y - a.y) * ux - (joint->b.x - a.x) * uy;
  const double s = (joint->a.x - a.x) * ux + (joint->a.y - a.y) * uy, t = (joint->b.x - a.x) * ux + (joint->b.y - a.y) * uy;
  Stretch part;
  double p, q;

  if (MAX (s, t) < 0 || MIN (s, t) > length || fabs (off_a) > GAP || fabs (off_b) > GAP
      || fabs (jx * uy - jy * ux) > ASLANT * jl || !taken_part (joint, climb, &part))
    return FALSE;
  p = s + part.from * (t - s);
  q = s + part.to * (t - s);
  *out = (Stretch) { MAX (0, MIN (p, q)), MIN (length, MAX (p, q)) };
  return out->to > out->from;
}

static int
by_begin (gconstpointer a, gconstpointer b)
{
  const Stretch *x = a, *y = b;

  return (x->from > y->from) - (x->from < y->from);
}

static void
add_run (GArray *out, FpPoint a, double ux, double uy, double from, double to)
{
  const FpBar run = { { a.x + from * ux, a.y + from * uy }, { a.x + to * ux, a.y + to * uy } };

  if (to - from > 1e-6)
    g_array_append_val (out, run);
}

typedef struct
{
  const FpFreeLevel  *level;
  const FpLevelJoint *joint;
  guint               n_joints;
  FpGait              gait;
  double              climb;
} Steps;

static void
add_edge (const Steps *self, guint level, FpPoint a, FpPoint b, GArray *out)
{
  const double length = hypot (b.x - a.x, b.y - a.y), ux = (b.x - a.x) / length, uy = (b.y - a.y) / length;
  g_autoptr (GArray) open = g_array_new (FALSE, FALSE, sizeof (Stretch));
  double at = 0;

  if (!(length > 0))
    return;
  for (guint i = 0; i < self->n_joints; i++)
    {
      const FpLevelJoint *joint = &self->joint[i];
      Stretch stretch;

      if ((joint->level[0] == level || joint->level[1] == level) && is_for (&self->level[joint->level[0]], self->gait)
          && is_for (&self->level[joint->level[1]], self->gait) && stretch_on (a, ux, uy, length, joint, self->climb, &stretch))
        g_array_append_val (open, stretch);
    }
  g_array_sort (open, by_begin);
  for (guint i = 0; i < open->len; i++)
    {
      const Stretch *one = &g_array_index (open, Stretch, i);
      add_run (out, a, ux, uy, at, one->from);
      at = MAX (at, one->to);
    }
  add_run (out, a, ux, uy, at, length);
}

GArray *
fp_way_edges_new (const FpScene *scene, FpGait gait)
{
  const FpFreeFloor *floor = fp_scene_free_floor (scene);
  guint n_levels;
  Steps steps = { .gait = gait, .climb = gait == FP_GAIT_ON_FOOT ? FP_CLIMB_ON_FOOT : FP_CLIMB_ON_WHEELS };
  GArray *out = g_array_new (FALSE, FALSE, sizeof (FpBar));

  steps.level = fp_free_floor_levels (floor, &n_levels);
  steps.joint = fp_free_floor_joints (floor, &steps.n_joints);
  for (guint i = 0; i < n_levels; i++)
    for (guint k = 0; k < steps.level[i].rings->len; k++)
      {
        const FpRing *ring = &g_array_index (steps.level[i].rings, FpRing, k);
        const gboolean left = (fp_outline_area (ring->pt, ring->n) > 0) != ring->hole;
        for (guint c = 0; c < ring->n; c++)
          add_edge (&steps, i, ring->pt[left ? c : (c + 1) % ring->n], ring->pt[left ? (c + 1) % ring->n : c], out);
      }
  return out;
}
