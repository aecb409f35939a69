/* SPDX-License-Identifier: GPL-3.0-or-later */
/* pew-edges.c - the lines of a view from the pew
 *
 * Drawn is where a piece turns away, and where two of its faces meet in an
 * edge; but not where it was only parted or cut, nor where a thing is made of
 * pieces side by side: there a face of the one goes on in a face of the other.
 */
#include "pew-private.h"

#include <math.h>

/* Faces that meet at less than this are one curved surface: cosine of 12 degrees, as in projections. */
#define SMOOTH 0.978
/* Of edges on one line these sums agree: mm; others that do by chance are found out afterwards. */
#define ALIKE 0.05
#define OFF_LINE 0.1 /* mm */
#define GAPS_MOST 32

/* --- the edges of one piece ------------------------------------------------------ */

/* The facet on the other side of the edge from vertex @a to @b; NULL on none. */
static const FpFacet *
facet_beside (const FpConvex *piece, guint16 a, guint16 b)
{
  for (guint i = 0; i < piece->n_facets; i++)
    {
      const FpFacet *facet = &piece->facet[i];
      const guint16 *loop = piece->loop + facet->first;
      for (guint k = 0; k < facet->count; k++)
        if (loop[k] == b && loop[(k + 1) % facet->count] == a)
          return facet;
    }
  return NULL;
}

/* People are told by their outlines alone, and by the line of their shoulders; so are piers by that of their top. */
static gboolean
is_smooth (const FpConvex *piece, const FpFacet *facet, const FpFacet *beside)
{
  const gboolean upright = fabs (facet->n.z) < 0.9 && fabs (beside->n.z) < 0.9;

  return fp_vec3_dot (facet->n, beside->n) > SMOOTH || (upright && (piece->part == FP_PART_TRUNK || piece->turned));
}

static void
add_edges (const FpPewSeen *seen, guint index, const FpFacet *facet, GArray *edges)
{
  const FpConvex *piece = seen->piece;

  for (guint k = 0; k < facet->count; k++)
    {
      const guint16 a = piece->loop[facet->first + k], b = piece->loop[facet->first + (k + 1) % facet->count];
      const FpFacet *beside = facet_beside (piece, a, b);
      const gboolean faces = beside != NULL && !beside->inner && beside->d < 0;
      FpPewEdge edge = {
        .a = piece->vertex[a], .b = piece->vertex[b], .n = facet->n, .m = beside != NULL ? beside->n : facet->n,
        .owner = piece->owner, .seen = index, .facet = (guint) (facet - piece->facet),
        .beside = (guint) ((beside != NULL ? beside : facet) - piece->facet), .faces = faces,
        .type = faces ? FP_PEW_EDGE : FP_PEW_OUTLINE,
      };
      if (faces && a > b) /* once, not for either face */
        continue;
      if (faces && is_smooth (piece, facet, beside))
        edge.type = FP_PEW_JOINT;
      g_array_append_val (edges, edge);
    }
}

/* --- where a face goes on in another --------------------------------------------- */

typedef struct
{
  FpPewEdge edge;
  FpVec3    along;  /* of length 1                              */
  double    length;
  double    sum;    /* the same for all edges on one line        */
} Line;

static Line
line_of (const FpPewEdge *edge)
{
  Line line = { .edge = *edge, .along = fp_vec3_sub (edge->b, edge->a) };
  FpVec3 foot, way;

  line.length = fp_vec3_length (line.along);
  line.along = fp_vec3_scale (line.along, line.length > 0 ? 1 / line.length : 0);
  foot = fp_vec3_sub (edge->a, fp_vec3_scale (line.along, fp_vec3_dot (edge->a, line.along)));
  way = line.along;
  if (way.x < -1e-6 || (fabs (way.x) <= 1e-6 && (way.y < -1e-6 || (fabs (way.y) <= 1e-6 && way.z < 0))))
    way = fp_vec3_scale (way, -1);
  /* Odd weights, so that lines that are not one seldom agree. */
  line.sum = 0.731 * foot.x + 0.617 * foot.y + 0.843 * foot.z + 1931 * way.x + 1409 * way.y + 1123 * way.z;
  return line;
}

static int
by_line (gconstpointer a, gconstpointer b)
{
  const Line *p = a, *q = b;

  if (p->edge.owner != q->edge.owner)
    return p->edge.owner < q->edge.owner ? -1 : 1;
  return (p->sum > q->sum) - (p->sum < q->sum);
}

static double
off_line (const Line *line, FpVec3 p)
{
  return fp_vec3_length (fp_vec3_cross (line->along, fp_vec3_sub (p, line->edge.a)));
}

static gboolean
is_smooth_over (FpVec3 a, FpVec3 b)
{
  return fp_vec3_dot (a, b) > SMOOTH;
}

/* Whether a face beside @line goes on in one beside @other: they lie on either side of it, and look the same way.
 * @is_next (out): it is the farther one, beyond the edge. */
