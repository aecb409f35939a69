/* SPDX-License-Identifier: GPL-3.0-or-later */
/* mensa.h - what of a mensa is free for the cloths: before a gradine, round a tabernacle
 *
 * Millimetres, in the altar's own coordinates: -y towards the people.  The
 * cloths on the board and those that are cut ask here, so that they agree.
 * That cloths stop at what stands fast on the mensa is common practice, no source.
 */
#pragma once

#include "footpace/scene.h"

G_BEGIN_DECLS

/* How far a cloth keeps from what it is cut out for, so that it lies flat; design judgement. */
#define FP_MENSA_EASE 5.0
/* What leaves less than this at either end they stop before; what leaves more they are cut out for; design judgement. */
#define FP_MENSA_ENDS 300.0
/* No cloth is narrower than this; where a gradine leaves less they lie under it. */
#define FP_MENSA_LEAST 100.0

typedef struct
{
  FpBox free;     /* where cloths lie: all of the mensa, or what is before a gradine (behind it where that is deeper) */
  FpBox notch;    /* within it, open to its back or front: what they are cut out for, with %FP_MENSA_EASE; empty: nothing */
  gboolean stops; /* they stop before something                              */
  double beside;  /* beside what they stop before, at the end where it is more, so much of the mensa stays bare */
} FpMensaFree;

#define FP_MENSA_FAST_MOST 8 /* of each sort; more are not asked */

/* Plans, in the altar's coordinates, of what stands fast on it. */
typedef struct
{
  FpBox gradine[FP_MENSA_FAST_MOST], other[FP_MENSA_FAST_MOST];
  guint n_gradines, n_others;
} FpMensaFast;

gboolean fp_mensa_holds_fast (FpRole role); /* gradines, tabernacles; not what is lifted when cloths are changed */
void     fp_mensa_fast_add   (FpMensaFast *self, FpRole role, const FpBox *plan);

/* @mensa: all of it */
void fp_mensa_free_of (const FpBox *mensa, const FpMensaFast *fast, FpMensaFree *out);

/* Of one altar of a scene, by its index. */
void fp_mensa_free (const FpScene *scene, guint altar, FpMensaFree *out);

G_END_DECLS
