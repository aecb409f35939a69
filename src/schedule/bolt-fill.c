/* SPDX-License-Identifier: GPL-3.0-or-later */
/* bolt-fill.c - the largest pieces first, and the others into the gaps that they leave */
#include "bolt-private.h"

#include <math.h>

#define FEWEST 5u    /* of the largest: fewer tell little more than their areas */
#define FINDS  100u
#define STEPS  40000 /* of the search of the largest: others may still be better laid otherwise */

typedef struct
{
  FpBoltTask *bolt;
  guint       order[FP_BOLT_PIECES_MAX]; /* the largest first */
  FpBoltPlace place[FP_BOLT_PIECES_MAX]; /* by piece          */
  guint       n_placed, n_largest;       /* of the order      */
  double      length;
  guint       finds;                     /* ways of the largest that were tried with the others */
  double      bound;                     /* no layout of all is shorter */
} Fill;

static int
by_area (gconstpointer a, gconstpointer b, gpointer data)
{
  const FpBoltTask *bolt = data;
  const guint i = *(const guint *) a, k = *(const guint *) b;
  const double of_i = fp_bolt_area_of (&bolt->piece[i]), of_k = fp_bolt_area_of (&bolt->piece[k]);

  /* As they were given, where they are alike: the same layout each time. */
  return of_i != of_k ? (of_i < of_k) - (of_i > of_k) : (i > k) - (i < k);
}

/* --- into the gaps ------------------------------------------------------------------ */

/* What lies in the way of @place; NULL. */
static const FpBoltPlace *
in_the_way (const Fill *self, const FpBoltPlace *place)
{
  for (guint i = 0; i < self->n_placed; i++)
    {
      const FpBoltPlace *other = &self->place[self->order[i]];

      if (place->x < other->x + other->across - FP_BOLT_HAIR && other->x < place->x + place->across - FP_BOLT_HAIR
          && place->y < other->y + other->along - FP_BOLT_HAIR && other->y < place->y + place->along - FP_BOLT_HAIR)
        return other;
    }
  return NULL;
}

/* At its y, as far to the left as it goes. */
static gboolean
slide (const Fill *self, FpBoltPlace *place)
{
  const FpBoltPlace *other;

  for (place->x = 0; place->x + place->across <= self->bolt->width + FP_BOLT_HAIR; place->x = other->x + other->across)
    if ((other = in_the_way (self, place)) == NULL)
      return TRUE;
  return FALSE;
}

/* Where it ends nearest to the begin: at the begin, or against a piece that lies there. */
static void
put_lowest (const Fill *self, guint piece, gboolean turned, FpBoltPlace *best)
{
  FpBoltPlace place = fp_bolt_laid (&self->bolt->piece[piece], turned);

  if (!fp_bolt_goes_into (&place, self->bolt->width))
    return;
  for (guint i = 0; i <= self->n_placed; i++)
    {
      const FpBoltPlace *below = i < self->n_placed ? &self->place[self->order[i]] : NULL;

      place.y = below != NULL ? below->y + below->along : 0;
      if (place.y + place.along < best->y + best->along - FP_BOLT_HAIR && slide (self, &place))
        *best = place;
    }
}

static void
put_next (Fill *self)
{
  const guint piece = self->order[self->n_placed];
  FpBoltPlace best = { .y = INFINITY };

  put_lowest (self, piece, FALSE, &best);
  put_lowest (self, piece, TRUE, &best);
  self->place[piece] = best;
  self->length = MAX (self->length, best.y + best.along);
  self->n_placed++;
}

/* --- the largest ------------------------------------------------------------------ */

/* The others beside the largest as they lie now. */
static void
fill (Fill *self, const FpBoltPlace *largest, double length)
{
  for (guint i = 0; i < self->n_largest; i++)
    self->place[self->order[i]] = largest[i];
  self->n_placed = self->n_largest;
  self->length = length;
  while (self->n_placed < self->bolt->n && self->length < self->bolt->length - FP_BOLT_HAIR)
    put_next (self);
  if (self->n_placed == self->bolt->n)
    fp_bolt_keep_if_shorter (self->bolt, self->length, self->place);
}

static double
on_found (gpointer data, const FpBoltPlace *place, double length)
{
  Fill *self = data;

  if (self->finds++ >= FINDS)
    return 0;
  fill (self, place, length);
  /* Where all take no more than the largest alone, nothing is left to be found. */
  return self->bolt->length <= self->bound + FP_BOLT_HAIR ? 0 : self->bolt->length;
}

/* First the shortest of the @n largest alone, which tells what all take at least; then each way of laying them that is short
 * enough, with the others beside it. */
static void
fill_beside (Fill *self, guint n)
{
  FpBoltPiece piece[FP_BOLT_SEARCHED];
  FpBoltPlace place[FP_BOLT_SEARCHED];
  FpBoltTask few = { .piece = piece, .n = n, .width = self->bolt->width, .best = place, .length = INFINITY };

  for (guint i = 0; i < n; i++)
    piece[i] = self->bolt->piece[self->order[i]];
  self->n_largest = n;
  fp_bolt_try_orders (&few);
  if (fp_bolt_search_all (&few, STEPS))
    self->bound = MAX (self->bound, few.length);
  fill (self, place, few.length);
  if (self->bolt->length <= self->bound + FP_BOLT_HAIR)
    return;
  self->finds = 0;
  few.length = self->bolt->length;
  few.found = on_found;
  few.data = self;
  fp_bolt_search_all (&few, STEPS);
}

/* The fewer they are, the sooner all their ways are searched, and the less they tell. */
double
fp_bolt_fill_gaps (FpBoltTask *bolt)
{
  g_autofree Fill *self = g_new0 (Fill, 1);

  self->bolt = bolt;
  for (guint i = 0; i < bolt->n; i++)
    self->order[i] = i;
  g_qsort_with_data (self->order, (int) bolt->n, sizeof *self->order, by_area, bolt);
  for (guint n = FP_BOLT_SEARCHED; n >= FEWEST && bolt->length > self->bound + FP_BOLT_HAIR; n--)
    fill_beside (self, n);
  return self->bound;
}
