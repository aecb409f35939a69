/* SPDX-License-Identifier: GPL-3.0-or-later */
/* history.h - the project as it was, is, and may be again
 *
 * Owns a reference to every project since the file was opened.  Projects
 * share what did not change, so a step costs little more than what it changed.
 */
#pragma once

#include "footpace/project.h"

G_BEGIN_DECLS

typedef struct _FpHistory FpHistory;

FpHistory       *fp_history_new  (FpProject *start, gboolean saved); /* takes its own reference */
void             fp_history_free (FpHistory *self);
const FpProject *fp_history_now  (const FpHistory *self); /* borrowed until the next change */

/**
 * fp_history_push:
 * @next: (transfer none): the project after the edit; nothing happens if it equals the present one
 * @label: what was done, for "Undo …"
 * @merge: (nullable): edits pushed one after another with the same tag become
 *   one step (the arrow keys of one nudge); %NULL never merges
 */
void             fp_history_push (FpHistory *self, FpProject *next, const char *label, const char *merge);
/**
 * fp_history_set_page:
 *
 * How the project is printed, in all its steps at once: nothing of the church is changed, so it is no step of its own,
 * nothing undoes it, and what was undone can still be done again.
 *
 * Returns: FALSE with %FP_ERROR_RANGE where it is no page set-up; then nothing changed
 */
gboolean         fp_history_set_page (FpHistory *self, const FpPageSetup *page, GError **error);
gboolean         fp_history_undo (FpHistory *self); /* FALSE at the start  */
gboolean         fp_history_redo (FpHistory *self); /* FALSE at the end    */
const char      *fp_history_undo_label (const FpHistory *self); /* NULL at the start */
const char      *fp_history_redo_label (const FpHistory *self);
guint            fp_history_depth (const FpHistory *self); /* steps that can be undone */
void             fp_history_mark_saved  (FpHistory *self);
gboolean         fp_history_is_modified (const FpHistory *self);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FpHistory, fp_history_free)

G_END_DECLS
