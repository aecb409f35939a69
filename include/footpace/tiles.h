/* SPDX-License-Identifier: GPL-3.0-or-later */
/* tiles.h - a large sheet on several small pages */
#pragma once

#include "footpace/sheet.h"

G_BEGIN_DECLS

/**
 * fp_drawing_tiles:
 * @sheet: to be printed at its own scale
 * @paper, @landscape: of the pages
 *
 * Neighbouring tiles overlap by 10 mm; the lines in the middle of the overlap
 * are to be cut and joined at crosses that bear the same letters.  Each page
 * says where it belongs, and carries a ruler by which to tell whether it was
 * printed at 100 %.
 *
 * Pages on which nothing but border or paper would stand are left out; their neighbours say so.  The margin about the
 * border is left out where that saves a row or a column.
 *
 * Returns: (transfer full) (element-type FpDrawing): row by row from the upper left; one page where the sheet fits one
 */
GPtrArray *fp_drawing_tiles (FpDrawing *sheet, FpPaper paper, gboolean landscape, FpUnits units);

/**
 * fp_sheet_pages_tiled:
 * @tile: paper of the pages to be joined; each sheet's pages lie the way that takes fewer
 *
 * As fp_sheet_pages(), the drawing on several pages to be joined, the further
 * sheets of findings each on one page of @tile.  What does not fit spec->paper
 * at spec->scale is drawn on a larger sheet, up to 4A0 (ISO 216), upright or
 * lying, whichever takes fewer pages.
 */
GPtrArray *fp_sheet_pages_tiled (const FpScene *scene, const FpSheetSpec *spec, FpPaper tile, double *scale,
                                 GError **error);

/* Sheets (element-type FpDrawing) on pages of @tile; (transfer full). */
GPtrArray *fp_sheets_tiled (const GPtrArray *sheets, FpPaper tile, FpUnits units);

G_END_DECLS
