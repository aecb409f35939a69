/* SPDX-License-Identifier: GPL-3.0-or-later */
/* projection-merge.c - every line once
 *
 * Where pieces coincide on the drawing the heaviest pen draws, and of equal
 * pens the thing nearest the viewer.  What then continues straight on is one
 * line.
 *
 * Pieces are sorted by the line on which they lie.  Those that were there
 * already are sorted already, and where all on one line were, so is what came
 * of them.  No two are equal to the order, so it does not matter how it came
 * about.
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
  guint   piece;
} Stretch;

/* What lies on one line: its stretches, and the lines that come of them; the next begins where it ends. */
typedef struct { guint stretch, line; } Course;

struct _FpMerging
{
  GArray *stretches; /* Stretch: sorted                                     */
  GArray *courses;   /* Course: sorted likewise; an empty one ends them     */
  GArray *lines;     /* FpProjectedLine: course by course                   */
  GArray *sorted;    /* FpProjectedLine: the same by owner and pen          */
};

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
  if (a->t0 != b->t0)
    return sign_of (a->t0 - b->t0);
  return (a->piece > b->piece) - (a->piece < b->piece);
}

static int
compare_starts (gconstpointer pa, gconstpointer pb)
{
  const Stretch *a = pa, *b = pb;

  if (a->t0 != b->t0)
    return sign_of (a->t0 - b->t0);
  if (a->t1 != b->t1)
    return sign_of (a->t1 - b->t1);
  return compare_lines (a, b);
}

