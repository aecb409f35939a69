/* SPDX-License-Identifier: GPL-3.0-or-later */
/* store.h - projects as XML
 *
 * Namespace urn:footpace:project:1, schema src/store/project.rng (built
 * in, and installed).  The same project always gives the same bytes; one
 * thing a line; lengths are decimal millimetres and angles degrees.
 *
 * A file is read as if it came from an enemy: no network, no DTD, no entities
 * beyond the five built in, and limits on bytes, depth and counts.
 */
#pragma once

#include "footpace/project.h"

#include <gio/gio.h>

G_BEGIN_DECLS

#define FP_STORE_NAMESPACE "urn:footpace:project:1"
#define FP_STORE_BYTES_MAX (16u * 1024u * 1024u)
#define FP_STORE_DEPTH_MAX 16

/* @name is what messages call the input; messages begin "name:line: ". */
FpProject *fp_store_parse (const char *xml, gsize length, const char *name, GError **error);
char      *fp_store_write (const FpProject *project, gsize *length); /* owned by the caller */

FpProject *fp_store_load (const char *path, GError **error);

/* Also the digest (SHA-256, hexadecimal) of the very bytes that were read, owned by the caller. */
FpProject *fp_store_load_digest (const char *path, char **digest, GError **error);
/* Of the file as it is now; NULL when it is not there or cannot be read. Owned by the caller. */
char      *fp_store_digest (const char *path);

/**
 * fp_store_save:
 *
 * Atomic and durable: written to a temporary file beside @path, flushed to
 * the disk, then renamed over it.  A symbolic link is followed, not replaced.
 * On failure the old file is whole.  A file that was written by a later
 * version is not overwritten (%FP_ERROR_VERSION).
 */
gboolean   fp_store_save (const FpProject *project, const char *path, GError **error);

/* Also the digest of what was written, owned by the caller. */
gboolean   fp_store_save_digest (const FpProject *project, const char *path, char **digest, GError **error);

/* The RELAX NG schema, XML syntax; static. */
const char *fp_store_schema (gsize *length);

G_END_DECLS
