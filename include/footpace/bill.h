/* SPDX-License-Identifier: GPL-3.0-or-later */
/* bill.h - every line from which an alternative is priced, cut and built
 *
 * What each thing is made of (made.h), what is done with it, and its cloths as
 * they are cut.
 *
 * A rate is what the parish typed for a line: it is put on what is new, on
 * moving and on taking down.  The program knows no price.
 */
#pragma once

#include "footpace/made.h"

G_BEGIN_DECLS

typedef enum
{
  FP_HEADING_STEPS, FP_HEADING_ALTAR, FP_HEADING_PAVING, FP_HEADING_RAIL, FP_HEADING_TIMBER, FP_HEADING_METAL,
  FP_HEADING_CANDLES, FP_HEADING_LINEN, FP_HEADING_FURNITURE, FP_HEADING_BUILDING,
  FP_N_HEADINGS
} FpHeading;
const char *fp_heading_id    (FpHeading self); /* "steps" …                 */
const char *fp_heading_label (FpHeading self); /* "Steps and stone" …       */
gboolean    fp_heading_find  (const char *id, FpHeading *heading);

typedef enum { FP_WORK_NEW, FP_WORK_MOVED, FP_WORK_REMOVED, FP_WORK_KEPT, FP_N_WORKS } FpWork;
const char *fp_work_id    (FpWork self);       /* "new" …                   */
const char *fp_work_label (FpWork self);       /* "New" …                   */

typedef struct
{
  FpHeading       heading;
  FpWork          work;
  const FpPlaced *placed;   /* of which thing; borrowed from the scene        */
  const char     *what;     /* "mensa", "treads": static; a rate goes by it   */
  char           *where;    /* "step 2, in front"; NULL                       */
  char           *marks;    /* of its slabs, as they are on the laying of the stone: "S1–S3"; NULL */
  FpMaterial      material;
  FpAmountType    type;
  double          amount;   /* one, mm, mm2, mm3                              */
  guint           pieces;   /* 0: it does not consist of pieces of one size   */
  FpVec3          size;     /* mm, of each: length, width and thickness (or height); 0 where not said */
  double          volume;   /* mm3 in all; %NAN                               */
  double          mass;     /* kg in all; %NAN                                */
  double          hours;    /* that each candle burns; %NAN                   */
  double          rate;     /* in the currency of the works; %NAN             */
  FpUnits         per;      /* the units in which that rate is                */
  double          cost;     /* to the cent, of the amount as it is billed; %NAN */
  gboolean        unpriced; /* a rate may be put on it, and none was typed    */
} FpBillRow;

typedef struct _FpBill FpBill;

FpBill       *fp_bill_new   (const FpScene *scene); /* holds the scene         */
FpBill       *fp_bill_ref   (FpBill *self);
void          fp_bill_unref (FpBill *self);
const FpScene *fp_bill_scene (const FpBill *self);
/* (element-type FpBillRow): by heading, under it by thing. */
const GArray *fp_bill_rows  (const FpBill *self);

/* Of all lines that have a rate and of which @work is so; %FP_N_WORKS for all.  %NAN where none has a rate. */
double        fp_bill_cost  (const FpBill *self, FpWork work);
/* How many of those lines have no rate, where others have one; 0 where none has. */
guint         fp_bill_unpriced (const FpBill *self, FpWork work);
/* Of what is new, volume of stone, mm3: slabs and blocks, no core. */
double        fp_bill_stone (const FpBill *self);

/* kg of one of its pieces; %NAN where it has none, or none that is weighed. */
double        fp_bill_row_each (const FpBillRow *row);
/* Of all of those works and headings (bits; 0: all) that are new, moved or taken out, the line with the heaviest piece; NULL. */
const FpBillRow *fp_bill_heaviest (const FpBill *self, guint works, guint headings);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FpBill, fp_bill_unref)

G_END_DECLS
