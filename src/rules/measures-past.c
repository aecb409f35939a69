/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Who passes along a step of the altar beside somebody who stands on it. */
#include "measuring-ways.h"

#include <math.h>

/* mm.  J. J. Fruin, Pedestrian Planning and Design (1971), from memory: a body is taken for an ellipse of 24 by 18 in. */
#define BREADTH 610.0
#define DEPTH   457.0
#define SIDES   24

/* Design judgement, mm. */
#define BEFORE_TABLE 20.0   /* who stands at the altar all but touches it                       */
#define STANDING     280.0  /* of a step, so that a foot stands on it wholly (measures-places.c) */
#define FROM_END     150.0  /* of a step, its ends: there who passes begins                      */
#define AT_STEP      600.0
#define ACROSS       1e5    /* nobody passes between him and the altar, nor round behind it      */

/* One who stands before the altar (or behind it: @side is 1), his middle there, in the altar's coordinates. */
typedef struct
{
  const FpPlaced *altar;
  double side, x, y;
  double left, right; /* between which the level runs */
} Stands;

static FpPoint
of_altar (const FpPlaced *altar, double x, double y)
{
  return fp_place_point (&altar->place, (FpPoint) { x, y });
}

static FpWay *
way_past (const FpMeasuring *of, const Stands *who, const FpBar *edges, guint n_edges)
{
  const FpWayEnd from = { of_altar (who->altar, who->left + FROM_END, who->y), AT_STEP };
  const FpWayEnd to = { of_altar (who->altar, who->right - FROM_END, who->y), AT_STEP };
  const FpBar bar = { of_altar (who->altar, who->x, who->y), of_altar (who->altar, who->x, who->y - who->side * ACROSS) };
  FpPoint body[SIDES];

  for (guint i = 0; i < SIDES; i++)
    {
      const double a = 2 * G_PI * i / SIDES;
      body[i] = of_altar (who->altar, who->x + BREADTH / 2 * cos (a), who->y + DEPTH / 2 * sin (a));
    }
  return fp_way_among (of->scene, FP_GAIT_ON_FOOT, &from, &to, body, SIDES, edges, n_edges, &bar, 1);
}

/* The celebrant stands at the altar, and who passes stays on the footpace. */
void
fp_take_past_celebrant (const FpMeasuring *of, GArray *out)
{
  int index;
  const FpPlaced *altar = fp_measuring_celebrated (of, &index);
  const FpPlaced *steps = fp_measuring_placed (of, fp_measuring_footpace (of, altar));
  const gboolean behind = altar && altar->form.facing == FP_FACING_PEOPLE;
  const FpBox *own = altar ? &altar->extent.plan : NULL;

  if (!steps)
    return;
  {
    const double side = behind ? 1 : -1, face = behind ? own->y1 : own->y0, ends = fp_placed_param (steps, "ends", 0);
    const double edge = face + side * fp_placed_param (steps, behind ? "behind" : "front", 0);
    const Stands who = { altar, side, (own->x0 + own->x1) / 2, face + side * (BEFORE_TABLE + DEPTH / 2), own->x0 - ends, own->x1 + ends };
    const double other = behind ? own->y0 - fp_placed_param (steps, "front", 0) : own->y1 + fp_placed_param (steps, "behind", 0);
    const FpPoint corner[4] = { of_altar (altar, who.left, edge), of_altar (altar, who.right, edge), of_altar (altar, who.right, other),
                                of_altar (altar, who.left, other) };
    const FpBar edges[4] = { { corner[0], corner[1] }, { corner[1], corner[2] }, { corner[2], corner[3] }, { corner[3], corner[0] } };

    fp_measured_add_way (out, of, way_past (of, &who, edges, G_N_ELEMENTS (edges)), index,
                         of_altar (altar, who.x, edge), "behind who stands at the altar, on the footpace");
  }
}

/* Below the footpace who passes goes over the lower steps and the floor, too. */
void
fp_take_past_on_step (const FpMeasuring *of, GArray *out)
{
  const FpPlaced *altar = fp_measuring_celebrated (of, NULL);
  const int foot = fp_measuring_footpace (of, altar);
  const FpPlaced *steps = fp_measuring_placed (of, foot);
  const double count = steps ? fp_placed_param (steps, "count", 1) : 0, tread = steps ? fp_placed_param (steps, "tread", 0) : 0;
  const FpBox *own = altar ? &altar->extent.plan : NULL;

  for (double k = 1; k < count && tread >= STANDING; k++)
    {
      const double riser = own->y0 - fp_placed_param (steps, "front", 0) - (k - 1) * tread, ends = fp_placed_param (steps, "ends", 0);
      const Stands who = { altar, -1, (own->x0 + own->x1) / 2, riser - MIN (tread, DEPTH) / 2, own->x0 - ends, own->x1 + ends };
      g_autofree char *lead = g_strdup_printf ("behind who stands on step %.0f of %.0f from below", count - k, count);

      fp_measured_add_way (out, of, way_past (of, &who, NULL, 0), foot, of_altar (altar, who.x, who.y), lead);
    }
}
