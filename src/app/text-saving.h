/* SPDX-License-Identifier: GPL-3.0-or-later */
/* text-saving.h - asks where to, and writes what a window tells as a text or a table */
#pragma once

#include "document.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

typedef struct
{
  const char *title;   /* of the question: "Save Report": static              */
  const char *what;    /* in the name that is offered: "report": static       */
  const char *suffix, *filter_name; /* "csv", "Table (CSV)": static           */
  /* (transfer full) (nullable): %NULL where there is nothing any more, and nothing is written */
  char     *(*make) (GtkWindow *window);
  void      (*tell) (GtkWindow *window, const char *text, gboolean wrong);
} FpTextSaving;

/* The name has the project's and the shown alternative's. */
void fp_save_text (GtkWindow *window, FpDocument *document, const FpTextSaving *saving);

G_END_DECLS
