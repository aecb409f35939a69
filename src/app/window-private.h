/* SPDX-License-Identifier: GPL-3.0-or-later */
/* window-private.h - what the files of the window share */
#pragma once

#include "alternatives-strip.h"
#include "board-view.h"
#include "compare-page.h"
#include "findings-list.h"
#include "inspector.h"
#include "things-list.h"
#include "window.h"

G_BEGIN_DECLS

struct _FpWindow
{
  GtkApplicationWindow parent_instance;
  FpDocument *document;
  gboolean    closing;       /* asked and answered                           */
  guint       notice_over;   /* source that puts away a message that asks for nothing */

  GtkWidget  *title, *subtitle;
  GtkWidget  *pages, *board, *side, *things_or_thing, *things, *inspector, *findings, *alternatives, *compare;
  GtkWidget  *notice, *notice_icon, *notice_text;
  GtkWidget  *readout;
  GtkWidget  *undo_button, *redo_button, *add_button, *save_button, *compare_button;
  GtkWidget  *add_list, *recent_list, *start_recent_list, *start_recent;
};

/* --- window-actions.c --- */
void fp_window_class_add_actions (GtkWidgetClass *widget_class);
/* The one place that says what can be done now. */
void fp_window_update_actions (FpWindow *self);
void fp_window_fill_add_list (FpWindow *self);

/* --- window-file.c --- */
void     fp_window_class_add_file_actions (GtkWidgetClass *widget_class);
void     fp_window_fill_recent (FpWindow *self);
gboolean fp_window_may_close (FpWindow *self); /* FALSE: it asks first */

G_END_DECLS
