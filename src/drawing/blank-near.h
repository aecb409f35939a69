/* SPDX-License-Identifier: GPL-3.0-or-later */
/* blank-near.h - where in a drawing there is still room for a few words */
#pragma once

#include "cover.h"

#include "footpace/sight-drawing.h"

G_BEGIN_DECLS

/**
 * fp_blank_near:
 * @laid: @n drawings, one over the other
 * @within: paper mm: lettering stays in it
 * @at: what the words are about
 * @width, @height: of the lettering, paper mm
 * @out: (inout): its lower left corner; where the words stood before, which they keep if it is still blank; NAN: nowhere
 *
 * Looks at the marks that the drawings have so far; lettering keeps a little
 * clear of lines, and lies on nothing that is filled.
 *
 * Returns: FALSE where no such place is near
 */
gboolean fp_blank_near (const FpLaid *laid, guint n, const FpBox *within, FpPoint at, double width, double height,
                        FpPoint *out);

/* What they cover about a box; owned by the caller. */
FpCover *fp_laid_cover (const FpLaid *laid, guint n, const FpBox *about);

G_END_DECLS
