/* SPDX-License-Identifier: GPL-3.0-or-later */
/* bolt-orders.c - pieces put down one after the other, each where it leaves the least beneath it unused, in many orders */
#include "bolt-private.h"

#include <math.h>
#include <string.h>

#define TRIES 400u /* orders in which many pieces are put down */

FpBoltPlace
fp_bolt_laid (const FpBoltPiece *piece, gboolean turned)
{
  return turned ? (FpBoltPlace) { 0, 0, piece->turned_across, piece->turned_along, TRUE }
                : (FpBoltPlace) { 0, 0, piece->across, piece->along, FALSE };
}

gboolean
fp_bolt_goes_into (const FpBoltPlace *place, double room)
{
  return place->across > 0.0 && place->along > 0.0 && place->across <= room + FP_BOLT_HAIR;
}

/* The first in @order that goes into @room, the way that fills more of it; -1. */
static int
first_that_fits (const FpBoltTask *self, const guint *order, const gboolean *placed, double room, gboolean *turned)
{
  for (guint k = 0; k < self->n; k++)
    {
      const guint i = order[k];
      const FpBoltPlace straight = fp_bolt_laid (&self->piece[i], FALSE), across = fp_bolt_laid (&self->piece[i], TRUE);
      const gboolean can = fp_bolt_goes_into (&straight, room), can_turned = fp_bolt_goes_into (&across, room);

      if (placed[i] || (!can && !can_turned))
        continue;
      *turned = can_turned && (!can || across.across > straight.across);
      return (int) i;
    }
  return -1;
}

/* Lays all of them; returns the length. */
static double
lay_in_order (const FpBoltTask *self, const guint *order, FpBoltPlace *place)
{
  gboolean placed[FP_BOLT_PIECES_MAX] = { FALSE };
  FpSkyline line;

  fp_skyline_begin (&line, self->width);
  for (guint done = 0; done < self->n;)
    {
      const guint low = fp_skyline_lowest_step (&line);
      const double room = fp_skyline_end_of (&line, low) - line.step[low].x;
      gboolean turned;
      const int i = first_that_fits (self, order, placed, room, &turned);

      if (i < 0)
        {
          fp_skyline_fill (&line, low);
          continue;
        }
      place[i] = fp_bolt_laid (&self->piece[i], turned);
      place[i].x = line.step[low].x;
      place[i].y = line.step[low].y;
      fp_skyline_raise (&line, place[i].x, place[i].across, place[i].y + place[i].along);
      placed[i] = TRUE;
      done++;
    }
  return fp_skyline_highest (&line);
}

static double
longer_side (const FpBoltPiece *p)
{
  return MAX (MAX (p->across, p->along), MAX (p->turned_across, p->turned_along));
}

double
fp_bolt_area_of (const FpBoltPiece *p)
{
  const double straight = p->across * p->along, turned = p->turned_across * p->turned_along;

  return straight > 0.0 && turned > 0.0 ? MIN (straight, turned) : MAX (straight, turned);
}

static int
by_longer_side (gconstpointer a, gconstpointer b, gpointer data)
{
  const FpBoltTask *self = data;
  const double of_a = longer_side (&self->piece[*(const guint *) a]), of_b = longer_side (&self->piece[*(const guint *) b]);

  return (of_a < of_b) - (of_a > of_b);
}

void
fp_bolt_keep_if_shorter (FpBoltTask *self, double length, const FpBoltPlace *place)
{
  if (length >= self->length - FP_BOLT_HAIR)
    return;
  self->length = length;
  memcpy (self->best, place, self->n * sizeof *place);
}

/* The longest first, and then with two that change places, as long as that makes it no longer. */
void
fp_bolt_try_orders (FpBoltTask *self)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (1); /* the same each time */
  guint order[FP_BOLT_PIECES_MAX];
  FpBoltPlace place[FP_BOLT_PIECES_MAX];
  double shortest;

  for (guint i = 0; i < self->n; i++)
    order[i] = i;
  g_qsort_with_data (order, (int) self->n, sizeof *order, by_longer_side, self);
  shortest = lay_in_order (self, order, place);
  fp_bolt_keep_if_shorter (self, shortest, place);
  for (guint t = 0; t < TRIES && self->n > 1; t++)
    {
      const guint a = (guint) g_rand_int_range (random, 0, (gint32) self->n);
      const guint b = (guint) g_rand_int_range (random, 0, (gint32) self->n), was = order[a];
      double length;

      order[a] = order[b];
      order[b] = was;
      length = lay_in_order (self, order, place);
      fp_bolt_keep_if_shorter (self, length, place);
      if (length <= shortest + FP_BOLT_HAIR)
        shortest = length;
      else
        {
          order[b] = order[a];
          order[a] = was;
        }
    }
}
