/* SPDX-License-Identifier: GPL-3.0-or-later */
/* compare-page.h - the alternatives side by side: to one scale, and in a table */
#pragma once

#include "document.h"
#include "footpace/review.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define FP_TYPE_COMPARE_PAGE (fp_compare_page_get_type ())
G_DECLARE_FINAL_TYPE (FpComparePage, fp_compare_page, FP, COMPARE_PAGE, GtkWidget)

GtkWidget *fp_compare_page_new (void);
void       fp_compare_page_set_document (FpComparePage *self, FpDocument *document);
/* It computes only while it is on show. */
void       fp_compare_page_set_shown (FpComparePage *self, gboolean shown);

G_END_DECLS
