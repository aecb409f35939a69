/* SPDX-License-Identifier: GPL-3.0-or-later */
/* give-back.h - memory that is used no more goes back to the system
 *
 * Drafts and checks of a large church take a hundred megabytes for a moment.
 * The C library keeps what was freed, in a pool for each thread, and a few
 * small things that live on in a pool hold all of it: after an hour of work
 * several hundred megabytes would be held for nothing.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* To be called before threads begin: they share few pools.  More than once does nothing more. */
void fp_give_back_share (void);
/* Something was worked out in the background: what that took is given back when all has come to rest, or at last after a
 * minute.  On the thread of the default main context. */
void fp_give_back_later (void);

G_END_DECLS
