/* SPDX-License-Identifier: GPL-3.0-or-later */
/* capacity-form.h - by what the parish reckons its capacity, in fields: who communicates, how many give Communion, times
 *
 * Each change is an edit of the document.  What cannot be read is said under its
 * field, and changes nothing.
 */
#pragma once

#include "document.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define FP_TYPE_CAPACITY_FORM (fp_capacity_form_get_type ())
G_DECLARE_FINAL_TYPE (FpCapacityForm, fp_capacity_form, FP, CAPACITY_FORM, GtkGrid)

GtkWidget *fp_capacity_form_new  (FpDocument *document);
void       fp_capacity_form_show (FpCapacityForm *self); /* what the document has now */

G_END_DECLS
