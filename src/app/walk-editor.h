/* SPDX-License-Identifier: GPL-3.0-or-later */
/* walk-editor.h - an outline walked side by side: a list of typed lengths and turns
 *
 * Turns are shown as people say them on the way, "right 90", "left 45";
 * the walk goes clockwise, with the church to the right.
 * Signal "changed": something was typed, a side added or taken away.
 */
#pragma once

#include "footpace/traverse.h"
#include "footpace/units.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define FP_TYPE_WALK_EDITOR (fp_walk_editor_get_type ())
G_DECLARE_FINAL_TYPE (FpWalkEditor, fp_walk_editor, FP, WALK_EDITOR, GtkWidget)

GtkWidget *fp_walk_editor_new       (FpUnits units);
void       fp_walk_editor_set       (FpWalkEditor *self, const FpLeg *leg, guint n);
void       fp_walk_editor_set_units (FpWalkEditor *self, FpUnits units); /* keeps the lengths */

/* Appends FpLeg to @out, and to @typed (nullable) the gbooleans whether a hand has typed the length of each; what nobody
 * has touched is not rounded by being shown.  What cannot be read is said with the number of its side, and marked in the list. */
gboolean   fp_walk_editor_read      (FpWalkEditor *self, GArray *out, GArray *typed, GError **error);

/* "right 90", "90 right", "left 45", "90" (to the right), "straight on"; shown to two decimals. */
gboolean   fp_turn_parse  (const char *text, double *turn, GError **error);
char      *fp_turn_format (double turn); /* owned by the caller */

/* By how much it fails to close, and over which sides that is shared out (@kept: those that were typed stay), or that it
 * is too much; owned by the caller. */
char      *fp_closure_tells (const FpClosure *closure, gboolean kept, FpUnits units);

G_END_DECLS
