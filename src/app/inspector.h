/* SPDX-License-Identifier: GPL-3.0-or-later */
/* inspector.h - the chosen thing: its measures, where it stands, its name */
#pragma once

#include "document.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define FP_TYPE_INSPECTOR (fp_inspector_get_type ())
G_DECLARE_FINAL_TYPE (FpInspector, fp_inspector, FP, INSPECTOR, GtkWidget)

GtkWidget *fp_inspector_new (void);
void       fp_inspector_set_document (FpInspector *self, FpDocument *document);
void       fp_inspector_focus (FpInspector *self); /* the first field */

/* Brings a field into view and marks it: a parameter, by its id (NULL: none is marked any more), or where it stands,
 * along or across. */
void       fp_inspector_point_out (FpInspector *self, const char *param);
void       fp_inspector_point_out_place (FpInspector *self, gboolean along);
/* The field that is marked, else the first. */
void       fp_inspector_focus_pointed_out (FpInspector *self);

G_END_DECLS
