/* SPDX-License-Identifier: GPL-3.0-or-later */
/* remedy-stands.c - what is told where the thing itself is bought whole, stands there and is not altered */
#include "remedy-private.h"

#include <math.h>

/* Another may be of any size that such a thing has. */
static void
free_dial (FpDial *dial)
{
  dial->min = MIN (dial->start, dial->param->min);
  dial->max = MAX (dial->start, dial->param->max);
}

/* What size of it would do, whatever that does besides: nobody is asked to make it so. */
static void
find_size (FpRemedyStage *stage, const FpPlaced *placed, FpHindrance *why)
{
  g_autoptr (GArray) dials = fp_remedy_dials_new ();
  double least = INFINITY;

  if (!stage->measure->apart)
    fp_remedy_add_sizes (stage, placed, dials);
  for (guint i = 0; i < dials->len; i++)
    free_dial (&g_array_index (dials, FpDial, i));
  for (guint i = 0; i < dials->len; i++)
    for (int way = 1; way >= -1; way -= 2)
      {
        const FpDial *dial = &g_array_index (dials, FpDial, i);
        const double value = dial->param->type != FP_PARAM_CHOICE ? fp_remedy_beyond (stage, dial, dial->start, way) : NAN;

        if (isnan (value) || fp_dial_cost (dial, value) >= least)
          continue;
        least = fp_dial_cost (dial, value);
        why->change = fp_dial_change (dial, value);
        why->wanted = value;
      }
}

/* Of all that was turned and may be. */
static void
find_help (const FpRemedyStage *stage, FpHindrance *why)
{
  for (guint i = 0; stage->promises != NULL && i < stage->promises->len; i++)
    {
      const FpRemedyPromise *one = &g_array_index (stage->promises, FpRemedyPromise, i);
      const double part = one->gain / stage->excess;

      if (one->settles || !(part > why->part))
        continue;
      why->part = part;
      why->help = one->change;
    }
}

FpHindrance
fp_remedy_stands (FpRemedyStage *stage)
{
  const FpPlaced *placed = &fp_scene_placed (stage->scene, NULL)[stage->all->finding->owner];
  FpHindrance why = { .how = FP_HINDRANCE_STANDS, .change.item = g_intern_string (fp_item_id (placed->item)) };

  find_size (stage, placed, &why);
  find_help (stage, &why);
  return why;
}
