/* SPDX-License-Identifier: GPL-3.0-or-later */
/* projection-solids.c - a sketch, and the solids and strokes that enter it */
#include "projection-solids.h"

#include <math.h>

static void
clear_piece (gpointer data)
{
  FpCutPiece *piece = data;

  g_free (piece->pt);
}

FpSketch *
fp_sketch_new (FpViewId view, gboolean turned, double near)
{
  FpSketch *self = g_new (FpSketch, 1);

  self->view = view;
  self->turned = turned && view != FP_VIEW_PLAN;
  self->near = near;
  self->points = g_array_new (FALSE, FALSE, sizeof (FpVec3));
  self->faces = g_array_new (FALSE, FALSE, sizeof (FpFace));
  self->edges = g_array_new (FALSE, FALSE, sizeof (FpEdge));
  self->cuts = g_array_new (FALSE, FALSE, sizeof (FpCutPiece));
  self->overhead = g_array_new (FALSE, FALSE, sizeof (FpCutPiece));
  self->parts = g_array_new (FALSE, FALSE, sizeof (FpSketchPart));
  self->joined = g_array_new (FALSE, FALSE, sizeof (FpJoined));
  self->joined_overhead = g_array_new (FALSE, FALSE, sizeof (FpJoined));
  g_array_set_clear_func (self->cuts, clear_piece);
  g_array_set_clear_func (self->overhead, clear_piece);
  return self;
}

void
fp_sketch_free (FpSketch *self)
{
  if (self == NULL)
    return;
  g_array_unref (self->points);
  g_array_unref (self->faces);
  g_array_unref (self->edges);
  g_array_unref (self->cuts);
  g_array_unref (self->overhead);
  g_array_unref (self->parts);
  g_array_unref (self->joined);
  g_array_unref (self->joined_overhead);
  g_free (self);
}

/* --- where a point lies in it --------------------------------------------------- */

static FpVec3
unturned (FpViewId view, FpVec3 p)
{
  switch (view)
    {
    case FP_VIEW_PLAN: return p;
    case FP_VIEW_ELEVATION: return (FpVec3) { p.x, p.z, -p.y };
    case FP_VIEW_SECTION: return (FpVec3) { -p.y, p.z, -p.x };
    case FP_N_VIEWS: break;
    }
  return p;
}

/* Seen from the other side: half a turn about the upright. */
FpVec3
fp_sight_point (FpViewId view, gboolean turned, FpVec3 p)
{
  const FpVec3 q = unturned (view, p);

  return turned && view != FP_VIEW_PLAN ? (FpVec3) { -q.x, q.y, -q.z } : q;
}

FpVec3
fp_sketch_point (const FpSketch *self, FpVec3 p)
{
  return fp_sight_point (self->view, self->turned, p);
}

/* --- what enters it ------------------------------------------------------------- */

static gboolean
is_building (FpPart part)
{
  return part == FP_PART_WALL || part == FP_PART_PIER || part == FP_PART_FLOOR || part == FP_PART_STEP
         || part == FP_PART_FOOTPACE;
}

/* Curved pieces are too short to be asked one by one. */
static FpWeight
weight_of (const FpSketch *self, const FpSolid *solid)
{
  const FpBox3 box = fp_solid_box (solid);
  const FpVec3 a = fp_sketch_point (self, box.lo), b = fp_sketch_point (self, box.hi);

  if (is_building (solid->part))
    return FP_WEIGHT_WIDE;
  if (solid->shape == FP_SOLID_PRISM)
    return FP_WEIGHT_ASK;
  return MIN (fabs (a.x - b.x), fabs (a.y - b.y)) < FP_SLIGHT ? FP_WEIGHT_NARROW : FP_WEIGHT_WIDE;
}

void
fp_sketch_add_solid (FpSketch *self, const FpSolid *solid, const FpSketchHow *how)
{
  FpFace like = { .owner = solid->owner, .solid = how->index, .fabric = how->fabric, .masonry = how->masonry,
                  .weight = weight_of (self, solid) };

  switch (solid->shape)
    {
    case FP_SOLID_PRISM: fp_sketch_add_prism (self, solid, how, &like); break;
    case FP_SOLID_ROUND: fp_sketch_add_frustum (self, solid, how, &like); break;
    case FP_SOLID_ELLIPSOID: fp_sketch_add_ellipsoid (self, solid, how, &like); break;
    }
}

void
fp_sketch_add_stroke (FpSketch *self, FpVec3 a, FpVec3 b, guint owner, FpPen pen)
{
  const FpEdge edge = { a, b, owner, G_MAXUINT, FALSE, { -1, -1 }, FP_EDGE_STROKE, FP_WEIGHT_NARROW, pen };

  g_array_append_val (self->edges, edge);
}

void
fp_sketch_add_overhead (FpSketch *self, const FpSolid *s)
{
  const double r = MAX (s->r0, s->r1);
  FpCutPiece piece = { .owner = s->owner, .depth = fp_solid_box (s).lo.z };

  if (s->shape == FP_SOLID_PRISM)
    {
      piece.n = s->n_outline;
      piece.pt = g_memdup2 (s->outline, s->n_outline * sizeof (FpPoint));
    }
  else if (s->shape == FP_SOLID_ROUND)
    {
      piece.n = fp_corners_of_circle (FP_VIEW_PLAN, r);
      piece.pt = g_new (FpPoint, piece.n);
      for (guint i = 0; i < piece.n; i++)
        piece.pt[i] = fp_place_point (&(FpPlace) { s->cx, s->cy, 360.0 * i / piece.n }, (FpPoint) { r, 0 });
    }
  else
    return;
  g_array_append_val (self->overhead, piece);
}
