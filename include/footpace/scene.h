/* SPDX-License-Identifier: GPL-3.0-or-later */
/* scene.h - one alternative, standing in space
 *
 * A scene is made from a project and never changes.  It answers where
 * everything stands, at what level, and of what solids it is made.
 *
 * Where a thing stands on the plan
 *  - on the floor, or of a kind that is FP_KIND_ON_FLOOR: its place is in
 *    church coordinates;
 *  - on something else: its place is relative to that thing's bearing: x from
 *    the middle of the bearing, y from the bearing's back, middle or front
 *    according to the kind's anchor, to the same edge (or middle) of the thing itself;
 *    so what touched the back still touches it when the altar grows deeper;
 *  - a kind FP_KIND_HUNG (a frontal) on something else: its place is relative to that thing's own
 *    origin, and its size is taken from it;
 *  - a kind FP_KIND_LAID_ROUND (a footpace) takes the place of the first
 *    thing that stands on it, and lies round that thing's plan.
 *
 * Its level is the top of what it stands on, or the floor beneath its origin
 * (the highest floor of the survey there, 0 where there is none).  Steps
 * between floors rise from the floor just before their lowest riser.
 */
#pragma once

#include "footpace/setting.h"

G_BEGIN_DECLS

typedef struct
{
  const FpItem *item;       /* borrowed from the scene's project            */
  FpStanding    standing;
  gboolean      ghost;      /* removed, or where a moved thing stood: drawn, never checked */
  gboolean      in_survey;
  gboolean      moved;
  int           support;    /* index of what it stands on, -1: the floor    */
  FpPlace       place;      /* in church coordinates                        */
  double        level;      /* above the datum                              */
  double        floor;      /* level of the floor (or footpace) on which its lowest support stands */
  FpForm        form;
  FpExtent      extent;     /* in its own coordinates                       */
  FpBox         plan;       /* extent.plan turned and moved: church coordinates */
  guint         first_solid, n_solids;
} FpPlaced;

typedef struct
{
  guint      owner;         /* index of the placed thing                    */
  FpFloorUse use;
  FpPoint   *outline;       /* church coordinates                           */
  guint      n_outline;
  double     z, gx, gy;     /* level at (x, y) is z + gx * x + gy * y       */
} FpFloor;

FpScene        *fp_scene_new   (const FpProject *project, guint alternative);
/* As it is set for a celebration: what does not stand then is not there, and hides, bears and measures nothing.  @whole: a
 * scene of all things. */
FpScene        *fp_scene_new_set (const FpScene *whole, FpCelebration one);
/* NULL: of all things. */
const FpSetting *fp_scene_setting (const FpScene *self);
FpScene        *fp_scene_ref   (const FpScene *self);
void            fp_scene_unref (const FpScene *self);

const FpProject *fp_scene_project     (const FpScene *self);
guint            fp_scene_alternative (const FpScene *self);

const FpPlaced *fp_scene_placed (const FpScene *self, guint *n);
int             fp_scene_find   (const FpScene *self, const char *id); /* not a ghost; -1 */
/* The first of that office that is not a ghost; -1.  For the altar: the one on
 * the highest level, and of equals the first. */
int             fp_scene_role   (const FpScene *self, FpRole role);

/**
 * fp_scene_celebrated_altar:
 *
 * The altar at which Mass is celebrated.  With several altars and the
 * celebrant facing the people, the freestanding one nearest to the people;
 * otherwise the highest, of equals the first.  Levels, sight, ministers and
 * rules are all about this one.
 *
 * Returns: its index; -1 where there is no altar
 */
int             fp_scene_celebrated_altar (const FpScene *self);
gboolean        fp_altar_is_free (const FpPlaced *altar); /* not told to stand against the wall */

/**
 * fp_scene_room_behind_altar:
 * @altar: index of it
 * @where: (out) (optional): that room where it is narrowest, in the altar's own coordinates; set where there is one
 *
 * From the back of the altar, over its length, to the next thing that one
 * meets in walking round it.  A platform is in the way however low: whoever
 * walks round does not step up and down.  Left out are floors and flights
 * between them, the altar's own steps, and what stands on it.
 *
 * Returns: mm; -1 where nothing is met within 20 m
 */
double          fp_scene_room_behind_altar (const FpScene *self, int altar, FpBox *where);

const FpSolid  *fp_scene_solids (const FpScene *self, guint *n); /* ghosts' included: see the owner */
const FpFloor  *fp_scene_floors (const FpScene *self, guint *n); /* not of ghosts */

/* Level of the highest walkable floor of the survey at a point; @found (out, optional)
 * FALSE where there is none (and 0 is returned). */
double          fp_scene_floor_at (const FpScene *self, FpPoint at, gboolean *found);

/* Design judgement, mm: how deep the way is on either side of an opening, and what is no door but an arch. */
#define FP_DOORWAY_DEPTH 900.0
#define FP_DOOR_WIDEST   3000.0

/**
 * fp_scene_doorway:
 * @opening: index of a placed thing
 * @way: (out): what has to be free for walking through: as wide as the opening, through the wall and
 *   %FP_DOORWAY_DEPTH beyond either face of it, up to where heads are; in the opening's own coordinates
 *
 * Returns: FALSE where it is no opening, or none by which people walk: it is
 *   too small, or its sill meets the floor on neither side
 */
gboolean        fp_scene_doorway (const FpScene *self, guint opening, FpBox3 *way);
/* Not so wide that things may well stand in it beside the way, as under the arch of a chancel. */
gboolean        fp_doorway_is_door (const FpBox3 *way);

/**
 * fp_scene_place_on:
 * @on: index of a placed thing, or -1 for the floor
 * @kind, @plan: of the thing to be put there, and its extent's plan
 * @church: where it should come, in church coordinates
 *
 * The inverse of what a scene does: the place to write into the item.
 */
FpPlace         fp_scene_place_on (const FpScene *self, int on, const FpKind *kind, const FpBox *plan, FpPlace church);

/* Church coordinates of a point given in a thing's own. */
FpVec3          fp_placed_point (const FpPlaced *placed, FpVec3 local);

FpBox3          fp_scene_box (const FpScene *self);       /* of all that is not a ghost   */
/* What the board frames first: altar, its steps, the rail, and the ministers' floors. */
FpBox3          fp_scene_sanctuary (const FpScene *self);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FpScene, fp_scene_unref)

G_END_DECLS
