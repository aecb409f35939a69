/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sun-shadow.h"

#include <math.h>

#define SIDES 24  /* of what is round; a multiple of four */
#define BANDS 8   /* of an ellipsoid, from pole to pole    */
#define LOW   1.0 /* mm: what rises no higher above the plane throws nothing */

double
fp_sun_plane_at (const FpSunPlane *self, double x, double y)
{
  return self->z + self->gx * x + self->gy * y;
}

FpPoint
fp_sun_plane_under (const FpSunPlane *self, FpVec3 p)
{
  const FpVec3 d = self->towards;
  const double t = (p.z - fp_sun_plane_at (self, p.x, p.y)) / (d.z - self->gx * d.x - self->gy * d.y);

  return (FpPoint) { p.x - t * d.x, p.y - t * d.y };
}

static void
add_hull (GArray *points, const FpBox *within, GArray *out)
{
  FpPoint *corner = (FpPoint *) points->data;
  const FpBox box = fp_outline_box ((const FpPoint *) points->data, points->len);
  guint n;

  if (!fp_box_overlaps (&box, within))
    return;
  n = fp_hull (corner, points->len);
  if (n >= 3)
    fp_rings_add (out, corner, n, FALSE);
}

/* --- solids ------------------------------------------------------------------------ */

/* Level with the plane at the least. */
static void
add_point (const FpSunPlane *self, double x, double y, double z, GArray *points)
{
  const FpPoint p = fp_sun_plane_under (self, (FpVec3) { x, y, MAX (z, fp_sun_plane_at (self, x, y)) });

  g_array_append_val (points, p);
}

static void
add_edge (const FpSunPlane *self, const FpSolid *s, guint corner, GArray *points)
{
  const FpPoint p = s->outline[corner % s->n_outline];

  add_point (self, p.x, p.y, fp_solid_foot_at (s, p.x, p.y), points);
  add_point (self, p.x, p.y, fp_solid_top_at (s, p.x, p.y), points);
}

static gboolean
rises (const FpSunPlane *self, const FpSolid *s)
{
  for (guint i = 0; i < s->n_outline; i++)
    {
      const FpPoint p = s->outline[i];
      if (fp_solid_top_at (s, p.x, p.y) > fp_sun_plane_at (self, p.x, p.y) + LOW)
        return TRUE;
    }
  return FALSE;
}

/* Its top, and what its sides throw. */
static void
add_angular (const FpSunPlane *self, const FpSolid *s, const FpBox *within, GArray *out)
{
  g_autoptr (GArray) top = g_array_new (FALSE, FALSE, sizeof (FpPoint));

  for (guint i = 0; i < s->n_outline; i++)
    {
      g_autoptr (GArray) side = g_array_new (FALSE, FALSE, sizeof (FpPoint));
      const FpPoint p = s->outline[i];
      add_edge (self, s, i, side);
      add_edge (self, s, i + 1, side);
      add_hull (side, within, out);
      add_point (self, p.x, p.y, fp_solid_top_at (s, p.x, p.y), top);
    }
  fp_rings_add (out, (const FpPoint *) top->data, top->len, FALSE);
}

static void
add_prism (const FpSunPlane *self, const FpSolid *s, const FpBox *within, GArray *out)
{
  g_autoptr (GArray) points = g_array_new (FALSE, FALSE, sizeof (FpPoint));

  if (!rises (self, s))
    return;
  if (!fp_outline_is_convex (s->outline, s->n_outline))
    {
      add_angular (self, s, within, out);
      return;
    }
  for (guint i = 0; i < s->n_outline; i++)
    add_edge (self, s, i, points);
  add_hull (points, within, out);
}

static void
add_round (const FpSunPlane *self, const FpSolid *s, const FpBox *within, GArray *out)
{
  g_autoptr (GArray) points = g_array_new (FALSE, FALSE, sizeof (FpPoint));

  if (s->z1 <= fp_sun_plane_at (self, s->cx, s->cy) + LOW)
    return;
  for (guint i = 0; i < SIDES; i++)
    {
      const double c = cos (2 * G_PI * i / SIDES), d = sin (2 * G_PI * i / SIDES);
      add_point (self, s->cx + s->r0 * c, s->cy + s->r0 * d, s->z0, points);
      add_point (self, s->cx + s->r1 * c, s->cy + s->r1 * d, s->z1, points);
    }
  add_hull (points, within, out);
}

static void
add_ellipsoid (const FpSunPlane *self, const FpSolid *s, const FpBox *within, GArray *out)
{
  g_autoptr (GArray) points = g_array_new (FALSE, FALSE, sizeof (FpPoint));
  const FpPlace place = { s->cx, s->cy, s->turn };

  if (s->cz + s->rz <= fp_sun_plane_at (self, s->cx, s->cy) + LOW)
    return;
  for (guint band = 0; band <= BANDS; band++)
    for (guint i = 0; i < SIDES; i++)
      {
        const double up = G_PI * band / BANDS, round = 2 * G_PI * i / SIDES;
        const FpPoint local = { s->rx * sin (up) * cos (round), s->ry * sin (up) * sin (round) };
        const FpPoint p = fp_place_point (&place, local);
        add_point (self, p.x, p.y, s->cz + s->rz * cos (up), points);
      }
  add_hull (points, within, out);
}

void
fp_sun_plane_shadow (const FpSunPlane *self, const FpSolid *solid, const FpBox *within, GArray *out)
{
  switch (solid->shape)
    {
    case FP_SOLID_PRISM: add_prism (self, solid, within, out); break;
    case FP_SOLID_ROUND: add_round (self, solid, within, out); break;
    case FP_SOLID_ELLIPSOID: add_ellipsoid (self, solid, within, out); break;
    }
}
