/* SPDX-License-Identifier: GPL-3.0-or-later */
/* asked-sheet.h - the paper of a drawing, and the file that it is written to, as typed on the command line */
#pragma once

#include "footpace/sheet.h"
#include "pages.h"

G_BEGIN_DECLS

#define FP_ASKED_PAPERS "a4, a3, a2, a1, letter or tabloid"
#define FP_ASKED_INKS   "colour, grey or safe"
#define FP_ASKED_FORMS  "pdf, svg or png"

/* Both say what is wrong before they return FALSE. */

/* Of --paper, --scale and --ink (nullable); what was not typed stays as it is in @spec. */
gboolean fp_asked_sheet (const char *paper, const char *scale, const char *ink, FpSheetSpec *spec);

/* Of --as (nullable) and --out: the form that is named, or that of the ending; never over a project. */
gboolean fp_asked_pages (const char *as, const char *out, FpPagesForm *form);

typedef enum { FP_ASKED_TEXT, FP_ASKED_CSV, FP_ASKED_DRAWN } FpAskedAs;
/* Of --as and --out (nullable) where what is asked for is told as text or table, and drawn where a file is named. */
gboolean fp_asked_as (const char *as, const char *out, FpAskedAs *told, FpPagesForm *form);

G_END_DECLS
