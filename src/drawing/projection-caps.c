/* SPDX-License-Identifier: GPL-3.0-or-later */
/* projection-caps.c - the faces that a cutting plane opens in a solid */
#include "projection-solids.h"

#include <math.h>

/* A face in the cutting plane: filled with a border of its own, or like any other. */
void
fp_sketch_add_cap (FpSketch *self, const FpPoint *pt, guint n, const FpFace *like, gboolean cut)
{
  g_autofree FpVec3 *corner = g_new (FpVec3, n);
  FpFace face = *like;
  int index;

  for (guint i = 0; i < n; i++)
    corner[i] = (FpVec3) { pt[i].x, pt[i].y, self->near };
  face.cut = cut;
  index = fp_sketch_add_face (self, corner, n, &face);
  if (index < 0)
    return;
  if (cut)
    {
      const FpCutPiece piece = { g_memdup2 (pt, n * sizeof (FpPoint)), n, face.owner, face.fabric, self->near };
      g_array_append_val (self->cuts, piece);
      return;
    }
  for (guint i = 0; i < n; i++)
    fp_sketch_add_edge (self, corner[i], corner[(i + 1) % n], index, -1, &face);
}

static int
compare_across (gconstpointer a, gconstpointer b)
{
  const double d = ((const FpVec3 *) a)->x - ((const FpVec3 *) b)->x;

  return (d > 0) - (d < 0);
}

/* Foot and top of a prism where its outline crosses the plane: between each odd
 * crossing and the next lies a cut face. */
void
fp_sketch_add_prism_caps (FpSketch *self, const FpVec3 *low, const FpVec3 *high, guint n, const FpFace *like,
                          gboolean cut)
{
  g_autoptr (GArray) at = g_array_new (FALSE, FALSE, sizeof (FpVec3)); /* h, foot, top */

  for (guint i = 0; i < n; i++)
    {
      const guint k = (i + 1) % n;
      if ((low[i].z <= self->near) != (low[k].z <= self->near))
        {
          const FpVec3 foot = fp_sketch_at_plane (low[i], low[k], self->near);
          const FpVec3 top = fp_sketch_at_plane (high[i], high[k], self->near);
          const FpVec3 crossing = { foot.x, foot.y, top.y };
          g_array_append_val (at, crossing);
        }
    }
  g_array_sort (at, compare_across);
  for (guint i = 0; i + 1 < at->len; i += 2)
    {
      const FpVec3 a = g_array_index (at, FpVec3, i), b = g_array_index (at, FpVec3, i + 1);
      const FpPoint quad[4] = { { a.x, a.y }, { b.x, b.y }, { b.x, b.z }, { a.x, a.z } };
      fp_sketch_add_cap (self, quad, 4, like, cut);
    }
}

/* A frustum cut upright, @off its axis: a trapezium through the axis, otherwise bounded by hyperbolas. */
void
fp_sketch_add_round_cap (FpSketch *self, const FpSolid *s, const FpFace *like, gboolean cut)
{
  enum { LEVELS = 12 };
  const FpVec3 axis = fp_sketch_point (self, (FpVec3) { s->cx, s->cy, s->z0 });
  const double off = fabs (axis.z - self->near);
  const guint levels = s->r0 == s->r1 || off < 1e-2 ? 1 : LEVELS;
  FpPoint left[LEVELS + 1], right[2 * (LEVELS + 1)];
  guint n = 0;

  for (guint i = 0; i <= levels; i++)
    {
      const double t = (double) i / levels, r = s->r0 + t * (s->r1 - s->r0);
      if (r < off)
        continue;
      left[n] = (FpPoint) { axis.x - sqrt (r * r - off * off), s->z0 + t * (s->z1 - s->z0) };
      right[n] = (FpPoint) { 2 * axis.x - left[n].x, left[n].y };
      n++;
    }
  for (guint i = 0; i < n; i++)
    right[n + i] = left[n - 1 - i];
  if (n >= 2)
    fp_sketch_add_cap (self, right, 2 * n, like, cut);
}
