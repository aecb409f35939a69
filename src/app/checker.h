/* SPDX-License-Identifier: GPL-3.0-or-later */
/* checker.h - findings in the background
 *
 * A scene asked for is answered when who sees what has been computed.  Where
 * that takes longer than one would wait, it is answered before as well, at
 * once, with all that needs no sight (rules of sight are then
 * FP_FOUND_WAITING).  The newest scene wins (see latest.h).
 */
#pragma once

#include "footpace/rules.h"

G_BEGIN_DECLS

typedef struct _FpChecker FpChecker;
typedef void (*FpCheckerReceive) (FpFindings *findings, gpointer data); /* borrowed */

FpChecker *fp_checker_new  (FpCheckerReceive receive, gpointer data);
void       fp_checker_free (FpChecker *self);
void       fp_checker_check (FpChecker *self, const FpScene *scene);
/* For who draws a frame: hands over at once what has been found, or will be before the frame were late for it. */
void       fp_checker_catch_up (FpChecker *self);
gboolean   fp_checker_is_busy (FpChecker *self);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FpChecker, fp_checker_free)

G_END_DECLS
