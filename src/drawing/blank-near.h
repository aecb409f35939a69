/* SPDX-License-Identifier: GPL-3.0-or-later */
/* blank-near.h - where in a drawing there is still room for a few words */
#pragma once

#include "footpace/marks.h"

G_BEGIN_DECLS

/**
 * fp_blank_near:
 * @within: paper mm: lettering stays in it
 * @at: what the words are about
 * @width, @height: of the lettering, paper mm
 * @out: (out): its lower left corner
 *
 * Looks at the marks that the drawing has so far; lettering keeps a little
 * clear of lines, and lies on nothing that is filled.
 *
 * Returns: FALSE where no such place is near
 */
gboolean fp_blank_near (const FpDrawing *drawing, const FpBox *within, FpPoint at, double width, double height,
                        FpPoint *out);

G_END_DECLS
