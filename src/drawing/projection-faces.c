/* SPDX-License-Identifier: GPL-3.0-or-later */
/* projection-faces.c - faces and edges of a sketch, as the viewer has them
 *
 * Only faces that look towards the viewer are kept: together they cover all
 * that a closed solid covers.  So only edges that border such a face can be
 * seen; the others lie behind.
 */
#include "projection-solids.h"

/* A face that turns less than this towards the viewer (sine) is seen edge-on. */
#define EDGE_ON 1e-5

/* Newell's normal: right for any flat loop, however its corners lie. */
static FpVec3
normal_of (const FpVec3 *pt, guint n)
{
  FpVec3 sum = { 0, 0, 0 };

  for (guint i = 1; i + 1 < n; i++)
    sum = fp_vec3_add (sum, fp_vec3_cross (fp_vec3_sub (pt[i], pt[0]), fp_vec3_sub (pt[i + 1], pt[0])));
  return sum;
}

FpVec3
fp_sketch_at_plane (FpVec3 a, FpVec3 b, double near)
{
  const double t = (near - a.z) / (b.z - a.z);

  return (FpVec3) { a.x + t * (b.x - a.x), a.y + t * (b.y - a.y), near };
}

/* Appends what lies beyond the plane; returns how many corners. */
static guint
append_beyond (FpSketch *self, const FpVec3 *pt, guint n)
{
  const guint before = self->points->len;

  for (guint i = 0; i < n; i++)
    {
      const FpVec3 a = pt[i], b = pt[(i + 1) % n];
      const gboolean keep_a = a.z <= self->near, keep_b = b.z <= self->near;
      if (keep_a)
        g_array_append_val (self->points, a);
      if (keep_a != keep_b)
        {
          const FpVec3 crossing = fp_sketch_at_plane (a, b, self->near);
          g_array_append_val (self->points, crossing);
        }
    }
  return self->points->len - before;
}

static const FpVec3 *
corner_of (const FpSketch *self, const FpFace *face)
{
  return &g_array_index (self->points, FpVec3, face->first);
}

/* Returns the index of the face, -1 when the viewer does not see its front. */
int
fp_sketch_add_face (FpSketch *self, const FpVec3 *pt, guint n, const FpFace *like)
{
  const FpVec3 normal = normal_of (pt, n);
  FpFace face = *like;

  if (!(normal.z > EDGE_ON * fp_vec3_length (normal)))
    return -1;
  if (!face.cut)
    face.fabric = 0;
  face.first = self->points->len;
  face.n = append_beyond (self, pt, n);
  if (face.n < 3)
    {
      g_array_set_size (self->points, face.first);
      return -1;
    }
  face.slope_h = -normal.x / normal.z;
  face.slope_v = -normal.y / normal.z;
  face.box = FP_BOX_EMPTY;
  face.depth_max = -G_MAXDOUBLE;
  for (guint i = 0; i < face.n; i++)
    {
      const FpVec3 p = corner_of (self, &face)[i];
      fp_box_add_point (&face.box, (FpPoint) { p.x, p.y });
      face.depth_max = MAX (face.depth_max, p.z);
    }
  g_array_append_val (self->faces, face);
  return (int) self->faces->len - 1;
}

void
fp_sketch_add_edge (FpSketch *self, FpVec3 a, FpVec3 b, int left, int right, const FpFace *like)
{
  FpEdge edge = { a, b, like->owner, like->solid, like->convex, { left, right }, FP_EDGE_SHARP,
                  like->weight, FP_PEN_OUTLINE };
  const gboolean keep_a = a.z <= self->near, keep_b = b.z <= self->near;

  if (!keep_a && !keep_b)
    return;
  if (!keep_a)
    edge.a = fp_sketch_at_plane (b, a, self->near);
  if (!keep_b)
    edge.b = fp_sketch_at_plane (a, b, self->near);
  g_array_append_val (self->edges, edge);
}

/* A sharp edge is seen with either face; an edge between facets of a curved surface only where it turns away. */
void
fp_sketch_add_edge_between (FpSketch *self, FpVec3 a, FpVec3 b, int left, int right, gboolean smooth, const FpFace *like)
{
  if (smooth ? (left >= 0) != (right >= 0) : (left >= 0 || right >= 0))
    fp_sketch_add_edge (self, a, b, left, right, like);
}
