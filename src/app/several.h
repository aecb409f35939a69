/* SPDX-License-Identifier: GPL-3.0-or-later */
/* several.h - what several chosen things have in common, and typing it for all of them at once */
#pragma once

#include "place-edit.h"

G_BEGIN_DECLS

typedef struct
{
  guint         n;            /* chosen                                       */
  const FpKind *kind;         /* of all of them; NULL: they are of several    */
  gboolean      all_stand;    /* none is removed                              */
  gboolean      any_surveyed;
  gboolean      have_places;  /* of their own, on one support: they can be compared and set */
} FpSeveral;

void fp_several_look (FpDocument *document, FpSeveral *out);

/* "Credence, Sedilia and 3 more"; owned by the caller. */
char *fp_several_names (FpDocument *document);

/* Whether it is the same for all; @value is that of the last one chosen. */
gboolean fp_several_param_same (FpDocument *document, const char *param, double *value);
gboolean fp_several_place_same (FpDocument *document, FpPlaceField field, double *value);

/* For all that are chosen, one step of the history; FALSE with an error to show beside the field, and nothing changed. */
gboolean fp_several_enter       (FpDocument *document, const char *param, const char *text, GError **error);
gboolean fp_several_place_enter (FpDocument *document, FpPlaceField field, const char *text, GError **error);

G_END_DECLS
