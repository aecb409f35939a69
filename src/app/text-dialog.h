/* SPDX-License-Identifier: GPL-3.0-or-later */
/* text-dialog.h - a name and a note are asked for */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* Returns NULL when the texts were taken, or what is wrong with them (owned by the dialog). */
typedef char *(*FpTextAnswer) (const char *name, const char *note, gpointer data);

/* @data is released by @data_free when the dialog is gone. */
void fp_text_dialog_show (GtkWindow *parent, const char *title, const char *accept, const char *name, const char *note,
                          FpTextAnswer answer, gpointer data, GDestroyNotify data_free);

/* Escape puts a dialog away, as people expect of one. */
void fp_close_on_escape (GtkWindow *dialog);

G_END_DECLS
