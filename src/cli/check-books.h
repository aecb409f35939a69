/* SPDX-License-Identifier: GPL-3.0-or-later */
/* check-books.h - the rulebooks that a project is held against, with those that were asked for at the command */
#pragma once

#include "command.h"

#include "footpace/rules.h"

G_BEGIN_DECLS

/* Those in @files (nullable, NULL-terminated).  NULL after having said which cannot be used: what was asked for is held, or
 * nothing is.  (element-type FpRulebook), owned by the caller. */
GPtrArray *fp_check_books_asked (char *const *files);

/* Those of the project with @asked, as fp_check_books_asked() gave them: in place of another edition that the project
 * keeps, or else beside its own.  Any thread.  (element-type FpRulebook), owned by the caller. */
GPtrArray *fp_check_books_for (const FpProject *project, const GPtrArray *asked);

G_END_DECLS
