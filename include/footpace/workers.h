/* SPDX-License-Identifier: GPL-3.0-or-later */
/* workers.h - parts of one task done side by side
 *
 * The threads are few, begun when they are first wanted and kept as long as
 * the program runs: one that is made for each task costs its making, and
 * leaves memory of its own behind.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* On any thread; several parts at once. */
typedef void (*FpWorkersPart) (guint part, gpointer data);

/* Calls @part with 0 … @n - 1, begun in this order, on the calling thread and on what workers are free, and returns when
 * all are done.  Never waits for a worker to be free, so a part may itself divide what it does, and any thread may ask.
 * Make more parts than there are processors where they are small: who asks at the same time is served by turns. */
void fp_workers_do (guint n, FpWorkersPart part, gpointer data);

G_END_DECLS
