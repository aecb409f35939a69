/* SPDX-License-Identifier: GPL-3.0-or-later */
/* solid.c - lists of solids, and what they measure */
#include "footpace/solid.h"

#include <math.h>
#include <string.h>

struct _FpSolids
{
  GArray     *list; /* of FpSolid; frees the outlines */
  const char *called;
};

static void
clear_solid (gpointer data)
{
  FpSolid *s = data;

  g_free (s->outline);
}

FpSolids *
fp_solids_new (void)
{
  FpSolids *self = g_new0 (FpSolids, 1);

  self->list = g_array_new (FALSE, FALSE, sizeof (FpSolid));
  g_array_set_clear_func (self->list, clear_solid);
  return self;
}

void
fp_solids_free (FpSolids *self)
{
  if (self == NULL)
    return;
  g_array_unref (self->list);
  g_free (self);
}

guint
fp_solids_count (const FpSolids *self)
{
  return self->list->len;
}

const FpSolid *
fp_solids_get (const FpSolids *self, guint i)
{
  return &g_array_index (self->list, FpSolid, i);
}

const FpSolid *
fp_solids_peek (const FpSolids *self, guint *n)
{
  *n = self->list->len;
  return (const FpSolid *) (gconstpointer) self->list->data;
}

void
fp_solids_call (FpSolids *self, const char *name)
{
  self->called = name;
}

void
fp_solids_add_box (FpSolids *self, FpPart part, double x0, double y0, double z0, double x1, double y1, double z1)
{
  const FpPoint corner[4] = { { x0, y0 }, { x1, y0 }, { x1, y1 }, { x0, y1 } };

  fp_solids_add_prism (self, part, corner, 4, z0, z1);
}

void
fp_solids_add_prism (FpSolids *self, FpPart part, const FpPoint *outline, guint n, double z0, double z1)
{
  fp_solids_add_sloping (self, part, outline, n, z0, z1, 0, 0);
}

/* How far the top lies above the foot over a corner. */
static double
rise_at (const FpSolid *s, FpPoint p)
{
  return fp_solid_top_at (s, p.x, p.y) - fp_solid_foot_at (s, p.x, p.y);
}

static FpPoint
level_crossing (const FpSolid *s, FpPoint a, FpPoint b)
{
  const double ra = rise_at (s, a), rb = rise_at (s, b);
  const double t = ra / (ra - rb);

  return (FpPoint) { a.x + t * (b.x - a.x), a.y + t * (b.y - a.y) };
}

/* Keeps the part of the outline over which the top lies above the foot.
 * Returns its corners, at most twice as many. */
static guint
keep_above_foot (const FpSolid *s, const FpPoint *pt, guint n, FpPoint *out)
{
  guint m = 0;

  for (guint i = 0; i < n; i++)
    {
      const FpPoint a = pt[i], b = pt[(i + 1) % n];
      const gboolean above_a = rise_at (s, a) > 0, above_b = rise_at (s, b) > 0;
      if (above_a)
        out[m++] = a;
      if (above_a != above_b)
        out[m++] = level_crossing (s, a, b);
    }
  return m;
}

static void
run_backwards (FpPoint *pt, guint n)
{
  for (guint i = 0; i < n / 2; i++)
    {
      const FpPoint swap = pt[i];
      pt[i] = pt[n - 1 - i];
      pt[n - 1 - i] = swap;
    }
}

static void
add_between (FpSolids *self, FpSolid s, const FpPoint *outline, guint n)
{
  FpPoint *kept;
  double area;

  if (n < 3 || !isfinite (s.z0 + s.bx + s.by) || !isfinite (s.z1 + s.gx + s.gy))
    return;
  kept = g_new (FpPoint, 2 * (gsize) n);
  s.n_outline = keep_above_foot (&s, outline, n, kept);
  area = fp_outline_area (kept, s.n_outline);
  if (!isfinite (area) || fabs (area) < 1e-9)
    {
      g_free (kept);
      return;
    }
  if (area < 0)
    run_backwards (kept, s.n_outline);
  s.outline = kept;
  s.called = self->called;
  g_array_append_val (self->list, s);
}

void
fp_solids_add_sloping (FpSolids *self, FpPart part, const FpPoint *outline, guint n, double z0,
                       double z1, double gx, double gy)
{
  const FpSolid s = { .shape = FP_SOLID_PRISM, .part = part, .z0 = z0, .z1 = z1, .gx = gx, .gy = gy };

  add_between (self, s, outline, n);
}

void
fp_solids_add_arching (FpSolids *self, FpPart part, const FpPoint *outline, guint n, double z0, double bx,
                       double by, double z1)
{
  const FpSolid s = { .shape = FP_SOLID_PRISM, .part = part, .z0 = z0, .bx = bx, .by = by, .z1 = z1 };

  add_between (self, s, outline, n);
}

void
fp_solids_add_slanting (FpSolids *self, FpPart part, const FpPoint *outline, guint n, double z0, double bx,
                        double by, double z1, double gx, double gy)
{
  const FpSolid s = { .shape = FP_SOLID_PRISM, .part = part, .z0 = z0, .bx = bx, .by = by, .z1 = z1, .gx = gx, .gy = gy };

  add_between (self, s, outline, n);
}

