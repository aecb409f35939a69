/* SPDX-License-Identifier: GPL-3.0-or-later */
/* bearing.h - what bears on a floor, and how hard
 *
 * A comparison, no proof: an engineer decides.
 */
#pragma once

#include "footpace/made.h"

G_BEGIN_DECLS

/* Of each thing that stands on a floor or a footpace and of which anything can be weighed. */
typedef struct
{
  const FpPlaced *placed;    /* borrowed from the scene                        */
  double          own;       /* kg                                             */
  double          all;       /* kg, with all that stands on it                 */
  guint           unweighed; /* so many of those things consist of nothing whose weight is reckoned */
  double          area;      /* mm2 on which it stands                         */
  double          pressure;  /* kN/m2 of all of it on that area                */
} FpBearing;

/* Of one thing, wherever it stands. */
FpBearing fp_scene_bearing (const FpScene *scene, guint which);
/* (transfer full) (element-type FpBearing): the greatest pressure first. */
GArray   *fp_scene_bearings (const FpScene *scene);

G_END_DECLS
