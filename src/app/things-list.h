/* SPDX-License-Identifier: GPL-3.0-or-later */
/* things-list.h - all furnishings and parts of the building, what stands on what
 *
 * Signal "activated": a thing was chosen in the list (the document says which).
 */
#pragma once

#include "document.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define FP_TYPE_THINGS_LIST (fp_things_list_get_type ())
G_DECLARE_FINAL_TYPE (FpThingsList, fp_things_list, FP, THINGS_LIST, GtkWidget)

GtkWidget *fp_things_list_new (void);
void       fp_things_list_set_document (FpThingsList *self, FpDocument *document);
void       fp_things_list_focus (FpThingsList *self, const char *id); /* the row of that thing, or the first */

G_END_DECLS
