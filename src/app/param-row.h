/* SPDX-License-Identifier: GPL-3.0-or-later */
/* param-row.h - one value of a thing: its label, a field with a unit or a list of choices, and what is wrong with it
 *
 * Signal "entered" (text): Enter was pressed or the field left with something
 * new in it.  For choices the text is the index.  The receiver answers with
 * fp_param_row_settle() or fp_param_row_fail().
 */
#pragma once

#include "footpace/kind.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define FP_TYPE_PARAM_ROW (fp_param_row_get_type ())
G_DECLARE_FINAL_TYPE (FpParamRow, fp_param_row, FP, PARAM_ROW, GtkWidget)

/* @param must outlive the row; its label, type, range and choices are used. */
GtkWidget     *fp_param_row_new  (const FpParam *param);
/* A text that is not a number: a name. */
GtkWidget     *fp_param_row_new_text (const char *label);
const FpParam *fp_param_row_param (FpParamRow *self); /* NULL for a text */
void           fp_param_row_show (FpParamRow *self, double value, FpUnits units);
void           fp_param_row_show_mixed (FpParamRow *self, FpUnits units); /* not the same of all that are chosen */
void           fp_param_row_show_text (FpParamRow *self, const char *text);
void           fp_param_row_fail (FpParamRow *self, const char *message);
void           fp_param_row_settle (FpParamRow *self); /* what was typed was taken: shown as the value reads now */
void           fp_param_row_focus (FpParamRow *self);

G_END_DECLS
