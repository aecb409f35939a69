/* SPDX-License-Identifier: GPL-3.0-or-later */
/* parse-xml.h - bytes of a stranger to a tree of XML
 *
 * Private to src/store.  The only place where the errors of libxml2 become
 * ours.  Every message begins "name:line: ".
 */
#pragma once

#include "footpace/store.h"

#include <libxml/tree.h>

G_BEGIN_DECLS

#define FP_STORE_VERSION 1u

/* What one element of a project could need at most, and no more. */
#define FP_STORE_ELEMENTS_MAX   400000
#define FP_STORE_ATTRIBUTES_MAX 64
#define FP_STORE_PIECE_MAX      65536  /* bytes from one '<' to the next */

/**
 * fp_xml_parse:
 *
 * Returns: (transfer full): a well-formed tree whose root is a project of this version, no deeper and no
 *   larger than the limits, without a document type; NULL with an error
 */
xmlDoc *fp_xml_parse (const char *bytes, gsize length, const char *name, GError **error);

/**
 * fp_xml_is_later:
 * @bytes: the beginning of a file
 * @found: (out): the version that it names
 *
 * Whether it is a project that a later version of the program has written.
 */
gboolean fp_xml_is_later (const char *bytes, gsize length, guint *found);

/* What a stranger wrote becomes part of a message: control characters, which could steer a terminal, become spaces.
 * @text itself is changed. */
char   *fp_xml_one_line (char *text);

/* Whether the schema allows the tree. */
gboolean fp_xml_validate (xmlDoc *doc, const char *name, GError **error);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (xmlDoc, xmlFreeDoc)

G_END_DECLS
