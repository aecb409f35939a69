/* SPDX-License-Identifier: GPL-3.0-or-later */
/* over-drafter.h - what lies over the board, drawn on a thread of its own, where only the newest request counts
 *
 * Knows no toolkit.  What is drawn, and of what, each kind says by an FpOverWork of its own: sight-drafter.h,
 * blind-drafter.h, sun-drafter.h.
 */
#pragma once

#include <gio/gio.h>

G_BEGIN_DECLS

typedef struct
{
  const char    *name;
  gpointer     (*make) (gconstpointer request, GCancellable *cancel); /* the draft; NULL: it was cancelled */
  GDestroyNotify request_free, draft_free;
  gboolean       at_rest; /* it takes longer than a frame: it is begun when nothing else has been asked for a moment, and given
                             up as soon as something is; otherwise it follows a drag */
} FpOverWork;

/* @draft is handed over. */
typedef void (*FpOverReceive) (gpointer draft, gpointer data);

typedef struct _FpOverDrafter FpOverDrafter;
FpOverDrafter *fp_over_drafter_new  (const FpOverWork *work, FpOverReceive receive, gpointer data); /* @work: for ever */
void           fp_over_drafter_free (FpOverDrafter *self);
void           fp_over_drafter_ask  (FpOverDrafter *self, gpointer request); /* takes @request */

G_END_DECLS
