/* SPDX-License-Identifier: GPL-3.0-or-later */
/* bolt.c - how pieces are laid out on a bolt
 *
 * What is laid so far is known by its skyline: how far along the bolt is taken
 * at each x.  A piece is put down at some x, as near to the begin of the bolt
 * as what is there lets it.  First pieces are put down one after the other,
 * each where it leaves the least beneath it unused, in many orders; then, when
 * there are few, all ways are searched that could be shorter.
 *
 * The search leaves nothing out: in any layout the pieces can be pushed towards
 * the begin and to the left until none can move, which makes it no longer.
 * Then, taken by their y, each lies on the skyline of those before it, and its
 * x is a sum of widths of others.
 */
#include "footpace/bolt.h"

#include "footpace/error.h"

#include <math.h>
#include <stdarg.h>
#include <stdlib.h>
#include <string.h>

#define TRIES      400u    /* orders in which many pieces are put down          */
#define SEARCHED   8u      /* pieces of which all layouts are searched          */
#define NODES_MAX  2000000 /* steps of that search: then it is given up         */
#define HAIR       1e-6    /* mm */

/* --- what is asked ------------------------------------------------------------ */

static gboolean G_GNUC_PRINTF (2, 3)
refuse (GError **error, const char *format, ...)
{
  va_list args;
  g_autofree char *words = NULL;

  va_start (args, format);
  words = g_strdup_vprintf (format, args);
  va_end (args);
  g_set_error_literal (error, FP_ERROR, FP_ERROR_RANGE, words);
  return FALSE;
}

static gboolean
is_measure (double v)
{
  return isfinite (v) && v >= 0.0 && v <= 1e6;
}

static gboolean
is_way (double across, double along, double width)
{
  return across > 0.0 && along > 0.0 && across <= width + HAIR;
}

static gboolean
check (const FpBoltPiece *piece, guint n, double width, GError **error)
{
  if (!is_measure (width) || width <= 0.0)
    return refuse (error, "The bolt has no width.");
  if (n > FP_BOLT_PIECES_MAX)
    return refuse (error, "%u pieces are more than can be laid out; at most %u.", n, FP_BOLT_PIECES_MAX);
  for (guint i = 0; i < n; i++)
    {
      const FpBoltPiece *p = &piece[i];

      if (!is_measure (p->across) || !is_measure (p->along) || !is_measure (p->turned_across) || !is_measure (p->turned_along))
        return refuse (error, "Piece %u has a measure that is none.", i + 1);
      if (!is_way (p->across, p->along, width) && !is_way (p->turned_across, p->turned_along, width))
        return refuse (error, "Piece %u is wider than the bolt of %.0f mm; take a wider one, or join it.",
                          i + 1, width);
    }
  return TRUE;
}

/* --- the skyline ---------------------------------------------------------------- */

typedef struct { double x, y; } Step; /* from x on to the next, or to the selvedge */

typedef struct
{
  Step   step[FP_BOLT_PIECES_MAX + 1];
  guint  n;
  double width;
} Skyline;

static void
skyline_begin (Skyline *self, double width)
{
  self->n = 1;
  self->step[0] = (Step) { 0.0, 0.0 };
  self->width = width;
}

static void
skyline_copy (Skyline *self, const Skyline *other)
{
  self->n = other->n;
  self->width = other->width;
  memcpy (self->step, other->step, other->n * sizeof *other->step);
}

static double
end_of (const Skyline *self, guint i)
{
  return i + 1 < self->n ? self->step[i + 1].x : self->width;
}

static double
highest_over (const Skyline *self, double x, double across)
{
  double y = 0.0;

  for (guint i = 0; i < self->n; i++)
    if (self->step[i].x < x + across - HAIR && end_of (self, i) > x + HAIR)
      y = MAX (y, self->step[i].y);
  return y;
}

static void
add_step (Step *step, guint *n, double x, double y)
{
  if (*n > 0 && fabs (step[*n - 1].y - y) <= HAIR)
    return;
  step[(*n)++] = (Step) { x, y };
}

