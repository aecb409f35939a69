/* SPDX-License-Identifier: GPL-3.0-or-later */
/* order.h - in which order servers light the candles of a setting, and whether they reach them
 *
 * From the cross outward on either side; put out in the reverse order.  On
 * which side one begins, authors and decrees differ, so it is asked: the Epistle
 * side first after servers' manuals (M. Britt, How to Serve, as quoted by
 * others); the Gospel side after S.R.C. 4198 (1907), from memory.  The newer
 * books prescribe no order.  Nothing here says what binds.
 */
#pragma once

#include "footpace/scene.h"

G_BEGIN_DECLS

typedef enum { FP_EPISTLE_SIDE, FP_GOSPEL_SIDE } FpAltarSide;
const char *fp_altar_side_id    (FpAltarSide side); /* "epistle"                        */
const char *fp_altar_side_label (FpAltarSide side); /* "Epistle side"                   */

typedef struct
{
  guint  servers;   /* 1 or 2: two light the two sides at the same time      */
  FpAltarSide first;     /* of one server; of two, whose server lights what stands in the middle */
  double shoulder;  /* mm above where the server stands                      */
  double arm, pole; /* mm: what he reaches with from there                   */
} FpOrderSpec;
/* Design judgement: a server of about 1.45 m with a pole of a metre. */
#define FP_ORDER_USUAL ((FpOrderSpec) { 1, FP_EPISTLE_SIDE, 1200, 550, 1000 })

/* mm.  Beside a flame: "at least 1 foot" (City of Edmonton, fire safety, as read); above it: no figure was found, design
 * judgement. */
#define FP_FLAME_BESIDE 305.0
#define FP_FLAME_ABOVE  900.0

/* One candle that is lit. */
typedef struct
{
  FpVec3   at;        /* its wick, church coordinates                       */
  guint    owner;     /* index of the placed thing                          */
  FpAltarSide   side;
  gboolean middle;    /* on the axis of the cross: on neither side           */
  guint    server;    /* 0, or 1: who lights it                              */
  guint    number;    /* from 1, in the order of lighting; two servers light the same number at once */
  FpVec3   stand;     /* where he stands to do so                           */
  double   height;    /* of the wick above that, mm                         */
  double   away;      /* of the wick from his shoulder, mm                   */
  gboolean reached;   /* with arm and pole                                  */
  int      beside;    /* index of the nearest thing that may burn, or hang over it, -1: none is near */
  double   beside_by; /* mm: level distance; 0: it is straight over the flame */
} FpOrderLight;

typedef enum
{
  FP_ACT_COME,  /* to the middle before the lowest step, with the reverence  */
  FP_ACT_LIGHT, /* lights first..last of one side or the middle              */
  FP_ACT_PASS,  /* to the other side, with the reverence in the middle       */
  FP_ACT_LEAVE, /* likewise as he came                                       */
} FpAct;

typedef struct
{
  FpAct    act;
  guint    server;
  FpAltarSide   side;        /* to which he goes, or where he lights              */
  gboolean middle;      /* he lights what stands in the middle               */
  guint    first, last; /* numbers                                           */
} FpOrderStep;

/* The nearest thing that may burn and rises to the flame, or hangs over it lower than FP_FLAME_ABOVE; -1. @by: (out): level
 * distance, mm; @where: (out) (optional): the point of its plan that is so near */
int                 fp_flame_nearest (const FpScene *scene, FpVec3 flame, double *by, FpPoint *where);

typedef struct _FpOrder FpOrder;

/* @set: a scene that was made for a celebration (fp_scene_new_set()), which must outlive it. */
FpOrder            *fp_order_new    (const FpScene *set, const FpOrderSpec *spec);
void                fp_order_free   (FpOrder *self);
const FpOrderSpec  *fp_order_spec   (const FpOrder *self);
const FpOrderLight *fp_order_lights (const FpOrder *self, guint *n); /* by number, of one number the first side first */
/* Whether passing the middle asks a genuflection: a tabernacle stands there, and it is not Good Friday; else one bows to the
 * cross (from memory). */
gboolean            fp_order_genuflects (const FpOrder *self);
/* What each server does, one after the other; @out: lighting, or putting out, which is the reverse. */
GArray             *fp_order_steps  (const FpOrder *self, gboolean out); /* (element-type FpOrderStep) */
/* "Go up on the Epistle side; light 1, 2, 3."; owned by the caller. */
char               *fp_order_step_text (const FpOrder *self, const FpOrderStep *step, gboolean out);
/* "1, 2, 3", or "3, 2, 1" where they are put out; owned by the caller. */
char               *fp_order_step_numbers (const FpOrderStep *step, gboolean out);
/* What is amiss with reach and flames, a sentence each; (transfer full) (element-type utf8), empty where nothing is. */
GPtrArray          *fp_order_cautions (const FpOrder *self, FpUnits units);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FpOrder, fp_order_free)

G_END_DECLS
