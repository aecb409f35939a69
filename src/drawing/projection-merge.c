/* SPDX-License-Identifier: GPL-3.0-or-later */
/* projection-merge.c - every line once
 *
 * Where pieces coincide on the drawing the heaviest pen draws, and of equal
 * pens the thing nearest the viewer.  What then continues straight on is one
 * line, and lines that run on into each other follow each other.
 */
#include "projection-private.h"

#include <math.h>

#define TURN_STEP 1e-6   /* radians: pieces nearer than this in direction are parallel  */
#define OFFSET_STEP 0.01 /* mm: parallel pieces nearer than this lie on one line        */
#define GAP 0.06         /* mm: pieces of one line nearer than this run on              */

/* A piece on its line: from t0 to t1 along the direction, @offset to the left of the origin. */
typedef struct
{
  gint64  turn;
  double  offset, t0, t1;
  FpPoint u;
  const FpPiece *piece;
} Stretch;

static int
sign_of (double d)
{
  return (d > 0) - (d < 0);
}

static int
compare_lines (gconstpointer pa, gconstpointer pb)
{
  const Stretch *a = pa, *b = pb;

  if (a->turn != b->turn)
    return a->turn < b->turn ? -1 : 1;
  if (a->offset != b->offset)
    return sign_of (a->offset - b->offset);
  return sign_of (a->t0 - b->t0);
}

static int
compare_starts (gconstpointer pa, gconstpointer pb)
{
  const Stretch *a = pa, *b = pb;

  return a->t0 != b->t0 ? sign_of (a->t0 - b->t0) : sign_of (a->t1 - b->t1);
}

static Stretch
stretch_of (const FpPiece *piece)
{
  FpPoint a = piece->a, b = piece->b;
  Stretch s = { .piece = piece };
  double turn, length;

  if (b.x < a.x || (b.x == a.x && b.y < a.y))
    {
      a = piece->b;
      b = piece->a;
    }
  length = hypot (b.x - a.x, b.y - a.y);
  s.u = (FpPoint) { (b.x - a.x) / length, (b.y - a.y) / length };
  turn = atan2 (s.u.y, s.u.x);
  s.turn = llround (turn / TURN_STEP);
  /* Upright, but for the last digit: straight down is straight up. */
  if (s.turn == llround (-G_PI / 2 / TURN_STEP))
    {
      s.turn = -s.turn;
      s.u = (FpPoint) { -s.u.x, -s.u.y };
    }
  s.offset = s.u.x * a.y - s.u.y * a.x;
  s.t0 = s.u.x * a.x + s.u.y * a.y;
  s.t1 = s.u.x * b.x + s.u.y * b.y;
  if (s.t1 < s.t0)
    {
      const double swap = s.t0;
      s.t0 = s.t1;
      s.t1 = swap;
    }
  return s;
}

/* Whether @a is drawn where both lie. */
static gboolean
goes_before (const FpPiece *a, const FpPiece *b)
{
  if (a->ghost != b->ghost)
    return b->ghost;
  if (a->pen != b->pen)
    return a->pen < b->pen;
  if (fabs (a->depth - b->depth) > 0.01)
    return a->depth > b->depth;
  return a->owner > b->owner;
}

static const Stretch *
best_over (const Stretch *s, guint n, double from, double to)
{
  const Stretch *best = NULL;

  for (guint i = 0; i < n && s[i].t0 < to; i++)
    if (s[i].t0 <= from && s[i].t1 >= to && (best == NULL || goes_before (s[i].piece, best->piece)))
      best = &s[i];
  return best;
}

static FpPoint
on_line (const Stretch *line, double t)
{
  return (FpPoint) { t * line->u.x - line->offset * line->u.y, t * line->u.y + line->offset * line->u.x };
}

static void
append_line (GArray *out, const Stretch *line, const FpPiece *piece, double from, double to)
{
  const FpProjectedLine made = { on_line (line, from), on_line (line, to), piece->owner, piece->pen };

  g_array_append_val (out, made);
}

