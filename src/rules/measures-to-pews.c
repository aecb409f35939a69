/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The way back from the rail to the seats, block by block. */
#include "measuring-ways.h"

#include <math.h>

/* Design judgement, mm. */
#define BEHIND_RAIL 700.0
#define BESIDE_ROW  350.0 /* beyond the last seat's end stands who goes into a row */
#define NEAR        500.0

/* The ends of the last row of a block: its places with the least and the greatest number. */
typedef struct { const FpPersonPlace *first, *last; guint seats; } Row;

static Row
last_row (const FpMeasuring *of, int block)
{
  guint n;
  const FpPersonPlace *place = fp_people_places (of->people, &n);
  Row row = { NULL, NULL, 0 };

  for (guint i = 0; i < n; i++)
    {
      if ((int) place[i].owner != block || !fp_measuring_in_church (of, i) || (row.first && place[i].row < row.first->row))
        continue;
      if (!row.first || place[i].row > row.first->row)
        row = (Row) { &place[i], &place[i], 0 };
      if (place[i].number < row.first->number)
        row.first = &place[i];
      if (place[i].number > row.last->number)
        row.last = &place[i];
    }
  return row;
}

/* Beside the end of that row: from the one seat on, past the other. */
static FpPoint
beside_row (const FpMeasuring *of, int block, const FpPersonPlace *from, const FpPersonPlace *to, double side)
{
  const double half = fp_placed_param (fp_measuring_placed (of, block), "seat-width", 500) / 2, far = hypot (to->at.x - from->at.x, to->at.y - from->at.y);
  const double turn = to->facing * G_PI / 180;
  const FpPoint way = far > 1 ? (FpPoint) { (to->at.x - from->at.x) / far, (to->at.y - from->at.y) / far }
                              : (FpPoint) { side * cos (turn), side * sin (turn) };

  return (FpPoint) { to->at.x + way.x * (half + BESIDE_ROW), to->at.y + way.y * (half + BESIDE_ROW) };
}

static void
keep_wider (FpWay **best, FpWay *way)
{
  if (*best != NULL && way->width <= (*best)->width)
    {
      fp_way_free (way);
      return;
    }
  fp_way_free (*best);
  *best = way;
}

/* By the better end of the row, from whichever rail is better. */
static FpWay *
way_to_row (const FpMeasuring *of, int block, const Row *row)
{
  FpWay *best = NULL;

  for (int i = fp_measuring_next (of, FP_ROLE_RAIL, -1); i >= 0; i = fp_measuring_next (of, FP_ROLE_RAIL, i))
    {
      const FpPlaced *rail = fp_measuring_placed (of, i);
      const FpWayEnd from = { fp_place_point (&rail->place, (FpPoint) { 0, rail->extent.plan.y0 - BEHIND_RAIL }), NEAR };

      for (guint side = 0; side < 2; side++)
        {
          const FpWayEnd to = { side == 0 ? beside_row (of, block, row->last, row->first, -1) : beside_row (of, block, row->first, row->last, 1),
                                NEAR };
          keep_wider (&best, fp_way_widest (of->scene, FP_GAIT_ON_FOOT, &from, &to, NULL, 0));
        }
    }
  return best;
}

void
fp_take_way_to_pews (const FpMeasuring *of, GArray *out)
{
  static const FpRole seats[] = { FP_ROLE_PEWS, FP_ROLE_CHAIRS };

  for (guint k = 0; k < G_N_ELEMENTS (seats); k++)
    for (int i = fp_measuring_next (of, seats[k], -1); i >= 0; i = fp_measuring_next (of, seats[k], i))
      {
        const Row row = last_row (of, i);
        FpWay *way = row.first ? way_to_row (of, i, &row) : NULL;
        g_autofree char *name = fp_measuring_name (of, i), *lead = g_strdup_printf ("from the rail to the last row of “%s”", name);

        if (way != NULL)
          fp_measured_add_way (out, of, way, i, (FpPoint) { row.first->at.x, row.first->at.y }, lead);
      }
}
