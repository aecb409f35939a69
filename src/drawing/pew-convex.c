/* SPDX-License-Identifier: GPL-3.0-or-later */
/* pew-convex.c - convex pieces: made, cut, and seen in perspective */
#include "pew-private.h"

#include <math.h>

/* Enough corners about an ellipse that little more is taken for it. */
#define ROUND_CORNERS 16
#define CORNERS_MOST 1024 /* of one piece; a simple outline of as many corners is nobody's furnishing */

#define TAKE(pool, type, n) ((type *) fp_pew_pool_take (pool, sizeof (type) * (n)))

/* --- making ---------------------------------------------------------------- */

/* Newell's normal of a loop: twice its area long. */
static FpVec3
loop_normal (const FpConvex *self, const FpFacet *facet)
{
  FpVec3 n = { 0, 0, 0 };
  const FpVec3 o = self->vertex[self->loop[facet->first]];

  for (guint i = 1; i + 1 < facet->count; i++)
    n = fp_vec3_add (n, fp_vec3_cross (fp_vec3_sub (self->vertex[self->loop[facet->first + i]], o),
                                       fp_vec3_sub (self->vertex[self->loop[facet->first + i + 1]], o)));
  return n;
}

/* FALSE where it has no area. */
static gboolean
finish_facet (const FpConvex *self, FpFacet *facet)
{
  const FpVec3 n = facet->count >= 3 ? loop_normal (self, facet) : (FpVec3) { 0, 0, 0 };
  const double length = fp_vec3_length (n);

  if (!(length > 1e-6))
    return FALSE;
  facet->n = fp_vec3_scale (n, 1 / length);
  facet->d = 0;
  for (guint i = 0; i < facet->count; i++)
    facet->d += fp_vec3_dot (facet->n, self->vertex[self->loop[facet->first + i]]) / facet->count;
  return TRUE;
}

static void
find_box (FpConvex *self)
{
  self->box = FP_BOX3_EMPTY;
  for (guint i = 0; i < self->n_vertices; i++)
    fp_box3_add_point (&self->box, self->vertex[i]);
}

/* A facet of the corners that follow in the loop, the same one twice running taken as one. */
static void
add_facet (FpConvex *self, const guint16 *corner, guint n, gboolean inner)
{
  FpFacet *facet = &self->facet[self->n_facets];

  *facet = (FpFacet) { .first = self->n_loop, .inner = inner };
  for (guint i = 0; i < n; i++)
    if (corner[i] != corner[(i + 1) % n])
      self->loop[facet->first + facet->count++] = corner[i];
  if (!finish_facet (self, facet))
    return;
  self->n_loop += facet->count;
  self->n_facets++;
}

static FpConvex *
new_piece (FpPewPool *pool, const FpConvex *like, guint vertices, guint facets, guint loop)
{
  FpConvex *self = TAKE (pool, FpConvex, 1);

  *self = (FpConvex) { .owner = like->owner, .solid = like->solid, .part = like->part, .turned = like->turned };
  self->vertex = TAKE (pool, FpVec3, vertices);
  self->facet = TAKE (pool, FpFacet, facets);
  self->loop = TAKE (pool, guint16, loop);
  return self;
}

static gboolean
is_one_point (FpVec3 a, FpVec3 b)
{
  return fabs (a.x - b.x) < FP_PEW_TOUCH && fabs (a.y - b.y) < FP_PEW_TOUCH && fabs (a.z - b.z) < FP_PEW_TOUCH;
}

static guint16
add_vertex (FpConvex *self, FpVec3 p, guint since)
{
  for (guint i = since; i < self->n_vertices; i++)
    if (is_one_point (self->vertex[i], p))
      return (guint16) i;
  self->vertex[self->n_vertices] = p;
  return (guint16) self->n_vertices++;
}

FpConvex *
fp_convex_between (FpPewPool *pool, const FpConvex *like, const FpVec3 *low, const FpVec3 *high, guint n,
                   const gboolean *inner)
{
  FpConvex *self;
  guint16 corner[2 * CORNERS_MOST];

  if (n < 3 || n > CORNERS_MOST)
    return NULL;
  self = new_piece (pool, like, 2 * n, n + 2, 6 * n);
  for (guint i = 0; i < n; i++)
    corner[i] = add_vertex (self, low[i], i > 0 ? self->n_vertices - 1 : 0);
  for (guint i = 0; i < n; i++)
    corner[n + i] = is_one_point (low[i], high[i]) ? corner[i] : add_vertex (self, high[i], i > 0 ? self->n_vertices - 1
                                                                                                  : self->n_vertices);
  add_facet (self, corner + n, n, FALSE);
  for (guint i = 0; i < n; i++)
    {
      const guint k = (i + 1) % n;
      add_facet (self, (guint16[]) { corner[i], corner[k], corner[n + k], corner[n + i] }, 4, inner != NULL && inner[i]);
    }
  for (guint i = 0; i < n / 2; i++)
    {
      const guint16 swap = corner[i];
      corner[i] = corner[n - 1 - i];
      corner[n - 1 - i] = swap;
    }
  add_facet (self, corner, n, FALSE);
  find_box (self);
  return self->n_facets >= 4 ? self : NULL;
}

