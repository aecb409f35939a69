/* SPDX-License-Identifier: GPL-3.0-or-later */
/* typing.h - values as they are typed and shown beside a thing
 *
 * Text goes in and out in the units of the brief; inside, lengths are mm,
 * shares 0..1, angles degrees.
 */
#pragma once

#include "document.h"

G_BEGIN_DECLS

char       *fp_typing_show (const FpParam *param, double value, FpUnits units); /* owned by the caller */
const char *fp_typing_unit (const FpParam *param, FpUnits units);               /* "mm", "°", "%", "" */
/* A level above the datum, mm: as any length, and "+1.8" in metres, as it is lettered. */
gboolean    fp_typing_read_level (const char *text, FpUnits units, double *value, GError **error);
gboolean    fp_typing_read (const FpParam *param, const char *text, FpUnits units, double *value, GError **error);
/* "Allowed 300 to 5 000 mm. Source of the default: …"; owned by the caller. */
char       *fp_typing_about (const FpParam *param, FpUnits units);
/* What one step up or down adds, for the arrow keys. */
double      fp_typing_step (const FpParam *param, FpUnits units);

/* The parameter of that id of a thing in the scene; NULL when there is none. */
const FpParam *fp_typing_param (const FpPlaced *placed, const char *param, double *value);

/**
 * fp_typing_enter:
 *
 * Sets what was typed, as one step of the history.  Text that is just what is
 * shown changes nothing, even where showing has rounded.
 *
 * Returns: FALSE with an error to be shown beside what was typed
 */
gboolean    fp_typing_enter (FpDocument *document, const char *id, const char *param, const char *text,
                             GError **error);

/* What a length that is still to be worked out comes to: "= 1 234 mm" of "1200 + 34"; NULL of a plain one, and of what
 * cannot be read (yet).  The caller's. */
char *fp_typing_sum (const char *text, FpUnits units);

G_END_DECLS
