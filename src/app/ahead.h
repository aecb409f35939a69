/* SPDX-License-Identifier: GPL-3.0-or-later */
/* ahead.h - the file that the program is given is read, and drawn, while the toolkit starts
 *
 * Neither needs a display, and each takes about as long as the toolkit does
 * to find out what the display can do.  What it hands over is not checked yet.
 */
#pragma once

#include "document.h"
#include "drafter.h"

G_BEGIN_DECLS

typedef struct _FpAhead FpAhead;

FpAhead    *fp_ahead_begin (const char *path);
void        fp_ahead_free  (FpAhead *self); /* waits for what has been begun; @self may be NULL */
/* Whether @path (nullable) is the file that it reads. */
gboolean    fp_ahead_is_of (const FpAhead *self, const char *path);
/* Waits until the file is read, and hands it over: once.  As fp_document_load(); @draft gets the drawing of its scene with
 * nothing left out, as it is shown first: owned by the caller, and maybe still being made.  NULL where there is no document. */
FpDocument *fp_ahead_end   (FpAhead *self, FpDraft **draft, GError **error);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FpAhead, fp_ahead_free)

G_END_DECLS
