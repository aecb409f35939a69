/* SPDX-License-Identifier: GPL-3.0-or-later */
/* solid.h - the few bodies of which everything is made
 *
 * A scene is solids: one list serves every projection, every check and every
 * quantity, so they cannot disagree.  Millimetres throughout.
 *
 * Invariants: an outline is simple and runs counter-clockwise; inside it the
 * foot lies below the top; radii are >= 0 and not both 0.
 */
#pragma once

#include "footpace/geom.h"

G_BEGIN_DECLS

typedef enum
{
  FP_SOLID_PRISM,     /* outline, between two planes that may slope         */
  FP_SOLID_ROUND,     /* upright frustum: radius r0 at z0, r1 at z1         */
  FP_SOLID_ELLIPSOID, /* half-axes rx, ry, rz about (cx, cy, cz), turned on the plan */
} FpSolidShape;

/* What a piece is: drawings choose pens by it, checks choose obstacles. */
typedef enum
{
  FP_PART_BODY,      /* anything without a name of its own                  */
  FP_PART_FLOOR,     /* a floor slab                                        */
  FP_PART_WALL,
  FP_PART_PIER,
  FP_PART_STEP,      /* one step, its whole height down to the floor below  */
  FP_PART_FOOTPACE,  /* the platform itself                                 */
  FP_PART_MENSA,
  FP_PART_SUPPORT,   /* what carries a mensa: block, legs, chest            */
  FP_PART_SHELF,     /* gradine, desk, top of a credence                    */
  FP_PART_DOOR,      /* of the tabernacle                                   */
  FP_PART_CROSS,
  FP_PART_CORPUS,
  FP_PART_STICK,     /* candlestick                                         */
  FP_PART_CANDLE,
  FP_PART_PANEL,     /* reredos, screens                                    */
  FP_PART_RAIL_TOP,
  FP_PART_RAIL_POST,
  FP_PART_GATE,
  FP_PART_SEAT,      /* benches, pews, chairs                               */
  FP_PART_BACK,      /* their backs                                         */
  FP_PART_HEAD,      /* of a person                                         */
  FP_PART_TRUNK,
  FP_PART_CARD,      /* an altar card: it stands there at Mass alone, before what is looked at when there is none */
  FP_PART_CLOTH,     /* linen and silk that lies or hangs: other things stand on it and against it */
  FP_PART_FLOWERS,
} FpPart;

typedef struct
{
  FpSolidShape shape;
  FpPart       part;
  const char  *called;   /* "plinth", where one part has pieces of several names: static; NULL */
  guint        owner;    /* index into the scene's placed things            */
  /* prism: the top is z = z1 + gx * x + gy * y (x, y as the outline's), the foot z = z0 + bx * x + by * y;
   * level when both slopes are 0.  Where a foot slopes z0 is not a level that is met: ask fp_solid_foot_at() */
  FpPoint     *outline;  /* owned by the list that holds the solid          */
  guint        n_outline;
  double       z0, bx, by;
  double       z1, gx, gy;
  /* round and ellipsoid */
  double       cx, cy, cz;
  double       r0, r1;          /* round                                    */
  double       rx, ry, rz, turn; /* ellipsoid; turn in degrees              */
} FpSolid;

/* A growing list of solids; owns their outlines. */
typedef struct _FpSolids FpSolids;

FpSolids      *fp_solids_new  (void);
void           fp_solids_free (FpSolids *self);
guint          fp_solids_count (const FpSolids *self);
const FpSolid *fp_solids_get  (const FpSolids *self, guint i); /* borrowed until the next add */
const FpSolid *fp_solids_peek (const FpSolids *self, guint *n); /* all of them, likewise */

/* What is added from now on is called so; NULL: nothing. */
void           fp_solids_call (FpSolids *self, const char *name);

/* Degenerate pieces (an outline of no area, no height, no radius) are left out
 * without complaint.  A clockwise outline is turned round. */
void fp_solids_add_box   (FpSolids *self, FpPart part, double x0, double y0, double z0, double x1, double y1, double z1);
void fp_solids_add_prism (FpSolids *self, FpPart part, const FpPoint *outline, guint n, double z0, double z1);
void fp_solids_add_sloping (FpSolids *self, FpPart part, const FpPoint *outline, guint n, double z0,
                            double z1, double gx, double gy);
/* A level top over a foot that slopes: a piece of wall over an arch, the soffit of a stair. */
void fp_solids_add_arching (FpSolids *self, FpPart part, const FpPoint *outline, guint n, double z0, double bx,
                            double by, double z1);
/* Both slope: a bar that leans, the top of a desk, a handrail beside a flight. */
void fp_solids_add_slanting (FpSolids *self, FpPart part, const FpPoint *outline, guint n, double z0, double bx,
                             double by, double z1, double gx, double gy);
void fp_solids_add_round (FpSolids *self, FpPart part, double cx, double cy, double z0, double z1, double r0, double r1);
void fp_solids_add_ellipsoid (FpSolids *self, FpPart part, FpVec3 centre, double rx, double ry, double rz, double turn);

/**
 * fp_solids_append_placed:
 * @from: solids in a thing's own coordinates (its own level is z = 0)
 *
 * Adds copies of all of @from, turned and moved by @place and raised by @level, as owned by @owner.
 */
void fp_solids_append_placed (FpSolids *self, const FpSolids *from, const FpPlace *place, double level, guint owner);

/* Height of the top plane over (x, y), whether or not that lies in the outline. */
double fp_solid_top_at (const FpSolid *s, double x, double y);
/* Height of a prism's foot over (x, y), likewise. */
double fp_solid_foot_at (const FpSolid *s, double x, double y);
FpBox3 fp_solid_box    (const FpSolid *s);
/* Whether both are the same piece at the same place, to the last bit, whoever owns them. */
gboolean fp_solid_same (const FpSolid *a, const FpSolid *b);
double fp_solid_volume (const FpSolid *s); /* mm3 */

/**
 * fp_solid_ray:
 * @from: start of the ray
 * @to: its end
 * @t: (out) (optional): where it enters, as a share of the way from @from to @to
 *
 * Whether the segment meets the inside of the solid at 0 < t < 1.  A segment
 * that starts inside meets it at t = 0 and is reported.  One that only grazes
 * an edge may answer either way.
 */
gboolean fp_solid_ray (const FpSolid *s, FpVec3 from, FpVec3 to, double *t);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FpSolids, fp_solids_free)

G_END_DECLS