static gboolean
look_alike (const FpPiece *a, const FpPiece *b)
{
  return a->owner == b->owner && a->pen == b->pen;
}

static int
compare_doubles (gconstpointer a, gconstpointer b)
{
  return sign_of (*(const double *) a - *(const double *) b);
}

static GArray *
ends_new (const Stretch *s, guint n)
{
  GArray *ends = g_array_sized_new (FALSE, FALSE, sizeof (double), 2 * n);

  for (guint i = 0; i < n; i++)
    {
      g_array_append_val (ends, s[i].t0);
      g_array_append_val (ends, s[i].t1);
    }
  g_array_sort (ends, compare_doubles);
  return ends;
}

/* All stretches on one line, sorted by where they begin. */
static void
draw_line (const Stretch *s, guint n, GArray *out)
{
  g_autoptr (GArray) ends = ends_new (s, n);
  const FpPiece *running = NULL;
  double from = 0, to = 0;

  for (guint i = 0; i + 1 < ends->len; i++)
    {
      const double a = g_array_index (ends, double, i), b = g_array_index (ends, double, i + 1);
      const Stretch *best = b > a ? best_over (s, n, a, b) : NULL;
      if (best == NULL)
        continue;
      if (running != NULL && look_alike (running, best->piece) && a - to < GAP)
        {
          to = b;
          continue;
        }
      if (running != NULL)
        append_line (out, s, running, from, to);
      running = best->piece;
      from = a;
      to = b;
    }
  if (running != NULL)
    append_line (out, s, running, from, to);
}

/* --- lines that run on ------------------------------------------------------------- */

static int
compare_owners (gconstpointer pa, gconstpointer pb)
{
  const FpProjectedLine *a = pa, *b = pb;

  if (a->owner != b->owner)
    return a->owner < b->owner ? -1 : 1;
  return (a->pen > b->pen) - (a->pen < b->pen);
}

static gint64
key_of (FpPoint p)
{
  return (gint64) ((guint64) llround (p.x * 20) << 32 ^ ((guint64) llround (p.y * 20) & 0xffffffffu));
}

/* A line by one of its ends; sorted by the end. */
typedef struct { gint64 key; guint line; gboolean at_b; } LineEnd;

static int
compare_line_ends (gconstpointer pa, gconstpointer pb)
{
  const LineEnd *a = pa, *b = pb;

  if (a->key != b->key)
    return a->key < b->key ? -1 : 1;
  return (a->line > b->line) - (a->line < b->line);
}

static guint
first_at (const LineEnd *ends, guint n, gint64 key)
{
  guint low = 0, high = n;

  while (low < high)
    {
      const guint middle = low + (high - low) / 2;
      if (ends[middle].key < key)
        low = middle + 1;
      else
        high = middle;
    }
  return low;
}

/* The unused line at @p that turns off least; NULL when none is left. */
static const LineEnd *
next_at (const LineEnd *ends, guint n, const FpProjectedLine *line, const gboolean *used, FpPoint p, FpPoint direction)
{
  const LineEnd *best = NULL;
  double straightest = -2;

  for (guint i = first_at (ends, n, key_of (p)); i < n && ends[i].key == key_of (p); i++)
    {
      const FpProjectedLine *l = &line[ends[i].line];
      const FpPoint from = ends[i].at_b ? l->b : l->a, to = ends[i].at_b ? l->a : l->b;
      const double length = MAX (hypot (to.x - from.x, to.y - from.y), 1e-9);
      const double cosine = ((to.x - from.x) * direction.x + (to.y - from.y) * direction.y) / length;
      if (!used[ends[i].line] && cosine > straightest)
        {
          straightest = cosine;
          best = &ends[i];
        }
    }
  return best;
}

