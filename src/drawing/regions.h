/* SPDX-License-Identifier: GPL-3.0-or-later */
/* regions.h - what of a church is to be drawn when its sanctuary is asked for; world mm */
#pragma once

#include "footpace/projection.h"

G_BEGIN_DECLS

typedef struct
{
  FpBox3 all;       /* of everything                                         */
  FpBox3 east;      /* of what the elevation shows: all that lies beyond its plane, or that of the section in its place */
  FpBox3 sanctuary; /* the sanctuary with the walls about it and a strip of the nave, as high as is of interest */
  double front;     /* y of the sanctuary's edge towards the nave             */
  FpBox3 broad;     /* the sanctuary as far to either side as the elevation goes */
  FpBox3 tight;     /* the same without the upper parts of high walls, and with less of the nave */
  FpBox3 close;     /* as tight, but walls at its edges need not be whole     */
} FpRegions;

/* How much of a church a sheet shows. */
typedef enum { FP_SHOWN_WHOLE, FP_SHOWN_BROAD, FP_SHOWN_SANCTUARY, FP_SHOWN_TIGHT } FpExtentShown;

/* @across: (nullable): the section across the church that stands in the place of the elevation. */
void fp_regions_of (const FpScene *scene, const FpCut *across, FpRegions *out);

/* A box as a view sees it, view coordinates. */
FpBox fp_region_in_view (const FpBox3 *box, FpViewId view, gboolean turned);

G_END_DECLS
