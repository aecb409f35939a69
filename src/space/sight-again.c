/* SPDX-License-Identifier: GPL-3.0-or-later */
/* sight-again.c - what of the last sight still holds
 *
 * A ray is hidden by any one of the solids, so it answers as before unless one
 * that was changed reaches to it, as it was or as it is.  Rays from one eye to
 * one target are asked together, by the pyramid round them.
 */
#include "sight-private.h"

struct _FpSightChange
{
  GArray     *solid;  /* (element-type FpSolid): those that went, and those that came; outlines borrowed */
  FpRayIndex *index;
};

static gboolean
is_as_before (const FpSolid *a, const FpSolid *b)
{
  return a->owner == b->owner && fp_solid_same (a, b);
}

/* Of as many as before, one by one; otherwise all but those that are the same at the beginning and at the end. */
static void
find_changed (GArray *changed, const FpSolid *last, guint n_last, const FpSolid *now, guint n_now)
{
  guint first = 0, end = 0;

  if (n_last == n_now)
    {
      for (guint i = 0; i < n_now; i++)
        if (!is_as_before (&last[i], &now[i]))
          {
            g_array_append_val (changed, last[i]);
            g_array_append_val (changed, now[i]);
          }
      return;
    }
  while (first < MIN (n_last, n_now) && is_as_before (&last[first], &now[first]))
    first++;
  while (end < MIN (n_last, n_now) - first && is_as_before (&last[n_last - 1 - end], &now[n_now - 1 - end]))
    end++;
  g_array_append_vals (changed, last + first, n_last - first - end);
  g_array_append_vals (changed, now + first, n_now - first - end);
}

FpSightChange *
fp_sight_change_new (const FpSolids *last, const FpSolids *now)
{
  FpSightChange *self = g_new0 (FpSightChange, 1);
  guint n_last, n_now;
  const FpSolid *was = fp_solids_peek (last, &n_last), *is = fp_solids_peek (now, &n_now);

  self->solid = g_array_new (FALSE, FALSE, sizeof (FpSolid));
  find_changed (self->solid, was, n_last, is, n_now);
  self->index = fp_ray_index_of ((const FpSolid *) (gpointer) self->solid->data, self->solid->len);
  return self;
}

void
fp_sight_change_free (FpSightChange *self)
{
  if (self == NULL)
    return;
  fp_ray_index_free (self->index);
  g_array_unref (self->solid);
  g_free (self);
}

gboolean
fp_sight_change_reaches (const FpSightChange *self, const FpRays *rays)
{
  return self->solid->len > 0 && fp_ray_index_reached (self->index, rays);
}

/* --- eyes -------------------------------------------------------------------- */

static gboolean
same_eye (const FpPeople *last, const FpPeople *now, guint place, FpPosture posture)
{
  const FpVec3 a = fp_people_eye (last, place, posture), b = fp_people_eye (now, place, posture);

  return memcmp (&a, &b, sizeof a) == 0;
}

gboolean
fp_sight_same_eyes (const FpPeople *last, const FpPeople *now)
{
  guint n_last, n_now;
  const FpPersonPlace *was = fp_people_places (last, &n_last), *is = fp_people_places (now, &n_now);

  if (n_last != n_now)
    return FALSE;
  for (guint i = 0; i < n_now; i++)
    {
      if (was[i].postures != is[i].postures || was[i].at_rail != is[i].at_rail)
        return FALSE;
      for (int posture = 0; posture < FP_N_POSTURES; posture++)
        if (!same_eye (last, now, i, (FpPosture) posture))
          return FALSE;
    }
  return TRUE;
}
