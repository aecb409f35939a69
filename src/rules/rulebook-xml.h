/* SPDX-License-Identifier: GPL-3.0-or-later */
/* rulebook-xml.h - a text as XML, and whether the schema of rulebooks allows it
 *
 * Private to src/rules.  Any thread.  What is at fault is told as "@name:line: why".
 */
#pragma once

#include <glib.h>
#include <libxml/tree.h>

G_BEGIN_DECLS

/* NULL with %FP_ERROR_SYNTAX, or with %FP_ERROR_INVALID where it has a document type; freed with xmlFreeDoc(). */
xmlDoc  *fp_rulebook_xml (const char *xml, gsize length, const char *name, GError **error);
/* FALSE with %FP_ERROR_INVALID. */
gboolean fp_rulebook_fits_schema (xmlDoc *doc, const char *name, GError **error);

G_END_DECLS
