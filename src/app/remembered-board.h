/* SPDX-License-Identifier: GPL-3.0-or-later */
/* remembered-board.h - what the board showed of the project that was on it last, and where it was cut
 *
 * Kept in board.ini in the user's configuration folder.  Losing it loses
 * nothing but comfort, so no error is told.
 */
#pragma once

#include "footpace/page.h"

G_BEGIN_DECLS

/* Both take a cut for each view; that of the plan counts for nothing.
 * @path: (nullable): the project's file; NULL: it has none yet */
void     fp_remembered_board_save (const char *path, FpHidden hidden, const FpCut cuts[FP_N_VIEWS]);

/* FALSE where the last one was another project; then nothing is set. */
gboolean fp_remembered_board_load (const char *path, FpHidden *hidden, FpCut cuts[FP_N_VIEWS]);

G_END_DECLS
