/* SPDX-License-Identifier: GPL-3.0-or-later */
/* projection-hide.c - what hides what, and with which pen the rest is drawn
 *
 * Along an edge everything is linear: a face hides it where the edge lies
 * within the face's outline and deeper than its plane.  Both are solved for,
 * nothing is sampled.  Only the choice of pen looks at one point on either
 * side of a visible piece.
 */
#include "projection-private.h"

#include <math.h>

/* All mm.  Coordinates are good to 1e-9 of them; nothing that is built is finer than 0.1. */
#define TOUCH 1e-4       /* an edge this near the border of a face lies within it  */
#define IN_FRONT 0.01    /* a face must lie this much nearer the viewer to hide    */
#define SHORTEST 0.05    /* a shorter visible piece is not drawn                   */
#define HIDDEN_LEAST 1e-3
#define ASIDE 0.05       /* where the sides of a piece are looked at               */
#define FLUSH 0.2        /* faces that meet at less than this step are one surface */
#define SAME_TURN 0.978  /* cosine of 12 degrees: facets of one curved surface     */

typedef struct { double a, b; } Span;

struct _FpFaceGrid
{
  const FpSketch *sketch;
  FpBox    box;
  guint    nx, ny;
  double   cell_x, cell_y;
  guint   *start;          /* nx * ny + 1: where each cell's faces begin  */
  guint   *face;
  guint   *stamp;          /* of each face: when it was last looked at    */
  guint    now;
  FpBox   *box_of;         /* each face's, and how near it comes, side by side: asked more often than all else of it */
  double  *depth_of;
  guint   *found, n_found; /* faces                                       */
  GArray  *hidden;         /* Span                                        */
  GArray  *breaks;         /* double                                      */
  double  *across;         /* distances of a face's corners from a line   */
};

static const FpFace *
face_at (const FpFaceGrid *self, guint i)
{
  return &g_array_index (self->sketch->faces, FpFace, i);
}

static const FpVec3 *
corners (const FpFaceGrid *self, const FpFace *face)
{
  return &g_array_index (self->sketch->points, FpVec3, face->first);
}

/* --- the cells ------------------------------------------------------------------ */

static guint
cell_along (double v, double from, double size, guint n)
{
  const double i = floor ((v - from) / size);

  return i < 0 ? 0 : i >= n ? n - 1 : (guint) i;
}

typedef struct { guint x0, y0, x1, y1; } Cells;

static Cells
cells_of (const FpFaceGrid *self, const FpBox *box)
{
  return (Cells) { cell_along (box->x0 - 2 * ASIDE, self->box.x0, self->cell_x, self->nx),
                   cell_along (box->y0 - 2 * ASIDE, self->box.y0, self->cell_y, self->ny),
                   cell_along (box->x1 + 2 * ASIDE, self->box.x0, self->cell_x, self->nx),
                   cell_along (box->y1 + 2 * ASIDE, self->box.y0, self->cell_y, self->ny) };
}

static void
choose_cells (FpFaceGrid *self, guint n_faces)
{
  const double w = MAX (self->box.x1 - self->box.x0, 1), h = MAX (self->box.y1 - self->box.y0, 1);
  const double per_side = 3 * sqrt (MAX (n_faces, 1)); /* measured: of 1 to 6 the fastest */

  self->nx = (guint) CLAMP (ceil (per_side * sqrt (w / h)), 1, 600);
  self->ny = (guint) CLAMP (ceil (per_side * sqrt (h / w)), 1, 600);
  self->cell_x = w / self->nx;
  self->cell_y = h / self->ny;
}

/* Counting sort: @place FALSE counts into start[], TRUE places by it. */
static void
sort_faces (FpFaceGrid *self, gboolean place)
{
  for (guint i = 0; i < self->sketch->faces->len; i++)
    {
      const Cells c = cells_of (self, &self->box_of[i]);
      for (guint y = c.y0; y <= c.y1; y++)
        for (guint x = c.x0; x <= c.x1; x++)
          {
            guint *slot = &self->start[y * self->nx + x];
            if (place)
              self->face[--*slot] = i;
            else
              ++*slot;
          }
    }
}