/* From @x to @x + @across it is @y now. */
static void
skyline_raise (Skyline *self, double x, double across, double y)
{
  const double x1 = x + across;
  gboolean done = FALSE;
  Skyline was;

  skyline_copy (&was, self);
  self->n = 0;
  for (guint i = 0; i < was.n; i++)
    {
      const double from = was.step[i].x, to = end_of (&was, i);

      if (from < x - HAIR)
        add_step (self->step, &self->n, from, was.step[i].y);
      if (!done && to > x + HAIR)
        {
          add_step (self->step, &self->n, x, y);
          done = TRUE;
        }
      if (to > x1 + HAIR)
        add_step (self->step, &self->n, MAX (from, x1), was.step[i].y);
    }
}

static guint
lowest_step (const Skyline *self)
{
  guint lowest = 0;

  for (guint i = 1; i < self->n; i++)
    if (self->step[i].y < self->step[lowest].y)
      lowest = i;
  return lowest;
}

static double
highest_step (const Skyline *self)
{
  double y = 0.0;

  for (guint i = 0; i < self->n; i++)
    y = MAX (y, self->step[i].y);
  return y;
}

/* Into the lowest step nothing more goes: it is as high as the lower of those beside it now. */
static void
skyline_fill (Skyline *self, guint i)
{
  const double left = i > 0 ? self->step[i - 1].y : INFINITY, right = i + 1 < self->n ? self->step[i + 1].y : INFINITY;

  skyline_raise (self, self->step[i].x, end_of (self, i) - self->step[i].x, MIN (left, right));
}

/* --- one after the other -------------------------------------------------------- */

typedef struct
{
  const FpBoltPiece *piece;
  guint              n;
  double             width;
  FpBoltPlace       *best;  /* n places */
  double             length;
} Bolt;

static FpBoltPlace
laid (const FpBoltPiece *piece, gboolean turned)
{
  return turned ? (FpBoltPlace) { 0, 0, piece->turned_across, piece->turned_along, TRUE }
                : (FpBoltPlace) { 0, 0, piece->across, piece->along, FALSE };
}

static gboolean
goes_into (const FpBoltPlace *place, double room)
{
  return place->across > 0.0 && place->along > 0.0 && place->across <= room + HAIR;
}

/* The first in @order that goes into @room, the way that fills more of it; -1. */
static int
first_that_fits (const Bolt *self, const guint *order, const gboolean *placed, double room, gboolean *turned)
{
  for (guint k = 0; k < self->n; k++)
    {
      const guint i = order[k];
      const FpBoltPlace straight = laid (&self->piece[i], FALSE), across = laid (&self->piece[i], TRUE);
      const gboolean can = goes_into (&straight, room), can_turned = goes_into (&across, room);

      if (placed[i] || (!can && !can_turned))
        continue;
      *turned = can_turned && (!can || across.across > straight.across);
      return (int) i;
    }
  return -1;
}

/* Lays all of them; returns the length. */
static double
lay_in_order (const Bolt *self, const guint *order, FpBoltPlace *place)
{
  gboolean placed[FP_BOLT_PIECES_MAX] = { FALSE };
  Skyline line;

  skyline_begin (&line, self->width);
  for (guint done = 0; done < self->n;)
    {
      const guint low = lowest_step (&line);
      const double room = end_of (&line, low) - line.step[low].x;
      gboolean turned;
      const int i = first_that_fits (self, order, placed, room, &turned);

      if (i < 0)
        {
          skyline_fill (&line, low);
          continue;
        }
      place[i] = laid (&self->piece[i], turned);
      place[i].x = line.step[low].x;
      place[i].y = line.step[low].y;
      skyline_raise (&line, place[i].x, place[i].across, place[i].y + place[i].along);
      placed[i] = TRUE;
      done++;
    }
  return highest_step (&line);
}

static double
longer_side (const FpBoltPiece *p)
{
  return MAX (MAX (p->across, p->along), MAX (p->turned_across, p->turned_along));
}

