/* SPDX-License-Identifier: GPL-3.0-or-later */
/* keeper.h - keeps an open document's unsaved changes in the recovery folder while it is worked on
 *
 * A few seconds after the first change that is not kept yet (so that steady
 * work cannot put it off), written on a thread of its own, one at a time.
 * Needs a main loop, no display.
 */
#pragma once

#include "document.h"

G_BEGIN_DECLS

typedef struct _FpKeeper FpKeeper;

/**
 * fp_keeper_new:
 * @folder: see recovery.h
 * @delay: ms after the first change
 *
 * Holds no reference to @document, which must outlive it.  Where the folder
 * cannot be written, nothing is kept and fp_keeper_trouble() says why.
 */
FpKeeper   *fp_keeper_new     (FpDocument *document, const char *folder, guint delay);

/* What was kept goes: the document was saved, or given up knowingly. */
void        fp_keeper_free    (FpKeeper *self);

/* Keeps what is there now before it returns. */
void        fp_keeper_keep_now (FpKeeper *self);

const char *fp_keeper_trouble (FpKeeper *self); /* NULL: none */
gboolean    fp_keeper_is_idle (FpKeeper *self); /* all is kept, or there is nothing to keep */
/* Whether another living window, of this or another program, has the document's file. */
gboolean    fp_keeper_is_open_elsewhere (FpKeeper *self);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FpKeeper, fp_keeper_free)

G_END_DECLS
