/* SPDX-License-Identifier: GPL-3.0-or-later */
/* linen.h - the cloths that an alternative needs, as they are finished and as they are cut
 *
 * Millimetres.  "Along" is the way of the warp, the length of the bolt; "across"
 * that of the weft.  Cloth loses a share of either when it is first washed: how
 * much must be tried on a piece of the same cloth, and nobody can say it
 * beforehand.
 *
 * cut = (finished + 2 * (hem + turned in)) / (1 - shrinkage), for warp and weft
 * apart.
 */
#pragma once

#include "footpace/bolt.h"
#include "footpace/scene.h"

G_BEGIN_DECLS

typedef struct { double warp, weft; } FpShrinkage; /* shares, 0 to %FP_SHRINKAGE_MAX */

/* A hem is as wide as it shows; what is turned in lies hidden in it. */
typedef struct { double ends, sides, turned_in; } FpHems;

typedef struct
{
  const FpPlaced *placed;  /* for which thing; borrowed from the scene                      */
  const char     *id;      /* "under-cloth"; static                                         */
  const char     *label;   /* "Under cloth"; static                                         */
  guint           number;  /* that many alike                                               */
  double          length;  /* finished, from end to end                                     */
  double          width;   /* finished, from side to side                                   */
  FpHems          hems;    /* `ends` are added to the length, `sides` to the width          */
  FpMaterial      material; /* linen, or silk, which is cut of no bolt of linen             */
  FpBox           notch;   /* cut out of it, finished: x from its Gospel end, y from its front; empty: nothing */
  double          falls;   /* of its length, what hangs down at either end                  */
  double          front;   /* of its width, what hangs down in front                        */
  guint           fold_along, fold_across; /* folded into so many parts; 0: not folded      */
  const char     *source;  /* of the size; printed, "common practice, no source", "from memory" or "design judgement"; static */
  const char     *note;    /* how it is made, where that is not as others; static; NULL     */
} FpCloth;

/**
 * fp_linen_cloths:
 * @books: which books are followed: the older ask three cloths on the altar, the newer at least one (GIRM 304)
 *
 * For the altars (under cloths and a top cloth, as they are drawn or, where none are, to the footpace; cere cloth, dust
 * cover), what one Mass needs of small linens, or as many as the works say; for credences, and for communion rails that
 * have a cloth.  On a mensa they cover what is free (mensa.h).  Of what is removed, none.
 *
 * Returns: (transfer full) (element-type FpCloth): all of linen, in the order in which they are laid
 */
GArray  *fp_linen_cloths (const FpScene *scene, FpBooks books);

/* What is of silk: frontals, veils, and the chalice veils and burses of which the works say how many; likewise. */
GArray  *fp_linen_silks (const FpScene *scene);

/* Of one length and its hem on both sides; %NAN for a shrinkage that is none. */
double   fp_linen_cut (double finished, double hem, double turned_in, double shrinkage);

/* It may lie either way on the bolt. */
FpBoltPiece fp_linen_piece (const FpCloth *cloth, const FpShrinkage *shrinkage);

/* One piece for each cloth and each of its number, in that order; it may lie either way on the bolt.
 * Returns: (transfer full) (element-type FpBoltPiece) */
GArray  *fp_linen_pieces (const GArray *cloths, const FpShrinkage *shrinkage);

G_END_DECLS
