/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Seats and rows: how many, how wide, how far apart, how far away. */
#include "measure-evidence.h"

#include <math.h>

static void
take_each (const FpMeasuring *of, GArray *out, double (*value) (const FpPlaced *pews))
{
  for (int i = fp_measuring_next (of, FP_ROLE_PEWS, -1); i >= 0; i = fp_measuring_next (of, FP_ROLE_PEWS, i))
    {
      const FpPlaced *pews = fp_measuring_placed (of, i);
      double v = value (pews);

      if (!isnan (v))
        fp_measured_add_at (out, v, i, fp_placed_middle (pews, 0))->detail = fp_measuring_name (of, i);
    }
}

static double
spacing (const FpPlaced *pews)
{
  return fp_placed_param (pews, "rows", 1) >= 2 ? fp_placed_param (pews, "spacing", NAN) : NAN;
}

static double
seat_width (const FpPlaced *pews)
{
  return fp_placed_param (pews, "seat-width", NAN);
}

static double
row_clear (const FpPlaced *pews)
{
  return spacing (pews) - fp_placed_param (pews, "depth", NAN);
}

/* From the back of the first row to the front of the next. */
void
fp_show_row_clear (const FpMeasuring *of, const FpMeasured *one, FpEvidence *out)
{
  const FpPlaced *pews = fp_measuring_placed (of, one->owner);
  const double z = fp_placed_param (pews, "seat-height", 0), x = fp_placed_param (pews, "length", 0) / 4;

  fp_evidence_add_length_in (out, pews, (FpVec3) { x, -fp_placed_param (pews, "depth", 0), z },
                             (FpVec3) { x, -fp_placed_param (pews, "spacing", 0), z }, one->value < 0 ? -1 : 1);
}

/* The seats of the longest row. */
void
fp_show_row_seats (const FpMeasuring *of, const FpMeasured *one, FpEvidence *out)
{
  guint n = 0, row = 0;
  const FpPersonPlace *place = fp_people_places (of->people, &n);

  for (guint i = 0; i < n; i++)
    if ((int) place[i].owner == one->owner && place[i].at.x == one->at.x && place[i].at.y == one->at.y)
      row = place[i].row;
  for (guint i = 0; i < n; i++)
    if ((int) place[i].owner == one->owner && place[i].row == row)
      fp_evidence_add_each (out, place[i].at);
}

/* Whatever has seats. */
void
fp_show_seats_share (const FpMeasuring *of, const FpMeasured *one, FpEvidence *out)
{
  guint n = 0;
  const FpPersonPlace *place = fp_people_places (of->people, &n);

  (void) one;
  for (guint i = 0; i < n; i++)
    if (!place[i].at_rail && (i == 0 || place[i - 1].owner != place[i].owner))
      fp_evidence_add_thing (out, of, (int) place[i].owner);
}

void
fp_take_row_spacing (const FpMeasuring *of, GArray *out)
{
  take_each (of, out, spacing);
}

void
fp_take_row_clear (const FpMeasuring *of, GArray *out)
{
  take_each (of, out, row_clear);
}

void
fp_take_seat_width (const FpMeasuring *of, GArray *out)
{
  take_each (of, out, seat_width);
}

void
fp_take_row_seats (const FpMeasuring *of, GArray *out)
{
  guint n = 0;
  const FpPersonPlace *place = fp_people_places (of->people, &n);

  for (guint i = 0; i < n;)
    {
      guint owner = place[i].owner, most = 0, longest = i;

      for (; i < n && place[i].owner == owner; i++)
        if (place[i].number > most)
          {
            most = place[i].number;
            longest = i;
          }
      if (fp_placed_role (fp_measuring_placed (of, (int) owner)) == FP_ROLE_PEWS)
        fp_measured_add_at (out, most, (int) owner, place[longest].at)->detail = fp_measuring_name (of, (int) owner);
    }
}

void
fp_take_seats_share (const FpMeasuring *of, GArray *out)
{
  guint wanted = fp_project_brief (fp_scene_project (of->scene))->seats;
  guint seats = fp_people_seats (of->people);

  if (wanted == 0)
    fp_measured_add_nothing (out, "the brief does not say how many seats are wanted");
  else
    fp_measured_add (out, (double) seats / wanted)->text = g_strdup_printf ("%u seats, %u wanted", seats, wanted);
}

void
fp_take_farthest_place (const FpMeasuring *of, GArray *out)
{
  const FpPlaced *altar = fp_measuring_celebrated (of, NULL);
  guint n = 0, worst = 0;
  const FpPersonPlace *place = fp_people_places (of->people, &n);
  double farthest = -1;
  FpVec3 middle;

  if (!altar)
    return;
  middle = fp_placed_middle (altar, 0);
  for (guint i = 0; i < n; i++)
    {
      double distance = hypot (place[i].at.x - middle.x, place[i].at.y - middle.y);

      if (fp_measuring_in_church (of, i) && distance > farthest)
        {
          farthest = distance;
          worst = i;
        }
    }
  if (farthest >= 0)
    {
      FpMeasured *measured = fp_measured_add_at (out, farthest, (int) place[worst].owner, place[worst].at);

      measured->detail = fp_people_name (of->people, worst);
      fp_measured_span (measured, place[worst].at, (FpVec3) { middle.x, middle.y, place[worst].at.z });
    }
}
