/* SPDX-License-Identifier: GPL-3.0-or-later */
/* kind-private.h - what the files of kinds share
 *
 * Private to src/furnishing.  Millimetres, in the kind's own coordinates.
 *
 * The ranges of parameters say what can be drawn and built, not what is right:
 * they are design judgement, wide enough for the historic extremes (altars of
 * 17 ft, Dearmer p. 57 n.).  What is right is said by rules.
 */
#pragma once

#include "footpace/kind.h"

G_BEGIN_DECLS

#define FP_KIND(name) extern const FpKind fp_kind_##name;
#include "kinds.list.h"
#undef FP_KIND

/* --- parameters ----------------------------------------------------------- */

#define FP_LENGTH(id, label, min, def, max, source) { id, label, FP_PARAM_LENGTH, min, def, max, NULL, source }
#define FP_LEVEL(id, label, min, def, max, source)  { id, label, FP_PARAM_LEVEL, min, def, max, NULL, source }
#define FP_ANGLE(id, label, min, def, max, source)  { id, label, FP_PARAM_ANGLE, min, def, max, NULL, source }
#define FP_COUNT(id, label, min, def, max, source)  { id, label, FP_PARAM_COUNT, min, def, max, NULL, source }
#define FP_SHARE(id, label, min, def, max, source)  { id, label, FP_PARAM_SHARE, min, def, max, NULL, source }
/* @choices is an array ended by { NULL }. */
#define FP_CHOICE(id, label, choices, def, source) \
  { id, label, FP_PARAM_CHOICE, 0, def, G_N_ELEMENTS (choices) - 2, choices, source }
#define FP_NO_MORE_PARAMS { .id = NULL }

#define FP_JUDGEMENT "design judgement"
#define FP_CUSTOM    "common practice, no source"
/* Of the building: what stands there until someone measures it. */
#define FP_SURVEYED  "design judgement, to be measured"

static inline guint
fp_form_count (const FpForm *form, guint param)
{
  return (guint) form->param[param];
}

static inline gboolean
fp_form_is (const FpForm *form, guint param, guint choice)
{
  return (guint) form->param[param] == choice;
}

/* --- plans ---------------------------------------------------------------- */

static inline FpBox
fp_centred_box (double length, double depth)
{
  return (FpBox) { -length / 2, -depth / 2, length / 2, depth / 2 };
}

static inline void
fp_box_corners (const FpBox *box, FpPoint corner[4])
{
  corner[0] = (FpPoint) { box->x0, box->y0 };
  corner[1] = (FpPoint) { box->x1, box->y0 };
  corner[2] = (FpPoint) { box->x1, box->y1 };
  corner[3] = (FpPoint) { box->x0, box->y1 };
}

static inline double
fp_box_area (const FpBox *box)
{
  return (box->x1 - box->x0) * (box->y1 - box->y0);
}

/* A thing as large as @plan, on which nothing may stand. */
static inline FpExtent
fp_extent_bare (FpBox plan, double height)
{
  return (FpExtent) { .plan = plan, .bearing = FP_BOX_EMPTY, .height = height };
}

/* One whose whole top carries other things. */
static inline FpExtent
fp_extent_bearing (FpBox plan, double height)
{
  return (FpExtent) { .plan = plan, .bearing = plan, .top = height, .height = height };
}

/* --- adding to what a kind answers ----------------------------------------- */

#define FP_IN_PLAN      (1u << FP_VIEW_PLAN)
#define FP_IN_ELEVATION (1u << FP_VIEW_ELEVATION)
#define FP_IN_SECTION   (1u << FP_VIEW_SECTION)

/* A dimension of @times equal parts (1 for one) between two points. Left out when they coincide. */
void fp_dims_add (GArray *out, int param, FpVec3 a, FpVec3 b, guint views, guint times, guint rank);

/* Along one axis, from a point. */
void fp_dims_add_x (GArray *out, int param, FpVec3 from, double length, guint views, guint rank);
void fp_dims_add_y (GArray *out, int param, FpVec3 from, double length, guint views, guint rank);
void fp_dims_add_z (GArray *out, int param, FpVec3 from, double length, guint views, guint rank);

void fp_strokes_add (GArray *out, FpPoint a, FpPoint b, gboolean dashed);
void fp_strokes_add_outline (GArray *out, const FpPoint *pt, guint n, gboolean dashed);
/* The arrow that points up a flight, from @a to @b. */
void fp_strokes_add_arrow (GArray *out, FpPoint a, FpPoint b);

