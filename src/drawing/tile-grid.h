/* SPDX-License-Identifier: GPL-3.0-or-later */
/* tile-grid.h - how a large sheet is divided into pages, and which of them would be blank
 *
 * Measured on the sheet in mm from its left edge to the right (x) and from its upper edge down (y).
 */
#pragma once

#include "footpace/drawing.h"

G_BEGIN_DECLS

/* Neighbours share a strip as wide as this, in the middle of which they are joined. */
#define FP_TILE_OVERLAP 10.0

typedef struct
{
  double    inner_w, inner_h; /* what a page shows                              */
  double    step_x, step_y;
  guint     columns, rows;
  FpBox     shown;            /* what is printed at all                         */
  double    left, top;        /* where the first page begins; may lie before the sheet */
  gboolean *blank;            /* row by row: the page would show nothing but border or paper; owned */
  guint     n_pages;          /* those that are not blank                       */
} FpTileGrid;

/* As few pages as can be, none of them with less on it than need be. */
void fp_tile_grid_init  (FpTileGrid *self, const FpDrawing *sheet, double inner_w, double inner_h);
void fp_tile_grid_clear (FpTileGrid *self);

/* Where the pages of column (row) @i and the next are joined. */
double fp_tile_join_x (const FpTileGrid *self, guint i);
double fp_tile_join_y (const FpTileGrid *self, guint i);

/* Beyond the grid nothing is left out. */
gboolean fp_tile_is_blank (const FpTileGrid *self, int column, int row);

G_END_DECLS