void
fp_solids_add_round (FpSolids *self, FpPart part, double cx, double cy, double z0, double z1, double r0, double r1)
{
  const FpSolid s = { .shape = FP_SOLID_ROUND, .part = part, .called = self->called, .z0 = z0, .z1 = z1, .cx = cx, .cy = cy,
                      .cz = (z0 + z1) / 2, .r0 = MAX (r0, 0.0), .r1 = MAX (r1, 0.0) };

  if (z1 > z0 && isfinite (z1 - z0) && MAX (s.r0, s.r1) > 0 && isfinite (cx + cy + s.r0 + s.r1))
    g_array_append_val (self->list, s);
}

void
fp_solids_add_ellipsoid (FpSolids *self, FpPart part, FpVec3 centre, double rx, double ry, double rz, double turn)
{
  const FpSolid s = { .shape = FP_SOLID_ELLIPSOID, .part = part, .called = self->called, .cx = centre.x, .cy = centre.y, .cz = centre.z,
                      .z0 = centre.z - rz, .z1 = centre.z + rz, .rx = rx, .ry = ry, .rz = rz, .turn = turn };

  if (rx > 0 && ry > 0 && rz > 0 && isfinite (rx + ry + rz + turn + centre.x + centre.y + centre.z))
    g_array_append_val (self->list, s);
}

static FpPoint
turned (const FpPlace *place, double x, double y)
{
  const FpPlace about_origin = { 0, 0, place->turn };

  return fp_place_point (&about_origin, (FpPoint) { x, y });
}

static FpSolid
placed_copy (const FpSolid *from, const FpPlace *place, double level, guint owner)
{
  FpSolid s = *from;
  const FpPoint top = turned (place, from->gx, from->gy), foot = turned (place, from->bx, from->by);
  const FpPoint centre = fp_place_point (place, (FpPoint) { from->cx, from->cy });

  s.owner = owner;
  s.z0 += level - foot.x * place->x - foot.y * place->y;
  s.bx = foot.x;
  s.by = foot.y;
  s.z1 += level - top.x * place->x - top.y * place->y;
  s.gx = top.x;
  s.gy = top.y;
  s.cx = centre.x;
  s.cy = centre.y;
  s.cz += level;
  s.turn += place->turn;
  s.outline = g_memdup2 (from->outline, from->n_outline * sizeof (FpPoint));
  for (guint i = 0; i < s.n_outline; i++)
    s.outline[i] = fp_place_point (place, s.outline[i]);
  return s;
}

void
fp_solids_append_placed (FpSolids *self, const FpSolids *from, const FpPlace *place, double level, guint owner)
{
  const guint n = from->list->len; /* @from may be @self */

  for (guint i = 0; i < n; i++)
    {
      const FpSolid s = placed_copy (fp_solids_get (from, i), place, level, owner);
      g_array_append_val (self->list, s);
    }
}

double
fp_solid_top_at (const FpSolid *s, double x, double y)
{
  return s->z1 + s->gx * x + s->gy * y;
}

double
fp_solid_foot_at (const FpSolid *s, double x, double y)
{
  return s->z0 + s->bx * x + s->by * y;
}

static FpBox3
box_of_prism (const FpSolid *s)
{
  FpBox3 box = FP_BOX3_EMPTY;

  for (guint i = 0; i < s->n_outline; i++)
    {
      const FpPoint p = s->outline[i];
      fp_box3_add_point (&box, (FpVec3) { p.x, p.y, fp_solid_foot_at (s, p.x, p.y) });
      fp_box3_add_point (&box, (FpVec3) { p.x, p.y, fp_solid_top_at (s, p.x, p.y) });
    }
  return box;
}

/* From where on a solid is numbers alone, without gaps between them. */
#define NUMBERS offsetof (FpSolid, z0)
G_STATIC_ASSERT (sizeof (FpSolid) - NUMBERS == 15 * sizeof (double));

gboolean
fp_solid_same (const FpSolid *a, const FpSolid *b)
{
  return a->shape == b->shape && a->part == b->part && a->n_outline == b->n_outline
         && memcmp (&a->z0, &b->z0, sizeof (FpSolid) - NUMBERS) == 0
         && (a->n_outline == 0 || memcmp (a->outline, b->outline, a->n_outline * sizeof (FpPoint)) == 0);
}

FpBox3
fp_solid_box (const FpSolid *s)
{
  double rx = MAX (s->r0, s->r1), ry = rx;

  if (s->shape == FP_SOLID_PRISM)
    return box_of_prism (s);
  if (s->shape == FP_SOLID_ELLIPSOID)
    {
      const FpPlace turn = { 0, 0, s->turn };
      const FpPoint u = turned (&turn, s->rx, 0), v = turned (&turn, 0, s->ry);
      rx = hypot (u.x, v.x);
      ry = hypot (u.y, v.y);
    }
  return (FpBox3) { { s->cx - rx, s->cy - ry, s->z0 }, { s->cx + rx, s->cy + ry, s->z1 } };
}

double
fp_solid_volume (const FpSolid *s)
{
  switch (s->shape)
    {
    case FP_SOLID_PRISM:
      /* The mean height over an outline is the height over its centroid. */
      return fp_outline_area (s->outline, s->n_outline)
             * rise_at (s, fp_outline_centroid (s->outline, s->n_outline));
    case FP_SOLID_ROUND:
      return G_PI / 3 * (s->z1 - s->z0) * (s->r0 * s->r0 + s->r0 * s->r1 + s->r1 * s->r1);
    case FP_SOLID_ELLIPSOID:
      return 4 * G_PI / 3 * s->rx * s->ry * s->rz;
    }
  return 0;
}
