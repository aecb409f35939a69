/* SPDX-License-Identifier: GPL-3.0-or-later */
/* text.h - what may be written into a project: ids, texts and numbers
 *
 * Each returns FALSE with an error whose message begins with @whose.
 */
#pragma once

#include "footpace/project.h"

G_BEGIN_DECLS

#define FP_ID_MAX 64 /* bytes */

gboolean fp_id_check (const char *id, const char *whose, GError **error);

/* @lines: whether it may have more than one line */
gboolean fp_text_check (const char *text, const char *whose, gboolean lines, GError **error);

gboolean fp_coordinate_check (double value, const char *whose, const char *what, GError **error);

/* Finite, and not farther out than FP_LENGTH_MAX. */
gboolean fp_place_check (const FpPlace *place, const char *whose, GError **error);

/* Degrees brought to -180 < turn <= 180. */
double   fp_turn_normal (double turn);

G_END_DECLS
