/* SPDX-License-Identifier: GPL-3.0-or-later */
/* start-page.h - what a window shows that has no project yet */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define FP_TYPE_START_PAGE (fp_start_page_get_type ())
G_DECLARE_FINAL_TYPE (FpStartPage, fp_start_page, FP, START_PAGE, GtkWidget)

GtkWidget *fp_start_page_new  (void);
void       fp_start_page_fill (FpStartPage *self); /* with the files of late, if there are any */
GtkWidget *fp_start_page_list (FpStartPage *self); /* of them: see recent.h */

G_END_DECLS
