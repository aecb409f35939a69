/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the leaves of gates and the door of the tabernacle strike as they open. */
#include "measure-evidence.h"
#include "measuring-ways.h"
#include "swing.h"

#include <math.h>

/* Design judgement, mm. */
#define UNDER_GATE 55.0  /* a step that rises more stops a leaf, which hangs 60 above its own floor               */
#define CLEAR      2.0   /* what lies so near to the line of the gate is the rail itself                          */
#define OPENS      0.62  /* of the width of a tabernacle is its door, as its kind has it                          */
#define SIDES      24    /* of the polygon that stands for a round thing                                          */

/* --- gates ---------------------------------------------------------------------------- */

/* In the leaf's coordinates: x from its hinge to the middle of the gate, y towards the altar. */
static FpPoint
in_leaf (const FpPlaced *rail, double hinge, FpPoint p)
{
  const FpPoint local = fp_placed_local (rail, p);

  return (FpPoint) { hinge < 0 ? local.x - hinge : hinge - local.x, local.y };
}

static FpPoint
from_leaf (const FpPlaced *rail, double hinge, FpPoint p)
{
  return fp_place_point (&rail->place, (FpPoint) { hinge < 0 ? hinge + p.x : hinge - p.x, p.y });
}

static void
note_steps_up (const FpMeasuring *of, const FpPlaced *rail, double hinge, double from, FpSwing *swing)
{
  guint n, n_levels;
  const FpFreeFloor *floor = fp_scene_free_floor (of->scene);
  const FpLevelJoint *joint = fp_free_floor_joints (floor, &n);
  const FpFreeLevel *level = fp_free_floor_levels (floor, &n_levels);

  for (guint i = 0; i < n; i++)
    if (MAX (fp_free_level_height (&level[joint[i].level[0]], joint[i].a), fp_free_level_height (&level[joint[i].level[1]], joint[i].a))
        > rail->level + UNDER_GATE)
      fp_swing_note (swing, in_leaf (rail, hinge, joint[i].a), in_leaf (rail, hinge, joint[i].b), from);
}

static FpSwing
swing_of_leaf (const FpMeasuring *of, const FpPlaced *rail, double hinge)
{
  const GArray *edges = fp_room_edges (of->scene, FP_GAIT_ON_FOOT);
  const double from = fp_placed_param (rail, "top", 0) / 2 + CLEAR;
  FpSwing swing = FP_SWING (fabs (hinge));

  for (guint i = 0; i < edges->len; i++)
    {
      const FpBar *edge = &g_array_index (edges, FpBar, i);
      fp_swing_note (&swing, in_leaf (rail, hinge, edge->a), in_leaf (rail, hinge, edge->b), from);
    }
  note_steps_up (of, rail, hinge, from, &swing);
  return swing;
}

/* Both leaves open towards the altar, as they are drawn. */
void
fp_take_gate_swing (const FpMeasuring *of, GArray *out)
{
  for (int i = fp_measuring_next (of, FP_ROLE_RAIL, -1); i >= 0; i = fp_measuring_next (of, FP_ROLE_RAIL, i))
    {
      const FpPlaced *rail = fp_measuring_placed (of, i);
      const double half = fp_placed_param (rail, "gate", 0) / 2;
      double most = 0;
      FpPoint at = { rail->place.x, rail->place.y }, edge[2] = { at, at };

      if (!(half > 0) || fp_placed_param (rail, "bow", 0) > 1)
        continue;
      for (int side = -1; side <= 1; side += 2)
        {
          const FpSwing swing = swing_of_leaf (of, rail, side * half);
          if (swing.leaf - swing.nearest > most)
            {
              most = swing.leaf - swing.nearest;
              at = from_leaf (rail, side * half, swing.at);
              fp_swing_edge (&swing, edge);
              for (guint k = 0; k < 2; k++)
                edge[k] = from_leaf (rail, side * half, edge[k]);
            }
        }
      fp_measured_span (fp_measured_add_at (out, most, i, (FpVec3) { at.x, at.y, rail->level }),
                        (FpVec3) { edge[0].x, edge[0].y, rail->level }, (FpVec3) { edge[1].x, edge[1].y, rail->level });
    }
}

void
fp_show_gate_swing (const FpMeasuring *of, const FpMeasured *one, FpEvidence *out)
{
  const FpPlaced *rail = fp_measuring_placed (of, one->owner);
  const double half = fp_placed_param (rail, "gate", 0) / 2;

  for (int side = -1; side <= 1; side += 2)
    {
      FpPoint arc[FP_SWING_ARC + 2];
      FpVec3 pt[FP_SWING_ARC + 2];

      fp_swing_arc (half, arc);
      for (guint i = 0; i < FP_SWING_ARC + 2; i++)
        {
          const FpPoint p = from_leaf (rail, side * half, arc[i]);
          pt[i] = (FpVec3) { p.x, p.y, rail->level };
        }
      fp_evidence_add_run (out, pt, FP_SWING_ARC + 2);
    }
  fp_evidence_add_length (out, one->span[0], one->span[1], 1);
}

/* --- the tabernacle ------------------------------------------------------------------------ */

