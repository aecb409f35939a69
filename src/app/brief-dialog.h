/* SPDX-License-Identifier: GPL-3.0-or-later */
/* brief-dialog.h - what the parish asks for, and a new project from it */
#pragma once

#include "document.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* Edits the brief of an open project; what is wrong is said in the dialog. */
void fp_brief_dialog_show (GtkWindow *parent, FpDocument *document);

/* @project: (transfer none). */
typedef void (*FpNewProjectAnswer) (FpProject *project, gpointer data);

/* Asks for a title and the few measures of a plain church. */
void fp_new_project_dialog_show (GtkWindow *parent, FpNewProjectAnswer answer, gpointer data);

G_END_DECLS
