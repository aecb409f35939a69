/* SPDX-License-Identifier: GPL-3.0-or-later */
/* late-menu.h - menus that are made when they are first opened: the window that holds them is not to wait for them */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* The button holds @model. */
void fp_late_menu_set (GtkWidget *menu_button, GMenuModel *model);

G_END_DECLS