static FpPoint
direction_of (const FpProjectedLine *l)
{
  const double length = MAX (hypot (l->b.x - l->a.x, l->b.y - l->a.y), 1e-9);

  return (FpPoint) { (l->b.x - l->a.x) / length, (l->b.y - l->a.y) / length };
}

/* Follows lines from @start on, appending them in order. */
static void
follow (const LineEnd *ends, guint n_ends, const FpProjectedLine *line, gboolean *used, FpProjectedLine current,
        GArray *out)
{
  const LineEnd *next;

  g_array_append_val (out, current);
  while ((next = next_at (ends, n_ends, line, used, current.b, direction_of (&current))) != NULL)
    {
      const FpProjectedLine l = line[next->line];
      used[next->line] = TRUE;
      current = next->at_b ? (FpProjectedLine) { l.b, l.a, l.owner, l.pen } : l;
      g_array_append_val (out, current);
    }
}

static gboolean
is_loose (const LineEnd *ends, guint n, FpPoint p)
{
  const guint i = first_at (ends, n, key_of (p));

  return i + 1 >= n || ends[i + 1].key != key_of (p);
}

/* Lines of one owner and pen: first those with a loose end, from that end; then what goes round. */
static void
order_lines (const FpProjectedLine *line, guint n, GArray *out)
{
  g_autofree LineEnd *ends = g_new (LineEnd, 2 * (gsize) n);
  g_autofree gboolean *used = g_new0 (gboolean, n);

  for (guint i = 0; i < n; i++)
    {
      ends[2 * i] = (LineEnd) { key_of (line[i].a), i, FALSE };
      ends[2 * i + 1] = (LineEnd) { key_of (line[i].b), i, TRUE };
    }
  qsort (ends, 2 * (gsize) n, sizeof *ends, compare_line_ends);
  for (guint round = 0; round < 2; round++)
    for (guint i = 0; i < n; i++)
      {
        const gboolean loose_a = is_loose (ends, 2 * n, line[i].a), loose_b = is_loose (ends, 2 * n, line[i].b);
        FpProjectedLine start = line[i];
        if (used[i] || (round == 0 && !loose_a && !loose_b))
          continue;
        if (loose_b && !loose_a)
          start = (FpProjectedLine) { line[i].b, line[i].a, line[i].owner, line[i].pen };
        used[i] = TRUE;
        follow (ends, 2 * n, line, used, start, out);
      }
}

static void
order_by_owner (GArray *lines, GArray *out)
{
  const FpProjectedLine *line = (const FpProjectedLine *) (gconstpointer) lines->data;
  guint i = 0;

  g_array_sort (lines, compare_owners);
  while (i < lines->len)
    {
      guint k = i + 1;
      while (k < lines->len && compare_owners (&line[i], &line[k]) == 0)
        k++;
      order_lines (line + i, k - i, out);
      i = k;
    }
}

void
fp_pieces_merge (GArray *pieces, GArray *lines)
{
  g_autoptr (GArray) stretches = g_array_sized_new (FALSE, FALSE, sizeof (Stretch), pieces->len);
  g_autoptr (GArray) merged = g_array_new (FALSE, FALSE, sizeof (FpProjectedLine));
  Stretch *s;
  guint i = 0;

  for (guint k = 0; k < pieces->len; k++)
    {
      const Stretch stretch = stretch_of (&g_array_index (pieces, FpPiece, k));
      g_array_append_val (stretches, stretch);
    }
  g_array_sort (stretches, compare_lines);
  s = (Stretch *) (gpointer) stretches->data;
  while (i < stretches->len)
    {
      guint k = i + 1;
      while (k < stretches->len && s[k].turn == s[i].turn && s[k].offset - s[k - 1].offset < OFFSET_STEP)
        k++;
      qsort (s + i, k - i, sizeof *s, compare_starts);
      draw_line (s + i, k - i, merged);
      i = k;
    }
  order_by_owner (merged, lines);
}
