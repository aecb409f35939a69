/* SPDX-License-Identifier: GPL-3.0-or-later */
/* drawing.c - the list of marks, and what lies under the pointer */
#include "drawing-private.h"

#include <math.h>

struct _FpDrawing
{
  gatomicrefcount ref_count;
  double          width, height;
  GArray         *marks;  /* FpMark  */
  GArray         *points; /* FpPoint */
  GStringChunk   *texts;
  GPtrArray      *pictures; /* FpPewView                                         */
  GArray         *measured; /* Numbered: what its dimensions measure             */
  FpInkChoice     ink;
  FpDrawing      *inset;   /* owned; NULL                                        */
  FpPoint         inset_at;
  FpBox           inset_clip;
  FpMark          belongs; /* item, standing, view, dimension, param of what follows */
};

typedef struct { guint dimension; FpStretch measured; } Numbered;

static void
unref_picture (gpointer picture)
{
  fp_pew_view_unref (picture);
}

FpDrawing *
fp_drawing_new (double width, double height)
{
  FpDrawing *self = g_new0 (FpDrawing, 1);

  g_atomic_ref_count_init (&self->ref_count);
  self->width = width;
  self->height = height;
  self->marks = g_array_new (FALSE, FALSE, sizeof (FpMark));
  self->points = g_array_new (FALSE, FALSE, sizeof (FpPoint));
  self->texts = g_string_chunk_new (1024);
  self->pictures = g_ptr_array_new_with_free_func (unref_picture);
  self->measured = g_array_new (FALSE, FALSE, sizeof (Numbered));
  self->belongs.view = -1;
  return self;
}

FpDrawing *
fp_drawing_ref (FpDrawing *self)
{
  g_atomic_ref_count_inc (&self->ref_count);
  return self;
}

void
fp_drawing_unref (FpDrawing *self)
{
  if (self == NULL || !g_atomic_ref_count_dec (&self->ref_count))
    return;
  g_array_unref (self->marks);
  g_array_unref (self->points);
  g_array_unref (self->measured);
  g_string_chunk_free (self->texts);
  g_ptr_array_unref (self->pictures);
  fp_drawing_unref (self->inset);
  g_free (self);
}

void
fp_drawing_set_ink (FpDrawing *self, FpInkChoice ink)
{
  self->ink = ink;
}

FpInkChoice
fp_drawing_ink (const FpDrawing *self)
{
  return self->ink;
}

void
fp_drawing_set_inset (FpDrawing *self, FpDrawing *of, FpPoint at, const FpBox *clip)
{
  fp_drawing_unref (self->inset);
  self->inset = fp_drawing_ref (of);
  self->inset_at = at;
  self->inset_clip = *clip;
}

const FpDrawing *
fp_drawing_inset (const FpDrawing *self, FpPoint *at, FpBox *clip)
{
  *at = self->inset_at;
  *clip = self->inset_clip;
  return self->inset;
}

double
fp_drawing_width (const FpDrawing *self)
{
  return self->width;
}

double
fp_drawing_height (const FpDrawing *self)
{
  return self->height;
}

const FpMark *
fp_drawing_marks (const FpDrawing *self, guint *n)
{
  if (n != NULL)
    *n = self->marks->len;
  return (const FpMark *) (gconstpointer) self->marks->data;
}

const FpPoint *
fp_drawing_points (const FpDrawing *self)
{
  return (const FpPoint *) (gconstpointer) self->points->data;
}

void
fp_drawing_set_item (FpDrawing *self, const char *item, FpStanding standing, int view)
{
  self->belongs.item = g_intern_string (item);
  self->belongs.standing = standing;
  self->belongs.view = view;
}

void
fp_drawing_set_dimension (FpDrawing *self, guint dimension, const char *param)
{
  self->belongs.dimension = dimension;
  self->belongs.param = g_intern_string (param);
}

void
fp_drawing_set_stretch (FpDrawing *self, guint dimension, const FpStretch *measured)
{
  const Numbered one = { dimension, *measured };

  g_array_append_val (self->measured, one);
}

const FpStretch *
fp_drawing_stretch (const FpDrawing *self, guint dimension)
{
  for (guint i = 0; i < self->measured->len; i++)
    {
      const Numbered *one = &g_array_index (self->measured, Numbered, i);

      if (one->dimension == dimension)
        return &one->measured;
    }
  return NULL;
}

