/* SPDX-License-Identifier: GPL-3.0-or-later */
/* norms-edit.h - the next project, in which the parish goes by its norms a little otherwise
 *
 * Each returns NULL with an error where the result would not be a project, and
 * never touches @project.
 */
#pragma once

#include "footpace/project.h"

G_BEGIN_DECLS

FpProject *fp_norms_set_jurisdiction (const FpProject *project, FpJurisdiction one, GError **error);
FpProject *fp_norms_set_followed (const FpProject *project, const char *book, gboolean followed, GError **error);
/* In the place of what was said of that rule before. */
FpProject *fp_norms_hold_otherwise (const FpProject *project, const FpNormChange *change, GError **error);
FpProject *fp_norms_hold_as_printed (const FpProject *project, const char *book, const char *rule, GError **error);
/* @choice: in the place of what was chosen on its matter before. */
FpProject *fp_norms_go_by (const FpProject *project, const FpNormChoice *choice, GError **error);
FpProject *fp_norms_go_by_all (const FpProject *project, const char *matter, GError **error);
/* In the place of one of that name.  Lines that end in CR LF are taken as ended by LF. */
FpProject *fp_norms_add_book (const FpProject *project, const char *name, const char *xml, GError **error);
FpProject *fp_norms_remove_book (const FpProject *project, const char *name, GError **error);

G_END_DECLS