static gboolean
is_one_surface (const FpPewEdge *line, const FpPewEdge *other, gboolean same_way, gboolean *is_next)
{
  const FpVec3 here = same_way ? other->m : other->n, beyond = same_way ? other->n : other->m;
  const gboolean is_own = (!same_way || other->faces) && is_smooth_over (line->n, here);

  *is_next = !is_own;
  return is_own || (line->faces && (same_way || other->faces) && is_smooth_over (line->m, beyond));
}

typedef struct { double from, to; gboolean is_next; } Gap; /* along an edge, mm */

/* Where a face beside @line goes on beyond it. */
static gboolean
goes_on (const Line *line, const Line *other, Gap *gap)
{
  const double turn = fp_vec3_dot (line->along, other->along);
  double a, b;

  if (fabs (turn) < 0.999 || !is_one_surface (&line->edge, &other->edge, turn > 0, &gap->is_next)
      || off_line (line, other->edge.a) > OFF_LINE || off_line (line, other->edge.b) > OFF_LINE)
    return FALSE;
  a = fp_vec3_dot (fp_vec3_sub (other->edge.a, line->edge.a), line->along);
  b = fp_vec3_dot (fp_vec3_sub (other->edge.b, line->edge.a), line->along);
  gap->from = MAX (MIN (a, b), 0);
  gap->to = MIN (MAX (a, b), line->length);
  return gap->from < gap->to;
}

static int
by_from (gconstpointer a, gconstpointer b)
{
  const Gap *p = a, *q = b;
  return (p->from > q->from) - (p->from < q->from);
}

static void
add_stretch (FpPewEdge edge, const Line *line, double from, double to, GArray *edges)
{
  if (to - from < OFF_LINE)
    return;
  edge.a = fp_vec3_add (line->edge.a, fp_vec3_scale (line->along, from));
  edge.b = fp_vec3_add (line->edge.a, fp_vec3_scale (line->along, to));
  g_array_append_val (edges, edge);
}

static FpPewEdge
joint_of (FpPewEdge edge, gboolean is_next)
{
  edge.type = FP_PEW_JOINT;
  edge.facet = is_next ? edge.beside : edge.facet;
  return edge;
}

static void
add_with_joints (const Line *line, Gap *gap, guint n, GArray *edges)
{
  double done = 0;

  qsort (gap, n, sizeof *gap, by_from);
  for (guint i = 0; i < n; i++)
    {
      add_stretch (line->edge, line, done, gap[i].from, edges);
      add_stretch (joint_of (line->edge, gap[i].is_next), line, MAX (done, gap[i].from), gap[i].to, edges);
      done = MAX (done, gap[i].to);
    }
  add_stretch (line->edge, line, done, line->length, edges);
}

static gboolean
may_be_one (const Line *a, const Line *b)
{
  return a->edge.owner == b->edge.owner && fabs (a->sum - b->sum) < ALIKE;
}

static void
keep_edge (const Line *line, guint i, guint n, GArray *edges)
{
  Gap gap[GAPS_MOST];
  guint n_gaps = 0;

  for (guint k = i; k-- > 0 && may_be_one (&line[k], &line[i]) && n_gaps < GAPS_MOST;)
    n_gaps += goes_on (&line[i], &line[k], &gap[n_gaps]) ? 1 : 0;
  for (guint k = i + 1; k < n && may_be_one (&line[k], &line[i]) && n_gaps < GAPS_MOST; k++)
    n_gaps += goes_on (&line[i], &line[k], &gap[n_gaps]) ? 1 : 0;
  add_with_joints (&line[i], gap, n_gaps, edges);
}

/* Lines of one sort and tone side by side, so that one stroke serves for them; joints under the lines that are seen. */
static int
by_seen (gconstpointer a, gconstpointer b)
{
  const FpPewEdge *p = a, *q = b;

  if (p->seen != q->seen)
    return p->seen < q->seen ? -1 : 1;
  if (p->type != q->type)
    return p->type < q->type ? -1 : 1;
  return (p->facet > q->facet) - (p->facet < q->facet);
}

void
fp_pew_edges (FpPewPool *pool, const GArray *seen, const GArray *facets, GArray *edges)
{
  Line *line;
  guint n;

  for (guint i = 0; i < seen->len; i++)
    {
      const FpPewSeen *one = &g_array_index (seen, FpPewSeen, i);
      for (guint k = 0; k < one->n; k++)
        add_edges (one, i, &one->piece->facet[g_array_index (facets, guint, one->first + k)], edges);
    }
  n = edges->len;
  line = fp_pew_pool_take (pool, sizeof *line * n);
  for (guint i = 0; i < n; i++)
    line[i] = line_of (&g_array_index (edges, FpPewEdge, i));
  qsort (line, n, sizeof *line, by_line);
  g_array_set_size (edges, 0);
  for (guint i = 0; i < n; i++)
    keep_edge (line, i, n, edges);
  g_array_sort (edges, by_seen);
}
