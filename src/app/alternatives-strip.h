/* SPDX-License-Identifier: GPL-3.0-or-later */
/* alternatives-strip.h - the alternatives, small: one is shown on the board */
#pragma once

#include "document.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define FP_TYPE_ALTERNATIVES_STRIP (fp_alternatives_strip_get_type ())
G_DECLARE_FINAL_TYPE (FpAlternativesStrip, fp_alternatives_strip, FP, ALTERNATIVES_STRIP, GtkWidget)

GtkWidget *fp_alternatives_strip_new (void);
void       fp_alternatives_strip_set_document (FpAlternativesStrip *self, FpDocument *document);

G_END_DECLS
