/* SPDX-License-Identifier: GPL-3.0-or-later */
/* sheet-dialog.h - a sheet is chosen, seen, and printed or exported
 *
 * Closed without having printed or exported, it opens again as it was left, as long as the document is open; what was
 * printed or exported is kept with the project.
 *
 * Signal "written" (path, number of files): it was exported, for the window to say so.
 */
#pragma once

#include "document.h"
#include "sheets.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define FP_TYPE_SHEET_DIALOG (fp_sheet_dialog_get_type ())
G_DECLARE_FINAL_TYPE (FpSheetDialog, fp_sheet_dialog, FP, SHEET_DIALOG, GtkWindow)

/* What the board shows of what a sheet asks too. */
typedef struct
{
  FpHidden    hidden;
  FpInkChoice ink;
  FpCut       along, across;
  const FpSightLook *sight; /* NULL: it is not shown; likewise            */
  const FpSunLook   *sun;
} FpSheetSeen;

/**
 * fp_sheet_dialog_new:
 * @sheet: FpSheetKind, chosen where no sheet was made before; or another, chosen at first
 * @seen: (nullable): what the board shows; what of it was changed since the last sheet is offered for this one
 */
GtkWidget *fp_sheet_dialog_new (GtkWindow *parent, FpDocument *document, guint sheet, const FpSheetSeen *seen);

G_END_DECLS
