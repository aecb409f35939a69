/* SPDX-License-Identifier: GPL-3.0-or-later */
/* projection-rings.c - prisms and frusta: two rings of corners, one above the other */
#include "projection-solids.h"

#include <math.h>

/* Corners of a circle: in a plan it is seen; elsewhere only its extremes are, and they are exact. */
#define PLAN_SAGITTA 0.4
#define CORNERS_EDGE_ON 16
#define CORNERS_MAX 72

typedef struct
{
  FpVec3  *low, *high;
  guint    n;
  gboolean smooth;   /* its sides are facets of a curved surface */
  gboolean top_cut;  /* its top is where a plan cuts it          */
} Rings;

static void
rings_clear (Rings *self)
{
  g_free (self->low);
  g_free (self->high);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Rings, rings_clear)

static Rings
rings_new (guint n)
{
  return (Rings) { .low = g_new (FpVec3, n), .high = g_new (FpVec3, n), .n = n };
}

static int
add_side (FpSketch *self, const Rings *r, guint i, const FpFace *like)
{
  const guint k = (i + 1) % r->n;
  const FpVec3 side[4] = { r->low[i], r->low[k], r->high[k], r->high[i] };

  return fp_sketch_add_face (self, side, 4, like);
}

static int
add_foot (FpSketch *self, const Rings *r, const FpFace *like)
{
  g_autofree FpVec3 *backwards = g_new (FpVec3, r->n);

  for (guint i = 0; i < r->n; i++)
    backwards[i] = r->low[r->n - 1 - i];
  return fp_sketch_add_face (self, backwards, r->n, like);
}

static void
add_top_cut (FpSketch *self, const Rings *r, const FpFace *like)
{
  FpCutPiece piece = { g_new (FpPoint, r->n), r->n, like->owner, like->fabric, r->high[0].z };

  for (guint i = 0; i < r->n; i++)
    piece.pt[i] = (FpPoint) { r->high[i].x, r->high[i].y };
  g_array_append_val (self->cuts, piece);
}

static void
add_rings (FpSketch *self, const Rings *r, const FpFace *like)
{
  g_autofree int *side = g_new (int, r->n);
  FpFace top_like = *like;
  int top, foot;

  top_like.cut = r->top_cut;
  for (guint i = 0; i < r->n; i++)
    side[i] = add_side (self, r, i, like);
  top = fp_sketch_add_face (self, r->high, r->n, &top_like);
  foot = add_foot (self, r, like);
  for (guint i = 0; i < r->n; i++)
    {
      const guint k = (i + 1) % r->n, before = (i + r->n - 1) % r->n;
      if (!r->top_cut)
        fp_sketch_add_edge_between (self, r->high[i], r->high[k], side[i], top, FALSE, like);
      fp_sketch_add_edge_between (self, r->low[i], r->low[k], side[i], foot, FALSE, like);
      fp_sketch_add_edge_between (self, r->low[i], r->high[i], side[before], side[i], r->smooth, like);
    }
  if (r->top_cut && top >= 0)
    add_top_cut (self, r, like);
}

static gboolean
crosses_plane (const FpSketch *self, const FpVec3 *pt, guint n)
{
  guint beyond = 0;

  for (guint i = 0; i < n; i++)
    beyond += pt[i].z <= self->near;
  return beyond > 0 && beyond < n;
}

void
fp_sketch_add_prism (FpSketch *self, const FpSolid *s, const FpSketchHow *how, FpFace *like)
{
  g_auto (Rings) r = rings_new (s->n_outline);
  double highest = -G_MAXDOUBLE;

  for (guint i = 0; i < r.n; i++)
    highest = MAX (highest, fp_solid_top_at (s, s->outline[i].x, s->outline[i].y));
  r.top_cut = highest > how->plan_cut;
  for (guint i = 0; i < r.n; i++)
    {
      const FpPoint p = s->outline[i];
      const double top = r.top_cut ? how->plan_cut : fp_solid_top_at (s, p.x, p.y);
      r.low[i] = fp_sketch_point (self, (FpVec3) { p.x, p.y, fp_solid_foot_at (s, p.x, p.y) });
      r.high[i] = fp_sketch_point (self, (FpVec3) { p.x, p.y, top });
    }
  r.top_cut = r.top_cut && how->cut_face;
  like->convex = fp_outline_is_convex (s->outline, s->n_outline);
  add_rings (self, &r, like);
  if (self->view != FP_VIEW_PLAN && crosses_plane (self, r.low, r.n))
    fp_sketch_add_prism_caps (self, r.low, r.high, r.n, like, how->cut_face);
}

guint
fp_corners_of_circle (FpViewId view, double radius)
{
  guint quarter;

  if (view != FP_VIEW_PLAN)
    return CORNERS_EDGE_ON;
  quarter = (guint) ceil (G_PI / acos (1 - MIN (PLAN_SAGITTA / radius, 0.1)) / 4);
  return MIN (MAX (4 * quarter, 12), CORNERS_MAX);
}

void
fp_sketch_add_frustum (FpSketch *self, const FpSolid *s, const FpSketchHow *how, FpFace *like)
{
  g_auto (Rings) r = rings_new (fp_corners_of_circle (self->view, MAX (s->r0, s->r1)));
  const gboolean top_cut = s->z1 > how->plan_cut;
  const double z1 = top_cut ? how->plan_cut : s->z1;
  const double r1 = s->r0 + (s->r1 - s->r0) * (z1 - s->z0) / (s->z1 - s->z0);

  for (guint i = 0; i < r.n; i++)
    {
      /* Quarters are exact, so that the extremes are. */
      const FpPlace turn = { s->cx, s->cy, 360.0 * i / r.n };
      const FpPoint low = fp_place_point (&turn, (FpPoint) { s->r0, 0 });
      const FpPoint high = fp_place_point (&turn, (FpPoint) { r1, 0 });
      r.low[i] = fp_sketch_point (self, (FpVec3) { low.x, low.y, s->z0 });
      r.high[i] = fp_sketch_point (self, (FpVec3) { high.x, high.y, z1 });
    }
  r.smooth = TRUE;
  r.top_cut = top_cut && how->cut_face;
  like->convex = TRUE;
  add_rings (self, &r, like);
  if (self->view != FP_VIEW_PLAN && (crosses_plane (self, r.low, r.n) || crosses_plane (self, r.high, r.n)))
    fp_sketch_add_round_cap (self, s, like, how->cut_face);
}
