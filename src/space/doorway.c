/* SPDX-License-Identifier: GPL-3.0-or-later */
/* doorway.c - by which openings people walk, and what they need free for it
 *
 * What no book says is design judgement: how high a threshold may lie, how
 * small a door may be, and how deep the way is before and behind it.
 */
#include "footpace/scene.h"

#include <math.h>

#define THRESHOLD   250.0  /* a sill that lies higher above the floor is not stepped over             */
#define LOW_SILL    300.0  /* likewise above the foot of the wall, where no floor was measured        */
#define NARROWEST   500.0
#define LOWEST      1500.0
#define HEAD_ROOM   2000.0 /* what hangs higher is in nobody's way                                    */
#define BEFORE_FACE 300.0  /* how far from the face of the wall the floor is asked for                */

static double
param_of (const FpItem *item, const char *id)
{
  const int i = fp_kind_param_index (fp_item_kind (item), id);

  return i >= 0 ? fp_item_params (item)[i] : 0;
}

static double
crown_of (const FpItem *opening)
{
  const double rise = param_of (opening, "arch") == 1 ? param_of (opening, "width") / 2 : 0;

  return MAX (param_of (opening, "head"), param_of (opening, "sill")) + rise;
}

/* Above the foot of the wall: the floor on the side of the opening that lies @left of the walk. */
static gboolean
floor_at_side (const FpScene *self, const FpPlaced *opening, double left, double *floor)
{
  const FpPoint at = fp_place_point (&opening->place, (FpPoint) { 0, left });
  gboolean found;

  *floor = fp_scene_floor_at (self, at, &found) - opening->level;
  return found;
}

/* Over its threshold and upright: a sill may be told too low, as where the wall's foot lies under the floor. */
static gboolean
is_passable (const FpItem *opening, double floor)
{
  const double sill = param_of (opening, "sill");

  return sill - floor <= THRESHOLD && crown_of (opening) - MAX (sill, floor) >= LOWEST;
}

/* From what level one walks through, above the foot of the wall. */
static gboolean
is_walked_through (const FpScene *self, const FpPlaced *opening, double thickness, double *level)
{
  const double sill = param_of (opening->item, "sill"), side[] = { -BEFORE_FACE, thickness + BEFORE_FACE };
  gboolean measured = FALSE;

  if (param_of (opening->item, "width") < NARROWEST)
    return FALSE;
  for (guint i = 0; i < G_N_ELEMENTS (side); i++)
    if (floor_at_side (self, opening, side[i], level))
      {
        const gboolean passable = is_passable (opening->item, *level);
        measured = TRUE;
        *level = MAX (*level, sill);
        if (passable)
          return TRUE;
      }
  *level = sill;
  return !measured && sill < LOW_SILL && is_passable (opening->item, sill);
}

gboolean
fp_scene_doorway (const FpScene *self, guint opening, FpBox3 *way)
{
  guint n;
  const FpPlaced *placed = fp_scene_placed (self, &n);
  const FpPlaced *door = opening < n ? &placed[opening] : NULL;
  double half, level, thickness;

  if (door == NULL || door->ghost || door->support < 0 || (fp_item_kind (door->item)->flags & FP_KIND_IN_WALL) == 0)
    return FALSE;
  thickness = param_of (placed[door->support].item, "thickness");
  if (!is_walked_through (self, door, thickness, &level))
    return FALSE;
  half = param_of (door->item, "width") / 2;
  *way = (FpBox3) { { -half, -FP_DOORWAY_DEPTH, level },
                    { half, thickness + FP_DOORWAY_DEPTH, MIN (crown_of (door->item), level + HEAD_ROOM) } };
  return TRUE;
}

gboolean
fp_doorway_is_door (const FpBox3 *way)
{
  return way->hi.x - way->lo.x <= FP_DOOR_WIDEST;
}
