/* SPDX-License-Identifier: GPL-3.0-or-later */
/* measuring.h - what the measures share: finding things in a scene, reaching out from them, saying where
 *
 * Private to src/rules.  Millimetres, church coordinates unless a name says
 * "local" (a placed thing's own coordinates, its level z = 0).  Things that
 * were removed, and the places from which things were moved, are never found.
 */
#pragma once

#include "footpace/rules.h"

G_BEGIN_DECLS

/* --- the table ----------------------------------------------------------- */

#define FP_MEASURE(name, id, type, needs_sight, label, tells, absent) \
  void fp_take_##name (const FpMeasuring *of, GArray *out);
#define FP_MEASURE_COUNTED(name, id, needs_sight, one, many, label, tells, absent) \
  void fp_take_##name (const FpMeasuring *of, GArray *out);
#define FP_MEASURE_OF(name, id, unit, label, tells, absent) \
  void fp_take_##name (const FpMeasuring *of, GArray *out);
#define FP_MEASURE_APART(name, id, type, label, tells, absent) \
  void fp_take_##name (const FpMeasuring *of, GArray *out);
#define FP_MEASURE_PARAM(id, role, param, type, label, tells, absent)
#include "measures.list.h"
#undef FP_MEASURE
#undef FP_MEASURE_PARAM
#undef FP_MEASURE_COUNTED
#undef FP_MEASURE_OF
#undef FP_MEASURE_APART

/* --- what is found ------------------------------------------------------- */

/* Each returns the value just added, to be filled in further; valid until the next one is added. */
FpMeasured *fp_measured_add (GArray *out, double value);
FpMeasured *fp_measured_add_at (GArray *out, double value, int owner, FpVec3 at);
/* That it was measured straight between two points. */
void        fp_measured_span (FpMeasured *measured, FpVec3 a, FpVec3 b);
/* Nothing to measure, and why; @why is static. */
void        fp_measured_add_nothing (GArray *out, const char *why);

/* --- things -------------------------------------------------------------- */

const FpPlaced *fp_measuring_placed (const FpMeasuring *of, int index); /* NULL for -1 */
/* The first of that office (of altars, the highest); @index (out, optional) its index or -1. */
const FpPlaced *fp_measuring_role (const FpMeasuring *of, FpRole role, int *index);
/* The next of that office after @after (-1 to begin), -1 when there is none left. */
int             fp_measuring_next (const FpMeasuring *of, FpRole role, int after);
FpRole          fp_placed_role    (const FpPlaced *placed);
/* Adds how many there are of that office, and which; FALSE, and adds nothing, when there is none. */
gboolean        fp_measuring_count (const FpMeasuring *of, FpRole role, GArray *out);
/* A parameter, or @otherwise where the kind has none of that id. */
double          fp_placed_param   (const FpPlaced *placed, const char *id, double otherwise);
FpVec3          fp_placed_middle  (const FpPlaced *placed, double above); /* of its plan, @above its level */
FpPoint         fp_placed_local   (const FpPlaced *placed, FpPoint world);
/* The plan of @thing as a box in the coordinates of @frame. */
FpBox           fp_placed_box_in  (const FpPlaced *thing, const FpPlaced *frame);
/* Whether @thing stands on @base, or on something that does. */
gboolean        fp_measuring_stands_on (const FpMeasuring *of, int thing, int base);

/* The altar at which Mass is celebrated (see fp_scene_celebrated_altar()). */
const FpPlaced *fp_measuring_celebrated (const FpMeasuring *of, int *index);
/* The footpace on which the altar stands; -1. */
int             fp_measuring_footpace (const FpMeasuring *of, const FpPlaced *altar);

/* --- reaching out -------------------------------------------------------- */

typedef gboolean (*FpReachFilter) (const FpMeasuring *of, const FpSolid *solid, gconstpointer data);

/**
 * fp_measuring_reach:
 * @dx, @dy: a direction of length 1
 *
 * Returns: how far one gets level from @from before meeting a solid that the filter lets in; -1 within @far: none
 */
double fp_measuring_reach (const FpMeasuring *of, FpVec3 from, double dx, double dy, double far,
                           FpReachFilter filter, gconstpointer data);

/* A filter: walls and piers of the survey. */
gboolean fp_reach_building (const FpMeasuring *of, const FpSolid *solid, gconstpointer data);

/**
 * fp_measuring_walk:
 * @drop: (out) (optional): by how much the floor falls there
 *
 * Walks over the floor of the survey from @from until it falls by 50 mm or more.
 *
 * Returns: how far that is; -1 when there is no floor, or it ends, or rises, or does not fall within @far
 */
double fp_measuring_walk (const FpMeasuring *of, FpPoint from, double dx, double dy, double far, double *drop);

/* --- people -------------------------------------------------------------- */

const FpPersonPlace *fp_measuring_place (const FpMeasuring *of, guint i);
/* Neither in a gallery nor a communicant's place at the rail. */
gboolean             fp_measuring_in_church (const FpMeasuring *of, guint i);

/* --- saying where -------------------------------------------------------- */

typedef gboolean (*FpPlaceTest) (const FpMeasuring *of, guint place, gpointer data);

/* "Pews, Gospel side: rows 9 to 12": where the places are that pass the test; NULL when none does. */
char *fp_measuring_where (const FpMeasuring *of, FpPlaceTest test, gpointer data);
/* "Pews, Gospel side: rows 1 to 8; Pews, Epistle side: row 3", of FpMeasured that have a row and an owner. */
char *fp_measuring_rows  (const FpMeasuring *of, const GPtrArray *measured);
/* "1 of 80 places sees it", "3 of 80 places see it": @one and @many are the verb, or empty. */
char *fp_places_of       (guint some, guint all, const char *one, const char *many);
/* "Name, Gospel side": the side where the thing lies wholly on one and its name does not tell. */
char *fp_measuring_name  (const FpMeasuring *of, int owner);

G_END_DECLS
