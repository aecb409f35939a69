/* SPDX-License-Identifier: GPL-3.0-or-later */
/* help-page.h - a page of help as a widget
 *
 * Written in CommonMark (commonmark.org), read by cmark: headings,
 * paragraphs, lists, emphasis, `keys`, links from page to page
 * ([text](page)), and pictures that the program draws as the page is shown:
 *   ![what it shows](picture:SAMPLE/VIEW)
 * SAMPLE names a sample project, VIEW is plan, elevation or section, or the
 * place from which it is seen: front, middle, back … (fp_pew_typical_id()).
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* @on_link: of the page that was asked for. */
typedef void (*FpHelpLink) (const char *page, gpointer data);

/* @markdown: of a page; @data lives as long as the widget. */
GtkWidget *fp_help_page_new (const char *markdown, FpHelpLink on_link, gpointer data);

/* The first heading; owned by the caller. */
char      *fp_help_page_title (const char *markdown);

G_END_DECLS
