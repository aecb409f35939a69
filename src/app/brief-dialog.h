/* SPDX-License-Identifier: GPL-3.0-or-later */
/* brief-dialog.h - what the parish asks for */
#pragma once

#include "document.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* Edits the brief of an open project; what is wrong is said in the dialog. */
void fp_brief_dialog_show (GtkWindow *parent, FpDocument *document);

G_END_DECLS
