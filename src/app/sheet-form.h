/* SPDX-License-Identifier: GPL-3.0-or-later */
/* sheet-form.h - the page set-up as a form
 *
 * Signal "changed": by a hand.
 */
#pragma once

#include "sheets.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define FP_TYPE_SHEET_FORM (fp_sheet_form_get_type ())
G_DECLARE_FINAL_TYPE (FpSheetForm, fp_sheet_form, FP, SHEET_FORM, GtkBox)

void        fp_sheet_form_set (FpSheetForm *self, const FpPageSetup *page, FpUnits units);
/* What it says; where a typed value cannot be read, what it said before. */
FpPageSetup fp_sheet_form_get (FpSheetForm *self);
const char *fp_sheet_form_number (FpSheetForm *self); /* identification number; "": from the title */
void        fp_sheet_form_set_number (FpSheetForm *self, const char *number);
/* What sheets of sight and of the sun show, at a Mass of that brief. */
void         fp_sheet_form_set_looks (FpSheetForm *self, const FpBrief *brief, const FpSheetLooks *looks);
FpSheetLooks fp_sheet_form_looks     (FpSheetForm *self);
/* Puts the sheet on several pages, as a hand would. */
void        fp_sheet_form_tile (FpSheetForm *self);

G_END_DECLS
