/* SPDX-License-Identifier: GPL-3.0-or-later */
/* memory.h - where names and dimensions of a board stood, so that they stay while something else is changed
 *
 * All of it as it was set out, about (0, 0); of use only while the board is
 * set out at the same step of scale.
 */
#pragma once

#include "labels.h"
#include "wanted.h"

#include "footpace/board.h"

G_BEGIN_DECLS

typedef struct
{
  double  scale;  /* at which it was set out; 0: never */
  GArray *labels; /* FpLabelPlace                      */
  GArray *wanted; /* FpWanted that stood within the view */
} FpViewMemory;

struct _FpBoardMemory
{
  FpViewMemory view[FP_N_VIEWS];
  gboolean     lacks_name; /* of what was drawn last, and all set out anew may have room for it */
};

/* NULL where there is nothing to remember at that scale. */
const FpViewMemory *fp_view_memory_at (const FpViewMemory *self, double scale);

/* Takes copies. */
void                fp_view_memory_set (FpViewMemory *self, double scale, const GArray *labels, const GArray *wanted);

G_END_DECLS
