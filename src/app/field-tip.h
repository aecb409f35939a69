/* SPDX-License-Identifier: GPL-3.0-or-later */
/* field-tip.h - the tip of a field that has no label which could bear it */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* Told to a screen reader always, shown only while nobody types in the window: it would hang over the fields below. */
void fp_field_tip (GtkWidget *field, const char *tip);

/* The tip of a widget, however it is set, likewise only while nobody types; once for each widget. */
void fp_field_tip_hush (GtkWidget *widget);

G_END_DECLS
