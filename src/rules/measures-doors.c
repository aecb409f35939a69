/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the leaves of the doors strike as they open: things, steps, each other. */
#include "measure-evidence.h"
#include "measuring-ways.h"
#include "swing.h"

#include <math.h>

/* Design judgement, mm. */
#define UNDER_LEAF 15.0  /* a step that rises or falls more lies in the way of a leaf, or of who comes through  */
#define CLEAR      2.0   /* what lies so near to the face of the wall is the wall itself                       */
#define SIDES      24    /* of a quarter of a circle                                                           */

enum { UNSAID, NO_LEAF, NEARER, FARTHER, TWO }; /* in the order of the choices */

typedef struct
{
  int             door;
  const FpPlaced *opening;
  double          hinge, leaf; /* along the wall; the leaf less than 0 towards -x       */
  gboolean        outwards;
  double          at;          /* from the inner face of the wall                       */
  double          from;        /* of its way, what lies within the wall                 */
  double          floor;       /* level from which one walks through                    */
} Leaf;

typedef enum { BY_NOTHING, BY_THING, BY_STEP, BY_LEAF } Struck;

/* --- leaves ---------------------------------------------------------------------------- */

static void
add_leaf (GArray *out, const FpMeasuring *of, int door, const FpBox3 *way, double hinge, double leaf)
{
  const FpPlaced *opening = fp_measuring_placed (of, door), *wall = fp_measuring_placed (of, opening->support);
  Leaf one = { .door = door, .opening = opening, .hinge = hinge, .leaf = leaf };
  const double thickness = fp_placed_param (wall, "thickness", 0);

  one.outwards = fp_placed_param (opening, "opens", 0) > 0.5;
  one.at = fp_placed_param (opening, "leaf-at", 0);
  one.from = MAX (0, one.outwards ? thickness - one.at : one.at) + CLEAR;
  one.floor = opening->level + way->lo.z;
  g_array_append_val (out, one);
}

/* Of all doors that are walked through. */
static GArray *
leaves_new (const FpMeasuring *of)
{
  GArray *out = g_array_new (FALSE, FALSE, sizeof (Leaf));

  for (int i = fp_measuring_next (of, FP_ROLE_OPENING, -1); i >= 0; i = fp_measuring_next (of, FP_ROLE_OPENING, i))
    {
      const FpPlaced *opening = fp_measuring_placed (of, i);
      const guint leaves = (guint) fp_placed_param (opening, "leaves", UNSAID);
      const double width = fp_placed_param (opening, "width", 0);
      FpBox3 way;

      if (leaves <= NO_LEAF || !fp_scene_doorway (of->scene, (guint) i, &way))
        continue;
      if (leaves == NEARER || leaves == TWO)
        add_leaf (out, of, i, &way, -width / 2, leaves == TWO ? width / 2 : width);
      if (leaves == FARTHER || leaves == TWO)
        add_leaf (out, of, i, &way, width / 2, leaves == TWO ? -width / 2 : -width);
    }
  return out;
}

/* In the leaf's coordinates: x from its hinge along the shut leaf, y the way it opens. */
static FpPoint
in_leaf (const Leaf *self, FpPoint p)
{
  const FpPoint local = fp_placed_local (self->opening, p);

  return (FpPoint) { self->leaf > 0 ? local.x - self->hinge : self->hinge - local.x,
                     self->outwards ? local.y - self->at : self->at - local.y };
}

static FpPoint
from_leaf (const Leaf *self, FpPoint p)
{
  return fp_place_point (&self->opening->place, (FpPoint) { self->leaf > 0 ? self->hinge + p.x : self->hinge - p.x,
                                                            self->outwards ? self->at + p.y : self->at - p.y });
}

/* --- what is struck --------------------------------------------------------------------- */

static void
note_edges (const FpMeasuring *of, const Leaf *leaf, FpSwing *swing, Struck *by)
{
  const GArray *edges = fp_room_edges (of->scene, FP_GAIT_ON_FOOT);

  for (guint i = 0; i < edges->len; i++)
    {
      const FpBar *edge = &g_array_index (edges, FpBar, i);
      if (fp_swing_note (swing, in_leaf (leaf, edge->a), in_leaf (leaf, edge->b), leaf->from))
        *by = BY_THING;
    }
}

static double
step_at (const FpFreeLevel *level, const FpLevelJoint *joint, const Leaf *leaf)
{
  const double a = fp_free_level_height (&level[joint->level[0]], joint->a), b = fp_free_level_height (&level[joint->level[1]], joint->a);

  return MAX (fabs (a - leaf->floor), fabs (b - leaf->floor));
}

