/* SPDX-License-Identifier: GPL-3.0-or-later */
/* new-church-dialog.h - a new project: the brief and a room, with the church drawn as it is typed */
#pragma once

#include "footpace/project.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* @project: (transfer none). */
typedef void (*FpNewChurchAnswer) (FpProject *project, gpointer data);

/* What is wrong is said in the dialog, which stays open until a project can be made.  One that is left without
 * making a project comes back with what was typed in it. */
void fp_new_church_dialog_show (GtkWindow *parent, FpNewChurchAnswer answer, gpointer data);

G_END_DECLS
