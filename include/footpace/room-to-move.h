/* SPDX-License-Identifier: GPL-3.0-or-later */
/* room-to-move.h - how wide a body gets from one place to another, and where it is narrowest
 *
 * A body is a circle on the plan: of people side by side, of a procession, of a wheelchair that turns where it stands.  It
 * moves over the free floor (free-floor.h) and over what joins its levels.  The widest that gets through is found along
 * what is equally far from everything: the edges of the free floor are divided into short pieces, the pieces' ends are
 * triangulated after Delaunay by GEOS (geos.osgeo.org), and a body passes between two of them just when it is no wider than
 * the distance of their pieces.  Of all ways the one counts whose narrowest place is the widest.
 *
 * Where there are more edges than ten cathedrals have, no way is looked for, and none is found.
 *
 * Millimetres, church coordinates.  All of it follows from the scene alone; any thread may ask.
 */
#pragma once

#include "footpace/free-floor.h"

G_BEGIN_DECLS

typedef enum
{
  FP_GAIT_ON_FOOT,   /* steps are taken up to FP_CLIMB_ON_FOOT                                     */
  FP_GAIT_ON_WHEELS, /* no step but a threshold, and no slope that is steeper than a ramp may be   */
  FP_N_GAITS
} FpGait;

#define FP_CLIMB_ON_FOOT   250.0        /* mm: design judgement; no rulebook has a riser as high          */
#define FP_CLIMB_ON_WHEELS 13.0         /* mm: 1/2 in with a bevel, 2010 ADA Standards 303.3, from memory */
#define FP_RAMP_STEEPEST   (1.0 / 12.0) /* 2010 ADA Standards 405.2, as reported                          */

/* Pieces of edges are no longer than this, so that a width is told too great by its square divided by eight times the width
 * at most: by 1 mm at 800 mm, by less where it is wider. */
#define FP_WAY_PIECE 80.0
/* Nobody passes where it is narrower (design judgement), and so narrow a way is told as none. */
#define FP_WAY_LEAST 400.0

typedef enum
{
  FP_WAY_BY_THING, /* something stands there                    */
  FP_WAY_BY_STEP,  /* a step that is not taken                  */
  FP_WAY_BY_END,   /* the floor ends                            */
  FP_WAY_BY_BODY   /* somebody stands there (fp_way_among())    */
} FpWayBy;

/* Where a way begins or ends: the middle of the body comes within @reach of there, without passing anything narrower than
 * FP_WAY_LEAST. */
typedef struct { FpPoint at; double reach; } FpWayEnd;

/* A line that is not crossed; it runs right across, from one thing or edge to another. */
typedef struct { FpPoint a, b; } FpBar;

typedef struct
{
  double   width;      /* of the widest body; 0: there is no way                                */
  double   tolerance;  /* how much less it may be in truth                                      */
  gboolean narrows;    /* FALSE: begin and end lie in one open space, which is as wide as that   */
  FpPoint  narrow[2];  /* the narrowest place: the points between which the body goes           */
  FpWayBy beside[2];  /* what is on either side of it                                          */
  int      owner[2];   /* index of the placed thing that stands there; -1                       */
  FpPoint *route;      /* a way on which the middle of that body can go, not straightened further than it has room for */
  guint    n_route;
  double   length;     /* of the route                                                          */
  FpPoint *outline;    /* of a body that is no circle: a bier where it is tightest, or who stands beside the way; NULL */
  guint    n_outline;
} FpWay;

/**
 * fp_way_widest:
 * @bar: lines that are not crossed, as before the front of an altar
 *
 * The widest body that gets from @from to @to.
 */
FpWay *fp_way_widest (const FpScene *scene, FpGait gait, const FpWayEnd *from, const FpWayEnd *to, const FpBar *bar,
                      guint n_bars);

/**
 * fp_way_among:
 * @stands: the outline of somebody who stands there: room is kept to him, as to things
 * @edges: lines to which room is kept likewise, on either side
 * @bar: lines that are not crossed
 *
 * The same with more in the way; looked for no farther than 4 m about begin, end and who stands there.
 */
FpWay *fp_way_among  (const FpScene *scene, FpGait gait, const FpWayEnd *from, const FpWayEnd *to, const FpPoint *stands,
                      guint n_stands, const FpBar *edges, guint n_edges, const FpBar *bar, guint n_bars);

/* Where a bier begins or ends: its middle within @reach, its length in that direction, degrees, 0 = towards +y, or against it;
 * where it ends, NAN: in any. */
typedef struct { FpPoint at; double reach, turn; } FpBierEnd;

/* A door by which it comes in: between the jambs, through a wall so thick, and from outside, where 1.5 m beyond either jamb
 * are taken to be free.  @out: the way out, of length 1. */
typedef struct { FpPoint jamb[2], out; double thickness; } FpBierDoor;

/* mm: by so much a bier that gets round a corner may be wider than is told, as tried against closed forms and floods. */
#define FP_BIER_SLACK 25.0

/**
 * fp_way_of_bier:
 * @length: of the bier
 * @most: a bier that is wider is not asked for
 * @from: where it begins; outside the door, where there is one
 * @door: (nullable)
 *
 * The widest bier of that length, a rectangle, that gets from @from to @to on foot, turned as it must be.  It is moved to all
 * sides and turned in steps, of 100 mm and 6 degrees, and then, about the best way of those, in steps that are halved twice;
 * at each it stands in the middle of what there is across it.  On the way that is told a bier of that width has its room
 * everywhere, to 4 mm, which is its tolerance; it may be a little too narrow (FP_BIER_SLACK), where it has to turn.
 *
 * Where it would take too many steps no way is told.
 */
FpWay *fp_way_of_bier (const FpScene *scene, double length, double most, const FpBierEnd *from, const FpBierDoor *door,
                       const FpBierEnd *to);

/* The placed thing on whose outline that point lies, furniture before the wall against which it stands; -1. */
int    fp_room_thing_at (const FpScene *scene, FpPoint at, double floor);

/**
 * fp_way_round:
 * @around: a point within what is walked round
 * @within: an outline about it: what lies in it may be walked round together with it, and nothing else
 *
 * The widest body that gets all the way round.
 */
FpWay *fp_way_round (const FpScene *scene, FpGait gait, FpPoint around, const FpPoint *within, guint n_within);
FpWay *fp_way_copy  (const FpWay *self); /* of NULL: NULL */
void   fp_way_free  (FpWay *self);

/**
 * fp_room_circle:
 * @within: an outline in which its middle lies
 * @middle: (out) (optional)
 *
 * Returns: the diameter of the largest circle that is free of everything and of every step that is not taken; 0: none
 */
double fp_room_circle (const FpScene *scene, FpGait gait, const FpPoint *within, guint n_within, FpPoint *middle);

/* How far one gets from a point straight on, (@dx, @dy) being of length 1, before a thing, a step that is not taken, or the end
 * of the floor; @far where there is none so near. */
double fp_room_ahead (const FpScene *scene, FpGait gait, FpPoint from, double dx, double dy, double far);

/* The edges that are not crossed: (element-type FpBar), what is free on the left of each; borrowed from the scene. */
const GArray *fp_room_edges (const FpScene *scene, FpGait gait);

/* How far it is from a point to the nearest thing, step or end of the floor; 0 where nothing is free. */
double fp_room_clear_about (const FpScene *scene, FpGait gait, FpPoint at);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FpWay, fp_way_free)

G_END_DECLS
