/* SPDX-License-Identifier: GPL-3.0-or-later */
/* differences.c - where two drawings look different
 *
 * Marks that look alike in both and follow each other in the same order are
 * left as they are; where any other mark lies, before or after, something
 * may differ.  Their order counts because what is painted later lies above.
 */
#include "drawing-private.h"

#include <string.h>

enum { NO_MARK = G_MAXUINT };

/* A mark known by what it looks like. */
typedef struct { guint64 look; guint index; } Known;

typedef struct
{
  const FpMark  *mark;
  const FpPoint *points;
  guint          n;
} Marks;

static Marks
marks_of (const FpDrawing *drawing)
{
  Marks m = { .points = fp_drawing_points (drawing) };

  m.mark = fp_drawing_marks (drawing, &m.n);
  return m;
}

static const FpPoint *
points_of (const Marks *m, guint i)
{
  return m->points + m->mark[i].first;
}

/* --- what a mark looks like ------------------------------------------------- */

/* FNV-1a over whole words, finished as splitmix64 is; only ever a first guess, looks_alike() has the last word. */
static guint64
stir (guint64 hash, const void *data, gsize size)
{
  const guchar *bytes = data;
  guint64 word;

  for (gsize at = 0; at < size; at += sizeof word)
    {
      word = 0;
      memcpy (&word, bytes + at, MIN (sizeof word, size - at));
      hash = (hash ^ word) * G_GUINT64_CONSTANT (0x9e3779b97f4a7c15);
      hash ^= hash >> 29;
    }
  return hash;
}

static guint64
look_of (const Marks *m, guint i)
{
  const FpMark *mark = &m->mark[i];
  const gsize picture = (gsize) mark->picture;
  const guint roles[] = { mark->type, mark->pen, mark->standing, mark->fill, mark->n, (guint) mark->closed };
  const double sizes[] = { mark->at.x, mark->at.y, mark->radius, mark->height, mark->turn, mark->hatch };
  guint64 hash = stir (stir (stir (0, roles, sizeof roles), sizes, sizeof sizes), &picture, sizeof picture);

  if (mark->type == FP_MARK_TEXT)
    return stir (hash, mark->text, strlen (mark->text));
  return mark->n > 0 ? stir (hash, points_of (m, i), mark->n * sizeof (FpPoint)) : hash;
}

static gboolean
looks_alike (const Marks *was, guint i, const Marks *is, guint k)
{
  const FpMark *a = &was->mark[i], *b = &is->mark[k];

  if (a->type != b->type || a->pen != b->pen || a->standing != b->standing || a->fill != b->fill || a->n != b->n
      || a->closed != b->closed || a->at.x != b->at.x || a->at.y != b->at.y || a->radius != b->radius
      || a->height != b->height || a->turn != b->turn || a->hatch != b->hatch || a->picture != b->picture)
    return FALSE;
  if (a->type == FP_MARK_TEXT)
    return a->align == b->align && strcmp (a->text, b->text) == 0;
  return a->n == 0 || memcmp (points_of (was, i), points_of (is, k), a->n * sizeof (FpPoint)) == 0;
}

/* --- which of them are the same ----------------------------------------------- */

static int
by_look (gconstpointer a, gconstpointer b)
{
  const Known *p = a, *q = b;

  if (p->look != q->look)
    return p->look < q->look ? -1 : 1;
  return (p->index > q->index) - (p->index < q->index);
}

static Known *
sorted_by_look (const Marks *m, guint from, guint to)
{
  Known *known = g_new (Known, to - from + 1);

  for (guint i = from; i < to; i++)
    known[i - from] = (Known) { look_of (m, i), i };
  qsort (known, to - from, sizeof *known, by_look);
  return known;
}

/* For each mark that is, from @from to @to, the one of those that were which looks like it. */
static guint *
pair (const Marks *was, guint was_to, const Marks *is, guint is_to, guint from)
{
  g_autofree Known *before = sorted_by_look (was, from, was_to), *now = sorted_by_look (is, from, is_to);
  guint *match = g_new (guint, is_to - from + 1);
  guint b = 0;

  for (guint i = 0; i < is_to - from; i++)
    {
      match[now[i].index - from] = NO_MARK;
      while (b < was_to - from && before[b].look < now[i].look)
        b++;
      if (b < was_to - from && before[b].look == now[i].look && looks_alike (was, before[b].index, is, now[i].index))
        match[now[i].index - from] = before[b++].index;
    }
  return match;
}

/* Of the matches, keeps the longest run that goes up (patience sorting); the others become NO_MARK. */
static void
keep_order (guint *match, guint n)
{
  g_autofree guint *top = g_new (guint, n + 1), *previous = g_new (guint, n + 1);
  guint longest = 0, last;

  for (guint i = 0; i < n; i++)
    {
      guint lo = 0, hi = longest;

      if (match[i] == NO_MARK)
        continue;
      while (lo < hi)
        {
          const guint middle = (lo + hi) / 2;
          if (match[top[middle]] < match[i])
            lo = middle + 1;
          else
            hi = middle;
        }
      previous[i] = lo > 0 ? top[lo - 1] : NO_MARK;
      top[lo] = i;
      longest = MAX (longest, lo + 1);
    }
  last = longest > 0 ? top[longest - 1] : NO_MARK;
  for (guint i = n; i-- > 0;)
    if (i == last)
      last = previous[i];
    else
      match[i] = NO_MARK;
}

static void
append_box (GArray *boxes, const Marks *m, guint i)
{
  const FpBox box = fp_mark_box (&m->mark[i], m->points);

  g_array_append_val (boxes, box);
}

/* --- both ------------------------------------------------------------------------ */

gboolean
fp_drawing_differences (const FpDrawing *was, const FpDrawing *is, GArray *boxes)
{
  const Marks before = marks_of (was), now = marks_of (is);
  const guint least = MIN (before.n, now.n);
  g_autofree guint *match = NULL;
  g_autofree gboolean *kept = NULL;
  FpPoint at;
  FpBox clip;
  guint from = 0, same_end = 0;

  if (fp_drawing_width (was) != fp_drawing_width (is) || fp_drawing_height (was) != fp_drawing_height (is)
      || fp_drawing_inset (was, &at, &clip) != NULL || fp_drawing_inset (is, &at, &clip) != NULL)
    return FALSE;
  while (from < least && looks_alike (&before, from, &now, from))
    from++;
  while (same_end < least - from && looks_alike (&before, before.n - same_end - 1, &now, now.n - same_end - 1))
    same_end++;
  match = pair (&before, before.n - same_end, &now, now.n - same_end, from);
  keep_order (match, now.n - same_end - from);
  kept = g_new0 (gboolean, before.n + 1);
  for (guint i = from; i < now.n - same_end; i++)
    if (match[i - from] != NO_MARK)
      kept[match[i - from]] = TRUE;
    else
      append_box (boxes, &now, i);
  for (guint i = from; i < before.n - same_end; i++)
    if (!kept[i])
      append_box (boxes, &before, i);
  return TRUE;
}
