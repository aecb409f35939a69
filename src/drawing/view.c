/* SPDX-License-Identifier: GPL-3.0-or-later */
/* view.c - one projection on the paper: its lines, cut faces, axis, dimensions and names */
#include "annotation.h"

#include <math.h>

/* The axis stands out beyond the view by this much, and stays clear of the first tier, mm. */
#define AXIS_OVERRUN 4.0

/* Of outlines that are cut, neighbours that lie as close as this must differ in hatch, view mm. */
#define NEIGHBOUR 50.0

/* --- clipping -------------------------------------------------------------------- */

static gboolean
clip_to (double from, double way, double lo, double hi, double *t0, double *t1)
{
  if (way == 0)
    return from >= lo && from <= hi;
  const double ta = (lo - from) / way, tb = (hi - from) / way;
  *t0 = MAX (*t0, MIN (ta, tb));
  *t1 = MIN (*t1, MAX (ta, tb));
  return *t0 <= *t1;
}

gboolean
fp_clip_segment (FpPoint *a, FpPoint *b, const FpBox *box)
{
  const FpPoint from = *a, way = { b->x - a->x, b->y - a->y };
  double t0 = 0, t1 = 1;

  if (fp_box_is_empty (box))
    return TRUE;
  if (!clip_to (from.x, way.x, box->x0, box->x1, &t0, &t1) || !clip_to (from.y, way.y, box->y0, box->y1, &t0, &t1))
    return FALSE;
  /* Ends that lie inside stay what they were, to the last digit. */
  if (t0 > 0)
    *a = (FpPoint) { from.x + t0 * way.x, from.y + t0 * way.y };
  if (t1 < 1)
    *b = (FpPoint) { from.x + t1 * way.x, from.y + t1 * way.y };
  return TRUE;
}

/* Sutherland and Hodgman's clipping, one side of the box after another ("Reentrant polygon
 * clipping", CACM 17, 1974; from memory).  A concave outline may keep edges along the box. */
typedef struct { double nx, ny, c; } HalfPlane; /* inside: nx x + ny y >= c */

static void
clip_outline_to (GArray *in, GArray *out, HalfPlane h)
{
  g_array_set_size (out, 0);
  for (guint i = 0; i < in->len; i++)
    {
      const FpPoint p = g_array_index (in, FpPoint, i), q = g_array_index (in, FpPoint, (i + 1) % in->len);
      const double dp = h.nx * p.x + h.ny * p.y - h.c, dq = h.nx * q.x + h.ny * q.y - h.c;
      if (dp >= 0)
        g_array_append_val (out, p);
      if ((dp < 0) != (dq < 0))
        {
          const double t = dp / (dp - dq);
          const FpPoint cut = { p.x + t * (q.x - p.x), p.y + t * (q.y - p.y) };
          g_array_append_val (out, cut);
        }
    }
}

static GArray *
clip_outline (const FpPoint *pt, guint n, const FpBox *box)
{
  GArray *a = g_array_new (FALSE, FALSE, sizeof (FpPoint));
  g_autoptr (GArray) b = g_array_new (FALSE, FALSE, sizeof (FpPoint));

  g_array_append_vals (a, pt, n);
  if (fp_box_is_empty (box))
    return a;
  clip_outline_to (a, b, (HalfPlane) { 1, 0, box->x0 });
  clip_outline_to (b, a, (HalfPlane) { -1, 0, -box->x1 });
  clip_outline_to (a, b, (HalfPlane) { 0, 1, box->y0 });
  clip_outline_to (b, a, (HalfPlane) { 0, -1, -box->y1 });
  return a;
}

/* --- hatches ------------------------------------------------------------------------ */

/* ISO 128-50 (from memory): one part, one hatch; neighbours differ. 0 is not yet chosen. */
static const double HATCHES[] = { 45, 135, 30, 60, 120, 150 };

/* Walls and floors are of one piece: no line parts them, so neither does the hatch. */
static guint
part_of (const FpPlaced *placed, guint owner, guint n_placed)
{
  switch (fp_item_kind (placed[owner].item)->role)
    {
    case FP_ROLE_WALL:
    case FP_ROLE_PIER:
    case FP_ROLE_FLOOR:
    case FP_ROLE_GALLERY:
      return n_placed + (guint) placed[owner].standing;
    default:
      return owner;
    }
}

