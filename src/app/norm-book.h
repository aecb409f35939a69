/* SPDX-License-Identifier: GPL-3.0-or-later */
/* norm-book.h - a rulebook added to those that a project brings along */
#pragma once

#include "footpace/rules.h"

G_BEGIN_DECLS

/* With the book that is in @xml, in place of the project's own of its id or of the file's @name.  @said (out): a sentence
 * where a book of its id is replaced, else %NULL; owned by the caller.
 *
 * Returns: (transfer full) (nullable): %NULL where it is no rulebook, or has the id of a built-in one, or cannot be kept */
FpProject *fp_norm_book_add (const FpProject *project, const char *name, const char *xml, char **said, GError **error);

G_END_DECLS
