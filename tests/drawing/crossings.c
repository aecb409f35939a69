/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "crossings.h"

#include <math.h>

/* mm: nearer to the end of a line than this, lines meet and do not cross. */
#define END 0.1

/* As it lies before it is turned and moved. */
static FpBox
local_box (const FpMark *mark)
{
  const double width = fp_lettering_width (mark->text, mark->height);
  const double x0 = mark->align == FP_ALIGN_LEFT ? 0 : mark->align == FP_ALIGN_MIDDLE ? -width / 2 : -width;

  return (FpBox) { x0, 0, x0 + width, mark->height };
}

static void
corners_of (const FpMark *mark, FpPoint corner[4])
{
  const FpPlace place = { mark->at.x, mark->at.y, mark->turn };
  const FpBox box = local_box (mark);
  const FpPoint local[4] = { { box.x0, box.y0 }, { box.x1, box.y0 }, { box.x1, box.y1 }, { box.x0, box.y1 } };

  for (int i = 0; i < 4; i++)
    corner[i] = fp_place_point (&place, local[i]);
}

FpBox
crossings_text_box (const FpMark *mark)
{
  FpPoint corner[4];

  corners_of (mark, corner);
  return fp_outline_box (corner, 4);
}

/* --- two lines ------------------------------------------------------------------ */

static double
cross (FpPoint a, FpPoint b)
{
  return a.x * b.y - a.y * b.x;
}

/* Where p + t u and q + s v meet, when that is inside both by more than END. */
static gboolean
lines_cross (FpPoint p, FpPoint p2, FpPoint q, FpPoint q2, FpPoint *where)
{
  const FpPoint u = { p2.x - p.x, p2.y - p.y }, v = { q2.x - q.x, q2.y - q.y }, w = { q.x - p.x, q.y - p.y };
  const double d = cross (u, v), lu = hypot (u.x, u.y), lv = hypot (v.x, v.y);

  if (fabs (d) < 1e-9 * lu * lv || lu < 2 * END || lv < 2 * END)
    return FALSE;
  const double t = cross (w, v) / d, s = cross (w, u) / d;
  if (t * lu < END || (1 - t) * lu < END || s * lv < END || (1 - s) * lv < END)
    return FALSE;
  *where = (FpPoint) { p.x + t * u.x, p.y + t * u.y };
  return TRUE;
}

static gboolean
line_meets_box (FpPoint a, FpPoint b, const FpBox *box)
{
  double t0 = 0, t1 = 1;
  const double p[4] = { a.x - b.x, b.x - a.x, a.y - b.y, b.y - a.y };
  const double q[4] = { a.x - box->x0, box->x1 - a.x, a.y - box->y0, box->y1 - a.y };

  /* Liang and Barsky, "A new concept and method for line clipping", ACM TOG 3 (1984); from memory. */
  for (int i = 0; i < 4; i++)
    {
      if (p[i] == 0 && q[i] <= 0)
        return FALSE;
      if (p[i] < 0)
        t0 = MAX (t0, q[i] / p[i]);
      if (p[i] > 0)
        t1 = MIN (t1, q[i] / p[i]);
    }
  return t0 < t1;
}

/* --- the marks that must keep apart ---------------------------------------------- */

typedef struct { FpPoint a, b; guint dimension; gboolean stroke; guint mark; } Line;
typedef struct { const FpMark *mark; FpBox box; } Text;

/* Dimensions have no other lines by the wide pen. */
static gboolean
is_stroke (const FpMark *mark)
{
  return mark->dimension > 0 && mark->pen == FP_PEN_OUTLINE;
}

static void
gather (const FpDrawing *drawing, int view, GArray *lines, GArray *texts)
{
  guint n;
  const FpMark *mark = fp_drawing_marks (drawing, &n);
  const FpPoint *pt = fp_drawing_points (drawing);

  for (guint i = 0; i < n; i++)
    {
      if (mark[i].view < 0 || (view >= 0 && mark[i].view != view))
        continue;
      if (mark[i].type == FP_MARK_TEXT)
        g_array_append_vals (texts, &(Text) { &mark[i], crossings_text_box (&mark[i]) }, 1);
      /* Lines of dimensions and levels, and leaders of names; break lines are runs of more than two points. */
      if (mark[i].type == FP_MARK_LINE && mark[i].n == 2
          && (mark[i].dimension > 0 || (mark[i].pen == FP_PEN_DIMENSION && mark[i].item != NULL)))
        {
          const FpPoint a = pt[mark[i].first], b = pt[mark[i].first + 1];
          const guint owner = mark[i].dimension > 0 ? mark[i].dimension : 1000000 + i;
          g_array_append_vals (lines, &(Line) { a, b, owner, is_stroke (&mark[i]), i }, 1);
        }
    }
}

