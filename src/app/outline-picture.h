/* SPDX-License-Identifier: GPL-3.0-or-later */
/* outline-picture.h - an outline on the plan with its corners numbered, east at the top */
#pragma once

#include "footpace/geom.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

GtkWidget *fp_outline_picture_new (void);
void       fp_outline_picture_set (GtkWidget *picture, const FpPoint *corner, guint n, gboolean closed);

G_END_DECLS
