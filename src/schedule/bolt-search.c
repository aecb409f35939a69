/* SPDX-License-Identifier: GPL-3.0-or-later */
/* bolt-search.c - all ways of laying a few pieces
 *
 * The search leaves nothing out: in any layout the pieces can be pushed towards
 * the begin and to the left until none can move, which makes it no longer.
 * Then, taken by their y, each lies on the skyline of those before it, and its
 * x is a sum of widths of others.
 */
#include "bolt-private.h"

#include <stdlib.h>
#include <string.h>

typedef struct
{
  FpBoltTask       *bolt;
  FpBoltPlace place[FP_BOLT_SEARCHED];
  gboolean    placed[FP_BOLT_SEARCHED];
  double      x[FP_BOLT_SEARCHED][6561]; /* where the left side of each may lie: sums of widths of the others, 3^8 at most */
  guint       n_x[FP_BOLT_SEARCHED];
  guint       nodes, steps;
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
  const FpBoltTask *bolt = self->bolt;

  if (sum > bolt->width + FP_BOLT_HAIR)
    return;
  if (from == bolt->n)
    {
      self->x[of][self->n_x[of]++] = sum;
      return;
    }
  add_sums (self, of, from + 1, sum);
  for (guint turned = 0; turned < 2 && from != of; turned++)
    {
      const FpBoltPlace other = fp_bolt_laid (&bolt->piece[from], turned == 1);
      if (fp_bolt_goes_into (&other, bolt->width))
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
    if (n == 0 || self->x[of][i] > self->x[of][n - 1] + FP_BOLT_HAIR)
      self->x[of][n++] = self->x[of][i];
  self->n_x[of] = n;
}

/* Whether no layout that goes on from here, with nothing more below @y, can be shorter. */
static gboolean
is_hopeless (const Search *self, const FpSkyline *line, double y)
{
  const FpBoltTask *bolt = self->bolt;
  double area = 0.0;

  for (guint i = 0; i < line->n; i++)
    area += (fp_skyline_end_of (line, i) - line->step[i].x) * MAX (line->step[i].y, y);
  for (guint i = 0; i < bolt->n; i++)
    if (!self->placed[i])
      area += fp_bolt_area_of (&bolt->piece[i]);
  return area / bolt->width >= bolt->length - FP_BOLT_HAIR;
}

/* Pieces alike are fp_bolt_laid in their order. */
static gboolean
has_a_twin_before (const Search *self, guint i)
{
  for (guint k = 0; k < i; k++)
    if (!self->placed[k] && memcmp (&self->bolt->piece[k], &self->bolt->piece[i], sizeof (FpBoltPiece)) == 0)
      return TRUE;
  return FALSE;
}

static void search (Search *self, const FpSkyline *line, double y, guint done);

static void
put_down (Search *self, const FpSkyline *line, double y, guint done, guint i, gboolean turned)
{
  FpBoltTask *bolt = self->bolt;
  FpBoltPlace *place = &self->place[i];

  *place = fp_bolt_laid (&bolt->piece[i], turned);
  if (!fp_bolt_goes_into (place, bolt->width))
    return;
  for (guint k = 0; k < self->n_x[i] && self->x[i][k] + place->across <= bolt->width + FP_BOLT_HAIR; k++)
    {
      const double at = fp_skyline_highest_over (line, self->x[i][k], place->across);
      FpSkyline next;

      if (at < y - FP_BOLT_HAIR || at + place->along >= bolt->length - FP_BOLT_HAIR)
        continue;
      place->x = self->x[i][k];
      place->y = at;
      fp_skyline_copy (&next, line);
      fp_skyline_raise (&next, place->x, place->across, at + place->along);
      self->placed[i] = TRUE;
      search (self, &next, at, done + 1);
      self->placed[i] = FALSE;
    }
}

static void
search (Search *self, const FpSkyline *line, double y, guint done)
{
  FpBoltTask *bolt = self->bolt;

  if (++self->nodes > self->steps)
    return;
  if (done == bolt->n)
    {
      if (bolt->found != NULL)
        bolt->length = bolt->found (bolt->data, self->place, fp_skyline_highest (line));
      else
        fp_bolt_keep_if_shorter (bolt, fp_skyline_highest (line), self->place);
      return;
    }
  if (is_hopeless (self, line, y))
    return;
  for (guint i = 0; i < bolt->n; i++)
    if (!self->placed[i] && !has_a_twin_before (self, i))
      for (guint turned = 0; turned < 2; turned++)
        put_down (self, line, y, done, i, turned == 1);
}

gboolean
fp_bolt_search_all (FpBoltTask *bolt, guint steps)
{
  g_autofree Search *self = g_new0 (Search, 1);
  FpSkyline line;

  self->bolt = bolt;
  self->steps = steps;
  for (guint i = 0; i < bolt->n; i++)
    find_sums (self, i);
  fp_skyline_begin (&line, bolt->width);
  search (self, &line, 0.0, 0);
  return self->nodes <= self->steps;
}