typedef struct { FpBox box; guint part; } CutPart;

static void
forbid (const CutPart *cut, guint n, guint of, const double *chosen, gboolean *taken)
{
  const FpBox *b = &cut[of].box;
  const FpBox near = { b->x0 - NEIGHBOUR, b->y0 - NEIGHBOUR, b->x1 + NEIGHBOUR, b->y1 + NEIGHBOUR };

  for (guint i = 0; i < n; i++)
    {
      if (cut[i].part == cut[of].part || chosen[cut[i].part] == 0 || !fp_box_overlaps (&near, &cut[i].box))
        continue;
      for (guint h = 0; h < G_N_ELEMENTS (HATCHES); h++)
        taken[h] |= HATCHES[h] == chosen[cut[i].part];
    }
}

static void
choose_hatch (const CutPart *cut, guint n, guint first, double *chosen)
{
  gboolean taken[G_N_ELEMENTS (HATCHES)] = { FALSE };
  guint h = 0;

  for (guint i = first; i < n; i++)
    if (cut[i].part == cut[first].part)
      forbid (cut, n, i, chosen, taken);
  while (h + 1 < G_N_ELEMENTS (HATCHES) && taken[h])
    h++;
  chosen[cut[first].part] = HATCHES[h];
}

/* For each cut; owned by the caller. */
static double *
choose_hatches (const FpProjectedCut *cut, guint n, const FpPlaced *placed, guint n_placed)
{
  g_autofree CutPart *part = g_new (CutPart, MAX (n, 1u));
  g_autofree double *chosen = g_new0 (double, n_placed + FP_STANDING_REMOVED + 1);
  double *hatch = g_new (double, MAX (n, 1u));

  for (guint i = 0; i < n; i++)
    part[i] = (CutPart) { fp_outline_box (cut[i].outline, cut[i].n), part_of (placed, cut[i].owner, n_placed) };
  for (guint i = 0; i < n; i++)
    {
      if (chosen[part[i].part] == 0)
        choose_hatch (part, n, i, chosen);
      hatch[i] = chosen[part[i].part];
    }
  return hatch;
}

/* --- lines and faces -------------------------------------------------------------------- */

typedef struct
{
  FpDrawing          *drawing;
  FpProjection       *projection;
  const FpPlaced     *placed;
  guint               n_placed;
  const FpViewLayout *layout;
  FpBox               clip;  /* paper mm; empty: none */
} Painting;

static void
belong (const Painting *p, guint owner)
{
  const gboolean known = owner < p->n_placed;

  const int view = (int) fp_projection_view (p->projection);

  if (known)
    fp_drawing_set_item (p->drawing, fp_item_id (p->placed[owner].item), p->placed[owner].standing, view);
  else
    fp_drawing_set_item (p->drawing, NULL, FP_STANDING_EXISTING, view);
}

static void
draw_cuts (const Painting *p)
{
  guint n;
  const FpProjectedCut *cut = fp_projection_cuts (p->projection, &n);
  g_autofree double *hatch = choose_hatches (cut, n, p->placed, p->n_placed);

  for (guint i = 0; i < n; i++)
    {
      g_autofree FpPoint *pt = g_new (FpPoint, MAX (cut[i].n, 1u));
      g_autoptr (GArray) clipped = NULL;
      for (guint j = 0; j < cut[i].n; j++)
        pt[j] = fp_view_to_paper (p->layout, cut[i].outline[j]);
      clipped = clip_outline (pt, cut[i].n, &p->clip);
      belong (p, cut[i].owner);
      fp_drawing_area (p->drawing, FP_PEN_HATCH, FP_FILL_CUT, hatch[i],
                       (const FpPoint *) (gconstpointer) clipped->data, clipped->len);
    }
}

static void
draw_lines (const Painting *p, const GArray *lines)
{
  guint owner = G_MAXUINT;

  for (guint i = 0; i < lines->len; i++)
    {
      const FpProjectedLine *line = &g_array_index (lines, FpProjectedLine, i);
      FpPoint a = fp_view_to_paper (p->layout, line->a), b = fp_view_to_paper (p->layout, line->b);
      if (!fp_clip_segment (&a, &b, &p->clip))
        continue;
      if (line->owner != owner)
        belong (p, line->owner);
      owner = line->owner;
      fp_drawing_line (p->drawing, line->pen, a, b);
    }
}

