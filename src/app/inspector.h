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

G_END_DECLS
