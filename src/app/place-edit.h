/* SPDX-License-Identifier: GPL-3.0-or-later */
/* place-edit.h - where a thing stands, as fields that can be typed: place, turn, support, corners */
#pragma once

#include "document.h"

G_BEGIN_DECLS

/* Fields of a place, as parameters, so that they are shown and typed like them. */
typedef enum { FP_FIELD_ACROSS, FP_FIELD_ALONG, FP_FIELD_TURN, FP_N_FIELDS } FpPlaceField;
const FpParam *fp_place_field (FpPlaceField field);
const FpParam *fp_corner_field (gboolean along);

double     fp_place_field_get (const FpPlace *place, FpPlaceField field);
void       fp_place_field_set (FpPlace *place, FpPlaceField field, double value);
/* Whether a place of its own means anything: not for what lies round another thing, nor for an opening. */
gboolean   fp_place_is_own (const FpScene *scene, const FpPlaced *placed);

/* Where it stands in this alternative, in the terms of its own place: a thing of the survey may have been moved. */
FpPlace    fp_place_now (FpDocument *document, const FpPlaced *placed);

/* Each reads @text and edits; FALSE with an error to show beside the field. */
gboolean   fp_place_enter  (FpDocument *document, const char *id, FpPlaceField field, const char *text, GError **error);
gboolean   fp_corner_enter (FpDocument *document, const char *id, guint corner, gboolean along, const char *text,
                            GError **error);
gboolean   fp_name_enter    (FpDocument *document, const char *id, const char *text, GError **error);
gboolean   fp_support_enter (FpDocument *document, const char *id, const char *on, GError **error);

/* Ids of what it may stand on, "" for the floor; (element-type utf8), interned. */
GPtrArray *fp_supports_new (const FpScene *scene, const FpPlaced *placed);

G_END_DECLS
