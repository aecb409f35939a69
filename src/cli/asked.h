/* SPDX-License-Identifier: GPL-3.0-or-later */
/* asked.h - what is looked at, when and from where, as typed on the command line */
#pragma once

#include "footpace/people.h"

G_BEGIN_DECLS

/* These say what is wrong, and which there are, before they return FALSE; @option is named then. */
gboolean fp_asked_focus  (const char *option, const char *text, FpFocus *focus);
gboolean fp_asked_moment (const char *option, const char *text, FpMoment *moment);

#define FP_ASKED_SEAT "ROW,SEAT or BLOCK,ROW,SEAT"

/**
 * fp_asked_seat:
 * @text: "6,3", of the first block that has them; "Pews, Gospel side,6,3", by id or name of a block, which may hold commas
 * @block: (out) (transfer full) (nullable)
 *
 * Returns: FALSE where it is not of that form
 */
gboolean fp_asked_seat   (const char *text, char **block, guint *row, guint *number);

G_END_DECLS