FpConvex *
fp_convex_ellipsoid (FpPewPool *pool, const FpConvex *like, FpVec3 centre, const FpVec3 axis[3])
{
  FpConvex *self = new_piece (pool, like, 0, 0, 0);

  self->round = TRUE;
  self->centre = centre;
  for (guint i = 0; i < 3; i++)
    self->axis[i] = axis[i];
  self->box.hi = (FpVec3) { fp_convex_most (self, (FpVec3) { 1, 0, 0 }), fp_convex_most (self, (FpVec3) { 0, 1, 0 }),
                            fp_convex_most (self, (FpVec3) { 0, 0, 1 }) };
  self->box.lo = fp_vec3_sub (fp_vec3_scale (centre, 2), self->box.hi);
  return self;
}

/* --- facets for an ellipsoid ------------------------------------------------- */

#define MERIDIANS 24
#define PARALLELS 12

static FpVec3
point_on (const FpConvex *self, guint meridian, guint parallel)
{
  const double lat = G_PI * parallel / PARALLELS - G_PI / 2, lon = 2 * G_PI * meridian / MERIDIANS;
  FpVec3 p = fp_vec3_add (self->centre, fp_vec3_scale (self->axis[2], sin (lat)));

  p = fp_vec3_add (p, fp_vec3_scale (self->axis[0], cos (lat) * cos (lon)));
  return fp_vec3_add (p, fp_vec3_scale (self->axis[1], cos (lat) * sin (lon)));
}

FpConvex *
fp_convex_facetted (FpPewPool *pool, const FpConvex *ellipsoid)
{
  FpConvex *self = new_piece (pool, ellipsoid, MERIDIANS * (PARALLELS - 1) + 2, MERIDIANS * PARALLELS,
                              4 * MERIDIANS * PARALLELS);
  guint16 index[PARALLELS + 1][MERIDIANS];

  for (guint p = 0; p <= PARALLELS; p++)
    for (guint m = 0; m < MERIDIANS; m++)
      {
        const gboolean again = m > 0 && (p == 0 || p == PARALLELS);
        if (!again)
          self->vertex[self->n_vertices++] = point_on (ellipsoid, m, p);
        index[p][m] = (guint16) (self->n_vertices - 1);
      }
  for (guint p = 0; p < PARALLELS; p++)
    for (guint m = 0; m < MERIDIANS; m++)
      {
        const guint k = (m + 1) % MERIDIANS;
        add_facet (self, (guint16[]) { index[p][m], index[p][k], index[p + 1][k], index[p + 1][m] }, 4, FALSE);
      }
  find_box (self);
  return self;
}

/* --- cutting ----------------------------------------------------------------- */

typedef struct
{
  const FpConvex *from;
  FpConvex       *to;
  double         *over;   /* of each vertex of `from`: how far beyond the plane */
  guint16        *kept;   /* its index in `to`                                  */
  struct { guint16 a, b, at; } *crossed;
  guint           n_crossed;
} Cut;

/* The vertex where the edge from @a to @b meets the plane: the same for both facets beside it. */
static guint16
crossing (Cut *cut, guint16 a, guint16 b)
{
  const guint16 lo = MIN (a, b), hi = MAX (a, b);
  const double t = cut->over[lo] / (cut->over[lo] - cut->over[hi]);
  const FpVec3 p = cut->from->vertex[lo], q = cut->from->vertex[hi];

  for (guint i = 0; i < cut->n_crossed; i++)
    if (cut->crossed[i].a == lo && cut->crossed[i].b == hi)
      return cut->crossed[i].at;
  cut->to->vertex[cut->to->n_vertices] = fp_vec3_add (p, fp_vec3_scale (fp_vec3_sub (q, p), t));
  cut->crossed[cut->n_crossed].a = lo;
  cut->crossed[cut->n_crossed].b = hi;
  cut->crossed[cut->n_crossed++].at = (guint16) cut->to->n_vertices;
  return (guint16) cut->to->n_vertices++;
}

static void
cut_facet (Cut *cut, const FpFacet *facet)
{
  guint16 corner[2 * CORNERS_MOST];
  guint n = 0;

  for (guint i = 0; i < facet->count; i++)
    {
      const guint16 a = cut->from->loop[facet->first + i], b = cut->from->loop[facet->first + (i + 1) % facet->count];
      if (cut->over[a] <= 0)
        corner[n++] = cut->kept[a];
      if ((cut->over[a] < 0 && cut->over[b] > 0) || (cut->over[a] > 0 && cut->over[b] < 0))
        corner[n++] = crossing (cut, a, b);
    }
  if (n >= 3)
    add_facet (cut->to, corner, n, facet->inner);
}