static double
area_of (const FpBoltPiece *p)
{
  const double straight = p->across * p->along, turned = p->turned_across * p->turned_along;

  return straight > 0.0 && turned > 0.0 ? MIN (straight, turned) : MAX (straight, turned);
}

static int
by_longer_side (gconstpointer a, gconstpointer b, gpointer data)
{
  const Bolt *self = data;
  const double of_a = longer_side (&self->piece[*(const guint *) a]), of_b = longer_side (&self->piece[*(const guint *) b]);

  return (of_a < of_b) - (of_a > of_b);
}

static void
keep_if_shorter (Bolt *self, double length, const FpBoltPlace *place)
{
  if (length >= self->length - HAIR)
    return;
  self->length = length;
  memcpy (self->best, place, self->n * sizeof *place);
}

/* The longest first, and then with two that change places, as long as that makes it no longer. */
static void
try_orders (Bolt *self)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (1); /* the same each time */
  guint order[FP_BOLT_PIECES_MAX];
  FpBoltPlace place[FP_BOLT_PIECES_MAX];
  double shortest;

  for (guint i = 0; i < self->n; i++)
    order[i] = i;
  g_qsort_with_data (order, (int) self->n, sizeof *order, by_longer_side, self);
  shortest = lay_in_order (self, order, place);
  keep_if_shorter (self, shortest, place);
  for (guint t = 0; t < TRIES && self->n > 1; t++)
    {
      const guint a = (guint) g_rand_int_range (random, 0, (gint32) self->n);
      const guint b = (guint) g_rand_int_range (random, 0, (gint32) self->n), was = order[a];
      double length;

      order[a] = order[b];
      order[b] = was;
      length = lay_in_order (self, order, place);
      keep_if_shorter (self, length, place);
      if (length <= shortest + HAIR)
        shortest = length;
      else
        {
          order[b] = order[a];
          order[a] = was;
        }
    }
}

/* --- all ways ------------------------------------------------------------------- */

typedef struct
{
  Bolt       *bolt;
  FpBoltPlace place[SEARCHED];
  gboolean    placed[SEARCHED];
  double      x[SEARCHED][6561]; /* where the left side of each may lie: sums of widths of the others, 3^8 at most */
  guint       n_x[SEARCHED];
  guint       nodes;
} Search;

static int
by_size (gconstpointer a, gconstpointer b)
{
  const double da = *(const double *) a, db = *(const double *) b;

  return (da > db) - (da < db);
}

static void
add_sums (Search *self, guint of, guint from, double sum)
{
  const Bolt *bolt = self->bolt;

  if (sum > bolt->width + HAIR)
    return;
  if (from == bolt->n)
    {
      self->x[of][self->n_x[of]++] = sum;
      return;
    }
  add_sums (self, of, from + 1, sum);
  for (guint turned = 0; turned < 2 && from != of; turned++)
    {
      const FpBoltPlace other = laid (&bolt->piece[from], turned == 1);
      if (goes_into (&other, bolt->width))
        add_sums (self, of, from + 1, sum + other.across);
    }
}

static void
find_sums (Search *self, guint of)
{
  guint n = 0;

  add_sums (self, of, 0, 0.0);
  qsort (self->x[of], self->n_x[of], sizeof (double), by_size);
  for (guint i = 0; i < self->n_x[of]; i++)
    if (n == 0 || self->x[of][i] > self->x[of][n - 1] + HAIR)
      self->x[of][n++] = self->x[of][i];
  self->n_x[of] = n;
}

/* Whether no layout that goes on from here, with nothing more below @y, can be shorter. */
static gboolean
is_hopeless (const Search *self, const Skyline *line, double y)
{
  const Bolt *bolt = self->bolt;
  double area = 0.0;

  for (guint i = 0; i < line->n; i++)
    area += (end_of (line, i) - line->step[i].x) * MAX (line->step[i].y, y);
  for (guint i = 0; i < bolt->n; i++)
    if (!self->placed[i])
      area += area_of (&bolt->piece[i]);
  return area / bolt->width >= bolt->length - HAIR;
}

