/* SPDX-License-Identifier: GPL-3.0-or-later */
/* free-floor.h - the floor that is left to walk on, level by level
 *
 * What people walk on is the survey's floors, the treads of steps and ramps, and the altar's own steps with their footpace;
 * where several lie over each other, the highest.  Of each level all is taken away that stands there between the floor and
 * the heads of people.  Gates and doors count as open, and neither cloths nor people are in the way.  Left out are
 * galleries, and platforms of single things (an ambo, a throne): nobody passes over them.
 *
 * Areas are overlaid by GEOS (geos.osgeo.org).  Millimetres, church coordinates.
 */
#pragma once

#include "footpace/scene.h"

G_BEGIN_DECLS

/* Design judgement, mm: what rises less above its floor stops nobody; what hangs higher is walked under; and how near the
 * polygon that stands for a round thing keeps to it. */
#define FP_FREE_UNEVEN   50.0
#define FP_FREE_HEAD     2000.0
#define FP_FREE_SAGITTA  0.25

typedef struct
{
  double     z, gx, gy; /* level at (x, y) is z + gx * x + gy * y                         */
  FpFloorUse use;
  int        owner;     /* index of a placed thing that it belongs to                     */
  GArray    *rings;     /* (element-type FpRing): of each area its outer ring, then those of its holes */
} FpFreeLevel;

/* Where two levels meet: along @a to @b the second lies higher than the first by this much, less than 0: lower. */
typedef struct
{
  guint   level[2];
  FpPoint a, b;
  double  rise_a, rise_b;
} FpLevelJoint;

typedef struct _FpFreeFloor FpFreeFloor;

/* Made when it is first asked for, and kept with the scene; any thread may ask.  Borrowed from the scene. */
const FpFreeFloor  *fp_scene_free_floor    (const FpScene *scene);

const FpFreeLevel  *fp_free_floor_levels   (const FpFreeFloor *self, guint *n); /* the highest first */
const FpLevelJoint *fp_free_floor_joints   (const FpFreeFloor *self, guint *n);
/* The level that is free at a point, on its edge either answer; -1. */
int                 fp_free_floor_level_at (const FpFreeFloor *self, FpPoint at);
double              fp_free_level_area     (const FpFreeLevel *level); /* mm2 */
double              fp_free_level_height   (const FpFreeLevel *level, FpPoint at);

/* How far it is from a point of a level, (@dx, @dy) being of length 1, to where that level is left; @far where it is not. */
double              fp_free_level_ahead    (const FpFreeLevel *level, FpPoint from, double dx, double dy, double far);
/* The same to one side. */
double              fp_side_ahead          (FpPoint a, FpPoint b, FpPoint from, double dx, double dy, double far);

/* Whether people walk on the top of that solid, and whether it stands in the way of who does. */
gboolean            fp_solid_is_walked     (const FpScene *scene, const FpSolid *solid);
gboolean            fp_solid_is_in_the_way (const FpScene *scene, const FpSolid *solid);

G_END_DECLS
