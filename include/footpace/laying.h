/* SPDX-License-Identifier: GPL-3.0-or-later */
/* laying.h - where each slab of new steps and altars lies: sheets for the mason
 *
 * Of each course its plan, with the marks that the schedules have; the front as
 * it is seen; and a section through its slabs.
 */
#pragma once

#include "footpace/sheet.h"

G_BEGIN_DECLS

/**
 * fp_laying_sheets_of:
 * @spec: of its scale: 0 for the largest that needs no more than a few sheets
 * @scale: (out) (optional): of the plans; sections have their own
 *
 * Returns: (transfer full) (element-type FpDrawing): as many pages as they take; NULL with %FP_ERROR_RANGE where nothing new is
 *   laid of stone, or it does not fit the paper
 */
GPtrArray *fp_laying_sheets_of (const FpScene *scene, const FpSheetSpec *spec, double *scale, GError **error);

G_END_DECLS
