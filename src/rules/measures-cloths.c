/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What hangs on the altar and over it, and what stands on it or on the credence and does not belong there. */
#include "measure-evidence.h"

#include <math.h>

void
fp_take_cloths (const FpMeasuring *of, GArray *out)
{
  for (int i = fp_measuring_next (of, FP_ROLE_ALTAR_CLOTHS, -1); i >= 0; i = fp_measuring_next (of, FP_ROLE_ALTAR_CLOTHS, i))
    {
      const FpPlaced *cloths = fp_measuring_placed (of, i);

      fp_measured_add_at (out, fp_placed_param (cloths, "layers", 1), i, fp_placed_middle (cloths, 0));
    }
}

void
fp_take_cloth_drop (const FpMeasuring *of, GArray *out)
{
  for (int i = fp_measuring_next (of, FP_ROLE_ALTAR_CLOTHS, -1); i >= 0; i = fp_measuring_next (of, FP_ROLE_ALTAR_CLOTHS, i))
    {
      const FpPlaced *cloths = fp_measuring_placed (of, i), *altar = fp_measuring_placed (of, cloths->support);
      const double drop = fp_placed_param (altar ? altar : cloths, "height", NAN) - fp_placed_param (cloths, "clear", NAN);

      if (altar && !isnan (drop))
        {
          const FpVec3 edge = { cloths->form.core.x1, cloths->form.core.y0, 0 };

          fp_measured_span (fp_measured_add_at (out, MAX (drop, 0), i, fp_placed_middle (cloths, 0)), fp_placed_point (cloths, edge),
                            fp_placed_point (cloths, (FpVec3) { edge.x, edge.y, -MAX (drop, 0) }));
        }
    }
}

/* By how much one box reaches out beyond another, on the side where it is most. @from, @to: (out): there */
static double
reaches_out (const FpBox *what, const FpBox *beyond, FpPoint *from, FpPoint *to)
{
  const double side[4] = { beyond->x0 - what->x0, what->x1 - beyond->x1, beyond->y0 - what->y0, what->y1 - beyond->y1 };
  const FpPoint middle = { (what->x0 + what->x1) / 2, (what->y0 + what->y1) / 2 };
  guint most = 0;

  for (guint i = 1; i < 4; i++)
    if (side[i] > side[most])
      most = i;
  *from = most < 2 ? (FpPoint) { most == 0 ? beyond->x0 : beyond->x1, middle.y } : (FpPoint) { middle.x, most == 2 ? beyond->y0 : beyond->y1 };
  *to = most < 2 ? (FpPoint) { most == 0 ? what->x0 : what->x1, middle.y } : (FpPoint) { middle.x, most == 2 ? what->y0 : what->y1 };
  return side[most];
}

void
fp_take_canopy_short (const FpMeasuring *of, GArray *out)
{
  const FpPlaced *altar = fp_measuring_celebrated (of, NULL);
  const FpPlaced *footpace = fp_measuring_placed (of, fp_measuring_footpace (of, altar));

  if (!altar)
    return;
  for (int i = fp_measuring_next (of, FP_ROLE_CANOPY, -1); i >= 0; i = fp_measuring_next (of, FP_ROLE_CANOPY, i))
    {
      const FpPlaced *canopy = fp_measuring_placed (of, i);
      const FpBox over = fp_placed_box_in (canopy, altar), under = fp_placed_box_in (altar, altar);
      FpBox top = under;

      if (footpace)
        {
          /* The footpace is what one stands on at the altar; its lower steps are not. */
          top.x0 -= fp_placed_param (footpace, "ends", 0);
          top.x1 += fp_placed_param (footpace, "ends", 0);
          top.y0 -= fp_placed_param (footpace, "front", 0);
          top.y1 += fp_placed_param (footpace, "behind", 0);
        }
      {
        FpPoint from, to;
        const double out_by = reaches_out (&top, &over, &from, &to);

        if (out_by < 0)
          to = from;
        fp_measured_span (fp_measured_add_at (out, MAX (out_by, 0), i, fp_placed_middle (canopy, 0)),
                          fp_placed_point (altar, (FpVec3) { from.x, from.y, 0 }), fp_placed_point (altar, (FpVec3) { to.x, to.y, 0 }));
      }
    }
}

/* --- what does not belong there --------------------------------------------------------- */

static const FpRole ornaments[] = { FP_ROLE_FLOWERS, FP_ROLE_CRUCIFIX, FP_ROLE_STATUE, FP_ROLE_RELIQUARIES };

static void
take_on (const FpMeasuring *of, GArray *out, int base, const FpRole *roles, guint n)
{
  guint there = 0;
  int owner = base;

  for (guint r = 0; r < n; r++)
    for (int i = fp_measuring_next (of, roles[r], -1); i >= 0; i = fp_measuring_next (of, roles[r], i))
      if (fp_measuring_placed (of, i)->support == base)
        {
          there++;
          owner = i;
        }
  fp_measured_add_at (out, there, owner, fp_placed_middle (fp_measuring_placed (of, owner), 0));
}

void
fp_take_ornaments_on_credence (const FpMeasuring *of, GArray *out)
{
  for (int i = fp_measuring_next (of, FP_ROLE_CREDENCE, -1); i >= 0; i = fp_measuring_next (of, FP_ROLE_CREDENCE, i))
    take_on (of, out, i, ornaments, G_N_ELEMENTS (ornaments));
}

void
fp_take_flowers_on_altar (const FpMeasuring *of, GArray *out)
{
  static const FpRole flowers = FP_ROLE_FLOWERS;
  int altar;

  if (fp_measuring_celebrated (of, &altar))
    take_on (of, out, altar, &flowers, 1);
}

/* --- drawn -------------------------------------------------------------------------------- */

static void
show_on (const FpMeasuring *of, int base, const FpRole *roles, guint n, FpEvidence *out)
{
  for (guint r = 0; r < n; r++)
    for (int i = fp_measuring_next (of, roles[r], -1); i >= 0; i = fp_measuring_next (of, roles[r], i))
      if (fp_measuring_placed (of, i)->support == base)
        fp_evidence_add_thing (out, of, i);
}

/* Of what was counted last it is known on what it stands. */
void
fp_show_ornaments_on_credence (const FpMeasuring *of, const FpMeasured *one, FpEvidence *out)
{
  const FpPlaced *owner = fp_measuring_placed (of, one->owner);
  const gboolean is_table = fp_placed_role (owner) == FP_ROLE_CREDENCE;

  show_on (of, is_table ? one->owner : owner->support, ornaments, G_N_ELEMENTS (ornaments), out);
}

void
fp_show_flowers_on_altar (const FpMeasuring *of, const FpMeasured *one, FpEvidence *out)
{
  static const FpRole flowers = FP_ROLE_FLOWERS;
  int altar;

  (void) one;
  if (fp_measuring_celebrated (of, &altar))
    show_on (of, altar, &flowers, 1, out);
}
