/* SPDX-License-Identifier: GPL-3.0-or-later */
/* brief-sun.h - where the church is and when Mass is said there, as the dialog of the brief asks it */
#pragma once

#include "footpace/project.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

void     fp_brief_sun_show (GtkBuilder *builder, const FpBrief *brief);

/* What @brief said before is replaced; the text of its zone is borrowed from the field.  FALSE where something cannot be
 * read: the field of it is marked, and has the keyboard. */
gboolean fp_brief_sun_read (GtkBuilder *builder, FpBrief *brief, GError **error);

G_END_DECLS
