/* SPDX-License-Identifier: GPL-3.0-or-later */
/* projection-solids.c - faces and edges of solids, as the viewer has them
 *
 * Only faces that look towards the viewer are kept: together they cover all
 * that a closed solid covers.  So only edges that border such a face can be
 * seen; the others lie behind.
 */
#include "projection-private.h"

#include <math.h>

/* A face that turns less than this towards the viewer (sine) is seen edge-on. */
#define EDGE_ON 1e-5

/* Corners of a circle: in a plan it is seen; elsewhere only its extremes are, and they are exact. */
#define PLAN_SAGITTA 0.4
#define CORNERS_EDGE_ON 16
#define CORNERS_MAX 72

/* Rings of the half of an ellipsoid that faces the viewer. */
#define ELLIPSOID_RINGS 4
#define ELLIPSOID_CORNERS 32

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
  g_free (self);
}

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

/* --- faces and edges, cut off at the plane ------------------------------------ */

/* Newell's normal: right for any flat loop, however its corners lie. */
static FpVec3
normal_of (const FpVec3 *pt, guint n)
{
  FpVec3 sum = { 0, 0, 0 };

  for (guint i = 1; i + 1 < n; i++)
    sum = fp_vec3_add (sum, fp_vec3_cross (fp_vec3_sub (pt[i], pt[0]), fp_vec3_sub (pt[i + 1], pt[0])));
  return sum;
}

static FpVec3
at_plane (FpVec3 a, FpVec3 b, double near)
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
          const FpVec3 crossing = at_plane (a, b, self->near);
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
static int
add_face (FpSketch *self, const FpVec3 *pt, guint n, const FpFace *like)
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

static void
add_edge (FpSketch *self, FpVec3 a, FpVec3 b, int left, int right, const FpFace *like)
{
  FpEdge edge = { a, b, like->owner, like->solid, like->convex, { left, right }, FP_EDGE_SHARP,
                  like->weight, FP_PEN_OUTLINE };
  const gboolean keep_a = a.z <= self->near, keep_b = b.z <= self->near;

  if (!keep_a && !keep_b)
    return;
  if (!keep_a)
    edge.a = at_plane (b, a, self->near);
  if (!keep_b)
    edge.b = at_plane (a, b, self->near);
  g_array_append_val (self->edges, edge);
}

/* A sharp edge is seen with either face; an edge between facets of a curved surface only where it turns away. */
static void
add_edge_between (FpSketch *self, FpVec3 a, FpVec3 b, int left, int right, gboolean smooth, const FpFace *like)
{
  if (smooth ? (left >= 0) != (right >= 0) : (left >= 0 || right >= 0))
    add_edge (self, a, b, left, right, like);
}

/* --- cut faces ------------------------------------------------------------------ */

/* A face in the cutting plane: filled with a border of its own, or like any other. */
static void
add_cap (FpSketch *self, const FpPoint *pt, guint n, const FpFace *like, gboolean cut)
{
  g_autofree FpVec3 *corner = g_new (FpVec3, n);
  FpFace face = *like;
  int index;

  for (guint i = 0; i < n; i++)
    corner[i] = (FpVec3) { pt[i].x, pt[i].y, self->near };
  face.cut = cut;
  index = add_face (self, corner, n, &face);
  if (index < 0)
    return;
  if (cut)
    {
      const FpCutPiece piece = { g_memdup2 (pt, n * sizeof (FpPoint)), n, face.owner, face.fabric, self->near };
      g_array_append_val (self->cuts, piece);
      return;
    }
  for (guint i = 0; i < n; i++)
    add_edge (self, corner[i], corner[(i + 1) % n], index, -1, &face);
}

static int
compare_across (gconstpointer a, gconstpointer b)
{
  const double d = ((const FpVec3 *) a)->x - ((const FpVec3 *) b)->x;

  return (d > 0) - (d < 0);
}

/* Foot and top of a prism where its outline crosses the plane: between each odd
 * crossing and the next lies a cut face. */
