/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "late-menu.h"

/* Called each time that it opens. */
static void
make (GtkMenuButton *button, gpointer model)
{
  if (gtk_menu_button_get_popover (button) == NULL)
    gtk_menu_button_set_menu_model (button, model);
}

void
fp_late_menu_set (GtkWidget *menu_button, GMenuModel *model)
{
  gtk_menu_button_set_create_popup_func (GTK_MENU_BUTTON (menu_button), make, g_object_ref (model), g_object_unref);
}
