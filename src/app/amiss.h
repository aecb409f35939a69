/* SPDX-License-Identifier: GPL-3.0-or-later */
/* amiss.h - what is amiss with a thing, said by its name
 *
 * Below the window an error begins with the id of what it is about, as files
 * and the command line have it; on the screen things go by their names.
 */
#pragma once

#include "footpace/scene.h"

G_BEGIN_DECLS

/* "East wall: the outline encloses nothing" of "wall-2: …"; anything else as it is.  Owned by the caller. */
char *fp_amiss_words (const FpScene *scene, const char *message);

G_END_DECLS
