/* SPDX-License-Identifier: GPL-3.0-or-later */
/* sheet-views.h - the drawings of a sheet, at the scale that was asked for or the largest at which they fit
 *
 * One view in the middle, two sections beside or above each other, or the
 * three of the board.
 */
#pragma once

#include "footpace/sheet.h"

G_BEGIN_DECLS

typedef struct _FpSheetViews FpSheetViews;

/**
 * fp_sheet_views_new:
 * @area: that they may cover, paper mm
 *
 * @scene and @spec must outlive it.
 *
 * Returns: %NULL with %FP_ERROR_RANGE when they do not fit
 */
FpSheetViews *fp_sheet_views_new   (const FpScene *scene, const FpSheetSpec *spec, const FpBox *area, GError **error);
void          fp_sheet_views_free  (FpSheetViews *self);
double        fp_sheet_views_scale (const FpSheetViews *self);
void          fp_sheet_views_draw  (const FpSheetViews *self, FpDrawing *drawing);

/* "A3", "2A0"; the caller's. */
char         *fp_sheet_paper_name  (const FpSheetSpec *spec);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FpSheetViews, fp_sheet_views_free)

G_END_DECLS
