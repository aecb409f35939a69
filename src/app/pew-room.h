/* SPDX-License-Identifier: GPL-3.0-or-later */
/* pew-room.h - where the view from the pew finds room in the empty quarter of the board; knows no toolkit */
#pragma once

#include "footpace/drawing.h"

G_BEGIN_DECLS

/* For whose eye it is and what that sees, under a picture of that width, paper mm: the same words take more lines under a
 * narrow one. */
guint   fp_pew_room_lines (double width);
double  fp_pew_room_words (double width); /* how high they are */

/* (element-type FpBox) of paper that is written or drawn on. */
GArray *fp_pew_room_covered (void);
/* What the marks of a drawing cover there; the mitre line, which is asked of the layout, apart.
 * @corner, @grown: where its lower left edge lies, and how many times larger it is shown */
void    fp_pew_room_cover   (GArray *covered, const FpDrawing *drawing, FpPoint corner, double grown, const FpBox *quarter);

/* Under the section, beside the plan, as far as it is @seen; empty where one view is alone. */
FpBox   fp_pew_room_quarter (const FpBoardLayout *layout, const FpBox *seen);

/**
 * fp_pew_room_find:
 *
 * The largest room of the shape of the picture, and its words, that covers neither the mitre line nor anything else; of
 * equal ones the uppermost, then the one farthest to the right.  Empty where there is none in which one would see something.
 */
FpBox   fp_pew_room_find    (const FpBoardLayout *layout, const FpBox *quarter, const GArray *covered);

G_END_DECLS
