/* SPDX-License-Identifier: GPL-3.0-or-later */
/* pages.h - drawn pages, written as files or to standard output */
#pragma once

#include "footpace/drawing.h"

G_BEGIN_DECLS

typedef enum { FP_PAGES_PDF, FP_PAGES_SVG, FP_PAGES_PNG, FP_N_PAGES_FORMS } FpPagesForm;

/* "pdf", whatever its case. */
gboolean fp_pages_form_find (const char *id, FpPagesForm *form);
/* By the ending of a name: "Plan.PDF".  FALSE where there is nothing before it. */
gboolean fp_pages_form_of_path (const char *path, FpPagesForm *form);

/**
 * fp_pages_write:
 * @pages: (element-type FpDrawing): one or more
 * @project: the file that was read, which is never written over
 * @path: a file, or "-" for standard output
 *
 * PDF holds all pages; SVG and PNG hold one each, and further ones get "-2", "-3" before the ending of their name.
 *
 * Returns: FALSE with @error set: nothing was written, or (of several files) some were
 */
gboolean fp_pages_write (const GPtrArray *pages, const FpScene *scene, FpPagesForm form, const char *project,
                         const char *path, GError **error);

/* "50" or "1:50"; 0 for "fit". */
gboolean fp_pages_scale_parse (const char *text, double *scale);

/* Drawn as asked, and said: a builder has no rule for 1:33. */
void     fp_pages_note_scale (double scale);

G_END_DECLS