FpFaceGrid *
fp_face_grid_new (const FpSketch *sketch)
{
  FpFaceGrid *self = g_new0 (FpFaceGrid, 1);
  guint largest = 1, sum = 0;

  self->sketch = sketch;
  self->box = FP_BOX_EMPTY;
  self->box_of = g_new (FpBox, MAX (sketch->faces->len, 1));
  self->depth_of = g_new (double, MAX (sketch->faces->len, 1));
  for (guint i = 0; i < sketch->faces->len; i++)
    {
      self->box_of[i] = face_at (self, i)->box;
      self->depth_of[i] = face_at (self, i)->depth_max;
      fp_box_add_box (&self->box, &self->box_of[i]);
      largest = MAX (largest, face_at (self, i)->n);
    }
  if (fp_box_is_empty (&self->box))
    self->box = (FpBox) { 0, 0, 1, 1 };
  choose_cells (self, sketch->faces->len);
  self->start = g_new0 (guint, (gsize) self->nx * self->ny + 1);
  sort_faces (self, FALSE);
  for (gsize i = 0; i <= (gsize) self->nx * self->ny; i++)
    self->start[i] = sum += self->start[i];
  self->face = g_new (guint, MAX (sum, 1));
  sort_faces (self, TRUE);
  self->stamp = g_new0 (guint, MAX (sketch->faces->len, 1));
  self->across = g_new (double, largest);
  self->found = g_new (guint, MAX (sketch->faces->len, 1));
  self->hidden = g_array_new (FALSE, FALSE, sizeof (Span));
  self->breaks = g_array_new (FALSE, FALSE, sizeof (double));
  return self;
}

void
fp_face_grid_free (FpFaceGrid *self)
{
  if (self == NULL)
    return;
  g_free (self->start);
  g_free (self->face);
  g_free (self->stamp);
  g_free (self->across);
  g_free (self->box_of);
  g_free (self->depth_of);
  g_free (self->found);
  g_array_unref (self->hidden);
  g_array_unref (self->breaks);
  g_free (self);
}

static gboolean
boxes_touch (const FpBox *a, const FpBox *b)
{
  return a->x0 <= b->x1 + 2 * ASIDE && b->x0 <= a->x1 + 2 * ASIDE
         && a->y0 <= b->y1 + 2 * ASIDE && b->y0 <= a->y1 + 2 * ASIDE;
}

/* Every face near a box, once, into self->found. */
static void
find_faces (FpFaceGrid *self, const FpBox *box)
{
  const Cells c = cells_of (self, box);

  self->now++;
  self->n_found = 0;
  for (guint y = c.y0; y <= c.y1; y++)
    for (guint x = c.x0; x <= c.x1; x++)
      for (guint i = self->start[y * self->nx + x]; i < self->start[y * self->nx + x + 1]; i++)
        {
          const guint face = self->face[i];
          if (self->stamp[face] == self->now)
            continue;
          self->stamp[face] = self->now;
          if (boxes_touch (&self->box_of[face], box))
            self->found[self->n_found++] = face;
        }
}

/* --- points ----------------------------------------------------------------------- */

static double
depth_at (const FpFaceGrid *self, const FpFace *face, FpPoint p)
{
  const FpVec3 o = corners (self, face)[0];

  return o.z + face->slope_h * (p.x - o.x) + face->slope_v * (p.y - o.y);
}

static inline gboolean
is_in_box (const FpBox *box, FpPoint p)
{
  return p.x >= box->x0 && p.x <= box->x1 && p.y >= box->y0 && p.y <= box->y1;
}

/* Where it is in its box. */
static gboolean
face_contains (const FpFaceGrid *self, const FpFace *face, FpPoint p)
{
  const FpVec3 *pt = corners (self, face);
  gboolean inside = FALSE;

  for (guint i = 0, k = face->n - 1; i < face->n; k = i++)
    if ((pt[i].y > p.y) != (pt[k].y > p.y)
        && p.x < pt[k].x + (pt[i].x - pt[k].x) * (p.y - pt[k].y) / (pt[i].y - pt[k].y))
      inside = !inside;
  return inside;
}

static guint
cell_at (const FpFaceGrid *self, FpPoint p)
{
  return cell_along (p.y, self->box.y0, self->cell_y, self->ny) * self->nx
         + cell_along (p.x, self->box.x0, self->cell_x, self->nx);
}

typedef struct { double depth; int face; } Nearest;

