/* SPDX-License-Identifier: GPL-3.0-or-later */
/* annotation-private.h - what the files that set out and draw an annotation share; paper mm */
#pragma once

#include "annotation.h"

G_BEGIN_DECLS

/* --- annotation-room.c: what the view shows, and what paper that covers --- */
FpBox     fp_box_on_paper (const FpViewLayout *layout, const FpBox *box);
/* For each placed thing, whether something of it that is not hidden is drawn; the caller's. */
gboolean *fp_annotation_find_shown (FpProjection *projection, const FpBox *clip);
void      fp_annotation_cover_objects (FpAnnotation *self, FpProjection *projection);
/* Where others are cut; returns how many. */
guint     fp_annotation_section_lines (const FpAnnotation *self, FpSectionLine out[FP_N_VIEWS]);
/* All that dimensions, levels and cutting lines cover, with the view. */
FpBox     fp_annotation_covered (const FpAnnotation *self);

/* --- annotation-title.c --- */
/* A title that has its place keeps it.  @times: how much larger the view is drawn than it is set out */
void      fp_annotation_keep_title_free (FpAnnotation *self, double times);
/* Any other stands above all that the view has. */
void      fp_annotation_set_title_at (FpAnnotation *self);
/* What title, dimensions and the rest need around the view. */
void      fp_annotation_set_margins (FpAnnotation *self);
void      fp_annotation_draw_title (const FpAnnotation *self, FpDrawing *drawing);
/* A box as it was before it grew. */
FpBox     fp_box_shrunk (FpBox box, double times);

/* --- annotation-place.c --- */
/* Sets out all but the title, as much of it as the scale has room for. */
void      fp_annotation_place (FpAnnotation *self, FpProjection *projection);

G_END_DECLS
