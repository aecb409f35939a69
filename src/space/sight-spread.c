/* SPDX-License-Identifier: GPL-3.0-or-later */
/* sight-spread.c - what hangs on who happens to sit where */
#include "footpace/sight.h"

#include <stdlib.h>

#define SEEDS 1000000u /* as many as a brief may name */

struct _FpSightSpread
{
  guint     first, n;
  FpSight **sight;
};

FpSightSpread *
fp_sight_spread_new (const FpScene *scene, guint seeds)
{
  FpSightSpread *self = g_new0 (FpSightSpread, 1);

  self->first = fp_project_brief (fp_scene_project (scene))->seed;
  self->n = CLAMP (seeds, 1, FP_SIGHT_SEEDS_MOST);
  self->sight = g_new (FpSight *, self->n);
  for (guint i = 0; i < self->n; i++)
    {
      g_autoptr (FpPeople) people = fp_people_new_varied (scene, (self->first + i) % SEEDS);
      self->sight[i] = fp_sight_new (people, NULL);
    }
  return self;
}

void
fp_sight_spread_free (FpSightSpread *self)
{
  if (self == NULL)
    return;
  for (guint i = 0; i < self->n; i++)
    fp_sight_unref (self->sight[i]);
  g_free (self->sight);
  g_free (self);
}

static guint
count_whole (const FpSight *sight, FpMoment moment, FpFocus focus)
{
  guint n, whole = 0;
  const FpPersonPlace *place = fp_people_places (fp_sight_people (sight), &n);

  for (guint i = 0; i < n; i++)
    if (!place[i].gallery && !place[i].at_rail)
      whole += fp_sight_how (sight, i, moment, focus) == FP_SIGHT_WHOLE;
  return whole;
}

static int
by_count (const void *a, const void *b)
{
  const guint p = *(const guint *) a, q = *(const guint *) b;

  return p < q ? -1 : p > q;
}

/* Sorts them. */
static FpCountRange
range_of (guint *count, guint n)
{
  qsort (count, n, sizeof *count, by_count);
  return (FpCountRange) { count[0], count[(n - 1) / 2], count[n - 1] };
}

FpSightRange
fp_sight_spread_range (const FpSightSpread *self, FpMoment moment, FpFocus focus)
{
  g_autofree guint *whole = g_new (guint, self->n), *half = g_new (guint, self->n);

  for (guint i = 0; i < self->n; i++)
    {
      whole[i] = count_whole (self->sight[i], moment, focus);
      half[i] = fp_sight_church (self->sight[i], moment, focus).half;
    }
  return (FpSightRange) {
    .seeds = self->n, .first = self->first, .last = (self->first + self->n - 1) % SEEDS,
    .places = fp_sight_church (self->sight[0], moment, focus).places,
    .whole = range_of (whole, self->n), .half = range_of (half, self->n),
  };
}
