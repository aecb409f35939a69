/* SPDX-License-Identifier: GPL-3.0-or-later */
/* setting-sight.c - from how many seats a new thing would stand before the altar, seen from above
 *
 * An estimate to choose a place by: the rules of sight measure what comes of it.
 */
#include "setting-spot.h"

#include "footpace/people.h"

#define LOOKED_AT 3u /* points of the mensa: its ends and its middle */

/* Of a segment, the part from @from to @to (shares of it) that lies between two bounds of one coordinate. */
static void
clip (double a, double b, double low, double high, double *from, double *to)
{
  const double d = b - a;

  if (d == 0)
    *to = a >= low && a <= high ? *to : -1;
  else
    {
      *from = MAX (*from, MIN ((low - a) / d, (high - a) / d));
      *to = MIN (*to, MAX ((low - a) / d, (high - a) / d));
    }
}

static gboolean
crosses (FpPoint a, FpPoint b, const FpBox *box)
{
  double from = 0, to = 1;

  clip (a.x, b.x, box->x0, box->x1, &from, &to);
  clip (a.y, b.y, box->y0, box->y1, &from, &to);
  return from < to;
}

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

          hidden = crosses (eye, at, box);
        }
      behind += hidden ? 1 : 0;
    }
  return behind;
}
