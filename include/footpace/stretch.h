/* SPDX-License-Identifier: GPL-3.0-or-later */
/* stretch.h - what a dimension or a level on a drawing measures
 *
 * A drawing knows it of each of its dimensions, so that a length typed over
 * one that shows no single parameter can still be carried out (retype.h).
 */
#pragma once

#include "scene.h"

G_BEGIN_DECLS

typedef enum
{
  FP_STRETCH_PARAM, /* one parameter of the item                              */
  FP_STRETCH_APART, /* how far the item is from another, or from what there is */
  FP_STRETCH_PLACE, /* from a, of the item, to b, on a line from which it is set out and that stays: the axis, or a
                       face or edge of the other                              */
  FP_STRETCH_FRONT, /* from back to front over the steps of a footpace         */
  FP_STRETCH_ENDS,  /* across its steps, from end to end                       */
  FP_STRETCH_WALLS, /* between faces of the building                           */
  FP_STRETCH_TOP,   /* of the item, over a floor                               */
  FP_STRETCH_LEVEL, /* of the item's top, above the datum (b.z)                */
  FP_STRETCH_FALL,  /* the level of one end of a floor that falls (b.z)        */
} FpStretchSort;

typedef struct
{
  FpStretchSort sort;
  FpVec3         a, b;   /* church coordinates, mm; of a level only b          */
  const char    *item;   /* interned                                           */
  const char    *other;  /* interned; FP_STRETCH_APART: NULL where it is whatever is met;
                             FP_STRETCH_PLACE: NULL where it is the axis or the building */
} FpStretch;

G_END_DECLS
