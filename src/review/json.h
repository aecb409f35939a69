/* SPDX-License-Identifier: GPL-3.0-or-later */
/* json.h - data for other programs: JSON (RFC 8259), UTF-8, one value a line
 *
 * Private to src/review.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

typedef struct
{
  GString *out;
  guint    depth;
  gboolean begun; /* something stands already in the innermost bracket        */
} FpJson;

/* @name: (nullable): of the value, within braces. */
void fp_json_open   (FpJson *json, const char *name, char bracket);
void fp_json_close  (FpJson *json, char bracket);
void fp_json_text   (FpJson *json, const char *name, const char *text); /* @text: (nullable): null */
void fp_json_yes    (FpJson *json, const char *name, gboolean yes);
void fp_json_number (FpJson *json, const char *name, double value);     /* null where it is not finite */

G_END_DECLS
