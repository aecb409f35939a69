/* SPDX-License-Identifier: GPL-3.0-or-later */
/* drawing-view.h - a drawing as a picture that fits its room */
#pragma once

#include "footpace/drawing.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define FP_TYPE_DRAWING_VIEW (fp_drawing_view_get_type ())
G_DECLARE_FINAL_TYPE (FpDrawingView, fp_drawing_view, FP, DRAWING_VIEW, GtkWidget)

/* @label: its name for a screen reader. */
GtkWidget *fp_drawing_view_new (const char *label);
/* @drawing: (nullable)
 * @paper: as a sheet that lies on the window, always light; otherwise in the style's own look */
void       fp_drawing_view_set (FpDrawingView *self, FpDrawing *drawing, gboolean paper);
/* How it is painted now. */
FpSurfaceLook fp_drawing_view_look (FpDrawingView *self);
void       fp_drawing_view_set_label (FpDrawingView *self, const char *label);
/* Pictures in and under @top that are no sheets are drawn in this ink, those too that come into it later. */
void       fp_drawing_view_set_ink_within (GtkWidget *top, FpInkChoice ink);
void       fp_drawing_view_set_size  (FpDrawingView *self, int width, int height); /* asked for, px */

G_END_DECLS
