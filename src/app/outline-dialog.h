/* SPDX-License-Identifier: GPL-3.0-or-later */
/* outline-dialog.h - the outline of a wall, a floor, a gallery, typed: as corners, or walked side by side */
#pragma once

#include "document.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* @id: of a thing that is given by its corners */
GtkWidget *fp_outline_dialog_show (GtkWindow *parent, FpDocument *document, const char *id);

G_END_DECLS
