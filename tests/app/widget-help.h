/* SPDX-License-Identifier: GPL-3.0-or-later */
/* widget-help.h - samples and widgets for the tests on a screen */
#pragma once

#include "document.h"

#include <gtk/gtk.h>

FpDocument     *help_open_sample (const char *name); /* owned by the caller */
const FpPlaced *help_altar       (FpDocument *d);
const char     *help_altar_id    (FpDocument *d);    /* interned */

/* A window that holds one widget, on show. */
GtkWidget      *help_show        (GtkWidget *child);
/* The first widget that is so, below another and it included, by depth; NULL. */
typedef gboolean (*HelpIs) (GtkWidget *widget, gconstpointer data);
GtkWidget      *help_find_that   (GtkWidget *top, HelpIs is, gconstpointer data);
GtkWidget      *help_find        (GtkWidget *top, GType type);
GtkWidget      *help_find_styled (GtkWidget *top, const char *css);   /* of that style class */
GtkWidget      *help_find_called (GtkWidget *top, const char *id);    /* what the builder made under that id */
GtkWidget      *help_find_button (GtkWidget *top, const char *label);