static gboolean
all_finite (const FpPoint *pt, guint n)
{
  for (guint i = 0; i < n; i++)
    if (!isfinite (pt[i].x) || !isfinite (pt[i].y))
      return FALSE;
  return TRUE;
}

static FpMark
mark_of (FpDrawing *self, FpMarkType type, FpPen pen)
{
  FpMark mark = self->belongs;

  mark.type = type;
  mark.pen = pen;
  mark.first = self->points->len;
  return mark;
}

void
fp_drawing_line (FpDrawing *self, FpPen pen, FpPoint a, FpPoint b)
{
  const FpPoint pt[2] = { a, b };

  fp_drawing_run (self, pen, pt, 2, FALSE);
}

void
fp_drawing_run (FpDrawing *self, FpPen pen, const FpPoint *pt, guint n, gboolean closed)
{
  FpMark mark = mark_of (self, FP_MARK_LINE, pen);

  if (n < 2 || !all_finite (pt, n))
    return;
  mark.n = n;
  mark.closed = closed;
  g_array_append_vals (self->points, pt, n);
  g_array_append_val (self->marks, mark);
}

void
fp_drawing_area (FpDrawing *self, FpPen pen, FpFill fill, double hatch, const FpPoint *pt, guint n)
{
  FpMark mark = mark_of (self, FP_MARK_AREA, pen);

  if (n < 3 || !all_finite (pt, n))
    return;
  mark.n = n;
  mark.closed = TRUE;
  mark.fill = fill;
  mark.hatch = isfinite (hatch) ? hatch : 0;
  g_array_append_vals (self->points, pt, n);
  g_array_append_val (self->marks, mark);
}

void
fp_drawing_circle (FpDrawing *self, FpPen pen, FpFill fill, FpPoint at, double radius)
{
  FpMark mark = mark_of (self, FP_MARK_CIRCLE, pen);

  if (!all_finite (&at, 1) || !(radius > 0) || !isfinite (radius))
    return;
  mark.at = at;
  mark.radius = radius;
  mark.fill = fill;
  g_array_append_val (self->marks, mark);
}

void
fp_drawing_text (FpDrawing *self, FpPoint at, double height, double turn, FpAlign align, const char *text)
{
  FpMark mark = mark_of (self, FP_MARK_TEXT, FP_PEN_LETTER);
  g_autofree char *valid = NULL;

  if (text == NULL || *text == '\0' || !all_finite (&at, 1) || !(height > 0) || !isfinite (height + turn))
    return;
  valid = g_utf8_make_valid (text, -1);
  mark.at = at;
  mark.height = height;
  mark.turn = turn;
  mark.align = align;
  mark.text = g_string_chunk_insert (self->texts, valid);
  g_array_append_val (self->marks, mark);
}

void
fp_drawing_picture (FpDrawing *self, const FpPewView *picture, const FpBox *frame)
{
  FpMark mark = mark_of (self, FP_MARK_PICTURE, FP_PEN_EDGE);
  const FpPoint corner[2] = { { frame->x0, frame->y0 }, { frame->x1, frame->y1 } };

  if (!all_finite (corner, 2) || fp_box_is_empty (frame))
    return;
  mark.first = self->points->len;
  mark.n = 2;
  mark.picture = picture;
  g_ptr_array_add (self->pictures, fp_pew_view_ref (picture));
  g_array_append_vals (self->points, corner, 2);
  g_array_append_val (self->marks, mark);
}

gboolean
fp_mark_has_border (const FpMark *mark)
{
  return mark->pen != FP_PEN_HATCH && (mark->pen != FP_PEN_BLIND || mark->type != FP_MARK_AREA);
}

FpPen
fp_mark_hatch_pen (const FpMark *mark)
{
  return mark->pen == FP_PEN_BLIND ? FP_PEN_BLIND : FP_PEN_HATCH;
}

/* --- where marks are ------------------------------------------------------- */

