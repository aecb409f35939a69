/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bier-room.h"

#include <math.h>

#define CELL 500.0 /* mm: for all middles in a square of that side the same edges are asked */

struct _FpBierRoom
{
  GArray       *edges;  /* (element-type FpBar) */
  double        half, most;
  FpBox         box;
  guint         nx, ny;
  GArray      **near;   /* of each square: (element-type FpBar), NULL until somebody asks */
};

FpBierRoom *
fp_bier_room_new (GArray *edges, double length, double most)
{
  FpBierRoom *self = g_new0 (FpBierRoom, 1);

  *self = (FpBierRoom) { .edges = edges, .half = length / 2, .most = most, .box = FP_BOX_EMPTY };
  for (guint i = 0; i < edges->len; i++)
    {
      fp_box_add_point (&self->box, g_array_index (edges, FpBar, i).a);
      fp_box_add_point (&self->box, g_array_index (edges, FpBar, i).b);
    }
  if (edges->len == 0)
    return self;
  self->box = (FpBox) { self->box.x0 - length, self->box.y0 - length, self->box.x1 + length, self->box.y1 + length };
  self->nx = (guint) CLAMP (ceil ((self->box.x1 - self->box.x0) / CELL), 1, 4000);
  self->ny = (guint) CLAMP (ceil ((self->box.y1 - self->box.y0) / CELL), 1, 4000);
  self->near = g_new0 (GArray *, self->nx * self->ny);
  return self;
}

void
fp_bier_room_free (FpBierRoom *self)
{
  for (guint i = 0; i < self->nx * self->ny; i++)
    if (self->near[i] != NULL)
      g_array_unref (self->near[i]);
  g_free (self->near);
  g_array_unref (self->edges);
  g_free (self);
}

static GArray *
gather (const FpBierRoom *self, guint ix, guint iy)
{
  const double reach = hypot (self->half, self->most / 2);
  const FpBox box = { self->box.x0 + ix * CELL - reach, self->box.y0 + iy * CELL - reach,
                      self->box.x0 + (ix + 1) * CELL + reach, self->box.y0 + (iy + 1) * CELL + reach };
  GArray *out = g_array_new (FALSE, FALSE, sizeof (FpBar));

  for (guint i = 0; i < self->edges->len; i++)
    {
      const FpBar *edge = &g_array_index (self->edges, FpBar, i);
      if (MAX (edge->a.x, edge->b.x) >= box.x0 && MIN (edge->a.x, edge->b.x) <= box.x1 && MAX (edge->a.y, edge->b.y) >= box.y0
          && MIN (edge->a.y, edge->b.y) <= box.y1)
        g_array_append_val (out, *edge);
    }
  return out;
}

/* NULL beyond all edges. */
static const GArray *
near_to (FpBierRoom *self, const FpBierPose *pose)
{
  const double x = (pose->x - self->box.x0) / CELL, y = (pose->y - self->box.y0) / CELL;
  GArray **near;

  if (!(x >= 0) || !(y >= 0) || x >= self->nx || y >= self->ny)
    return NULL;
  near = &self->near[(guint) x + self->nx * (guint) y];
  if (*near == NULL)
    *near = gather (self, (guint) x, (guint) y);
  return *near;
}

static void
note (FpBierSides *sides, const FpBierPose *pose, double along, double across)
{
  const FpPoint at = { pose->x + along * cos (pose->turn) - across * sin (pose->turn),
                       pose->y + along * sin (pose->turn) + across * cos (pose->turn) };

  if (across >= 0 && across < sides->left)
    {
      sides->left = across;
      sides->at[0] = at;
    }
  if (across <= 0 && -across < sides->right)
    {
      sides->right = -across;
      sides->at[1] = at;
    }
}

/* An edge in coordinates along and across the bier, as far as it lies beside it. */
static void
note_edge (const FpBierRoom *self, FpBierSides *sides, const FpBierPose *pose, double c, double s, const FpBar *edge)
{
  const double ax = edge->a.x - pose->x, ay = edge->a.y - pose->y, bx = edge->b.x - pose->x, by = edge->b.y - pose->y;
  double p = ax * c + ay * s, q = bx * c + by * s, u = ay * c - ax * s, v = by * c - bx * s;

  if ((p > self->half && q > self->half) || (p < -self->half && q < -self->half) || (u > sides->left && v > sides->left)
      || (-u > sides->right && -v > sides->right))
    return;
  if (fabs (p) > self->half)
    {
      const double cut = p > 0 ? self->half : -self->half;
      u += (v - u) * (cut - p) / (q - p);
      p = cut;
    }
  if (fabs (q) > self->half)
    {
      const double cut = q > 0 ? self->half : -self->half;
      v += (u - v) * (cut - q) / (p - q);
      q = cut;
    }
  if ((u > 0) != (v > 0)) /* it crosses the axis */
    {
      const double t = u == v ? 0 : u / (u - v);
      note (sides, pose, p + t * (q - p), 0);
      return;
    }
  note (sides, pose, p, u);
  note (sides, pose, q, v);
}

void
fp_bier_room_sides (FpBierRoom *self, const FpBierPose *pose, FpBierSides *sides)
{
  const GArray *near = near_to (self, pose);
  const double c = cos (pose->turn), s = sin (pose->turn);

  *sides = (FpBierSides) { .left = near != NULL ? self->most / 2 : 0, .right = near != NULL ? self->most / 2 : 0 };
  for (guint i = 0; near != NULL && i < near->len && sides->left + sides->right > 0; i++)
    note_edge (self, sides, pose, c, s, &g_array_index (near, FpBar, i));
}

double
fp_bier_room_width (FpBierRoom *self, const FpBierPose *pose)
{
  FpBierSides sides;

  fp_bier_room_sides (self, pose, &sides);
  return 2 * MIN (sides.left, sides.right);
}
