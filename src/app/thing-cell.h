/* SPDX-License-Identifier: GPL-3.0-or-later */
/* thing-cell.h - one cell of the list of things: a text that can be typed over in its place
 *
 * Signal "leave" (node, way): typing is over in the row of that node; way 1: on to the next cell that can be typed in,
 * -1: to the one before, 0: back to the row.
 */
#pragma once

#include "things-tree.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define FP_TYPE_THING_CELL (fp_thing_cell_get_type ())
G_DECLARE_FINAL_TYPE (FpThingCell, fp_thing_cell, FP, THING_CELL, GtkWidget)

/* @by_pointer: whether two clicks begin typing. */
GtkWidget   *fp_thing_cell_new  (FpColumn column, gboolean by_pointer);
void         fp_thing_cell_bind (FpThingCell *self, FpDocument *document, FpThingNode *node); /* NULL: none */
FpThingNode *fp_thing_cell_node (FpThingCell *self); /* borrowed; NULL */
FpColumn     fp_thing_cell_column (FpThingCell *self);
void         fp_thing_cell_type (FpThingCell *self); /* begins typing, where it can be typed in */
gboolean     fp_thing_cell_is_typing (FpThingCell *self);

G_END_DECLS
