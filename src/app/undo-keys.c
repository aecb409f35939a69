/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "undo-keys.h"

void
fp_add_undo_keys (GtkWidget *window, const char *undo, const char *redo)
{
  const struct { const char *keys, *action; } all[] = { { "<Control>z", undo }, { "<Control><Shift>z", redo }, { "<Control>y", redo } };
  GtkEventController *keys = gtk_shortcut_controller_new ();

  gtk_event_controller_set_propagation_phase (keys, GTK_PHASE_CAPTURE);
  for (guint i = 0; i < G_N_ELEMENTS (all); i++)
    gtk_shortcut_controller_add_shortcut (GTK_SHORTCUT_CONTROLLER (keys),
                                          gtk_shortcut_new (gtk_shortcut_trigger_parse_string (all[i].keys),
                                                            gtk_named_action_new (all[i].action)));
  gtk_widget_add_controller (window, keys);
}
