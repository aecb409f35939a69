/* SPDX-License-Identifier: GPL-3.0-or-later */
/* board.h - the three views laid out on a part of a sheet */
#pragma once

#include "footpace/board.h"
#include "regions.h"

G_BEGIN_DECLS

/* Paper mm that a part of the church takes in three views, with dimensions and titles. */
void fp_board_size (const FpScene *scene, FpExtentShown shown, double scale, double *width, double *height);

/* In the middle of @area; clipped to what is shown. */
void fp_board_place (const FpScene *scene, FpExtentShown shown, double scale, const FpBox *area, FpUnits units,
                     FpBoardLayout *out);

/* Draws within @area, paper mm. @untold: (nullable): (element-type utf8): what must be told and is not (must.h) */
void fp_board_draw_on (FpDrawing *drawing, FpProjection *const projection[FP_N_VIEWS], const FpBoardLayout *layout,
                       const FpBox *area, GPtrArray *untold);

G_END_DECLS