/* Pieces alike are laid in their order. */
static gboolean
has_a_twin_before (const Search *self, guint i)
{
  for (guint k = 0; k < i; k++)
    if (!self->placed[k] && memcmp (&self->bolt->piece[k], &self->bolt->piece[i], sizeof (FpBoltPiece)) == 0)
      return TRUE;
  return FALSE;
}

static void search (Search *self, const Skyline *line, double y, guint done);

static void
put_down (Search *self, const Skyline *line, double y, guint done, guint i, gboolean turned)
{
  Bolt *bolt = self->bolt;
  FpBoltPlace *place = &self->place[i];

  *place = laid (&bolt->piece[i], turned);
  if (!goes_into (place, bolt->width))
    return;
  for (guint k = 0; k < self->n_x[i] && self->x[i][k] + place->across <= bolt->width + HAIR; k++)
    {
      const double at = highest_over (line, self->x[i][k], place->across);
      Skyline next;

      if (at < y - HAIR || at + place->along >= bolt->length - HAIR)
        continue;
      place->x = self->x[i][k];
      place->y = at;
      skyline_copy (&next, line);
      skyline_raise (&next, place->x, place->across, at + place->along);
      self->placed[i] = TRUE;
      search (self, &next, at, done + 1);
      self->placed[i] = FALSE;
    }
}

static void
search (Search *self, const Skyline *line, double y, guint done)
{
  Bolt *bolt = self->bolt;

  if (++self->nodes > NODES_MAX)
    return;
  if (done == bolt->n)
    {
      keep_if_shorter (bolt, highest_step (line), self->place);
      return;
    }
  if (is_hopeless (self, line, y))
    return;
  for (guint i = 0; i < bolt->n; i++)
    if (!self->placed[i] && !has_a_twin_before (self, i))
      for (guint turned = 0; turned < 2; turned++)
        put_down (self, line, y, done, i, turned == 1);
}

/* TRUE where all ways were searched. */
static gboolean
search_all (Bolt *bolt)
{
  g_autofree Search *self = g_new0 (Search, 1);
  Skyline line;

  self->bolt = bolt;
  for (guint i = 0; i < bolt->n; i++)
    find_sums (self, i);
  skyline_begin (&line, bolt->width);
  search (self, &line, 0.0, 0);
  return self->nodes <= NODES_MAX;
}

/* --- the layout ------------------------------------------------------------------- */

static double
least_along (const FpBoltPiece *p, double width)
{
  const double straight = is_way (p->across, p->along, width) ? p->along : INFINITY;
  const double turned = is_way (p->turned_across, p->turned_along, width) ? p->turned_along : INFINITY;

  return MIN (straight, turned);
}

static double
bound_of (const FpBoltPiece *piece, guint n, double width)
{
  double area = 0.0, longest = 0.0;

  for (guint i = 0; i < n; i++)
    {
      area += area_of (&piece[i]);
      longest = MAX (longest, least_along (&piece[i], width));
    }
  return MAX (area / width, longest);
}

FpBoltLayout *
fp_bolt_lay_out (const FpBoltPiece *piece, guint n, double width, GError **error)
{
  FpBoltLayout *self;
  Bolt bolt;

  if (!check (piece, n, width, error))
    return NULL;
  self = g_new0 (FpBoltLayout, 1);
  self->place = g_new0 (FpBoltPlace, MAX (n, 1));
  self->bound = bound_of (piece, n, width);
  bolt = (Bolt) { piece, n, width, self->place, n > 0 ? INFINITY : 0.0 };
  if (n > 0)
    try_orders (&bolt);
  self->least = bolt.length <= self->bound + HAIR || (n <= SEARCHED && search_all (&bolt));
  self->length = bolt.length;
  return self;
}

void
fp_bolt_layout_free (FpBoltLayout *self)
{
  if (self != NULL)
    g_free (self->place);
  g_free (self);
}
