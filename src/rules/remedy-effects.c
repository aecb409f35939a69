/* SPDX-License-Identifier: GPL-3.0-or-later */
/* remedy-effects.c - what a remedy does besides: what else it settles, and what it takes from people */
#include "remedy-private.h"

guint
fp_remedy_places (const FpPeople *people)
{
  guint n, count = 0;
  const FpPersonPlace *place = fp_people_places (people, &n);

  for (guint i = 0; i < n; i++)
    count += place[i].at_rail ? 0 : 1;
  return count;
}

static void
note_dim (FpRemedy *remedy, guint finding, double lost)
{
  if (remedy->n_dims == FP_REMEDY_DIMS)
    return;
  remedy->dims[remedy->n_dims].finding = finding;
  remedy->dims[remedy->n_dims++].lost = lost;
}

/* Of findings that were short: what is settled too, and what is seen less. */
void
fp_remedy_note_effects (const FpRemedySearch *all, FpRemedy *remedy, const FpFindings *after)
{
  guint n;
  const FpFinding *finding = fp_findings_get (all->base, &n);

  remedy->n_settles = remedy->n_dims = 0;
  for (guint i = 0; i < n && finding[i].found == FP_FOUND_SHORT; i++)
    {
      const FpFinding *then = fp_findings_same (after, &finding[i]);
      const double lost = fp_findings_sight_lost (all->base, after, i);

      if (then != NULL && then->found == FP_FOUND_WITHIN && &finding[i] != all->finding && remedy->n_settles < FP_REMEDY_SETTLES)
        remedy->settles[remedy->n_settles++] = i;
      if (lost > 0.0 && lost < FP_REMEDY_SIGHT_LOST)
        note_dim (remedy, i, lost);
    }
}

void
fp_remedy_note_worse (FpRemedy *remedy, const GArray *worse)
{
  remedy->n_worse = worse->len;
  for (guint i = 0; i < worse->len; i++)
    remedy->worse[i] = g_array_index (worse, guint, i);
}