#define NONE_NEAR ((Nearest) { -G_MAXDOUBLE, -1 })

/* Of equals the one with the highest number: in whichever order one looks at them, the same is found. */
static inline void
look_at (const FpFaceGrid *self, guint index, FpPoint p, Nearest *nearest)
{
  const double most = self->depth_of[index];
  const FpFace *face;
  double depth;

  if (most < nearest->depth || !is_in_box (&self->box_of[index], p))
    return;
  face = face_at (self, index);
  depth = MIN (depth_at (self, face, p), most);
  if ((depth > nearest->depth || (depth == nearest->depth && (int) index > nearest->face))
      && face_contains (self, face, p))
    *nearest = (Nearest) { depth, (int) index };
}

int
fp_face_grid_nearest (const FpFaceGrid *self, FpPoint p)
{
  const guint cell = cell_at (self, p);
  Nearest nearest = NONE_NEAR;

  for (guint i = self->start[cell]; i < self->start[cell + 1]; i++)
    look_at (self, self->face[i], p, &nearest);
  return nearest.face;
}

/* --- along an edge ------------------------------------------------------------------ */

/* An edge in the view: from a, along the unit vector u, length long; t is in mm. */
typedef struct
{
  const FpEdge *edge;
  FpPoint a, u;
  double  length, depth, slope; /* of the depth, per mm */
} Course;

static FpPoint
point_at (const Course *c, double t)
{
  return (FpPoint) { c->a.x + t * c->u.x, c->a.y + t * c->u.y };
}

static int
compare_doubles (gconstpointer a, gconstpointer b)
{
  const double d = *(const double *) a - *(const double *) b;

  return (d > 0) - (d < 0);
}

static int
compare_spans (gconstpointer a, gconstpointer b)
{
  return compare_doubles (&((const Span *) a)->a, &((const Span *) b)->a);
}

/* As a rule there are few, and most are in order already. */
#define FEW 48

static void
sort_doubles (GArray *values)
{
  double *v = (double *) (gpointer) values->data;

  if (values->len > FEW)
    {
      g_array_sort (values, compare_doubles);
      return;
    }
  for (guint i = 1; i < values->len; i++)
    {
      const double value = v[i];
      guint k = i;
      for (; k > 0 && v[k - 1] > value; k--)
        v[k] = v[k - 1];
      v[k] = value;
    }
}

static void
sort_spans (GArray *spans)
{
  Span *s = (Span *) (gpointer) spans->data;

  if (spans->len > FEW)
    {
      g_array_sort (spans, compare_spans);
      return;
    }
  for (guint i = 1; i < spans->len; i++)
    {
      const Span span = s[i];
      guint k = i;
      for (; k > 0 && s[k - 1].a > span.a; k--)
        s[k] = s[k - 1];
      s[k] = span;
    }
}

/* Signed distances of the face's corners from the course, left of it positive; returns whether any lie on either side
 * of it, or within @margin of it. */
static gboolean
measure_across (FpFaceGrid *self, const FpFace *face, const Course *c, double margin)
{
  const FpVec3 *pt = corners (self, face);
  double least = G_MAXDOUBLE, most = -G_MAXDOUBLE;

  for (guint i = 0; i < face->n; i++)
    {
      const double across = c->u.x * (pt[i].y - c->a.y) - c->u.y * (pt[i].x - c->a.x);
      self->across[i] = across;
      least = MIN (least, across);
      most = MAX (most, across);
    }
  return least <= margin && most >= -margin;
}

static double
along (const Course *c, FpVec3 p)
{
  return c->u.x * (p.x - c->a.x) + c->u.y * (p.y - c->a.y);
}

/* Where the course, moved sideways by @shift, enters and leaves the face's outline: into self->breaks, sorted. */
static void
cross_outline (FpFaceGrid *self, const FpFace *face, const Course *c, double shift)
{
  const FpVec3 *pt = corners (self, face);

  g_array_set_size (self->breaks, 0);
  for (guint i = 0, k = face->n - 1; i < face->n; k = i++)
    {
      const double si = self->across[i] - shift, sk = self->across[k] - shift;
      if ((si > 0) != (sk > 0))
        {
          const double ti = along (c, pt[i]), tk = along (c, pt[k]);
          const double t = tk + (ti - tk) * sk / (sk - si);
          g_array_append_val (self->breaks, t);
        }
    }
  sort_doubles (self->breaks);
}

