/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "settled-window.h"

#define MARGIN 12
#define WIDTH  520
#define MOST   560 /* px: higher it scrolls */

static GtkWidget *
line (const char *text, const char *css)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0.0f);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_selectable (GTK_LABEL (label), FALSE);
  if (css != NULL)
    gtk_widget_add_css_class (label, css);
  return label;
}

static GtkWidget *
row_of (const FpSettled *settled)
{
  GtkWidget *row = gtk_list_box_row_new (), *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 10);
  GtkWidget *text = gtk_box_new (GTK_ORIENTATION_VERTICAL, 2);
  GtkWidget *icon = gtk_image_new_from_icon_name (settled->settled ? "object-select-symbolic" : "dialog-warning-symbolic");
  const char *words = settled->words != NULL ? settled->words : "";
  g_autofree char *state = g_strdup_printf ("%s, %s", settled->settled ? "Settled" : "Not settled", fp_weight_label (settled->weight));
  g_autofree char *spoken = g_strdup_printf ("%s: %s. %s", state, settled->title, words);

  gtk_widget_set_valign (icon, GTK_ALIGN_START);
  gtk_box_append (GTK_BOX (box), icon);
  gtk_box_append (GTK_BOX (box), text);
  gtk_widget_set_hexpand (text, TRUE);
  gtk_box_append (GTK_BOX (text), line (settled->title, "heading"));
  gtk_box_append (GTK_BOX (text), line (state, "dim-label"));
  if (*words != '\0')
    gtk_box_append (GTK_BOX (text), line (words, NULL));
  gtk_list_box_row_set_child (GTK_LIST_BOX_ROW (row), box);
  gtk_accessible_update_property (GTK_ACCESSIBLE (row), GTK_ACCESSIBLE_PROPERTY_LABEL, spoken, -1);
  return row;
}

static GtkWidget *
list_of (const FpSettling *settling)
{
  GtkWidget *list = gtk_list_box_new (), *scroll = gtk_scrolled_window_new ();

  gtk_list_box_set_selection_mode (GTK_LIST_BOX (list), GTK_SELECTION_NONE);
  gtk_widget_add_css_class (list, "cards");
  gtk_accessible_update_property (GTK_ACCESSIBLE (list), GTK_ACCESSIBLE_PROPERTY_LABEL, "What was settled, and what was not", -1);
  for (guint i = 0; i < settling->list->len; i++)
    gtk_list_box_append (GTK_LIST_BOX (list), row_of (&g_array_index (settling->list, FpSettled, i)));
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scroll), list);
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scroll), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_propagate_natural_height (GTK_SCROLLED_WINDOW (scroll), TRUE);
  gtk_scrolled_window_set_max_content_height (GTK_SCROLLED_WINDOW (scroll), MOST);
  gtk_widget_set_vexpand (scroll, TRUE);
  return scroll;
}

static void
on_undo (GtkWindow *self)
{
  GtkWindow *parent = gtk_window_get_transient_for (self);

  if (parent != NULL)
    gtk_widget_activate_action (GTK_WIDGET (parent), "win.undo", NULL);
  gtk_window_destroy (self);
}

static GtkWidget *
buttons_of (GtkWidget *self, gboolean changed)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8), *close = gtk_button_new_with_label ("Close");

  gtk_widget_set_halign (box, GTK_ALIGN_END);
  if (changed)
    {
      GtkWidget *undo = gtk_button_new_with_label ("Undo All of It");

      g_signal_connect_swapped (undo, "clicked", G_CALLBACK (on_undo), self);
      gtk_box_append (GTK_BOX (box), undo);
    }
  gtk_widget_add_css_class (close, "suggested-action");
  g_signal_connect_swapped (close, "clicked", G_CALLBACK (gtk_window_destroy), self);
  gtk_box_append (GTK_BOX (box), close);
  gtk_window_set_default_widget (GTK_WINDOW (self), close);
  gtk_window_set_focus (GTK_WINDOW (self), close);
  return box;
}

static void
add_escape (GtkWidget *self)
{
  GtkEventController *keys = gtk_shortcut_controller_new ();

  gtk_shortcut_controller_add_shortcut (GTK_SHORTCUT_CONTROLLER (keys),
                                        gtk_shortcut_new (gtk_keyval_trigger_new (GDK_KEY_Escape, 0),
                                                          gtk_named_action_new ("window.close")));
  gtk_widget_add_controller (self, keys);
}

GtkWidget *
fp_settled_window_new (GtkWindow *parent, const FpSettling *settling)
{
  GtkWidget *self = gtk_window_new (), *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, MARGIN);
  g_autofree char *words = fp_settling_words (settling);

  gtk_window_set_title (GTK_WINDOW (self), "Settle All");
  gtk_window_set_transient_for (GTK_WINDOW (self), parent);
  gtk_window_set_destroy_with_parent (GTK_WINDOW (self), TRUE);
  gtk_window_set_default_size (GTK_WINDOW (self), WIDTH, -1);
  gtk_widget_set_margin_top (box, MARGIN);
  gtk_widget_set_margin_bottom (box, MARGIN);
  gtk_widget_set_margin_start (box, MARGIN);
  gtk_widget_set_margin_end (box, MARGIN);
  gtk_box_append (GTK_BOX (box), line (words, "section-title"));
  gtk_box_append (GTK_BOX (box), list_of (settling));
  gtk_box_append (GTK_BOX (box), line ("It is one step of the history: Undo takes all of it back. Nothing here approves anything; "
                                       "read the cautions of the findings.", "caption"));
  gtk_window_set_child (GTK_WINDOW (self), box);
  gtk_box_append (GTK_BOX (box), buttons_of (self, settling->project != NULL));
  add_escape (self);
  return self;
}
