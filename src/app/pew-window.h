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
/* The same row and seat as a place of the people of another scene, or of the same. */
void       fp_pew_window_choose_as (FpPewWindow *self, const FpPeople *people, guint place);
/* What is looked at elsewhere, and when: so here, too, unless a person has chosen another moment here. */
void       fp_pew_window_look_at   (FpPewWindow *self, FpMoment moment, FpFocus focus);
/* For tests: the moment, and the index of the place. */
FpMoment   fp_pew_window_moment (FpPewWindow *self);
guint      fp_pew_window_place (FpPewWindow *self);
const char *fp_pew_window_told (FpPewWindow *self); /* under the picture; borrowed */

G_END_DECLS