/* The axis of the church, in the views that look along it. */
static void
draw_axis (const Painting *p, const FpBox *outline)
{
  const double x = p->layout->origin.x;

  if (fp_projection_view (p->projection) == FP_VIEW_SECTION || x <= outline->x0 || x >= outline->x1)
    return;
  fp_drawing_set_item (p->drawing, NULL, FP_STANDING_EXISTING, (int) fp_projection_view (p->projection));
  fp_drawing_line (p->drawing, FP_PEN_AXIS, (FpPoint) { x, outline->y0 - AXIS_OVERRUN },
                   (FpPoint) { x, outline->y1 + AXIS_OVERRUN });
}

static FpBox
common (const FpBox *a, const FpBox *b)
{
  if (fp_box_is_empty (a))
    return *b;
  if (fp_box_is_empty (b))
    return *a;
  return (FpBox) { MAX (a->x0, b->x0), MAX (a->y0, b->y0), MIN (a->x1, b->x1), MIN (a->y1, b->y1) };
}

static FpBox
clip_on_paper (const FpViewLayout *layout)
{
  const FpPoint a = fp_view_to_paper (layout, (FpPoint) { layout->clip.x0, layout->clip.y0 });
  const FpPoint b = fp_view_to_paper (layout, (FpPoint) { layout->clip.x1, layout->clip.y1 });

  return fp_box_is_empty (&layout->clip) ? FP_BOX_EMPTY : (FpBox) { a.x, a.y, b.x, b.y };
}

void
fp_view_draw_lines (FpDrawing *drawing, FpProjection *projection, const FpAnnotation *annotation)
{
  const FpViewLayout *layout = &annotation->layout;
  const FpBox *seen = &annotation->around.seen;
  const FpBox clip = clip_on_paper (layout);
  Painting p = { drawing, projection, NULL, 0, layout, common (&clip, seen) };

  /* Nothing of the view is seen: an empty box would mean that all of it is. */
  if (fp_box_is_empty (&p.clip) && !(fp_box_is_empty (&clip) && fp_box_is_empty (seen)))
    return;
  p.placed = fp_scene_placed (fp_projection_scene (projection), &p.n_placed);
  draw_cuts (&p);
  draw_lines (&p, annotation->drawn);
  draw_axis (&p, &annotation->sides.content);
  fp_drawing_set_item (drawing, NULL, FP_STANDING_EXISTING, (int) fp_projection_view (projection));
}

/* --- where a view breaks off ------------------------------------------------------------ */

/* All in mm: how far a break line stands out, and its zigzag. */
#define BREAK_OVERRUN 3.0
#define BREAK_LEAST   8.0
#define ZIGZAG        1.6
#define BREAK_AT      0.35 /* of the length: clear of the axis */

/* What ends within this distance of the clip does not run on beyond it, view mm. */
#define BEYOND 5.0

/* The whole line, with what stands out of the view. */
static FpSegment
break_line (FpPoint a, FpPoint b)
{
  const double length = hypot (b.x - a.x, b.y - a.y), more = MAX (BREAK_OVERRUN, (BREAK_LEAST - length) / 2);
  const FpPoint along = a.x == b.x ? (FpPoint) { 0, 1 } : (FpPoint) { 1, 0 };

  return (FpSegment) { { a.x - along.x * more, a.y - along.y * more }, { b.x + along.x * more, b.y + along.y * more } };
}

