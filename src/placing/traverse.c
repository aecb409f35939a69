/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "footpace/traverse.h"

#include <math.h>

#define DEGREE (G_PI / 180.0)

/* Right angles, of which churches are made, give whole millimetres. */
static FpPoint
heading (double direction)
{
  const double quarter = direction / 90.0;
  static const FpPoint square[] = { { 0, 1 }, { -1, 0 }, { 0, -1 }, { 1, 0 } };

  if (quarter == floor (quarter) && fabs (quarter) < 1e9)
    return square[(guint) (((gint64) quarter % 4 + 4) % 4)];
  return (FpPoint) { -sin (direction * DEGREE), cos (direction * DEGREE) };
}

void
fp_traverse_corners (const FpLeg *leg, guint n, FpPoint start, double direction, FpPoint *corner)
{
  corner[0] = start;
  for (guint i = 0; i < n; i++)
    {
      const FpPoint way = heading (direction);

      corner[i + 1] = (FpPoint) { corner[i].x + way.x * leg[i].length, corner[i].y + way.y * leg[i].length };
      direction += leg[i].turn;
    }
}

FpClosure
fp_traverse_closure (const FpLeg *leg, guint n, double direction)
{
  g_autofree FpPoint *corner = g_new (FpPoint, n + 1);
  FpClosure closure = { { 0, 0 }, 0, 0, 0 };
  double turned = 0;

  fp_traverse_corners (leg, n, (FpPoint) { 0, 0 }, direction, corner);
  for (guint i = 0; i < n; i++)
    {
      closure.walked += leg[i].length;
      turned += leg[i].turn;
    }
  closure.gap = (FpPoint) { 0.0 - corner[n].x, 0.0 - corner[n].y };
  closure.distance = hypot (closure.gap.x, closure.gap.y);
  closure.angle = fabs (turned) - 360.0;
  return closure;
}

double
fp_closure_limit (const FpClosure *closure)
{
  return closure->walked * FP_CLOSES_WITHIN;
}

gboolean
fp_closure_is_small (const FpClosure *closure)
{
  return closure->distance <= fp_closure_limit (closure);
}

/* Sides that are not ten times as long as the gap would be turned by it until nobody knows them again. */
gboolean
fp_traverse_can_keep (const FpLeg *leg, guint n, const gboolean *kept, const FpClosure *closure)
{
  double rest = 0;
  gboolean any = FALSE;

  for (guint i = 0; i < n; i++)
    {
      rest += kept[i] ? 0 : leg[i].length;
      any = any || kept[i];
    }
  return any && rest > 0 && rest >= closure->distance * 10.0;
}

static double
way_that_gives (const FpPoint *a, const FpPoint *b, gboolean kept)
{
  return kept ? 0 : hypot (b->x - a->x, b->y - a->y);
}

void
fp_traverse_adjust (FpPoint *corner, guint n, const gboolean *kept)
{
  const FpPoint gap = { corner[0].x - corner[n].x, corner[0].y - corner[n].y };
  double walked = 0, whole = 0;
  FpPoint before = corner[0];

  for (guint i = 0; i < n; i++)
    whole += way_that_gives (&corner[i], &corner[i + 1], kept != NULL && kept[i]);
  for (guint i = 1; i <= n && whole > 0; i++)
    {
      const FpPoint at = corner[i];

      walked += way_that_gives (&before, &at, kept != NULL && kept[i - 1]);
      corner[i] = (FpPoint) { at.x + gap.x * walked / whole, at.y + gap.y * walked / whole };
      before = at;
    }
  corner[n] = corner[0];
}

static double
direction_of (FpPoint a, FpPoint b)
{
  const double angle = atan2 (a.x - b.x, b.y - a.y) / DEGREE;

  /* What was drawn square is given back square. */
  return fabs (angle - round (angle)) < 1e-9 ? round (angle) : angle;
}

void
fp_traverse_from_outline (const FpPoint *corner, guint n, FpLeg *leg, double *direction)
{
  for (guint i = 0; i < n; i++)
    {
      const FpPoint a = corner[i], b = corner[(i + 1) % n], c = corner[(i + 2) % n];
      double turn = direction_of (b, c) - direction_of (a, b);

      if (turn > 180.0)
        turn -= 360.0;
      else if (turn <= -180.0)
        turn += 360.0;
      leg[i] = (FpLeg) { hypot (b.x - a.x, b.y - a.y), turn };
    }
  *direction = n > 1 ? direction_of (corner[0], corner[1]) : 0;
}
