/* SPDX-License-Identifier: GPL-3.0-or-later */
/* cover.h - what paper is covered
 *
 * Dimensions and lettering never cross each other.  Whoever puts something on
 * the paper first asks whether its lines and texts are free, then takes them.
 * Lines of what is drawn are kept apart: extension lines may cross them,
 * labels may not.  Paper millimetres.
 */
#pragma once

#include "footpace/geom.h"

G_BEGIN_DECLS

typedef struct _FpCover FpCover;

FpCover *fp_cover_new  (void);
void    fp_cover_free (FpCover *self);

/* @owner: marks of one owner may cross each other; a number from 1 */
void fp_cover_take_line (FpCover *self, FpPoint a, FpPoint b, guint owner);
void fp_cover_take_text (FpCover *self, const FpBox *box, guint owner);

/* Strokes at the ends of dimension lines: texts keep away from them, and lines pass through their middle or not at all. */
void fp_cover_take_tick (FpCover *self, FpPoint a, FpPoint b, guint owner);
gboolean fp_cover_tick_is_free (const FpCover *self, FpPoint a, FpPoint b, guint owner);

/* What was taken so far; resetting gives back what was taken since. */
typedef struct { guint lines, texts, ticks; } FpCoverMark;
FpCoverMark fp_cover_mark (const FpCover *self);
void     fp_cover_reset (FpCover *self, FpCoverMark mark);

/* A line may touch the end of another, and run along it; it may not cross it, nor a text. */
gboolean fp_cover_line_is_free (const FpCover *self, FpPoint a, FpPoint b, guint owner);
gboolean fp_cover_text_is_free (const FpCover *self, const FpBox *box, guint owner);

/* Lines of what is drawn, and filled areas, on which nothing can be lettered. @owner: any number but 0; 0: nobody's */
void     fp_cover_add_object (FpCover *self, FpPoint a, FpPoint b, guint owner);
void     fp_cover_add_filled (FpCover *self, const FpPoint *pt, guint n); /* copied */
/* @but: lines of this owner do not count; 0: all do */
gboolean fp_cover_is_blank   (const FpCover *self, const FpBox *box, guint but);
/* Lines of what is drawn that pass through a box, which a patch of paper would interrupt. */
guint    fp_cover_lines_in   (const FpCover *self, const FpBox *box);
/* Whether some of it lies on a filled area. */
gboolean fp_cover_is_on_filled (const FpCover *self, const FpBox *box);
/* Lines of what is drawn that a segment crosses. */
guint    fp_cover_crossings  (const FpCover *self, FpPoint a, FpPoint b);
/* Whether it passes over a filled area. */
gboolean fp_cover_passes_filled (const FpCover *self, FpPoint a, FpPoint b);

/* Rows of seats: what lies among them is not told from them.  @pt: the field that they cover; copied */
void     fp_cover_add_rows    (FpCover *self, const FpPoint *pt, guint n);
gboolean fp_cover_passes_rows (const FpCover *self, FpPoint a, FpPoint b);

/* Whether a line that was taken by another owner runs along the segment within @distance mm. */
gboolean fp_cover_line_has_company (const FpCover *self, FpPoint a, FpPoint b, double distance, guint owner);

/* Whether something that is drawn runs along the segment within @distance mm, so that the two could not be told apart. */
gboolean fp_cover_runs_along (const FpCover *self, FpPoint a, FpPoint b, double distance);

/* Whether the segment meets the box; one that only touches it does not. */
gboolean fp_segment_meets_box (FpPoint a, FpPoint b, const FpBox *box);

/* Whether two segments cross: meeting within 0.06 mm of an end, or running along each other, is not crossing. */
gboolean fp_segments_cross (FpPoint a, FpPoint b, FpPoint c, FpPoint d);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FpCover, fp_cover_free)

G_END_DECLS
