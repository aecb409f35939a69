/* SPDX-License-Identifier: GPL-3.0-or-later */
/* corner-editor.h - an outline as a list of corners: typed distances across and along
 *
 * Signal "changed": something was typed, a corner added or taken away.
 */
#pragma once

#include "footpace/geom.h"
#include "footpace/units.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define FP_TYPE_CORNER_EDITOR (fp_corner_editor_get_type ())
G_DECLARE_FINAL_TYPE (FpCornerEditor, fp_corner_editor, FP, CORNER_EDITOR, GtkWidget)

/* @closed: a corner after the last one lies between it and the first, else beyond it. */
GtkWidget *fp_corner_editor_new  (FpUnits units, gboolean closed);
void       fp_corner_editor_set  (FpCornerEditor *self, const FpPoint *corner, guint n);
/* Appends FpPoint to @out; what cannot be read is said with the number of its corner, and marked in the list. */
gboolean   fp_corner_editor_read (FpCornerEditor *self, GArray *out, GError **error);

G_END_DECLS
