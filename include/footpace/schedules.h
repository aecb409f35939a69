/* SPDX-License-Identifier: GPL-3.0-or-later */
/* schedules.h - the lines of a bill as they are read: on screen, in words, as a table, on sheets
 *
 * In the units of the brief; a table for other programs has mm, m2, m3 and kg.
 */
#pragma once

#include "footpace/bearing.h"
#include "footpace/bill.h"
#include "footpace/sheet.h"

G_BEGIN_DECLS

typedef enum
{
  FP_BILL_THING, FP_BILL_WHAT, FP_BILL_MARKS, FP_BILL_MATERIAL, FP_BILL_PIECES, FP_BILL_SIZE, FP_BILL_AMOUNT, FP_BILL_RATE,
  FP_BILL_COST, FP_BILL_MASS, FP_BILL_EACH, FP_BILL_VOLUME, FP_BILL_HOURS,
  FP_N_BILL_COLUMNS
} FpBillColumn;

const char *fp_bill_column_head (FpBillColumn column); /* "Size of each" … */
/* "" where it has none; owned by the caller. */
char       *fp_bill_cell   (const FpBill *bill, const FpBillRow *row, FpBillColumn column);
char       *fp_mass_format (double mass, FpUnits units);                 /* "36 kg", "79 lb"                        */
char       *fp_cost_format (double cost, const char *currency);          /* "1 320.00 EUR"; "" for %NAN             */
char       *fp_unpriced_text (guint n);                                  /* ", 3 lines not priced"; "" for 0        */
char       *fp_pressure_format (double pressure, FpUnits units);         /* of kN/m2: "26.6 kN/m²", "556 lb/sq ft"  */

/* What is told of it. */
typedef struct
{
  guint    headings; /* 1 << FpHeading; 0: all                               */
  guint    works;    /* 1 << FpWork; 0: all                                  */
  gboolean weights;  /* and what bears on the floor                          */
} FpScheduleChoice;

gboolean    fp_schedule_chooses (const FpScheduleChoice *choice, const FpBillRow *row);

/* Costs in all, of what stone is and how it is laid, how heavy its heaviest piece is, and the cautions. */
char       *fp_schedules_closing (const FpBill *bill, const FpScheduleChoice *choice);
/* Of what stone, how thick, with which joints, nosing and finish: sentences. */
char       *fp_stone_text        (const FpWorks *works, FpUnits units);
/* How the floor's rating stands to it: "5.3 times the rating"; NULL where that is not said. */
char       *fp_bearing_verdict   (const FpBearing *bearing, const FpWorks *works);
/* "High altar, new": whether it is that, moved or kept. */
char       *fp_bearing_name      (const FpBearing *bearing);
/* All of that in a sentence, by the thing's name. */
char       *fp_bearing_text      (const FpBearing *bearing, const FpWorks *works, FpUnits units);
extern const char fp_weights_caution[];

char       *fp_schedules_text (const FpBill *bill, const FpScheduleChoice *choice);
/* RFC 4180, a line for each row. */
char       *fp_schedules_csv  (const FpBill *bill, const FpScheduleChoice *choice);

/**
 * fp_schedules_sheets:
 *
 * Returns: (transfer full) (element-type FpDrawing): as many pages as they take; NULL with %FP_ERROR_RANGE where there is
 *   nothing to tell, or the paper is too small for a line
 */
GPtrArray  *fp_schedules_sheets (const FpBill *bill, const FpScheduleChoice *choice, const FpSheetSpec *spec, GError **error);

/* All that is to be done, with weights. */
GPtrArray  *fp_schedules_sheets_of (const FpScene *scene, const FpSheetSpec *spec, GError **error);

G_END_DECLS
