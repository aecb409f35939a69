/* SPDX-License-Identifier: GPL-3.0-or-later */
/* room.h - what paper is taken
 *
 * Dimensions and lettering never cross each other.  Whoever puts something on
 * the paper first asks whether its lines and texts are free, then takes them.
 * Lines of what is drawn are kept apart: extension lines may cross them,
 * labels may not.  Paper millimetres.
 */
#pragma once

#include "footpace/geom.h"

G_BEGIN_DECLS

typedef struct _FpRoom FpRoom;

FpRoom *fp_room_new  (void);
void    fp_room_free (FpRoom *self);

/* @owner: marks of one owner may cross each other; a number from 1 */
void fp_room_take_line (FpRoom *self, FpPoint a, FpPoint b, guint owner);
void fp_room_take_text (FpRoom *self, const FpBox *box, guint owner);

/* A line may touch the end of another, and run along it; it may not cross it, nor a text. */
gboolean fp_room_line_is_free (const FpRoom *self, FpPoint a, FpPoint b, guint owner);
gboolean fp_room_text_is_free (const FpRoom *self, const FpBox *box, guint owner);

/* Lines of what is drawn, and filled areas, on which nothing can be lettered. */
void     fp_room_add_object (FpRoom *self, FpPoint a, FpPoint b);
void     fp_room_add_filled (FpRoom *self, const FpPoint *pt, guint n); /* copied */
gboolean fp_room_is_blank   (const FpRoom *self, const FpBox *box);

/* Whether the segment meets the box; one that only touches it does not. */
gboolean fp_segment_meets_box (FpPoint a, FpPoint b, const FpBox *box);

/* Whether two segments cross: meeting within 0.06 mm of an end, or running along each other, is not crossing. */
gboolean fp_segments_cross (FpPoint a, FpPoint b, FpPoint c, FpPoint d);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FpRoom, fp_room_free)

G_END_DECLS
