/* SPDX-License-Identifier: GPL-3.0-or-later */
/* linen-private.h - what the files of the linen plan share */
#pragma once

#include "footpace/linen-plan.h"

G_BEGIN_DECLS

struct _FpLinenPlan
{
  const FpScene *scene;
  FpLinenSpec    spec;
  GArray        *cloths; /* FpCloth                                          */
  GArray        *pieces; /* FpBoltPiece: of each cloth as many as its number */
  FpBoltLayout  *layout;
};

#define FP_LINEN_CAUTION \
  "Try a piece first: wash it hotter than the cloth will be washed, measure what it loses along and across, and give that. Cut by " \
  "a drawn thread. Linen or hemp only where the older books are followed."

/* Of which cloth a piece is; @copy: (out): which of its number, from 0 */
const FpCloth *fp_linen_cloth_of (const FpLinenPlan *self, guint piece, guint *copy);

/* "Top cloth, Altar", and with a number where there are more of it; owned by the caller. */
char          *fp_linen_piece_name (const FpLinenPlan *self, guint piece);

/* "4724 × 914": owned by the caller. */
char          *fp_linen_size_text (const FpLinenPlan *self, double length, double width);

G_END_DECLS