/* An upright rectangle that faces the people: middle of its lower edge at (x, y, z). */
void fp_targets_add_upright (GArray *out, FpFocus focus, FpVec3 foot, double width, double height);
/* What of another shape lies within it. */
void fp_targets_add_shaped (GArray *out, FpFocus focus, FpTargetShape shape, FpVec3 foot, double width, double height);
/* Head over shoulders, or over a trunk: @height with the head. */
void fp_targets_add_person (GArray *out, FpFocus focus, FpVec3 foot, double breadth, double height);

/* Nothing is added for an amount of 0. */
void fp_quantities_add (GArray *out, const char *what, FpMaterial material, FpAmountType type, double amount);
/* So many alike, of a size that a schedule tells: across, deep and high. */
void fp_quantities_add_sized (GArray *out, const char *what, FpMaterial material, double number, FpVec3 size);
/* So many pieces alike of one length and width, told by their area. */
void fp_quantities_add_pieces (GArray *out, const char *what, FpMaterial material, double number, double length, double width);
/* Volume of those solids of @kind that are of @part; they must not overlap. */
void fp_quantities_add_part (GArray *out, const FpKind *kind, const FpForm *form, FpPart part, const char *what,
                             FpMaterial material);

/* A line for each name that the solids of @kind are called by (fp_solids_call()), of the volume of those that are. */
void fp_quantities_add_called (GArray *out, const FpKind *kind, const FpForm *form, FpMaterial material);
/* mm3 of metal in the solids of @kind but its candles: hollow, with walls %FP_METAL_WALL thick. */
double fp_metal_volume (const FpKind *kind, const FpForm *form);
/* So much of metal, which has all of that volume. */
void fp_quantities_add_metal (GArray *out, const FpKind *kind, const FpForm *form, const char *what, FpAmountType type,
                              double amount);

/* --- shapes that several kinds use ------------------------------------------ */

/* A gable over @plan from @z0, ridge towards the people, @rise high in the middle. */
void fp_solids_add_gable (FpSolids *out, FpPart part, const FpBox *plan, double z0, double rise);

/* An upright board over @plan whose middle lies back from its frame, seen from -y. */
void fp_solids_add_framed (FpSolids *out, FpPart part, const FpBox *plan, double z0, double z1);

/* Foot, stem, knop, stem, drip pan and candle, the stick standing on (x, y, z). */
void fp_solids_add_candlestick (FpSolids *out, double x, double y, double z, double height, double foot, double candle);
/* The radius of the candle on a stick with such a foot. */
double fp_candle_radius (double foot);

/* A four-sided roof over @plan, all of it rising to one point over its middle. */
void fp_solids_add_pyramid (FpSolids *out, FpPart part, const FpBox *plan, double z0, double rise);

/* --- what is set in pairs about the cross ----------------------------------- */

/* The x of one of @count things, from the Gospel side, the inner two @gap apart and each next @spacing outward; of an odd
 * number one is in the middle. */
double fp_pair_x (guint i, guint count, double gap, double spacing);
/* How far the middle of the outermost is from the axis. */
double fp_pairs_reach (guint count, double gap, double spacing);
/* A sentence, owned by the caller, where things so wide would stand in each other; else NULL. */
char *fp_pairs_amiss (const char *what, guint count, double gap, double spacing, double wide);

/* --- kind-alike.c: what kinds that are set out alike share --------------------- */

/* So many of one width beside each other, about the middle; @count at least 1. */
typedef struct { guint count; double spacing, width; } FpRow;
double fp_row_x     (const FpRow *row, guint i);
FpBox  fp_row_box   (const FpRow *row, double depth);
/* Their spacing, in front of them, where there are several. */
void   fp_row_dims  (const FpRow *row, int param, double depth, guint rank, GArray *out);
/* A sentence, owned by the caller, where they stand in each other; else NULL. */
char  *fp_row_amiss (const FpRow *row, const char *what);

/* One candlestick on its own, as fp_solids_add_candlestick() makes it. */
FpExtent fp_candle_extent     (double height, double foot, double candle);
void     fp_candle_quantities (GArray *out, const FpKind *kind, const FpForm *form, const char *stick, const char *candle,
                               double length);

/* --- what hangs over something ------------------------------------------------ */

/* From @foot to @head over its own level: what it hangs over, or a common altar where that is not told. */
void fp_form_hang (const FpForm *form, double *foot, double *head);

/* A bench that faces -y, its seat @seat and its back @back above z = @z. */
void fp_solids_add_bench (FpSolids *out, const FpBox *plan, double z, double seat, double back, double arm);

G_END_DECLS
