/* SPDX-License-Identifier: GPL-3.0-or-later */
/* label-naming.c - what is named on a plan, and how */
#include "labels-private.h"

/* The building explains itself.  What is overhead would be read as the name of what is under it, so it is named at a leader
 * alone; so is what is small, where the scale and all others leave it room. */
FpNaming
fp_label_naming (const FpPlaced *placed)
{
  switch (fp_item_kind (placed->item)->role)
    {
    case FP_ROLE_WALL:
    case FP_ROLE_OPENING:
    case FP_ROLE_PIER:
    case FP_ROLE_FLOOR:
    case FP_ROLE_STEPS:
    case FP_ROLE_ALTAR_CLOTHS:
    case FP_N_ROLES:
      return FP_NOT_NAMED;
    case FP_ROLE_CANOPY:
    case FP_ROLE_SANCTUARY_LAMP:
      return FP_NAMED_BESIDE;
    case FP_ROLE_FRONTAL:
    case FP_ROLE_TABERNACLE_VEIL:
    case FP_ROLE_ALTAR_CARDS:
    case FP_ROLE_MISSAL_STAND:
    case FP_ROLE_HAND_BELL:
    case FP_ROLE_SANCTUS_CANDLE:
    case FP_ROLE_SEVENTH_CANDLE:
    case FP_ROLE_VESSELS:
    case FP_ROLE_HANDRAIL:
      return FP_NAMED_LAST;
    case FP_ROLE_NONE:
    case FP_ROLE_ALTAR:
    case FP_ROLE_FOOTPACE:
    case FP_ROLE_GRADINE:
    case FP_ROLE_TABERNACLE:
    case FP_ROLE_CRUCIFIX:
    case FP_ROLE_CANDLES:
    case FP_ROLE_REREDOS:
    case FP_ROLE_CREDENCE:
    case FP_ROLE_SEDILIA:
    case FP_ROLE_AMBO:
    case FP_ROLE_CHAIR:
    case FP_ROLE_RAIL:
    case FP_ROLE_PEWS:
    case FP_ROLE_GALLERY:
    case FP_ROLE_STANDING_ROOM:
    case FP_ROLE_WHEELCHAIR:
    case FP_ROLE_FLOWERS:
    case FP_ROLE_RELIQUARIES:
    case FP_ROLE_BRANCHED_LIGHTS:
    case FP_ROLE_PASCHAL_CANDLE:
    case FP_ROLE_PROCESSIONAL_CANDLES:
    case FP_ROLE_STATUE:
    case FP_ROLE_AMBRY:
    case FP_ROLE_PISCINA:
    case FP_ROLE_FONT:
    case FP_ROLE_FALDSTOOL:
    case FP_ROLE_THRONE:
    case FP_ROLE_STOOLS:
    case FP_ROLE_CHOIR_STALLS:
    case FP_ROLE_LECTERN:
    case FP_ROLE_PULPIT:
    case FP_ROLE_KNEELERS:
    case FP_ROLE_CHAIRS:
    case FP_ROLE_RAMP:
    case FP_ROLE_SCREEN:
      return FP_NAMED;
    }
  return FP_NOT_NAMED;
}
