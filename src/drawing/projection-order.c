/* SPDX-License-Identifier: GPL-3.0-or-later */
/* projection-order.c - lines by owner and pen, those that run on into each other one after the other */
#include "projection-private.h"

#include <math.h>
#include <string.h>

/* --- by owner and pen ---------------------------------------------------------------- */

static guint
rank_of (const FpProjectedLine *l)
{
  return l->owner * FP_N_PENS + (guint) l->pen;
}

/* By counting, since owners are few: what is equal stays in order. */
GArray *
fp_lines_sorted_new (const GArray *lines)
{
  const FpProjectedLine *line = (const FpProjectedLine *) (gconstpointer) lines->data;
  GArray *sorted = g_array_sized_new (FALSE, FALSE, sizeof (FpProjectedLine), lines->len);
  g_autofree guint *at = NULL;
  guint ranks = 1, sum = 0;

  for (guint i = 0; i < lines->len; i++)
    ranks = MAX (ranks, rank_of (&line[i]) + 1);
  at = g_new0 (guint, ranks);
  for (guint i = 0; i < lines->len; i++)
    at[rank_of (&line[i])]++;
  for (guint i = 0; i < ranks; i++)
    {
      const guint n = at[i];
      at[i] = sum;
      sum += n;
    }
  g_array_set_size (sorted, lines->len);
  for (guint i = 0; i < lines->len; i++)
    g_array_index (sorted, FpProjectedLine, at[rank_of (&line[i])]++) = line[i];
  return sorted;
}

/* --- lines that run on --------------------------------------------------------------- */

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
  if (a->line != b->line)
    return a->line < b->line ? -1 : 1;
  return (a->at_b > b->at_b) - (a->at_b < b->at_b);
}

typedef struct { guint first, n; } Meeting;

/* Lines of one owner and pen. */
typedef struct
{
  const FpProjectedLine *line;
  guint     n;
  LineEnd  *ends;
  Meeting  *meeting; /* of the ends a and b of each line: which ends meet there, its own among them */
  gboolean *used;
} Group;

static void
find_meetings (Group *g)
{
  guint i = 0;

  while (i < 2 * g->n)
    {
      Meeting m = { i, 0 };
      while (i < 2 * g->n && g->ends[i].key == g->ends[m.first].key)
        i++;
      m.n = i - m.first;
      for (guint k = m.first; k < i; k++)
        g->meeting[2 * g->ends[k].line + (g->ends[k].at_b ? 1 : 0)] = m;
    }
}

static void
group_init (Group *g, const FpProjectedLine *line, guint n)
{
  *g = (Group) { line, n, g_new (LineEnd, 2 * (gsize) n), g_new (Meeting, 2 * (gsize) n), g_new0 (gboolean, n) };
  for (guint i = 0; i < n; i++)
    {
      g->ends[2 * i] = (LineEnd) { key_of (line[i].a), i, FALSE };
      g->ends[2 * i + 1] = (LineEnd) { key_of (line[i].b), i, TRUE };
    }
  qsort (g->ends, 2 * (gsize) n, sizeof *g->ends, compare_line_ends);
  find_meetings (g);
}

static void
group_clear (Group *g)
{
  g_free (g->ends);
  g_free (g->meeting);
  g_free (g->used);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Group, group_clear)

/* The unused line that turns off least where @m meet; NULL when none is left. */
static const LineEnd *
next_at (const Group *g, const Meeting *m, FpPoint direction)
{
  const LineEnd *best = NULL;
  double straightest = -2;

  for (guint i = m->first; i < m->first + m->n; i++)
    {
      const LineEnd *end = &g->ends[i];
      const FpProjectedLine *l = &g->line[end->line];
      const FpPoint from = end->at_b ? l->b : l->a, to = end->at_b ? l->a : l->b;
      double length, cosine;
      if (g->used[end->line])
        continue;
      length = MAX (hypot (to.x - from.x, to.y - from.y), 1e-9);
      cosine = ((to.x - from.x) * direction.x + (to.y - from.y) * direction.y) / length;
      if (cosine > straightest)
        {
          straightest = cosine;
          best = end;
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

static FpProjectedLine
turned_round (const FpProjectedLine *l)
{
  return (FpProjectedLine) { l->b, l->a, l->owner, l->pen };
}

/* Follows lines from line @i on, from its end a or b, appending them in order. */
static void
follow (Group *g, guint i, gboolean from_b, GArray *out)
{
  while (TRUE)
    {
      const FpProjectedLine current = from_b ? turned_round (&g->line[i]) : g->line[i];
      const LineEnd *next;
      g->used[i] = TRUE;
      g_array_append_val (out, current);
      next = next_at (g, &g->meeting[2 * i + (from_b ? 0 : 1)], direction_of (&current));
      if (next == NULL)
        return;
      i = next->line;
      from_b = next->at_b;
    }
}

/* First those with a loose end, from that end; then what goes round. */
static void
order_group (const FpProjectedLine *line, guint n, GArray *out)
{
  g_auto (Group) g;

  group_init (&g, line, n);
  for (guint round = 0; round < 2; round++)
    for (guint i = 0; i < n; i++)
      {
        const gboolean loose_a = g.meeting[2 * i].n == 1, loose_b = g.meeting[2 * i + 1].n == 1;
        if (!g.used[i] && (round == 1 || loose_a || loose_b))
          follow (&g, i, loose_b && !loose_a, out);
      }
}

/* --- all of them ------------------------------------------------------------------------ */

static guint
count_alike (const GArray *sorted, guint from)
{
  const FpProjectedLine *line = (const FpProjectedLine *) (gconstpointer) sorted->data;
  guint k = from + 1;

  while (k < sorted->len && rank_of (&line[k]) == rank_of (&line[from]))
    k++;
  return k - from;
}

static gboolean
same_ends (const FpProjectedLine *a, const FpProjectedLine *b, guint n)
{
  for (guint i = 0; i < n; i++)
    if (memcmp (&a[i].a, &b[i].a, sizeof a[i].a) != 0 || memcmp (&a[i].b, &b[i].b, sizeof a[i].b) != 0)
      return FALSE;
  return TRUE;
}

/* Where the same lines were put in order the last time; @next: the first of the last that may be meant. */
static gboolean
take_group (const FpProjectedLine *line, guint n, const FpLastOrder *last, guint *next, GArray *out)
{
  const FpProjectedLine *was = (const FpProjectedLine *) (gconstpointer) last->sorted->data;
  const int owner = last->owner_was[line->owner];
  const FpProjectedLine wanted = { .owner = (guint) owner, .pen = line->pen };

  if (owner < 0)
    return FALSE;
  while (*next < last->sorted->len && rank_of (&was[*next]) < rank_of (&wanted))
    ++*next;
  if (*next == last->sorted->len || rank_of (&was[*next]) != rank_of (&wanted)
      || count_alike (last->sorted, *next) != n || !same_ends (line, &was[*next], n))
    return FALSE;
  for (guint i = *next; i < *next + n; i++)
    {
      FpProjectedLine copy = g_array_index (last->lines, FpProjectedLine, i);
      copy.owner = line->owner;
      g_array_append_val (out, copy);
    }
  return TRUE;
}

void
fp_lines_order (const GArray *sorted, const FpLastOrder *last, GArray *out)
{
  guint next = 0, n;

  for (guint i = 0; i < sorted->len; i += n)
    {
      const FpProjectedLine *line = &g_array_index (sorted, FpProjectedLine, i);
      n = count_alike (sorted, i);
      if (last == NULL || !take_group (line, n, last, &next, out))
        order_group (line, n, out);
    }
}
