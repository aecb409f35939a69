/* SPDX-License-Identifier: GPL-3.0-or-later */
/* drawing-private.h - what the surfaces share, so that they cannot differ */
#pragma once

#include "footpace/drawing.h"

#include <pango/pangocairo.h>

G_BEGIN_DECLS

typedef struct { FpPoint a, b; } FpSegment;

/* The axis stands out beyond the view by this much, mm, and stays clear of the first tier. */
#define FP_AXIS_OVERRUN 4.0

/* Distance between the lines of a hatch, mm: ISO 128, as reported, forbids less than 0.7. */
#define FP_HATCH_GAP 1.4

/* Appends the lines (FpSegment) that hatch an outline at @degrees.  They are measured from the
 * origin of the paper, so that the hatches of neighbouring areas run on into each other. */
void fp_hatch_lines (const FpPoint *pt, guint n, double degrees, GArray *out);

/* Appends the strokes (FpSegment) of the little crosses that tell removed work along a line. */
void fp_cross_lines (FpPoint a, FpPoint b, GArray *out);

/* Whether lines of this standing carry crosses. */
gboolean fp_pen_crosses (FpPen pen, FpStanding standing);

/* Whether an area is bordered by its pen, and that by which it is hatched. */
gboolean fp_mark_has_border (const FpMark *mark);
FpPen    fp_mark_hatch_pen  (const FpMark *mark);

/* What fp_drawing_set_inset() was told; NULL: there is none. */
const FpDrawing *fp_drawing_inset (const FpDrawing *self, FpPoint *at, FpBox *clip);

/* Paper mm that a mark covers, pens included. */
FpBox fp_mark_box (const FpMark *mark, const FpPoint *points);

/* --- lettering ------------------------------------------------------------ */

#define FP_LETTERING_FAMILY "osifont, sans-serif"

/* Texts are laid out once, with capitals this high, and scaled to the height wanted. */
#define FP_LETTERING_CAPITAL 100.0

/* Borrowed; lives until this thread letters other texts. */
PangoLayout *fp_lettering_layout (const char *text);

/* Size of the font whose capitals are @height high, in the unit of @height. */
double fp_lettering_font_size (double height);

/* --- files ---------------------------------------------------------------- */

/* All or nothing: on failure what was at @path is whole. */
gboolean fp_write_file (const char *path, gconstpointer data, gsize length, GError **error);

/* Sets %FP_ERROR_WRITE with path and reason; always FALSE. */
gboolean fp_write_failed (const char *path, const char *why, GError **error);

G_END_DECLS
