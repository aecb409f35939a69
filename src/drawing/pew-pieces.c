/* SPDX-License-Identifier: GPL-3.0-or-later */
/* pew-pieces.c - solids of the church as convex pieces before the eye */
#include "pew-private.h"

#include <math.h>

/* How far a facet of a round thing may lie within its surface, as a share of its distance: a fifth of a dot of a picture
 * of 1000 dots. */
#define FACET_OFF 0.0002
#define CORNERS_MOST 100 /* of one piece: few enough for what cuts add to it */
#define ROUND_LEAST 6
#define ROUND_MOST  64
/* How much wider than the picture is what is cut out for it, so that the cuts themselves are not seen. */
#define MARGIN 0.02

typedef struct
{
  FpPewPool         *pool;
  const FpPewCamera *camera;
  FpVec3             side[4]; /* normals of the planes through the eye and the edges of the picture */
  GPtrArray         *pieces;
  FpConvex           like;    /* owner, solid and part of what is made now */
} Making;

/* --- what the picture shows of a piece ----------------------------------------- */

static void
find_sides (Making *m)
{
  const FpBox p = m->camera->picture;
  const double mx = MARGIN * (p.x1 - p.x0), my = MARGIN * (p.y1 - p.y0);
  const FpVec3 n[4] = { { -1, p.x0 - mx, 0 }, { 1, -p.x1 - mx, 0 }, { 0, p.y0 - my, -1 }, { 0, -p.y1 - my, 1 } };

  for (guint i = 0; i < 4; i++)
    m->side[i] = fp_vec3_scale (n[i], 1 / fp_vec3_length (n[i]));
}

/* Exactly what lies farther than the near plane; its cut is seen, as the solid that fills it would be. */
static FpConvex *
beyond_near (Making *m, FpConvex *piece)
{
  if (piece->box.hi.y <= FP_PEW_NEAR)
    return NULL;
  if (piece->box.lo.y >= FP_PEW_NEAR)
    return piece;
  if (piece->round)
    piece = fp_convex_facetted (m->pool, piece);
  return fp_convex_cut (m->pool, piece, (FpVec3) { 0, -1, 0 }, -FP_PEW_NEAR, FALSE);
}

static void
add_piece (Making *m, FpConvex *piece)
{
  if (piece != NULL)
    piece = beyond_near (m, piece);
  for (guint i = 0; i < 4 && piece != NULL; i++)
    {
      if (fp_convex_least (piece, m->side[i]) >= 0)
        return;
      if (!piece->round && fp_convex_most (piece, m->side[i]) > 0)
        piece = fp_convex_cut (m->pool, piece, m->side[i], 0, TRUE);
    }
  if (piece == NULL)
    return;
  fp_convex_outline (m->pool, piece);
  if (piece->n_outline >= 3)
    g_ptr_array_add (m->pieces, piece);
}

/* Whether anything of a box of the church can be before the eye and in the picture: asked before a piece is made. */
static gboolean
may_show (const Making *m, const FpBox3 *box)
{
  guint behind = 0, out[4] = { 0 };

  for (guint i = 0; i < 8; i++)
    {
      const FpVec3 corner = { i & 1 ? box->hi.x : box->lo.x, i & 2 ? box->hi.y : box->lo.y, i & 4 ? box->hi.z : box->lo.z };
      const FpVec3 p = fp_pew_from_church (m->camera, corner);
      behind += p.y <= FP_PEW_NEAR;
      for (guint k = 0; k < 4; k++)
        out[k] += fp_vec3_dot (m->side[k], p) >= 0;
    }
  return behind < 8 && out[0] < 8 && out[1] < 8 && out[2] < 8 && out[3] < 8;
}

/* --- solids -------------------------------------------------------------------- */

static void
add_part (Making *m, const FpSolid *s, const guint16 *corner, guint n)
{
  FpVec3 *low = fp_pew_pool_take (m->pool, sizeof *low * n), *high = fp_pew_pool_take (m->pool, sizeof *high * n);
  gboolean *inner = fp_pew_pool_take (m->pool, sizeof *inner * n);

  for (guint i = 0; i < n; i++)
    {
      const FpPoint p = s->outline[corner[i]];
      low[i] = fp_pew_from_church (m->camera, (FpVec3) { p.x, p.y, fp_solid_foot_at (s, p.x, p.y) });
      high[i] = fp_pew_from_church (m->camera, (FpVec3) { p.x, p.y, fp_solid_top_at (s, p.x, p.y) });
      inner[i] = (corner[i] + 1u) % s->n_outline != corner[(i + 1) % n];
    }
  add_piece (m, fp_convex_between (m->pool, &m->like, low, high, n, inner));
}

