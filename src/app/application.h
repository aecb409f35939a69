/* SPDX-License-Identifier: GPL-3.0-or-later */
/* application.h - the program as the desktop sees it */
#pragma once

#include "ahead.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define FP_APPLICATION_ID "org.footpace.Footpace"

#define FP_TYPE_APPLICATION (fp_application_get_type ())
G_DECLARE_FINAL_TYPE (FpApplication, fp_application, FP, APPLICATION, GtkApplication)

GtkApplication *fp_application_new (void);
/* Where that file is opened, it has been read already.  Takes @ahead. */
void            fp_application_take_ahead (FpApplication *self, FpAhead *ahead);

G_END_DECLS