typedef struct { double angle; guint16 vertex; } Around;

static int
by_angle (gconstpointer a, gconstpointer b)
{
  const Around *p = a, *q = b;
  return (p->angle > q->angle) - (p->angle < q->angle);
}

/* Closes what was opened: all vertices in the plane, in order about their middle. */
static void
add_cap (Cut *cut, FpVec3 n, const guint16 *on, guint count, gboolean inner)
{
  const FpVec3 up = fabs (n.z) < 0.9 ? (FpVec3) { 0, 0, 1 } : (FpVec3) { 1, 0, 0 };
  const FpVec3 u = fp_vec3_cross (up, n), v = fp_vec3_cross (n, u);
  FpVec3 middle = { 0, 0, 0 };
  Around around[2 * CORNERS_MOST];
  guint16 corner[2 * CORNERS_MOST];

  for (guint i = 0; i < count; i++)
    middle = fp_vec3_add (middle, fp_vec3_scale (cut->to->vertex[on[i]], 1.0 / count));
  for (guint i = 0; i < count; i++)
    {
      const FpVec3 p = fp_vec3_sub (cut->to->vertex[on[i]], middle);
      around[i] = (Around) { atan2 (fp_vec3_dot (p, v), fp_vec3_dot (p, u)), on[i] };
    }
  qsort (around, count, sizeof *around, by_angle);
  for (guint i = 0; i < count; i++)
    corner[i] = around[i].vertex;
  add_facet (cut->to, corner, count, inner);
}

/* How far each vertex lies beyond the plane; those as good as in it lie in it.  FALSE where none lies within. */
static gboolean
measure (Cut *cut, FpVec3 n, double d)
{
  gboolean within = FALSE;

  for (guint i = 0; i < cut->from->n_vertices; i++)
    {
      const double over = fp_vec3_dot (n, cut->from->vertex[i]) - d;
      cut->over[i] = fabs (over) < FP_PEW_TOUCH / 2 ? 0 : over;
      within = within || cut->over[i] < 0;
    }
  return within;
}

FpConvex *
fp_convex_cut (FpPewPool *pool, const FpConvex *self, FpVec3 n, double d, gboolean inner)
{
  const guint edges = self->n_loop / 2, many = self->n_vertices + edges;
  Cut cut = { self, NULL, TAKE (pool, double, self->n_vertices), TAKE (pool, guint16, self->n_vertices), NULL, 0 };
  guint16 on[2 * CORNERS_MOST];
  guint n_on = 0;

  if (many > 2 * CORNERS_MOST || !measure (&cut, n, d))
    return NULL;
  cut.to = new_piece (pool, self, many, self->n_facets + 1, self->n_loop + 4 * self->n_facets + edges + 4);
  cut.crossed = fp_pew_pool_take (pool, sizeof *cut.crossed * edges);
  for (guint i = 0; i < self->n_vertices; i++)
    if (cut.over[i] <= 0)
      {
        cut.kept[i] = (guint16) cut.to->n_vertices;
        cut.to->vertex[cut.to->n_vertices++] = self->vertex[i];
        if (cut.over[i] == 0)
          on[n_on++] = cut.kept[i];
      }
  for (guint i = 0; i < self->n_facets; i++)
    cut_facet (&cut, &self->facet[i]);
  for (guint i = 0; i < cut.n_crossed; i++)
    on[n_on++] = cut.crossed[i].at;
  if (n_on >= 3)
    add_cap (&cut, n, on, n_on, inner);
  find_box (cut.to);
  return cut.to->n_facets >= 4 ? cut.to : NULL;
}

/* --- how far it reaches -------------------------------------------------------- */

static double
half_width (const FpConvex *self, FpVec3 n)
{
  const double a = fp_vec3_dot (n, self->axis[0]), b = fp_vec3_dot (n, self->axis[1]), c = fp_vec3_dot (n, self->axis[2]);
  return sqrt (a * a + b * b + c * c);
}

double
fp_convex_most (const FpConvex *self, FpVec3 n)
{
  double most = -G_MAXDOUBLE;

  if (self->round)
    return fp_vec3_dot (n, self->centre) + half_width (self, n);
  for (guint i = 0; i < self->n_vertices; i++)
    {
      const double at = fp_vec3_dot (n, self->vertex[i]);
      most = at > most ? at : most;
    }
  return most;
}