/* A part of very many corners in slices, from its first corner. */
static void
add_slices (Making *m, const FpSolid *s, const guint16 *corner, guint n)
{
  guint16 slice[CORNERS_MOST];

  for (guint from = 1; from + 1 < n; from += CORNERS_MOST - 2)
    {
      guint k = 0;
      slice[k++] = corner[0];
      for (guint i = from; i < n && k < CORNERS_MOST; i++)
        slice[k++] = corner[i];
      add_part (m, s, slice, k);
    }
}

static void
add_prism (Making *m, const FpSolid *s)
{
  g_autoptr (GArray) parts = g_array_new (FALSE, FALSE, sizeof (guint16));
  const guint16 *corner;
  guint from = 0;

  fp_outline_part (s->outline, s->n_outline, parts);
  corner = (const guint16 *) (gpointer) parts->data;
  for (guint i = 0; i < parts->len; i++)
    if (corner[i] == G_MAXUINT16)
      {
        add_slices (m, s, corner + from, i - from);
        from = i + 1;
      }
}

/* So many that no facet is seen as one, however near the thing stands. */
static guint
facets_for (const Making *m, const FpSolid *s)
{
  const double radius = MAX (s->r0, s->r1);
  const FpVec3 at = fp_pew_from_church (m->camera, (FpVec3) { s->cx, s->cy, s->z0 });
  const double distance = MAX (hypot (at.x, at.y) - radius, FP_PEW_NEAR), off = FACET_OFF * distance / radius;

  return off >= 0.5 ? ROUND_LEAST : CLAMP ((guint) ceil (G_PI / acos (1 - off)), ROUND_LEAST, ROUND_MOST);
}

static void
add_round (Making *m, const FpSolid *s)
{
  const guint n = facets_for (m, s);
  /* Corners as far without the circle as the middles of the sides are within. */
  const double grow = 2 / (1 + cos (G_PI / n));
  FpVec3 low[ROUND_MOST], high[ROUND_MOST];

  m->like.turned = TRUE;
  for (guint i = 0; i < n; i++)
    {
      const double c = grow * cos (2 * G_PI * i / n), t = grow * sin (2 * G_PI * i / n);
      low[i] = fp_pew_from_church (m->camera, (FpVec3) { s->cx + s->r0 * c, s->cy + s->r0 * t, s->z0 });
      high[i] = fp_pew_from_church (m->camera, (FpVec3) { s->cx + s->r1 * c, s->cy + s->r1 * t, s->z1 });
    }
  add_piece (m, fp_convex_between (m->pool, &m->like, low, high, n, NULL));
}

static void
add_ellipsoid (Making *m, const FpSolid *s)
{
  const FpVec3 c = { s->cx, s->cy, s->cz }, centre = fp_pew_from_church (m->camera, c);
  const FpPlace turned = { s->cx, s->cy, s->turn };
  const FpPoint x = fp_place_point (&turned, (FpPoint) { s->rx, 0 }), y = fp_place_point (&turned, (FpPoint) { 0, s->ry });
  const FpVec3 axis[3] = { fp_vec3_sub (fp_pew_from_church (m->camera, (FpVec3) { x.x, x.y, c.z }), centre),
                           fp_vec3_sub (fp_pew_from_church (m->camera, (FpVec3) { y.x, y.y, c.z }), centre),
                           { 0, 0, s->rz } };

  add_piece (m, fp_convex_ellipsoid (m->pool, &m->like, centre, axis));
}

void
fp_pew_pieces (FpPewPool *pool, const FpPewCamera *camera, const FpSolids *solids, guint skip_owner, GPtrArray *pieces)
{
  Making m = { .pool = pool, .camera = camera, .pieces = pieces };
  guint n;
  const FpSolid *s = fp_solids_peek (solids, &n);

  find_sides (&m);
  for (guint i = 0; i < n; i++)
    {
      const FpBox3 box = fp_solid_box (&s[i]);
      if (s[i].owner == skip_owner || !may_show (&m, &box))
        continue;
      m.like = (FpConvex) { .owner = s[i].owner, .solid = i, .part = s[i].part };
      switch (s[i].shape)
        {
        case FP_SOLID_PRISM: add_prism (&m, &s[i]); break;
        case FP_SOLID_ROUND: add_round (&m, &s[i]); break;
        case FP_SOLID_ELLIPSOID: add_ellipsoid (&m, &s[i]); break;
        }
    }
}
