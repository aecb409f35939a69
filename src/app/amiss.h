/* SPDX-License-Identifier: GPL-3.0-or-later */
/* amiss.h - what is amiss with a thing, said by its name and in the units of the project
 *
 * Below the window an error begins with the id of what it is about, and its
 * lengths are in millimetres, as files have both; on the screen things go by
 * their names, and lengths are as the project has them.
 */
#pragma once

#include "footpace/scene.h"

G_BEGIN_DECLS

/* "East wall: the outline encloses nothing" of "wall-2: …", "6' 6 3/4\"" of "2000 mm" where feet and inches are used;
 * anything else as it is.  Owned by the caller. */
char *fp_amiss_words (const FpScene *scene, const char *message);

G_END_DECLS