static gboolean
is_middle (const Line *line, FpPoint p)
{
  return line->stroke && hypot (p.x - (line->a.x + line->b.x) / 2, p.y - (line->a.y + line->b.y) / 2) < END;
}

static void
assert_lines_apart (const GArray *lines, const char *what)
{
  for (guint i = 0; i < lines->len; i++)
    for (guint j = i + 1; j < lines->len; j++)
      {
        const Line *p = &g_array_index (lines, Line, i), *q = &g_array_index (lines, Line, j);
        FpPoint at;
        if (p->dimension == q->dimension || !lines_cross (p->a, p->b, q->a, q->b, &at))
          continue;
        /* Strokes sit on the node at which a chain's lines meet. */
        if (is_middle (p, at) || is_middle (q, at))
          continue;
        g_error ("%s: lines of dimensions %u and %u cross at %g %g", what, p->dimension, q->dimension, at.x, at.y);
      }
}

/* Oblique texts too: the line is looked at as the text lies. */
static gboolean
line_meets_text (FpPoint a, FpPoint b, const FpMark *mark)
{
  const FpPlace place = { mark->at.x, mark->at.y, mark->turn };
  const FpBox box = local_box (mark);

  return line_meets_box (fp_place_unpoint (&place, a), fp_place_unpoint (&place, b), &box);
}

static gboolean
texts_overlap (const Text *t, const Text *u)
{
  FpPoint p[4], q[4];

  if (!fp_box_overlaps (&t->box, &u->box))
    return FALSE;
  corners_of (t->mark, p);
  corners_of (u->mark, q);
  return fp_outlines_common_area (p, 4, q, 4) > 1e-6;
}

static void
assert_texts_apart (const GArray *texts, const GArray *lines, const char *what)
{
  for (guint i = 0; i < texts->len; i++)
    {
      const Text *t = &g_array_index (texts, Text, i);
      for (guint j = i + 1; j < texts->len; j++)
        {
          const Text *u = &g_array_index (texts, Text, j);
          if (texts_overlap (t, u))
            g_error ("%s: \"%s\" and \"%s\" overlap at %g %g", what, t->mark->text, u->mark->text, t->box.x0, t->box.y0);
        }
      for (guint j = 0; j < lines->len; j++)
        {
          const Line *l = &g_array_index (lines, Line, j);
          if (line_meets_text (l->a, l->b, t->mark))
            g_error ("%s: a line of dimension %u crosses \"%s\" at %g %g", what, l->dimension, t->mark->text, t->box.x0,
                     t->box.y0);
        }
    }
}

void
crossings_assert_none (const FpDrawing *drawing, int view, const char *what)
{
  g_autoptr (GArray) lines = g_array_new (FALSE, FALSE, sizeof (Line));
  g_autoptr (GArray) texts = g_array_new (FALSE, FALSE, sizeof (Text));

  gather (drawing, view, lines, texts);
  assert_lines_apart (lines, what);
  assert_texts_apart (texts, lines, what);
}

/* A block of pews may give way to its own name: a patch of paper lies between the two. */
static gboolean
is_hidden_by_ground (const FpDrawing *drawing, guint line, guint text)
{
  guint n;
  const FpMark *mark = fp_drawing_marks (drawing, &n);
  const FpPoint *pt = fp_drawing_points (drawing);

  for (guint i = line + 1; i < text && mark[line].item == mark[text].item; i++)
    if (mark[i].type == FP_MARK_AREA && mark[i].fill == FP_FILL_PAPER && mark[i].item == mark[text].item
        && fp_outline_contains (pt + mark[i].first, mark[i].n, mark[text].at))
      return TRUE;
  return FALSE;
}