static void
add_prism_caps (FpSketch *self, const FpVec3 *low, const FpVec3 *high, guint n, const FpFace *like, gboolean cut)
{
  g_autoptr (GArray) at = g_array_new (FALSE, FALSE, sizeof (FpVec3)); /* h, foot, top */

  for (guint i = 0; i < n; i++)
    {
      const guint k = (i + 1) % n;
      if ((low[i].z <= self->near) != (low[k].z <= self->near))
        {
          const FpVec3 foot = at_plane (low[i], low[k], self->near), top = at_plane (high[i], high[k], self->near);
          const FpVec3 crossing = { foot.x, foot.y, top.y };
          g_array_append_val (at, crossing);
        }
    }
  g_array_sort (at, compare_across);
  for (guint i = 0; i + 1 < at->len; i += 2)
    {
      const FpVec3 a = g_array_index (at, FpVec3, i), b = g_array_index (at, FpVec3, i + 1);
      const FpPoint quad[4] = { { a.x, a.y }, { b.x, b.y }, { b.x, b.z }, { a.x, a.z } };
      add_cap (self, quad, 4, like, cut);
    }
}

/* A frustum cut upright, @off its axis: a trapezium through the axis, otherwise bounded by hyperbolas. */
static void
add_round_cap (FpSketch *self, const FpSolid *s, const FpFace *like, gboolean cut)
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
    add_cap (self, right, 2 * n, like, cut);
}

/* --- prisms and frusta: two rings of corners -------------------------------------- */

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

  return add_face (self, side, 4, like);
}

