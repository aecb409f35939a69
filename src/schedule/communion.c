/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "footpace/communion.h"

#include <math.h>

static gboolean
is_within (const char *what, double value, double least, double most, GError **error)
{
  /* Written so that a NaN fails too. */
  if (value >= least && value <= most)
    return TRUE;
  g_set_error (error, FP_ERROR, FP_ERROR_RANGE, "%s is %.10g; it may be %.10g to %.10g", what, value, least, most);
  return FALSE;
}

gboolean
fp_communion_check (const FpCommunion *self, GError **error)
{
  return is_within ("the number of people", self->people, 1, FP_COMMUNION_PEOPLE_MAX, error)
         && is_within ("the number of ministers", self->ministers, 1, FP_COMMUNION_MINISTERS_MAX, error)
         && is_within ("the number of places at the rail", self->places, 0, FP_COMMUNION_PLACES_MAX, error)
         && is_within ("the time of each, in seconds,", self->each, 0.1, FP_COMMUNION_SECONDS_MAX, error)
         && is_within ("the time of a change, in seconds,", self->change, 0, FP_COMMUNION_SECONDS_MAX, error)
         && is_within ("the time of the way back, in seconds,", self->back, 0, FP_COMMUNION_SECONDS_MAX, error);
}

/* --- in lines ----------------------------------------------------------------------------- */

static double
in_lines (const FpCommunion *c)
{
  const double longest = ceil ((double) c->people / c->ministers);

  return longest * c->each + (longest - 1) * c->change;
}

/* --- at the rail --------------------------------------------------------------------------- */

typedef struct
{
  double  now;      /* when he is free                                         */
  guint   first, n; /* his places                                              */
  guint   at;       /* the next of them                                        */
  double  served;   /* when his last communicant had received                  */
} Minister;

typedef struct
{
  const FpCommunion *c;
  double  *ready;   /* of each place: when somebody kneels there; INFINITY: nobody will */
  Minister minister[FP_COMMUNION_MINISTERS_MAX];
  guint    n_ministers, kneeling, waiting; /* at the rail; and who has no place yet */
} Rail;

static void
begin (Rail *rail, const FpCommunion *c)
{
  guint given = 0;

  rail->c = c;
  rail->ready = g_new (double, c->places);
  rail->n_ministers = MIN (c->ministers, c->places);
  rail->kneeling = MIN (c->people, c->places);
  rail->waiting = c->people - rail->kneeling;
  for (guint i = 0; i < c->places; i++)
    rail->ready[i] = i < rail->kneeling ? 0 : INFINITY;
  for (guint m = 0; m < rail->n_ministers; m++)
    {
      const guint n = (c->places - given) / (rail->n_ministers - m);

      rail->minister[m] = (Minister) { .first = given, .n = n };
      given += n;
    }
}

static gboolean
has_anyone (const Rail *rail, const Minister *m)
{
  for (guint i = 0; i < m->n; i++)
    if (isfinite (rail->ready[m->first + i]))
      return TRUE;
  return FALSE;
}

/* Who is free the soonest, of those before whom somebody kneels; NULL: all have received. */
static Minister *
next_minister (Rail *rail)
{
  Minister *next = NULL;

  for (guint m = 0; m < rail->n_ministers; m++)
    if (has_anyone (rail, &rail->minister[m]) && (next == NULL || rail->minister[m].now < next->now))
      next = &rail->minister[m];
  return next;
}

/* One communicant, or one empty place passed. */
static void
go_on (Rail *rail, Minister *m)
{
  double *ready = &rail->ready[m->first + m->at];

  if (isfinite (*ready))
    {
      m->now = MAX (m->now, *ready) + rail->c->each;
      m->served = m->now;
      *ready = rail->waiting > 0 ? m->now + rail->c->change : INFINITY;
      rail->waiting -= rail->waiting > 0;
    }
  if (++m->at == m->n)
    {
      m->at = 0;
      m->now += rail->c->back;
    }
}

static double
at_rail (const FpCommunion *c)
{
  Rail rail;
  Minister *next;
  double last = 0;

  begin (&rail, c);
  while ((next = next_minister (&rail)) != NULL)
    {
      go_on (&rail, next);
      last = MAX (last, next->served);
    }
  g_free (rail.ready);
  return last;
}

double
fp_communion_seconds (const FpCommunion *self)
{
  return self->places == 0 ? in_lines (self) : at_rail (self);
}