static void
draw_break (FpDrawing *drawing, const FpSegment *line)
{
  const FpPoint a = line->a, b = line->b;
  const double length = hypot (b.x - a.x, b.y - a.y);
  const FpPoint along = a.x == b.x ? (FpPoint) { 0, 1 } : (FpPoint) { 1, 0 }, across = { -along.y, along.x };
  /* Steps along the line, and across it. */
  static const double step[6][2] = { { 0, 0 }, { -1, 0 }, { -0.5, 1 }, { 0.5, -1 }, { 1, 0 }, { 0, 0 } };
  FpPoint pt[6];

  for (guint i = 0; i < 6; i++)
    {
      const double t = i == 0 ? 0 : i == 5 ? length : length * BREAK_AT + step[i][0] * ZIGZAG;
      pt[i] = (FpPoint) { a.x + along.x * t + across.x * step[i][1] * FP_BREAK_HALF,
                          a.y + along.y * t + across.y * step[i][1] * FP_BREAK_HALF };
    }
  fp_drawing_run (drawing, FP_PEN_DIMENSION, pt, 6, FALSE);
}

/* Along one edge of the clip: where lines run on beyond it. */
typedef struct { FpPoint a, b; double lo, hi; } Edge;

static void
note_crossing (Edge *edge, FpPoint p, FpPoint q)
{
  const gboolean upright = edge->a.x == edge->b.x;
  const double at = upright ? edge->a.x : edge->a.y, from = upright ? p.x : p.y, to = upright ? q.x : q.y;
  const double lo = upright ? MIN (edge->a.y, edge->b.y) : MIN (edge->a.x, edge->b.x);
  const double hi = upright ? MAX (edge->a.y, edge->b.y) : MAX (edge->a.x, edge->b.x);
  double along;

  if (MIN (from, to) > at - BEYOND || MAX (from, to) < at + BEYOND)
    return;
  along = upright ? p.y + (q.y - p.y) * (at - from) / (to - from) : p.x + (q.x - p.x) * (at - from) / (to - from);
  if (along < lo || along > hi)
    return;
  edge->lo = MIN (edge->lo, along);
  edge->hi = MAX (edge->hi, along);
}

static gboolean
break_along (FpProjection *projection, const FpViewLayout *layout, FpPoint a, FpPoint b, FpSegment *out)
{
  guint n;
  const FpProjectedLine *line = fp_projection_lines (projection, &n);
  Edge edge = { a, b, G_MAXDOUBLE, -G_MAXDOUBLE };
  const gboolean upright = a.x == b.x;

  for (guint i = 0; i < n; i++)
    note_crossing (&edge, line[i].a, line[i].b);
  if (edge.lo > edge.hi)
    return FALSE;
  *out = break_line (fp_view_to_paper (layout, upright ? (FpPoint) { a.x, edge.lo } : (FpPoint) { edge.lo, a.y }),
                     fp_view_to_paper (layout, upright ? (FpPoint) { a.x, edge.hi } : (FpPoint) { edge.hi, a.y }));
  return TRUE;
}

guint
fp_view_breaks (FpProjection *projection, const FpViewLayout *layout, FpSegment out[4])
{
  const FpBox *c = &layout->clip;
  const FpPoint corner[4] = { { c->x0, c->y0 }, { c->x1, c->y0 }, { c->x1, c->y1 }, { c->x0, c->y1 } };
  guint n = 0;

  for (guint i = 0; i < 4 && !fp_box_is_empty (c); i++)
    if (break_along (projection, layout, corner[i], corner[(i + 1) % 4], &out[n]))
      n++;
  return n;
}

void
fp_view_draw_breaks (FpDrawing *drawing, FpProjection *projection, const FpViewLayout *layout)
{
  FpSegment line[4];
  const guint n = fp_view_breaks (projection, layout, line);

  fp_drawing_set_item (drawing, NULL, FP_STANDING_EXISTING, (int) fp_projection_view (projection));
  for (guint i = 0; i < n; i++)
    draw_break (drawing, &line[i]);
}

guint
fp_drawing_add_view (FpDrawing *self, FpProjection *projection, const FpViewLayout *layout)
{
  g_autoptr (FpAnnotation) annotation = fp_annotation_new (projection, layout, &FP_SURROUNDINGS_ALONE);
  guint number = fp_drawing_last_dimension (self);

  fp_view_draw_lines (self, projection, annotation);
  fp_annotation_draw (annotation, self, &number);
  return annotation->left_out;
}

FpMargins
fp_view_margins (FpProjection *projection, const FpViewLayout *layout)
{
  g_autoptr (FpAnnotation) annotation = fp_annotation_new (projection, layout, &FP_SURROUNDINGS_ALONE);

  return annotation->margins;
}
