/* SPDX-License-Identifier: GPL-3.0-or-later */
/* setting-sight.c - from how many seats a new thing would stand before the altar, seen from above
 *
 * An estimate to choose a place by: the rules of sight measure what comes of it.
 */
#include "setting-spot.h"

#include "footpace/people.h"

#define LOOKED_AT 3u /* points of the mensa: its ends and its middle */

guint
fp_seats_behind (const FpPersonPlace *seat, guint n, const FpPlaced *altar, const FpBox *box)
{
  const FpBox *mensa = &altar->plan;
  guint behind = 0;

  for (guint i = 0; i < n; i++)
    {
      const FpPoint eye = { seat[i].at.x, seat[i].at.y };
      gboolean hidden = FALSE;

      if ((seat[i].postures & 1u << FP_POSTURE_SITTING) == 0)
        continue;
      for (guint k = 0; k < LOOKED_AT && !hidden; k++)
        {
          const FpPoint at = { mensa->x0 + (mensa->x1 - mensa->x0) * k / (LOOKED_AT - 1), (mensa->y0 + mensa->y1) / 2 };

          hidden = fp_box_is_crossed (box, eye, at);
        }
      behind += hidden ? 1 : 0;
    }
  return behind;
}
