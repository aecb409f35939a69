/* SPDX-License-Identifier: GPL-3.0-or-later */
/* two-lines.h - a row of a list: a name, and below it in small what it is */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* @tells: (out) (optional): the label of the second line, whose breaking is for the caller to say. */
GtkWidget *fp_two_lines_new (const char *name, const char *second, GtkLabel **tells);

G_END_DECLS