/* From the leaf's coordinates; the door turns towards the front, which is -y. */
static FpVec3
from_door (const FpPlaced *tabernacle, double hinge, FpPoint p)
{
  return fp_placed_point (tabernacle, (FpVec3) { hinge < 0 ? hinge + p.x : hinge - p.x, tabernacle->extent.plan.y0 - p.y,
                                                 tabernacle->extent.height / 2 });
}

static void
note_solid (const FpPlaced *tabernacle, const FpSolid *solid, double hinge, FpSwing *swing)
{
  const double r = solid->shape == FP_SOLID_ROUND ? MAX (solid->r0, solid->r1) : MAX (solid->rx, solid->ry);
  const guint n = solid->shape == FP_SOLID_PRISM ? solid->n_outline : SIDES;
  FpPoint before = { 0, 0 };

  for (guint i = 0; i <= n; i++)
    {
      const double a = 2 * G_PI * (i % n) / n;
      const FpPoint p = solid->shape == FP_SOLID_PRISM ? solid->outline[i % n]
                                                       : (FpPoint) { solid->cx + r * cos (a), solid->cy + r * sin (a) };
      const FpPoint local = fp_placed_local (tabernacle, p);
      /* The door turns towards the front, which is -y. */
      const FpPoint leaf = { hinge < 0 ? local.x - hinge : hinge - local.x, tabernacle->extent.plan.y0 - local.y };

      if (i > 0)
        fp_swing_note (swing, before, leaf, CLEAR);
      before = leaf;
    }
}

static gboolean
may_be_struck (const FpMeasuring *of, int tabernacle, const FpSolid *solid)
{
  const FpPlaced *owner = fp_measuring_placed (of, (int) solid->owner), *placed = fp_measuring_placed (of, tabernacle);
  const FpBox3 box = fp_solid_box (solid);

  /* Cards and cloths are taken away, and lie under it. */
  return !owner->ghost && (int) solid->owner != tabernacle && solid->part != FP_PART_CLOTH && solid->part != FP_PART_CARD
         && (fp_item_kind (owner->item)->flags & FP_KIND_HUNG) == 0 && !fp_measuring_stands_on (of, (int) solid->owner, tabernacle)
         && box.hi.z > placed->level + CLEAR && box.lo.z < placed->level + placed->extent.height * 0.8
         && fp_box_overlaps (&(FpBox) { box.lo.x, box.lo.y, box.hi.x, box.hi.y },
                             &(FpBox) { placed->plan.x0 - 1000, placed->plan.y0 - 1000, placed->plan.x1 + 1000, placed->plan.y1 + 1000 });
}

static FpSwing
swing_of_door (const FpMeasuring *of, int index, double hinge)
{
  guint n;
  const FpSolid *solid = fp_scene_solids (of->scene, &n);
  FpSwing swing = FP_SWING (2 * fabs (hinge));

  for (guint i = 0; i < n; i++)
    if (may_be_struck (of, index, &solid[i]))
      note_solid (fp_measuring_placed (of, index), &solid[i], hinge, &swing);
  return swing;
}

/* Hung on the side on which it strikes less. */
void
fp_take_tabernacle_swing (const FpMeasuring *of, GArray *out)
{
  for (int i = fp_measuring_next (of, FP_ROLE_TABERNACLE, -1); i >= 0; i = fp_measuring_next (of, FP_ROLE_TABERNACLE, i))
    {
      const FpPlaced *placed = fp_measuring_placed (of, i);
      const double half = fp_placed_param (placed, "width", 0) * OPENS / 2;
      const FpSwing left = swing_of_door (of, i, -half), right = swing_of_door (of, i, half);
      const gboolean on_left = left.nearest >= right.nearest;
      const FpSwing *better = on_left ? &left : &right;
      FpPoint edge[2];

      fp_swing_edge (better, edge);
      fp_measured_span (fp_measured_add_at (out, MAX (0, better->leaf - better->nearest), i,
                                            fp_placed_point (placed, (FpVec3) { 0, placed->extent.plan.y0, placed->extent.height / 2 })),
                        from_door (placed, on_left ? -half : half, edge[0]), from_door (placed, on_left ? -half : half, edge[1]));
    }
}

void
fp_show_tabernacle_swing (const FpMeasuring *of, const FpMeasured *one, FpEvidence *out)
{
  const FpPlaced *placed = fp_measuring_placed (of, one->owner);
  const double half = fp_placed_param (placed, "width", 0) * OPENS / 2;
  const double hinge = swing_of_door (of, one->owner, -half).nearest >= swing_of_door (of, one->owner, half).nearest ? -half : half;
  FpPoint arc[FP_SWING_ARC + 2];
  FpVec3 pt[FP_SWING_ARC + 2];

  fp_swing_arc (2 * half, arc);
  for (guint i = 0; i < FP_SWING_ARC + 2; i++)
    pt[i] = from_door (placed, hinge, arc[i]);
  fp_evidence_add_run (out, pt, FP_SWING_ARC + 2);
  fp_evidence_add_length (out, one->span[0], one->span[1], 1);
}