void
crossings_assert_names_clear (const FpDrawing *drawing, const char *what)
{
  guint n;
  const FpMark *mark = fp_drawing_marks (drawing, &n);
  const FpPoint *pt = fp_drawing_points (drawing);

  for (guint i = 0; i < n; i++)
    {
      if (mark[i].type != FP_MARK_TEXT || mark[i].view != FP_VIEW_PLAN || mark[i].dimension > 0 || mark[i].item == NULL)
        continue;
      for (guint j = 0; j < n; j++)
        if (mark[j].type == FP_MARK_LINE && mark[j].view == FP_VIEW_PLAN && !is_hidden_by_ground (drawing, j, i) && mark[j].n == 2
            && (mark[j].pen == FP_PEN_CUT || mark[j].pen == FP_PEN_OUTLINE || mark[j].pen == FP_PEN_EDGE
                || mark[j].pen == FP_PEN_HIDDEN)
            && line_meets_text (pt[mark[j].first], pt[mark[j].first + 1], &mark[i]))
          g_error ("%s: a line of %s crosses the name \"%s\"", what, mark[j].item, mark[i].text);
    }
}

static gboolean
has_ground (const FpDrawing *drawing, guint line, guint text)
{
  const FpMark *mark = fp_drawing_marks (drawing, NULL);
  const FpPoint *pt = fp_drawing_points (drawing);

  for (guint i = line + 1; i < text; i++)
    if (mark[i].type == FP_MARK_AREA && mark[i].fill == FP_FILL_PAPER
        && fp_outline_contains (pt + mark[i].first, mark[i].n, mark[text].at))
      return TRUE;
  return FALSE;
}

void
crossings_assert_figures_clear (const FpDrawing *drawing, const char *what)
{
  guint n;
  const FpMark *mark = fp_drawing_marks (drawing, &n);
  const FpPoint *pt = fp_drawing_points (drawing);

  for (guint i = 0; i < n; i++)
    for (guint j = 0; mark[i].type == FP_MARK_TEXT && mark[i].dimension > 0 && mark[i].view >= 0 && j < i; j++)
      if (mark[j].type == FP_MARK_LINE && mark[j].n == 2 && mark[j].dimension == 0 && mark[j].view == mark[i].view
          && (mark[j].pen == FP_PEN_CUT || mark[j].pen == FP_PEN_OUTLINE || mark[j].pen == FP_PEN_EDGE)
          && line_meets_text (pt[mark[j].first], pt[mark[j].first + 1], &mark[i]) && !has_ground (drawing, j, i))
        g_error ("%s: a line of %s crosses the figure \"%s\"", what, mark[j].item, mark[i].text);
}

/* --- reading ------------------------------------------------------------------------ */

GArray *
crossings_read_dimensions (const FpDrawing *drawing)
{
  GArray *out = g_array_new (FALSE, FALSE, sizeof (ReadDimension));
  guint n;
  const FpMark *mark = fp_drawing_marks (drawing, &n);
  const FpPoint *pt = fp_drawing_points (drawing);

  for (guint i = 0; i < n;)
    {
      ReadDimension one = { .number = mark[i].dimension, .view = mark[i].view, .item = mark[i].item,
                            .param = mark[i].param };
      FpPoint middle[2];
      guint strokes = 0, j;
      for (j = i; j < n && mark[j].dimension == mark[i].dimension; j++)
        {
          if (mark[j].type == FP_MARK_TEXT)
            one.text = mark[j].text;
          if (mark[j].type != FP_MARK_LINE || mark[j].n != 2 || mark[j].dimension == 0)
            continue;
          const FpPoint a = pt[mark[j].first], b = pt[mark[j].first + 1];
          if (is_stroke (&mark[j]) && strokes < 2)
            middle[strokes++] = (FpPoint) { (a.x + b.x) / 2, (a.y + b.y) / 2 };
        }
      if (strokes == 2)
        {
          one.a = middle[0];
          one.b = middle[1];
          one.upright = fabs (middle[1].x - middle[0].x) < 1e-6;
          one.oblique = !one.upright && fabs (middle[1].y - middle[0].y) > 1e-6;
          one.at = one.upright ? middle[0].x : middle[0].y;
          one.lo = one.upright ? MIN (middle[0].y, middle[1].y) : MIN (middle[0].x, middle[1].x);
          one.hi = one.upright ? MAX (middle[0].y, middle[1].y) : MAX (middle[0].x, middle[1].x);
          g_array_append_val (out, one);
        }
      i = MAX (j, i + 1);
    }
  return out;
}