/* Where the face's plane lies in front of the course. */
static Span
in_front (const FpFaceGrid *self, const FpFace *face, const Course *c)
{
  const double slope = face->slope_h * c->u.x + face->slope_v * c->u.y - c->slope;
  const double margin = depth_at (self, face, c->a) - c->depth - IN_FRONT;
  Span span = { 0, c->length };

  if (slope > 0)
    span.a = MAX (span.a, -margin / slope);
  else if (slope < 0)
    span.b = MIN (span.b, margin / -slope);
  else if (!(margin > 0))
    span.b = span.a;
  return span;
}

/* Returns whether the whole course is hidden. */
static gboolean
hide_behind (FpFaceGrid *self, const FpFace *face, const Course *c)
{
  const Span front = in_front (self, face, c);

  if (!(front.a < front.b) || !measure_across (self, face, c, TOUCH))
    return FALSE;
  /* Just left and just right: so a face hides what runs along its very border. */
  for (int side = -1; side <= 1; side += 2)
    {
      cross_outline (self, face, c, side * TOUCH);
      for (guint i = 0; i + 1 < self->breaks->len; i += 2)
        {
          const Span span = { MAX (g_array_index (self->breaks, double, i), front.a),
                              MIN (g_array_index (self->breaks, double, i + 1), front.b) };
          if (span.b - span.a > HIDDEN_LEAST)
            g_array_append_val (self->hidden, span);
          if (span.a <= 0 && span.b >= c->length)
            return TRUE;
        }
    }
  return FALSE;
}

/* A solid without hollows hides none of the edges that border its front faces. */
static gboolean
may_hide (const FpFace *face, guint index, const FpEdge *edge)
{
  if ((int) index == edge->beside[0] || (int) index == edge->beside[1])
    return FALSE;
  return !(face->solid == edge->solid && face->convex);
}

static void
find_hidden (FpFaceGrid *self, const Course *c)
{
  const double deepest = MIN (c->depth, c->depth + c->slope * c->length);

  for (guint i = 0; i < self->n_found; i++)
    {
      const guint index = self->found[i];
      const FpFace *face = face_at (self, index);
      if (face->depth_max > deepest + IN_FRONT && may_hide (face, index, c->edge) && hide_behind (self, face, c))
        break;
    }
  sort_spans (self->hidden);
}

/* --- which pen ------------------------------------------------------------------------- */

/* Whether two faces are one surface where they meet at @p. */
static gboolean
run_on (const FpFaceGrid *self, const FpFace *one, const FpFace *two, FpPoint p)
{
  const double l1 = sqrt (1 + one->slope_h * one->slope_h + one->slope_v * one->slope_v);
  const double l2 = sqrt (1 + two->slope_h * two->slope_h + two->slope_v * two->slope_v);
  const double cosine = (1 + one->slope_h * two->slope_h + one->slope_v * two->slope_v) / (l1 * l2);

  return cosine > SAME_TURN && fabs (depth_at (self, one, p) - depth_at (self, two, p)) < FLUSH;
}

/* As fp_face_grid_nearest(), among those that were found: they are fewer than a cell may hold. */
static const FpFace *
nearest_found (const FpFaceGrid *self, FpPoint p)
{
  Nearest nearest = NONE_NEAR;

  for (guint i = 0; i < self->n_found; i++)
    look_at (self, self->found[i], p, &nearest);
  return nearest.face >= 0 ? face_at (self, (guint) nearest.face) : NULL;
}

/* The nearest face @off to the left (right, where negative) of a point of the course; NULL. */
static const FpFace *
face_beside (const FpFaceGrid *self, const Course *c, FpPoint p, double off)
{
  return nearest_found (self, (FpPoint) { p.x - off * c->u.y, p.y + off * c->u.x });
}

/* Whether a thing covers the point @off to the left, whatever stands before it. */
static gboolean
reaches (const FpFaceGrid *self, const Course *c, FpPoint p, double off)
{
  const FpPoint q = { p.x - off * c->u.y, p.y + off * c->u.x };
  const guint cell = cell_at (self, q);

  for (guint i = self->start[cell]; i < self->start[cell + 1]; i++)
    {
      const guint index = self->face[i];
      if (is_in_box (&self->box_of[index], q) && face_at (self, index)->owner == c->edge->owner
          && face_contains (self, face_at (self, index), q))
        return TRUE;
    }
  return FALSE;
}

