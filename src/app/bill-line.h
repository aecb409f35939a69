/* SPDX-License-Identifier: GPL-3.0-or-later */
/* bill-line.h - a line of the schedules as an item of a list, and the columns in which lists show it */
#pragma once

#include "footpace/schedules.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define FP_TYPE_BILL_LINE (fp_bill_line_get_type ())
G_DECLARE_FINAL_TYPE (FpBillLine, fp_bill_line, FP, BILL_LINE, GObject)

FpBillLine      *fp_bill_line_new  (FpBill *bill, guint row); /* holds the bill */
FpBill          *fp_bill_line_bill (FpBillLine *self);
const FpBillRow *fp_bill_line_row  (FpBillLine *self);
/* What tells it from others, in this bill and the next: owned by the caller. */
char            *fp_bill_line_key  (FpBillLine *self);

/* What is done with it, under which heading, and all that fp_bill_cell() knows. */
void             fp_bill_line_add_columns (GtkColumnView *view);
/* Those alone in which any line of @lines says something. */
void             fp_bill_line_show_columns (GtkColumnView *view, GListModel *lines);

G_END_DECLS
