/* SPDX-License-Identifier: GPL-3.0-or-later */
/* sight-sums.c - what was seen, gathered by place, row, block and church */
#include "sight-private.h"

const FpPeople *
fp_sight_people (const FpSight *self)
{
  return self->people;
}

gboolean
fp_sight_has (const FpSight *self, FpFocus focus)
{
  return (guint) focus < FP_N_FOCUSES && self->target[focus] >= 0;
}

double
fp_sight_share (const FpSight *self, guint place, FpMoment moment, FpFocus focus)
{
  if (place >= self->n_places || (guint) moment >= FP_N_MOMENTS || (guint) focus >= FP_N_FOCUSES)
    return -1;
  const guint8 *seen = fp_sight_seen (self, moment, focus);
  return seen == NULL || seen[place] == FP_SIGHT_NOT_LOOKED ? -1 : (double) seen[place] / FP_SIGHT_RAYS;
}

/* --- sums ----------------------------------------------------------------- */

typedef struct
{
  gboolean church;   /* all but galleries and the rail */
  guint    owner;
  guint    row;      /* 0: all of them                 */
} Choice;

static gboolean
chosen (const Choice *self, const FpPersonPlace *place)
{
  if (self->church)
    return !place->gallery && !place->at_rail;
  return place->owner == self->owner && (self->row == 0 || place->row == self->row);
}

static void
add_share (FpSightSum *self, guint place, double share, double *least)
{
  self->places++;
  self->mean += share;
  self->all += share >= 1;
  self->half += share >= 0.5;
  self->none += share <= 0;
  if (share < *least)
    {
      *least = share;
      self->worst = place;
    }
}

static FpSightSum
sum_up (const FpSight *self, const Choice *choice, FpMoment moment, FpFocus focus)
{
  guint n;
  const FpPersonPlace *place = fp_people_places (self->people, &n);
  FpSightSum sum = { 0 };
  double least = G_MAXDOUBLE;

  for (guint i = 0; i < n; i++)
    {
      double share = fp_sight_share (self, i, moment, focus);
      if (share >= 0 && chosen (choice, &place[i]))
        add_share (&sum, i, share, &least);
    }
  if (sum.places > 0)
    sum.mean /= sum.places;
  return sum;
}

FpSightSum
fp_sight_church (const FpSight *self, FpMoment moment, FpFocus focus)
{
  return sum_up (self, &(Choice) { .church = TRUE }, moment, focus);
}

char *
fp_sight_church_words (const FpSight *self, FpMoment moment, FpFocus focus)
{
  const FpSightSum sum = fp_sight_church (self, moment, focus);
  g_autofree char *none = sum.none > 0 ? g_strdup_printf (", nothing of it from %u", sum.none) : g_strdup ("");

  if (sum.places == 0 || !fp_sight_has (self, focus))
    return NULL;
  return g_strdup_printf ("half or more of the %s is seen from %u of %u places%s", fp_focus_label (focus), sum.half,
                          sum.places, none);
}

FpSightSum
fp_sight_block (const FpSight *self, guint owner, FpMoment moment, FpFocus focus)
{
  return sum_up (self, &(Choice) { .owner = owner }, moment, focus);
}

FpSightSum
fp_sight_row (const FpSight *self, guint owner, guint row, FpMoment moment, FpFocus focus)
{
  /* Rows are counted from 1: a row 0 has nobody in it. */
  return row > 0 ? sum_up (self, &(Choice) { .owner = owner, .row = row }, moment, focus) : (FpSightSum) { 0 };
}
