/* SPDX-License-Identifier: GPL-3.0-or-later */
/* recent.h - the projects that were opened or saved of late, as the desktop knows them */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

void        fp_recent_remember (const char *path);
/* Fills a list box anew, newest first, with what is still there; how many there are. */
guint       fp_recent_fill (GtkWidget *list);
/* Of one of its rows; borrowed from it. */
const char *fp_recent_path (GtkListBoxRow *row);

G_END_DECLS
