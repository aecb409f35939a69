/* SPDX-License-Identifier: GPL-3.0-or-later */
/* csv.h - fields of tables for other programs */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* RFC 4180, section 2: quotes about it, and each quote in it twice. */
void fp_csv_add_quoted (GString *out, const char *text);

G_END_DECLS
