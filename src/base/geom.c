/* SPDX-License-Identifier: GPL-3.0-or-later */
/* geom.c - points, boxes and placings on the plan */
#include "footpace/geom.h"

#include <math.h>

double
fp_vec3_length (FpVec3 a)
{
  return sqrt (fp_vec3_dot (a, a));
}

void
fp_box_add_point (FpBox *box, FpPoint p)
{
  box->x0 = MIN (box->x0, p.x);
  box->y0 = MIN (box->y0, p.y);
  box->x1 = MAX (box->x1, p.x);
  box->y1 = MAX (box->y1, p.y);
}

gboolean
fp_box_is_empty (const FpBox *box)
{
  return !(box->x1 >= box->x0 && box->y1 >= box->y0);
}

void
fp_box_add_box (FpBox *box, const FpBox *other)
{
  if (fp_box_is_empty (other))
    return;
  fp_box_add_point (box, (FpPoint) { other->x0, other->y0 });
  fp_box_add_point (box, (FpPoint) { other->x1, other->y1 });
}

gboolean
fp_box_overlaps (const FpBox *a, const FpBox *b)
{
  return !fp_box_is_empty (a) && !fp_box_is_empty (b)
         && a->x0 < b->x1 && b->x0 < a->x1 && a->y0 < b->y1 && b->y0 < a->y1;
}

/* Narrows the part from @from to @to of a segment (shares of it) to what lies between two bounds of one coordinate:
 * Liang and Barsky's clip (ACM Transactions on Graphics 3, 1984; from memory). */
static void
narrow (double a, double b, double low, double high, double *from, double *to)
{
  const double d = b - a;

  if (d == 0)
    {
      if (!(a > low && a < high))
        *to = *from;
      return;
    }
  *from = MAX (*from, MIN ((low - a) / d, (high - a) / d));
  *to = MIN (*to, MAX ((low - a) / d, (high - a) / d));
}

gboolean
fp_box_is_crossed (const FpBox *box, FpPoint a, FpPoint b)
{
  double from = 0, to = 1;

  narrow (a.x, b.x, box->x0, box->x1, &from, &to);
  narrow (a.y, b.y, box->y0, box->y1, &from, &to);
  return from < to;
}

void
fp_box3_add_point (FpBox3 *box, FpVec3 p)
{
  box->lo = (FpVec3) { MIN (box->lo.x, p.x), MIN (box->lo.y, p.y), MIN (box->lo.z, p.z) };
  box->hi = (FpVec3) { MAX (box->hi.x, p.x), MAX (box->hi.y, p.y), MAX (box->hi.z, p.z) };
}

void
fp_box3_add_box (FpBox3 *box, const FpBox3 *other)
{
  if (!(other->hi.x >= other->lo.x && other->hi.y >= other->lo.y && other->hi.z >= other->lo.z))
    return;
  fp_box3_add_point (box, other->lo);
  fp_box3_add_point (box, other->hi);
}

double
fp_segment_distance (FpPoint a, FpPoint b, FpPoint p)
{
  const double dx = b.x - a.x, dy = b.y - a.y;
  const double length2 = dx * dx + dy * dy;
  double t = 0;

  if (length2 > 0)
    t = CLAMP (((p.x - a.x) * dx + (p.y - a.y) * dy) / length2, 0.0, 1.0);
  return hypot (a.x + t * dx - p.x, a.y + t * dy - p.y);
}

/* Quarter turns are exact: a wall turned by 90 degrees must stay parallel to the axis, to the last bit. */
static void
find_turn_parts (double degrees, double *c, double *s)
{
  const double quarter = fmod (degrees, 360.0) / 90.0;
  static const double sine[4] = { 0, 1, 0, -1 };

  if (quarter == floor (quarter))
    {
      const int q = ((int) quarter + 4) % 4;
      *s = sine[q];
      *c = sine[(q + 1) % 4];
      return;
    }
  *c = cos (degrees * G_PI / 180.0);
  *s = sin (degrees * G_PI / 180.0);
}

/* Points come in dozens that are turned alike, the corners of one solid after another. */
static void
turn_parts (double degrees, double *c, double *s)
{
  static _Thread_local double last = 0.0, last_c = 1.0, last_s = 0.0;

  if (degrees != last)
    {
      find_turn_parts (degrees, &last_c, &last_s);
      last = degrees;
    }
  *c = last_c;
  *s = last_s;
}

FpPoint
fp_place_point (const FpPlace *place, FpPoint local)
{
  double c, s;

  turn_parts (place->turn, &c, &s);
  return (FpPoint) { place->x + c * local.x - s * local.y, place->y + s * local.x + c * local.y };
}

FpPoint
fp_place_unpoint (const FpPlace *place, FpPoint world)
{
  const double x = world.x - place->x, y = world.y - place->y;
  double c, s;

  turn_parts (place->turn, &c, &s);
  return (FpPoint) { c * x + s * y, c * y - s * x };
}

FpPlace
fp_place_compose (const FpPlace *outer, const FpPlace *inner)
{
  const FpPoint at = fp_place_point (outer, (FpPoint) { inner->x, inner->y });

  return (FpPlace) { at.x, at.y, outer->turn + inner->turn };
}