static gboolean
is_of (const FpFace *face, guint owner)
{
  return face != NULL && face->owner == owner;
}

static guint
masonry_of (const FpFaceGrid *self, const FpEdge *edge)
{
  for (guint i = 0; i < 2; i++)
    if (edge->beside[i] >= 0)
      return face_at (self, (guint) edge->beside[i])->masonry;
  return 0;
}

/* Whether the edge has one thing on both sides, or walls that are of one piece. */
static gboolean
is_within (const FpFaceGrid *self, const FpEdge *edge, const FpFace *left, const FpFace *right)
{
  const guint masonry = masonry_of (self, edge);

  if (left == NULL || right == NULL)
    return FALSE;
  return (left->owner == edge->owner && right->owner == edge->owner)
         || (masonry != 0 && left->masonry == masonry && right->masonry == masonry);
}

/* An outline has its own thing on one side; is that less than FP_SLIGHT across, or the edge itself so short? */
static gboolean
is_slight (const FpFaceGrid *self, const Course *c, FpPoint p, const FpFace *left, const FpFace *right)
{
  const guint owner = c->edge->owner;

  if (c->edge->weight != FP_WEIGHT_ASK)
    return c->edge->weight == FP_WEIGHT_NARROW;
  if (c->length < FP_SLIGHT)
    return TRUE;
  if (is_of (left, owner))
    return !reaches (self, c, p, FP_SLIGHT);
  return is_of (right, owner) && !reaches (self, c, p, -FP_SLIGHT);
}

/* FALSE where there is nothing to draw: a seam in one surface. */
static gboolean
choose_pen (const FpFaceGrid *self, const Course *c, Span span, FpPen *pen)
{
  const FpPoint p = point_at (c, (span.a + span.b) / 2);
  const FpFace *left = face_beside (self, c, p, ASIDE), *right = face_beside (self, c, p, -ASIDE);
  const gboolean both = left != NULL && right != NULL;
  const gboolean one_thing = is_of (left, c->edge->owner) && is_of (right, c->edge->owner);

  if (c->edge->type == FP_EDGE_CUT)
    {
      *pen = FP_PEN_CUT;
      return !(both && left->fabric != 0 && left->fabric == right->fabric);
    }
  if (c->edge->type == FP_EDGE_OVERHEAD)
    {
      *pen = FP_PEN_HIDDEN;
      return !(both && left->cut && right->cut);
    }
  *pen = one_thing || is_slight (self, c, p, left, right) ? FP_PEN_EDGE : FP_PEN_OUTLINE;
  return !(is_within (self, c->edge, left, right) && run_on (self, left, right, p));
}

static void
add_break (FpFaceGrid *self, GArray *breaks, const FpFace *face, const Course *c)
{
  const FpVec3 *pt = corners (self, face);

  if (!measure_across (self, face, c, 2 * ASIDE))
    return;
  for (guint i = 0, k = face->n - 1; i < face->n; k = i++)
    {
      const double si = self->across[i], sk = self->across[k], ti = along (c, pt[i]);
      if (fabs (si) <= 2 * ASIDE)
        g_array_append_val (breaks, ti);
      if ((si > 0) != (sk > 0))
        {
          const double t = ti + (along (c, pt[k]) - ti) * si / (si - sk);
          g_array_append_val (breaks, t);
        }
    }
}

/* Where what lies beside the course may change: at the borders of faces of the same thing, or of one piece with it. */
static void
find_breaks (FpFaceGrid *self, const Course *c, GArray *breaks)
{
  const guint masonry = masonry_of (self, c->edge);

  for (guint i = 0; i < self->n_found; i++)
    {
      const FpFace *face = face_at (self, self->found[i]);
      if (c->edge->type == FP_EDGE_SHARP
            ? face->owner == c->edge->owner || (masonry != 0 && face->masonry == masonry) : face->cut)
        add_break (self, breaks, face, c);
    }
  sort_doubles (breaks);
}

