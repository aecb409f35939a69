/* SPDX-License-Identifier: GPL-3.0-or-later */
/* norms-window.h - which norms the parish goes by: whose law, which books, each rule of them, and books of its own */
#pragma once

#include "document.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define FP_TYPE_NORMS_WINDOW (fp_norms_window_get_type ())
G_DECLARE_FINAL_TYPE (FpNormsWindow, fp_norms_window, FP, NORMS_WINDOW, GtkWindow)

GtkWidget *fp_norms_window_new (GtkWindow *parent, FpDocument *document);

G_END_DECLS
