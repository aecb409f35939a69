/* SPDX-License-Identifier: GPL-3.0-or-later */
/* check-many.h - many projects checked side by side, a row for each alternative */
#pragma once

#include "command.h"

G_BEGIN_DECLS

typedef struct
{
  const char *alternative; /* (nullable) id or name; NULL: every one            */
  GPtrArray  *books;       /* (element-type FpRulebook) beside those of a project */
  gboolean    csv;         /* else lines that are read                          */
} FpCheckMany;

/* Files, and in folders all *.footpace however deep, in the order of their names within each; links to folders are not
 * followed.  (element-type filename), owned by the caller. */
GPtrArray *fp_check_many_files (char *const *given, guint n);

/* Prints a row for each, in their order; one that cannot be read has a row that says why, and stops none.
 * Returns: FP_EXIT_ERROR where one could not be read or written, FP_EXIT_SHORT where something required is short */
int fp_check_many (const FpCheckMany *self, GPtrArray *files);

G_END_DECLS
