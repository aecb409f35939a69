/* SPDX-License-Identifier: GPL-3.0-or-later */
/* levels-rows.c - the people below the altar, row by row */
#include "footpace/levels.h"

static FpPosture
posture_of (const FpPersonPlace *place)
{
  return place->postures & (1u << FP_POSTURE_SITTING) ? FP_POSTURE_SITTING : FP_POSTURE_STANDING;
}

static void
add_place (FpRowLevel *row, const FpPeople *people, guint i, const FpLevels *levels)
{
  const FpPersonPlace *place = &fp_people_places (people, NULL)[i];

  const double eye = fp_people_eye (people, i, posture_of (place)).z;

  row->eye = MAX (row->eye, fp_people_plain_eye (people, i, posture_of (place)).z);
  row->low = MIN (row->low, eye);
  row->high = MAX (row->high, eye);
  row->west = MIN (row->west, place->at.y);
  row->east = MAX (row->east, place->at.y);
  row->places++;
  if (levels->has_altar && !fp_levels_place_below (levels, place))
    row->not_below++;
  if (row->places > 1 && place->at.z <= row->at.z)
    return;
  row->highest = i;
  row->at = place->at;
  row->margin = levels->has_altar ? levels->footpace - place->at.z : 0;
}

GArray *
fp_row_levels (const FpPeople *people, const FpLevels *levels)
{
  GArray *rows = g_array_new (FALSE, FALSE, sizeof (FpRowLevel));
  guint n;
  const FpPersonPlace *place = fp_people_places (people, &n);

  for (guint i = 0; i < n; i++)
    {
      const FpRowLevel *last = rows->len > 0 ? &g_array_index (rows, FpRowLevel, rows->len - 1) : NULL;

      if (place[i].gallery || place[i].at_rail)
        continue;
      if (last == NULL || last->owner != place[i].owner || last->row != place[i].row)
        {
          const FpRowLevel row = { .owner = place[i].owner, .row = place[i].row, .eye = -G_MAXDOUBLE,
                                   .low = G_MAXDOUBLE, .high = -G_MAXDOUBLE, .west = G_MAXDOUBLE,
                                   .east = -G_MAXDOUBLE };
          g_array_append_val (rows, row);
        }
      add_place (&g_array_index (rows, FpRowLevel, rows->len - 1), people, i, levels);
    }
  return rows;
}

const FpRowLevel *
fp_row_levels_tightest (const GArray *rows)
{
  const FpRowLevel *tightest = NULL;

  for (guint i = 0; i < rows->len; i++)
    {
      const FpRowLevel *row = &g_array_index (rows, FpRowLevel, i);
      if (tightest == NULL || row->margin < tightest->margin
          || (row->margin <= tightest->margin && row->at.y > tightest->at.y))
        tightest = row;
    }
  return tightest;
}
