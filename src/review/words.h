/* SPDX-License-Identifier: GPL-3.0-or-later */
/* words.h - text in lines of a hundred letters
 *
 * Private to src/review.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* Appends words, wrapped, and ends the line; lines after the first begin with @indent blanks.  @column: where the line stands now. */
void fp_words_wrap    (GString *out, const char *text, guint indent, guint column);
/* "  Label      text, wrapped under itself"; nothing where there is no text. */
void fp_words_put     (GString *out, guint indent, const char *label, guint width, const char *text);
/* A blank line, the words, and a line under them. */
void fp_words_heading (GString *out, const char *text);

G_END_DECLS
