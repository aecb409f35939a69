/* SPDX-License-Identifier: GPL-3.0-or-later */
/* help-window.h - the pages of help, in a window beside the work */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* Brings the one window to the front. @page: "start", "architect" …; NULL: as it was, or the first. */
void fp_help_show (GtkWindow *beside, const char *page);

/* Names of the pages in order, ended by NULL; and their text, static. */
const char *const *fp_help_pages (void);
GBytes     *fp_help_text (const char *page); /* NULL when there is no such page; owned by the caller */

G_END_DECLS
