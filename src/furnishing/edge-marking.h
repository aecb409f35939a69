/* SPDX-License-Identifier: GPL-3.0-or-later */
/* edge-marking.h - how the edges of steps are told from their treads, for kinds that have steps
 *
 * Private to src/furnishing.  Four parameters, one after the other; until
 * somebody says how the edges are, nothing is known of them.
 */
#pragma once

#include "kind-private.h"

G_BEGIN_DECLS

enum { FP_EDGE_UNSAID, FP_EDGE_PLAIN, FP_EDGE_MARKED };

static const FpChoice fp_edge_choices[]
  = { { "unsaid", "Not said" }, { "plain", "Like the treads" }, { "marked", "Marked in contrast" }, { NULL, NULL } };

#define FP_EDGE_SOURCE "Approved Document K (England, 2013), as reported: 55 mm on tread and riser"

/* In this order; the first is of index @at for fp_strokes_add_edge_marking(). */
#define FP_EDGE_PARAMS                                                                                               \
  FP_CHOICE ("edge", "Edges of the steps", fp_edge_choices, FP_EDGE_UNSAID, FP_JUDGEMENT),                           \
  FP_LENGTH ("edge-tread", "Marking on the tread, where it is marked", 0, 55, 300, FP_EDGE_SOURCE),                  \
  FP_LENGTH ("edge-riser", "Marking on the riser, where it is marked", 0, 55, 300, FP_EDGE_SOURCE),                  \
  FP_SHARE ("edge-contrast", "Contrast of the marking, in light reflected", 0, 0.3, 1, "BS 8300, from memory: 30 points")
enum { FP_N_EDGE_PARAMS = 4 };

/* The line where the marking ends, behind the edge from @a to @b, whose tread is on its left; nothing where none is marked. */
void fp_strokes_add_edge_marking (GArray *out, const FpForm *form, guint at, FpPoint a, FpPoint b);

G_END_DECLS
