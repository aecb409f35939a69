/* SPDX-License-Identifier: GPL-3.0-or-later */
/* things-list.h - all furnishings and parts of the building: a tree of what stands on what, with columns
 *
 * What is chosen in it is what is chosen in the document, both ways.  F2 types
 * in the column that was clicked last, two clicks in the cell under them; Left and Right fold and unfold.
 *
 * Signal "activated": Enter, or a plain click in the narrow list: whoever wants the thing itself.
 */
#pragma once

#include "document.h"
#include "things-tree.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define FP_TYPE_THINGS_LIST (fp_things_list_get_type ())
G_DECLARE_FINAL_TYPE (FpThingsList, fp_things_list, FP, THINGS_LIST, GtkWidget) /* property "wide": all columns */

GtkWidget *fp_things_list_new (gboolean wide);
void       fp_things_list_set_document (FpThingsList *self, FpDocument *document);
void       fp_things_list_focus (FpThingsList *self, const char *id); /* the row of that thing, or the first */
void       fp_things_list_set_column (FpThingsList *self, FpColumn column); /* in which F2 types: that clicked last */
/* "name", "level" … as fp_column_title() in lower case; "standing-on": as they stand on one another. */
void       fp_things_list_sort (FpThingsList *self, const char *order);
/* Whether what is chosen just now was chosen here. */
gboolean   fp_things_list_is_choosing (FpThingsList *self);

G_END_DECLS
