/* SPDX-License-Identifier: GPL-3.0-or-later */
/* pdf-language.h - private to src/drawing */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* @pdf: a whole file as cairo writes it; left as it is where it is not written so
 * @language: a tag of BCP 47, "en" */
void fp_pdf_add_language (GByteArray *pdf, const char *language);

G_END_DECLS
