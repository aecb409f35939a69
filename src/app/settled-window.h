/* SPDX-License-Identifier: GPL-3.0-or-later */
/* settled-window.h - what was settled at once, what was not, and why */
#pragma once

#include "footpace/remedy.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* Before @parent, in which it may be undone; copies what it tells. */
GtkWidget *fp_settled_window_new (GtkWindow *parent, const FpSettling *settling);

G_END_DECLS
