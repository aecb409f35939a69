/* SPDX-License-Identifier: GPL-3.0-or-later */
/* arrange-dialog.h - what has to be asked before things are arranged
 *
 * Each dialog is about what is chosen in the document when it opens.  What it
 * would make is shown on the board while it is typed, and is no part of the
 * history until it is accepted; what was made is chosen then.
 */
#pragma once

#include "document.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* What an arrangement is about, for labels of the history: a name, or "3 things"; owned by the caller. */
char *fp_chosen_words (FpDocument *document);

GtkWidget *fp_repeat_dialog_show  (GtkWindow *parent, FpDocument *document);
GtkWidget *fp_level_dialog_show   (GtkWindow *parent, FpDocument *document);
GtkWidget *fp_copy_to_dialog_show (GtkWindow *parent, FpDocument *document);

G_END_DECLS
