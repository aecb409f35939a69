/* SPDX-License-Identifier: GPL-3.0-or-later */
/* norm-row.h - one rule of a book: what it asks, where that is printed, and how the parish holds it
 *
 * Each change is an edit of the document.  What cannot be read is said below the
 * fields, and changes nothing.
 */
#pragma once

#include "document.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define FP_TYPE_NORM_ROW (fp_norm_row_get_type ())
G_DECLARE_FINAL_TYPE (FpNormRow, fp_norm_row, FP, NORM_ROW, GtkBox)

GtkWidget  *fp_norm_row_new  (FpDocument *document, FpRulebook *book, const FpRule *rule);
/* @finding: (nullable): of its rule, as it was found last */
void        fp_norm_row_show (FpNormRow *self, const FpFinding *finding);
const char *fp_norm_row_rule (FpNormRow *self);

G_END_DECLS
