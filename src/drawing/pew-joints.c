/* SPDX-License-Identifier: GPL-3.0-or-later */
/* pew-joints.c - faces within a wall
 *
 * A wall is many pieces about its openings and over its arches.  A face that
 * lies wholly against another piece of its own wall is no surface: nobody can
 * see it, and its edges would show as hairs beside the joint.
 */
#include "pew-private.h"

#include <math.h>

#define ALIKE 0.05 /* mm: of faces in one plane these sums agree; others that do by chance are found out afterwards */

typedef struct
{
  const FpConvex *piece;
  FpFacet        *facet;
  double          sum;
} Face;

/* The same for either side of a plane. */
static double
sum_of (const FpFacet *facet)
{
  const FpVec3 n = facet->n;
  const double turned = n.x < -1e-6 || (fabs (n.x) <= 1e-6 && (n.y < -1e-6 || (fabs (n.y) <= 1e-6 && n.z < 0))) ? -1 : 1;

  return turned * (facet->d + 1931 * n.x + 1409 * n.y + 1123 * n.z);
}

static int
by_plane (gconstpointer a, gconstpointer b)
{
  const Face *p = a, *q = b;

  if (p->piece->owner != q->piece->owner)
    return p->piece->owner < q->piece->owner ? -1 : 1;
  return (p->sum > q->sum) - (p->sum < q->sum);
}

static FpVec3
corner_of (const Face *face, guint i)
{
  return face->piece->vertex[face->piece->loop[face->facet->first + i % face->facet->count]];
}

static gboolean
has_point (const Face *face, FpVec3 p)
{
  if (fabs (fp_vec3_dot (face->facet->n, p) - face->facet->d) > FP_PEW_TOUCH)
    return FALSE;
  for (guint i = 0; i < face->facet->count; i++)
    {
      const FpVec3 a = corner_of (face, i), along = fp_vec3_sub (corner_of (face, i + 1), a);
      const FpVec3 inward = fp_vec3_cross (face->facet->n, along);
      if (fp_vec3_dot (inward, fp_vec3_sub (p, a)) < -FP_PEW_TOUCH * fp_vec3_length (along))
        return FALSE;
    }
  return TRUE;
}

static gboolean
lies_against (const Face *one, const Face *other)
{
  if (fp_vec3_dot (one->facet->n, other->facet->n) > -0.999)
    return FALSE;
  for (guint i = 0; i < one->facet->count; i++)
    if (!has_point (other, corner_of (one, i)))
      return FALSE;
  return TRUE;
}

static GArray *
faces_of_walls (const GPtrArray *pieces)
{
  GArray *faces = g_array_new (FALSE, FALSE, sizeof (Face));

  for (guint i = 0; i < pieces->len; i++)
    {
      FpConvex *piece = g_ptr_array_index (pieces, i);
      for (guint k = 0; piece->part == FP_PART_WALL && k < piece->n_facets; k++)
        {
          const Face face = { piece, &piece->facet[k], sum_of (&piece->facet[k]) };
          if (!piece->facet[k].inner)
            g_array_append_val (faces, face);
        }
    }
  g_array_sort (faces, by_plane);
  return faces;
}

void
fp_pew_find_joints (GPtrArray *pieces)
{
  g_autoptr (GArray) faces = faces_of_walls (pieces);
  const Face *face = (const Face *) (gpointer) faces->data;

  for (guint i = 0; i < faces->len; i++)
    for (guint k = i + 1; k < faces->len && face[k].piece->owner == face[i].piece->owner
                          && face[k].sum - face[i].sum < ALIKE; k++)
      {
        /* Both are asked before either is told. */
        const gboolean one = lies_against (&face[i], &face[k]), other = lies_against (&face[k], &face[i]);
        face[i].facet->inner = face[i].facet->inner || one;
        face[k].facet->inner = face[k].facet->inner || other;
      }
}