static void
note_steps (const FpMeasuring *of, const Leaf *leaf, FpSwing *swing, Struck *by)
{
  guint n, n_levels;
  const FpFreeFloor *floor = fp_scene_free_floor (of->scene);
  const FpLevelJoint *joint = fp_free_floor_joints (floor, &n);
  const FpFreeLevel *level = fp_free_floor_levels (floor, &n_levels);

  for (guint i = 0; i < n; i++)
    if (step_at (level, &joint[i], leaf) > UNDER_LEAF
        && fp_swing_note (swing, in_leaf (leaf, joint[i].a), in_leaf (leaf, joint[i].b), leaf->from))
      *by = BY_STEP;
}

/* The sector of another leaf as an outline: its hinge, and then its end as it opens. */
static FpPoint
corner_of (const Leaf *leaf, guint i)
{
  const double a = i > 0 ? (i - 1) * G_PI / 2 / SIDES : 0, r = i > 0 ? fabs (leaf->leaf) : 0;

  return from_leaf (leaf, (FpPoint) { r * cos (a), r * sin (a) });
}

/* Leaves of one door are made to go together. */
static void
note_leaves (const GArray *leaves, const Leaf *leaf, FpSwing *swing, Struck *by, int *other)
{
  for (guint i = 0; i < leaves->len; i++)
    {
      const Leaf *one = &g_array_index (leaves, Leaf, i);

      for (guint k = 0; one->door != leaf->door && k < SIDES + 2; k++)
        if (fp_swing_note (swing, in_leaf (leaf, corner_of (one, k)), in_leaf (leaf, corner_of (one, (k + 1) % (SIDES + 2))), leaf->from))
          {
            *by = BY_LEAF;
            *other = one->door;
          }
    }
}

/* --- told ---------------------------------------------------------------------------------- */

/* “Sacristy door” and “Credence” */
static char *
told (const FpMeasuring *of, const Leaf *leaf, Struck by, int other, FpPoint at)
{
  g_autofree char *door = fp_measuring_name (of, leaf->door);
  const int thing = by == BY_LEAF ? other : by == BY_THING ? fp_room_thing_at (of->scene, at, leaf->floor) : -1;
  g_autofree char *name = thing >= 0 ? fp_measuring_name (of, thing) : NULL;

  if (name != NULL)
    return g_strdup_printf ("“%s” and “%s”", door, name);
  return g_strdup_printf ("“%s” and %s", door, by == BY_STEP ? "a step" : "the edge of the floor");
}

static void
add_swing (const FpMeasuring *of, const GArray *leaves, const Leaf *leaf, GArray *out)
{
  const double width = fabs (leaf->leaf);
  FpSwing swing = FP_SWING (width);
  Struck by = BY_NOTHING;
  int other = -1;
  FpMeasured *measured;
  FpPoint at, end, edge[2];

  note_edges (of, leaf, &swing, &by);
  note_steps (of, leaf, &swing, &by);
  note_leaves (leaves, leaf, &swing, &by, &other);
  at = from_leaf (leaf, swing.at);
  measured = fp_measured_add_at (out, width - swing.nearest, leaf->door, (FpVec3) { at.x, at.y, leaf->floor });
  if (by == BY_NOTHING)
    return;
  measured->detail = told (of, leaf, by, other, at);
  fp_swing_edge (&swing, edge);
  at = from_leaf (leaf, edge[0]);
  end = from_leaf (leaf, edge[1]);
  fp_measured_span (measured, (FpVec3) { at.x, at.y, leaf->floor }, (FpVec3) { end.x, end.y, leaf->floor });
}

void
fp_take_door_swing (const FpMeasuring *of, GArray *out)
{
  g_autoptr (GArray) leaves = leaves_new (of);

  for (guint i = 0; i < leaves->len; i++)
    add_swing (of, leaves, &g_array_index (leaves, Leaf, i), out);
}

void
fp_show_door_swing (const FpMeasuring *of, const FpMeasured *one, FpEvidence *out)
{
  g_autoptr (GArray) leaves = leaves_new (of);

  for (guint i = 0; i < leaves->len; i++)
    {
      const Leaf *leaf = &g_array_index (leaves, Leaf, i);
      FpPoint arc[FP_SWING_ARC + 2];
      FpVec3 pt[FP_SWING_ARC + 2];

      if (leaf->door != one->owner)
        continue;
      fp_swing_arc (fabs (leaf->leaf), arc);
      for (guint k = 0; k < FP_SWING_ARC + 2; k++)
        {
          const FpPoint p = from_leaf (leaf, arc[k]);
          pt[k] = (FpVec3) { p.x, p.y, leaf->floor };
        }
      fp_evidence_add_run (out, pt, FP_SWING_ARC + 2);
    }
  if (one->has_span)
    fp_evidence_add_length (out, one->span[0], one->span[1], 1);
}