/* The text's own rectangle, its base line along x from the aligned end. */
static FpBox
text_room (const FpMark *mark)
{
  const double width = fp_lettering_width (mark->text, mark->height);
  const double x0 = mark->align == FP_ALIGN_LEFT ? 0 : mark->align == FP_ALIGN_MIDDLE ? -width / 2 : -width;

  /* Below the base line a little farther than descenders go: 0.4 h (design judgement; ISO 3098 has 0.3 h, from memory). */
  return (FpBox) { x0, -0.4 * mark->height, x0 + width, 1.1 * mark->height };
}

static FpBox
grown (FpBox box, double by)
{
  return (FpBox) { box.x0 - by, box.y0 - by, box.x1 + by, box.y1 + by };
}

FpBox
fp_mark_box (const FpMark *mark, const FpPoint *points)
{
  FpBox box = FP_BOX_EMPTY;
  const FpPlace place = { mark->at.x, mark->at.y, mark->turn };

  switch (mark->type)
    {
    case FP_MARK_LINE:
    case FP_MARK_AREA:
    case FP_MARK_PICTURE:
      for (guint i = 0; i < mark->n; i++)
        fp_box_add_point (&box, points[mark->first + i]);
      break;
    case FP_MARK_CIRCLE:
      box = grown ((FpBox) { mark->at.x, mark->at.y, mark->at.x, mark->at.y }, mark->radius);
      break;
    case FP_MARK_TEXT:
      {
        const FpBox room = text_room (mark);
        fp_box_add_point (&box, fp_place_point (&place, (FpPoint) { room.x0, room.y0 }));
        fp_box_add_point (&box, fp_place_point (&place, (FpPoint) { room.x1, room.y0 }));
        fp_box_add_point (&box, fp_place_point (&place, (FpPoint) { room.x1, room.y1 }));
        fp_box_add_point (&box, fp_place_point (&place, (FpPoint) { room.x0, room.y1 }));
      }
      break;
    }
  /* The crosses of removed work reach farther than half a line. */
  return grown (box, fp_pen_crosses (mark->pen, mark->standing) ? 2.0 : fp_pen_stroke (mark->pen, mark->standing));
}

/* --- picking ---------------------------------------------------------------- */

static double
distance_to_run (const FpPoint *pt, guint n, gboolean closed, FpPoint at)
{
  double least = G_MAXDOUBLE;

  for (guint i = 0; i + 1 < n; i++)
    least = MIN (least, fp_segment_distance (pt[i], pt[i + 1], at));
  if (closed)
    least = MIN (least, fp_segment_distance (pt[n - 1], pt[0], at));
  return least;
}

static double
distance_to_text (const FpMark *mark, FpPoint at)
{
  const FpPlace place = { mark->at.x, mark->at.y, mark->turn };
  const FpPoint p = fp_place_unpoint (&place, at);
  const FpBox room = text_room (mark);
  const double dx = MAX (MAX (room.x0 - p.x, p.x - room.x1), 0.0);
  const double dy = MAX (MAX (room.y0 - p.y, p.y - room.y1), 0.0);

  return hypot (dx, dy);
}

static double
distance_to_mark (const FpMark *mark, const FpPoint *points, FpPoint at)
{
  const FpPoint *pt = points + mark->first;
  double d = 0;

  switch (mark->type)
    {
    case FP_MARK_LINE:
      return distance_to_run (pt, mark->n, mark->closed, at);
    case FP_MARK_AREA:
      return fp_outline_contains (pt, mark->n, at) ? 0 : distance_to_run (pt, mark->n, TRUE, at);
    case FP_MARK_CIRCLE:
      d = hypot (at.x - mark->at.x, at.y - mark->at.y) - mark->radius;
      return mark->fill == FP_FILL_NONE ? fabs (d) : MAX (d, 0.0);
    case FP_MARK_TEXT:
      return distance_to_text (mark, at);
    case FP_MARK_PICTURE: /* of no one thing */
      break;
    }
  return G_MAXDOUBLE;
}

int
fp_drawing_pick (const FpDrawing *self, FpPoint at, double tolerance)
{
  const FpPoint *points = fp_drawing_points (self);
  guint n;
  const FpMark *mark = fp_drawing_marks (self, &n);

  for (guint i = n; i-- > 0;)
    if ((mark[i].item != NULL || mark[i].dimension != 0) && distance_to_mark (&mark[i], points, at) <= tolerance)
      return (int) i;
  return -1;
}
