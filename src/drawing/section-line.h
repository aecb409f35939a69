/* SPDX-License-Identifier: GPL-3.0-or-later */
/* section-line.h - on the plan, where a section is cut
 *
 * A long-dashed dotted narrow line with thick ends; at each end an arrow in
 * the direction of viewing, its tip on the line, and the letter of the section
 * behind it (ISO 128-3 and ISO 128-2, from memory).  Paper millimetres.
 */
#pragma once

#include "cover.h"

#include "footpace/view.h"

G_BEGIN_DECLS

typedef struct
{
  FpViewId view;      /* the section that is cut there                        */
  FpPoint  end[2];    /* tips of the line, beyond the outline of the plan     */
  FpPoint  along;     /* from the first to the second, of length 1            */
  FpPoint  looks;     /* the direction of viewing, of length 1                */
  char     letter[2];
} FpSectionLine;

/* Those of @layout that pass through @content, the outline of the plan; returns how many. */
guint fp_section_lines (const FpViewLayout *layout, const FpBox *content, FpSectionLine out[FP_N_VIEWS]);

/* What is drawn and lettered keeps clear of them. */
void  fp_section_line_cover   (const FpSectionLine *self, FpCover *room);
void  fp_section_line_add_box (const FpSectionLine *self, FpBox *box);
void  fp_section_line_draw    (const FpSectionLine *self, FpDrawing *drawing);

G_END_DECLS
