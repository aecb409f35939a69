/* SPDX-License-Identifier: GPL-3.0-or-later */
/* kind-picture.h - what a kind looks like from four sides, as a file that any viewer of SVG shows
 *
 * It has no lettering, and only what belongs to the thing itself: so it depends on no font, and does not change with
 * what carries the thing.  World millimetres, rounded to whole ones; of the view from the pew, thousandths of its width.
 */
#pragma once

#include "footpace/drawing.h"

G_BEGIN_DECLS

#define KIND_PICTURE_VIEWS (FP_N_VIEWS + 1)

/* "plan", "elevation", "section", "pew"; ids of the groups of the file. */
const char *kind_picture_view (guint view);

char *kind_picture_new (const FpKind *kind);

/* The views (a bit each) in which two files differ by more than rounding. */
guint kind_picture_differences (const char *was, const char *is);

G_END_DECLS
