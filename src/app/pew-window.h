/* SPDX-License-Identifier: GPL-3.0-or-later */
/* pew-window.h - what a person sees from one place of the church on the board
 *
 * It follows the project while something is moved.  The place is chosen by a
 * click on the plan, by block, row and seat, or by the arrow keys.
 */
#pragma once

#include "document.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define FP_TYPE_PEW_WINDOW (fp_pew_window_get_type ())
G_DECLARE_FINAL_TYPE (FpPewWindow, fp_pew_window, FP, PEW_WINDOW, GtkWindow)

GtkWidget *fp_pew_window_new (GtkWindow *parent, FpDocument *document, FpInkChoice ink);
/* The place nearest to a point of the plan, if one is near. */
void       fp_pew_window_choose_at (FpPewWindow *self, FpPoint at);
/* For tests: the index of the place. */
guint      fp_pew_window_place (FpPewWindow *self);
const char *fp_pew_window_told (FpPewWindow *self); /* under the picture; borrowed */

G_END_DECLS