double
fp_convex_least (const FpConvex *self, FpVec3 n)
{
  double least = G_MAXDOUBLE;

  if (self->round)
    return fp_vec3_dot (n, self->centre) - half_width (self, n);
  for (guint i = 0; i < self->n_vertices; i++)
    {
      const double at = fp_vec3_dot (n, self->vertex[i]);
      least = at < least ? at : least;
    }
  return least;
}

/* --- in the picture ------------------------------------------------------------ */

/* The planes that touch both the ellipsoid and the eye, as lines of the picture: K = E - c c', E the sum of the half-axes
 * times themselves, is the dual of the outline's conic (R. Hartley, A. Zisserman, "Multiple View Geometry", 2nd ed., 8.3,
 * from memory: C* = P Q* P').  Of an ellipse at t with shape S it is, but for a factor, [S - t t', -t; -t', -1]. */
void
fp_convex_ellipse (const FpConvex *self, FpPoint *at, FpPoint *a, FpPoint *b)
{
  const FpVec3 c = self->centre;
  double xx = -c.x * c.x, zz = -c.z * c.z, yy = -c.y * c.y, xz = -c.x * c.z, xy = -c.x * c.y, zy = -c.z * c.y;
  double sxx, szz, sxz, angle, along;

  for (guint i = 0; i < 3; i++)
    {
      const FpVec3 u = self->axis[i];
      xx += u.x * u.x;
      zz += u.z * u.z;
      yy += u.y * u.y;
      xz += u.x * u.z;
      xy += u.x * u.y;
      zy += u.z * u.y;
    }
  *at = (FpPoint) { xy / yy, zy / yy };
  sxx = at->x * at->x - xx / yy;
  szz = at->y * at->y - zz / yy;
  sxz = at->x * at->y - xz / yy;
  /* Its axes: the first is that which lies nearer to the level. */
  angle = 0.5 * atan2 (2 * sxz, sxx - szz);
  angle -= fabs (angle) > G_PI / 4 ? copysign (G_PI / 2, angle) : 0;
  along = sxx * cos (angle) * cos (angle) + 2 * sxz * cos (angle) * sin (angle) + szz * sin (angle) * sin (angle);
  *a = (FpPoint) { sqrt (MAX (along, 0)) * cos (angle), sqrt (MAX (along, 0)) * sin (angle) };
  along = sxx + szz - along;
  *b = (FpPoint) { -sqrt (MAX (along, 0)) * sin (angle), sqrt (MAX (along, 0)) * cos (angle) };
}

static void
outline_round (FpPewPool *pool, FpConvex *self)
{
  const double wide = 1 / cos (G_PI / ROUND_CORNERS);
  FpPoint at, a, b;

  fp_convex_ellipse (self, &at, &a, &b);
  self->outline = TAKE (pool, FpPoint, ROUND_CORNERS);
  self->n_outline = ROUND_CORNERS;
  for (guint i = 0; i < ROUND_CORNERS; i++)
    {
      const double c = wide * cos (2 * G_PI * i / ROUND_CORNERS), s = wide * sin (2 * G_PI * i / ROUND_CORNERS);
      self->outline[i] = (FpPoint) { at.x + c * a.x + s * b.x, at.y + c * a.y + s * b.y };
    }
}

static double
turn (FpPoint a, FpPoint b, FpPoint c)
{
  return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
}

static void
sort_points (FpPoint *pt, guint n)
{
  for (guint i = 1; i < n; i++)
    {
      const FpPoint p = pt[i];
      guint k = i;
      for (; k > 0 && (pt[k - 1].x > p.x || (pt[k - 1].x == p.x && pt[k - 1].y > p.y)); k--)
        pt[k] = pt[k - 1];
      pt[k] = p;
    }
}

/* The convex hull of what the vertices come to, by Andrew's chains from left to right and back. */
static void
outline_facets (FpPewPool *pool, FpConvex *self)
{
  const guint n = self->n_vertices;
  FpPoint *pt = TAKE (pool, FpPoint, n), *hull = TAKE (pool, FpPoint, 2 * n);
  guint k = 0, low;

  for (guint i = 0; i < n; i++)
    pt[i] = fp_pew_project (self->vertex[i]);
  sort_points (pt, n);
  for (guint i = 0; i < n; i++)
    {
      while (k >= 2 && turn (hull[k - 2], hull[k - 1], pt[i]) <= 0)
        k--;
      hull[k++] = pt[i];
    }
  low = k + 1;
  for (guint i = n - 1; i-- > 0;)
    {
      while (k >= low && turn (hull[k - 2], hull[k - 1], pt[i]) <= 0)
        k--;
      hull[k++] = pt[i];
    }
  self->outline = hull;
  self->n_outline = k > 1 ? k - 1 : k;
}

void
fp_convex_outline (FpPewPool *pool, FpConvex *self)
{
  if (self->round)
    outline_round (pool, self);
  else
    outline_facets (pool, self);
  self->seen = fp_outline_box (self->outline, self->n_outline);
}
