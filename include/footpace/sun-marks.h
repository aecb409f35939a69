/* SPDX-License-Identifier: GPL-3.0-or-later */
/* sun-marks.h - sunlight on plans and sections
 *
 * @patches: (element-type FpSunPatch), as fp_sunlight_patches() gives them.
 */
#pragma once

#include "footpace/sun.h"
#include "footpace/view.h"

G_BEGIN_DECLS

/* Hatches what is lit on the plan; to be called before the view is drawn, whose lines then lie over it. */
void   fp_drawing_add_sun_floor  (FpDrawing *self, const GArray *patches, const FpViewLayout *layout);

/* The outlines of what is lit, on the plan, and those of the shafts of light between it and the windows; over the view. */
void   fp_drawing_add_sun_shafts (FpDrawing *self, const GArray *patches, FpViewId view, const FpViewLayout *layout);

/* A dot on the plan where somebody has the sun in his eyes; with a ring: a minister. */
void   fp_drawing_add_sun_eye    (FpDrawing *self, FpVec3 at, gboolean minister, const FpViewLayout *plan);

/* What these marks mean, in a column from the top of @box down. */
void   fp_drawing_add_sun_key    (FpDrawing *self, const FpBox *box);

/* A north point, and the sun that shines towards it on the plan.  @north: as in FpBrief.
 * Returns: how far from @middle it reaches, paper mm */
double fp_drawing_add_sun_point  (FpDrawing *self, FpPoint middle, double radius, double north, FpVec3 towards);

G_END_DECLS