static int
add_foot (FpSketch *self, const Rings *r, const FpFace *like)
{
  g_autofree FpVec3 *backwards = g_new (FpVec3, r->n);

  for (guint i = 0; i < r->n; i++)
    backwards[i] = r->low[r->n - 1 - i];
  return add_face (self, backwards, r->n, like);
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
  top = add_face (self, r->high, r->n, &top_like);
  foot = add_foot (self, r, like);
  for (guint i = 0; i < r->n; i++)
    {
      const guint k = (i + 1) % r->n, before = (i + r->n - 1) % r->n;
      if (!r->top_cut)
        add_edge_between (self, r->high[i], r->high[k], side[i], top, FALSE, like);
      add_edge_between (self, r->low[i], r->low[k], side[i], foot, FALSE, like);
      add_edge_between (self, r->low[i], r->high[i], side[before], side[i], r->smooth, like);
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

static void
add_prism (FpSketch *self, const FpSolid *s, const FpSketchHow *how, FpFace *like)
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
    add_prism_caps (self, r.low, r.high, r.n, like, how->cut_face);
}

static guint
corners_of_circle (FpViewId view, double radius)
{
  guint quarter;

  if (view != FP_VIEW_PLAN)
    return CORNERS_EDGE_ON;
  quarter = (guint) ceil (G_PI / acos (1 - MIN (PLAN_SAGITTA / radius, 0.1)) / 4);
  return MIN (MAX (4 * quarter, 12), CORNERS_MAX);
}

static void
add_frustum (FpSketch *self, const FpSolid *s, const FpSketchHow *how, FpFace *like)
{
  g_auto (Rings) r = rings_new (corners_of_circle (self->view, MAX (s->r0, s->r1)));
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
    add_round_cap (self, s, like, how->cut_face);
}

/* --- ellipsoids --------------------------------------------------------------------- */

/* An ellipsoid as the image of the unit sphere: p = centre + columns · s. */
typedef struct { FpVec3 centre, column[3]; } Affine;

static FpVec3
image_of (const Affine *f, FpVec3 s)
{
  FpVec3 p = f->centre;

  p = fp_vec3_add (p, fp_vec3_scale (f->column[0], s.x));
  p = fp_vec3_add (p, fp_vec3_scale (f->column[1], s.y));
  return fp_vec3_add (p, fp_vec3_scale (f->column[2], s.z));
}

static Affine
affine_of (const FpSketch *sketch, const FpSolid *s)
{
  const FpPlace turn = { 0, 0, s->turn };
  const FpPoint u = fp_place_point (&turn, (FpPoint) { s->rx, 0 }), w = fp_place_point (&turn, (FpPoint) { 0, s->ry });

  return (Affine) { fp_sketch_point (sketch, (FpVec3) { s->cx, s->cy, s->cz }),
                    { fp_sketch_point (sketch, (FpVec3) { u.x, u.y, 0 }),
                      fp_sketch_point (sketch, (FpVec3) { w.x, w.y, 0 }),
                      fp_sketch_point (sketch, (FpVec3) { 0, 0, s->rz }) } };
}

static FpVec3
unit (FpVec3 v)
{
  return fp_vec3_scale (v, 1 / fp_vec3_length (v));
}

/* How the depth grows over the sphere. */
static FpVec3
depth_of (const Affine *f)
{
  return (FpVec3) { f->column[0].z, f->column[1].z, f->column[2].z };
}

/* What the line of sight is the image of: the outline of the ellipsoid comes from the circle square to it.
 * (The columns are square to each other.) */
static FpVec3
sight_of (const Affine *f)
{
  const FpVec3 k = depth_of (f);

  return (FpVec3) { k.x / fp_vec3_dot (f->column[0], f->column[0]), k.y / fp_vec3_dot (f->column[1], f->column[1]),
                    k.z / fp_vec3_dot (f->column[2], f->column[2]) };
}

/* Image of a point of the sphere, @up towards the pole (its sine) and @turn round it (radians). */
static FpVec3
on_sphere (const Affine *f, FpVec3 towards, double up, double turn)
{
  const FpVec3 pole = unit (towards);
  const FpVec3 any = fabs (pole.x) < 0.6 ? (FpVec3) { 1, 0, 0 } : (FpVec3) { 0, 1, 0 };
  const FpVec3 e1 = unit (fp_vec3_cross (any, pole)), e2 = fp_vec3_cross (pole, e1);
  const double across = sqrt (MAX (1 - up * up, 0.0));
  FpVec3 s = fp_vec3_scale (pole, up);

  s = fp_vec3_add (s, fp_vec3_scale (e1, across * cos (turn)));
  s = fp_vec3_add (s, fp_vec3_scale (e2, across * sin (turn)));
  return image_of (f, s);
}

static void
add_dome_facet (FpSketch *self, const Affine *f, guint ring, guint i, const FpFace *like)
{
  const double low = sin (G_PI / 2 * ring / ELLIPSOID_RINGS), high = sin (G_PI / 2 * (ring + 1) / ELLIPSOID_RINGS);
  const double t0 = 2 * G_PI * i / ELLIPSOID_CORNERS, t1 = 2 * G_PI * (i + 1) / ELLIPSOID_CORNERS;
  const FpVec3 sight = sight_of (f);
  const FpVec3 a = on_sphere (f, sight, low, t0), b = on_sphere (f, sight, low, t1);
  const FpVec3 c = on_sphere (f, sight, high, t1), d = on_sphere (f, sight, high, t0);
  const FpVec3 lower[3] = { a, b, c }, upper[3] = { a, c, d };
  const int left = add_face (self, lower, 3, like);

  if (ring + 1 < ELLIPSOID_RINGS)
    add_face (self, upper, 3, like);
  if (ring == 0)
    add_edge (self, a, b, left, -1, like);
}

static void
add_ellipsoid (FpSketch *self, const FpSolid *s, const FpSketchHow *how, FpFace *like)
{
  const Affine f = affine_of (self, s);
  const double up = (self->near - f.centre.z) / fp_vec3_length (depth_of (&f)); /* where the plane cuts the sphere */
  FpPoint cap[ELLIPSOID_CORNERS];

  if (up <= -1)
    return;
  like->convex = TRUE;
  for (guint ring = 0; ring < ELLIPSOID_RINGS; ring++)
    for (guint i = 0; i < ELLIPSOID_CORNERS; i++)
      add_dome_facet (self, &f, ring, i, like);
  if (up >= 1)
    return;
  for (guint i = 0; i < ELLIPSOID_CORNERS; i++)
    {
      const FpVec3 p = on_sphere (&f, depth_of (&f), up, 2 * G_PI * i / ELLIPSOID_CORNERS);
      cap[i] = (FpPoint) { p.x, p.y };
    }
  add_cap (self, cap, ELLIPSOID_CORNERS, like, how->cut_face);
}

/* --- one solid ------------------------------------------------------------------------ */

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
  FpFace like = { .owner = solid->owner, .solid = how->index, .fabric = how->fabric,
                  .weight = weight_of (self, solid) };

  switch (solid->shape)
    {
    case FP_SOLID_PRISM: add_prism (self, solid, how, &like); break;
    case FP_SOLID_ROUND: add_frustum (self, solid, how, &like); break;
    case FP_SOLID_ELLIPSOID: add_ellipsoid (self, solid, how, &like); break;
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
      piece.n = corners_of_circle (FP_VIEW_PLAN, r);
      piece.pt = g_new (FpPoint, piece.n);
      for (guint i = 0; i < piece.n; i++)
        piece.pt[i] = fp_place_point (&(FpPlace) { s->cx, s->cy, 360.0 * i / piece.n }, (FpPoint) { r, 0 });
    }
  else
    return;
  g_array_append_val (self->overhead, piece);
}
