/* SPDX-License-Identifier: GPL-3.0-or-later */
/* setting-window.h - what stands, is veiled and burns at the celebration that the board shows, to be decided otherwise
 *
 * It follows the document, and each change is an edit of its own.
 */
#pragma once

#include "document.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define FP_TYPE_SETTING_WINDOW (fp_setting_window_get_type ())
G_DECLARE_FINAL_TYPE (FpSettingWindow, fp_setting_window, FP, SETTING_WINDOW, GtkWindow)

/* The board shows a celebration of the brief from now on, where it showed all things. */
GtkWidget *fp_setting_window_new (GtkWindow *parent, FpDocument *document);

/* "All things", and each celebration: choice 0, and 1 + the number of its bit. */
GtkStringList *fp_celebration_choices (void);
guint          fp_celebration_choice  (guint celebration);
guint          fp_celebration_chosen  (guint choice); /* a FpCelebration, or 0 */

G_END_DECLS
