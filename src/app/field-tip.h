/* SPDX-License-Identifier: GPL-3.0-or-later */
/* field-tip.h - the tip of a field that has no label which could bear it */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* Told to a screen reader always, shown only while nobody types in the window: it would hang over the fields below. */
void fp_field_tip (GtkWidget *field, const char *tip);

G_END_DECLS
