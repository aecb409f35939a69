/* SPDX-License-Identifier: GPL-3.0-or-later */
/* made.h - of what a thing is made, as it is ordered and weighed
 *
 * Net as fixed in position, no waste (NRM2, 2nd edition 2021, from memory).
 * New stone is laid as the works say (stonework.h): slabs on a core of
 * concrete, or blocks.  What stands there already is reckoned as solid, for
 * nobody has opened it.  Metal is reckoned hollow (%FP_METAL_WALL).
 */
#pragma once

#include "footpace/stonework.h"

G_BEGIN_DECLS

typedef struct
{
  const char  *what;      /* "mensa", "treads": static; a rate goes by it   */
  char        *where;     /* "step 2, in front"; NULL                       */
  char        *marks;     /* of its slabs: "S1–S3, S7"; NULL                */
  FpMaterial   material;
  FpAmountType type;
  double       amount;    /* one, mm, mm2, mm3                              */
  guint        pieces;    /* 0: it does not consist of pieces of one size   */
  FpVec3       size;      /* mm, of each: length, width and thickness (or height); 0 where not said */
  double       volume;    /* mm3 in all; %NAN                               */
  double       mass;      /* kg in all; %NAN                                */
} FpMade;

void    fp_made_clear (FpMade *self);

/**
 * fp_made_of:
 * @number: (inout): how many slabs have a mark already
 *
 * Returns: (transfer full) (element-type FpMade): in the order in which it is built; none for cloth, which is cut
 */
GArray *fp_made_of    (const FpPlaced *placed, const FpWorks *works, guint *number);

/* kg of all of it that can be weighed; %NAN where nothing can. */
double  fp_made_mass  (const FpPlaced *placed, const FpWorks *works);

/* kN/m3; %NAN for what has none here (linen, wax, nothing). */
double  fp_material_weight (FpMaterial material, const FpWorks *works);

G_END_DECLS
