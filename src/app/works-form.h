/* SPDX-License-Identifier: GPL-3.0-or-later */
/* works-form.h - of what the parish builds, and by which measures its schedules are reckoned, in fields
 *
 * Each change is an edit of the document.  What cannot be read is said under its
 * field, and changes nothing.
 */
#pragma once

#include "document.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define FP_TYPE_WORKS_FORM (fp_works_form_get_type ())
G_DECLARE_FINAL_TYPE (FpWorksForm, fp_works_form, FP, WORKS_FORM, GtkGrid)

GtkWidget *fp_works_form_new  (FpDocument *document);
void       fp_works_form_show (FpWorksForm *self); /* what the document has now */

G_END_DECLS
