/* SPDX-License-Identifier: GPL-3.0-or-later */
/* built.h - what is read from and shown in a dialog that a builder made, by id */
#pragma once

#include "footpace/units.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

GtkWidget  *fp_built          (GtkBuilder *builder, const char *id);
const char *fp_built_text     (GtkBuilder *builder, const char *id);
void        fp_built_set_text (GtkBuilder *builder, const char *id, const char *value);
guint       fp_built_selected (GtkBuilder *builder, const char *id);
void        fp_built_select   (GtkBuilder *builder, const char *id, guint value);
gboolean    fp_built_is_active (GtkBuilder *builder, const char *id);

/* A length or a whole number; what is wrong is said with @label before it. */
gboolean    fp_built_length   (GtkBuilder *builder, const char *id, const char *label, FpUnits units, double *mm,
                               GError **error);
gboolean    fp_built_count    (GtkBuilder *builder, const char *id, const char *label, guint min, guint max,
                               guint *value, GError **error);

/* What was typed keeps its length when other units are chosen; text that is no length is left. */
void        fp_built_change_units (GtkEditable *editable, FpUnits was, FpUnits now);

G_END_DECLS
