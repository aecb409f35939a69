/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "word-list.h"

void
fp_word_list_fill (GtkListBox *list, const GPtrArray *words)
{
  GtkListBoxRow *row;

  while ((row = gtk_list_box_get_row_at_index (list, 0)) != NULL)
    gtk_list_box_remove (list, GTK_WIDGET (row));
  for (guint i = 0; i < words->len; i++)
    {
      GtkWidget *label = gtk_label_new (g_ptr_array_index (words, i));

      gtk_label_set_xalign (GTK_LABEL (label), 0);
      gtk_list_box_append (list, label);
    }
}
