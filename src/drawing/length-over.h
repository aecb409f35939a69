/* SPDX-License-Identifier: GPL-3.0-or-later */
/* length-over.h - a dimension over what is drawn already, where it can be read best */
#pragma once

#include "cover.h"

#include "footpace/marks.h"

G_BEGIN_DECLS

/**
 * fp_length_over:
 * @a, @b: what is measured between, paper mm
 * @cover: what is drawn there; the dimension is added to it
 * @within: paper mm: it stays in it if it can
 *
 * Between its ends, or beside them with extension lines; in the pen of what was measured.  The
 * figure is left out where lettering stands wherever it could.
 */
void fp_length_over (FpDrawing *drawing, FpPoint a, FpPoint b, const char *figure, FpCover *cover, const FpBox *within);

G_END_DECLS
