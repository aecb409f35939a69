/* SPDX-License-Identifier: GPL-3.0-or-later */
/* sun-bar.h - at which Mass the sun is looked at, and what is said of it
 *
 * Signals
 *  "look"   another time was chosen
 */
#pragma once

#include "sun-drafter.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define FP_TYPE_SUN_BAR (fp_sun_bar_get_type ())
G_DECLARE_FINAL_TYPE (FpSunBar, fp_sun_bar, FP, SUN_BAR, GtkWidget)

void      fp_sun_bar_set_brief (FpSunBar *self, const FpBrief *brief);
FpSunLook fp_sun_bar_look      (FpSunBar *self);
/* What has been reckoned meanwhile; borrowed for the call. */
void      fp_sun_bar_tell      (FpSunBar *self, const FpSunDraft *draft);

G_END_DECLS
