/* SPDX-License-Identifier: GPL-3.0-or-later */
/* surface.h - a drawing on the screen, on paper and in files */
#pragma once

#include "footpace/marks.h"

G_BEGIN_DECLS

typedef struct _cairo FpCairo; /* cairo_t, without asking every caller for cairo.h */

/* Paints onto a cairo context whose user space is millimetres with y DOWN from the upper edge of the paper. */
void     fp_drawing_paint (const FpDrawing *self, FpCairo *cr, FpSurfaceLook look, gboolean with_paper);

/**
 * fp_drawing_differences:
 * @boxes: (element-type FpBox): paper mm; appended to
 *
 * Outside the boxes, and the pixels that they touch, both look alike in the same look and at the same scale.
 *
 * Returns: FALSE where that cannot be told (another size of paper, or an inset): all of it may differ
 */
gboolean fp_drawing_differences (const FpDrawing *was, const FpDrawing *is, GArray *boxes);

gboolean fp_drawing_write_pdf (FpDrawing *const *page, guint n_pages, const char *title, const char *author,
                               const char *path, GError **error);
gboolean fp_drawing_write_png (const FpDrawing *self, double dots_per_inch, const char *path, GError **error);
/* Structured SVG: a group a thing with its id, <title> and <desc>; real text; no raster.
 * @scene: (nullable): for names */
char    *fp_drawing_to_svg    (const FpDrawing *self, const FpScene *scene, const char *title, gsize *length);
gboolean fp_drawing_write_svg (const FpDrawing *self, const FpScene *scene, const char *title,
                               const char *path, GError **error);

G_END_DECLS
