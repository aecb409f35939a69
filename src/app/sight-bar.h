/* SPDX-License-Identifier: GPL-3.0-or-later */
/* sight-bar.h - what is looked at, when, and what is said of it
 *
 * Signals
 *  "look"   something else is looked at, or at another moment, or another place was chosen
 */
#pragma once

#include "sight-drafter.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define FP_TYPE_SIGHT_BAR (fp_sight_bar_get_type ())
G_DECLARE_FINAL_TYPE (FpSightBar, fp_sight_bar, FP, SIGHT_BAR, GtkWidget)

FpSightLook fp_sight_bar_look      (FpSightBar *self);
void        fp_sight_bar_set_place (FpSightBar *self, int place); /* -1: nobody's */
/* At the moment at which it matters. */
void        fp_sight_bar_set_focus (FpSightBar *self, FpFocus focus, int place);
/* What has been seen meanwhile; borrowed for the call. */
void        fp_sight_bar_tell      (FpSightBar *self, const FpSightDraft *draft);

G_END_DECLS
