/* SPDX-License-Identifier: GPL-3.0-or-later */
/* thing-column.h - what the list of things tells of each, and what of it can be typed over; needs no display */
#pragma once

#include "document.h"
#include "place-edit.h"

G_BEGIN_DECLS

typedef enum
{
  FP_COLUMN_NAME, FP_COLUMN_STANDING, FP_COLUMN_LEVEL, FP_COLUMN_HEIGHT, FP_COLUMN_ACROSS, FP_COLUMN_ALONG,
  FP_COLUMN_TURN, FP_COLUMN_SIZE, FP_N_COLUMNS
} FpColumn;

const char *fp_column_title (FpColumn column); /* "Name", "Level" …         */
/* For a screen reader and a tooltip. */
const char *fp_column_about (FpColumn column);

/* Id of the parameter that a column of levels or heights shows, where the kind has it; NULL. */
const char  *fp_column_param    (const FpKind *kind, FpColumn column);
/* Whether it shows where a thing stands, and which field of that. */
gboolean     fp_column_is_place (FpColumn column);
FpPlaceField fp_column_field    (FpColumn column);

/* --- typing into it ------------------------------------------------------- */

/* What stands in the field to begin with; owned by the caller. */
char    *fp_column_typed (FpDocument *document, const char *id, FpColumn column);
/* As in the fields beside the board: one step of the history, the same words for what is wrong. */
gboolean fp_column_enter (FpDocument *document, const char *id, FpColumn column, const char *text, GError **error);

G_END_DECLS
