/* SPDX-License-Identifier: GPL-3.0-or-later */
/* stonework.h - how steps, floors and altars are laid of slabs: each slab, where it lies and what size it is cut to
 *
 * Millimetres, in the thing's own coordinates.  The edge of a step as it is
 * drawn is the edge of its nosing: the riser below stands back from it.  A
 * tread reaches under the riser that stands on it; a riser stands between two
 * beds; what runs in front passes the ends (common practice, no source).
 * Joints stand aside from those of the course beneath.
 */
#pragma once

#include "footpace/scene.h"

G_BEGIN_DECLS

typedef struct
{
  guint  number;                   /* in the thing, from 1                   */
  guint  course;                   /* index into the courses                 */
  guint  row;                      /* of a floor, from 0 in front; otherwise 0 */
  double length, width, thickness; /* as cut: along the course, across it, and the third */
  FpBox3 box;                      /* where it lies                          */
} FpSlab;

typedef struct
{
  GArray *courses; /* of FpCourse, as the kind has them                      */
  GArray *slabs;   /* of FpSlab, course by course, each from where its course begins; of faces none where the works ask for blocks */
} FpStonework;

/* Nothing where that kind is laid of nothing. */
FpStonework *fp_stonework_new  (const FpKind *kind, const FpForm *form, const FpWorks *works);
void         fp_stonework_free (FpStonework *self);

/* mm3 of air that is under the nosings of @course, where the drawn step has stone. */
double       fp_stonework_air  (const FpCourse *course, const FpWorks *works);

/* Whether it is laid as new work: what is kept, moved or removed is as somebody built it. */
gboolean     fp_placed_is_new  (const FpPlaced *placed);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FpStonework, fp_stonework_free)

G_END_DECLS
