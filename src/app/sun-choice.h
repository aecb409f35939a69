/* SPDX-License-Identifier: GPL-3.0-or-later */
/* sun-choice.h - asks at which Mass, and on which day, the sun is looked at
 *
 * Signals
 *  "look"   another time was chosen by hand
 */
#pragma once

#include "sun-look.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define FP_TYPE_SUN_CHOICE (fp_sun_choice_get_type ())
G_DECLARE_FINAL_TYPE (FpSunChoice, fp_sun_choice, FP, SUN_CHOICE, GtkBox)

/* Offers the Masses of that brief. */
void      fp_sun_choice_set_brief (FpSunChoice *self, const FpBrief *brief);
FpSunLook fp_sun_choice_look      (FpSunChoice *self);
void      fp_sun_choice_set_look  (FpSunChoice *self, const FpSunLook *look);

G_END_DECLS
