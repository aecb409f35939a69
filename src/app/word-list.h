/* SPDX-License-Identifier: GPL-3.0-or-later */
/* word-list.h - a list of which each row is a line of words */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* Instead of the rows that it has.  @words: (element-type utf8) */
void fp_word_list_fill (GtkListBox *list, const GPtrArray *words);

G_END_DECLS