static void
append_piece (const Course *c, Span span, FpPen pen, gboolean ghost, GArray *out)
{
  const FpPiece piece = { point_at (c, span.a), point_at (c, span.b), c->edge->owner, pen,
                          c->depth + c->slope * (span.a + span.b) / 2, ghost };

  g_array_append_val (out, piece);
}

/* A visible span, from break to break. */
static void
draw_span (FpFaceGrid *self, const Course *c, Span span, const GArray *breaks, gboolean ghost, GArray *out)
{
  double from = span.a;

  for (guint i = 0; i <= breaks->len && from < span.b; i++)
    {
      const double to = i < breaks->len ? MIN (g_array_index (breaks, double, i), span.b) : span.b;
      FpPen pen;
      if (to - from <= (i < breaks->len ? 2 * ASIDE : HIDDEN_LEAST))
        continue;
      if (choose_pen (self, c, (Span) { from, to }, &pen))
        append_piece (c, (Span) { from, to }, pen, ghost, out);
      from = to;
    }
}

/* By one face; what several hide together is found out on the way. */
static gboolean
is_all_hidden (const FpFaceGrid *self, const Course *c)
{
  const Span *hidden = (const Span *) (gconstpointer) self->hidden->data;

  return self->hidden->len > 0 && hidden[0].a <= 0 && hidden[0].b >= c->length;
}

static void
draw_edge (FpFaceGrid *self, const Course *c, GArray *breaks, gboolean ghost, GArray *out)
{
  double from = 0;

  g_array_set_size (self->hidden, 0);
  if (c->edge->type != FP_EDGE_OVERHEAD)
    find_hidden (self, c);
  g_array_set_size (breaks, 0);
  if (c->edge->type != FP_EDGE_STROKE && !is_all_hidden (self, c))
    find_breaks (self, c, breaks);
  for (guint i = 0; i <= self->hidden->len; i++)
    {
      const Span hidden = i < self->hidden->len ? g_array_index (self->hidden, Span, i)
                                                : (Span) { c->length, c->length };
      const Span seen = { from, MIN (hidden.a, c->length) };
      if (seen.b - seen.a > SHORTEST && c->edge->type == FP_EDGE_STROKE)
        append_piece (c, seen, c->edge->pen, ghost, out);
      else if (seen.b - seen.a > SHORTEST)
        draw_span (self, c, seen, breaks, ghost, out);
      from = MAX (from, hidden.b);
    }
}

static gboolean
course_of (const FpEdge *edge, Course *c, FpBox *box)
{
  const double dx = edge->b.x - edge->a.x, dy = edge->b.y - edge->a.y;

  c->edge = edge;
  c->length = hypot (dx, dy);
  if (!(c->length > SHORTEST))
    return FALSE;
  c->a = (FpPoint) { edge->a.x, edge->a.y };
  c->u = (FpPoint) { dx / c->length, dy / c->length };
  c->depth = edge->a.z;
  c->slope = (edge->b.z - edge->a.z) / c->length;
  *box = FP_BOX_EMPTY;
  fp_box_add_point (box, c->a);
  fp_box_add_point (box, (FpPoint) { edge->b.x, edge->b.y });
  return TRUE;
}

static void
draw_one (FpFaceGrid *self, const FpEdge *edge, GArray *breaks, gboolean ghost, GArray *out)
{
  Course c;
  FpBox box;

  if (!course_of (edge, &c, &box))
    return;
  find_faces (self, &box);
  draw_edge (self, &c, breaks, ghost, out);
}

void
fp_face_grid_visible (FpFaceGrid *self, gboolean ghost, GCancellable *cancel, const FpAgain *again, GArray *first,
                      GArray *out)
{
  g_autoptr (GArray) breaks = g_array_new (FALSE, FALSE, sizeof (double));
  const GArray *edges = self->sketch->edges;

  /* Thousands of things at one place take a minute: nobody who closes the window waits for that. */
  for (guint i = 0; i < edges->len && !g_cancellable_is_cancelled (cancel); i++)
    {
      if (first != NULL)
        g_array_append_val (first, out->len);
      if (again == NULL || !fp_again_take_pieces (again, self->sketch, i, out))
        draw_one (self, &g_array_index (edges, FpEdge, i), breaks, ghost, out);
    }
  if (first != NULL)
    g_array_append_val (first, out->len);
}
