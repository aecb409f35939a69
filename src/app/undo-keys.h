/* SPDX-License-Identifier: GPL-3.0-or-later */
/* undo-keys.h - undo and redo by keys in a window whose fields make edits */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* Ctrl+Z, Ctrl+Shift+Z and Ctrl+Y, before a field has them: there they would take back its letters, and not the edit.
 * @undo, @redo: actions of @window. */
void fp_add_undo_keys (GtkWidget *window, const char *undo, const char *redo);

G_END_DECLS
