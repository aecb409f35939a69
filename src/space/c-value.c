/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "footpace/sight.h"

#include <math.h>

double
fp_c_value (double d, double r, double n, double t)
{
  return d + t != 0 ? d * (n + r) / (d + t) - r : 0;
}

double
fp_c_rise (double d, double r, double c, double t)
{
  return d != 0 ? (r + c) * (d + t) / d - r : 0;
}

double
fp_c_raise (double c, double wanted, double d, double t)
{
  return t != 0 ? (wanted - c) * (d + t) / t : 0;
}

/* --- rows of a church ----------------------------------------------------- */

/* The middle of the upper edge of the mensa, on the side of the people. */
static gboolean
front_of_mensa (const FpScene *scene, FpVec3 *middle)
{
  int at = fp_scene_celebrated_altar (scene);
  if (at < 0)
    return FALSE;
  const FpPlaced *altar = &fp_scene_placed (scene, NULL)[at];
  const FpBox *top = &altar->extent.bearing;
  *middle = fp_placed_point (altar, (FpVec3) { (top->x0 + top->x1) / 2, top->y0, altar->extent.top });
  return !fp_box_is_empty (top);
}

typedef struct { guint owner, row, first, n; } Row;

static gboolean
sits (const FpPersonPlace *place)
{
  return (place->postures & (1u << FP_POSTURE_SITTING)) && !place->at_rail;
}

/* Places of one row lie together in the list of places. */
static GArray *
sitting_rows (const FpPersonPlace *place, guint n)
{
  GArray *rows = g_array_new (FALSE, FALSE, sizeof (Row));
  for (guint i = 0; i < n; i++)
    {
      Row *last = rows->len > 0 ? &g_array_index (rows, Row, rows->len - 1) : NULL;
      if (!sits (&place[i]))
        continue;
      if (last != NULL && last->owner == place[i].owner && last->row == place[i].row && last->first + last->n == i)
        {
          last->n++;
          continue;
        }
      Row row = { place[i].owner, place[i].row, i, 1 };
      g_array_append_val (rows, row);
    }
  return rows;
}

/* The eye of the row in front that is nearest to the axis of sight: how far from the focus along it, and how high. */
static void
eye_on_axis (const FpPeople *people, const Row *front, FpVec3 focus, FpPoint axis, double *distance, double *height)
{
  double nearest = G_MAXDOUBLE;
  for (guint i = front->first; i < front->first + front->n; i++)
    {
      FpVec3 eye = fp_people_plain_eye (people, i, FP_POSTURE_SITTING);
      double x = eye.x - focus.x, y = eye.y - focus.y;
      double aside = fabs (x * axis.y - y * axis.x);
      if (aside < nearest)
        {
          nearest = aside;
          *distance = x * axis.x + y * axis.y;
          *height = eye.z - focus.z;
        }
    }
}

static void
add_row (GArray *out, const FpPeople *people, const Row *front, const Row *behind, FpVec3 focus)
{
  FpVec3 eye = fp_people_plain_eye (people, behind->first + behind->n / 2, FP_POSTURE_SITTING);
  double distance = hypot (eye.x - focus.x, eye.y - focus.y), d = 0, r = 0;
  if (!(distance > 0))
    return;
  FpPoint axis = { (eye.x - focus.x) / distance, (eye.y - focus.y) / distance };
  eye_on_axis (people, front, focus, axis, &d, &r);
  FpRowC row = {
    behind->owner, behind->row, behind->n, fp_c_value (d, r, eye.z - focus.z - r, distance - d), distance, distance - d, eye, focus,
  };
  g_array_append_val (out, row);
}

GArray *
fp_row_c_values (const FpPeople *people)
{
  GArray *out = g_array_new (FALSE, FALSE, sizeof (FpRowC));
  FpVec3 focus;
  if (!front_of_mensa (fp_people_scene (people), &focus))
    return out;

  guint n;
  const FpPersonPlace *place = fp_people_places (people, &n);
  g_autoptr (GArray) rows = sitting_rows (place, n);
  for (guint i = 1; i < rows->len; i++)
    {
      const Row *front = &g_array_index (rows, Row, i - 1), *behind = &g_array_index (rows, Row, i);
      if (front->owner == behind->owner && front->row + 1 == behind->row)
        add_row (out, people, front, behind, focus);
    }
  return out;
}

const FpRowC *
fp_row_c_first (const GArray *rows)
{
  const FpRowC *first = NULL;

  for (guint i = 0; i < rows->len; i++)
    {
      const FpRowC *row = &g_array_index (rows, FpRowC, i);
      if (first == NULL || row->distance < first->distance)
        first = row;
    }
  return first;
}