static Stretch
stretch_of (const FpPiece *piece, guint index)
{
  FpPoint a = piece->a, b = piece->b;
  Stretch s = { .piece = index };
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

static const FpPiece *
piece_of (const GArray *pieces, const Stretch *s)
{
  return &g_array_index (pieces, FpPiece, s->piece);
}

static const FpPiece *
best_over (const GArray *pieces, const Stretch *s, guint n, double from, double to)
{
  const FpPiece *best = NULL;

  for (guint i = 0; i < n && s[i].t0 < to; i++)
    if (s[i].t0 <= from && s[i].t1 >= to && (best == NULL || goes_before (piece_of (pieces, &s[i]), best)))
      best = piece_of (pieces, &s[i]);
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
draw_many (const GArray *pieces, const Stretch *s, guint n, GArray *out)
{
  g_autoptr (GArray) ends = ends_new (s, n);
  const FpPiece *running = NULL;
  double from = 0, to = 0;

  for (guint i = 0; i + 1 < ends->len; i++)
    {
      const double a = g_array_index (ends, double, i), b = g_array_index (ends, double, i + 1);
      const FpPiece *best = b > a ? best_over (pieces, s, n, a, b) : NULL;
      if (best == NULL)
        continue;
      if (running != NULL && look_alike (running, best) && a - to < GAP)
        {
          to = b;
          continue;
        }
      if (running != NULL)
        append_line (out, s, running, from, to);
      running = best;
      from = a;
      to = b;
    }
  if (running != NULL)
    append_line (out, s, running, from, to);
}

static void
draw_course (const GArray *pieces, const Stretch *s, guint n, GArray *out)
{
  g_autofree Stretch *own = NULL;

  if (n == 1 && s->t1 > s->t0)
    append_line (out, s, piece_of (pieces, s), s->t0, s->t1);
  if (n == 1)
    return;
  own = g_memdup2 (s, n * sizeof *s);
  qsort (own, n, sizeof *own, compare_starts);
  draw_many (pieces, own, n, out);
}

/* --- sorted by their lines ------------------------------------------------------------ */

/* A stretch, and where it stood in the last order; -1. */
typedef struct { Stretch s; int was; } Place;

static int
compare_places (gconstpointer a, gconstpointer b)
{
  return compare_lines (&((const Place *) a)->s, &((const Place *) b)->s);
}

/* What was not there, sorted. */
static GArray *
fresh_new (const GArray *pieces, const FpLastMerging *last)
{
  GArray *fresh = g_array_new (FALSE, FALSE, sizeof (Place));

  for (guint i = 0; i < pieces->len; i++)
    if (last == NULL || g_array_index (last->piece_was, int, i) < 0)
      {
        const Place place = { stretch_of (&g_array_index (pieces, FpPiece, i), i), -1 };
        g_array_append_val (fresh, place);
      }
  g_array_sort (fresh, compare_places);
  return fresh;
}

/* What was there, in the order in which it was. */
static GArray *
kept_new (const FpLastMerging *last)
{
  const GArray *was = last->merging->stretches;
  g_autofree int *now = g_new (int, MAX (was->len, 1));
  GArray *kept = g_array_sized_new (FALSE, FALSE, sizeof (Place), was->len);

  for (guint i = 0; i < was->len; i++)
    now[i] = -1;
  for (guint i = 0; i < last->piece_was->len; i++)
    if (g_array_index (last->piece_was, int, i) >= 0)
      now[g_array_index (last->piece_was, int, i)] = (int) i;
  for (guint i = 0; i < was->len; i++)
    {
      Place place = { g_array_index (was, Stretch, i), (int) i };
      const int piece = now[place.s.piece];
      place.s.piece = (guint) piece;
      if (piece >= 0)
        g_array_append_val (kept, place);
    }
  return kept;
}

static GArray *
places_new (const GArray *pieces, const FpLastMerging *last)
{
  g_autoptr (GArray) fresh = fresh_new (pieces, last), kept = NULL;
  GArray *all;
  guint i = 0, k = 0;

  if (last == NULL)
    return g_steal_pointer (&fresh);
  kept = kept_new (last);
  all = g_array_sized_new (FALSE, FALSE, sizeof (Place), pieces->len);
  while (i < kept->len || k < fresh->len)
    if (k == fresh->len
        || (i < kept->len && compare_places (&g_array_index (kept, Place, i), &g_array_index (fresh, Place, k)) < 0))
      g_array_append_val (all, g_array_index (kept, Place, i++));
    else
      g_array_append_val (all, g_array_index (fresh, Place, k++));
  return all;
}

/* --- line by line ------------------------------------------------------------------------ */

/* How many places from the first on lie on one line. */
static guint
count_on_line (const Place *place, guint n)
{
  guint k = 1;

  while (k < n && place[k].s.turn == place[0].s.turn && place[k].s.offset - place[k - 1].s.offset < OFFSET_STEP)
    k++;
  return k;
}

/* The last course, where that had just these stretches; @next is the first that may be it. */
static const Course *
find_last_course (const FpLastMerging *last, const Place *place, guint n, guint *next)
{
  const GArray *courses = last->merging->courses;
  const Course *course;

  if (place[0].was < 0 || place[n - 1].was != place[0].was + (int) n - 1)
    return NULL;
  while (g_array_index (courses, Course, *next).stretch < (guint) place[0].was)
    ++*next;
  course = &g_array_index (courses, Course, *next);
  return course[0].stretch == (guint) place[0].was && course[1].stretch == (guint) place[0].was + n ? course : NULL;
}

static gboolean
take_course (FpMerging *self, const FpLastMerging *last, const Place *place, guint n, guint *next)
{
  const Course *course = find_last_course (last, place, n, next);

  if (course == NULL)
    return FALSE;
  for (guint i = 1; i < n; i++)
    if (place[i].was != place[0].was + (int) i)
      return FALSE;
  for (guint i = course[0].line; i < course[1].line; i++)
    {
      FpProjectedLine line = g_array_index (last->merging->lines, FpProjectedLine, i);
      line.owner = (guint) last->same->thing_now[line.owner];
      g_array_append_val (self->lines, line);
    }
  return TRUE;
}

static void
note_course (FpMerging *self)
{
  const Course course = { self->stretches->len, self->lines->len };

  g_array_append_val (self->courses, course);
}

static void
draw_courses (FpMerging *self, const GArray *pieces, const GArray *places, const FpLastMerging *last)
{
  guint next = 0, n;

  for (guint i = 0; i < places->len; i += n)
    {
      const Place *place = &g_array_index (places, Place, i);
      n = count_on_line (place, places->len - i);
      note_course (self);
      for (guint k = 0; k < n; k++)
        g_array_append_val (self->stretches, place[k].s);
      if (last == NULL || !take_course (self, last, place, n, &next))
        draw_course (pieces, &g_array_index (self->stretches, Stretch, i), n, self->lines);
    }
  note_course (self);
}

FpMerging *
fp_merging_new (const GArray *pieces, const FpLastMerging *last, GArray *lines)
{
  g_autoptr (GArray) places = places_new (pieces, last);
  FpMerging *self = g_new (FpMerging, 1);
  FpLastOrder order;

  self->stretches = g_array_sized_new (FALSE, FALSE, sizeof (Stretch), pieces->len);
  self->courses = g_array_sized_new (FALSE, FALSE, sizeof (Course), last != NULL ? last->merging->courses->len : 0);
  self->lines = g_array_sized_new (FALSE, FALSE, sizeof (FpProjectedLine), last != NULL ? last->merging->lines->len : 0);
  draw_courses (self, pieces, places, last);
  self->sorted = fp_lines_sorted_new (self->lines);
  if (last != NULL)
    order = (FpLastOrder) { last->merging->sorted, last->lines, last->same->thing };
  fp_lines_order (self->sorted, last != NULL ? &order : NULL, lines);
  return self;
}

void
fp_merging_free (FpMerging *self)
{
  if (self == NULL)
    return;
  g_array_unref (self->stretches);
  g_array_unref (self->courses);
  g_array_unref (self->lines);
  g_array_unref (self->sorted);
  g_free (self);
}

void
fp_pieces_merge (const GArray *pieces, GArray *lines)
{
  fp_merging_free (fp_merging_new (pieces, NULL, lines));
}
