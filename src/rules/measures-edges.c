/* SPDX-License-Identifier: GPL-3.0-or-later */
/* How the edges of steps are told from their treads: of flights between floors, and of the altar's steps. */
#include "measuring.h"

#include <string.h>

enum { UNSAID, PLAIN, MARKED }; /* in the order of the choices */

static const char nobody_said[] = "nobody said how the edges of the steps are told from their treads";

/* On the first step, in its middle; what is marked of the tread lies behind its edge, what is marked of the riser below it. */
static void
show (const FpPlaced *placed, const char *param, FpMeasured *measured)
{
  const FpBox *plan = &placed->extent.plan;
  const double top = fp_placed_param (placed, "riser", 0), wide = measured->value;
  const FpVec3 edge = { (plan->x0 + plan->x1) / 2, plan->y0, top };
  const FpVec3 end = strcmp (param, "edge-riser") == 0 ? (FpVec3) { edge.x, edge.y, top - wide } : (FpVec3) { edge.x, edge.y + wide, top };

  measured->at = fp_placed_point (placed, edge);
  measured->has_at = TRUE;
  if (wide > 0 && strcmp (param, "edge-contrast") != 0)
    fp_measured_span (measured, measured->at, fp_placed_point (placed, end));
}

/* An edge like its tread has a marking of 0. */
static void
take_of (const FpMeasuring *of, int index, const char *param, GArray *out)
{
  const FpPlaced *placed = fp_measuring_placed (of, index);
  const guint edge = (guint) fp_placed_param (placed, "edge", UNSAID);
  FpMeasured *measured;

  if (edge == UNSAID)
    {
      fp_measured_add_nothing (out, nobody_said);
      return;
    }
  if (edge == PLAIN && strcmp (param, "edge-contrast") == 0)
    {
      fp_measured_add_nothing (out, "the edges of the steps are like their treads");
      return;
    }
  measured = fp_measured_add (out, edge == MARKED ? fp_placed_param (placed, param, 0) : 0);
  measured->owner = index;
  measured->text = edge == PLAIN ? g_strdup ("not marked") : NULL;
  show (placed, param, measured);
}

static void
take_flights (const FpMeasuring *of, const char *param, GArray *out)
{
  for (int i = fp_measuring_next (of, FP_ROLE_STEPS, -1); i >= 0; i = fp_measuring_next (of, FP_ROLE_STEPS, i))
    take_of (of, i, param, out);
}

static void
take_altar (const FpMeasuring *of, const char *param, GArray *out)
{
  const int index = fp_measuring_footpace (of, fp_measuring_celebrated (of, NULL));

  if (index >= 0)
    take_of (of, index, param, out);
}

void
fp_take_flight_edge_tread (const FpMeasuring *of, GArray *out)
{
  take_flights (of, "edge-tread", out);
}

void
fp_take_flight_edge_riser (const FpMeasuring *of, GArray *out)
{
  take_flights (of, "edge-riser", out);
}

void
fp_take_flight_edge_contrast (const FpMeasuring *of, GArray *out)
{
  take_flights (of, "edge-contrast", out);
}

void
fp_take_altar_edge_tread (const FpMeasuring *of, GArray *out)
{
  take_altar (of, "edge-tread", out);
}

void
fp_take_altar_edge_contrast (const FpMeasuring *of, GArray *out)
{
  take_altar (of, "edge-contrast", out);
}
