/* SPDX-License-Identifier: GPL-3.0-or-later */
/* text-find.h - finding words in a text that is read: all places are marked, one is gone to */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

typedef struct _FpTextFind FpTextFind;

/* Keeps no reference to the view: free it before the view goes. */
FpTextFind *fp_text_find_new   (GtkTextView *view);
void        fp_text_find_free  (FpTextFind *self);

/* Marks every place of @words, whatever its case, and goes to the first at or after the cursor. "": none. */
void        fp_text_find_look  (FpTextFind *self, const char *words);
/* The text was replaced: marks the places anew and goes nowhere. */
void        fp_text_find_again (FpTextFind *self);
/* Goes to the next or the one before; from the last to the first. */
void        fp_text_find_step  (FpTextFind *self, gboolean forward);

guint       fp_text_find_count (FpTextFind *self);
char       *fp_text_find_said  (FpTextFind *self); /* "3 of 12", "not found", "": owned by the caller */

G_END_DECLS
